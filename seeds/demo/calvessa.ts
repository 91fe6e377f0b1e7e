/** Serviced by the book until the book was full, then no papers. */
import type { DemoCar, DemoPart } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { CARS, ODILE, PLACES } from './people.ts';
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
  until,
  WHEELS,
} from './tell.ts';
import {
  type Ago,
  after,
  counting,
  dayFirst,
  daysAgo,
  month,
  monthNumber,
  quarter,
  shortMonth,
  tireNumber,
  year,
} from './typed.ts';

export const calvessa = (today: CivilDate): DemoCar => {
  const ago = counting(today);
  return {
    id: CARS.calvessa,
    name: 'Calvessa GT 42',
    note: 'Folding steel roof, air springs, every motor it could have. Kneels on Sundays.',
    built: '2005',
    start: 'grand-tourer-powered-top',
    without: ['powered-soft-top'],
    having: ['powered-hard-top'],
    addedOn: ago(1, 8),
    addedBy: ODILE,
    place: PLACES.cellar,
    odometer: [
      { day: ago(1, 8), km: 88_600 },
      { day: ago(0, 11), km: 90_150 },
      { day: ago(0, 2), km: 91_730 },
    ],
    parts: [...running(ago), ...engine(ago), ...comfort(ago, today)],
  };
};

/** Pumped up for standing, and sinking as rubber lets them. */
const PRESSURES: Readonly<Record<(typeof WHEELS)[number], readonly string[]>> = {
  'front left': ['2,75', '2,7', '2,65', '2,6', '2,55'],
  'front right': ['2,75', '2,7', '2,65', '2,6', '2,6'],
  'rear left': ['2,9', '2,85', '2,8', '2,75', '2,7'],
  'rear right': ['2,9', '2,85', '2,75', '2,7', '2,65'],
};

const tires = (ago: Ago): DemoPart[] =>
  WHEELS.map((position) => ({
    ...part('tires-road', made(tireNumber(ago(1, 10)), 'read on the part'), fitted(dayFirst(ago(1, 7)), 'receipt')),
    position,
    details: answered({ placard: position.startsWith('front') ? '2,4' : '2,5', sidewall: '3,5', 'cap-ply': 'yes' }),
    readings: [
      gauged('tread', '7,1', ago(0, 11), { instrument: 'tread gauge' }),
      ...monthly(ago, 'cold-pressure', PRESSURES[position], { warmth: '14', instrument: 'digital gauge' }),
    ],
    before: [until(ago(1, 7), 'Too old to trust', made(tireNumber(ago(11)), 'read on the part'))],
  }));

const running = (ago: Ago): DemoPart[] => [
  ...tires(ago),
  {
    ...part('tpms-sensors', fitted(dayFirst(ago(1, 7)), 'receipt')),
    before: [until(ago(1, 7), 'With the tires', fitted('original', 'assumed'))],
  },
  part('tire-sealant-kit', printed(monthNumber(ago(0, -1)), 'read on the part')),
  {
    ...part('brake-fluid-glycol', filled(dayFirst(ago(1, 11)), 'receipt')),
    details: answered({ grade: 'dot-4', hoses: 'rubber', limit: '180' }),
    readings: [
      gauged('copper', '30', ago(0, 2), { instrument: 'copper strip' }),
      gauged('boiling-point', '208', ago(0, 2), {
        instrument: 'boiling tester',
        note: 'From the caliper farthest off.',
      }),
    ],
  },
  ...each(['front left', 'front right'], part('brake-hoses', made('DOT 2/05', 'read on the part'))),
  part('calipers', fitted('original', 'assumed')),
  part('brake-servo', fitted('original', 'assumed')),
  part('brake-friction', fitted(dayFirst(ago(2, 2)), 'receipt', { km: 87_700 })),
  part('drums-discs', looked(ago(0, 4))),
  part('parking-brake', looked(ago(0, 11))),
  part('brake-light-switch', looked(ago(0, 4))),
  part('wheel-fasteners', looked(ago(0, 11))),
  part('abs-unit', looked(ago(0, 11))),
  part('air-springs', fitted(after(ago(15)), 'workshop statement', { note: 'Their computer goes no further back.' })),
  part('ps-fluid', filled('original', 'seller’s word')),
  part('flex-disc', made('not looked yet', 'assumed')),
  part('cv-boots', fitted('original', 'assumed'), looked(ago(0, 11))),
];

