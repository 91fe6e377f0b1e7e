import { type CivilDate, firstOfMonth, lastOfMonth } from '../civil.ts';
import { isoWeek } from '../iso-week.ts';
import { dayInWords } from '../words.ts';
import { type MarkAnswer, type MarkCandidate, madeAnswer, refuse } from './answer.ts';
import {
  fullYear,
  isMonth,
  isPlausibleYear,
  monthInWords,
  monthSpan,
  tidyMark,
  unreadable,
  yearOutOfRange,
} from './typed.ts';

const EXPECTED =
  'Look along the hose or on the back of the belt for a quarter and year (3Q09), a month and year, or a week and year (24/07, KW 24/2007).';
const YEAR = String.raw`(\d{4}|\d{2})`;
const QUARTER = new RegExp(String.raw`^(?:([1-4])\.?[-/ ]?Q|Q[-/ ]?([1-4]))[-/. ]*${YEAR}$`);
const WEEK = new RegExp(String.raw`^(?:(?:W|WK|KW|WEEK)[-/. ]*(\d{1,2})|(\d{1,2})[-/. ]?(?:W|WK|KW))[-/. ]+${YEAR}$`);
const WEEK_TIGHT = new RegExp(String.raw`^(?:(?:W|WK|KW)(\d{2})|(\d{2})W)${YEAR}$`);
const ISO_WEEK = /^(\d{4})-?W(\d{2})$/;
const PLAIN = new RegExp(String.raw`^(\d{1,2})[-/. ]${YEAR}$`);
const FOUR_DIGITS = /^(\d{2})(\d{2})$/;

type Unit = 'quarter' | 'month' | 'week';

/** Which units a bare number before the year can be; a leading zero is written for months and weeks, not quarters. */
const unitsOf = (digits: string): Unit[] => {
  const value = Number(digits);
  const units: Unit[] = [];
  if (digits.length === 1 && value >= 1 && value <= 4) units.push('quarter');
  if (isMonth(value)) units.push('month');
  if (digits.length === 2 && value >= 1) units.push('week');
  return units;
};

const partsOf = (text: string): { value: number; year: string; units: Unit[] } | null => {
  const quarter = QUARTER.exec(text);
  if (quarter) return { value: Number(quarter[1] ?? quarter[2]), year: quarter[3] as string, units: ['quarter'] };
  const week = WEEK.exec(text);
  if (week) return { value: Number(week[1] ?? week[2]), year: week[3] as string, units: ['week'] };
  const tight = WEEK_TIGHT.exec(text);
  if (tight) return { value: Number(tight[1] ?? tight[2]), year: tight[3] as string, units: ['week'] };
  const iso = ISO_WEEK.exec(text);
  if (iso) return { value: Number(iso[2]), year: iso[1] as string, units: ['week'] };
  const plain = PLAIN.exec(text) ?? FOUR_DIGITS.exec(text);
  return plain && { value: Number(plain[1]), year: plain[2] as string, units: unitsOf(plain[1] as string) };
};

const spanOf = (unit: Unit, value: number, year: number): MarkCandidate | null => {
  if (unit === 'month') return { ...monthSpan(year, value), note: `month: ${monthInWords(value, year)}` };
  if (unit === 'week') {
    const span = isoWeek(value, year);
    return span && { ...span, note: `week ${value} of ${year}` };
  }
  const span = { from: firstOfMonth(year, value * 3 - 2), to: lastOfMonth(year, value * 3) };
  return {
    ...span,
    note: `quarter ${value} of ${year}: ${monthInWords(value * 3 - 2, year)} to ${monthInWords(value * 3, year)}`,
  };
};

/** 2009 is week 20 of 09, or just a year. */
const yearAlone = (text: string): MarkCandidate | null =>
  /^(?:19|20)\d{2}$/.test(text)
    ? { from: firstOfMonth(Number(text), 1), to: lastOfMonth(Number(text), 12), note: `the year ${text}` }
    : null;

/** Quarter, month or ISO 8601 week printed on hoses and belts; every reading where the print does not say which. */
export const readPeriodPrint = (typed: string, today: CivilDate): MarkAnswer => {
  const parts = partsOf(tidyMark(typed));
  if (!parts) return unreadable(typed, EXPECTED);
  const { value, units } = parts;
  const year = fullYear(parts.year, today);
  if (!isPlausibleYear(year)) return yearOutOfRange(year);
  const spans = [...units.map((unit) => spanOf(unit, value, year)), yearAlone(tidyMark(typed))].filter(
    (span) => span !== null,
  );
  if (spans.length === 0)
    return refuse(
      'no-such-period',
      `${year} has no month, quarter or week ${value}. Read the print again; the year may come first.`,
    );
  // A reading still ahead is none: it would only confuse the working and the question.
  const begun = spans.filter(({ from }) => from <= today);
  const weekLike = units.includes('week');
  return madeAnswer(begun, today, {
    working: begun.map(({ from, to, note }) => `${note}, that is ${dayInWords(from)} to ${dayInWords(to)}.`),
    doubts: [
      ...(begun.length > 1 ? ['Which of these is it? The print does not say; the other prints on the car may.'] : []),
      ...(weekLike ? ['Weeks are counted here from Monday, as in ISO 8601; makers differ by some days.'] : []),
      'The print dates the part, not the day it was fitted.',
    ],
    ahead: 'Every reading is after today. Read the print again; the year may come first.',
  });
};
