import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, it } from 'vitest';
import { nightlyBackup } from '../../src/store/backup.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import { type Restored, RestoreError, restoreBackup } from '../../src/store/restore.ts';
import { filledDataDir, fromTheFuture, query } from '../support/data-dir.ts';
import { newFolder } from '../support/folder.ts';
import { type Ended, run } from '../support/run.ts';
import { type RunningServer, startServer } from '../support/server.ts';

const NOW = new Date('2026-11-26T08:30:00.000Z');
const REPLACED = 'standstill-replaced-2026-11-26T083000.000Z.db';

const opened: Store[] = [];
const running: RunningServer[] = [];
const open = (dataDir: string): Store => {
  const store = openStore(dataDir);
  opened.push(store);
  return store;
};
afterEach(() => {
  for (const store of opened.splice(0)) store.$client.close();
  for (const { process: child } of running.splice(0)) child.kill('SIGKILL');
});

const databaseIn = (dataDir: string): string => join(dataDir, 'standstill.db');

const rename = (dataDir: string, name: string): void => {
  const sqlite = new Database(databaseIn(dataDir));
  sqlite.prepare('update cars set name = ?').run(name);
  sqlite.close();
};

/** A data folder whose car was renamed after its copy was made. */
const withCopy = async (): Promise<{ dataDir: string; copy: string }> => {
  const dataDir = filledDataDir();
  const { file } = await nightlyBackup(dataDir, '2026-11-25');
  rename(dataDir, 'Renamed since');
  return { dataDir, copy: file };
};

const namesIn = (file: string): unknown[] => {
  const sqlite = new Database(file, { readonly: true });
  const names = sqlite.prepare('select name from cars').pluck().all();
  sqlite.close();
  return names;
};

/** Every file of a data folder by what it holds; the index of a log of changes is made anew at will. */
const bytesIn = (dataDir: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(dataDir, { recursive: true, encoding: 'utf8' })
      .filter((name) => statSync(join(dataDir, name)).isFile() && !name.endsWith('-shm'))
      .map((name) => [
        name,
        createHash('sha256')
          .update(readFileSync(join(dataDir, name)))
          .digest('hex'),
      ]),
  );

/** Turns a stretch of a file over. */
const damage = (file: string, from: number, length: number): void => {
  const bytes = readFileSync(file);
  for (let at = from; at < from + length; at++) bytes[at] = 255 - (bytes[at] ?? 0);
  writeFileSync(file, bytes);
};
const middleOf = (file: string): number => Math.floor(statSync(file).size / 8192) * 4096;

const refusal = (restore: () => Restored): string => {
  try {
    restore();
  } catch (error) {
    expect(error).toBeInstanceOf(RestoreError);
    return (error as Error).message;
  }
  throw new Error('It was restored');
};

