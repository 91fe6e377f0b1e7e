/** The sweep: find what is news of the calendar, of readings and of estimates, and put one letter a person into the outbox. */
import { todayIn } from '../clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import { findingsOf } from '../findings/car.ts';
import { letterHtml, letterText } from '../mail/letter.tsx';
import { type Digest, digestOf, type OwedCar } from '../notices/digest.ts';
import { owed } from '../notices/owed.ts';
import { newId } from '../store/ids.ts';
import { queueLetters, saidTo, type Written } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import { inTransaction } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import { type Collection, type Member, membersOf } from '../store/people.ts';
import { eachCar } from '../store/stream.ts';

export interface SweepOptions {
  /** The day it is done as on. */
  today: CivilDate;
  /** Instant of the run, UTC. */
  now: string;
  /** Absolute address of a page. */
  href(path: string): string;
  /** Compute and answer, write nothing. */
  dryRun: boolean;
}

export interface SweepResult {
  letters: { to: string; subject: string; lines: number }[];
  /** Members who would get a letter but have no address. */
  withoutAddress: string[];
}

/** Reads and writes under one lock, so that two sweeps at the same time say nothing twice. */
export const sweepCollection = (store: Store, collection: Collection, options: SweepOptions): SweepResult =>
  options.dryRun ? sweep(store, collection, options) : inTransaction(store, () => sweep(store, collection, options));

const sweep = (store: Store, collection: Collection, options: SweepOptions): SweepResult => {
  const members = membersOf(store, collection.id).filter(({ letters }) => letters);
  const owedTo = collectOwed(store, collection.id, members, options.today);
  const result: SweepResult = { letters: [], withoutAddress: [] };
  const written: Written[] = [];
  for (const member of members) {
    const digest = digestOf(owedTo.get(member.id) ?? []);
    if (!digest) continue;
    if (!member.email) {
      result.withoutAddress.push(member.name);
      continue;
    }
    const lines = digest.cars.flatMap((car) => car.lines);
    result.letters.push({ to: member.email, subject: digest.subject, lines: lines.length });
    written.push(write(digest, collection, member, member.email, options));
  }
  const ahead = options.today > todayIn(collection.timeZone, new Date(options.now));
  const swept = { collectionId: collection.id, day: options.today, ahead, finishedAt: options.now };
  if (!options.dryRun) queueLetters(store, swept, written);
  return result;
};

/** What each member has to be told, read in one walk over the collection. */
const collectOwed = (
  store: Store,
  collectionId: string,
  members: readonly Member[],
  today: CivilDate,
): Map<string, OwedCar[]> => {
  const overrides = overridesOf(store, collectionId);
  const told = members.map((member) => ({
    member,
    said: Map.groupBy(saidTo(store, collectionId, member.id, today), ({ partId }) => partId),
    cars: [] as OwedCar[],
  }));
  for (const { name, facts, parts } of eachCar(store, collectionId)) {
    const findings = findingsOf(facts, parts, overrides, today);
    const unproven = findings.filter(({ standing }) => standing === 'unproven').length;
    for (const { said, cars } of told) {
      const news = owed(findings, said);
      if (news.length > 0) cars.push({ carId: facts.id, name, owed: news, unproven });
    }
  }
  return new Map(told.map(({ member, cars }) => [member.id, cars]));
};

const write = (
  digest: Digest,
  collection: Collection,
  member: Member,
  recipient: string,
  options: SweepOptions,
): Written => {
  const { today, now, href } = options;
  const id = newId();
  const frame = { person: member.name, collection: collection.name, day: dayInWords(today), href };
  return {
    letter: {
      collectionId: collection.id,
      id,
      personId: member.id,
      kind: 'digest',
      day: today,
      recipient,
      subject: digest.subject,
      text: letterText(digest, frame),
      html: letterHtml(digest, frame),
      messageId: `<digest.${id}@${new URL(href('/')).hostname}>`,
      state: 'waiting',
      tries: 0,
      nextTryAt: now,
      leaseUntil: null,
      writtenAt: now,
      sentAt: null,
    },
    said: digest.cars.flatMap((car) =>
      car.lines.flatMap(({ partId, news }) => news.map((stage) => ({ partId, stage, saidOn: today }))),
    ),
  };
};
