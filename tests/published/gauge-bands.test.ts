import { describe, expect, it } from 'vitest';
import { judge, type Verdict } from '../../src/ageing/judge.ts';
import type { Test } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import type { SourceKey } from '../../src/catalogue/sources.ts';
import { convert } from '../../src/catalogue/units.ts';

interface Published {
  kind: string;
  gauge: string;
  details?: Readonly<Record<string, string | number>>;
  coldest?: number;
  warmth?: number;
  /** Readings of each verdict, on the edges or one step of the instrument beside them: there is no tolerance. */
  good?: readonly number[];
  watch?: readonly number[];
  act?: readonly number[];
  /** What was published, in words; "from memory" where nothing was seen. */
  says: string;
  source: SourceKey;
}

const celsius = (degrees: number): number => convert(degrees, '°F', '°C');

/** The temperature acid densities are told at, °C: 80 °F in the Army’s table, 26.7 rounded. */
const REFERENCE = 26.7;

/** Least wet boiling points of the grades; the 20 °C above them are a choice. */
const WET: readonly [string, number, string, SourceKey][] = [
  ['dot-3', 140, '49 CFR 571.116 S5.1.2, DOT 3: 140 °C wet', '49-cfr-571-116'],
  ['dot-4', 155, '49 CFR 571.116 S5.1.2, DOT 4: 155 °C wet', '49-cfr-571-116'],
  ['dot-5-1', 180, '49 CFR 571.116 S5.1.2, DOT 5.1: 180 °C wet', '49-cfr-571-116'],
  ['dot-4-low-viscosity', 165, 'ISO 4925 class 6: 165 °C wet, from memory', 'iso-4925'],
];

const BRAKES: readonly Published[] = [
  ...WET.map(
    ([grade, wet, says, source]): Published => ({
      kind: 'brake-fluid-glycol',
      gauge: 'boiling-point',
      details: { grade },
      good: [wet + 20, 250],
      watch: [wet, wet + 19, wet + 19.9],
      act: [wet - 1, wet - 0.1],
      says,
      source,
    }),
  ),
  {
    kind: 'brake-fluid-glycol',
    gauge: 'boiling-point',
    good: [160],
    watch: [140, 159],
    act: [139],
    says: '49 CFR 571.116 S5.1.2: no grade may boil lower wet than DOT 3, by which an unknown one is judged',
    source: '49-cfr-571-116',
  },
  {
    kind: 'brake-fluid-glycol',
    gauge: 'water',
    good: [0.9, 1.9],
    watch: [2, 2.5, 2.9],
    act: [3, 4],
    says: 'workshop practice: under 1 percent is good, replace at 3, some at 2.5; the watch from 2 is a choice',
    source: 'common-practice',
  },
  {
    kind: 'brake-fluid-glycol',
    gauge: 'copper',
    good: [0, 30, 100, 199],
    act: [200, 250],
    says: 'repair-trade association’s table: 200 ppm or greater, inhibitors depleted',
    source: 'repair-association-table',
  },
];

