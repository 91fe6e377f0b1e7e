/** The money and hours of a return: spent so far, and still to come, from low to high. */
import type { Span } from '../ageing/span.ts';
import { type Cost, costOf, NO_COST, plus, type Rates, sumOf } from '../money/cost.ts';
import type { JobKey } from '../money/jobs.ts';
import type { Hands } from './revival.ts';
import { isSettled, type PlannedStep } from './step-state.ts';

export interface Money {
  spent: number;
  /** Own hours told with the ticks. */
  hours: number;
  /** Steps done that would cost, of which nobody told what they did. */
  untold: number;
  open: Cost;
  /** Kept for what shows itself after the first heat and on the road. */
  reserve: Cost;
  /** What is still to come, by whose hands it is done, reserve and all. */
  estimate: Span;
  /** Spent and to come. */
  total: Span;
}

/** Share of what is still to come that is kept for sorting. From memory; a marque-parts magazine names a tenth. */
const RESERVE: Span = { low: 0.15, high: 0.25 };

/** What each step costs by the way it is to be done; a job two steps share counts with the first. */
export const stepCosts = (steps: readonly PlannedStep[], rates: Rates): ReadonlyMap<string, Cost> => {
  const counted = new Set<JobKey>();
  return new Map(
    steps.map((step) => {
      const own = (step.way.jobs ?? []).filter((job) => !counted.has(job));
      if (!isSettled(step)) for (const job of own) counted.add(job);
      return [step.key, sumOf(own.map((job) => costOf(job, rates)))];
    }),
  );
};

export const moneyOf = (steps: readonly PlannedStep[], costs: ReadonlyMap<string, Cost>, hands: Hands): Money => {
  const done = steps.flatMap(({ ticks }) => ticks).filter(({ state }) => state === 'done');
  const open = sumOf(steps.filter((step) => !isSettled(step)).map(({ key }) => costs.get(key) ?? NO_COST));
  const spent = done.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  const reserve = reserveOf(open);
  const whole = sumOf([open, reserve]);
  const estimate = byHands(whole, hands);
  return {
    spent,
    hours: done.reduce((sum, { hours }) => sum + (hours ?? 0), 0),
    untold: steps.filter(
      ({ state, way, ticks }) =>
        state === 'done' && (way.jobs ?? []).length > 0 && ticks.every(({ cost }) => cost === null),
    ).length,
    open,
    reserve,
    estimate,
    total: plus({ low: spent, high: spent }, estimate),
  };
};

const reserveOf = ({ hours, ownHours, own, workshop }: Cost): Cost => {
  const share = ({ low, high }: Span): Span => ({ low: low * RESERVE.low, high: high * RESERVE.high });
  return { hours: share(hours), ownHours: share(ownHours), own: share(own), workshop: share(workshop) };
};

/** Where it is not decided whose hands, from the least own work costs to the most a workshop does. */
const byHands = ({ own, workshop }: Cost, hands: Hands): Span =>
  hands === 'own' ? own : hands === 'workshop' ? workshop : { low: own.low, high: workshop.high };
