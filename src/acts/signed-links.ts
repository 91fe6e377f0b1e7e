/** Links in letters that act for one person without a sign-in: each carries its own signature, and opens a page that asks. */
import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { keyNamed } from '../store/keys.ts';
import type { Store } from '../store/open.ts';

const KEY_BYTES = 32;
/** 128 bits: short enough for a line of a letter. */
const SIGNATURE_BYTES = 16;

type Purpose = 'answers' | 'seen' | 'stop';

const sign = (store: Store, purpose: Purpose, about: readonly string[]): string =>
  createHmac(
    'sha256',
    Buffer.from(
      keyNamed(store, 'links', () => randomBytes(KEY_BYTES).toString('hex')),
      'hex',
    ),
  )
    .update([purpose, ...about].join('\n'))
    .digest()
    .subarray(0, SIGNATURE_BYTES)
    .toString('base64url');

const path = (store: Store, purpose: Purpose, ...about: string[]): string =>
  `/${[purpose, ...about, sign(store, purpose, about)].join('/')}`;

/** Where a letter is answered about one of its parts. */
export const answerPath = (store: Store, letterId: string, partId: string): string =>
  path(store, 'answers', letterId, partId);

/** Where all that a letter says is answered at once as seen. */
export const seenPath = (store: Store, letterId: string): string => path(store, 'seen', letterId);

/** Where a person stops all letters of a collection. */
export const stopPath = (store: Store, collectionId: string, personId: string): string =>
  path(store, 'stop', collectionId, personId);

export const isSigned = (store: Store, purpose: Purpose, about: readonly string[], signature: string): boolean => {
  const [wanted, given] = [Buffer.from(sign(store, purpose, about)), Buffer.from(signature)];
  return wanted.length === given.length && timingSafeEqual(wanted, given);
};
