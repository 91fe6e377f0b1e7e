/** The outbox: letters and what they announced go in together; delivery claims them one by one under a lease. */
import { and, asc, desc, eq, lte, max, ne, notInArray, or, sql } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import type { Said } from '../notices/owed.ts';
import type { ToldMatter } from '../notices/stay-news.ts';
import { inTransaction, type Store } from './open.ts';
import { toldOfRevivals } from './revival-schema.ts';
import { attempts, letters, said, sweeps } from './schema.ts';
import { toldOfStays } from './stay-schema.ts';

export type LetterRow = typeof letters.$inferSelect;
export type AttemptRow = typeof attempts.$inferSelect;

/** A written letter with the announcements it makes. */
export interface Written {
  letter: LetterRow;
  said: readonly Said[];
  /** What it tells of stays. */
  told: readonly ToldOfStay[];
  /** Absent: nothing of a return to the road is in it. */
  toldBack?: readonly ToldOfRevival[];
}

export interface ToldOfStay extends ToldMatter {
  layUpId: string;
}

export interface ToldOfRevival extends ToldMatter {
  revivalId: string;
}

/** A sweep of a collection as on a day; `ahead` if that day has not come yet. */
export interface Swept {
  collectionId: string;
  day: CivilDate;
  ahead: boolean;
  finishedAt: string;
}

/** Puts the day's letters and what they say into the outbox, and marks the collection as swept on a day that has come. */
export const queueLetters = (store: Store, swept: Swept, written: readonly Written[]): void =>
  inTransaction(store, (tx) => {
    const { collectionId, day, ahead, finishedAt } = swept;
    writeLetters(tx, swept, written);
    if (ahead) return;
    tx.insert(sweeps)
      .values({ collectionId, day, finishedAt })
      .onConflictDoUpdate({ target: [sweeps.collectionId, sweeps.day], set: { finishedAt } })
      .run();
  });

/** Letters that do not wait for the sweep of the day. */
export const writeLetters = (
  store: Store,
  { collectionId, ahead }: Pick<Swept, 'collectionId' | 'ahead'>,
  written: readonly Written[],
): void =>
  inTransaction(store, (tx) => {
    for (const { letter, said: lines, told, toldBack } of written) {
      tx.insert(letters).values(letter).run();
      for (const line of told)
        tx.insert(toldOfStays)
          .values({ ...line, collectionId, personId: letter.personId, letterId: letter.id, ahead })
          .onConflictDoUpdate({
            target: [
              toldOfStays.collectionId,
              toldOfStays.personId,
              toldOfStays.layUpId,
              toldOfStays.matter,
              toldOfStays.saidOn,
            ],
            set: { letterId: letter.id, ahead },
          })
          .run();
      for (const line of toldBack ?? [])
        tx.insert(toldOfRevivals)
          .values({ ...line, collectionId, personId: letter.personId, letterId: letter.id, ahead })
          .onConflictDoUpdate({
            target: [
              toldOfRevivals.collectionId,
              toldOfRevivals.personId,
              toldOfRevivals.revivalId,
              toldOfRevivals.matter,
              toldOfRevivals.saidOn,
            ],
            set: { letterId: letter.id, ahead },
          })
          .run();
      for (const line of lines)
        tx.insert(said)
          .values({ ...line, collectionId, personId: letter.personId, letterId: letter.id, ahead })
          // Said before in a letter that was given up.
          .onConflictDoUpdate({
            target: [said.collectionId, said.personId, said.partId, said.stage, said.saidOn],
            set: { letterId: letter.id, ahead },
          })
          .run();
    }
  });

/** What a person was told by a day. What stood in a letter that was given up was not told. */
export const saidTo = (store: Store, collectionId: string, personId: string, day: CivilDate): Said[] =>
  store
    .select({ partId: said.partId, stage: said.stage, saidOn: max(said.saidOn).mapWith(said.saidOn) })
    .from(said)
    .innerJoin(letters, and(eq(letters.collectionId, said.collectionId), eq(letters.id, said.letterId)))
    .where(
      and(
        eq(said.collectionId, collectionId),
        eq(said.personId, personId),
        ne(letters.state, 'failed'),
        or(eq(said.ahead, false), lte(said.saidOn, day)),
      ),
    )
    .groupBy(said.partId, said.stage)
    .all() as Said[];

/** The same of stays. */
export const toldOfStaysTo = (store: Store, collectionId: string, personId: string, day: CivilDate): ToldOfStay[] =>
  store
    .select({
      layUpId: toldOfStays.layUpId,
      matter: toldOfStays.matter,
      saidOn: max(toldOfStays.saidOn).mapWith(toldOfStays.saidOn),
    })
    .from(toldOfStays)
    .innerJoin(letters, and(eq(letters.collectionId, toldOfStays.collectionId), eq(letters.id, toldOfStays.letterId)))
    .where(
      and(
        eq(toldOfStays.collectionId, collectionId),
        eq(toldOfStays.personId, personId),
        ne(letters.state, 'failed'),
        or(eq(toldOfStays.ahead, false), lte(toldOfStays.saidOn, day)),
      ),
    )
    .groupBy(toldOfStays.layUpId, toldOfStays.matter)
    .all() as ToldOfStay[];

