/** Going back to a copy, by the real command. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { nightlyBackup } from '../../src/store/backup.ts';
import { filledDataDir, fromTheFuture, query } from '../support/data-dir.ts';
import { newFolder } from '../support/folder.ts';
import { run } from '../support/run.ts';

const restore = (dataDir: string, ...files: string[]) => run('jobs/restore.ts', files, { DATA_DIR: dataDir });

/** A copy of a database with one car, and the database as it went on: the car has another name. */
const withCopy = async () => {
  const dataDir = filledDataDir();
  const { file } = await nightlyBackup(dataDir, '2026-11-25');
  query(dataDir, "update cars set name = 'Alder Coupe' returning id");
  return { dataDir, file };
};

const nameIn = (dataDir: string): unknown => query(dataDir, 'select name from cars')[0];

describe('going back to a copy', { timeout: 60_000 }, () => {
  it('brings what it holds, and keeps the database that was there', async () => {
    const { dataDir, file } = await withCopy();
    const { code, out, err } = await restore(dataDir, file);
    expect([code, err]).toEqual([0, '']);
    const said = JSON.parse(out) as { replaced: string; collections: number };
    expect(said).toMatchObject({ job: 'restore', restored: file, collections: 1 });
    expect(nameIn(dataDir)).toEqual({ name: 'Merle Tourer' });
    const old = new Database(said.replaced, { readonly: true });
    expect(old.prepare('select name from cars').pluck().get()).toBe('Alder Coupe');
    old.close();
    expect(readdirSync(dataDir).filter((name) => name.includes('restoring'))).toEqual([]);
    // The program goes on from there.
    expect((await run('jobs/sweep.ts', [], { DATA_DIR: dataDir })).code).toBe(0);
  });

  it('works on a new machine, where there is no database yet', async () => {
    const { file } = await withCopy();
    const dataDir = newFolder();
    expect((await restore(dataDir, file)).code).toBe(0);
    expect(nameIn(dataDir)).toEqual({ name: 'Merle Tourer' });
  });

  it('works where the database is damaged', async () => {
    const { dataDir, file } = await withCopy();
    writeFileSync(join(dataDir, 'standstill.db'), 'not a database any more');
    expect((await restore(dataDir, file)).code).toBe(0);
    expect(nameIn(dataDir)).toEqual({ name: 'Merle Tourer' });
  });
});

describe('is refused, and nothing is changed,', { timeout: 60_000 }, () => {
  const refused = async (dataDir: string, files: string[], words: RegExp): Promise<void> => {
    const before = readFileSync(join(dataDir, 'standstill.db'));
    const { code, out, err } = await restore(dataDir, ...files);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(words);
    expect(readFileSync(join(dataDir, 'standstill.db')).equals(before)).toBe(true);
    expect(readdirSync(dataDir).filter((name) => /restoring|replaced/.test(name))).toEqual([]);
  };

  it('while somebody has the database open', async () => {
    const { dataDir, file } = await withCopy();
    const open = new Database(join(dataDir, 'standstill.db'));
    open.prepare('select count(*) from cars').get();
    await refused(dataDir, [file], /in use. Stop the server/);
    open.close();
    expect(nameIn(dataDir)).toEqual({ name: 'Alder Coupe' });
  });

  it('of a damaged copy', async () => {
    const { dataDir, file } = await withCopy();
    const bytes = readFileSync(file);
    bytes.fill(0xa5, bytes.length / 2, bytes.length / 2 + 8192);
    const damaged = join(newFolder(), 'damaged.db');
    writeFileSync(damaged, bytes);
    await refused(dataDir, [damaged], /is damaged/);
  });

  it('of what is no database, none of ours, or not there', async () => {
    const { dataDir } = await withCopy();
    const folder = newFolder();
    writeFileSync(join(folder, 'letter.txt'), 'Dear Ada,'.repeat(1000));
    await refused(dataDir, [join(folder, 'letter.txt')], /is no database/);
    const other = new Database(join(folder, 'other.db'));
    other.exec('create table songs (title text)');
    other.close();
    await refused(dataDir, [join(folder, 'other.db')], /none of Standstill’s/);
    await refused(dataDir, [join(folder, 'nothing.db')], /There is no file/);
  });

  it('of a copy that a later version wrote', async () => {
    const { dataDir } = await withCopy();
    const later = filledDataDir();
    fromTheFuture(later);
    const { file } = await nightlyBackup(later, '2026-11-25');
    await refused(dataDir, [file], /newer Standstill/);
  });

  it('without a name, with the copies there are', async () => {
    const { dataDir, file } = await withCopy();
    await refused(dataDir, [], new RegExp(`Name one file[\\s\\S]*${file}`));
    expect(existsSync(file)).toBe(true);
  });
});
