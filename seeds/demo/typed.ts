/** Days of the past, and how people and parts write them. */
import { addDays, addMonths, type CivilDate, firstOfMonth, lastOfMonth, yearOf } from '../../src/dates/civil.ts';
import { edtfOf } from '../../src/dates/partial-date.ts';
import { tireWeek, tireWeekOf } from '../../src/dates/tire-week.ts';
import { MONTHS } from '../../src/dates/words.ts';

/** Counts back from a day: `ago(3, 2)` is three years and two months before it. */
export type Ago = (years: number, months?: number) => CivilDate;

export const counting =
  (today: CivilDate): Ago =>
  (years, months = 0) =>
    addMonths(today, -12 * years - months);

export const daysAgo = (today: CivilDate, days: number): CivilDate => addDays(today, -days);

const numbers = (day: CivilDate) => ({
  year: yearOf(day),
  month: Number(day.slice(5, 7)),
  date: Number(day.slice(8)),
  yy: day.slice(2, 4),
});

/** "2015" */
export const year = (day: CivilDate): string => `${yearOf(day)}`;
export const about = (day: CivilDate): string => `about ${year(day)}`;
export const between = (first: CivilDate, last: CivilDate): string => `between ${year(first)} and ${year(last)}`;
export const before = (day: CivilDate): string => `before ${year(day)}`;
export const after = (day: CivilDate): string => `after ${year(day)}`;

/** "June 2015" */
export const month = (day: CivilDate): string => `${MONTHS[numbers(day).month - 1]} ${year(day)}`;

/** "6/14/2015", as Bram writes it, and "14.6.2015", as Odile does. */
export const monthFirst = (day: CivilDate): string => `${numbers(day).month}/${numbers(day).date}/${year(day)}`;
export const dayFirst = (day: CivilDate): string => `${numbers(day).date}.${numbers(day).month}.${year(day)}`;

/** "6/2015": use-by dates and plates of tanks. */
export const monthNumber = (day: CivilDate): string => `${numbers(day).month}/${year(day)}`;

/** "6/15": dials of molded plastic, battery stickers and, after DOT, brake hoses. */
export const shortMonth = (day: CivilDate): string => `${numbers(day).month}/${numbers(day).yy}`;
export const hoseLabel = (day: CivilDate): string => `DOT ${shortMonth(day)}`;

/** "2Q15": hoses and belts. */
export const quarter = (day: CivilDate): string => `${Math.ceil(numbers(day).month / 3)}Q${numbers(day).yy}`;

/** "2015" on a part whose code could be read in it too (week 20 of 2015), and the year picked. */
export const yearAlone = (day: CivilDate): { typed: string; choice: string } => ({
  typed: year(day),
  choice: `${yearOf(day)}`,
});

/** "F5": the month as a letter, the last digit of the year; the decade is for the reader to choose. */
export const batteryCode = (day: CivilDate): { typed: string; choice: string } => {
  const { year, month } = numbers(day);
  return {
    typed: `${'ABCDEFGHIJKL'[month - 1]}${year % 10}`,
    choice: edtfOf({ from: firstOfMonth(year, month), to: lastOfMonth(year, month) }),
  };
};

/** The longer layout of the number came in April 2015. */
const LONG_NUMBERS_SINCE: CivilDate = '2015-04-13';

/** "DOT 4B7 C2DE1F 2317": the number of a tire made that day. */
export const tireNumber = (day: CivilDate): string => {
  const { week, year } = tireWeekOf(day);
  const code = `${String(week).padStart(2, '0')}${String(year).slice(2)}`;
  return day < LONG_NUMBERS_SINCE ? `DOT 4B C2 DE1 ${code}` : `DOT 4B7 C2DE1F ${code}`;
};

/** All the decades that the three digits of an old tire leave open: "339" is week 33 of 1979, 1989 or 1999. */
export const everyDecade = (week: number, first: number, last: number): string =>
  edtfOf({ from: tireWeek(week, first)?.from ?? null, to: tireWeek(week, last)?.to ?? null });
