import { type CivilDate, civilDate } from '../civil.ts';
import { dayInWords } from '../words.ts';
import { fullYear, isMonth, isPlausibleYear, monthInWords, monthSpan } from './typed.ts';

/** A day, month or year of make, first and last possible day. */
export interface MadeDate {
  from: CivilDate;
  to: CivilDate;
  year: number;
  /** "on 20 December 2021", "in March 2024", "in 2014". */
  words: string;
}

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const MONTH_FIRST = /^(\d{1,2})[-/. ](\d{4}|\d{2})$/;
const YEAR_FIRST = /^(\d{4})-(\d{1,2})$/;
const YEAR = /^(\d{4})$/;

const inMonth = (year: number, month: number): MadeDate | null =>
  isMonth(month) && isPlausibleYear(year)
    ? { ...monthSpan(year, month), year, words: `in ${monthInWords(month, year)}` }
    : null;

/** YYYY-MM-DD, YYYY-MM, MM/YYYY, MM/YY or YYYY as a span, or null; two-digit years are never after today’s. */
export const readMadeDate = (text: string, today: CivilDate): MadeDate | null => {
  const day = DAY.exec(text);
  if (day) {
    const exact = civilDate(Number(day[1]), Number(day[2]), Number(day[3]));
    return exact && { from: exact, to: exact, year: Number(day[1]), words: `on ${dayInWords(exact)}` };
  }
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) return inMonth(Number(yearFirst[1]), Number(yearFirst[2]));
  const monthFirst = MONTH_FIRST.exec(text);
  if (monthFirst) return inMonth(fullYear(monthFirst[2] as string, today), Number(monthFirst[1]));
  const year = YEAR.exec(text);
  if (!year || !isPlausibleYear(Number(year[1]))) return null;
  return {
    from: `${text}-01-01` as CivilDate,
    to: `${text}-12-31` as CivilDate,
    year: Number(text),
    words: `in ${text}`,
  };
};
