import type { CivilDate } from '../dates/civil.ts';

/** An estimate: from its lowest to its highest value. No model here answers with a single number. */
export interface Span {
  low: number;
  high: number;
}

/** When something is expected: at the earliest and at the latest. Null: not within the time looked at. */
export interface DaySpan {
  earliest: CivilDate | null;
  latest: CivilDate | null;
}

export const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
