/** The places where a collection’s cars stand. */
import { and, asc, eq } from 'drizzle-orm';
import type { Place } from '../ageing/place.ts';
import type { CivilDate } from '../dates/civil.ts';
import { newId } from './ids.ts';
import { inTransaction, type Store } from './open.ts';
import { carPlaces, places } from './schema.ts';

/** A place as stored; it is also the climate the models ask for. */
export type PlaceRow = typeof places.$inferSelect;
export type NewPlace = Place & Pick<PlaceRow, 'name' | 'note'>;

export const placesOf = (store: Store, collectionId: string): PlaceRow[] =>
  store.select().from(places).where(eq(places.collectionId, collectionId)).orderBy(asc(places.name)).all();

export const findPlace = (store: Store, collectionId: string, placeId: string): PlaceRow | undefined =>
  store
    .select()
    .from(places)
    .where(and(eq(places.collectionId, collectionId), eq(places.id, placeId)))
    .get();

/** The place a car stands in and since when, if anybody has said. */
export const placeOfCar = (
  store: Store,
  collectionId: string,
  carId: string,
): { place: PlaceRow; since: CivilDate } | undefined =>
  store
    .select({ place: places, since: carPlaces.since })
    .from(carPlaces)
    .innerJoin(places, and(eq(places.collectionId, carPlaces.collectionId), eq(places.id, carPlaces.placeId)))
    .where(and(eq(carPlaces.collectionId, collectionId), eq(carPlaces.carId, carId)))
    .get();

/** Cars by the id of their place. */
export const carsByPlace = (store: Store, collectionId: string): Map<string, string[]> => {
  const rows = store.select().from(carPlaces).where(eq(carPlaces.collectionId, collectionId)).all();
  return new Map(
    [...Map.groupBy(rows, ({ placeId }) => placeId)].map(([place, cars]) => [place, cars.map(({ carId }) => carId)]),
  );
};

export const addPlace = (store: Store, collectionId: string, place: NewPlace, id = newId()): string => {
  store
    .insert(places)
    .values({ collectionId, id, ...place, months: [...place.months] })
    .run();
  return id;
};

/** Told anew, it judges the readings of its cars anew, from that day on. */
export const changePlace = (store: Store, collectionId: string, id: string, place: NewPlace, today: CivilDate): void =>
  inTransaction(store, (tx) => {
    tx.update(places)
      .set({ ...place, months: [...place.months] })
      .where(and(eq(places.collectionId, collectionId), eq(places.id, id)))
      .run();
    tx.update(carPlaces)
      .set({ since: today })
      .where(and(eq(carPlaces.collectionId, collectionId), eq(carPlaces.placeId, id)))
      .run();
  });

/** Forgets a place; the cars that stood there stand nobody has said where. */
export const removePlace = (store: Store, collectionId: string, id: string): void =>
  inTransaction(store, (tx) => {
    tx.delete(carPlaces)
      .where(and(eq(carPlaces.collectionId, collectionId), eq(carPlaces.placeId, id)))
      .run();
    tx.delete(places)
      .where(and(eq(places.collectionId, collectionId), eq(places.id, id)))
      .run();
  });

/** Puts a car into a place, or (null) nowhere known. */
export const putCar = (
  store: Store,
  collectionId: string,
  carId: string,
  placeId: string | null,
  since: CivilDate,
): void =>
  inTransaction(store, (tx) => {
    if (placeId !== null && placeOfCar(tx, collectionId, carId)?.place.id === placeId) return;
    tx.delete(carPlaces)
      .where(and(eq(carPlaces.collectionId, collectionId), eq(carPlaces.carId, carId)))
      .run();
    if (placeId) tx.insert(carPlaces).values({ collectionId, carId, placeId, since }).run();
  });
