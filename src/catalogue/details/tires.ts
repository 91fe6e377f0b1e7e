/** What is asked of tires, and the gauges of their pressure. */
import type { Detail, Gauge } from '../gauge.ts';
import type { Test } from '../kind.ts';

const PRESSURE = { unit: 'bar', also: ['psi', 'kPa'], decimals: 2 } as const;

export const PLACARD = {
  key: 'placard',
  name: 'Placard pressure, cold',
  hint: 'On the door pillar, the fuel flap or in the handbook, for this wheel.',
  ...PRESSURE,
  range: [0.5, 7],
  stays: true,
} as const satisfies Detail;

export const SIDEWALL = {
  key: 'sidewall',
  name: 'Pressure on the sidewall',
  hint: 'Molded there as the maximum; on a compact spare the pressure it is kept at.',
  ...PRESSURE,
  range: [1, 9],
} as const satisfies Detail;

export const CAP_PLY = {
  key: 'cap-ply',
  name: 'Cap ply',
  hint: 'High-performance tires have one: the sidewall lists nylon among the plies of the tread.',
  choices: { yes: 'Yes', no: 'No' },
} as const satisfies Detail;

/** Eight psi low, in bar; rounded up so that eight whole psi are in. */
const EIGHT_PSI = 0.552;

const COLD_PRESSURE = {
  ...PRESSURE,
  key: 'cold-pressure',
  range: [0, 10],
  reads: 'tire pressure',
  warmth: { of: 'the tire' },
  minutes: 2,
  round: true,
} as const satisfies Partial<Gauge>;

/** A road tire is let down to its placard and pumped up for a lay-up. */
export const ROAD_PRESSURE = {
  ...COLD_PRESSURE,
  usual: [0.8, 4.5],
  against: { what: 'detail', key: PLACARD.key, as: 'difference' },
  bands: { good: { from: -0.207, to: 1 }, watch: { from: -EIGHT_PSI, to: 1 } },
} as const satisfies Gauge;

/** A spare is not missed when it sinks, so it is kept full. The hair below allows for a placard rounded to whole psi. */
export const SPARE_PRESSURE = {
  ...COLD_PRESSURE,
  usual: [0.8, 4.5],
  against: { what: 'detail', key: PLACARD.key, as: 'difference' },
  bands: { good: { from: -0.02, to: 0.345 }, watch: { from: -EIGHT_PSI, to: 1 } },
} as const satisfies Gauge;

export const COMPACT_SPARE_PRESSURE = {
  ...COLD_PRESSURE,
  usual: [1.5, 5],
  against: { what: 'detail', key: SIDEWALL.key, as: 'difference' },
  bands: { good: { from: -0.02, to: 0.345 }, watch: { from: -0.69, to: 0.345 } },
} as const satisfies Gauge;

export const PRESSURE_LOSS = {
  name: 'Pressure loss',
  gauge: {
    key: 'pressure-loss',
    unit: 'psi/month',
    also: ['bar/month'],
    decimals: 1,
    range: [0, 60],
    usual: [0, 15],
    bands: { good: { to: 2 }, watch: { to: 3 } },
    minutes: 5,
  },
  how: 'Gauge the cold tire twice, a month apart, at the same temperature, and take the second figure from the first.',
  good: 'up to 2; rubber lets 0.5 to 1 through at 21 °C (70 °F)',
  watch: '2 to 3',
  act: 'more than 3, which is a leak: find it before the car is driven',
  sources: ['tire-permeation', 'common-practice', 'memory'],
} as const satisfies Test;
