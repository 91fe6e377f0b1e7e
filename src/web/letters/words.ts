/** Letters in words: how far they came, and why they did not. */
import type { LetterRow } from '../../store/letters.ts';

const STATES: Readonly<Record<LetterRow['state'], string>> = {
  waiting: 'waiting to be sent',
  sending: 'being sent',
  sent: 'sent',
  failed: 'given up',
  cancelled: 'called off',
};

const WHY: Readonly<Record<NonNullable<LetterRow['why']>, string>> = {
  refused: 'it was refused for good',
  'tries used up': 'nobody took it in nine tries over three days; what it said comes in the next one',
  stopped: 'letters to this person were stopped before it went',
  'letters off': 'this person no longer gets letters',
  'no address': 'there was no address any more',
  'no news': 'nothing in it was news any more by the time it could go',
  'its car': 'its car had left, or was put out of this person’s letters',
  over: 'the lay-up it planned was over',
  'its letter': 'the letter it repeats was called off',
};

export const stateInWords = ({ state, why, inDoubt }: LetterRow): string => {
  const reason = why === null ? '' : `: ${WHY[why]}`;
  const doubt =
    inDoubt && (state === 'waiting' || state === 'sending')
      ? ', though it may have arrived: it goes again as the same message'
      : '';
  return `${STATES[state]}${reason}${doubt}`;
};

export const KINDS_SAID: Readonly<Record<LetterRow['kind'], string>> = {
  digest: 'news',
  yearly: 'yearly letter',
  plan: 'plan of a lay-up',
  test: 'test',
};

export const DOORS_SAID: Readonly<Record<LetterRow['door'], string>> = {
  mail: 'mail',
  webhook: 'signed document',
  push: 'plain post',
};
