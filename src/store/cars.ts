/** Cars with their parts and claims. Every query names the collection: there is no way to ask across. */
import { and, asc, desc, eq, inArray, isNull, min, sql } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import type { CarFacts } from '../findings/facts.ts';
import { newId } from './ids.ts';
import { answers, said } from './letter-schema.ts';
import { inTransaction, type Store } from './open.ts';
import { type PlaceRow, placeOfCar } from './places.ts';
import { type ReadingRow, readingsOfParts } from './readings.ts';
import { cars, claims, odometer, parts, readings } from './schema.ts';

export type CarRow = typeof cars.$inferSelect;
export type PartRow = typeof parts.$inferSelect;
export type ClaimRow = typeof claims.$inferSelect;
/** A part as stored; it is also the facts the findings ask for. */
export type PartOnRecord = PartRow & { claims: ClaimRow[]; readings: ReadingRow[] };

export interface CarWithParts {
  car: CarRow;
  place: PlaceRow | undefined;
  facts: CarFacts;
  parts: PartOnRecord[];
}

export type NewPart = Pick<PartRow, 'kind' | 'position'> & Partial<Pick<PartRow, 'note' | 'replaces' | 'details'>>;
export type NewClaim = Omit<ClaimRow, 'collectionId' | 'id' | 'partId' | 'withdrawnOn'>;

export const carsOf = (store: Store, collectionId: string): CarRow[] =>
  store.select().from(cars).where(eq(cars.collectionId, collectionId)).orderBy(asc(cars.name)).all();

/** The day on which a collection got its first car, or null. */
export const firstAddedOn = (store: Store, collectionId: string): CivilDate | null =>
  store
    .select({ day: min(cars.addedOn).mapWith(cars.addedOn) })
    .from(cars)
    .where(eq(cars.collectionId, collectionId))
    .get()?.day ?? null;

/** A car with its open parts and their standing claims, or undefined where the collection has no such car. */
export const carWithParts = (store: Store, collectionId: string, carId: string): CarWithParts | undefined => {
  const car = store
    .select()
    .from(cars)
    .where(and(eq(cars.collectionId, collectionId), eq(cars.id, carId)))
    .get();
  if (!car) return undefined;
  const open = store
    .select()
    .from(parts)
    .where(and(eq(parts.collectionId, collectionId), eq(parts.carId, carId), isNull(parts.closedOn)))
    .orderBy(sql`+${parts.id}`)
    .all();
  const stands = placeOfCar(store, collectionId, carId);
  const place = stands?.place;
  return {
    car,
    place,
    facts: {
      ...carFacts(car),
      odometer: odometerOf(store, collectionId, carId),
      place: place ?? null,
      placedOn: stands?.since ?? null,
    },
    parts: withRecord(store, collectionId, open),
  };
};

/** When and how a car left the collection, or that it is back. */
export const changeLeft = (
  store: Store,
  collectionId: string,
  carId: string,
  left: Pick<CarRow, 'leftOn' | 'leftHow'>,
): void => {
  store
    .update(cars)
    .set(left)
    .where(and(eq(cars.collectionId, collectionId), eq(cars.id, carId)))
    .run();
};

/** A part that is or was on a car, with its claims. */
export const findPart = (store: Store, collectionId: string, partId: string): PartOnRecord | undefined => {
  const row = store
    .select()
    .from(parts)
    .where(and(eq(parts.collectionId, collectionId), eq(parts.id, partId)))
    .get();
  return row && withRecord(store, collectionId, [row])[0];
};

/** Closed parts of a car, newest end first: its history. */
export const closedParts = (store: Store, collectionId: string, carId: string): PartOnRecord[] => {
  const rows = store
    .select()
    .from(parts)
    .where(and(eq(parts.collectionId, collectionId), eq(parts.carId, carId), sql`${parts.closedOn} is not null`))
    .orderBy(desc(parts.closedOn), desc(parts.id))
    .all();
  return withRecord(store, collectionId, rows);
};

const withRecord = (store: Store, collectionId: string, rows: PartRow[]): PartOnRecord[] => {
  const ids = rows.map(({ id }) => id);
  const list = store
    .select()
    .from(claims)
    .where(and(eq(claims.collectionId, collectionId), isNull(claims.withdrawnOn), inArray(claims.partId, ids)))
    // The plus keeps SQLite from walking all claims of the collection in the order of their key.
    .orderBy(sql`+${claims.id}`)
    .all();
  const byPart = Map.groupBy(list, (claim) => claim.partId);
  const read = readingsOfParts(store, collectionId, ids);
  return rows.map((row) => ({ ...row, claims: byPart.get(row.id) ?? [], readings: read.get(row.id) ?? [] }));
};

