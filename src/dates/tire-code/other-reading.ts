import type { DigitsRead } from './digits.ts';
import type { Reading } from './pick.ts';

export interface TriedReading {
  reading: Reading;
  read: DigitsRead;
}

/**
 * The reading passed over in a number typed without spaces, with the reason as a sentence, or null where nothing needs
 * saying. Seven symbols are a retread (3 + 4) or the shortest old number (2 + 2 + 3); longer ones try four digits first.
 */
export const otherReading = (used: Reading, tried: TriedReading[]): { dateCode: string; why: string } | null => {
  const other = tried.find(({ reading }) => reading !== used);
  if (!other) return null;
  const { form, dateCode } = other.reading;
  if (!other.read.ok)
    return dateCode.length === 4
      ? { dateCode, why: `The last four symbols, ${dateCode}, can’t be the date: no such week has begun.` }
      : null;
  if (used.form !== 'retread-7' && form !== 'retread-7') return null;
  const weeks = other.read.weeks.map(({ week, year }) => `week ${week} of ${year}`).join(' or ');
  const [where, last] =
    form === 'retread-7' ? ['a retread', 'four'] : ['a tire from before July 2000 that is no retread', 'three'];
  return { dateCode, why: `On ${where} the date would be the last ${last} symbols, ${dateCode}: ${weeks}.` };
};