describe('restoring a copy', () => {
  it('puts it in place, keeps what was there, and leaves nothing else behind', async () => {
    const { dataDir, copy } = await withCopy();
    const before = readFileSync(copy);
    expect(restoreBackup(dataDir, copy, NOW)).toEqual({
      restored: copy,
      replaced: join(dataDir, REPLACED),
      collections: 1,
    });
    expect(readdirSync(dataDir).toSorted()).toEqual(['backups', REPLACED, 'standstill.db']);
    expect(namesIn(join(dataDir, REPLACED))).toEqual(['Renamed since']);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Merle Tourer']);
    expect(readFileSync(copy).equals(before)).toBe(true);
    const store = open(dataDir);
    expect(store.$client.pragma('journal_mode', { simple: true })).toBe('wal');
    store.$client.exec("update cars set name = 'Written after'");
    expect(namesIn(join(dataDir, REPLACED))).toEqual(['Renamed since']);
  });

  it('can be taken back by restoring what was replaced', async () => {
    const { dataDir, copy } = await withCopy();
    const { replaced } = restoreBackup(dataDir, copy, NOW);
    restoreBackup(dataDir, replaced ?? '', new Date(NOW.getTime() + 1000));
    expect(namesIn(databaseIn(dataDir))).toEqual(['Renamed since']);
  });

  it('keeps of the replaced one also what a process that was killed had not folded in', async () => {
    const { dataDir, copy } = await withCopy();
    // Side files as a killed process leaves them: copied while it had the database open.
    const elsewhere = newFolder();
    open(dataDir).$client.exec("update cars set name = 'Before the kill'");
    for (const end of ['', '-wal']) copyFileSync(`${databaseIn(dataDir)}${end}`, `${databaseIn(elsewhere)}${end}`);
    expect(statSync(`${databaseIn(elsewhere)}-wal`).size).toBeGreaterThan(0);
    restoreBackup(elsewhere, copy, NOW);
    expect(readdirSync(elsewhere).toSorted()).toEqual([REPLACED, 'standstill.db']);
    expect(namesIn(join(elsewhere, REPLACED))).toEqual(['Before the kill']);
    expect(namesIn(databaseIn(elsewhere))).toEqual(['Merle Tourer']);
  });

  it('takes along what a copy’s own log of changes holds', async () => {
    const { dataDir } = await withCopy();
    const elsewhere = newFolder();
    open(dataDir).$client.exec("update cars set name = 'In the log'");
    for (const end of ['', '-wal']) copyFileSync(`${databaseIn(dataDir)}${end}`, join(elsewhere, `copied.db${end}`));
    const target = filledDataDir();
    restoreBackup(target, join(elsewhere, 'copied.db'), NOW);
    expect(namesIn(databaseIn(target))).toEqual(['In the log']);
    expect(readdirSync(elsewhere).toSorted()).toEqual(['copied.db', 'copied.db-wal']);
  });

  it('on a new machine makes the folder and puts it in place', async () => {
    const { copy } = await withCopy();
    const dataDir = join(newFolder(), 'not', 'there', 'yet');
    expect(restoreBackup(dataDir, copy, NOW)).toEqual({ restored: copy, replaced: null, collections: 1 });
    expect(readdirSync(dataDir)).toEqual(['standstill.db']);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Merle Tourer']);
  });

  it('keeps the log of a database that was removed away from it', async () => {
    const { dataDir, copy } = await withCopy();
    open(dataDir).$client.exec("update cars set name = 'Stray'");
    const elsewhere = newFolder();
    copyFileSync(`${databaseIn(dataDir)}-wal`, `${databaseIn(elsewhere)}-wal`);
    restoreBackup(elsewhere, copy, NOW);
    expect(readdirSync(elsewhere).toSorted()).toEqual([`${REPLACED}-wal`, 'standstill.db']);
    expect(namesIn(databaseIn(elsewhere))).toEqual(['Merle Tourer']);
  });

  it.each([
    ['in the middle', (file: string) => damage(file, middleOf(file), 8192)],
    ['from its first byte', (file: string) => damage(file, 0, 4096)],
  ])('replaces a database that is damaged %s', async (_, how) => {
    const { dataDir, copy } = await withCopy();
    how(databaseIn(dataDir));
    const damaged = readFileSync(databaseIn(dataDir));
    const { replaced } = restoreBackup(dataDir, copy, NOW);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Merle Tourer']);
    expect(
      readFileSync(replaced ?? '')
        .subarray(4096)
        .equals(damaged.subarray(4096)),
    ).toBe(true);
  });

  it('makes a copy from a read-only place writable, for its owner alone', async () => {
    const { dataDir, copy } = await withCopy();
    chmodSync(copy, 0o444);
    restoreBackup(dataDir, copy, NOW);
    expect(statSync(databaseIn(dataDir)).mode & 0o777).toBe(0o600);
  });

  it('begins anew after a try that was killed', async () => {
    const { dataDir, copy } = await withCopy();
    for (const end of ['', '-wal', '-journal']) writeFileSync(`${databaseIn(dataDir)}.restoring${end}`, 'half of it');
    restoreBackup(dataDir, copy, NOW);
    expect(readdirSync(dataDir).toSorted()).toEqual(['backups', REPLACED, 'standstill.db']);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Merle Tourer']);
  });
});

