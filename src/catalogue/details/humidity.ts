/** The gauge of a hygrometer inside the car. */
import type { Gauge } from '../gauge.ts';

export const HUMIDITY = {
  key: 'humidity',
  unit: '%',
  decimals: 0,
  range: [0, 100],
  usual: [15, 95],
  bands: { good: { from: 40, to: 55 }, watch: { to: 65 } },
  minutes: 2,
  round: true,
} as const satisfies Gauge;