const engine = (ago: Ago): DemoPart[] => {
  const [fueled, oilDay] = [ago(0, 2), ago(0, 11)];
  return [
    {
      ...part('fuel-gasoline', filled(dayFirst(fueled), 'receipt')),
      details: answered({ blend: 'e5', stabilized: 'no', tank: '80', fullness: '90' }),
      before: [until(fueled, 'Filled up', filled('unknown', 'assumed'))],
    },
    part('engine-idle', moved(ago(0, 2))),
    part('fuel-hose-high', made('not looked yet', 'assumed')),
    part('evap-canister', fitted('original', 'assumed')),
    {
      ...part('engine-oil', filled(dayFirst(oilDay), 'receipt', { km: 90_150 })),
      before: [until(oilDay, 'Oil change', filled(month(ago(2, 1)), 'receipt', { km: 87_900 }))],
    },
    {
      ...part('oil-filter', fitted(dayFirst(oilDay), 'receipt', { km: 90_150 })),
      before: [until(oilDay, 'Oil change')],
    },
    part('ribbed-belt', made(quarter(ago(5, 6)), 'read on the part')),
    part('belt-tensioner', fitted('unknown', 'assumed')),
    part('coolant-oat', filled(dayFirst(ago(4, 10)), 'receipt', { km: 84_000 })),
    part('radiator-hoses', made('original', 'assumed')),
    part('expansion-tank', made('2/05', 'read on the part')),
    { ...part('atf', filled('unknown', 'assumed')), note: 'Filled for life, they said. Whose?' },
    part('spark-plugs', fitted(year(ago(7)), 'receipt', { km: 79_000 })),
    {
      ...part('battery-agm', made(shortMonth(ago(6, 10)), 'read on the part')),
      details: answered({ chemistry: 'agm', volts: '12', capacity: '95', connection: 'maintainer' }),
      readings: monthly(ago, 'rest-voltage', ['12,86', '12,85', '12,85'], { instrument: 'pocket multimeter' }),
    },
  ];
};

const comfort = (ago: Ago, today: CivilDate): DemoPart[] => {
  const recent = daysAgo(today, 12);
  return [
    part('airbags', made('original', 'read on the part', { note: 'Sticker in the door frame.' })),
    ...each(['driver', 'front passenger'], part('seat-belts', made('original', 'read on the part'))),
    part('first-aid', printed(month(ago(-1, -8)), 'read on the part'), looked(ago(0, 3))),
    part('cabin-filter', fitted(dayFirst(ago(2, 6)), 'receipt')),
    part('ac-system', moved(ago(0, 2))),
    part('roof-fluid', filled(dayFirst(ago(3, 1)), 'receipt')),
    part('roof-rams', fitted('original', 'assumed', { note: 'A drop on the sun visor last summer.' })),
    {
      ...part('wipers', fitted(dayFirst(ago(0, 11)), 'receipt')),
      before: [until(ago(0, 11), 'Chattered')],
    },
    part('lamps', looked(recent)),
    {
      ...part('trim-care'),
      readings: monthly(ago, 'humidity', ['49', '50', '48'], { instrument: 'dial hygrometer' }),
    },
    {
      ...part('maintainer', fitted(dayFirst(ago(1, 6)), 'receipt'), looked(recent)),
      before: [until(ago(1, 6), 'The first one hummed')],
    },
  ];
};
