/** A digest as a letter in the outbox, with all that it announces. */
import { letterHtml, letterText } from '../mail/letter.tsx';
import type { Digest } from '../notices/digest.ts';
import { newId } from '../store/ids.ts';
import type { LetterRow } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import type { Written } from '../store/outbox.ts';
import type { Telling } from '../store/told.ts';
import { type Addressed, copiesOf, frameFor, letterRow, type Writing } from './letter-row.ts';

/** A new letter, or the one that waits written anew: the same message, and its next try at once. */
export const digestFor = (
  store: Store,
  digest: Digest,
  to: Addressed,
  writing: Writing,
  waiting?: LetterRow,
): Written => {
  const id = waiting?.id ?? newId();
  const frame = frameFor(store, to, writing, id);
  const said = { subject: digest.subject, text: letterText(digest, frame), html: letterHtml(digest, frame) };
  const fresh = letterRow(digest.year ? 'yearly' : 'digest', to, writing, said, id);
  const letter = waiting ? { ...fresh, messageId: waiting.messageId, tries: waiting.tries } : fresh;
  return { letter, copies: copiesOf(store, letter, to.member, writing), ...tellingOf(digest, writing) };
};

export const tellingOf = ({ cars }: Digest, { today: saidOn }: Pick<Writing, 'today'>): Telling => {
  const stays = cars.flatMap(({ stay }) => stay);
  return {
    said: cars.flatMap(({ lines }) =>
      lines.flatMap(({ partId, news }) => news.map((stage) => ({ partId, stage, saidOn }))),
    ),
    told: stays.flatMap((line) =>
      'layUpId' in line ? [{ layUpId: line.layUpId, matter: line.news.matter, saidOn }] : [],
    ),
    toldBack: stays.flatMap((line) =>
      'revivalId' in line ? [{ revivalId: line.revivalId, matter: line.news.matter, saidOn }] : [],
    ),
  };
};
