import { type CivilDate, lastOfMonth, monthsBetween, yearOf } from './civil.ts';
import type { DateRange } from './partial-date.ts';

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** A day in words that no date order can turn around: "3 June 2015". */
export const dayInWords = (day: CivilDate): string => {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  return `${date} ${MONTHS[month - 1]} ${year}`;
};

/** A range in words, by whole years and months where it is one: "June 2015", "2009 to 2013", "up to 31 December 1997". */
export const rangeInWords = ({ from, to }: DateRange): string => {
  if (from === null && to === null) return 'any time';
  if (from === null) return `up to ${dayInWords(to as CivilDate)}`;
  if (to === null) return `from ${dayInWords(from)} on`;
  if (from === to) return dayInWords(from);
  const [first, last] = [yearOf(from), yearOf(to)];
  if (from.endsWith('-01-01') && to.endsWith('-12-31')) return first === last ? `${first}` : `${first} to ${last}`;
  const [firstMonth, lastMonth] = [Number(from.slice(5, 7)), Number(to.slice(5, 7))];
  if (!from.endsWith('-01') || to !== lastOfMonth(last, lastMonth))
    return `${from.slice(0, 7) === to.slice(0, 7) ? Number(from.slice(8)) : dayInWords(from)} to ${dayInWords(to)}`;
  const [opening, closing] = [`${MONTHS[firstMonth - 1]} ${first}`, `${MONTHS[lastMonth - 1]} ${last}`];
  return opening === closing ? opening : `${opening} to ${closing}`;
};

/** Youngest and oldest possible age in whole months on a day; null where the oldest is open. Never negative. */
export interface AgeRange {
  youngest: number;
  oldest: number | null;
}

export const ageOf = (since: DateRange, today: CivilDate): AgeRange => ({
  youngest: since.to === null || since.to > today ? 0 : monthsBetween(since.to, today),
  oldest: since.from === null ? null : Math.max(0, monthsBetween(since.from, today)),
});

/** A length of time in words, to the month: "18 months", "5 years", "3 years 6 months". */
export const lengthInWords = (months: number): string => {
  const rest = months % 12;
  if (months < 24 && rest > 0) return count(months, 'month');
  const years = count(Math.floor(months / 12), 'year');
  return rest > 0 ? `${years} ${count(rest, 'month')}` : years;
};

/** An age in words: "9 months", "2 years 6 months"; from three years on by whole years, rounded down. */
export const monthsInWords = (months: number): string =>
  months === 0 ? 'less than a month' : lengthInWords(months < 36 ? months : months - (months % 12));

/** The range of ages in words: "at least 12 years, could be 22 years". */
export const ageInWords = ({ youngest, oldest }: AgeRange): string => {
  if (oldest === null)
    return youngest === 0 ? 'age not known' : `at least ${monthsInWords(youngest)}, how much more is not known`;
  const [low, high] = [monthsInWords(youngest), monthsInWords(oldest)];
  if (low === high) return high;
  return youngest === 0 ? `could be ${high}` : `at least ${low}, could be ${high}`;
};

export const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
