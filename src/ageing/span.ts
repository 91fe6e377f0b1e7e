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

/** The span that holds all of several; of none, nothing sensible. */
export const hull = (spans: readonly Span[]): Span => ({
  low: Math.min(...spans.map(({ low }) => low)),
  high: Math.max(...spans.map(({ high }) => high)),
});

export const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
