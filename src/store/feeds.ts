/** Calendars read by a secret address, and what was shown of each event. */
import { and, eq } from 'drizzle-orm';
import { calendarEvents, feeds } from './letter-schema.ts';
import { inTransaction, type Store } from './open.ts';

export type FeedRow = typeof feeds.$inferSelect;
/** What calendars were shown of an event: how often it changed, and when it last did. */
export type Shown = Pick<typeof calendarEvents.$inferSelect, 'uid' | 'fingerprint' | 'sequence' | 'changedAt'>;

const of = (collectionId: string, personId: string) =>
  and(eq(feeds.collectionId, collectionId), eq(feeds.personId, personId));

export const feedOf = (store: Store, collectionId: string, personId: string): FeedRow | undefined =>
  store.select().from(feeds).where(of(collectionId, personId)).get();

export const feedBySecret = (store: Store, secretHash: string): FeedRow | undefined =>
  store.select().from(feeds).where(eq(feeds.secretHash, secretHash)).get();

/** Opens a person's calendar, or gives it another secret. */
export const putFeed = (store: Store, feed: FeedRow): void => {
  store
    .insert(feeds)
    .values(feed)
    .onConflictDoUpdate({ target: [feeds.collectionId, feeds.personId], set: feed })
    .run();
};

export const changeScopes = (store: Store, collectionId: string, personId: string, scopes: FeedRow['scopes']): void => {
  store.update(feeds).set({ scopes }).where(of(collectionId, personId)).run();
};

export const endFeed = (store: Store, collectionId: string, personId: string): void => {
  store.delete(feeds).where(of(collectionId, personId)).run();
};

/** Each event with its sequence: one more than before where its fingerprint changed, 0 where it is new. */
export const showEvents = (
  store: Store,
  collectionId: string,
  events: readonly Pick<Shown, 'uid' | 'fingerprint'>[],
  now: string,
): Map<string, Shown> =>
  inTransaction(store, (tx) => {
    const rows = tx.select().from(calendarEvents).where(eq(calendarEvents.collectionId, collectionId)).all();
    const known = new Map<string, Shown>(rows.map((row) => [row.uid, row]));
    const shown = new Map<string, Shown>();
    for (const { uid, fingerprint } of events) {
      const before = known.get(uid);
      const same = before?.fingerprint === fingerprint;
      const after = same ? before : { uid, fingerprint, sequence: before ? before.sequence + 1 : 0, changedAt: now };
      shown.set(uid, after);
      if (!same)
        tx.insert(calendarEvents)
          .values({ ...after, collectionId })
          .onConflictDoUpdate({ target: [calendarEvents.collectionId, calendarEvents.uid], set: after })
          .run();
    }
    return shown;
  });
