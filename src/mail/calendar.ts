/** Events as a calendar program reads them: RFC 5545, all-day, with a name and a pace of RFC 7986. */
import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import { addDays, type CivilDate } from '../dates/civil.ts';
import type { CalendarEvent } from '../notices/calendar.ts';

export interface EventShown extends CalendarEvent {
  uid: string;
  url: string;
  /** How often it changed since it was first shown, and the instant it last did. */
  sequence: number;
  changedAt: string;
}

const DAY_SECONDS = 86_400;

/** Midnight in UTC of a civil day, which is written out as that day wherever the machine stands. */
const inUtc = (day: CivilDate): Date => new Date(`${day}T00:00:00Z`);

/** TEXT of RFC 5545, 3.3.11; the package writes the calendar's name as it is given. */
const asText = (name: string): string => name.replace(/[\\;,]/g, '\\$&').replace(/\p{Cc}+/gu, ' ');

export const calendarText = (name: string, events: readonly EventShown[]): string => {
  const calendar = ical({
    name: asText(name),
    prodId: '//Standstill//Standstill//EN',
    method: ICalCalendarMethod.PUBLISH,
    ttl: DAY_SECONDS,
  });
  for (const { uid, url, sequence, changedAt, day, title, lines, scope } of events)
    calendar.createEvent({
      id: uid,
      sequence,
      stamp: new Date(changedAt),
      lastModified: new Date(changedAt),
      start: inUtc(day),
      end: inUtc(addDays(day, 1)),
      allDay: true,
      timezone: null,
      summary: title,
      description: [...lines, url].join('\n'),
      url,
      categories: [{ name: scope }],
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  return `${calendar.toString()}\r\n`;
};
