import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import { keptDays, nightlyBackup, nightlyBackups, pruneBackups } from '../../src/store/backup.ts';
import { filledDataDir } from '../support/data-dir.ts';
import { newFolder } from '../support/folder.ts';

const DAY: CivilDate = '2026-11-25';
afterEach(() => vi.restoreAllMocks());

describe('a copy', () => {
  it('holds one moment, though others write all the while, and stands alone', async () => {
    const dataDir = filledDataDir();
    const writer = new Database(join(dataDir, 'standstill.db'));
    const rename = writer.prepare("update cars set name = 'Renamed ' || ?, note = 'Renamed ' || ?");
    let n = 0;
    const busy = setInterval(() => rename.run(++n, n), 0);
    const { file, rows } = await nightlyBackup(dataDir, DAY);
    clearInterval(busy);
    writer.close();
    expect(rows).toBeGreaterThan(50);
    expect(readdirSync(join(dataDir, 'backups', 'nightly'))).toEqual([`${DAY}.db`]);
    const copy = new Database(file, { readonly: true });
    const car = copy.prepare('select name, note from cars').get() as { name: string; note: string };
    expect(car.name === 'Merle Tourer' || car.name === car.note).toBe(true);
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(copy.pragma('journal_mode', { simple: true })).toBe('delete');
    copy.close();
  });

  it('that lacks a row is not kept, and the one before stays', async () => {
    const dataDir = filledDataDir();
    const { file } = await nightlyBackup(dataDir, DAY);
    const { backup } = Database.prototype;
    vi.spyOn(Database.prototype, 'backup').mockImplementation(async function (this: Database.Database, draft: string) {
      const done = await backup.call(this, draft);
      const sqlite = new Database(draft);
      sqlite.exec('delete from claims');
      sqlite.close();
      return done;
    });
    await expect(nightlyBackup(dataDir, DAY)).rejects.toThrow(/rows of claims/);
    expect(readdirSync(join(dataDir, 'backups', 'nightly'))).toEqual([`${DAY}.db`]);
    const kept = new Database(file, { readonly: true });
    expect(kept.prepare('select count(*) from claims').pluck().get()).toBe(1);
    kept.close();
  });
});

describe('the copies kept', () => {
  const first: CivilDate = '2026-01-01';

  it('after any walk over the days are eleven at most, the newest seven among them', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 80 }), (gaps) => {
        let kept: CivilDate[] = [];
        const all: CivilDate[] = [];
        let day = first;
        for (const gap of gaps) {
          day = addDays(day, gap);
          all.push(day);
          const keep = keptDays([...kept, day]);
          kept = [...kept, day].filter((one) => keep.has(one));
          expect(kept.length).toBeLessThanOrEqual(11);
          expect(kept).toEqual(expect.arrayContaining(all.slice(-7)));
        }
      }),
    );
  });

  it('made daily for five weeks, go back three weeks and more', () => {
    let kept: CivilDate[] = [];
    for (let n = 0; n < 35; n++) {
      const keep = keptDays([...kept, addDays(first, n)]);
      kept = [...kept, addDays(first, n)].filter((one) => keep.has(one));
    }
    expect(daysBetween(kept[0] ?? first, addDays(first, 34))).toBeGreaterThanOrEqual(21);
  });

  it('are the only files that are ever removed', () => {
    const dataDir = newFolder();
    const folder = join(dataDir, 'backups', 'nightly');
    mkdirSync(folder, { recursive: true });
    for (let n = 0; n < 60; n++) writeFileSync(join(folder, `${addDays(first, n)}.db`), '');
    const others = ['notes.txt', 'mine.db', '2026-01-02.db.bak'];
    for (const name of others) writeFileSync(join(folder, name), '');
    pruneBackups(dataDir);
    expect(nightlyBackups(dataDir).length).toBeLessThanOrEqual(11);
    for (const name of others) expect(existsSync(join(folder, name))).toBe(true);
  });
});
