/**
 * Civil dates: days of the proleptic Gregorian calendar without time or zone, written YYYY-MM-DD.
 * Plain text compares in calendar order, so `<` and `===` are the comparisons.
 * date-fns does the arithmetic, in UTC, so the machine's own zone can't move a day.
 */
import { UTCDateMini } from '@date-fns/utc/date/mini';
import { addDays as addDaysTo } from 'date-fns/addDays';
import { addMonths as addMonthsTo } from 'date-fns/addMonths';
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { differenceInCalendarMonths } from 'date-fns/differenceInCalendarMonths';
import { formatISO } from 'date-fns/formatISO';
import { isValid } from 'date-fns/isValid';

/** A day as YYYY-MM-DD, year 0001 to 9999. */
export type CivilDate = `${number}-${number}-${number}`;

const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;

const toUtc = (day: CivilDate): Date => {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const utc = new UTCDateMini(year, month - 1, date);
  // Dates take years 0 to 99 for the 1900s.
  if (year < 100) utc.setFullYear(year, month - 1, date);
  return utc;
};

const fromUtc = (date: Date): CivilDate => formatISO(date, { representation: 'date' }) as CivilDate;

/** True for a day that exists: 2024-02-29 does, 2023-02-29 does not. */
export const isCivilDate = (text: string): text is CivilDate => {
  const parts = SHAPE.exec(text);
  if (!parts || parts[1] === '0000') return false;
  const date = toUtc(text as CivilDate);
  return isValid(date) && fromUtc(date) === text;
};

/** The day for a year, month (1-12) and day of the month, or null where there is none. */
export const civilDate = (year: number, month: number, day: number): CivilDate | null => {
  const text = `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`;
  return isCivilDate(text) ? text : null;
};

/** The same day n months on; the 31st becomes the month's last day (31 January + 1 = 28 or 29 February). */
export const addMonths = (day: CivilDate, months: number): CivilDate => fromUtc(addMonthsTo(toUtc(day), months));

export const addDays = (day: CivilDate, days: number): CivilDate => fromUtc(addDaysTo(toUtc(day), days));

/** Days from one day to a later one; negative when it is earlier. */
export const daysBetween = (from: CivilDate, to: CivilDate): number => differenceInCalendarDays(toUtc(to), toUtc(from));

/**
 * Whole calendar months from one day to a later one, rounded down: the most that `addMonths` can add without passing it.
 * (date-fns counts 31 January to 30 April as two months, although three months from the 31st end on that day.)
 */
export const monthsBetween = (from: CivilDate, to: CivilDate): number => {
  const months = differenceInCalendarMonths(toUtc(to), toUtc(from));
  return addMonths(from, months) > to ? months - 1 : months;
};

/** 0 for Sunday to 6 for Saturday. */
export const weekday = (day: CivilDate): number => toUtc(day).getUTCDay();

/** The latest of some days. */
export const latest = (...days: readonly [CivilDate, ...CivilDate[]]): CivilDate => days.toSorted().at(-1) as CivilDate;

export const yearOf = (day: CivilDate): number => Number(day.slice(0, 4));
export const firstOfMonth = (year: number, month: number): CivilDate =>
  `${pad(year, 4)}-${pad(month, 2)}-01` as CivilDate;
export const lastOfMonth = (year: number, month: number): CivilDate =>
  addDays(addMonths(firstOfMonth(year, month), 1), -1);

const pad = (value: number, width: number): string => String(value).padStart(width, '0');