describe('a restore that is refused', () => {
  const CASES: [string, (copy: string) => void, RegExp][] = [
    ['damaged in the middle', (copy) => damage(copy, middleOf(copy), 8192), / is damaged: .+ Take another copy\.$/],
    ['damaged in its list of tables', (copy) => damage(copy, 100, 3996), / is damaged: .+ Take another copy\.$/],
    ['cut short', (copy) => writeFileSync(copy, readFileSync(copy).subarray(0, middleOf(copy))), / is damaged: .+/],
    [
      'no database',
      (copy) => writeFileSync(copy, 'Dear diary, '.repeat(500)),
      / is no database\. Take another copy\.$/,
    ],
    ['empty', (copy) => writeFileSync(copy, ''), / is a database, but none of Standstill’s\.$/],
    [
      'of another program',
      (copy) => {
        writeFileSync(copy, '');
        const sqlite = new Database(copy);
        sqlite.exec('create table collections (id text)');
        sqlite.close();
      },
      / is a database, but none of Standstill’s\.$/,
    ],
    [
      'with broken references',
      (copy) => {
        const sqlite = new Database(copy);
        sqlite.pragma('foreign_keys = OFF');
        sqlite.exec('delete from cars');
        sqlite.close();
      },
      / is damaged: \d+ broken reference\(s\)\. Take another copy\.$/,
    ],
  ];

  it.each(CASES)('because the copy is %s leaves every byte as it was', async (_, how, line) => {
    const { dataDir, copy } = await withCopy();
    how(copy);
    const before = bytesIn(dataDir);
    expect(refusal(() => restoreBackup(dataDir, copy, NOW))).toMatch(line);
    expect(bytesIn(dataDir)).toEqual(before);
    expect(open(dataDir).$client.prepare('select name from cars').pluck().all()).toEqual(['Renamed since']);
  });

  it('because a newer program wrote the copy leaves every byte as it was', async () => {
    const { dataDir } = await withCopy();
    const future = filledDataDir();
    fromTheFuture(future);
    const { file } = await nightlyBackup(future, '2026-11-25');
    const before = bytesIn(dataDir);
    expect(refusal(() => restoreBackup(dataDir, file, NOW))).toBe(
      `${file} was written by a newer Standstill (1 unknown change(s)). Restore it with that version.`,
    );
    expect(bytesIn(dataDir)).toEqual(before);
  });

  it('because there is no such file, it is a folder, or it is the database itself leaves every byte as it was', async () => {
    const { dataDir } = await withCopy();
    const before = bytesIn(dataDir);
    const refused = (file: string): string => refusal(() => restoreBackup(dataDir, file, NOW));
    expect(refused(join(dataDir, 'none.db'))).toMatch(/^There is no file .+none\.db\.$/);
    expect(refused(join(dataDir, 'backups'))).toMatch(/backups could not be restored: /);
    expect(refused(join(dataDir, 'backups', '..', 'standstill.db'))).toMatch(/is the database itself\. Name a copy/);
    expect(bytesIn(dataDir)).toEqual(before);
  });

  it('because a connection is open leaves every byte, and that connection, as it was', async () => {
    const { dataDir, copy } = await withCopy();
    const { $client: sqlite } = open(dataDir);
    sqlite.exec("update cars set name = 'Still open'");
    const before = bytesIn(dataDir);
    expect(before).toHaveProperty(['standstill.db-wal']);
    expect(refusal(() => restoreBackup(dataDir, copy, NOW))).toBe(
      'The database is in use. Stop the server and any job first; nothing was changed.',
    );
    expect(bytesIn(dataDir)).toEqual(before);
    expect(sqlite.pragma('journal_mode', { simple: true })).toBe('wal');
    sqlite.exec("update cars set name = 'Written on'");
    sqlite.close();
    opened.pop();
    expect(namesIn(databaseIn(dataDir))).toEqual(['Written on']);
    restoreBackup(dataDir, copy, NOW);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Merle Tourer']);
  });

  it('because it can’t be swapped in leaves the database usable, and nothing half done', async () => {
    const { dataDir, copy } = await withCopy();
    writeFileSync(join(dataDir, REPLACED), 'from an earlier restore');
    expect(refusal(() => restoreBackup(dataDir, copy, NOW))).toMatch(/exists already\. Try again\.$/);
    expect(readFileSync(join(dataDir, REPLACED), 'utf8')).toBe('from an earlier restore');
    expect(readdirSync(dataDir).toSorted()).toEqual(['backups', REPLACED, 'standstill.db']);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Renamed since']);
  });
});

