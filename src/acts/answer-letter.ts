/** Answering a letter about a part: seen, waiting for parts, done, not on this car. Nothing is done by opening a link. */
import { addMonths, type CivilDate, isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { AnswerWord } from '../notices/answers.ts';
import { type AnswerRow, addAnswer, answersTo } from '../store/answers.ts';
import { type CarWithParts, carWithParts, findPart, type PartOnRecord, retirePart } from '../store/cars.ts';
import { type LetterRow, letterById } from '../store/letters.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { type Collection, findCollection, type Member, membersOf } from '../store/people.ts';
import { tellingIn } from '../store/told.ts';
import type { Acting } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { done, type Outcome, refused } from './fault.ts';
import { beginsOn, datePart, kindOf, renewPart } from './parts.ts';
import { isSigned } from './signed-links.ts';

/** How long a letter can be answered, in months; and how long somebody can wait for parts. */
const ANSWERED_FOR = 13;
const LONGEST_WAIT = 12;

export interface AnswerHere {
  letter: LetterRow;
  collection: Collection;
  member: Member;
  part: PartOnRecord;
  found: CarWithParts;
  /** Answers so far, the last one last. */
  given: AnswerRow[];
}

/** What a signed link leads to; undefined for one that is forged, has ended, or whose letter or person is gone. */
export const answerHere = (
  store: Store,
  { letterId, partId, signature }: { letterId: string; partId: string; signature: string },
  on: (timeZone: string) => CivilDate,
): AnswerHere | undefined => {
  if (!isSigned(store, 'answers', [letterId, partId], signature)) return undefined;
  const letter = letterById(store, letterId);
  const collection = letter && findCollection(store, letter.collectionId);
  if (!letter || !collection) return undefined;
  if (on(collection.timeZone) > addMonths(letter.day, ANSWERED_FOR)) return undefined;
  const member = membersOf(store, collection.id).find(({ id }) => id === letter.personId);
  const part = findPart(store, collection.id, partId);
  const found = part && carWithParts(store, collection.id, part.carId);
  if (!member || !part || !found) return undefined;
  return { letter, collection, member, part, found, given: answersTo(store, collection.id, partId) };
};

/** What a link to answer a whole letter leads to: its open parts. */
export const letterHere = (
  store: Store,
  { letterId, signature }: { letterId: string; signature: string },
  on: (timeZone: string) => CivilDate,
): (Omit<AnswerHere, 'part' | 'found' | 'given'> & { parts: PartOnRecord[] }) | undefined => {
  if (!isSigned(store, 'seen', [letterId], signature)) return undefined;
  const letter = letterById(store, letterId);
  const collection = letter && findCollection(store, letter.collectionId);
  if (!letter || !collection || on(collection.timeZone) > addMonths(letter.day, ANSWERED_FOR)) return undefined;
  const member = membersOf(store, collection.id).find(({ id }) => id === letter.personId);
  const ids = new Set(tellingIn(store, collection.id, letter.id).said.map(({ partId }) => partId));
  const parts = [...ids].flatMap((id) => findPart(store, collection.id, id) ?? []);
  return member && { letter, collection, member, parts: parts.filter(({ closedOn }) => closedOn === null) };
};

/** Whether somebody waits for parts of it: that brings it back on its day, whatever is seen meanwhile. */
const isWaiting = (given: readonly AnswerRow[], today: CivilDate): boolean => {
  const last = given.at(-1);
  return last?.word === 'waiting' && last.until !== null && last.until >= today;
};

/** Answers all of a letter’s open parts as seen by its reader, but those that wait for parts. */
export const seeAll = (
  store: Store,
  { letter, collection, member, parts }: NonNullable<ReturnType<typeof letterHere>>,
  today: CivilDate,
): void =>
  inTransaction(store, (tx) => {
    for (const part of parts.filter(({ id }) => !isWaiting(answersTo(tx, collection.id, id), today)))
      addAnswer(tx, {
        collectionId: collection.id,
        partId: part.id,
        personId: member.id,
        letterId: letter.id,
        word: 'seen',
        until: null,
        answeredOn: today,
      });
  });

export interface AnswerGiven {
  word: AnswerWord;
  /** Typed: the last day of waiting, or the day it was done. */
  day: string;
  /** What was done: a new one, or a look. */
  how: 'renewed' | 'looked';
}

export const answerLetter = (store: Store, here: AnswerHere, given: AnswerGiven, today: CivilDate): Outcome<null> =>
  allOrNothing(store, (tx) => {
    const { letter, collection, member, part } = here;
    if (part.closedOn)
      return refused({
        field: 'answer',
        message: `That one was closed on ${dayInWords(part.closedOn)}: nothing is asked of it any more.`,
      });
    const until = given.word === 'waiting' ? readUntil(given.day, today) : done(null);
    if (!until.ok) return until;
    const acting = { collectionId: collection.id, personId: member.id, order: member.dateOrder, today };
    const outcome = carryOut(tx, acting, here, given);
    if (!outcome.ok) return outcome;
    addAnswer(tx, {
      collectionId: collection.id,
      partId: part.id,
      personId: member.id,
      letterId: letter.id,
      word: given.word,
      until: until.value,
      answeredOn: today,
    });
    return done(null);
  });

/** From a field of days, so it is a day or nothing. */
const readUntil = (day: string, today: CivilDate): Outcome<CivilDate> => {
  const last = addMonths(today, LONGEST_WAIT);
  if (!isCivilDate(day) || day <= today || day > last)
    return refused({
      field: 'waiting',
      message: `Say until when: a day after today, and at most a year ahead (${dayInWords(last)}).`,
    });
  return done(day);
};

/** What an answer changes in the records. */
const carryOut = (
  tx: Store,
  acting: Acting,
  { part, found }: AnswerHere,
  { word, day, how }: AnswerGiven,
): Outcome<unknown> => {
  if (word === 'not here') {
    retirePart(tx, acting.collectionId, part.id, acting.today, 'Not on this car, as answered to a letter.');
    return done(null);
  }
  if (word !== 'done') return done(null);
  const clock = how === 'looked' ? 'serviced' : beginsOn(kindOf(part));
  const claim = { clock, typed: day, evidence: 'own memory' as const, km: null, note: 'Answered to a letter.' };
  const here = { part, car: found.facts };
  const outcome: Outcome<unknown> =
    how === 'looked'
      ? datePart(tx, acting, here, claim)
      : renewPart(tx, acting, here, { why: 'Renewed, as answered to a letter.', note: '', claims: [claim] });
  return outcome.ok ? outcome : { ok: false, faults: outcome.faults.map((fault) => ({ ...fault, field: 'done' })) };
};
