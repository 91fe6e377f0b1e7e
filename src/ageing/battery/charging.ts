/** What a charger or maintainer should be set to, 12 V at 25 °C; half of it for 6 V. Charger practice, from memory. */
import type { SourceKey } from '../../catalogue/sources.ts';
import type { Span } from '../span.ts';
import type { Chemistry } from './chemistry.ts';

interface Charging {
  /** V. */
  absorb: Span;
  /** V; null: not to be kept on float. */
  float: Span | null;
  /** mV for every °C above 25, whole battery: less when warm, more when cold. */
  compensation: Span;
  /** Not to be charged below, °C; null: any temperature at which it is not frozen. */
  notBelow: number | null;
  sources: readonly SourceKey[];
}

const FLOODED: Charging = {
  absorb: { low: 14.4, high: 14.6 },
  float: { low: 13.2, high: 13.4 },
  compensation: { low: -30, high: -18 },
  notBelow: null,
  sources: ['memory'],
};

const CALCIUM: Charging = {
  absorb: { low: 14.4, high: 14.8 },
  float: { low: 13.5, high: 13.8 },
  compensation: { low: -24, high: -18 },
  notBelow: null,
  sources: ['memory'],
};

export const CHARGING: Readonly<Record<Chemistry, Charging>> = {
  antimony: FLOODED,
  'low-antimony': FLOODED,
  calcium: CALCIUM,
  efb: CALCIUM,
  agm: CALCIUM,
  gel: {
    absorb: { low: 14.1, high: 14.4 },
    float: { low: 13.5, high: 13.8 },
    compensation: { low: -30, high: -18 },
    notBelow: null,
    sources: ['memory'],
  },
  lithium: {
    absorb: { low: 14.2, high: 14.6 },
    float: null,
    compensation: { low: 0, high: 0 },
    notBelow: 0,
    sources: ['lithium-battery-manual', 'memory'],
  },
  // The lowest of each, and not below 0 °C, for it may be any of them.
  unknown: {
    absorb: { low: 14.1, high: 14.4 },
    float: { low: 13.2, high: 13.4 },
    compensation: { low: -24, high: -18 },
    notBelow: 0,
    sources: ['memory'],
  },
};
