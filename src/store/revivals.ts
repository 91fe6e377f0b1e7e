/** Returns to the road with their journals. Every query names the collection. */
import { and, asc, desc, eq, gt, isNull, lte, or, sql } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import type { Entry, Said } from '../revival/journal.ts';
import { newId } from './ids.ts';
import { inTransaction, type Store } from './open.ts';
import { revivalEntries, revivals } from './revival-schema.ts';
import { cars, people } from './schema.ts';

export type RevivalRow = typeof revivals.$inferSelect;
export type NewRevival = Omit<RevivalRow, 'id' | 'closedOn' | 'closedHow' | 'closedBy'>;

export interface RevivalOnRecord {
  row: RevivalRow;
  entries: Entry[];
}

export const addRevival = (store: Store, revival: NewRevival, id = newId()): string => {
  store
    .insert(revivals)
    .values({ ...revival, id, closedOn: null, closedHow: null, closedBy: null })
    .run();
  return id;
};

export const changeRevival = (
  store: Store,
  collectionId: string,
  id: string,
  change: Partial<Omit<RevivalRow, 'collectionId' | 'id' | 'carId'>>,
): void => {
  store
    .update(revivals)
    .set(change)
    .where(and(eq(revivals.collectionId, collectionId), eq(revivals.id, id)))
    .run();
};

export const findRevival = (store: Store, collectionId: string, id: string): RevivalOnRecord | undefined => {
  const row = store
    .select()
    .from(revivals)
    .where(and(eq(revivals.collectionId, collectionId), eq(revivals.id, id)))
    .get();
  return row && onRecord(store, row);
};

/** Every return of a collection, or of one of its cars; the last begun first. */
export const revivalsOf = (store: Store, collectionId: string, carId?: string): RevivalRow[] =>
  store
    .select()
    .from(revivals)
    .where(and(eq(revivals.collectionId, collectionId), carId === undefined ? undefined : eq(revivals.carId, carId)))
    .orderBy(desc(revivals.begunOn), desc(revivals.id))
    .all();

/** The open returns of a collection by car, as on a day: no more of each than can’t be damaged. */
export const openRevivals = (store: Store, collectionId: string, on: CivilDate): Map<string, { id: string }> => {
  const rows = store
    .select({ id: revivals.id, carId: revivals.carId })
    .from(revivals)
    .where(
      and(
        eq(revivals.collectionId, collectionId),
        lte(revivals.begunOn, on),
        or(isNull(revivals.closedOn), gt(revivals.closedOn, on)),
      ),
    )
    .orderBy(asc(revivals.begunOn))
    .all();
  return new Map(rows.map(({ carId, id }) => [carId, { id }]));
};

const NOBODY = 'somebody';

/** Its journal in the order it was written: the ids rise with time. */
const onRecord = (store: Store, row: RevivalRow): RevivalOnRecord => {
  const written = store
    .select({ entry: revivalEntries, by: people.name })
    .from(revivalEntries)
    .leftJoin(people, eq(people.id, revivalEntries.recordedBy))
    .where(
      and(
        eq(revivalEntries.collectionId, row.collectionId),
        eq(revivalEntries.revivalId, row.id),
        isNull(revivalEntries.withdrawnOn),
      ),
    )
    .orderBy(sql`+${revivalEntries.id}`)
    .all();
  return {
    row,
    entries: written.map(({ entry: { id, day, said, doneBy, note }, by }) => ({
      ...said,
      id,
      day,
      by: doneBy || (by ?? NOBODY),
      note,
    })),
  };
};

export interface NewEntry {
  day: CivilDate;
  said: Said;
  doneBy: string;
  note: string;
  recordedOn: CivilDate;
  recordedBy: string | null;
}

export const writeEntries = (
  store: Store,
  collectionId: string,
  revivalId: string,
  entries: readonly NewEntry[],
): void =>
  inTransaction(store, (tx) => {
    for (const entry of entries)
      tx.insert(revivalEntries)
        .values({ ...entry, collectionId, revivalId, id: newId(), withdrawnOn: null })
        .run();
  });

/** An entry that was a slip is withdrawn, not deleted. */
export const withdrawEntry = (
  store: Store,
  collectionId: string,
  revivalId: string,
  entryId: string,
  today: CivilDate,
): void => {
  store
    .update(revivalEntries)
    .set({ withdrawnOn: today })
    .where(
      and(
        eq(revivalEntries.collectionId, collectionId),
        eq(revivalEntries.revivalId, revivalId),
        eq(revivalEntries.id, entryId),
      ),
    )
    .run();
};

/** A car that was only looked at joins the collection, or is let go. */
export const setOurs = (store: Store, collectionId: string, carId: string, ours: boolean): void => {
  store
    .update(cars)
    .set({ ours })
    .where(and(eq(cars.collectionId, collectionId), eq(cars.id, carId)))
    .run();
};
