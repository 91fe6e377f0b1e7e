/** One car stands, one is about to, and one has a winter behind it. */
import type { DemoLayUp, DemoRound, DemoTick } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { BRAM, CARS, LAY_UPS, NELL, ODILE, PLACES } from './people.ts';
import { type Ago, counting, daysAgo } from './typed.ts';

export const layUps = (today: CivilDate): DemoLayUp[] => {
  const ago = counting(today);
  return [standing(ago, today), planned(ago, today), lastWinter(ago)];
};

const done = (day: CivilDate, by: string, ...steps: readonly string[]): DemoTick[] =>
  steps.map((step) => ({ step, day, by }));
const leftOut = (step: string, day: CivilDate, by: string, note: string): DemoTick => ({
  step,
  day,
  by,
  note,
  skipped: true,
});

/** Parked two months ago under the house: today its second round is due. */
const standing = (ago: Ago, today: CivilDate): DemoLayUp => ({
  id: LAY_UPS.calvessa,
  carId: CARS.calvessa,
  parkedOn: ago(0, 2),
  returnOn: ago(0, -4),
  place: PLACES.cellar,
  visitor: BRAM,
  phone: '+1 555 0134 (Odile)',
  numbers: { engine: '4.2', cylinders: '8', dose: '30' },
  papers: {
    storageFrom: ago(0, 2),
    roadUntil: ago(0, 2),
    renewsOn: daysAgo(today, -24),
    rules: 'The broker wants a mail before it moves again. No plate rules here for cars under a roof.',
  },
  note: 'Kneels when nobody looks: on supports since the first evening.',
  madeOn: ago(0, 3),
  madeBy: ODILE,
  ticks: [
    ...done(ago(0, 3), ODILE, 'settle-place', 'order-supplies', 'review-ages', 'insurer'),
    leftOut('registry', ago(0, 3), ODILE, 'Nothing to declare here for a car that keeps its plates.'),
    ...done(daysAgo(ago(0, 2), 2), BRAM, 'fuel-fill', 'treat-drive'),
    {
      step: 'oil-change',
      day: daysAgo(ago(0, 2), 2),
      by: BRAM,
      note: 'Filter from the shelf, dated last year.',
      cost: '86',
    },
    ...done(daysAgo(ago(0, 2), 1), ODILE, 'wash', 'wax', 'empty-inside'),
    ...done(ago(0, 2), BRAM, 'last-drive', 'park', 'sprung-by-gas', 'chocks', 'battery-maintainer'),
    ...done(ago(0, 2), ODILE, 'pipes-blocked', 'hard-top', 'wipers-off', 'sheet', 'cover'),
  ],
  rounds: [
    {
      day: ago(0, 1),
      by: BRAM,
      answers: { smell: 'none', mice: 'caught', drips: 'none', wet: 'dry', tires: 'full', lamp: 'full' },
      note: 'One mouse, the big kind.',
    },
  ],
});

/** Goes under the lean-to in three weeks. */
const planned = (ago: Ago, today: CivilDate): DemoLayUp => ({
  id: LAY_UPS.norrhalm,
  carId: CARS.norrhalm,
  parkedOn: daysAgo(today, -20),
  returnOn: ago(0, -5),
  place: PLACES.leanTo,
  visitor: BRAM,
  phone: '+1 555 0177 (Bram)',
  circumstances: ['no-mains', 'bare-floor', 'mice'],
  madeOn: daysAgo(today, 16),
  madeBy: BRAM,
  ticks: [
    ...done(daysAgo(today, 16), BRAM, 'settle-place'),
    {
      step: 'order-supplies',
      day: daysAgo(today, 12),
      by: BRAM,
      note: 'Desiccant and mesh; the plugs are last year’s.',
      cost: '64.50',
    },
    leftOut('measure-humidity', daysAgo(today, 10), BRAM, 'It is a lean-to: it has the weather.'),
  ],
  rounds: [],
});

const quiet = (day: CivilDate, by: string, more: DemoRound['answers'] = {}): DemoRound => ({
  day,
  by,
  answers: { smell: 'none', mice: 'none', drips: 'none', wet: 'dry', tires: 'full', ...more },
});

/** A winter in the barn, with one round nobody made. */
const lastWinter = (ago: Ago): DemoLayUp => ({
  id: LAY_UPS.brackwater,
  carId: CARS.brackwater,
  parkedOn: ago(1, 1),
  returnOn: ago(0, 7),
  place: PLACES.barn,
  visitor: NELL,
  phone: '+1 555 0134 (Odile)',
  circumstances: ['bare-floor', 'mice'],
  numbers: { engine: '1.6', cylinders: '4' },
  madeOn: ago(1, 2),
  madeBy: ODILE,
  ticks: [
    ...done(ago(1, 2), ODILE, 'settle-place', 'order-supplies', 'insurer', 'registry'),
    ...done(
      ago(1, 1),
      BRAM,
      'fuel-fill',
      'treat-drive',
      'wash',
      'last-drive',
      'park',
      'chocks',
      'pipes-blocked',
      'traps',
      'cover',
    ),
    leftOut('wax', ago(1, 1), BRAM, 'The barn cats do the polishing.'),
  ],
  rounds: [
    quiet(ago(1), NELL),
    quiet(ago(0, 11), NELL, { mice: 'caught' }),
    quiet(ago(0, 9), ODILE, { drips: 'spots' }),
    quiet(ago(0, 8), NELL),
  ],
  back: ago(0, 7),
});
