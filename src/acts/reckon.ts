/**
 * Every car of a collection as on a day, read in one walk. What can’t be read or reckoned of a car is a trouble beside it,
 * and keeps nothing else from being told, neither of that car nor of the others.
 */
import type { CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import type { Override } from '../findings/facts.ts';
import type { Rates } from '../money/cost.ts';
import type { StayView } from '../plans/standing.ts';
import { type RevivalPlan, revivalPlan } from '../revival/plan.ts';
import { findLayUp, type LayUpRow, openLayUps } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import type { Collection } from '../store/people.ts';
import { findPlace, type PlaceRow } from '../store/places.ts';
import { findRevival, openRevivals, type RevivalRow } from '../store/revivals.ts';
import { type CarStreamed, eachCar } from '../store/stream.ts';
import { judge, messageOf } from './judge.ts';
import { ratesOf } from './rates.ts';
import { revivalFacts } from './revivals.ts';
import { viewBeside } from './stays.ts';

export interface StayReckoned {
  row: LayUpRow;
  view: StayView;
  place: PlaceRow | null;
}

export interface CarReckoned extends Pick<CarStreamed, 'name' | 'facts'> {
  findings: readonly Finding[];
  stay: StayReckoned | null;
  back: { row: RevivalRow; plan: RevivalPlan } | null;
  troubles: readonly string[];
}

export function* eachCarReckoned(store: Store, collection: Collection, on: CivilDate): Generator<CarReckoned> {
  const overrides = overridesOf(store, collection.id);
  const rates = ratesOf(collection);
  const layUps = openLayUps(store, collection.id, on);
  const revivals = openRevivals(store, collection.id, on);
  for (const car of eachCar(store, collection.id)) {
    const { findings, parts, troubles } = judge(car, overrides, on);
    const around: Around = { store, car: { ...car, parts: [...parts] }, overrides, rates, on };
    const attempt = <T>(what: string, reckon: () => T): T | null => {
      try {
        return reckon();
      } catch (error) {
        troubles.push(`${car.name}: ${what}: ${messageOf(error)}`);
        return null;
      }
    };
    const layUp = layUps.get(car.facts.id);
    const revival = revivals.get(car.facts.id);
    yield {
      name: car.name,
      facts: car.facts,
      findings,
      // A stay that can’t be read keeps no car silent: it is told of as one that does not stand.
      stay: layUp ? attempt('its lay-up', () => stayOf(around, collection.id, layUp.id)) : null,
      back: revival ? attempt('its return to the road', () => backOf(around, collection.id, revival.id)) : null,
      troubles,
    };
  }
}

interface Around {
  store: Store;
  car: CarStreamed;
  overrides: readonly Override[];
  rates: Rates;
  on: CivilDate;
}

const stayOf = ({ store, car, overrides, on }: Around, collectionId: string, id: string): StayReckoned | null => {
  const record = findLayUp(store, collectionId, id);
  if (!record) return null;
  const { row } = record;
  const place = row.placeId ? (findPlace(store, collectionId, row.placeId) ?? null) : car.place;
  // Its plans are made when they are asked for; what can’t be made of them has to show here.
  return { row, place, view: { ...viewBeside(record, car, { place, overrides }, on) } };
};

const backOf = (
  { store, car: { facts, traits, parts }, overrides, rates, on }: Around,
  collectionId: string,
  id: string,
): CarReckoned['back'] => {
  const record = findRevival(store, collectionId, id);
  return (
    (record && {
      row: record.row,
      plan: revivalPlan(revivalFacts(record, { car: facts, traits, parts, overrides, rates }), on),
    }) ??
    null
  );
};
