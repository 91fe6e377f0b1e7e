/** Money and hours of work, always from a low to a high, in the collection’s currency. */
import type { Span } from '../ageing/span.ts';
import { JOBS, type JobKey, OWN_HANDS } from './jobs.ts';

export interface Rates {
  /** ISO 4217. */
  currency: string;
  /** What parts worth one US dollar cost in it. */
  perDollar: number;
  /** A workshop’s hour, in it. */
  labor: Span;
}

export interface Cost {
  /** A workshop’s hours, and those of own hands. */
  hours: Span;
  ownHours: Span;
  /** Parts, and parts with a workshop’s labor, in the collection’s currency. */
  own: Span;
  workshop: Span;
}

const NOUGHT: Span = { low: 0, high: 0 };
export const NO_COST: Cost = { hours: NOUGHT, ownHours: NOUGHT, own: NOUGHT, workshop: NOUGHT };

export const plus = (a: Span, b: Span): Span => ({ low: a.low + b.low, high: a.high + b.high });
const times = (a: Span, b: Span): Span => ({ low: a.low * b.low, high: a.high * b.high });

export const sumOf = (costs: readonly Cost[]): Cost =>
  costs.reduce(
    (sum, { hours, ownHours, own, workshop }) => ({
      hours: plus(sum.hours, hours),
      ownHours: plus(sum.ownHours, ownHours),
      own: plus(sum.own, own),
      workshop: plus(sum.workshop, workshop),
    }),
    NO_COST,
  );

/** What one job costs; a table’s figure is never finer than the table. */
export const costOf = (key: JobKey, { perDollar, labor }: Rates): Cost => {
  const { hours, parts } = JOBS[key];
  const own = times(parts, { low: perDollar, high: perDollar });
  return { hours, ownHours: times(hours, OWN_HANDS), own, workshop: plus(own, times(hours, labor)) };
};
