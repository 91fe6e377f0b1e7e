/** Stays as the plans ask for them: a record, its car and its place become facts, and the facts a view. */
import type { CivilDate } from '../dates/civil.ts';
import type { CarFacts, Override, PartFacts } from '../findings/facts.ts';
import { type StayFacts, type StayView, viewOf } from '../plans/standing.ts';
import type { Stay } from '../plans/stay.ts';
import { type CarWithParts, carWithParts } from '../store/cars.ts';
import { findLayUp, type LayUpOnRecord, type LayUpRow } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import { findPlace, type PlaceRow } from '../store/places.ts';

/** A stay with all that its pages show. */
export interface StayHere {
  record: LayUpOnRecord;
  found: CarWithParts;
  place: PlaceRow | undefined;
  facts: StayFacts;
  view: StayView;
}

/** A stay of this collection as on a day, or undefined where there is none. */
export const stayHere = (store: Store, collectionId: string, id: string, on: CivilDate): StayHere | undefined => {
  const record = findLayUp(store, collectionId, id);
  const found = record && carWithParts(store, collectionId, record.row.carId);
  return record && found && withView(store, collectionId, record, found, on);
};

export const withView = (
  store: Store,
  collectionId: string,
  record: LayUpOnRecord,
  found: CarWithParts,
  on: CivilDate,
): StayHere => {
  const place = record.row.placeId ? findPlace(store, collectionId, record.row.placeId) : undefined;
  const facts = stayFacts(record, {
    car: found.facts,
    parts: found.parts,
    traits: found.car.traits,
    place,
    overrides: overridesOf(store, collectionId),
  });
  return { record, found, place, facts, view: viewOf(facts, on) };
};

export interface AroundStay {
  car: CarFacts;
  parts: readonly PartFacts[];
  traits: readonly string[];
  place: PlaceRow | undefined;
  overrides: readonly Override[];
}

export const stayFacts = (
  { row, ticks, own, rounds }: LayUpOnRecord,
  { car, parts, traits, place, overrides }: AroundStay,
): StayFacts => ({
  stay: stayOf(row, traits, place),
  closedOn: row.closedOn,
  car,
  parts,
  overrides,
  ticks,
  own,
  rounds,
});

const stayOf = (row: LayUpRow, traits: readonly string[], place: PlaceRow | undefined): Stay => {
  const { id, carId, parkedOn, returnOn, madeOn, circumstances, choices, numbers, papers } = row;
  return {
    id,
    carId,
    parkedOn,
    returnOn,
    madeOn,
    place: place ?? null,
    traits,
    circumstances,
    choices,
    numbers,
    papers,
  };
};
