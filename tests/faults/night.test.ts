/** What the server does by itself at night, and a watcher that hears of it, hangs or is not there. */
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, it } from 'vitest';
import { sweepCollection } from '../../src/acts/sweep.ts';
import { changeCollection, findCollection } from '../../src/store/people.ts';
import { isBad, runsOf } from '../../src/store/runs.ts';
import { openBadMailServer } from '../support/bad-mail-server.ts';
import { carIn, claim, date, openBarn } from '../support/cars.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';

const open: WakingHouse[] = [];
const closing: (() => void)[] = [];
afterEach(() => {
  for (const { house } of open.splice(0)) house.close();
  for (const close of closing.splice(0)) close();
});

const house = (more: Record<string, string> = {}) => {
  const here = openWakingHouse(null, more);
  open.push(here);
  date(here.barn, carIn(here.barn), 'brake-fluid-glycol', claim('filled', '1 June 2020'));
  const nightly = join(here.house.config.dataDir, 'backups', 'nightly');
  const copies = (): string[] => (existsSync(nightly) ? readdirSync(nightly) : []);
  return { ...here, nightly, copies, runs: () => runsOf(here.house.store) };
};

describe('the night’s copy', () => {
  it('is made once a night, from three o’clock by the server’s zone, and holds what there was', async () => {
    const { wakeAt, copies, nightly, runs } = house();
    await wakeAt('2026-06-10T01:55:00Z');
    expect(copies()).toEqual([]);
    // 03:00 in Lisbon in June.
    await wakeAt('2026-06-10T02:00:00Z');
    await wakeAt('2026-06-10T02:05:00Z');
    await wakeAt('2026-06-10T20:00:00Z');
    expect(copies()).toEqual(['2026-06-10.db']);
    expect(runs().backup).toMatchObject({ goodAt: '2026-06-10T02:00:00.000Z', badAt: null });
    const copy = new Database(join(nightly, '2026-06-10.db'), { readonly: true });
    expect(copy.prepare('select name from cars').pluck().all()).toEqual(['Merle Tourer']);
    copy.close();
    await wakeAt('2026-06-11T09:00:00Z');
    expect(copies()).toEqual(['2026-06-10.db', '2026-06-11.db']);
  });

  it('that can’t be made is said, rests for an hour, and keeps no letter from going', async () => {
    const { wakeAt, copies, nightly, runs, letters, house: opened } = house();
    writeFileSync(join(opened.config.dataDir, 'backups'), '');
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters().map(({ state }) => state)).toEqual(['sent']);
    expect(isBad(runs().backup)).toBe(true);
    const { badAt } = runs().backup;
    await wakeAt('2026-06-10T06:35:00Z');
    expect(runs().backup.badAt).toBe(badAt);
    await wakeAt('2026-06-10T07:40:00Z');
    expect(runs().backup.badAt).not.toBe(badAt);
    expect([copies(), existsSync(nightly)]).toEqual([[], false]);
  });

  it('of more than a month are seven days and four weeks', async () => {
    const { wakeAt, copies } = house();
    for (let day = 1; day <= 40; day++) await wakeAt(new Date(Date.UTC(2026, 5, day, 3)).toISOString());
    expect(copies()).toHaveLength(7 + 3);
    expect(copies().at(-1)).toBe('2026-07-10.db');
    expect(copies().slice(0, 3)).toEqual(['2026-06-15.db', '2026-06-22.db', '2026-06-29.db']);
  });
});

describe('the weekly check', () => {
  it('is made once a week', async () => {
    const { wakeAt, runs } = house();
    await wakeAt('2026-06-10T03:00:00Z');
    const { goodAt } = runs().integrity;
    expect(goodAt).toBe('2026-06-10T03:00:00.000Z');
    await wakeAt('2026-06-16T03:00:00Z');
    expect(runs().integrity.goodAt).toBe(goodAt);
    await wakeAt('2026-06-17T03:05:00Z');
    expect(runs().integrity.goodAt).toBe('2026-06-17T03:05:00.000Z');
  });

  it('says that a reference is broken', async () => {
    const { wakeAt, runs, house: opened } = house();
    opened.store.$client.pragma('foreign_keys = OFF');
    opened.store.$client.exec("update parts set car_id = 'nowhere' where kind = 'v-belt'");
    await wakeAt('2026-06-10T03:00:00Z');
    expect(runs().integrity.trouble).toMatch(/damaged: 1 broken reference/);
    // Nor is a copy kept that is as damaged.
    expect(isBad(runs().backup)).toBe(true);
  });
});

