/** What a person wants to hear of: which cars, which severities, and when it is quiet. Never what is told of safety. */
import type { Severity } from '../catalogue/kind.ts';
import { addMonths, type CivilDate, firstOfMonth, yearOf } from '../dates/civil.ts';
import type { Owed } from './owed.ts';

export interface Wishes {
  notCars: readonly string[];
  notSeverities: readonly Severity[];
  /** First and last day of the quiet season, MM-DD, both within it; it may go over the turn of the year. */
  quietFrom: string | null;
  quietTo: string | null;
  /** Month, 1-12, whose first letter shows the whole collection. */
  yearlyMonth: number | null;
}

export const isQuiet = ({ quietFrom, quietTo }: Wishes, on: CivilDate): boolean => {
  if (quietFrom === null || quietTo === null) return false;
  const day = on.slice(5);
  return quietFrom <= quietTo ? day >= quietFrom && day <= quietTo : day >= quietFrom || day <= quietTo;
};

/** What is left of the news of a car. What is kept back was not said, and comes when it may. */
export const wished = (owed: readonly Owed[], carId: string, wishes: Wishes, on: CivilDate): Owed[] => {
  if (wishes.notCars.includes(carId)) return [];
  const heard = owed.filter(({ kind }) => kind.severity === 'safety' || !wishes.notSeverities.includes(kind.severity));
  return isQuiet(wishes, on) ? heard.filter(isUrgent) : heard;
};

/** In a quiet season only what newly can hurt somebody is told. */
const isUrgent = ({ kind, told, lastSaid }: Owed): boolean =>
  kind.severity === 'safety' && lastSaid === null && (told.includes('past') || told.includes('act'));

/** Whether the yearly letter is owed: in its month, unless one went out since that month began. */
export const wantsYearly = ({ yearlyMonth }: Wishes, lastYearly: CivilDate | null, on: CivilDate): boolean => {
  if (yearlyMonth === null) return false;
  const first = firstOfMonth(yearOf(on), yearlyMonth);
  return on >= first && on < addMonths(first, 1) && (lastYearly === null || lastYearly < first);
};
