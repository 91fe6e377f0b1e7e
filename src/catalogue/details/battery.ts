/** What is asked of batteries, and the bands of their systems of 6 and 12 volts. */
import type { Bands, Detail, Gauge, Stretch, Zone } from '../gauge.ts';

export const VOLTS = {
  key: 'volts',
  name: 'System voltage',
  hint: 'Three cells are 6 volts, six are 12.',
  choices: { '6': '6 volts', '12': '12 volts' },
  stays: true,
} as const satisfies Detail;

export const CAPACITY = {
  key: 'capacity',
  name: 'Capacity',
  hint: 'On the label in ampere-hours; where it gives a reserve capacity in minutes, take 0.6 of that.',
  unit: 'Ah',
  range: [5, 250],
  decimals: 0,
} as const satisfies Detail;

export const CONNECTION = {
  key: 'connection',
  name: 'While the car stands',
  choices: { connected: 'Connected', disconnected: 'Disconnected', maintainer: 'On a maintainer' },
  stays: true,
} as const satisfies Detail;

export const DRAIN = {
  key: 'drain',
  name: 'Drain of the parked car',
  hint: 'By a meter in series, doors latched, 20 to 60 minutes after the electronics go to sleep; a reading at the wiring counts as well.',
  unit: 'mA',
  also: ['A'],
  range: [0, 5000],
  decimals: 0,
  stays: true,
} as const satisfies Detail;

const halved = (zone: Zone): Zone => Object.fromEntries(Object.entries(zone).map(([end, volts]) => [end, volts / 2]));

/** Bands of a 12-volt system and of one of 6, which has half the cells. Unanswered it is 12: 6 volts then read as flat. */
export const byVolts = (twelve: Required<Bands>): Gauge['bands'] => ({
  by: VOLTS.key,
  of: { '6': { good: halved(twelve.good), watch: halved(twelve.watch) }, '12': twelve, unknown: twelve },
});

/** What is seen of 12 volts, and half of it of 6. */
export const usualByVolts = (low: number, high: number): { of: Record<string, Stretch> } => ({
  of: { '6': [low / 2, high / 2], '12': [low, high], unknown: [low, high] },
});

export const CHARGING = {
  key: 'charging',
  unit: 'V',
  decimals: 2,
  range: [0, 20],
  usual: usualByVolts(12, 15.5),
  bands: byVolts({ good: { from: 13.8, to: 14.4 }, watch: { from: 13, to: 14.8 } }),
  minutes: 5,
} as const satisfies Gauge;
