/** What was told to whom: the memory that keeps a notice from being sent twice. */
import { and, eq, lte, max, ne, notInArray, or } from 'drizzle-orm';
import type { CivilDate } from '../dates/civil.ts';
import type { Said } from '../notices/owed.ts';
import type { ToldMatter } from '../notices/stay-news.ts';
import { letters, said } from './letter-schema.ts';
import type { Store } from './open.ts';
import { toldOfRevivals } from './revival-schema.ts';
import { toldOfStays } from './stay-schema.ts';

export interface ToldOfStay extends ToldMatter {
  layUpId: string;
}

export interface ToldOfRevival extends ToldMatter {
  revivalId: string;
}

/** What a letter announces: of parts, of stays, of returns to the road. */
export interface Telling {
  said: readonly Said[];
  told: readonly ToldOfStay[];
  toldBack: readonly ToldOfRevival[];
}

/** Whose memory, as on a day; what stands in the letter `besides` does not count, for that one is being written. */
export interface Listening {
  collectionId: string;
  personId: string;
  day: CivilDate;
  besides: string | null;
}

type Told = typeof said | typeof toldOfStays | typeof toldOfRevivals;

/** Told is what stands in a letter that was neither given up nor cancelled, and whose day has come. */
const counts = (table: Told, { collectionId, personId, day, besides }: Listening) =>
  and(
    eq(table.collectionId, collectionId),
    eq(table.personId, personId),
    notInArray(letters.state, ['failed', 'cancelled']),
    besides === null ? undefined : ne(table.letterId, besides),
    or(eq(table.ahead, false), lte(table.saidOn, day)),
  );

export const saidTo = (store: Store, listening: Listening): Said[] =>
  store
    .select({ partId: said.partId, stage: said.stage, saidOn: max(said.saidOn).mapWith(said.saidOn) })
    .from(said)
    .innerJoin(letters, and(eq(letters.collectionId, said.collectionId), eq(letters.id, said.letterId)))
    .where(counts(said, listening))
    .groupBy(said.partId, said.stage)
    .all() as Said[];

export const toldOfStaysTo = (store: Store, listening: Listening): ToldOfStay[] =>
  store
    .select({
      layUpId: toldOfStays.layUpId,
      matter: toldOfStays.matter,
      saidOn: max(toldOfStays.saidOn).mapWith(toldOfStays.saidOn),
    })
    .from(toldOfStays)
    .innerJoin(letters, and(eq(letters.collectionId, toldOfStays.collectionId), eq(letters.id, toldOfStays.letterId)))
    .where(counts(toldOfStays, listening))
    .groupBy(toldOfStays.layUpId, toldOfStays.matter)
    .all() as ToldOfStay[];

export const toldOfRevivalsTo = (store: Store, listening: Listening): ToldOfRevival[] =>
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
    .where(counts(toldOfRevivals, listening))
    .groupBy(toldOfRevivals.revivalId, toldOfRevivals.matter)
    .all() as ToldOfRevival[];

/** What a letter says. */
export const tellingIn = (store: Store, collectionId: string, letterId: string): Telling => ({
  said: store
    .select({ partId: said.partId, stage: said.stage, saidOn: said.saidOn })
    .from(said)
    .where(and(eq(said.collectionId, collectionId), eq(said.letterId, letterId)))
    .all(),
  told: store
    .select({ layUpId: toldOfStays.layUpId, matter: toldOfStays.matter, saidOn: toldOfStays.saidOn })
    .from(toldOfStays)
    .where(and(eq(toldOfStays.collectionId, collectionId), eq(toldOfStays.letterId, letterId)))
    .all(),
  toldBack: store
    .select({ revivalId: toldOfRevivals.revivalId, matter: toldOfRevivals.matter, saidOn: toldOfRevivals.saidOn })
    .from(toldOfRevivals)
    .where(and(eq(toldOfRevivals.collectionId, collectionId), eq(toldOfRevivals.letterId, letterId)))
    .all(),
});

/** Whether two letters say the same, on whatever days. */
export const saysTheSame = (one: Telling, other: Telling): boolean => {
  const [a, b] = [matters(one), matters(other)];
  return a.length === b.length && a.every((matter, n) => matter === b[n]);
};

const matters = ({ said: parts, told, toldBack }: Telling): string[] =>
  [
    ...parts.map(({ partId, stage }) => `${partId} ${stage}`),
    ...told.map(({ layUpId, matter }) => `${layUpId} ${matter}`),
    ...toldBack.map(({ revivalId, matter }) => `${revivalId} ${matter}`),
  ].toSorted();

/** Keeps what a letter says in place of what it said before; the caller's transaction holds the letter too. */
export const keepTelling = (
  tx: Store,
  {
    collectionId,
    id: letterId,
    personId,
    ahead,
  }: Pick<typeof letters.$inferSelect, 'collectionId' | 'id' | 'personId' | 'ahead'>,
  telling: Telling,
): void => {
  for (const table of [said, toldOfStays, toldOfRevivals])
    tx.delete(table)
      .where(and(eq(table.collectionId, collectionId), eq(table.letterId, letterId)))
      .run();
  const whose = { collectionId, personId, letterId, ahead };
  // On a conflict it was said that day before, in a letter that was given up or cancelled.
  const set = { letterId, ahead };
  for (const line of telling.said)
    tx.insert(said)
      .values({ ...line, ...whose })
      .onConflictDoUpdate({ target: [said.collectionId, said.personId, said.partId, said.stage, said.saidOn], set })
      .run();
  for (const line of telling.told)
    tx.insert(toldOfStays)
      .values({ ...line, ...whose })
      .onConflictDoUpdate({
        target: [
          toldOfStays.collectionId,
          toldOfStays.personId,
          toldOfStays.layUpId,
          toldOfStays.matter,
          toldOfStays.saidOn,
        ],
        set,
      })
      .run();
  for (const line of telling.toldBack)
    tx.insert(toldOfRevivals)
      .values({ ...line, ...whose })
      .onConflictDoUpdate({
        target: [
          toldOfRevivals.collectionId,
          toldOfRevivals.personId,
          toldOfRevivals.revivalId,
          toldOfRevivals.matter,
          toldOfRevivals.saidOn,
        ],
        set,
      })
      .run();
};
