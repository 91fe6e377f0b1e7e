/** The sweep: find what is news to each person, and put the day’s letters into the outbox, one digest a person. */
import { todayIn } from '../clock.ts';
import { type Digest, digestOf } from '../notices/digest.ts';
import { type LetterRow, openDigest, refusedLetter } from '../store/letters.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { cancelLetter, markSwept, queueLetters, type Written } from '../store/outbox.ts';
import { type Collection, type Member, membersOf } from '../store/people.ts';
import { recordRun } from '../store/runs.ts';
import { saysTheSame, tellingIn } from '../store/told.ts';
import { type Addressed, addressOf, type Writing } from './letter-row.ts';
import { listen } from './listen.ts';
import { planFor } from './tell-plan.ts';
import { digestFor, tellingOf } from './write-digest.ts';

export interface SweepOptions extends Writing {
  /** Compute and answer, write nothing. */
  dryRun: boolean;
  /** Only these people; absent: everybody. */
  people?: readonly string[];
}

export interface SweepResult {
  letters: { to: string; subject: string; lines: number }[];
  /** Members who would get a letter but have no address. */
  withoutAddress: string[];
  /** Members whose address was refused for good: their news waits until somebody has seen that. */
  refused: string[];
  /** What could not be reckoned, a line each; everything else was. */
  troubles: string[];
}

/** Reads and writes under one lock, so that two sweeps at the same time say nothing twice. */
export const sweepCollection = (store: Store, collection: Collection, options: SweepOptions): SweepResult =>
  options.dryRun ? sweep(store, collection, options) : inTransaction(store, (tx) => sweep(tx, collection, options));

const sweep = (store: Store, collection: Collection, options: SweepOptions): SweepResult => {
  const { today, now, dryRun } = options;
  const result: SweepResult = { letters: [], withoutAddress: [], refused: [], troubles: [] };
  const realToday = todayIn(collection.timeZone, new Date(now));
  const people = options.people ?? membersOf(store, collection.id).map(({ id }) => id);
  // A letter that surely has not arrived yet is written anew with all that is news by now: one letter, not one a day.
  const open = new Map(
    people.flatMap((id) => {
      const letter = today === realToday ? openDigest(store, collection.id, id) : undefined;
      return letter ? [[id, letter] as const] : [];
    }),
  );
  const asked = people.map((personId) => ({ personId, besides: open.get(personId)?.id ?? null }));
  const { listeners, troubles } = listen(store, collection, today, asked);
  result.troubles.push(...troubles);
  const written: Written[] = [];
  const stale: LetterRow[] = [];
  for (const listener of listeners) {
    const { member, plans } = listener;
    const waiting = open.get(member.id);
    const digest = digestOf(listener.cars, listener.year && { on: today, cars: listener.year });
    if (!digest && waiting) stale.push(waiting);
    const to = addressOf(collection, member);
    if (!digest && plans.length === 0 && !listener.missed) continue;
    if (!to) {
      result.withoutAddress.push(member.name);
      continue;
    }
    if (isRefused(store, collection, member, to)) {
      result.refused.push(member.name);
      continue;
    }
    for (const { view, names } of plans) written.push(planFor(store, view, names, to, options));
    if (!digest || (waiting && saysAlready(store, waiting, digest, options))) continue;
    written.push(digestFor(store, digest, to, options, waiting));
    result.letters.push({ to: to.recipient, subject: digest.subject, lines: linesIn(digest) });
  }
  for (const { letter } of written)
    if (letter.kind === 'plan') result.letters.push({ to: letter.recipient, subject: letter.subject, lines: 1 });
  if (dryRun) return result;
  queueLetters(store, written);
  for (const letter of stale) cancelLetter(store, letter, 'no news');
  // As on another day, by hand, is no morning.
  if (today !== realToday) return result;
  markSwept(store, { collectionId: collection.id, people, day: today, finishedAt: now });
  recordRun(store, 'sweep', now, troubles.join('; ') || null, collection.id);
  return result;
};

const isRefused = (store: Store, { id }: Collection, member: Member, { recipient }: Addressed): boolean =>
  refusedLetter(store, id, member.id)?.recipient === recipient;

/** A waiting letter with the same news is left alone: it is written from that day’s facts when it goes. */
const saysAlready = (store: Store, waiting: LetterRow, digest: Digest, options: SweepOptions): boolean =>
  (waiting.kind === 'yearly') === (digest.year !== null) &&
  saysTheSame(tellingIn(store, waiting.collectionId, waiting.id), tellingOf(digest, options));

const linesIn = ({ cars, year }: Digest): number =>
  cars.reduce((sum, { lines, stay }) => sum + lines.length + stay.length, year?.cars.length ?? 0);
