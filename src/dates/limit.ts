/** Days counted in plain integers, because assessing a large collection asks for them several times a part. */
import type { CivilDate } from './civil.ts';

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days of a month, 0 for January. */
const lengthOf = (year: number, month: number): number =>
  month === 1 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : (LENGTHS[month] as number);

const written = (year: number, month: number, day: number): CivilDate =>
  `${year < 1000 ? String(year).padStart(4, '0') : year}-${month < 9 ? '0' : ''}${month + 1}-${day < 10 ? '0' : ''}${day}` as CivilDate;

/** The day a limit of n whole calendar months falls on, end of month clamped: the same answer as `addMonths`. */
export const limitOn = (start: CivilDate, months: number): CivilDate => {
  const total = Number(start.slice(0, 4)) * 12 + Number(start.slice(5, 7)) - 1 + months;
  const year = Math.floor(total / 12);
  const month = total - year * 12;
  return written(year, month, Math.min(Number(start.slice(8)), lengthOf(year, month)));
};

/** The day after: the same answer as `addDays` with 1. */
export const nextDay = (day: CivilDate): CivilDate => {
  const [year, month, next] = [Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8)) + 1];
  if (next <= lengthOf(year, month)) return written(year, month, next);
  return month < 11 ? written(year, month + 1, 1) : written(year + 1, 0, 1);
};