const BATTERIES: readonly Published[] = [
  {
    kind: 'battery-flooded',
    gauge: 'rest-voltage',
    good: [12.65, 12.85],
    watch: [12.45, 12.86],
    act: [12.24, 12.06, 11.89],
    says: 'table credited to a battery trade council: 12.65 full, 12.45 three quarters, 12.24 half, 12.06, 11.89 empty',
    source: 'battery-charge-table',
  },
  {
    kind: 'battery-flooded',
    gauge: 'rest-voltage',
    details: { volts: '6' },
    good: [6.3],
    watch: [6.2],
    act: [6.19, 6.1],
    says: 'workshop notes: a 6-volt battery 6.3, charge it at 6.2, 6.1 or less is half flat',
    source: 'workshop-notes',
  },
  {
    kind: 'battery-flooded',
    gauge: 'density',
    details: { fill: '1.265' },
    warmth: REFERENCE,
    good: [1.265],
    watch: [1.225, 1.19],
    act: [1.155, 1.12],
    says: 'US Army TM 5-3820-256-24-4: recharge when the density has fallen to 1.225, three quarters of full',
    source: 'army-recharge-rule',
  },
  {
    kind: 'battery-flooded',
    gauge: 'density',
    details: { fill: '1.280' },
    warmth: REFERENCE,
    good: [1.28],
    watch: [1.25, 1.22],
    act: [1.19, 1.16, 1.13],
    says: 'US Army TM 5-1185 table II: filled to 1.280 it is 1.250 at three quarters, 1.220 at half',
    source: 'army-battery-tables',
  },
  {
    kind: 'battery-flooded',
    gauge: 'density',
    details: { fill: '1.265' },
    warmth: celsius(40),
    good: [1.296, 1.243],
    watch: [1.24],
    says: 'US Army TM 5-1185 table IV: at 40 °F a density reads 0.016 high, 1.296 for 1.280',
    source: 'army-battery-tables',
  },
  {
    kind: 'battery-flooded',
    gauge: 'density',
    details: { fill: '1.265' },
    warmth: celsius(100),
    good: [1.272, 1.219],
    watch: [1.216],
    says: 'US Army TM 5-1185 table IV: at 100 °F a density reads 0.008 low, 1.272 for 1.280',
    source: 'army-battery-tables',
  },
  {
    kind: 'battery-flooded',
    gauge: 'cell-spread',
    good: [0.02, 0.025],
    act: [0.026, 0.05],
    says: 'US Army TM 9-6140-200-14 4-7: more than 0.025 between the cells of a full battery, unserviceable',
    source: 'army-battery-manual',
  },
  {
    kind: 'battery-agm',
    gauge: 'rest-voltage',
    good: [12.8, 13],
    watch: [12.6, 13.01],
    act: [12.3, 12],
    says: 'powersports maker’s AGM table: 12.8 full, 12.6 three quarters, 12.3 half, 12.0 a quarter',
    source: 'powersports-battery-charts',
  },
  {
    kind: 'battery-lithium',
    gauge: 'rest-voltage',
    good: [13.2, 13.3, 13.6],
    watch: [13.1, 12.8],
    act: [12.79],
    says: 'chart: flat at 13.2 to 13.3 from a fifth to four fifths, 13.6 full at rest; 12.8 from memory',
    source: 'memory',
  },
  {
    kind: 'wiring',
    gauge: 'standing-drain',
    details: { electronics: 'later' },
    good: [25, 49],
    watch: [50, 75],
    act: [76, 100],
    says: 'from memory: 20 to 50 mA accepted on later cars, more wants looking into, over 75 to 100 is a fault',
    source: 'memory',
  },
];

const COOLANT = ['coolant-iat', 'coolant-oat'].flatMap((kind): Published[] => [
  {
    kind,
    gauge: 'freeze-point',
    coldest: -30,
    good: [-40, -33],
    watch: [-32, -30],
    act: [-29, -19],
    says: 'two sets of handbook data differ by 2 to 3 °C at half and half, hence 3 °C of margin, which is a choice',
    source: 'ashrae-glycol',
  },
  {
    kind,
    gauge: 'freeze-point',
    coldest: -5,
    good: [-18, celsius(0)],
    act: [-17, celsius(1), -8],
    says: 'US Army TM 5-3805-254-14&P-2: at least 33 percent; of ethylene glycol that freezes near −18 °C (0 °F)',
    source: 'army-coolant-limits',
  },
  {
    kind,
    gauge: 'freeze-point',
    coldest: celsius(-20),
    good: [celsius(-25)],
    watch: [celsius(-24), celsius(-20)],
    act: [celsius(-19)],
    says: 'the same 3 °C of margin on a scale in °F: 5 °F of it are good',
    source: 'ashrae-glycol',
  },
  {
    kind,
    gauge: 'strength',
    coldest: -5,
    details: { glycol: 'ethylene' },
    good: [33, 50, 60],
    watch: [32, 30, 61, 67],
    act: [29, 20, 0, 68, 100],
    says: 'US Army TM 5-3805-254-14&P-2: keep at least 33 percent glycol by volume, against corrosion; 60 is the most that protects more',
    source: 'army-coolant-limits',
  },
  {
    kind,
    gauge: 'strength',
    coldest: -30,
    details: { glycol: 'ethylene' },
    good: [47.6],
    watch: [45],
    act: [42.5],
    says: 'ASHRAE Handbook, ethylene glycol by volume: 42.5 freezes at −27.5 °C, 45 at −30.5, 47.6 at −33.8',
    source: 'ashrae-glycol',
  },
  {
    kind,
    gauge: 'strength',
    coldest: -30,
    good: [49.9],
    act: [45, 44.7],
    says: 'ASHRAE Handbook: 44.7 of propylene glycol freezes at −26.7 °C, 49.9 at −33.5; untold, the warmer counts',
    source: 'ashrae-glycol',
  },
  {
    kind,
    gauge: 'density',
    coldest: celsius(-20),
    warmth: 20,
    details: { glycol: 'ethylene' },
    act: [1.022, 1.036, 1.047],
    says: 'US Army TM 9-6115-464-12 table 2-1: 1.022, 1.036 and 1.047 are for +20, +10 and 0 °F, not for −20',
    source: 'army-coolant-table',
  },
  {
    kind,
    gauge: 'stray-voltage',
    good: [0, 0.09],
    watch: [0.1, 0.3],
    act: [0.31, 0.4, 0.5],
    says: 'from memory 0.1 and 0.3 V; one workshop says 0.5 and a newsletter 0.4, and both are acted on before',
    source: 'memory',
  },
]);

