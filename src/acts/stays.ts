/** Stays as the plans ask for them: a record, its car and its place become facts, and the facts a view. */
import type { Place } from '../ageing/place.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { CarFacts, Override, PartFacts } from '../findings/facts.ts';
import { type StayFacts, type StayView, viewOf } from '../plans/standing.ts';
import type { Stay } from '../plans/stay.ts';
import { type CarWithParts, carWithParts } from '../store/cars.ts';
import { findLayUp, type LayUpOnRecord, type LayUpRow } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import { findPlace, type PlaceRow } from '../store/places.ts';
import type { CarStreamed } from '../store/stream.ts';

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
  const { placeId } = record.row;
  // Where nobody named a place for the stay, it stands where the car is known to.
  const place = placeId ? findPlace(store, collectionId, placeId) : found.place;
  const facts = stayFacts(record, {
    car: found.facts,
    parts: found.parts,
    traits: found.car.traits,
    place,
    carPlaceId: found.place?.id ?? null,
    overrides: overridesOf(store, collectionId),
  });
  return { record, found, place, facts, view: viewOf(facts, on) };
};

interface AroundStay {
  car: CarFacts;
  parts: readonly PartFacts[];
  traits: readonly string[];
  /** Where it stands meanwhile, and the place it is known to stand in now. */
  place: PlaceRow | undefined;
  carPlaceId: string | null;
  overrides: readonly Override[];
}

const stayFacts = (
  { row, ticks, own, rounds }: LayUpOnRecord,
  { car, parts, traits, place, carPlaceId, overrides }: AroundStay,
): StayFacts => ({
  // The same place is the same facts: what was read there is no news again.
  stay: stayOf(row, traits, place && place.id === carPlaceId ? car.place : (place ?? null)),
  closedOn: row.closedOn,
  car,
  parts,
  overrides,
  ticks,
  own,
  rounds,
});

const stayOf = (row: LayUpRow, traits: readonly string[], place: Place | null): Stay => {
  const { id, carId, parkedOn, returnOn, madeOn, circumstances, choices, numbers, papers } = row;
  return {
    id,
    carId,
    parkedOn,
    returnOn,
    madeOn,
    place,
    traits,
    circumstances,
    choices,
    numbers,
    papers,
  };
};

/** A stay beside its car as a walk over the collection reads it. */
export const viewBeside = (
  layUp: LayUpOnRecord,
  { facts: car, parts, traits, place: carPlace }: CarStreamed,
  { place, overrides }: { place: PlaceRow | null; overrides: readonly Override[] },
  on: CivilDate,
): StayView =>
  viewOf(
    stayFacts(layUp, { car, parts, traits, place: place ?? undefined, carPlaceId: carPlace?.id ?? null, overrides }),
    on,
  );
