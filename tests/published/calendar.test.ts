/** The calendar against the rules of RFC 5545 (sections beside each check), and read back by an independent library. */
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/dates/civil.ts';
import { calendarText, type EventShown } from '../../src/mail/calendar.ts';

const event = (more: Partial<EventShown> = {}): EventShown => ({
  key: 'due.part',
  uid: 'due.part@barn.example.org',
  scope: 'limits',
  day: '2027-04-01',
  title: 'Merle Tourer: Brake fluid is due',
  lines: ['A day by the calendar.'],
  page: '/parts/part',
  url: 'https://barn.example.org/parts/part',
  sequence: 0,
  changedAt: '2026-11-25T07:00:00.000Z',
  ...more,
});

const AWKWARD = [
  event({ title: 'Öl; “Bremse”, \\rear\\ 🛞: größer', lines: ['Zeile eins', 'Zeile, zwei; \\drei\\'] }),
  event({ key: 'look.long', uid: 'look.long@barn.example.org', title: 'Ü🛞'.repeat(100), day: '2028-02-29' }),
  event({ key: 'step.x', uid: 'step.x@barn.example.org', day: '2026-12-31', sequence: 7, scope: 'steps' }),
];
const text = calendarText('The barn; “über”, \\ & co', AWKWARD);
const lines = text.split('\r\n');

describe('the bytes', () => {
  it('end each line with CRLF, and have no bare CR or LF (3.1)', () => {
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
  });

  it('have no line longer than 75 octets, and fold inside no character (3.1)', () => {
    const bytes = Buffer.from(text);
    for (const line of bytes.toString('latin1').split('\r\n')) {
      expect(line.length).toBeLessThanOrEqual(75);
      // Each folded piece is UTF-8 by itself.
      expect(() => new TextDecoder('utf-8', { fatal: true }).decode(Buffer.from(line, 'latin1'))).not.toThrow();
    }
  });

  it('begin with the version and the product, and publish (3.6, 3.7.2, 3.7.3, 3.7.4)', () => {
    expect(lines.slice(0, 4)).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Standstill//Standstill//EN',
      'METHOD:PUBLISH',
    ]);
  });

  it('write days as dates, the end being the day after the last (3.3.4, 3.6.1, 3.8.2.2)', () => {
    expect(lines).toContain('DTSTART;VALUE=DATE:20270401');
    expect(lines).toContain('DTEND;VALUE=DATE:20270402');
    expect(lines).toContain('DTSTART;VALUE=DATE:20280229');
    expect(lines).toContain('DTEND;VALUE=DATE:20280301');
    expect(lines).toContain('DTEND;VALUE=DATE:20270101');
  });

  it('escape backslash, semicolon, comma and line break in text (3.3.11)', () => {
    const unfolded = text.replaceAll('\r\n ', '');
    expect(unfolded).toContain('SUMMARY:Öl\\; “Bremse”\\, \\\\rear\\\\ 🛞: größer');
    expect(unfolded).toContain('DESCRIPTION:Zeile eins\\nZeile\\, zwei\\; \\\\drei\\\\\\n');
  });

  it('give each event its UID, its stamp in UTC and its sequence, and block no time (3.8.4.7, 3.8.7.2, 3.8.7.4, 3.8.2.7)', () => {
    expect(lines.filter((line) => line.startsWith('UID:')).toSorted()).toEqual(
      AWKWARD.map(({ uid }) => `UID:${uid}`).toSorted(),
    );
    expect(lines.filter((line) => line === 'DTSTAMP:20261125T070000Z')).toHaveLength(3);
    expect(lines.filter((line) => line.startsWith('SEQUENCE:')).toSorted()).toEqual([
      'SEQUENCE:0',
      'SEQUENCE:0',
      'SEQUENCE:7',
    ]);
    expect(lines.filter((line) => line === 'TRANSP:TRANSPARENT')).toHaveLength(3);
  });

  it('say how often to look again (RFC 7986, 5.7)', () =>
    expect(lines).toContain('REFRESH-INTERVAL;VALUE=DURATION:P1D'));
});

describe('read back by another library', () => {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const read = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));

  it('is what went in', () => {
    expect(
      read.map(({ uid, summary, description, sequence, startDate, endDate }) => ({
        uid,
        summary,
        description,
        sequence,
        from: startDate.toString(),
        to: endDate.toString(),
        isDay: startDate.isDate,
      })),
    ).toEqual(
      AWKWARD.map(({ uid, title, lines: said, url, sequence, day }) => ({
        uid,
        summary: title,
        description: [...said, url].join('\n'),
        sequence,
        from: day,
        to: addDays(day, 1),
        isDay: true,
      })),
    );
    // RFC 7986, 5.1: the name is TEXT, in which RFC 5545, 3.3.11, escapes these signs. The reader knows no such property
    // and hands it out as written.
    for (const by of ['name', 'x-wr-calname'])
      expect(calendar.getFirstPropertyValue(by)).toBe('The barn\\; “über”\\, \\\\ & co');
  });

  it('without events is a calendar still', () => {
    const empty = new ICAL.Component(ICAL.parse(calendarText('Nothing', [])));
    expect(empty.getAllSubcomponents('vevent')).toEqual([]);
  });
});