/** A hydrometer in the same coolant, half and half of ethylene glycol, from the frost to a warm engine. */
const DENSITY_BY_WARMTH = ['coolant-iat', 'coolant-oat'].flatMap((kind) =>
  [-10, 20, 50].map(
    (warmth): Published => ({
      kind,
      gauge: 'density',
      coldest: -25,
      warmth,
      details: { glycol: 'ethylene' },
      good: [1.072 - 0.0005 * (warmth - 20)],
      act: [1.05 - 0.0005 * (warmth - 20)],
      says: `from memory: density falls by 0.0005 a degree, here at ${warmth} °C`,
      source: 'memory',
    }),
  ),
);

const COOLANT_CHEMISTRY: readonly Published[] = [
  {
    kind: 'coolant-iat',
    gauge: 'ph',
    good: [8.5, 10, 10.5],
    watch: [8, 7.5],
    act: [7.4, 6],
    says: 'strip vendors’ charts from memory; in use a navy and army manual accepts 8.5 to 10, trade press 8.5 to 10.5',
    source: 'memory',
  },
  {
    kind: 'coolant-oat',
    gauge: 'ph',
    good: [7.5, 9],
    watch: [7, 7.4],
    act: [6.9],
    says: 'strip vendors’ charts, from memory: 7.5 to 9, replace under 7',
    source: 'memory',
  },
  {
    kind: 'coolant-iat',
    gauge: 'reserve-alkalinity',
    good: [10, 5],
    watch: [4.9, 3],
    act: [2.9, 0],
    says: 'from memory of ASTM D1121 practice: about 10 new, warn under 5, replace under 3',
    source: 'memory',
  },
  {
    kind: 'coolant-cap',
    gauge: 'opening-pressure',
    details: { rating: 1 },
    good: [0.91, 1, 1.09],
    act: [0.89, 1.11],
    says: 'heavy-vehicle maker’s manual: the cap holds within 10 percent of its rating',
    source: 'heavy-vehicle-maker-manual',
  },
];

const psi = (value: number): number => convert(value, 'psi', 'bar');

const TIRES: readonly Published[] = [
  {
    kind: 'tires-road',
    gauge: 'tread',
    good: [8, 5],
    watch: [4.9, 3],
    act: [2.9, 1.6, 1],
    says: 'inspection body quoted by a news agency: 3 mm on old cars; Britain and the EU 1.6 by law',
    source: 'news-agency',
  },
  {
    kind: 'tires-road',
    gauge: 'pressure-loss',
    good: [0.5, 1, 1.5],
    act: [3.1, 5],
    says: 'a tire loses 0.5 to 1.0 psi a month at 21 °C, 1.5 at 32 °C; over 3 the trade calls it a leak',
    source: 'tire-permeation',
  },
  {
    kind: 'tires-road',
    gauge: 'cold-pressure',
    details: { placard: psi(32) },
    good: [psi(32), psi(29), psi(40), psi(46)],
    watch: [psi(28), psi(24)],
    act: [psi(23), psi(47)],
    says: 'vehicle maker’s bulletin: 40 psi while stored; 3 and 8 psi low are common practice',
    source: 'vehicle-storage-bulletin',
  },
  {
    kind: 'tires-road',
    gauge: 'cold-pressure',
    details: { placard: psi(32) },
    warmth: celsius(108),
    good: [psi(33), psi(50)],
    watch: [psi(32), psi(28)],
    act: [psi(26), psi(52)],
    says: 'law of gases, in trade texts 1 psi for 10 °F: 32 psi at 108 °F are under 29 cold, at 68 °F',
    source: 'gas-law',
  },
  {
    kind: 'tire-spare',
    gauge: 'cold-pressure',
    details: { placard: psi(30) },
    good: [psi(30), psi(35)],
    watch: [psi(29), psi(22), psi(36)],
    act: [psi(21)],
    says: 'from memory: the placard or 5 psi more, act at more than 8 psi low',
    source: 'memory',
  },
  {
    kind: 'tire-compact-spare',
    gauge: 'cold-pressure',
    details: { sidewall: psi(60) },
    good: [psi(60), 4.2],
    watch: [psi(59), psi(50)],
    act: [psi(49), psi(66)],
    says: 'from memory: usually 60 psi (4.2 bar), watch 50 to 59, act below 50',
    source: 'memory',
  },
];

