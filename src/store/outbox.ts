/** The outbox: a letter and what it announces go in together; delivery claims letters one by one under a lease. */
import { and, asc, eq, inArray, max, min, notInArray, sql } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import { attempts, type CalledOff, letters, mornings } from './letter-schema.ts';
import type { LetterRow } from './letters.ts';
import { inTransaction, type Store } from './open.ts';
import { keepTelling, type Telling } from './told.ts';

/** A letter with the announcements it makes, and copies of it by other doors. */
export interface Written extends Telling {
  letter: LetterRow;
  copies: readonly LetterRow[];
}

/** A sweep of a collection for some people on a day. */
export interface Swept {
  collectionId: string;
  people: readonly string[];
  day: CivilDate;
  finishedAt: string;
}

/** Puts letters into the outbox; one that is there already and waits is written anew, with what it says. */
export const queueLetters = (store: Store, written: readonly Written[]): void =>
  inTransaction(store, (tx) => {
    for (const { letter, copies, ...telling } of written) {
      for (const row of [letter, ...copies]) putLetter(tx, row);
      keepTelling(tx, letter, telling);
    }
  });

/** Puts a letter in, new or in place of itself; what it says is kept by its caller. */
export const putLetter = (store: Store, row: LetterRow): void => {
  store
    .insert(letters)
    .values(row)
    .onConflictDoUpdate({ target: [letters.collectionId, letters.id], set: row })
    .run();
};

/** Marks the people's morning as swept. */
export const markSwept = (store: Store, { collectionId, people, day, finishedAt }: Swept): void => {
  for (const personId of people)
    store
      .insert(mornings)
      .values({ collectionId, personId, day, finishedAt })
      .onConflictDoUpdate({ target: [mornings.collectionId, mornings.personId, mornings.day], set: { finishedAt } })
      .run();
};

/** Instant at which a person's day was last swept, or null. */
export const sweptAt = (store: Store, collectionId: string, personId: string, day: CivilDate): string | null =>
  store
    .select({ at: mornings.finishedAt })
    .from(mornings)
    .where(and(eq(mornings.collectionId, collectionId), eq(mornings.personId, personId), eq(mornings.day, day)))
    .get()?.at ?? null;

/** The first day a person's collection was swept for them, or null. */
export const firstSwept = (store: Store, collectionId: string, personId: string): CivilDate | null =>
  store
    .select({ day: min(mornings.day).mapWith(mornings.day) })
    .from(mornings)
    .where(and(eq(mornings.collectionId, collectionId), eq(mornings.personId, personId)))
    .get()?.day ?? null;

/** Instant of the last finished sweep of the whole server, or null. */
export const lastFinishedSweep = (store: Store): string | null =>
  store
    .select({ at: max(mornings.finishedAt) })
    .from(mornings)
    .get()?.at ?? null;

/** Instants: of now; by which a letter was to be tried; and past which none can wait but by a clock that was wrong. */
export interface DueBy {
  now: string;
  dueBy: string;
  beyond: string;
}

/** How many letters would be tried now, or by a later instant. */
export const waitingLetters = (store: Store, due: DueBy): number =>
  store.select({ count: sql<number>`count(*)` }).from(letters).where(isDue(due)).get()?.count ?? 0;

/** Waiting and due by an instant, or in the hands of a sender whose lease ran out. */
const isDue = ({ now, dueBy, beyond }: DueBy) =>
  sql`((${letters.state} = 'waiting' and (${letters.nextTryAt} <= ${dueBy} or ${letters.nextTryAt} > ${beyond}))
    or (${letters.state} = 'sending' and (${letters.leaseUntil} <= ${now} or ${letters.leaseUntil} > ${beyond})))`;

/** When a letter is claimed, and until when the claim holds. */
export interface Claiming extends DueBy {
  leaseUntil: string;
  /** Letters that are not to be tried again. */
  except: readonly string[];
}

/**
 * Takes one letter that is waiting, or whose sender died, under a lease, in one statement; undefined when none is due.
 * A letter whose sender died may have arrived: it is in doubt.
 */
export const claimLetter = (store: Store, { leaseUntil, except, ...due }: Claiming): LetterRow | undefined =>
  store
    .update(letters)
    .set({
      state: 'sending',
      leaseUntil,
      tries: sql`${letters.tries} + 1`,
      inDoubt: sql`${letters.inDoubt} or ${letters.state} = 'sending'`,
    })
    .where(
      sql`(${letters.collectionId}, ${letters.id}) = (${store
        .select({ collectionId: letters.collectionId, id: letters.id })
        .from(letters)
        .where(and(isDue(due), notInArray(letters.id, [...except])))
        .orderBy(asc(letters.nextTryAt), asc(letters.id))
        .limit(1)})`,
    )
    .returning()
    .get();

/**
 * Only while this try still holds the letter: a sender that overslept its lease must not undo the next one's word. That
 * the letter was taken is no less true for being late.
 */
const isHeld = ({ collectionId, id, tries }: LetterRow, ok: boolean) =>
  and(
    eq(letters.collectionId, collectionId),
    eq(letters.id, id),
    ok
      ? inArray(letters.state, ['waiting', 'sending', 'failed'])
      : and(eq(letters.state, 'sending'), eq(letters.tries, tries)),
  );

/** How a try ended: the letter is sent, waits for its next try, or is given up. */
export interface Settled extends Pick<LetterRow, 'why' | 'inDoubt' | 'nextTryAt'> {
  at: string;
  ok: boolean;
  answer: string;
  state: 'sent' | 'waiting' | 'failed';
}

export const settleLetter = (store: Store, letter: LetterRow, outcome: Settled): void =>
  inTransaction(store, (tx) => {
    const { at, ok, answer, ...settled } = outcome;
    tx.insert(attempts)
      .values({ collectionId: letter.collectionId, letterId: letter.id, at, ok, answer })
      // Two tries in one thousandth of a second: the later answer counts.
      .onConflictDoUpdate({ target: [attempts.collectionId, attempts.letterId, attempts.at], set: { ok, answer } })
      .run();
    tx.update(letters)
      .set({ ...settled, leaseUntil: null, sentAt: ok ? at : null })
      .where(isHeld(letter, ok))
      .run();
  });

/** Calls a letter off, with the reason; what it would have said counts as not said. */
export const cancelLetter = (store: Store, { collectionId, id }: LetterRow, why: CalledOff): void => {
  store
    .update(letters)
    .set({ state: 'cancelled', why, leaseUntil: null })
    .where(and(eq(letters.collectionId, collectionId), eq(letters.id, id), notInArray(letters.state, ['sent'])))
    .run();
};
