import type { CivilDate } from './civil.ts';

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * The day a limit of n whole calendar months falls on, end of month clamped: the same answer as `addMonths`.
 * Counted in plain integers because assessing a large collection asks for it several times a part.
 */
export const limitOn = (start: CivilDate, months: number): CivilDate => {
  const total = Number(start.slice(0, 4)) * 12 + Number(start.slice(5, 7)) - 1 + months;
  const year = Math.floor(total / 12);
  const month = total - year * 12;
  const leap = month === 1 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const last = (LENGTHS[month] as number) + (leap ? 1 : 0);
  const day = Math.min(Number(start.slice(8)), last);
  return `${year < 1000 ? String(year).padStart(4, '0') : year}-${month < 9 ? '0' : ''}${month + 1}-${day < 10 ? '0' : ''}${day}` as CivilDate;
};
