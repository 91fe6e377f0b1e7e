/** A letter as it goes into the outbox, and its copies by other doors. */
import { todayIn } from '../clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { LetterFrame } from '../mail/letter.tsx';
import { newId } from '../store/ids.ts';
import { copiesThere, isShut, type LetterRow } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import type { Collection, Member } from '../store/people.ts';
import { answerPath, seenPath, stopPath } from './signed-links.ts';

export interface Writing {
  /** The day it is written as on, and the instant, UTC. */
  today: CivilDate;
  now: string;
  /** Absolute address of a page. */
  href(path: string): string;
}

/** Whom a letter goes to, and by which door. */
export interface Addressed {
  collection: Collection;
  member: Member;
  door: LetterRow['door'];
  recipient: string;
}

/** Doors of a person, the one that counts first: mail, else a signed document, else plain text. */
const doorsOf = ({ email, webhookUrl, pushUrl }: Member): Pick<Addressed, 'door' | 'recipient'>[] =>
  (
    [
      ['mail', email],
      ['webhook', webhookUrl],
      ['push', pushUrl],
    ] as const
  ).flatMap(([door, recipient]) => (recipient ? [{ door, recipient }] : []));

/** Null where nothing leads to this person. */
export const addressOf = (collection: Collection, member: Member): Addressed | null => {
  const [first] = doorsOf(member);
  return first ? { collection, member, ...first } : null;
};

export const frameFor = (
  store: Store,
  { member, collection }: Addressed,
  { today, href }: Writing,
  letterId: string,
): LetterFrame => ({
  person: member.name,
  collection: collection.name,
  day: dayInWords(today),
  href,
  answer: (partId) => href(answerPath(store, letterId, partId)),
  seen: href(seenPath(store, letterId)),
  stop: href(stopPath(store, collection.id, member.id)),
  wishes: href(`/members/${member.id}/letters`),
});

const messageId = (kind: string, id: string, href: Writing['href']): string =>
  `<${kind}.${id}@${new URL(href('/')).hostname}>`;

export const letterRow = (
  kind: LetterRow['kind'],
  { collection, member, door, recipient }: Addressed,
  { today, now, href }: Writing,
  said: Pick<LetterRow, 'subject' | 'text' | 'html'>,
  id = newId(),
): LetterRow => ({
  ...said,
  collectionId: collection.id,
  id,
  personId: member.id,
  kind,
  door,
  copyOf: null,
  day: today,
  ahead: today > todayIn(collection.timeZone, new Date(now)),
  recipient,
  messageId: messageId(kind, id, href),
  state: 'waiting',
  why: null,
  inDoubt: false,
  seenAt: null,
  tries: 0,
  nextTryAt: now,
  leaseUntil: null,
  writtenAt: now,
  sentAt: null,
});

/** The same letter by the person's other doors; a copy that waits already is not written twice, nor one for a shut door. */
export const copiesOf = (store: Store, letter: LetterRow, member: Member, { href }: Writing): LetterRow[] => {
  const waiting = copiesThere(store, letter).filter(({ state, inDoubt }) => state === 'waiting' && !inDoubt);
  return doorsOf(member)
    .slice(1)
    .filter(({ door, recipient }) => !waiting.some((copy) => copy.door === door) && !isShut(store, letter, recipient))
    .map(({ door, recipient }) => {
      const id = newId();
      return { ...letter, id, door, recipient, copyOf: letter.id, messageId: messageId(door, id, href), tries: 0 };
    });
};
