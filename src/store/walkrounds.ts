/** Walk rounds before a drive: each counts on its own day only. */
import { and, desc, eq, isNull } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import { newId } from './ids.ts';
import type { Store } from './open.ts';
import { walkrounds } from './revival-schema.ts';

export type WalkroundRow = typeof walkrounds.$inferSelect;

/** The last one of that day that was not taken back. */
export const walkroundOn = (
  store: Store,
  collectionId: string,
  carId: string,
  day: CivilDate,
): WalkroundRow | undefined =>
  store
    .select()
    .from(walkrounds)
    .where(
      and(
        eq(walkrounds.collectionId, collectionId),
        eq(walkrounds.carId, carId),
        eq(walkrounds.day, day),
        isNull(walkrounds.withdrawnOn),
      ),
    )
    .orderBy(desc(walkrounds.id))
    .get();

export const recordWalkround = (store: Store, walkround: Omit<WalkroundRow, 'id' | 'withdrawnOn'>): void => {
  store
    .insert(walkrounds)
    .values({ ...walkround, id: newId(), withdrawnOn: null })
    .run();
};

export const withdrawWalkround = (store: Store, collectionId: string, id: string, today: CivilDate): void => {
  store
    .update(walkrounds)
    .set({ withdrawnOn: today })
    .where(and(eq(walkrounds.collectionId, collectionId), eq(walkrounds.id, id)))
    .run();
};
