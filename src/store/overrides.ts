import { and, eq, isNull } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import { newId } from './ids.ts';
import { inTransaction, type Store } from './open.ts';
import { overrides } from './schema.ts';

export type OverrideRow = typeof overrides.$inferSelect;

/** The overrides in force in a collection. */
export const overridesOf = (store: Store, collectionId: string): OverrideRow[] =>
  store
    .select()
    .from(overrides)
    .where(and(eq(overrides.collectionId, collectionId), isNull(overrides.endedOn)))
    .all();

/** Sets an override in place of the one that stood for the same kind, car and authority; the old one is kept as ended. */
export const setOverride = (store: Store, row: Omit<OverrideRow, 'id' | 'endedOn'>): void =>
  inTransaction(store, (tx) => {
    end(tx, row.collectionId, row.kind, row.carId, row.setOn, row.authority);
    tx.insert(overrides)
      .values({ ...row, id: newId() })
      .run();
  });

/** Ends a kind's override by one authority, for a car or (null) the collection: the next authority rules again. */
export const endOverride = (
  store: Store,
  collectionId: string,
  kind: string,
  carId: string | null,
  authority: OverrideRow['authority'],
  today: CivilDate,
): void => inTransaction(store, (tx) => end(tx, collectionId, kind, carId, today, authority));

const end = (
  tx: Store,
  collectionId: string,
  kind: string,
  carId: string | null,
  today: CivilDate,
  authority: OverrideRow['authority'],
): void => {
  tx.update(overrides)
    .set({ endedOn: today })
    .where(
      and(
        eq(overrides.collectionId, collectionId),
        eq(overrides.kind, kind),
        carId === null ? isNull(overrides.carId) : eq(overrides.carId, carId),
        isNull(overrides.endedOn),
        eq(overrides.authority, authority),
      ),
    )
    .run();
};
