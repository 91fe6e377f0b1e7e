import { type CivilDate, firstOfMonth, lastOfMonth, yearOf } from '../civil.ts';
import { MONTHS } from '../words.ts';
import { type MarkAnswer, refuse } from './answer.ts';

/** Longest mark worth reading; a date print is a few symbols. */
const LONGEST = 60;

/** The text in one width and case, blanks single; empty for anything too long to be a mark. */
export const tidyMark = (typed: string): string => {
  const text = typed.trim();
  return text.length > LONGEST ? '' : text.normalize('NFKC').toUpperCase().replace(/\s+/gu, ' ').trim();
};

/** A two-digit year as the latest one not after today’s; four digits stand as they are. */
export const fullYear = (digits: string, today: CivilDate): number => {
  if (digits.length === 4) return Number(digits);
  const century = Math.floor(yearOf(today) / 100) * 100;
  const year = century + Number(digits);
  return year > yearOf(today) ? year - 100 : year;
};

export const isMonth = (month: number): boolean => month >= 1 && month <= 12;

export const monthSpan = (year: number, month: number): { from: CivilDate; to: CivilDate } => ({
  from: firstOfMonth(year, month),
  to: lastOfMonth(year, month),
});

export const monthInWords = (month: number, year: number): string => `${MONTHS[month - 1]} ${year}`;

/** Date prints of these kinds are younger, and nothing is sold to last beyond the other end: such years are misread. */
export const OLDEST_YEAR = 1950;
const NEWEST_YEAR = 2199;

export const isPlausibleYear = (year: number): boolean => year >= OLDEST_YEAR && year <= NEWEST_YEAR;

export const yearOutOfRange = (year: number): MarkAnswer =>
  refuse('year-out-of-range', `The year would be ${year}. Read it again; a digit may be worn or misread.`);

export const unreadable = (typed: string, expected: string): MarkAnswer =>
  typed.trim() === ''
    ? refuse('empty', `Nothing is typed yet. ${expected}`)
    : refuse('not-this-mark', `This can’t be read as such a mark. ${expected}`);