describe('npm run restore', { timeout: 60_000 }, () => {
  const restore = (dataDir: string, ...options: string[]): Promise<Ended> =>
    run('jobs/restore.ts', options, { DATA_DIR: dataDir });

  it('restores and says so in one line', async () => {
    const { dataDir, copy } = await withCopy();
    const { code, out, err } = await restore(dataDir, copy);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^[^\n]+\n$/);
    const said = JSON.parse(out) as Restored;
    expect(said).toEqual({
      job: 'restore',
      restored: copy,
      replaced: expect.stringMatching(/\/standstill-replaced-\d{4}-\d\d-\d\dT\d{6}\.\d{3}Z\.db$/),
      collections: 1,
    });
    expect(namesIn(said.replaced ?? '')).toEqual(['Renamed since']);
    expect(query(dataDir, 'select name from cars')).toEqual([{ name: 'Merle Tourer' }]);
  });

  it('is refused while a server runs, which goes on as if nothing had been, and works once it is stopped', async () => {
    const { dataDir, copy } = await withCopy();
    const server = await startServer([], { DATA_DIR: dataDir });
    running.push(server);
    expect(await restore(dataDir, copy)).toEqual({
      code: 1,
      out: '',
      err: 'The database is in use. Stop the server and any job first; nothing was changed.\n',
    });
    expect(readdirSync(dataDir).filter((name) => /restoring|replaced/.test(name))).toEqual([]);
    expect((await fetch(`${server.url}/readyz`)).status).toBe(200);
    expect(await (await fetch(`${server.url}/`)).text()).toContain('Renamed since');
    expect(await server.stop()).toBe(0);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Renamed since']);
    expect((await restore(dataDir, copy)).code).toBe(0);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Merle Tourer']);
  });

  it('for a copy that won’t do ends with 1 and one clear line', async () => {
    const { dataDir, copy } = await withCopy();
    damage(copy, middleOf(copy), 8192);
    const { code, out, err } = await restore(dataDir, copy);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/^.+2026-11-25\.db is damaged: .+ Take another copy\.\n$/);
    expect(namesIn(databaseIn(dataDir))).toEqual(['Renamed since']);
  });

  it('without a file says how it is called and which copies there are, and touches nothing', async () => {
    const { dataDir, copy } = await withCopy();
    const others = [join(dataDir, 'backups', '2026-01-01T000000.000Z-before-0099.db'), join(dataDir, REPLACED)];
    for (const file of others) copyFileSync(copy, file);
    const before = bytesIn(dataDir);
    const lines = [
      'Name one file: npm run restore -- <file>',
      'There are:',
      `  ${copy}`,
      ...others.map((file) => `  ${file}`),
    ];
    expect(await restore(dataDir)).toEqual({ code: 1, out: '', err: `${lines.join('\n')}\n` });
    expect((await restore(dataDir, copy, copy)).err).toBe(`${lines.join('\n')}\n`);
    expect(bytesIn(dataDir)).toEqual(before);
    const none = join(newFolder(), 'none');
    expect((await restore(none)).err).toBe('Name one file: npm run restore -- <file>\nThere is no copy yet.\n');
    expect(existsSync(none)).toBe(false);
  });

  it('keeps what it makes for its owner alone', async () => {
    const { copy } = await withCopy();
    const dataDir = join(newFolder(), 'new');
    mkdirSync(dataDir);
    chmodSync(copy, 0o644);
    expect((await restore(dataDir, copy)).code).toBe(0);
    expect(statSync(databaseIn(dataDir)).mode & 0o777).toBe(0o600);
  });
});
