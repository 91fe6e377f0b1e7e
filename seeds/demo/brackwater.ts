/** Driven every summer, and hardly a part without its paper. */
import type { DemoCar, DemoPart } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { BRAM, CARS, ODILE, PLACES } from './people.ts';
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
  counting,
  dayFirst,
  daysAgo,
  hoseLabel,
  month,
  monthFirst,
  monthNumber,
  quarter,
  tireNumber,
  year,
} from './typed.ts';

export const brackwater = (today: CivilDate): DemoCar => {
  const ago = counting(today);
  const recent = daysAgo(today, 12);
  return {
    id: CARS.brackwater,
    name: 'Brackwater 1600 roadster',
    note: 'The one that gets driven: hill climbs in June, the ferry road all summer.',
    built: '14 March 1964',
    start: 'roadster-disc-drum-overdrive',
    without: ['glycol-fluid', 'battery-flooded', 'seat-belts'],
    having: ['fuel-cell', 'silicone-fluid', 'battery-lithium', 'harness-fia', 'harness-sfi', 'battery-maintainer'],
    addedOn: ago(4, 6),
    addedBy: BRAM,
    place: PLACES.barn,
    odometer: [
      { day: ago(4, 6), km: 81_450 },
      { day: ago(3, 7), km: 84_120 },
      { day: ago(2, 7), km: 86_980 },
      { day: ago(1, 7), km: 88_870 },
      { day: ago(0, 10), km: 90_520 },
      { day: ago(0, 7), km: 90_900 },
      { day: ago(0, 4), km: 93_260 },
      { day: ago(0, 1), km: 95_480 },
    ],
    parts: [
      ...wheels(ago),
      ...brakes(ago, recent),
      ...chassis(ago),
      ...fuel(ago),
      ...safety(ago, recent),
      ...engine(ago),
      ...cooling(ago),
      ...transmission(ago),
      ...electrics(ago, recent),
      ...body(ago),
    ],
  };
};

const receipt = (day: CivilDate) => fitted(monthFirst(day), 'receipt');
const poured = (day: CivilDate, km?: number) => filled(monthFirst(day), 'receipt', km === undefined ? {} : { km });

/** Read when the stove by the bench has warmed them to the same each time; the rear right one has a tired valve. */
const PRESSURES: Readonly<Record<(typeof WHEELS)[number], readonly string[]>> = {
  'front left': ['28.5 psi', '28 psi', '27.5 psi', '27 psi'],
  'front right': ['28.5 psi', '28 psi', '27 psi', '26.5 psi'],
  'rear left': ['30 psi', '29 psi', '28.5 psi', '28 psi'],
  'rear right': ['30 psi', '29 psi', '27 psi', '22.5 psi'],
};

const BENCH = { warmth: '64 °F', instrument: 'pencil gauge' };

const tires = (ago: Ago): DemoPart[] =>
  WHEELS.map((position) => ({
    ...part('tires-road', made(tireNumber(ago(3, 2)), 'read on the part'), receipt(ago(3, 1))),
    position,
    details: answered({ placard: '26 psi', sidewall: '36 psi', 'cap-ply': 'no' }),
    readings: [
      gauged('tread', '9 /32 in', ago(0, 7), { instrument: 'tread gauge' }),
      gauged('hardness', position.startsWith('rear') ? '64' : '61', ago(0, 7), {
        warmth: '64 °F',
        instrument: 'durometer',
      }),
      ...monthly(ago, 'cold-pressure', PRESSURES[position], BENCH),
    ],
    before: [until(ago(3, 1), 'Cracked at the bead', made(tireNumber(ago(13)), 'read on the part'))],
  }));

