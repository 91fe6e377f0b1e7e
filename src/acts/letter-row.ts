/** A letter as it goes into the outbox. */
import type { CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { LetterFrame } from '../mail/letter.tsx';
import { newId } from '../store/ids.ts';
import type { LetterRow } from '../store/letters.ts';
import type { Collection, Member } from '../store/people.ts';

export interface Writing {
  /** The day it is written as on, and the instant, UTC. */
  today: CivilDate;
  now: string;
  /** Absolute address of a page. */
  href(path: string): string;
}

export const frameFor = (member: Member, collection: Collection, { today, href }: Writing): LetterFrame => ({
  person: member.name,
  collection: collection.name,
  day: dayInWords(today),
  href,
});

export const letterRow = (
  kind: LetterRow['kind'],
  to: { collection: Collection; member: Member; recipient: string },
  { today, now, href }: Writing,
  said: Pick<LetterRow, 'subject' | 'text' | 'html'>,
): LetterRow => {
  const id = newId();
  return {
    ...said,
    collectionId: to.collection.id,
    id,
    personId: to.member.id,
    kind,
    day: today,
    recipient: to.recipient,
    messageId: `<${kind}.${id}@${new URL(href('/')).hostname}>`,
    state: 'waiting',
    tries: 0,
    nextTryAt: now,
    leaseUntil: null,
    writtenAt: now,
    sentAt: null,
  };
};
