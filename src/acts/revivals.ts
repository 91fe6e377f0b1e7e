/** Returns to the road as the plan asks for them: a record, its car and its collection’s rates become a plan. */
import type { CivilDate } from '../dates/civil.ts';
import type { CarFacts, Override, PartFacts } from '../findings/facts.ts';
import type { Rates } from '../money/cost.ts';
import { type RevivalFacts, type RevivalPlan, revivalPlan } from '../revival/plan.ts';
import type { Revival } from '../revival/revival.ts';
import { type CarWithParts, carWithParts } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import type { Collection } from '../store/people.ts';
import { findRevival, type RevivalOnRecord, type RevivalRow } from '../store/revivals.ts';
import { ratesOf } from './rates.ts';

/** A return with all that its pages show. */
export interface RevivalHere {
  record: RevivalOnRecord;
  found: CarWithParts;
  rates: Rates;
  facts: RevivalFacts;
  plan: RevivalPlan;
}

/** A return of this collection as on a day, or undefined where there is none. */
export const revivalHere = (
  store: Store,
  collection: Collection,
  id: string,
  on: CivilDate,
): RevivalHere | undefined => {
  const record = findRevival(store, collection.id, id);
  const found = record && carWithParts(store, collection.id, record.row.carId);
  if (!record || !found) return undefined;
  const rates = ratesOf(collection);
  const facts = revivalFacts(record, {
    car: found.facts,
    traits: found.car.traits,
    parts: found.parts,
    overrides: overridesOf(store, collection.id),
    rates,
  });
  return { record, found, rates, facts, plan: revivalPlan(facts, on) };
};

interface AroundRevival {
  car: CarFacts;
  traits: readonly string[];
  parts: readonly PartFacts[];
  overrides: readonly Override[];
  rates: Rates;
}

/** A return beside its car as a walk over the collection reads it. */
export const revivalFacts = ({ row, entries }: RevivalOnRecord, around: AroundRevival): RevivalFacts => ({
  revival: revivalOf(row),
  entries,
  ...around,
});

const revivalOf = (row: RevivalRow): Revival => {
  const { id, carId, begunOn, lastRanFrom, lastRanTo, lastRanBy, why, stood, putAway, putAwayBy, ceiling, hands } = row;
  return {
    id,
    carId,
    begunOn,
    sleep: { lastRan: { from: lastRanFrom, to: lastRanTo }, lastRanBy, why, stood, putAway, putAwayBy },
    ceiling,
    hands,
  };
};

/** Once it has ended its record stays as it is. */
export const isOver = ({ row }: RevivalOnRecord, on: CivilDate): boolean => row.closedOn !== null && row.closedOn <= on;
