import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import { wake } from '../jobs/schedule.ts';
import { openHouse } from '../src/house.ts';
import { createLog } from '../src/log.ts';
import { allCollections, changeCollection } from '../src/store/people.ts';
import { carIn, claim, date, openBarn } from './support/cars.ts';
import { filledDataDir, fromTheFuture, query } from './support/data-dir.ts';
import { newFolder } from './support/folder.ts';
import { openPostOffice } from './support/post-office.ts';
import { type Ended, run } from './support/run.ts';

const ON = ['--on', '2026-11-25'];
const sweep = (DATA_DIR: string, options: string[] = ON, more = {}): Promise<Ended> =>
  run('jobs/sweep.ts', options, { DATA_DIR, ...more });
const deliver = (DATA_DIR: string, options: string[] = [], more = {}): Promise<Ended> =>
  run('jobs/deliver.ts', options, { DATA_DIR, ...more });

/** The one line a job prints, as the document it is. */
const said = ({ code, out, err }: Ended): Record<string, unknown> => {
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(out).toMatch(/^[^\n]+\n$/);
  return JSON.parse(out) as Record<string, unknown>;
};

const LETTER = { to: 'ada@example.org', subject: '1 past: Merle Tourer', lines: 1 };

describe('the sweep job', { timeout: 60_000 }, () => {
  it('as on a day writes that day’s letters and says so in one line; run again it writes nothing', async () => {
    const dataDir = filledDataDir();
    const below = { BASE_URL: 'https://barn.example.org/cars-here' };
    expect(said(await sweep(dataDir, ON, below))).toEqual({
      job: 'sweep',
      dryRun: false,
      collections: [{ collection: 'The barn', letters: [LETTER], withoutAddress: [], refused: [], troubles: [] }],
    });
    const written = () => query(dataDir, 'select * from letters') as Record<string, string>[];
    expect(written()).toMatchObject([{ day: '2026-11-25', recipient: 'ada@example.org', state: 'waiting' }]);
    expect(written()[0]?.['text']).toContain('https://barn.example.org/cars-here/parts/');
    expect(written()[0]?.['message_id']).toMatch(/@barn\.example\.org>$/);
    expect(said(await sweep(dataDir, ['--on', '2026-11-26']))).toMatchObject({ collections: [{ letters: [] }] });
    expect(written()).toHaveLength(1);
  });

  it('with --dry-run says the same and writes nothing', async () => {
    const dataDir = filledDataDir();
    expect(said(await sweep(dataDir, [...ON, '--dry-run']))).toEqual({
      job: 'sweep',
      dryRun: true,
      collections: [{ collection: 'The barn', letters: [LETTER], withoutAddress: [], refused: [], troubles: [] }],
    });
    for (const table of ['letters', 'said', 'mornings'])
      expect(query(dataDir, `select * from ${table}`), table).toEqual([]);
  });

  it('run twice at the same moment writes one letter', async () => {
    const dataDir = filledDataDir();
    const both = await Promise.all([sweep(dataDir), sweep(dataDir)]);
    expect(both.map(({ code, err }) => [code, err])).toEqual([
      [0, ''],
      [0, ''],
    ]);
    expect(query(dataDir, 'select id from letters')).toHaveLength(1);
    expect(query(dataDir, 'select stage from said')).toEqual([{ stage: 'past' }]);
  });
});

describe('the delivery job', { timeout: 60_000 }, () => {
  it('without a mail server writes the letter into the data folder, once', async () => {
    const dataDir = filledDataDir({ letter: true });
    expect(said(await deliver(dataDir, ['--dry-run']))).toEqual({ job: 'deliver', dryRun: true, wouldTry: 1 });
    expect(existsSync(join(dataDir, 'mail'))).toBe(false);
    expect(said(await deliver(dataDir))).toEqual({
      job: 'deliver',
      dryRun: false,
      sent: 1,
      waiting: 0,
      failed: 0,
      calledOff: 0,
    });
    expect(said(await deliver(dataDir))).toMatchObject({ sent: 0 });
    const files = readdirSync(join(dataDir, 'mail'));
    expect(files).toEqual([expect.stringMatching(/^\d{4}-\d\d-\d\d-a\.eml$/)]);
    expect((await simpleParser(readFileSync(join(dataDir, 'mail', files[0] ?? '')))).subject).toBe(LETTER.subject);
  });

  it('with a mail server hands the letter over to it, and as on a later day tries again what was refused', async () => {
    const office = await openPostOffice();
    office.refuseWith = 451;
    const dataDir = filledDataDir({ letter: true });
    const mail = { SMTP_URL: office.url, MAIL_FROM: 'The barn <barn@example.org>' };
    const refused = await deliver(dataDir, [], mail);
    expect(refused.code).toBe(0);
    expect(JSON.parse(refused.out.trim().split('\n').at(-1) ?? '')).toMatchObject({ sent: 0, waiting: 1 });
    office.refuseWith = null;
    expect(said(await deliver(dataDir, ['--on', '2999-01-01'], mail))).toMatchObject({ sent: 1 });
    await office.close();
    expect(office.mails).toMatchObject([
      { subject: LETTER.subject, from: { text: '"The barn" <barn@example.org>' }, to: { text: 'ada@example.org' } },
    ]);
    expect(query(dataDir, 'select state, tries from letters')).toEqual([{ state: 'sent', tries: 2 }]);
  });
});

