/** Readings of gauges, and what is told about a part for its models. */
import { and, eq, inArray, isNull, sql } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import type { Answers } from '../findings/facts.ts';
import { newId } from './ids.ts';
import { inTransaction, type Store } from './open.ts';
import { parts, readings } from './schema.ts';

export type ReadingRow = typeof readings.$inferSelect;
export type NewReading = Omit<ReadingRow, 'collectionId' | 'id' | 'withdrawnOn'>;

/** The standing readings of some parts, by part, oldest first. */
export const readingsOfParts = (
  store: Store,
  collectionId: string,
  partIds: readonly string[],
): Map<string, ReadingRow[]> =>
  Map.groupBy(
    store
      .select()
      .from(readings)
      .where(
        and(
          eq(readings.collectionId, collectionId),
          isNull(readings.withdrawnOn),
          inArray(readings.partId, [...partIds]),
        ),
      )
      .orderBy(readings.day, sql`+${readings.id}`)
      .all(),
    ({ partId }) => partId,
  );

/** Records readings together: all of a round, or none. */
export const recordReadings = (store: Store, collectionId: string, list: readonly NewReading[]): void =>
  inTransaction(store, (tx) => {
    for (const reading of list)
      tx.insert(readings)
        .values({ collectionId, id: newId(), ...reading })
        .run();
  });

export const withdrawReading = (
  store: Store,
  collectionId: string,
  partId: string,
  readingId: string,
  today: CivilDate,
): void => {
  store
    .update(readings)
    .set({ withdrawnOn: today })
    .where(
      and(
        eq(readings.collectionId, collectionId),
        eq(readings.partId, partId),
        eq(readings.id, readingId),
        isNull(readings.withdrawnOn),
      ),
    )
    .run();
};

export const setDetails = (store: Store, collectionId: string, partId: string, details: Answers): void => {
  store
    .update(parts)
    .set({ details })
    .where(and(eq(parts.collectionId, collectionId), eq(parts.id, partId)))
    .run();
};
