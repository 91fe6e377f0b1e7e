import { type CivilDate, yearOf } from '../civil.ts';
import { isoWeek } from '../iso-week.ts';
import { type TireWeek, tireWeek } from '../tire-week.ts';
import type { LenientWeek, TireCodeRefusal } from './answer.ts';

/** The week and year that digits stand for, oldest first, or why they stand for none. */
export type DigitsRead = { ok: true; weeks: TireWeek[] } | TireCodeRefusal;

/** Numbering began on 22 May 1971, the Saturday of week 20: from week 21 on. From memory of 36 FR 1196. */
const FIRST = { year: 1971, week: 21 };
/** Week 26 of 2000 ends on 1 July 2000, the last day three digits were allowed. 64 FR 36807. */
const LAST_OF_THREE = { year: 2000, week: 26 };
const MOST_WEEKS = 53;

const refuse = (reason: TireCodeRefusal['reason'], dateCode: string): TireCodeRefusal => ({
  ok: false,
  reason,
  dateCode,
});

const weekOutOfRange = (week: number, dateCode: string): TireCodeRefusal | null => {
  if (week === 0) return refuse('week-zero', dateCode);
  return week > MOST_WEEKS ? refuse('week-too-high', dateCode) : null;
};

const spanOf = (week: number, year: number): TireWeek | null => {
  const span = tireWeek(week, year);
  return span && { week, year, ...span };
};

/** Year of a four-digit code: 99 is 1999 by early marking, all others 20xx; 1980s tires never had four digits. */
export const yearOfFourDigits = (code: string): number => (code.endsWith('99') ? 1999 : 2000 + Number(code.slice(2)));

/** Pairs typed year first (2452 for week 52 of 2024) are the usual cause of a year that has not come yet. */
const swappedPairs = (code: string, today: CivilDate): TireCodeRefusal['swapped'] => {
  const dateCode = code.slice(2) + code.slice(0, 2);
  const span = spanOf(Number(dateCode.slice(0, 2)), yearOfFourDigits(dateCode));
  return span && span.year >= 2000 && span.from <= today ? { dateCode, ...span } : undefined;
};

/** How a refused week was probably meant by a factory that counts ISO weeks; only once such a day has come. */
const lenient = (week: number, year: number, today: CivilDate): LenientWeek | undefined => {
  const iso = isoWeek(week, year);
  const own = tireWeek(week, year);
  if (own)
    return iso && iso.from <= today ? { warning: 'week-begun-in-ISO-calendar-only', ...own, isoWeek: iso } : undefined;
  const next = tireWeek(1, year + 1);
  if (!next || (iso ?? next).from > today) return undefined;
  return { warning: 'week-53-not-in-TIN-calendar', ...next, ...(iso ? { isoWeek: iso } : {}) };
};

/** Four digits, week then year. 49 CFR 574.5(b)(3). */
const readFourDigits = (code: string, today: CivilDate): DigitsRead => {
  const week = Number(code.slice(0, 2));
  const year = yearOfFourDigits(code);
  const outOfRange = weekOutOfRange(week, code);
  if (outOfRange) return outOfRange;
  const span = spanOf(week, year);
  if (span && span.from <= today) return { ok: true, weeks: [span] };
  const meant = lenient(week, year, today);
  const swapped = span && year > yearOf(today) ? swappedPairs(code, today) : undefined;
  return {
    ...refuse(span ? 'future-date' : 'week-53-absent', code),
    ...(meant ? { lenient: meant } : {}),
    ...(swapped ? { swapped } : {}),
  };
};

/** Three digits, week then last digit of the year: one week a decade, 22 May 1971 to 1 July 2000. */
const readThreeDigits = (code: string, today: CivilDate): DigitsRead => {
  const week = Number(code.slice(0, 2));
  const outOfRange = weekOutOfRange(week, code);
  if (outOfRange) return outOfRange;
  const digit = Number(code.slice(2));
  const weeks = [1970 + digit, 1980 + digit, 1990 + digit, 2000 + digit]
    .filter((year) => year > FIRST.year || (year === FIRST.year && week >= FIRST.week))
    .filter((year) => year < LAST_OF_THREE.year || (year === LAST_OF_THREE.year && week <= LAST_OF_THREE.week))
    .map((year) => spanOf(week, year))
    .filter((span) => span !== null);
  if (weeks.length === 0) return refuse('week-53-absent', code);
  const begun = weeks.filter((span) => span.from <= today);
  return begun.length > 0 ? { ok: true, weeks: begun } : refuse('future-date', code);
};

export const readDateDigits = (code: string, today: CivilDate): DigitsRead =>
  code.length === 4 ? readFourDigits(code, today) : readThreeDigits(code, today);
