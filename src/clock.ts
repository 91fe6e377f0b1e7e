import { TZDate } from '@date-fns/tz/date';
import { format } from 'date-fns/format';
import { formatISO } from 'date-fns/formatISO';
import type { CivilDate } from './dates/civil.ts';

/** The civil date of an instant in a time zone. */
export const todayIn = (timeZone: string, now: Date): CivilDate =>
  formatISO(new TZDate(now, timeZone), { representation: 'date' }) as CivilDate;

/** The hour (0-23) of an instant in a time zone. */
export const hourIn = (timeZone: string, now: Date): number => new TZDate(now, timeZone).getHours();

/** An instant in a time zone: "25 November 2026, 10:00". */
export const instantInWords = (instant: string, timeZone: string): string =>
  format(new TZDate(instant, timeZone), 'd MMMM yyyy, HH:mm');

/** True for an IANA time zone this machine knows. */
export const isTimeZone = (zone: string): boolean => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
};