const OTHERS: readonly Published[] = [
  {
    kind: 'engine-idle',
    gauge: 'compression-spread',
    good: [10],
    watch: [11, 25],
    act: [26],
    says: 'factory workshop text: the lowest cylinder at least 75 percent of the highest',
    source: 'factory-workshop-text-2',
  },
  {
    kind: 'ribbed-belt',
    gauge: 'cracks',
    good: [0, 1],
    watch: [2],
    act: [3],
    says: 'repair-advice site: three cracks or more in three inches of a rib of chloroprene',
    source: 'repair-advice-site',
  },
  ...(
    [
      ['short', 3, 10],
      ['medium', 4, 15],
      ['long', 6, 20],
    ] as const
  ).map(
    ([length, low, high]): Published => ({
      kind: 'plug-leads',
      gauge: 'resistance',
      details: { length },
      good: [low, high],
      watch: [low - 0.1, high + 0.1, 30],
      act: [30.1],
      says: `part maker’s service text: ${low} to ${high} kΩ by length, replace over 30`,
      source: 'parts-maker-service-text',
    }),
  ),
  {
    kind: 'roof-fluid',
    gauge: 'supply',
    good: [12.61, 13],
    act: [12.6, 12],
    says: 'factory service text: above 12.6 V at the motor with the engine running',
    source: 'factory-service-text-2',
  },
  ...(['trim-care', 'desiccant'] as const).map(
    (kind): Published => ({
      kind,
      gauge: 'humidity',
      good: [40, 55],
      watch: [56, 65],
      act: [66, 80],
      says: 'dehumidifier maker’s article: 40 to 55 percent, mold over 65',
      source: 'dehumidifier-maker-article',
    }),
  ),
];

const testOf = ({ kind, gauge }: Published): Test => {
  const test = KINDS.get(kind)?.tests.find((one) => one.gauge?.key === gauge);
  if (!test) throw new Error(`no gauge ${gauge} on ${kind}`);
  return test;
};

const verdictOf = (one: Published, value: number): Verdict | null => {
  const { gauge } = testOf(one);
  const { details = {}, coldest = null, warmth = null } = one;
  return gauge ? judge(gauge, { value, warmth }, { details, coldest }).verdict : null;
};

describe.each([
  ['brake fluid', BRAKES],
  ['batteries and drain', BATTERIES],
  ['coolant', [...COOLANT, ...DENSITY_BY_WARMTH, ...COOLANT_CHEMISTRY]],
  ['tires', TIRES],
  ['the rest', OTHERS],
] as const)('bands of %s', (_, published) => {
  it.each(published.map((one) => [`${one.kind}, ${one.gauge}: ${one.says}`, one] as const))('%s', (__, one) => {
    for (const verdict of ['good', 'watch', 'act'] as const)
      for (const value of one[verdict] ?? []) expect([value, verdictOf(one, value)]).toEqual([value, verdict]);
    expect(testOf(one).sources).toContain(one.source);
  });
});

it('stray voltage in coolant: the texts that allow 0.4 and 0.5 V are told beside the 0.3 acted on', () => {
  for (const kind of ['coolant-iat', 'coolant-oat'])
    expect(KINDS.get(kind)?.tests.find(({ gauge }) => gauge?.key === 'stray-voltage')?.act).toMatch(
      /0\.3.*0\.4 or 0\.5/,
    );
});
