/** Looked after with love and put off with skill: its timing belt is overdue. */
import type { DemoCar, DemoPart } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { BRAM, CARS, PLACES } from './people.ts';
import { answered, each, filled, fitted, gauged, looked, made, monthly, moved, part, printed, until } from './tell.ts';
import {
  type Ago,
  about,
  counting,
  daysAgo,
  hoseLabel,
  month,
  monthFirst,
  quarter,
  shortMonth,
  tireNumber,
  year,
} from './typed.ts';

export const norrhalm = (today: CivilDate): DemoCar => {
  const ago = counting(today);
  return {
    id: CARS.norrhalm,
    name: 'Norrhalm 25 C convertible',
    note: 'The coupe with its roof cut off at the factory. Runs on LPG since its second owner.',
    built: 'May 1993',
    start: 'coupe-injection-abs',
    without: ['vacuum-servo', 'spare-full', 'battery-flooded', 'fixed-roof'],
    having: ['lpg-tank', 'high-pressure-brakes', 'spare-compact', 'battery-agm', 'powered-soft-top', 'airbags'],
    addedOn: ago(3, 2),
    addedBy: BRAM,
    place: PLACES.leanTo,
    odometer: [
      { day: ago(3, 2), km: 168_200 },
      { day: ago(2, 2), km: 170_950 },
      { day: ago(1, 2), km: 173_400 },
      { day: ago(0, 3), km: 175_020 },
    ],
    parts: [...running(ago), ...engine(ago, today), ...comfort(ago, today)],
  };
};

const running = (ago: Ago): DemoPart[] => {
  const set = made(tireNumber(ago(4, 8)), 'read on the part');
  return [
    ...each(['front left', 'front right', 'rear right'], {
      ...part('tires-road', set),
      details: answered({ placard: '32 psi' }),
      readings: [
        gauged('tread', '5 /32 in', ago(0, 3), { instrument: 'tread gauge' }),
        gauged('hardness', '69', ago(0, 3), { warmth: '60 °F', instrument: 'durometer' }),
      ],
    }),
    {
      ...part('tires-road', made(tireNumber(ago(1, 6)), 'read on the part')),
      position: 'rear left',
      before: [until(ago(1, 4), 'A nail in the sidewall', set)],
    },
    part('tire-compact-spare', made('original', 'read on the part')),
    part('valve-stems', fitted(month(ago(4, 7)), 'receipt')),
    {
      ...part('brake-fluid-glycol', filled(monthFirst(ago(0, 2)), 'receipt')),
      details: answered({ grade: 'dot-4', hoses: 'rubber' }),
      before: [
        until(ago(1, 10), 'Every other year', filled(monthFirst(ago(3, 9)), 'receipt')),
        {
          ...until(ago(0, 2), 'Every other year', filled(monthFirst(ago(1, 10)), 'receipt')),
          details: answered({ grade: 'dot-4' }),
          readings: [gauged('water', '2.4', ago(0, 3), { instrument: 'water pen' })],
        },
      ],
    },
    ...each(['front left', 'front right'], {
      ...part('brake-hoses', made(hoseLabel(ago(2, 6)), 'read on the part')),
      before: [until(ago(2, 4), 'Let go slowly after braking', made('original', 'assumed'))],
    }),
    {
      ...part('brake-accumulator', made(month(ago(7, 11)), 'read on the part')),
      note: 'Pump runs at every second stop. The new one is four weeks away, they say.',
    },
    part('calipers', fitted(about(ago(9)), 'seller’s word')),
    part('brake-master', fitted(year(ago(12)), 'receipt')),
    part('brake-lines', fitted('original', 'assumed'), looked(ago(0, 3), 'Surface rust over the axle.')),
    part('brake-friction', fitted(monthFirst(ago(4, 1)), 'receipt', { km: 166_300 })),
    part('drums-discs', looked(ago(0, 3))),
    part('parking-brake', looked(ago(0, 3))),
    part('wheel-fasteners', looked(ago(1, 4))),
    part('dampers', fitted(monthFirst(ago(5, 6)), 'receipt')),
    part('joint-boots', fitted(year(ago(5)), 'receipt')),
    part('bushings', fitted(year(ago(9)), 'receipt')),
    part('abs-unit', looked(ago(1, 4), 'Lamp out after two seconds.')),
    part('brake-light-switch', looked(ago(0, 3))),
    part('steering-coupling', fitted('original', 'assumed')),
    { ...part('ps-fluid', filled(monthFirst(ago(2, 1)), 'receipt')), before: [until(ago(2, 1), 'Dark')] },
    { ...part('flex-disc', made(shortMonth(ago(11, 2)), 'read on the part')), note: 'Cracked between the bolts.' },
  ];
};

