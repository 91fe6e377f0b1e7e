/** Links to one car’s road check for somebody without an account: the secret itself is not kept. */
import { and, asc, eq, gt, isNull } from 'drizzle-orm';
import { newId } from './ids.ts';
import type { Store } from './open.ts';
import { guestLinks } from './revival-schema.ts';

export type GuestLinkRow = typeof guestLinks.$inferSelect;

export const addGuestLink = (store: Store, link: Omit<GuestLinkRow, 'id' | 'endedAt'>): void => {
  store
    .insert(guestLinks)
    .values({ ...link, id: newId(), endedAt: null })
    .run();
};

const isOpenAt = (now: string) => and(isNull(guestLinks.endedAt), gt(guestLinks.endsAt, now));

/** The link behind a secret, unless it has ended. */
export const openGuestLink = (store: Store, secretHash: string, now: string): GuestLinkRow | undefined =>
  store
    .select()
    .from(guestLinks)
    .where(and(eq(guestLinks.secretHash, secretHash), isOpenAt(now)))
    .get();

export const openLinksTo = (store: Store, collectionId: string, carId: string, now: string): GuestLinkRow[] =>
  store
    .select()
    .from(guestLinks)
    .where(and(eq(guestLinks.collectionId, collectionId), eq(guestLinks.carId, carId), isOpenAt(now)))
    .orderBy(asc(guestLinks.endsAt))
    .all();

export const endGuestLink = (store: Store, collectionId: string, carId: string, id: string, now: string): void => {
  store
    .update(guestLinks)
    .set({ endedAt: now })
    .where(and(eq(guestLinks.collectionId, collectionId), eq(guestLinks.carId, carId), eq(guestLinks.id, id)))
    .run();
};
