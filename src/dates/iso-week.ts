import { addDays, type CivilDate, daysBetween, firstOfMonth, weekday } from './civil.ts';

/** First day of ISO week 01: the Monday of the week that holds 4 January. ISO 8601. */
const firstMonday = (year: number): CivilDate => {
  const fourth = addDays(firstOfMonth(year, 1), 3);
  return addDays(fourth, -((weekday(fourth) + 6) % 7));
};

/**
 * First and last day of an ISO 8601 week, Monday to Sunday, or null where that year has no such week.
 * Tire codes do not count this way (see tire-week.ts); European prints and some factories do.
 */
export const isoWeek = (week: number, year: number): { from: CivilDate; to: CivilDate } | null => {
  const weeks = daysBetween(firstMonday(year), firstMonday(year + 1)) / 7;
  if (!Number.isInteger(week) || week < 1 || week > weeks) return null;
  const from = addDays(firstMonday(year), (week - 1) * 7);
  return { from, to: addDays(from, 6) };
};
