import type { Acting } from '../../src/acts/add-car.ts';
import type { LetterRow } from '../../src/store/letters.ts';
import type { Store } from '../../src/store/open.ts';
import type { Written } from '../../src/store/outbox.ts';

/** A letter as the sweep would put it into the outbox. */
export const newLetter = ({ collectionId, personId, today }: Acting, id: string, now: string): LetterRow => ({
  collectionId,
  id,
  personId,
  kind: 'digest',
  day: today,
  recipient: 'ada@example.org',
  subject: '1 past: Merle Tourer',
  text: 'Wörter über Bremsflüssigkeit: “größer” als 24 Monate…',
  html: '<!DOCTYPE html><html lang="en"><body><p>Wörter über Bremsflüssigkeit: “größer”</p></body></html>',
  messageId: `<digest.${id}@localhost>`,
  door: 'mail',
  copyOf: null,
  ahead: false,
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

/** The same with nothing that it announces. */
export const justLetter = (letter: LetterRow): Written => ({ letter, copies: [], said: [], told: [], toldBack: [] });

/** What waited has gone out: the next sweep writes a letter of its own. */
export const allSent = (store: Store): void => {
  store.$client.exec("update letters set state = 'sent', sent_at = written_at where state = 'waiting'");
};
