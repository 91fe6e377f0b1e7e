import { type CivilDate, civilDate, yearOf } from '../civil.ts';
import { dayInWords } from '../words.ts';
import { type MarkAnswer, type MarkCandidate, oldestFirst, refuse } from './answer.ts';
import { isMonth, isPlausibleYear, monthSpan, tidyMark, unreadable, yearOutOfRange } from './typed.ts';

const EXPECTED = 'Look for a use-by date: a day (2027-05-31), a month (05/2027, 2027-05) or a year (2027).';
const LEAD =
  /^(?:USE BY|USE BEFORE|BEST BEFORE(?: END)?|BEST BY|BBE?|EXPIRY(?: DATE)?|EXPIRES?|EXP\.?|NOT VALID AFTER|DO NOT USE AFTER|VALID (?:UNTIL|THROUGH|TO))[: ]*(?:END(?: OF)? )?/;
const YEAR_FIRST = /^(\d{4})(?:[-/.](\d{1,2})(?:[-/.](\d{1,2}))?)?$/;
const MONTH_YEAR = /^(\d{1,2})[-/. ](\d{4}|\d{2})$/;
const THREE_PARTS = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/;

const noSuchDay = (): MarkAnswer =>
  refuse(
    'no-such-day',
    'There is no such day or month. Read the print again; the order of the numbers may be another one.',
  );

const printed = (candidates: MarkCandidate[], doubts: string[]): MarkAnswer => {
  const [first, ...others] = oldestFirst(candidates);
  if (!first) return noSuchDay();
  if (!isPlausibleYear(yearOf(first.from))) return yearOutOfRange(yearOf(first.from));
  return {
    ok: true,
    candidates: [first, ...others],
    working: [first, ...others].map(({ to }) => `Last valid day: ${dayInWords(to)}.`),
    doubts,
  };
};

const span = (from: CivilDate, to: CivilDate): MarkCandidate => ({ from, to, validThrough: to });
const onDay = (day: CivilDate | null): MarkCandidate[] => (day ? [span(day, day)] : []);
const inMonth = (year: number, month: number): MarkCandidate[] => {
  if (!isMonth(month)) return [];
  const { from, to } = monthSpan(year, month);
  return [span(from, to)];
};

/** Last valid day a part states itself: the end of the day, month or year printed. May lie ahead or behind `today`. */
export const readPrintedExpiry = (typed: string, today: CivilDate): MarkAnswer => {
  const text = tidyMark(typed).replace(LEAD, '');
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) {
    const [year, month, day] = [Number(yearFirst[1]), yearFirst[2], yearFirst[3]];
    if (!isPlausibleYear(year)) return yearOutOfRange(year);
    if (day !== undefined) return printed(onDay(civilDate(year, Number(month), Number(day))), []);
    if (month !== undefined) return printed(inMonth(year, Number(month)), []);
    return printed([span(`${yearFirst[1]}-01-01` as CivilDate, `${yearFirst[1]}-12-31` as CivilDate)], []);
  }
  const monthYear = MONTH_YEAR.exec(text);
  if (monthYear) {
    const digits = monthYear[2] as string;
    // Expiry prints in two digits are of this century: no part sold with one is older.
    const year = digits.length === 4 ? Number(digits) : Math.floor(yearOf(today) / 100) * 100 + Number(digits);
    if (!isPlausibleYear(year)) return yearOutOfRange(year);
    return printed(
      inMonth(year, Number(monthYear[1])),
      digits.length === 4 ? [] : [`Read as month, then year ${year}.`],
    );
  }
  const parts = THREE_PARTS.exec(text);
  if (!parts) return unreadable(typed, EXPECTED);
  const [first, second, year] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (!isPlausibleYear(year)) return yearOutOfRange(year);
  const readings = [
    ...onDay(civilDate(year, first, second)),
    ...(first === second ? [] : onDay(civilDate(year, second, first))),
  ];
  return printed(
    readings,
    readings.length > 1
      ? ['Day first or month first? The print does not say; the earlier day is the cautious one.']
      : [],
  );
};