const odometerOf = (store: Store, collectionId: string, carId: string): { day: CivilDate; km: number }[] =>
  store
    .select({ day: odometer.day, km: odometer.km })
    .from(odometer)
    .where(and(eq(odometer.collectionId, collectionId), eq(odometer.carId, carId)))
    .orderBy(asc(odometer.day))
    .all();

const carFacts = (car: CarRow): Omit<CarFacts, 'odometer' | 'place' | 'placedOn'> => ({
  id: car.id,
  built: { from: car.builtFrom, to: car.builtTo },
});

/** Ours unless it is only looked at; and it has not left. */
type NewCar = Omit<CarRow, 'id' | 'ours' | 'leftOn' | 'leftHow'> & Partial<Pick<CarRow, 'ours'>>;

/** Adds a car, its list of parts and, if known, an odometer reading. */
export const addCar = (
  store: Store,
  car: NewCar,
  list: readonly NewPart[],
  reading: { day: CivilDate; km: number } | null,
  id = newId(),
): string =>
  inTransaction(store, (tx) => {
    tx.insert(cars)
      .values({ ...car, id })
      .run();
    insertParts(tx, car.collectionId, id, car.addedOn, list);
    if (reading)
      tx.insert(odometer)
        .values({ collectionId: car.collectionId, carId: id, ...reading })
        .run();
    return id;
  });

const insertParts = (
  tx: Store,
  collectionId: string,
  carId: string,
  openedOn: CivilDate,
  list: readonly NewPart[],
): string[] =>
  list.map((part) => {
    const id = newId();
    tx.insert(parts)
      .values({ collectionId, id, carId, openedOn, note: '', ...part })
      .run();
    return id;
  });

/** What a change of traits does to a car's list of parts. */
export interface PartsChange {
  open: readonly NewPart[];
  close: readonly { id: string; why: string }[];
  /** Parts that never had a date: nothing is lost with them. */
  drop: readonly string[];
}

export const changeCar = (store: Store, car: CarRow, change: PartsChange, today: CivilDate): void =>
  inTransaction(store, (tx) => {
    const { collectionId, id, ...rest } = car;
    tx.update(cars)
      .set(rest)
      .where(and(eq(cars.collectionId, collectionId), eq(cars.id, id)))
      .run();
    insertParts(tx, collectionId, id, today, change.open);
    for (const { id: partId, why } of change.close) closePart(tx, collectionId, partId, today, why);
    for (const partId of change.drop) {
      // What was taken back, or written about, still refers to it: then it is closed like the rest.
      if (isReferredTo(tx, collectionId, partId))
        closePart(tx, collectionId, partId, today, 'Not on this car any more.');
      else
        tx.delete(parts)
          .where(and(eq(parts.collectionId, collectionId), eq(parts.id, partId)))
          .run();
    }
  });

const isReferredTo = (tx: Store, collectionId: string, partId: string): boolean =>
  [claims, readings, said, answers].some((table) =>
    tx
      .select({ partId: table.partId })
      .from(table)
      .where(and(eq(table.collectionId, collectionId), eq(table.partId, partId)))
      .limit(1)
      .get(),
  );

/** A part that is closed already keeps its day and its reason. */
const closePart = (tx: Store, collectionId: string, partId: string, today: CivilDate, why: string): boolean =>
  tx
    .update(parts)
    .set({ closedOn: today, closedWhy: why })
    .where(and(eq(parts.collectionId, collectionId), eq(parts.id, partId), isNull(parts.closedOn)))
    .run().changes === 1;

/** Records an odometer reading; a second one of the same day takes the first one's place. */
export const recordOdometer = (
  store: Store,
  collectionId: string,
  carId: string,
  reading: { day: CivilDate; km: number },
): void => {
  store
    .insert(odometer)
    .values({ collectionId, carId, ...reading })
    .onConflictDoUpdate({ target: [odometer.collectionId, odometer.carId, odometer.day], set: { km: reading.km } })
    .run();
};

/** Adds a part to a car with the claims already known. */
export const addPart = (
  store: Store,
  collectionId: string,
  carId: string,
  openedOn: CivilDate,
  part: NewPart,
  known: readonly NewClaim[],
): string =>
  inTransaction(store, (tx) => {
    const [id] = insertParts(tx, collectionId, carId, openedOn, [part]) as [string];
    insertClaims(tx, collectionId, id, known);
    return id;
  });

