import type { Acting } from '../../src/acts/add-car.ts';
import type { LetterRow } from '../../src/store/letters.ts';

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
  state: 'waiting',
  tries: 0,
  nextTryAt: now,
  leaseUntil: null,
  writtenAt: now,
  sentAt: null,
});