/** The same of returns to the road. */
export const toldOfRevivalsTo = (
  store: Store,
  collectionId: string,
  personId: string,
  day: CivilDate,
): ToldOfRevival[] =>
  store
    .select({
      revivalId: toldOfRevivals.revivalId,
      matter: toldOfRevivals.matter,
      saidOn: max(toldOfRevivals.saidOn).mapWith(toldOfRevivals.saidOn),
    })
    .from(toldOfRevivals)
    .innerJoin(
      letters,
      and(eq(letters.collectionId, toldOfRevivals.collectionId), eq(letters.id, toldOfRevivals.letterId)),
    )
    .where(
      and(
        eq(toldOfRevivals.collectionId, collectionId),
        eq(toldOfRevivals.personId, personId),
        ne(letters.state, 'failed'),
        or(eq(toldOfRevivals.ahead, false), lte(toldOfRevivals.saidOn, day)),
      ),
    )
    .groupBy(toldOfRevivals.revivalId, toldOfRevivals.matter)
    .all() as ToldOfRevival[];

export const lettersOf = (store: Store, collectionId: string, most = 200): LetterRow[] =>
  store
    .select()
    .from(letters)
    .where(eq(letters.collectionId, collectionId))
    .orderBy(desc(letters.id))
    .limit(most)
    .all();

export const findLetter = (
  store: Store,
  collectionId: string,
  id: string,
): { letter: LetterRow; attempts: AttemptRow[] } | undefined => {
  const letter = store
    .select()
    .from(letters)
    .where(and(eq(letters.collectionId, collectionId), eq(letters.id, id)))
    .get();
  if (!letter) return undefined;
  const tried = store
    .select()
    .from(attempts)
    .where(and(eq(attempts.collectionId, collectionId), eq(attempts.letterId, id)))
    .orderBy(asc(attempts.at))
    .all();
  return { letter, attempts: tried };
};

/** Instant at which a collection was last swept on a day, or null. */
export const sweptAt = (store: Store, collectionId: string, day: CivilDate): string | null =>
  store
    .select({ at: sweeps.finishedAt })
    .from(sweeps)
    .where(and(eq(sweeps.collectionId, collectionId), eq(sweeps.day, day)))
    .get()?.at ?? null;

/** Instant of the last finished sweep of a collection, or of the whole server. */
export const lastFinishedSweep = (store: Store, collectionId?: string): string | null =>
  store
    .select({ at: max(sweeps.finishedAt) })
    .from(sweeps)
    .where(collectionId === undefined ? undefined : eq(sweeps.collectionId, collectionId))
    .get()?.at ?? null;

/** How many letters would be tried now, or by a later instant. */
export const waitingLetters = (store: Store, now: string, dueBy: string): number =>
  store.select({ count: sql<number>`count(*)` }).from(letters).where(isDue(now, dueBy)).get()?.count ?? 0;

/** Waiting and due by an instant, or in the hands of a sender whose lease ran out. */
const isDue = (now: string, dueBy: string) =>
  sql`((${letters.state} = 'waiting' and ${letters.nextTryAt} <= ${dueBy}) or (${letters.state} = 'sending' and ${letters.leaseUntil} <= ${now}))`;

/** When a letter is claimed: instants of now, by which it was to be tried, and until which the claim holds. */
export interface Claiming {
  now: string;
  dueBy: string;
  leaseUntil: string;
  /** Letters already tried in this run. */
  except: readonly string[];
}

/** Takes one letter that is waiting (or whose sender died) under a lease; undefined when none is due. */
export const claimLetter = (store: Store, { now, dueBy, leaseUntil, except }: Claiming): LetterRow | undefined =>
  inTransaction(store, (tx) => {
    const next = tx
      .select({ collectionId: letters.collectionId, id: letters.id })
      .from(letters)
      .where(and(isDue(now, dueBy), notInArray(letters.id, [...except])))
      .orderBy(asc(letters.nextTryAt))
      .limit(1)
      .get();
    if (!next) return undefined;
    return tx
      .update(letters)
      .set({ state: 'sending', leaseUntil, tries: sql`${letters.tries} + 1` })
      .where(and(eq(letters.collectionId, next.collectionId), eq(letters.id, next.id)))
      .returning()
      .get();
  });

/** Records how an attempt ended: the letter is sent, waits for its next try, or is given up. */
export const settleLetter = (
  store: Store,
  letter: LetterRow,
  outcome: { at: string; ok: boolean; answer: string; state: 'sent' | 'waiting' | 'failed'; nextTryAt: string },
): void =>
  inTransaction(store, (tx) => {
    const { at, ok, answer, state, nextTryAt } = outcome;
    const key = { collectionId: letter.collectionId, letterId: letter.id };
    tx.insert(attempts)
      .values({ ...key, at, ok, answer })
      .run();
    tx.update(letters)
      .set({ state, nextTryAt, leaseUntil: null, sentAt: ok ? at : null })
      // Only while this try still holds the letter: a sender that overslept its lease must not undo the next one's word.
      .where(
        and(
          eq(letters.collectionId, letter.collectionId),
          eq(letters.id, letter.id),
          eq(letters.state, 'sending'),
          eq(letters.tries, letter.tries),
        ),
      )
      .run();
  });

/** Letters that were given up, for the line on every page. */
export const failedLetters = (store: Store, collectionId: string): number =>
  store
    .select({ count: sql<number>`count(*)` })
    .from(letters)
    .where(and(eq(letters.collectionId, collectionId), eq(letters.state, 'failed')))
    .get()?.count ?? 0;