const engine = (ago: Ago, today: CivilDate): DemoPart[] => {
  const fueled = daysAgo(ago(0, 3), 10);
  const oilDay = ago(0, 3);
  return [
    {
      ...part('fuel-gasoline', filled(monthFirst(fueled), 'receipt')),
      before: [until(fueled, 'Filled up', filled('unknown', 'assumed'))],
    },
    part('fuel-hose-high', made(quarter(ago(5)), 'read on the part')),
    part('lpg-tank', made(month(ago(8, 3)), 'read on the part', { note: 'Plate in the spare-wheel well.' })),
    part('evap-canister', fitted('original', 'assumed')),
    part('injectors', fitted('original', 'assumed')),
    part('exhaust', fitted(year(ago(6)), 'receipt'), looked(ago(0, 3))),
    part('engine-idle', moved(ago(0, 3))),
    part('clutch-plate', moved(ago(0, 3))),
    {
      ...part('engine-oil', filled(monthFirst(oilDay), 'receipt', { km: 175_020 })),
      before: [until(oilDay, 'Oil change', filled(month(ago(3, 4)), 'receipt', { km: 167_700 }))],
    },
    {
      ...part('oil-filter', fitted(monthFirst(oilDay), 'receipt', { km: 175_020 })),
      before: [until(oilDay, 'Oil change')],
    },
    {
      ...part('timing-belt', fitted(monthFirst(ago(8, 2)), 'receipt', { km: 151_300 })),
      note: 'Booked twice, called off twice.',
    },
    part('water-pump', fitted(monthFirst(ago(8, 2)), 'receipt', { km: 151_300, note: 'With the belt.' })),
    part('v-belt', made('not looked yet', 'assumed')),
    {
      ...part('coolant-iat', filled(monthFirst(ago(1, 3)), 'receipt', { km: 173_100 })),
      note: 'Topped up from the garden hose ever since, as I now hear.',
      details: answered({ glycol: 'ethylene', volume: '10' }),
      readings: [
        gauged('freeze-point', '-33 °F', ago(1, 2), { instrument: 'refractometer' }),
        gauged('freeze-point', '-4 °F', ago(0, 1), { instrument: 'refractometer' }),
      ],
      before: [until(ago(1, 3), 'Every other year', filled(year(ago(4)), 'receipt'))],
    },
    part('radiator-hoses', made('unknown', 'assumed'), fitted(monthFirst(ago(4, 10)), 'receipt')),
    {
      ...part('expansion-tank', made(shortMonth(ago(9, 10)), 'read on the part')),
      note: 'Yellow, but no cracks yet.',
    },
    {
      ...part('clutch-fluid', filled(monthFirst(ago(0, 2)), 'receipt')),
      before: [until(ago(0, 2), 'With the brake fluid')],
    },
    ...['spark-plugs', 'plug-leads', 'cap-rotor'].map((kind) => ({
      ...part(kind, fitted(monthFirst(ago(2, 2)), 'receipt', { km: 170_950 })),
      before: [until(ago(2, 2), 'Misfired in the wet')],
    })),
    {
      ...part('battery-agm', made(shortMonth(ago(1, 8)), 'read on the part')),
      details: answered({ chemistry: 'agm', volts: '12', capacity: '70', connection: 'disconnected' }),
      readings: monthly(ago, 'rest-voltage', ['12.74', '12.73', '12.71'], { instrument: 'pocket multimeter' }),
      before: [until(ago(1, 7), 'Would not hold a charge', made('unknown', 'assumed'))],
    },
    {
      ...part('maintainer', fitted(year(ago(5)), 'own memory'), looked(daysAgo(today, 45))),
      note: 'No socket under the lean-to, so it lies in the trunk.',
    },
  ];
};

const comfort = (ago: Ago, today: CivilDate): DemoPart[] => [
  { ...part('seat-belts', made('original', 'read on the part')), position: 'driver' },
  {
    ...part('seat-belts', made(month(ago(8)), 'read on the part')),
    position: 'front passenger',
    note: 'The dog ate the first one.',
  },
  part('airbags', made('original', 'assumed')),
  part('first-aid', printed(month(ago(0, -8)), 'read on the part', { on: ago(0, 3) }), looked(ago(0, 3))),
  part('lamps', looked(daysAgo(today, 12))),
  { ...part('wipers', fitted(monthFirst(ago(1, 3)), 'own memory')), before: [until(ago(1, 3), 'Smeared')] },
  part('soft-top', fitted(year(ago(6)), 'receipt')),
  part('roof-fluid', filled('original', 'seller’s word')),
  part('roof-rams', fitted('unknown', 'assumed', { note: 'The left one sweats.' })),
  part('ac-system', moved(ago(1, 1), 'Still cold.')),
];
