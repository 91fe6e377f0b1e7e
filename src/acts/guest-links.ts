/** Lending one car’s road check to a helper without an account: by a secret that ends by itself. */
import { createHash, randomBytes } from 'node:crypto';
import { addGuestLink, type GuestLinkRow, openGuestLink } from '../store/guest-links.ts';
import type { Store } from '../store/open.ts';
import type { Acting } from './add-car.ts';
import { done, type Outcome, refused } from './fault.ts';

/** How long a link can live, in hours. */
export const LINK_LIVES = { day: 24, days: 72, weeks: 336 } as const;
export type LinkLife = keyof typeof LINK_LIVES;

const BYTES = 24;
const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');

/** Answers the secret: it is shown once, and only its hash is kept. */
export const lendRoadCheck = (
  store: Store,
  { collectionId, personId }: Acting,
  carId: string,
  { guest, life, now }: { guest: string; life: LinkLife; now: string },
): Outcome<string> => {
  if (guest === '') return refused({ field: 'guest', message: 'Say who it is for: that name stands on the list.' });
  const secret = randomBytes(BYTES).toString('base64url');
  const endsAt = new Date(Date.parse(now) + LINK_LIVES[life] * 3_600_000).toISOString();
  addGuestLink(store, {
    collectionId,
    carId,
    secretHash: hashOf(secret),
    guest,
    madeAt: now,
    madeBy: personId,
    endsAt,
  });
  return done(secret);
};

export const linkBehind = (store: Store, secret: string, now: string): GuestLinkRow | undefined =>
  openGuestLink(store, hashOf(secret), now);