const wheels = (ago: Ago): DemoPart[] => [
  ...tires(ago),
  {
    ...part('tire-spare', made(tireNumber(ago(16)), 'read on the part')),
    note: 'Holds air, and that is all it does.',
  },
  { ...part('inner-tubes', receipt(ago(3, 1))), before: [until(ago(3, 1), 'With the tires')] },
  part('wheel-fasteners', looked(ago(0, 4), 'Two spokes tightened.'), looked(ago(0, 1))),
  part('wheel-bearings', serviced(monthFirst(ago(2, 7)), 'own memory', { on: ago(2, 7), km: 86_980 })),
  part('jack-tools', moved(ago(0, 8))),
];

const brakes = (ago: Ago, recent: CivilDate): DemoPart[] => [
  {
    ...part('brake-fluid-silicone', poured(ago(3)), looked(ago(0, 4), 'No water at the bleeders.')),
    before: [until(ago(3), 'Changed over from glycol, system stripped and dried')],
  },
  ...each(
    ['front left', 'front right'],
    part('brake-hoses', made(hoseLabel(ago(5, 10)), 'read on the part'), receipt(ago(5, 8))),
  ),
  {
    ...part('brake-hoses', made(hoseLabel(ago(1, 5)), 'read on the part'), receipt(ago(1, 3))),
    position: 'rear',
    before: [until(ago(1, 3), 'Chafed by the exhaust', made('unknown', 'assumed'))],
  },
  part('brake-lines', fitted(about(ago(16)), 'workshop statement'), looked(ago(0, 4), 'Copper-nickel, clean.')),
  part('brake-master', receipt(ago(6))),
  { ...part('wheel-cylinders', receipt(ago(3, 3))), before: [until(ago(3, 3), 'The left one wept')] },
  part('calipers', fitted(year(ago(7)), 'receipt'), looked(ago(0, 4))),
  {
    ...part('brake-friction', fitted(monthFirst(ago(2, 7)), 'receipt', { km: 86_980 }), looked(ago(0, 4))),
    before: [until(ago(2, 7), 'Worn to 3 mm')],
  },
  part('drums-discs', looked(ago(0, 1))),
  part('parking-brake', looked(ago(0, 7))),
  part('brake-light-switch', looked(recent)),
];

const chassis = (ago: Ago): DemoPart[] => [
  part('bushings', fitted(about(ago(12)), 'seller’s word')),
  part('dampers', receipt(ago(8))),
  part('steering-coupling', fitted('not looked yet', 'assumed')),
  { ...part('joint-boots', receipt(ago(2, 4))), before: [until(ago(2, 4), 'Split')] },
  part(
    'grease-points',
    serviced(monthFirst(ago(1, 7)), 'own memory', { on: ago(1, 7), km: 88_870 }),
    serviced(monthFirst(ago(0, 10)), 'own memory', { on: ago(0, 10), km: 90_520, note: 'All eleven nipples.' }),
  ),
];

const fuel = (ago: Ago): DemoPart[] => [
  {
    ...part('fuel-gasoline', poured(ago(0, 1), 95_480)),
    details: answered({ blend: 'premium-e0', stabilized: 'yes', tank: '12 US gal', fullness: '95' }),
    before: [
      until(ago(0, 10), 'Filled up'),
      until(ago(0, 4), 'Filled up', poured(ago(0, 10))),
      until(ago(0, 1), 'Filled up', poured(ago(0, 4))),
    ],
  },
  part('fuel-stabilizer', printed(monthNumber(ago(-1, -2)), 'read on the part', { on: ago(0, 7) })),
  {
    ...part(
      'fuel-hose-low',
      made(quarter(ago(3, 6)), 'read on the part'),
      receipt(ago(3, 5)),
      looked(ago(0, 4), 'Dry and supple.'),
    ),
    before: [until(ago(3, 5), 'Not made for ethanol', made('unknown', 'assumed'))],
  },
  { ...part('tank-hoses', receipt(ago(3, 5))), before: [until(ago(3, 5), 'With the fuel hoses')] },
  {
    ...part('fuel-filter', fitted(monthFirst(ago(1, 11)), 'own memory', { km: 88_100 })),
    before: [until(ago(1, 11), 'Brown inside')],
  },
  part('fuel-pump-elec', receipt(ago(5, 2))),
  { ...part('carb-soft', receipt(ago(3, 7)), looked(ago(0, 7))), before: [until(ago(3, 7), 'Rebuilt')] },
  part('carb-float', looked(ago(3, 7))),
  part('fuel-tank', looked(ago(1, 2))),
  {
    ...part('fuel-cell-bladder', made(month(ago(4, 10)), 'read on the part')),
    note: 'The scrutineer reads the date, not the foam.',
  },
];

