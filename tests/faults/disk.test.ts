/** The database locked, the disk full, the disk not to be written: loud, nothing half done, and the next run repairs. */
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { query } from '../support/data-dir.ts';
import { barnWithNews, bundle, copyOf, faulty } from '../support/faulty.ts';
import { newFolder } from '../support/folder.ts';

const BOTH = [{ recipient: 'ada@example.org' }, { recipient: 'bram@example.org' }];
const recipients = (dataDir: string): unknown[] => query(dataDir, 'select recipient from letters order by recipient');
const isSound = (dataDir: string): void =>
  expect(query(dataDir, 'pragma integrity_check')).toEqual([{ integrity_check: 'ok' }]);

const mounted: string[] = [];

/** A disk of its own, of so many KiB; null where this user may not mount one. */
const smallDisk = (kib: number): string | null => {
  const folder = newFolder();
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${kib}k`, 'tmpfs', folder], { stdio: 'ignore' });
  } catch {
    return null;
  }
  mounted.push(folder);
  return folder;
};

/** Fills a disk but for so many KiB. */
const fill = (folder: string, butFor: number): string => {
  const { bavail, bsize } = statfsSync(folder);
  const file = join(folder, 'ballast');
  writeFileSync(file, Buffer.alloc(Math.max(0, bavail * bsize - butFor * 1024)));
  return file;
};

describe('a database that can’t be written', { timeout: 60_000 }, () => {
  let fresh: string;
  beforeAll(async () => {
    await bundle('sweep', 'deliver');
    fresh = barnWithNews();
  });
  afterEach(() => {
    for (const folder of mounted.splice(0)) execFileSync('umount', ['-l', folder]);
  });

  it('because another process holds it: the job says so, and the next run does it all', async () => {
    const dataDir = copyOf(fresh);
    const holder = new Database(join(dataDir, 'standstill.db'));
    holder.exec('begin immediate');
    const failed = await faulty('sweep', dataDir, { busyTimeout: 200 });
    holder.exec('rollback');
    holder.close();
    expect([failed.code, failed.out]).toEqual([1, '']);
    expect(failed.err).toMatch(
      /^Another process held the database for too long\. Nothing was changed; run it again\.\n$/,
    );
    expect(recipients(dataDir)).toEqual([]);
    expect((await faulty('sweep', dataDir)).code).toBe(0);
    expect(recipients(dataDir)).toEqual(BOTH);
  });

  it('because the disk is full: nothing is half written, and once there is room it is done', async () => {
    const disk = smallDisk(8 * 1024);
    const dataDir = disk ? join(disk, 'data') : copyOf(fresh);
    if (disk) execFileSync('cp', ['-a', fresh, dataDir]);
    // Where no disk can be made small, the database itself is full at the size it has.
    const pages = (query(dataDir, 'pragma page_count') as { page_count: number }[])[0]?.page_count ?? 0;
    // Room enough to open it, and not for two letters.
    const ballast = disk ? fill(disk, 64) : null;
    const failed = await faulty('sweep', dataDir, disk ? {} : { maxPages: pages });
    expect([failed.code, failed.out]).toEqual([1, '']);
    expect(failed.err).toMatch(/^The disk is full.*\n$/);
    if (ballast) rmSync(ballast);
    isSound(dataDir);
    for (const table of ['letters', 'said', 'mornings'])
      expect(query(dataDir, `select * from ${table}`), table).toEqual([]);
    expect((await faulty('sweep', dataDir)).code).toBe(0);
    expect(recipients(dataDir)).toEqual(BOTH);
  });

  it('because the disk is mounted to be read only: the job says so, and afterwards goes on', async () => {
    const disk = smallDisk(8 * 1024);
    if (!disk) return console.warn('This user may not mount a disk: it is not tried read only.');
    const dataDir = join(disk, 'data');
    execFileSync('cp', ['-a', fresh, dataDir]);
    execFileSync('mount', ['-o', 'remount,ro', disk]);
    const failed = await faulty('sweep', dataDir);
    expect([failed.code, failed.out]).toEqual([1, '']);
    expect(failed.err).toMatch(/can’t be (written|opened)/);
    expect(failed.err.trim().split('\n')).toHaveLength(1);
    execFileSync('mount', ['-o', 'remount,rw', disk]);
    isSound(dataDir);
    expect((await faulty('sweep', dataDir)).code).toBe(0);
    expect(recipients(dataDir)).toEqual(BOTH);
  });

  it('and a mail folder that can’t: the letters wait with the answer, and are written once', async () => {
    const dataDir = copyOf(fresh);
    expect((await faulty('sweep', dataDir)).code).toBe(0);
    // A file where the folder should be stops root, too.
    writeFileSync(join(dataDir, 'mail'), '');
    const failed = await faulty('deliver', dataDir);
    expect(JSON.parse(failed.out.trim().split('\n').at(-1) ?? '')).toMatchObject({ sent: 0, waiting: 2 });
    expect(query(dataDir, 'select answer from attempts')).toEqual(
      Array(2).fill({ answer: expect.stringMatching(/EEXIST|ENOTDIR/) as string }),
    );
    rmSync(join(dataDir, 'mail'));
    mkdirSync(join(dataDir, 'mail'));
    chmodSync(join(dataDir, 'mail'), 0o700);
    expect((await faulty('deliver', dataDir, { ahead: 5 })).code).toBe(0);
    expect(readdirSync(join(dataDir, 'mail'))).toHaveLength(2);
    expect(query(dataDir, 'select distinct state from letters')).toEqual([{ state: 'sent' }]);
  });
});
