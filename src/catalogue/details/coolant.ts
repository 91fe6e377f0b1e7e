/** What is asked and read of glycol coolants of any family. */
import type { Detail, Gauge } from '../gauge.ts';
import type { Test } from '../kind.ts';

export const GLYCOL = {
  key: 'glycol',
  name: 'Glycol',
  hint: 'On the canister or its data sheet; the color tells nothing.',
  choices: { ethylene: 'Ethylene glycol', propylene: 'Propylene glycol' },
} as const satisfies Detail;

export const COOLANT_VOLUME = {
  key: 'volume',
  name: 'Coolant in the system',
  hint: 'In the handbook, with the heater.',
  unit: 'L',
  also: ['US gal'],
  range: [1, 60],
  decimals: 1,
  stays: true,
} as const satisfies Detail;

/** Freezing point less the coldest night. The ceiling is a third of ethylene glycol, below
 * which metal corrodes. The edges carry a hair, so that 5 °F and 0 °F are in. */
const AGAINST_THE_NIGHT = {
  against: { what: 'coldest night' },
  bands: { good: { to: -2.77 }, watch: { to: 0 } },
  ceiling: -17.7,
} as const satisfies Pick<Gauge, 'against' | 'bands' | 'ceiling'>;

const WORDS = {
  good: 'freezes at least 3 °C (5 °F) below the coldest night of the place',
  watch: 'within 3 °C (5 °F) of the coldest night',
  act: 'freezes above the coldest night, or above −18 °C (0 °F), a third of ethylene glycol, which is the least against corrosion (a third of propylene glycol freezes at −15 °C and wants a little more): make it stronger before the frost',
} as const;

/** Strength counts by itself, too: too little glycol corrodes, too much freezes sooner again and cools worse. */
const STRENGTH_WORDS = {
  good: '33 to 60 %, and freezes at least 3 °C (5 °F) below the coldest night of the place',
  watch: '30 to 33 %, or over 60 to 67 %, or within 3 °C (5 °F) of the coldest night',
  act: 'under 30 % or over 67 %, or freezes above the coldest night: bring it to half and half before the frost',
} as const;

export const PROTECTION_TESTS = [
  {
    name: 'Freeze point',
    gauge: {
      key: 'freeze-point',
      unit: '°C',
      also: ['°F'],
      decimals: 0,
      range: [-75, 5],
      usual: [-55, 0],
      ...AGAINST_THE_NIGHT,
      minutes: 5,
    },
    how: 'Cold, put a drop on a refractometer and read the scale of the right glycol; half and half reads about −37 for ethylene and −34 for propylene glycol.',
    ...WORDS,
    sources: ['ashrae-glycol', 'astm-d3321', 'army-coolant-limits', 'technician-study-guide', 'common-practice'],
  },
  {
    name: 'Strength',
    gauge: {
      key: 'strength',
      unit: '%',
      decimals: 0,
      range: [0, 100],
      usual: [20, 70],
      ...AGAINST_THE_NIGHT,
      reads: 'coolant strength',
      minutes: 5,
    },
    how: 'Read the percent scale of the refractometer, or reckon it from what was filled: parts of glycol by volume in a hundred of coolant.',
    ...STRENGTH_WORDS,
    sources: ['ashrae-glycol', 'army-coolant-limits'],
  },
  {
    name: 'Refractometer, sugar scale',
    gauge: {
      key: 'sugar-scale',
      unit: 'Brix',
      decimals: 1,
      range: [0, 90],
      usual: [5, 45],
      ...AGAINST_THE_NIGHT,
      reads: 'coolant sugar scale',
      minutes: 5,
    },
    how: 'Cold, put a drop on a refractometer made for sugar and read its scale; half and half reads about 33 for ethylene and 35 for propylene glycol.',
    ...STRENGTH_WORDS,
    sources: ['refractive-mixing', 'ashrae-glycol'],
  },
  {
    name: 'Density',
    gauge: {
      key: 'density',
      unit: 'SG',
      decimals: 3,
      range: [0.95, 1.2],
      usual: [1, 1.1],
      ...AGAINST_THE_NIGHT,
      reads: 'coolant density',
      warmth: { of: 'the coolant' },
      minutes: 5,
    },
    how: 'Read a coolant hydrometer at about 20 °C (68 °F); its scale can be 4 to 5 percent of glycol out, so a refractometer is better, and propylene glycol hardly moves it.',
    ...STRENGTH_WORDS,
    sources: ['army-coolant-table', 'ashrae-glycol', 'memory'],
  },
] as const satisfies readonly Test[];

export const STRAY_VOLTAGE = {
  name: 'Stray voltage',
  gauge: {
    key: 'stray-voltage',
    unit: 'V',
    decimals: 2,
    range: [0, 2],
    usual: [0, 1],
    bands: { good: { under: 0.1 }, watch: { to: 0.3 } },
    minutes: 10,
  },
  how: 'Open the cap cold, put the meter’s negative on the battery negative and its positive in the coolant touching no metal; read cold, and again as it warms at 2,000 rpm outdoors with the probe left in place. Note the higher figure, whatever its sign.',
  good: 'under 0.1',
  watch: '0.1 to 0.3',
  act: 'over 0.3: look for a poor ground, then drain and flush; other texts allow 0.4 or 0.5',
  sources: ['television-workshop-segment', 'parts-seller-newsletter-quoted', 'memory'],
} as const satisfies Test;

/** A strip of coolant pH: its bands differ by family, its instrument does not. */
export const PH_STRIP = {
  key: 'ph',
  unit: 'pH',
  decimals: 1,
  range: [0, 14],
  usual: [5, 12],
  minutes: 5,
} as const satisfies Omit<Gauge, 'bands'>;
