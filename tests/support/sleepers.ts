/** Sleepers for tests: a car by a starting point, put to sleep on a day, with a journal. */
import { partsFor } from '../../src/catalogue/kinds.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { PartFacts } from '../../src/findings/facts.ts';
import type { Rates } from '../../src/money/cost.ts';
import type { Entry, Said } from '../../src/revival/journal.ts';
import type { RevivalFacts } from '../../src/revival/plan.ts';
import type { Revival } from '../../src/revival/revival.ts';
import type { Sleep } from '../../src/revival/sleep.ts';
import { CAR_ID, carOf } from './parts.ts';

export const DOLLARS: Rates = { currency: 'USD', perDollar: 1, labor: { low: 90, high: 150 } };

/** Nobody knows anything of it. */
export const UNKNOWN: Sleep = {
  lastRan: { from: null, to: null },
  lastRanBy: 'assumed',
  why: 'unknown',
  stood: [],
  putAway: 'unknown',
  putAwayBy: 'assumed',
};

/** Slept since that day, as its owner remembers, with no word on how it was put away. */
export const since = (day: CivilDate, more: Partial<Sleep> = {}): Sleep => ({
  ...UNKNOWN,
  lastRan: { from: day, to: day },
  lastRanBy: 'own memory',
  ...more,
});

export const traitsOf = (quickStart: string): readonly string[] => {
  const start = QUICK_STARTS.find(({ key }) => key === quickStart);
  if (!start) throw new Error(`No starting point ${quickStart}`);
  return start.traits;
};

export const undated = (traits: readonly string[]): PartFacts[] =>
  partsFor(traits).map(({ kind, position }, index) => ({
    id: `part-${index}`,
    kind,
    position: position ?? null,
    claims: [],
    readings: [],
    details: {},
  }));

/** Entries in this order, all of one day unless they say otherwise. */
export const journal = (day: CivilDate, ...said: readonly (Said & { on?: CivilDate; note?: string })[]): Entry[] =>
  said.map(({ on, note, ...one }, index) => ({
    ...(one as Said),
    id: `entry-${String(index).padStart(4, '0')}`,
    day: on ?? day,
    by: 'Nell',
    note: note ?? '',
  }));

export interface SleeperGiven {
  traits: readonly string[];
  sleep: Sleep;
  begunOn: CivilDate;
  built?: CivilDate | null;
  parts?: readonly PartFacts[];
  entries?: readonly Entry[];
  revival?: Partial<Revival>;
}

/** All a plan is made from; every part undated unless told. */
export const sleeper = ({ traits, sleep, begunOn, built, parts, entries, revival }: SleeperGiven): RevivalFacts => ({
  revival: { id: 'revival', carId: CAR_ID, begunOn, sleep, ceiling: null, hands: 'both', ...revival },
  car: carOf(built === null ? {} : { built: { from: built ?? '1970-01-01', to: built ?? '1970-12-31' } }),
  traits,
  parts: parts ?? undated(traits),
  overrides: [],
  entries: entries ?? [],
  rates: DOLLARS,
});