const safety = (ago: Ago, recent: CivilDate): DemoPart[] => [
  {
    ...part('harness-fia', printed(`not valid after ${year(ago(0))}`, 'read on the part')),
    note: 'Driver’s side.',
  },
  {
    ...part('harness-sfi', made(`SFI 16.1 ${monthNumber(ago(2, 3))}`, 'read on the part')),
    note: 'Passenger’s side. Out of date: no passengers up the hill until the new one comes.',
    before: [until(ago(2, 2), 'Straps faded')],
  },
  part('extinguisher', made(month(ago(6, 4)), 'read on the part'), looked(ago(0, 2)), looked(recent)),
  {
    ...part('extinguisher', made(year(ago(13)), 'read on the part')),
    position: 'trunk',
    note: 'Turned up behind the spare.',
    byHand: true,
  },
  part('triangle-vest', moved(ago(0, 7))),
];

const engine = (ago: Ago): DemoPart[] => [
  {
    ...part('engine-oil', poured(ago(0, 7), 90_900)),
    before: [
      until(ago(3, 7), 'Yearly service', filled(year(ago(5)), 'workshop statement', { km: 80_100 })),
      until(ago(2, 7), 'Yearly service', poured(ago(3, 7), 84_120)),
      until(ago(1, 7), 'Yearly service', poured(ago(2, 7), 86_980)),
      until(ago(0, 7), 'Yearly service', poured(ago(1, 7), 88_870)),
    ],
  },
  {
    ...part('oil-filter', fitted(monthFirst(ago(0, 7)), 'receipt', { km: 90_900 })),
    before: [
      until(ago(1, 7), 'Yearly service'),
      until(ago(0, 7), 'Yearly service', fitted(monthFirst(ago(1, 7)), 'receipt', { km: 88_870 })),
    ],
  },
  part('engine-idle', moved(ago(0, 1))),
  part('oil-seals', fitted(about(ago(15)), 'seller’s word', { note: 'Leaves its mark, like all of them.' })),
  part('engine-mounts', fitted(year(ago(9)), 'receipt')),
  { ...part('air-filter', receipt(ago(1, 7)), looked(ago(0, 4))), before: [until(ago(1, 7), 'Yearly service')] },
  { ...part('vacuum-hoses', receipt(ago(2, 2))), before: [until(ago(2, 2), 'Hard as wood')] },
  part('oil-cooler-hoses', made(quarter(ago(4, 8)), 'read on the part')),
  part('exhaust', fitted(year(ago(10)), 'receipt'), looked(ago(0, 7))),
  {
    ...part('v-belt', made(quarter(ago(3, 9)), 'read on the part'), receipt(ago(3, 7)), looked(ago(0, 1))),
    before: [until(ago(3, 7), 'Yearly service')],
  },
];

const cooling = (ago: Ago): DemoPart[] => [
  {
    ...part('coolant-iat', poured(ago(1, 10), 88_300)),
    details: answered({ glycol: 'ethylene', volume: '2 US gal' }),
    readings: [
      gauged('freeze-point', '-36 °F', ago(1, 9), { instrument: 'refractometer' }),
      gauged('ph', '9', ago(0, 2), { instrument: 'strip' }),
      gauged('stray-voltage', '0.06', ago(0, 2), { instrument: 'pocket multimeter' }),
      gauged('freeze-point', '-34 °F', ago(0, 2), { instrument: 'refractometer' }),
    ],
    before: [until(ago(1, 10), 'Rusty', filled('unknown', 'assumed'))],
  },
  {
    ...part('radiator-hoses', made(quarter(ago(2, 9)), 'read on the part'), receipt(ago(2, 7))),
    before: [until(ago(2, 7), 'Soft at the clamps')],
  },
  ...['heater-hoses', 'coolant-cap', 'thermostat'].map((kind) => ({
    ...part(kind, receipt(ago(2, 7))),
    before: [until(ago(2, 7), 'With the radiator hoses')],
  })),
  part('water-pump', receipt(ago(6, 1))),
  part('radiator-core', fitted(year(ago(12)), 'receipt')),
];