describe('a job that cannot start', { timeout: 60_000 }, () => {
  it.each([
    ['sweep', ['--on', 'tomorrow'], '--on takes a day such as 2027-04-01'],
    ['deliver', ['--on', '2026-02-30'], '--on takes a day such as 2027-04-01'],
    ['sweep', ['--dry'], 'Options: --on YYYY-MM-DD, --dry-run.'],
    ['deliver', ['now'], 'Options: --on YYYY-MM-DD, --dry-run.'],
  ])('ends with 1 and one clear line, and touches nothing: %s %j', async (job, options, line) => {
    const DATA_DIR = join(newFolder(), 'none');
    const { code, out, err } = await run(`jobs/${job}.ts`, options, { DATA_DIR });
    expect([code, out]).toEqual([1, '']);
    expect(err.trim()).toContain(line);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(existsSync(DATA_DIR)).toBe(false);
  });

  it('for its environment ends with 1 and lists every fault', async () => {
    const { code, out, err } = await sweep(newFolder(), ON, { SMTP_URL: 'mail', LETTER_HOUR: '25' });
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/^The environment has 2 faults:\n {2}SMTP_URL .*\n {2}LETTER_HOUR .*\n$/);
  });

  it('for a database of a later version ends with 1 and one clear line', async () => {
    const dataDir = filledDataDir();
    fromTheFuture(dataDir);
    const { code, out, err } = await deliver(dataDir);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/^The database holds 1 change\(s\) this version does not know.*\n$/);
  });
});

describe('the schedule', () => {
  /** A house that wakes at the instants a test names. */
  const open = () => {
    const lines: string[] = [];
    const environment = { DATA_DIR: newFolder(), LETTER_HOUR: '7', LOG_LEVEL: 'error' };
    const house = openHouse(environment, { empty: false });
    const barn = openBarn(house.store);
    date(barn, carIn(barn), 'brake-fluid-glycol', claim('filled', '1 June 2020'));
    const log = createLog('debug', (line) => lines.push(line));
    const wakeAt = (instant: string): Promise<void> =>
      wake(Object.assign(house, { log, now: () => new Date(instant) }));
    const letters = () => house.store.$client.prepare('select day from letters order by id').pluck().all();
    const events = () => lines.map((line) => (JSON.parse(line) as { event: string }).event);
    return { house, barn, wakeAt, letters, events };
  };

  it('writes and sends the day’s letter from its hour on, by the collection’s own clock, once', async () => {
    const { house, wakeAt, letters, events } = open();
    // In Lisbon 05:59 UTC in June is 06:59.
    await wakeAt('2024-06-10T05:59:00Z');
    expect(letters()).toEqual([]);
    await wakeAt('2024-06-10T06:00:00Z');
    await wakeAt('2024-06-10T06:05:00Z');
    expect(letters()).toEqual(['2024-06-10']);
    expect(readdirSync(join(house.config.dataDir, 'mail'))).toHaveLength(1);
    expect(events().filter((event) => event === 'swept')).toHaveLength(1);
    house.close();
  });

  it('makes up for an hour it slept through, and for days', async () => {
    const { house, wakeAt, letters } = open();
    await wakeAt('2024-06-10T22:30:00Z');
    expect(letters()).toEqual(['2024-06-10']);
    await wakeAt('2024-06-14T06:30:00Z');
    expect(house.store.$client.prepare('select day from mornings order by day').pluck().all()).toEqual([
      '2024-06-10',
      '2024-06-14',
    ]);
    house.close();
  });

  it('goes by each collection’s own zone', async () => {
    const { house, barn, wakeAt } = open();
    openBarn(house.store, 'The shed');
    const shed = allCollections(house.store).find(({ name }) => name === 'The shed');
    changeCollection(house.store, shed?.id ?? '', { timeZone: 'Asia/Tokyo' });
    const swept = () => house.store.$client.prepare('select collection_id from mornings').pluck().all();
    // 01:00 in Lisbon, 09:00 in Tokyo.
    await wakeAt('2024-06-10T00:00:00Z');
    expect(swept()).toEqual([shed?.id]);
    await wakeAt('2024-06-10T06:00:00Z');
    expect(swept()).toContain(barn.acting.collectionId);
    house.close();
  });

  it('logs a failure and never throws', async () => {
    const { house, wakeAt, events } = open();
    house.store.$client.exec('drop table mornings');
    await wakeAt('2024-06-10T06:00:00Z');
    expect(events().filter((event) => event.startsWith('sweep'))).toEqual(['sweep failed']);
    house.close();
  });
});
