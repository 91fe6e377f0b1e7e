/** Came from abroad with a gas conversion, and with papers that do not agree. */
import type { DemoCar, DemoPart } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { BRAM, CARS, NELL, ODILE, PLACES } from './people.ts';
import {
  answered,
  each,
  filled,
  fitted,
  gauged,
  looked,
  made,
  monthly,
  moved,
  part,
  printed,
  serviced,
  until,
  WHEELS,
} from './tell.ts';
import {
  type Ago,
  about,
  batteryCode,
  between,
  counting,
  dayFirst,
  daysAgo,
  month,
  monthNumber,
  quarter,
  tireNumber,
  year,
} from './typed.ts';

export const zwirbel = (today: CivilDate): DemoCar => {
  const ago = counting(today);
  return {
    id: CARS.zwirbel,
    name: 'Zwirbel 12 bus',
    note: 'Nine seats, air-cooled, runs on gas or on gas. Everybody’s favorite on the way to the beach.',
    built: 'June 1971',
    start: 'rear-engine-air-cooled',
    without: [],
    having: ['cng-tank', 'rubber-or-fluid-springs', 'child-seat', 'flares'],
    addedOn: ago(2, 3),
    addedBy: ODILE,
    place: PLACES.barn,
    odometer: [
      { day: ago(2, 3), km: 62_480 },
      { day: ago(1, 4), km: 63_900 },
      { day: ago(0, 11), km: 64_300 },
      { day: ago(0, 1), km: 66_110 },
    ],
    parts: [...wheelsAndBrakes(ago), ...fuel(ago), ...people(ago), ...rest(ago, today)],
  };
};

const wheelsAndBrakes = (ago: Ago): DemoPart[] => [
  ...each(WHEELS, part('tires-road', made(tireNumber(ago(9, 3)), 'read on the part'))),
  {
    ...part('tire-spare', made('DOT XN VT K8 235', 'read on the part', { ninetiesMark: 'seen' })),
    note: 'Behind the front panel since before our time.',
  },
  part('wheel-bearings', serviced(year(ago(3)), 'receipt', { km: 61_200 })),
  {
    ...part(
      'brake-fluid-glycol',
      filled(dayFirst(ago(2, 5)), 'receipt', { note: 'Says the invoice.' }),
      filled(dayFirst(ago(3, 2)), 'receipt', { note: 'Says the slip in the glove box, with the same mileage.' }),
    ),
    details: answered({ grade: 'dot-4', hoses: 'rubber' }),
    readings: [
      gauged('water', '2,5', ago(0, 9), { instrument: 'water pen' }),
      gauged('copper', '200', ago(0, 1), { instrument: 'copper strip', by: BRAM }),
      gauged('boiling-point', '280 °F', ago(0, 1), {
        instrument: 'boiling tester',
        note: 'From a rear bleeder; the pen had promised more.',
        by: BRAM,
      }),
    ],
  },
  ...each(
    ['front left', 'front right'],
    part('brake-hoses', made('not looked yet', 'assumed'), fitted(between(ago(17), ago(13)), 'seller’s word')),
  ),
  part('brake-master', fitted('unknown', 'assumed')),
  part(
    'wheel-cylinders',
    fitted(month(ago(2, 6)), 'workshop statement', { note: 'By telephone, and they were in a hurry.' }),
    fitted(about(ago(12)), 'seller’s word'),
  ),
  part('drums-discs', looked(ago(0, 9))),
  part('dampers', fitted(about(ago(20)), 'seller’s word')),
  part('fluid-rubber-springs', fitted('original', 'assumed', { note: 'Sits low on the left.' })),
  part('grease-points', serviced(dayFirst(ago(0, 9)), 'own memory', { on: ago(0, 9), km: 64_700 })),
];

const fuel = (ago: Ago): DemoPart[] => {
  const tankful = daysAgo(ago(0, 5), 5);
  return [
    {
      ...part('fuel-gasoline', filled(dayFirst(tankful), 'receipt')),
      note: 'For starting only; the rest is gas.',
      details: answered({ blend: 'e10', stabilized: 'no', tank: '40', fullness: '20' }),
      before: [until(tankful, 'Filled up', filled('unknown', 'assumed'))],
    },
    {
      ...part('cng-tank', printed(monthNumber(ago(0, -2)), 'read on the part')),
      note: '“Do not use after”, says the plate. The gas shop wants two weeks’ notice.',
    },
    part('fuel-hose-low', made(quarter(ago(6, 6)), 'read on the part')),
    part('fuel-pump-mech', fitted('unknown', 'assumed')),
    part('carb-soft', fitted(year(ago(11)), 'receipt')),
  ];
};

const people = (ago: Ago): DemoPart[] => [
  {
    ...part(
      'seat-belts',
      made(month(ago(11, 4)), 'read on the part'),
      made('original', 'seller’s word', { note: 'The label knows better.' }),
    ),
    position: 'driver',
  },
  { ...part('seat-belts', made('original', 'assumed')), position: 'front passenger' },
  {
    ...part('child-seat', made(month(ago(4, 1)), 'read on the part', { on: ago(0, 8), by: NELL })),
    note: 'Bought new for the grandchildren.',
  },
  part('flares', printed(month(ago(0, 5)), 'read on the part')),
];

const METER = { instrument: 'pocket multimeter' };

const rest = (ago: Ago, today: CivilDate): DemoPart[] => {
  const battery = batteryCode(ago(3, 7));
  const oilDay = ago(0, 11);
  return [
    {
      ...part('engine-oil', filled(dayFirst(oilDay), 'receipt', { km: 64_300 })),
      before: [until(oilDay, 'Oil change', filled('unknown', 'assumed'))],
    },
    {
      ...part('oil-filter', fitted(dayFirst(oilDay), 'receipt', { km: 64_300 })),
      before: [until(oilDay, 'Oil change')],
    },
    part('engine-idle', moved(ago(0, 1))),
    part('v-belt', made('not looked yet', 'assumed'), fitted(about(ago(11)), 'own memory')),
    part('spark-plugs', fitted(month(ago(2, 6)), 'receipt', { km: 61_900 })),
    part('points-condenser', fitted(month(ago(2, 6)), 'receipt', { km: 61_900 })),
    {
      ...part('battery-flooded', made(battery.typed, 'read on the part', { choice: battery.choice })),
      details: answered({ chemistry: 'antimony', volts: '12', capacity: '45', connection: 'connected' }),
      readings: [
        ...monthly(ago, 'rest-voltage', ['12,68', '12,66', '12,63', '12,6', '12,56', '12,52', '12,46', '12,41'], METER),
        gauged('rest-voltage', '12,29', daysAgo(today, 6), {
          ...METER,
          note: 'Short trips never fill it up again, and the radio sips.',
        }),
      ],
    },
    {
      ...part('wiring', fitted('original', 'assumed')),
      details: answered({ electronics: 'none' }),
      readings: [
        gauged('standing-drain', '32', ago(0, 2), { ...METER, note: 'Gone with the fuse of the radio out.', by: BRAM }),
      ],
    },
    {
      ...part('trim-care'),
      readings: [gauged('humidity', '76', ago(0, 1), { instrument: 'dial hygrometer', note: 'Mind the curtains.' })],
    },
    part('lamps', looked(daysAgo(today, 40))),
    part('windshield-seal', fitted('original', 'assumed', { note: 'Wet knees in the rain.' })),
  ];
};
