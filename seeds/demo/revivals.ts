/** One sleeper in the middle of its return, and one that is only looked at. */
import type { DemoRevival, DemoSaid } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { BRAM, CARS, ODILE, REVIVALS } from './people.ts';
import { about, before, counting, daysAgo, tireNumber, year } from './typed.ts';

export const revivals = (today: CivilDate): DemoRevival[] => [underWay(today), lookedAt(today)];

/** Found behind hay: eleven years asleep, awake as far as its fuel. */
const underWay = (today: CivilDate): DemoRevival => {
  const ago = counting(today);
  const begun = daysAgo(today, 70);
  const on = (days: number, by: string, said: Omit<DemoSaid, 'day' | 'by'>): DemoSaid => ({
    day: daysAgo(today, 70 - days),
    by,
    ...said,
  });
  return {
    id: REVIVALS.ostrelle,
    car: {
      id: CARS.ostrelle,
      name: 'Ostrelle Landau 1700',
      built: '1962',
      start: 'sedan-drums-all-round',
      ours: true,
    },
    begunOn: begun,
    begunBy: ODILE,
    lastRan: about(ago(11)),
    lastRanBy: 'seller’s word',
    why: 'owner',
    whyWords: 'He drove it to church and home until he did not',
    whyBy: 'seller’s word',
    stood: ['damp'],
    putAway: 'unknown',
    ceiling: '14000',
    hands: 'both',
    note: 'Behind forty bales of hay. The cat comes with it.',
    km: 71_300,
    dates: [
      { kind: 'tires-road', typed: tireNumber(ago(16)), evidence: 'read on the part' },
      { kind: 'tires-road', typed: tireNumber(ago(16)), evidence: 'read on the part' },
      { kind: 'tires-road', typed: tireNumber(ago(13)), evidence: 'read on the part' },
      { kind: 'tires-road', typed: 'not looked yet', evidence: 'assumed' },
    ],
    said: [
      on(0, ODILE, {
        looks: {
          floor: 'surface rust',
          'fuel-smell': 'varnish',
          'oil-stick': 'black',
          'coolant-seen': 'rusty',
          'brake-reservoir': 'empty',
          rodents: 'nest',
          rubber: 'cracked',
          rolls: 'stiffly',
          complete: 'small',
          tried: 'no',
        },
        note: 'Daughter of the late owner had the key in a jar.',
      }),
      on(1, ODILE, { step: 'title', looks: { title: 'in hand' } }),
      on(1, ODILE, { step: 'story', note: 'Ran when parked, says everybody. Nobody drove it.' }),
      on(3, BRAM, { step: 'transport', cost: '280', hours: '5', note: 'Three wheels rolled.' }),
      on(3, ODILE, { pass: 'papers' }),
      on(4, ODILE, { step: 'photographs', hours: '2' }),
      on(4, ODILE, { step: 'tire-codes' }),
      on(4, ODILE, { step: 'missing', note: 'One hubcap, the ashtray, and the jack.' }),
      on(4, ODILE, { pass: 'evidence' }),
      on(8, BRAM, { step: 'probe', looks: { structure: 'surface rust' }, hours: '2' }),
      on(8, BRAM, { step: 'pipe-runs', looks: { 'brake-pipes': 'scaled' }, note: 'Over the axle, as always.' }),
      on(15, BRAM, { step: 'brake-pipes-renew', cost: '95', hours: '9' }),
      on(15, BRAM, { pass: 'structure' }),
      on(16, BRAM, { step: 'extinguisher-ready', looks: { extinguisher: 'in date' }, cost: '48' }),
      on(16, BRAM, { step: 'stands' }),
      on(16, BRAM, { step: 'battery-out', note: 'Swollen. To the recycler as it is.' }),
      on(16, BRAM, { step: 'fuel-vent' }),
      on(17, BRAM, { step: 'wheels-off', hours: '3' }),
      on(17, BRAM, { pass: 'make-safe' }),
      on(20, ODILE, { step: 'nests', cost: '35', hours: '6', note: 'Four generations of mice.' }),
      on(20, ODILE, { step: 'air-box', looks: { 'air-box': 'nest' } }),
      on(21, ODILE, { step: 'air-box', looks: { 'air-box': 'cleared' }, cost: '22' }),
      on(22, BRAM, { step: 'wires', looks: { wires: 'bare' }, hours: '2', cost: '0' }),
      on(27, BRAM, { step: 'wires', looks: { wires: 'mended' }, hours: '7', cost: '60' }),
      on(27, BRAM, { step: 'fused-supply', cost: '30', hours: '1' }),
      on(27, BRAM, { pass: 'wiring' }),
      on(34, BRAM, { step: 'oil-drain', looks: { 'engine-oil': 'black' }, hours: '1' }),
      on(34, BRAM, { step: 'coolant-drain', hours: '1' }),
      on(34, BRAM, { step: 'brake-fluid-look' }),
      on(34, BRAM, { step: 'gear-oils-look' }),
      on(34, BRAM, { pass: 'drains' }),
      on(41, BRAM, { step: 'plugs-out', hours: '1' }),
      on(41, BRAM, { step: 'bores-oiled', cost: '12' }),
      on(46, BRAM, { step: 'turn-by-hand', looks: { turns: 'stuck' }, note: 'A hand’s width, then nothing.' }),
      on(53, BRAM, { step: 'soak', note: 'A little every evening. On the seventh it moved.', cost: '18', hours: '4' }),
      on(54, BRAM, { looks: { turns: 'two smooth turns' } }),
      on(54, BRAM, { step: 'valves-move', hours: '2', cost: '20' }),
      on(54, BRAM, { pass: 'free' }),
      on(60, BRAM, { step: 'oil-fresh', cost: '64', hours: '1' }),
      on(60, BRAM, { step: 'pre-oil', looks: { 'pre-oil': 'pressure' } }),
      on(60, BRAM, { pass: 'pre-oil' }),
      on(66, ODILE, { step: 'tank', looks: { 'tank-inside': 'rust' }, cost: '40', hours: '5', note: 'Brown soup.' }),
    ],
  };
};

/** Seen on a Sunday: nobody has said yes. */
const lookedAt = (today: CivilDate): DemoRevival => {
  const ago = counting(today);
  return {
    id: REVIVALS.fennimore,
    car: {
      id: CARS.fennimore,
      name: 'Fennimore Breakwater',
      built: year(ago(39)),
      start: 'hatchback-timing-belt',
      ours: false,
    },
    begunOn: daysAgo(today, 4),
    begunBy: BRAM,
    lastRan: before(ago(5)),
    lastRanBy: 'seller’s word',
    why: 'papers',
    whyBy: 'seller’s word',
    stood: ['covered', 'coast'],
    putAway: 'shut off',
    ceiling: '6000',
    hands: 'own',
    dates: [{ kind: 'tires-road', typed: tireNumber(ago(9)), evidence: 'read on the part' }],
    said: [
      {
        day: daysAgo(today, 4),
        by: BRAM,
        looks: { title: 'can be had', floor: 'soft', 'fuel-smell': 'stale', rodents: 'none', tried: 'turned' },
        note: 'He jumped it from his van before I could say no.',
      },
    ],
  };
};
