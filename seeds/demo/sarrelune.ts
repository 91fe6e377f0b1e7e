/** Bought not a year ago: half of it known, half of that from the seller. */
import type { DemoCar, DemoPart } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { CARS, ODILE } from './people.ts';
import { answered, each, filled, fitted, gauged, looked, made, moved, part, printed, until } from './tell.ts';
import {
  type Ago,
  about,
  between,
  counting,
  dayFirst,
  daysAgo,
  hoseLabel,
  month,
  shortMonth,
  tireNumber,
  yearAlone,
} from './typed.ts';

export const sarrelune = (today: CivilDate): DemoCar => {
  const ago = counting(today);
  return {
    id: CARS.sarrelune,
    name: 'Sarrelune 22 D wagon',
    note: 'Rises when started and sinks overnight, as it should.',
    built: '1979',
    start: 'gas-sphere-mineral-hydraulics',
    without: ['gasoline', 'carburetor', 'points-ignition', 'coolant-iat'],
    having: ['diesel', 'fuel-injection', 'compression-ignition', 'coolant-waterless', 'first-aid-kit'],
    addedOn: ago(0, 10),
    addedBy: ODILE,
    odometer: [
      { day: ago(0, 10), km: 209_480 },
      { day: ago(0, 6), km: 211_900 },
      { day: ago(0, 2), km: 214_350 },
    ],
    parts: [...running(ago), ...machine(ago, today)],
  };
};

const running = (ago: Ago): DemoPart[] => {
  const bought = yearAlone(ago(5, 4));
  return [
    ...each(['front left', 'front right'], {
      ...part('tires-road', made(bought.typed, 'receipt', { choice: bought.choice, note: 'It says no more.' })),
      readings: [
        gauged('cold-pressure', '2,1', ago(0, 1), { instrument: 'pencil gauge', note: 'Its placard is painted over.' }),
      ],
    }),
    ...each(['rear left', 'rear right'], part('tires-road', made(tireNumber(ago(10, 7)), 'read on the part'))),
    {
      ...part('tire-spare', made('not looked yet', 'assumed')),
      note: 'Under the floor, and the winch is stuck.',
    },
    part('central-hydraulics', filled(between(ago(5), ago(3)), 'workshop statement')),
    part('hydro-spheres', fitted(about(ago(7)), 'workshop statement')),
    {
      ...part('brake-hoses', made(hoseLabel(ago(4, 6)), 'read on the part')),
      position: 'front right',
      note: 'The others are behind the shields.',
    },
    part('calipers', fitted('unknown', 'assumed')),
    part('brake-friction', fitted(month(ago(2, 11)), 'receipt', { km: 201_300 })),
    part('parking-brake', looked(ago(0, 9), 'Holds on the ramp, just.')),
    part('cv-boots', fitted('unknown', 'assumed'), looked(ago(0, 3), 'Whole.')),
    ...each(
      ['driver', 'front passenger'],
      part('seat-belts', made('original', 'read on the part', { note: 'Label of the same year.' })),
    ),
    part('first-aid', printed(month(ago(3)), 'read on the part')),
  ];
};

const machine = (ago: Ago, today: CivilDate): DemoPart[] => {
  const fueled = ago(0, 4);
  const wiped = ago(0, 9);
  return [
    {
      ...part('fuel-diesel', filled(dayFirst(fueled), 'receipt')),
      details: answered({ blend: 'b7', stabilized: 'no', tank: '68', fullness: '35' }),
      before: [until(fueled, 'Filled up', filled('unknown', 'assumed'))],
    },
    part('fuel-filter', fitted('unknown', 'assumed')),
    part('injectors', fitted('original', 'seller’s word', { note: '“Never needed any.”' })),
    part(
      'engine-oil',
      filled(dayFirst(ago(0, 11)), 'read on the part', { km: 208_900, note: 'Sticker in the door frame.' }),
    ),
    part('engine-idle', moved(ago(0, 2))),
    {
      ...part('coolant-waterless', filled(about(ago(4)), 'seller’s word')),
      note: 'The cap says so too: never top it up with water.',
    },
    part('v-belt', made('unknown', 'assumed', { note: 'Print rubbed off.' })),
    part('gearbox-oil', filled('not looked yet', 'assumed')),
    {
      ...part('battery-flooded', made(shortMonth(ago(2, 1)), 'read on the part')),
      readings: [
        gauged('density', '1,245', ago(0, 3), {
          instrument: 'hydrometer',
          note: 'The thermometer was in the kitchen.',
        }),
      ],
    },
    {
      ...part('washer-fluid'),
      readings: [gauged('freeze-point', '-18', ago(0, 2), { instrument: 'refractometer' })],
    },
    part('exhaust', fitted('not looked yet', 'assumed')),
    part('wiring', fitted('original', 'seller’s word')),
    part('lamps', looked(daysAgo(today, 20))),
    { ...part('wipers', fitted(dayFirst(wiped), 'receipt')), before: [until(wiped, 'Torn')] },
  ];
};
