/** A letter that says nothing but that letters arrive, by every door of a person. */
import { testHtml, testText } from '../mail/test-letter.tsx';
import { newId } from '../store/ids.ts';
import type { Store } from '../store/open.ts';
import { queueLetters } from '../store/outbox.ts';
import type { Collection, Member } from '../store/people.ts';
import { addressOf, copiesOf, frameFor, letterRow, type Writing } from './letter-row.ts';

/** Puts it into the outbox; answers its id, or null where no door leads to this person. */
export const testLetter = (store: Store, collection: Collection, member: Member, writing: Writing): string | null => {
  const to = addressOf(collection, member);
  if (!to) return null;
  const id = newId();
  const frame = frameFor(store, to, writing, id);
  const said = { subject: 'A test: letters arrive', text: testText(frame), html: testHtml(frame) };
  const letter = letterRow('test', to, writing, said, id);
  const copies = copiesOf(store, letter, member, writing);
  queueLetters(store, [{ letter, copies, said: [], told: [], toldBack: [] }]);
  return id;
};
