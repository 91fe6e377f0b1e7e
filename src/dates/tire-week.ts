import { addDays, type CivilDate, daysBetween, firstOfMonth, weekday, yearOf } from './civil.ts';

/** One week of manufacture: Sunday `from` to Saturday `to`. */
export interface TireWeek {
  week: number;
  year: number;
  from: CivilDate;
  to: CivilDate;
}

/**
 * First day of week 01: the first Sunday on or after 1 January, because the rule numbers full weeks only.
 * Days before it belong to the last week of the year before. 49 CFR 574.5(b)(3).
 */
const firstSunday = (year: number): CivilDate => {
  const newYear = firstOfMonth(year, 1);
  return addDays(newYear, (7 - weekday(newYear)) % 7);
};

/** Number of tire weeks in a year: 52 or 53, its count of Sundays. Years 1 to 9998. 49 CFR 574.5(b)(3). */
export const weeksInTireYear = (year: number): number => daysBetween(firstSunday(year), firstSunday(year + 1)) / 7;

/** First and last day of a tire week, Sunday to Saturday, or null where that year has no such week. 49 CFR 574.5(b)(3). */
export const tireWeek = (week: number, year: number): { from: CivilDate; to: CivilDate } | null => {
  if (!Number.isInteger(week) || week < 1 || week > weeksInTireYear(year)) return null;
  const from = addDays(firstSunday(year), (week - 1) * 7);
  return { from, to: addDays(from, 6) };
};

/** Week and year a tire made on that day carries; early January can belong to the year before. 49 CFR 574.5(b)(3). */
export const tireWeekOf = (day: CivilDate): { week: number; year: number } => {
  const calendarYear = yearOf(day);
  const year = day < firstSunday(calendarYear) ? calendarYear - 1 : calendarYear;
  return { week: Math.floor(daysBetween(firstSunday(year), day) / 7) + 1, year };
};
