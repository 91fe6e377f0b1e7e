/** Letters as people look at them: what was written, how far it came, what is held up. */
import { and, asc, desc, eq, inArray, isNull, lte, min, ne, sql } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import { attempts, letters } from './letter-schema.ts';
import type { Store } from './open.ts';

export type LetterRow = typeof letters.$inferSelect;
export type AttemptRow = typeof attempts.$inferSelect;

const of = (collectionId: string, id: string) => and(eq(letters.collectionId, collectionId), eq(letters.id, id));

/** The last ones, those first that were given up and nobody has seen. */
export const lettersOf = (store: Store, collectionId: string, most = 200): LetterRow[] =>
  store
    .select()
    .from(letters)
    .where(eq(letters.collectionId, collectionId))
    .orderBy(desc(sql`${letters.state} = 'failed' and ${letters.seenAt} is null`), desc(letters.id))
    .limit(most)
    .all();

export const findLetter = (
  store: Store,
  collectionId: string,
  id: string,
): { letter: LetterRow; attempts: AttemptRow[] } | undefined => {
  const letter = store.select().from(letters).where(of(collectionId, id)).get();
  if (!letter) return undefined;
  const tried = store
    .select()
    .from(attempts)
    .where(and(eq(attempts.collectionId, collectionId), eq(attempts.letterId, id)))
    .orderBy(asc(attempts.at))
    .all();
  return { letter, attempts: tried };
};

/** The letter behind a signed link, which names no collection. */
export const letterById = (store: Store, id: string): LetterRow | undefined =>
  store.select().from(letters).where(eq(letters.id, id)).get();

/** A person's digest that nobody has begun to send, or that surely did not arrive: news join it. */
export const openDigest = (store: Store, collectionId: string, personId: string): LetterRow | undefined =>
  store
    .select()
    .from(letters)
    .where(
      and(
        eq(letters.collectionId, collectionId),
        eq(letters.personId, personId),
        inArray(letters.kind, ['digest', 'yearly']),
        isNull(letters.copyOf),
        eq(letters.state, 'waiting'),
        eq(letters.inDoubt, false),
        eq(letters.ahead, false),
      ),
    )
    .orderBy(asc(letters.id))
    .get();

/** Day, until one, of the last yearly letter a person got or is about to get, leaving one letter out. */
export const lastYearly = (
  store: Store,
  collectionId: string,
  personId: string,
  besides: string | null,
  on: CivilDate,
): CivilDate | null =>
  store
    .select({ day: letters.day })
    .from(letters)
    .where(
      and(
        eq(letters.collectionId, collectionId),
        eq(letters.personId, personId),
        eq(letters.kind, 'yearly'),
        isNull(letters.copyOf),
        lte(letters.day, on),
        inArray(letters.state, ['waiting', 'sending', 'sent']),
        besides === null ? undefined : ne(letters.id, besides),
      ),
    )
    .orderBy(desc(letters.day))
    .get()?.day ?? null;

/** The person's last letter, if a server refused its address for good and nobody has seen that yet. */
export const refusedLetter = (store: Store, collectionId: string, personId: string): LetterRow | undefined => {
  const last = store
    .select()
    .from(letters)
    .where(
      and(
        eq(letters.collectionId, collectionId),
        eq(letters.personId, personId),
        isNull(letters.copyOf),
        inArray(letters.state, ['sent', 'failed']),
      ),
    )
    .orderBy(desc(letters.id))
    .get();
  return last?.state === 'failed' && last.why === 'refused' && last.seenAt === null ? last : undefined;
};

/** Whether an address refused the last copy that went to it, and nobody has seen that yet. */
export const isShut = (store: Store, { collectionId, personId }: LetterRow, recipient: string): boolean => {
  const last = store
    .select()
    .from(letters)
    .where(
      and(
        eq(letters.collectionId, collectionId),
        eq(letters.personId, personId),
        eq(letters.recipient, recipient),
        inArray(letters.state, ['sent', 'failed']),
      ),
    )
    .orderBy(desc(letters.id))
    .get();
  return last?.why === 'refused' && last.seenAt === null;
};

/** The copies of a letter by other doors. */
export const copiesThere = (store: Store, { collectionId, id }: LetterRow): LetterRow[] =>
  store
    .select()
    .from(letters)
    .where(and(eq(letters.collectionId, collectionId), eq(letters.copyOf, id)))
    .orderBy(asc(letters.id))
    .all();

/** Letters given up that nobody has seen yet, for the line on every page. */
export const failedLetters = (store: Store, collectionId: string): number =>
  store
    .select({ count: sql<number>`count(*)` })
    .from(letters)
    .where(and(eq(letters.collectionId, collectionId), eq(letters.state, 'failed'), isNull(letters.seenAt)))
    .get()?.count ?? 0;

export const seeLetter = (store: Store, collectionId: string, id: string, now: string): void => {
  store
    .update(letters)
    .set({ seenAt: now })
    .where(and(of(collectionId, id), eq(letters.state, 'failed'), isNull(letters.seenAt)))
    .run();
};

/** Sends a letter on its way once more, from the first try on. */
export const retryLetter = (store: Store, collectionId: string, id: string, now: string): void => {
  store
    .update(letters)
    .set({ state: 'waiting', why: null, seenAt: null, tries: 0, nextTryAt: now })
    .where(and(of(collectionId, id), eq(letters.state, 'failed')))
    .run();
};

/** Letters of the whole server by state, and since when the longest waiting one waits: written anew, it waits no less. */
export const outboxCounts = (store: Store): { counts: Map<LetterRow['state'], number>; oldest: string | null } => {
  const firstTry = store
    .select({ at: min(attempts.at) })
    .from(attempts)
    .where(and(eq(attempts.collectionId, letters.collectionId), eq(attempts.letterId, letters.id)));
  const rows = store
    .select({
      state: letters.state,
      count: sql<number>`count(*)`,
      oldest: sql<string | null>`min(coalesce((${firstTry}), ${letters.writtenAt}))`,
    })
    .from(letters)
    .groupBy(letters.state)
    .all();
  const waiting = rows.filter(({ state }) => state === 'waiting' || state === 'sending');
  return {
    counts: new Map(rows.map(({ state, count }) => [state, count])),
    oldest: waiting.map(({ oldest }) => oldest ?? '').toSorted()[0] ?? null,
  };
};