const insertClaims = (tx: Store, collectionId: string, partId: string, list: readonly NewClaim[]): void => {
  for (const claim of list)
    tx.insert(claims)
      .values({ collectionId, id: newId(), partId, ...claim })
      .run();
};

/** Records a claim; with `instead`, an earlier claim of the same part is withdrawn in the same stroke. */
export const recordClaim = (
  store: Store,
  collectionId: string,
  partId: string,
  claim: NewClaim,
  instead: string | null,
): void =>
  inTransaction(store, (tx) => {
    if (instead) withdraw(tx, collectionId, partId, instead, claim.recordedOn);
    insertClaims(tx, collectionId, partId, [claim]);
  });

export const withdrawClaim = (
  store: Store,
  collectionId: string,
  partId: string,
  claimId: string,
  today: CivilDate,
): void => inTransaction(store, (tx) => withdraw(tx, collectionId, partId, claimId, today));

const withdraw = (tx: Store, collectionId: string, partId: string, claimId: string, today: CivilDate): void => {
  tx.update(claims)
    .set({ withdrawnOn: today })
    .where(and(eq(claims.collectionId, collectionId), eq(claims.partId, partId), eq(claims.id, claimId)))
    .run();
};

/** Changes a part's note and details (undefined: leaves them) and adds claims, together. */
export const changePart = (
  store: Store,
  collectionId: string,
  partId: string,
  note: string | undefined,
  known: readonly NewClaim[],
  details?: PartRow['details'],
): void =>
  inTransaction(store, (tx) => {
    const change = { ...(note === undefined ? {} : { note }), ...(details === undefined ? {} : { details }) };
    if (Object.keys(change).length > 0)
      tx.update(parts)
        .set(change)
        .where(and(eq(parts.collectionId, collectionId), eq(parts.id, partId)))
        .run();
    insertClaims(tx, collectionId, partId, known);
  });

/** Closes a part without a successor: the car has none, or no longer. */
export const retirePart = (store: Store, collectionId: string, partId: string, today: CivilDate, why: string): void => {
  inTransaction(store, (tx) => closePart(tx, collectionId, partId, today, why));
};

/** Opens a part again that was closed by a slip; false where another took its place, or stands there. */
export const reopenPart = (store: Store, { collectionId, id, carId, kind, position }: PartRow): boolean =>
  inTransaction(store, (tx) => {
    const taken = tx
      .select({ kind: parts.kind, position: parts.position, closedOn: parts.closedOn, replaces: parts.replaces })
      .from(parts)
      .where(and(eq(parts.collectionId, collectionId), eq(parts.carId, carId)))
      .all()
      .some((one) => one.replaces === id || (one.closedOn === null && one.kind === kind && one.position === position));
    if (taken) return false;
    tx.update(parts)
      .set({ closedOn: null, closedWhy: null })
      .where(and(eq(parts.collectionId, collectionId), eq(parts.id, id)))
      .run();
    return true;
  });

/** Closes a part and opens its successor at the same place, with what is known of it; null if it was closed meanwhile. */
export const replacePart = (
  store: Store,
  old: PartRow,
  today: CivilDate,
  why: string,
  note: string,
  known: readonly NewClaim[],
  details: PartRow['details'],
): string | null =>
  inTransaction(store, (tx) => {
    if (!closePart(tx, old.collectionId, old.id, today, why)) return null;
    const { kind, position, id: replaces } = old;
    const [id] = insertParts(tx, old.collectionId, old.carId, today, [{ kind, position, note, replaces, details }]) as [
      string,
    ];
    insertClaims(tx, old.collectionId, id, known);
    return id;
  });

/** The answers last given on a car's parts, newest first, each with the kind it was given for. */
export const lastAnswers = (
  store: Store,
  collectionId: string,
  carId: string,
  most: number,
): { claim: ClaimRow; kind: string }[] =>
  store
    .select({ claim: claims, kind: parts.kind })
    .from(claims)
    .innerJoin(parts, and(eq(parts.collectionId, claims.collectionId), eq(parts.id, claims.partId)))
    .where(and(eq(claims.collectionId, collectionId), eq(parts.carId, carId), isNull(claims.withdrawnOn)))
    .orderBy(desc(claims.id))
    .limit(most)
    .all();
