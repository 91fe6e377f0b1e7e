/** The calendar read by a calendar client as people run one: khal, from Debian's packages. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import { calendarText } from '../../src/mail/calendar.ts';
import { newFolder } from '../support/folder.ts';

const KHAL = '/usr/bin/khal';
const found = existsSync(KHAL);
if (!found && process.env['CI']) throw new Error(`No khal at ${KHAL}: in CI its tests may not be skipped.`);
if (!found) console.warn(`No khal at ${KHAL}: the test with a calendar client is skipped.`);

const client = () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'barn'));
  const config = join(folder, 'config');
  writeFileSync(
    config,
    `[calendars]\n[[barn]]\npath = ${join(folder, 'barn')}\ntype = calendar\n[locale]\nlocal_timezone = America/Los_Angeles\ndefault_timezone = America/Los_Angeles\ntimeformat = %H:%M\ndateformat = %Y-%m-%d\nlongdateformat = %Y-%m-%d\ndatetimeformat = %Y-%m-%d %H:%M\nlongdatetimeformat = %Y-%m-%d %H:%M\n[sqlite]\npath = ${join(folder, 'khal.db')}\n`,
  );
  const khal = (...options: string[]): string =>
    execFileSync(KHAL, ['-c', config, ...options], {
      encoding: 'utf8',
      env: { PATH: process.env['PATH'], HOME: folder, LC_ALL: 'C.UTF-8', LANG: 'C.UTF-8' },
    });
  const take = (day: CivilDate, sequence: number): void => {
    const file = join(folder, 'feed.ics');
    const event = {
      key: 'due.part',
      uid: 'due.part@barn.example.org',
      scope: 'limits' as const,
      title: 'Merle Tourer: Brake fluid, “rear”; Öl is due',
      lines: ['A day by the calendar.'],
      page: '/parts/part',
      url: 'https://barn.example.org/parts/part',
      changedAt: '2026-11-25T07:00:00.000Z',
    };
    writeFileSync(
      file,
      calendarText('The barn', [
        { ...event, day, sequence },
        {
          ...event,
          uid: 'past.part@barn.example.org',
          title: 'Merle Tourer: it is past',
          day: '2028-02-29',
          sequence: 0,
        },
      ]),
    );
    khal('import', '--batch', '-a', 'barn', file);
  };
  /** What stands on a day. */
  const on = (day: CivilDate): string => khal('list', '--format', '{title}', '--day-format', '', day, '1d').trim();
  return { take, on };
};

describe.skipIf(!found)('a calendar client', { timeout: 60_000 }, () => {
  it('shows each event on its own day, whatever its zone, and a moved one on its new day only', () => {
    const { take, on } = client();
    take('2027-04-01', 0);
    expect(on('2027-04-01')).toBe('Merle Tourer: Brake fluid, “rear”; Öl is due');
    expect(on('2028-02-29')).toBe('Merle Tourer: it is past');
    for (const beside of ['2027-03-31', '2027-04-02', '2028-02-28', '2028-03-01'] as const)
      expect(on(beside)).not.toContain('Merle');
    take('2027-05-10', 1);
    expect(on('2027-05-10')).toBe('Merle Tourer: Brake fluid, “rear”; Öl is due');
    expect(on('2027-04-01')).not.toContain('Merle');
  });
});