describe('a watcher', () => {
  const watcher = async (answer: 'beats' | 'hangs') => {
    let beats = 0;
    const server = createServer((_, response) => {
      beats++;
      if (answer === 'beats') response.end();
    });
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    closing.push(() => {
      server.closeAllConnections();
      server.close();
    });
    return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`, beats: () => beats };
  };

  it('hears of each good run, and of none in which something went wrong', async () => {
    const { url, beats } = await watcher('beats');
    const { wakeAt, house: opened } = house({ HEARTBEAT_URL: url });
    await wakeAt('2026-06-10T01:00:00Z');
    await wakeAt('2026-06-10T06:30:00Z');
    expect(beats()).toBe(2);
    opened.store.$client.exec("update parts set details = '{' where kind = 'v-belt'");
    await wakeAt('2026-06-11T06:30:00Z');
    expect(beats()).toBe(2);
    // Nothing is to be done, but what went wrong is not put right.
    await wakeAt('2026-06-11T06:35:00Z');
    expect(beats()).toBe(2);
    opened.store.$client.exec("update parts set details = '{}' where kind = 'v-belt'");
    await wakeAt('2026-06-12T06:30:00Z');
    await wakeAt('2026-06-12T06:35:00Z');
    expect(beats()).toBe(4);
  });

  it('hears nothing as long as a job is in trouble, though it rests', async () => {
    const { url, beats } = await watcher('beats');
    const { wakeAt, house: opened } = house({ HEARTBEAT_URL: url });
    writeFileSync(join(opened.config.dataDir, 'backups'), '');
    for (let minute = 0; minute < 120; minute += 5)
      await wakeAt(new Date(Date.parse('2026-06-10T06:30:00Z') + minute * 60_000).toISOString());
    expect(beats()).toBe(0);
  });

  it('that is not there stops nothing', async () => {
    const { url } = await watcher('beats');
    for (const close of closing.splice(0)) close();
    const { wakeAt, letters, logged } = house({ HEARTBEAT_URL: url });
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters().map(({ state }) => state)).toEqual(['sent']);
    expect(logged.join('')).toContain('heartbeat not heard');
  });
});

describe('trouble', () => {
  it('of one collection is not hidden by the good morning of another, and ends with its own', async () => {
    const { wakeAt, runs, house: opened, barn } = house();
    const { collectionId } = openBarn(opened.store, 'The shed').acting;
    changeCollection(opened.store, collectionId, { timeZone: 'America/Denver' });
    opened.store.$client.exec("update parts set details = '{' where kind = 'v-belt'");
    await wakeAt('2026-06-10T06:30:00Z');
    await wakeAt('2026-06-10T13:30:00Z');
    expect(runs().sweep).toMatchObject({
      badAt: '2026-06-10T06:30:00.000Z',
      trouble: expect.stringContaining('v-belt'),
    });
    opened.store.$client.exec("update parts set details = '{}' where kind = 'v-belt'");
    const collection = findCollection(opened.store, barn.acting.collectionId);
    const byHand = {
      today: '2026-06-10',
      now: '2026-06-10T15:00:00.000Z',
      href: opened.site.href,
      dryRun: false,
    } as const;
    if (collection) sweepCollection(opened.store, collection, byHand);
    expect(runs().sweep).toMatchObject({ goodAt: '2026-06-10T15:00:00.000Z', trouble: null });
  });

  it('with the mail server is said after a day, long before a letter is given up', async () => {
    const server = await openBadMailServer({ code: 451, at: 'mail' });
    const here = openWakingHouse(server);
    open.push(here);
    date(here.barn, carIn(here.barn), 'brake-fluid-glycol', claim('filled', '1 June 2020'));
    const bad = () => isBad(runsOf(here.house.store).deliver);
    await here.wakeAt('2026-06-10T06:30:00Z');
    await here.wakeAt('2026-06-10T20:30:00Z');
    expect(bad()).toBe(false);
    // Written anew with the next morning's news, it waits no less.
    await here.wakeAt('2026-06-11T06:35:00Z');
    await here.wakeAt('2026-06-11T07:00:00Z');
    expect([bad(), here.letters()[0]?.state]).toEqual([true, 'waiting']);
    server.behavior = 'take';
    await here.wakeAt('2026-06-12T07:00:00Z');
    expect([bad(), here.letters()[0]?.state]).toEqual([false, 'sent']);
    await server.close();
  });
});