const transmission = (ago: Ago): DemoPart[] => [
  { ...part('clutch-fluid', poured(ago(1, 3))), before: [until(ago(1, 3), 'Black')] },
  { ...part('clutch-hydraulics', receipt(ago(2, 5))), before: [until(ago(2, 5), 'Slave cylinder leaked')] },
  part('clutch-plate', moved(ago(0, 1))),
  { ...part('gearbox-oil', poured(ago(3, 7), 84_120)), before: [until(ago(3, 7), 'Yearly service')] },
  { ...part('overdrive', poured(ago(1, 7), 88_870)), before: [until(ago(1, 7), 'Slow to engage')] },
  { ...part('diff-oil', poured(ago(3, 7), 84_120)), before: [until(ago(3, 7), 'Yearly service')] },
  part('u-joints', looked(ago(0, 7))),
];

const electrics = (ago: Ago, recent: CivilDate): DemoPart[] => {
  const battery = batteryCode(ago(2, 4));
  const serviceDay = ago(1, 7);
  const fittedThen = fitted(monthFirst(serviceDay), 'receipt', { km: 88_870 });
  return [
    ...['spark-plugs', 'cap-rotor'].map((kind) => ({
      ...part(kind, fittedThen),
      before: [until(serviceDay, 'Yearly service')],
    })),
    {
      ...part('points-condenser', fittedThen, looked(ago(0, 4), 'Gap set.')),
      before: [until(serviceDay, 'Yearly service')],
    },
    part('plug-leads', receipt(ago(5, 5))),
    {
      ...part(
        'battery-lithium',
        made(battery.typed, 'read on the part', { choice: battery.choice }),
        receipt(ago(2, 2)),
        looked(ago(0, 2)),
      ),
      note: 'Has a charger of its own, and no other.',
      details: answered({ capacity: '20', connection: 'maintainer' }),
      readings: monthly(ago, 'rest-voltage', ['13.31', '13.3', '13.32'], { instrument: 'pocket multimeter' }),
      before: [until(ago(2, 2), 'Boiled over', made('unknown', 'assumed'))],
    },
    part('battery-terminals', looked(ago(0, 2))),
    part('wiring', fitted(about(ago(20)), 'seller’s word'), looked(ago(0, 7))),
    part('lamps', looked(ago(0, 1)), looked(recent)),
    part('generator', fitted(year(ago(7)), 'receipt')),
    part('maintainer', receipt(ago(5)), looked(recent)),
  ];
};

const body = (ago: Ago): DemoPart[] => [
  { ...part('wipers', receipt(ago(0, 8))), before: [until(ago(0, 8), 'Smeared')] },
  { ...part('washer-fluid', poured(ago(0, 7))), before: [until(ago(0, 7), 'Yearly service')] },
  part('cavity-wax', serviced(monthFirst(ago(2, 8)), 'receipt', { on: ago(2, 8) })),
  part('paint-care', serviced(dayFirst(ago(0, 5)), 'own memory', { on: ago(0, 5), by: ODILE })),
  part('soft-top', fitted(year(ago(5)), 'receipt')),
  {
    ...part('desiccant', moved(ago(0, 4))),
    note: 'One bag behind the seats, against the air of the barn.',
    readings: monthly(ago, 'humidity', ['52', '57', '63'], { instrument: 'dial hygrometer' }),
  },
];
