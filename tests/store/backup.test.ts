import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate as nextTurn } from 'node:timers/promises';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import {
  BackupError,
  checkDatabase,
  keptDays,
  nightlyBackup,
  nightlyBackups,
  pruneBackups,
} from '../../src/store/backup.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import { dayBetween } from '../support/arbitraries.ts';
import { filledDataDir, query } from '../support/data-dir.ts';
import { newFolder } from '../support/folder.ts';
import { run } from '../support/run.ts';

const DAY: CivilDate = '2026-11-26';

const opened: Store[] = [];
const open = (dataDir: string): Store => {
  const store = openStore(dataDir);
  opened.push(store);
  return store;
};
afterEach(() => {
  vi.restoreAllMocks();
  for (const store of opened.splice(0)) store.$client.close();
});

const nightly = (dataDir: string): string => join(dataDir, 'backups', 'nightly');
const filesIn = (dataDir: string): string[] => readdirSync(nightly(dataDir)).toSorted();

/** Turns two pages in the middle of a file over. */
const damage = (file: string): void => {
  const bytes = readFileSync(file);
  const middle = Math.floor(bytes.length / 8192) * 4096;
  for (let at = middle; at < middle + 8192; at++) bytes[at] = 255 - (bytes[at] ?? 0);
  writeFileSync(file, bytes);
};

/** Every row of every table, as text. */
const everything = (file: string): Record<string, string[]> => {
  const sqlite = new Database(file, { readonly: true });
  const tables = sqlite.prepare("select name from sqlite_master where type = 'table'").pluck().all() as string[];
  const rows = tables.map((table) => [
    table,
    sqlite
      .prepare(`select * from "${table}"`)
      .all()
      .map((row) => JSON.stringify(row)),
  ]);
  sqlite.close();
  return Object.fromEntries(rows) as Record<string, string[]>;
};

/** Lets SQLite make its copy, and then does something to it. */
const meddle = (how: (draft: string) => void): void => {
  const { backup } = Database.prototype;
  vi.spyOn(Database.prototype, 'backup').mockImplementation(async function (this: Database.Database, draft) {
    const progress = await backup.call(this, draft);
    how(draft);
    return progress;
  });
};

describe('the night’s copy', () => {
  it('holds every row, also those not folded in yet, and stands alone under its day', async () => {
    const dataDir = filledDataDir();
    const store = open(dataDir);
    store.$client.exec("update cars set note = 'Only in the log of changes'");
    expect(statSync(join(dataDir, 'standstill.db-wal')).size).toBeGreaterThan(0);
    const made = await nightlyBackup(dataDir, DAY);
    expect(filesIn(dataDir)).toEqual([`${DAY}.db`]);
    const rows = everything(made.file);
    expect(rows).toEqual(everything(join(dataDir, 'standstill.db')));
    expect(rows['cars']).toEqual([expect.stringContaining('Only in the log of changes')]);
    expect(made).toEqual({
      day: DAY,
      file: join(nightly(dataDir), `${DAY}.db`),
      bytes: statSync(made.file).size,
      rows: Object.entries(rows).reduce((sum, [table, all]) => sum + (table.startsWith('sqlite_') ? 0 : all.length), 0),
    });
    // Read, it still leaves nothing beside it.
    expect(filesIn(dataDir)).toEqual([`${DAY}.db`]);
  });

  it('made again on the same day takes the place of the first', async () => {
    const dataDir = filledDataDir();
    const { file } = await nightlyBackup(dataDir, DAY);
    open(dataDir).$client.exec("update cars set name = 'Renamed'");
    await nightlyBackup(dataDir, DAY);
    expect(filesIn(dataDir)).toEqual([`${DAY}.db`]);
    expect(everything(file)['cars']).toEqual([expect.stringContaining('Renamed')]);
  });

  it('made twice at once comes out whole both times', async () => {
    const dataDir = filledDataDir();
    const [one, other] = await Promise.all([nightlyBackup(dataDir, DAY), nightlyBackup(dataDir, DAY)]);
    expect(one).toEqual(other);
    expect(filesIn(dataDir)).toEqual([`${DAY}.db`]);
    expect(everything(one.file)).toEqual(everything(join(dataDir, 'standstill.db')));
  });

  it('is of the one moment it was begun, whatever is written before it is done', async () => {
    const dataDir = filledDataDir();
    const { $client: sqlite } = open(dataDir);
    sqlite.exec(`
      create table ballast (id integer primary key, n integer not null, weight text not null);
      create table writes (n integer not null);
      with recursive i(id) as (select 1 union all select id + 1 from i where id < 2000)
        insert into ballast select id, 0, hex(zeroblob(1800)) from i;
    `);
    let over = false;
    const copying = nightlyBackup(dataDir, DAY).finally(() => {
      over = true;
    });
    let writes = 0;
    while (!over) {
      // Rows all over the file, so that a copy of two moments would show.
      sqlite.transaction(() => {
        sqlite.prepare('update ballast set n = n + 1 where id % 50 = 0').run();
        sqlite.prepare('insert into writes values (?)').run(++writes);
      })();
      await nextTurn();
    }
    const { file } = await copying;
    expect(writes).toBeGreaterThan(5);
    expect(query(dataDir, 'select count(*) as n from writes')).toEqual([{ n: writes }]);
    const copy = new Database(file, { readonly: true });
    expect(copy.prepare('select distinct n from ballast').pluck().all()).toEqual([0]);
    expect(copy.prepare('select count(*) from writes').pluck().get()).toBe(0);
    copy.close();
  });

  it.each<[string, (draft: string) => void, RegExp]>([
    ['damaged', damage, /2026-11-26\.db was not kept, because it is damaged: .+ Check the disk/],
    [
      'without a row',
      (draft) => {
        const copy = new Database(draft);
        copy.exec('delete from claims');
        copy.close();
      },
      /2026-11-26\.db was not kept: it holds 0 rows of claims in place of 1\.$/,
    ],
    [
      'with a row that hangs on nothing',
      (draft) => {
        const copy = new Database(draft);
        copy.pragma('foreign_keys = OFF');
        copy.exec('delete from cars');
        copy.close();
      },
      /2026-11-26\.db was not kept, because it is damaged: \d+ broken reference/,
    ],
    ['empty', (draft) => writeFileSync(draft, ''), /2026-11-26\.db was not kept: it holds no rows of /],
  ])('that came out %s is not kept, and the one before it stays', async (_, how, line) => {
    const dataDir = filledDataDir();
    const { file } = await nightlyBackup(dataDir, DAY);
    const before = readFileSync(file);
    meddle(how);
    const failure = await nightlyBackup(dataDir, DAY).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(BackupError);
    expect((failure as Error).message).toMatch(line);
    expect(filesIn(dataDir)).toEqual([`${DAY}.db`]);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it('of a damaged database is refused', async () => {
    const dataDir = filledDataDir();
    damage(join(dataDir, 'standstill.db'));
    await expect(nightlyBackup(dataDir, DAY)).rejects.toThrow(BackupError);
    expect(filesIn(dataDir)).toEqual([]);
  });

  it('of no database is refused, and makes none', async () => {
    const dataDir = newFolder();
    await expect(nightlyBackup(dataDir, DAY)).rejects.toThrow(/^The copy .*2026-11-26\.db could not be made: /);
    expect(existsSync(join(dataDir, 'standstill.db'))).toBe(false);
    await expect(nightlyBackup(join(dataDir, 'none'), DAY)).rejects.toThrow(BackupError);
  });

  it('with no room for its folder is refused with a line for people', async () => {
    const dataDir = filledDataDir();
    writeFileSync(join(dataDir, 'backups'), 'in the way');
    await expect(nightlyBackup(dataDir, DAY)).rejects.toThrow(BackupError);
  });

  it('clears away what a killed run of another day left, and nothing else', async () => {
    const dataDir = filledDataDir();
    mkdirSync(nightly(dataDir), { recursive: true });
    const id = '019abcde-0000-7000-8000-0123456789ab';
    const [old, today] = [`2026-11-24.db.${id}.part`, `${DAY}.db.${id}.part`];
    for (const name of [old, `${old}-journal`, today, 'mine.part']) writeFileSync(join(nightly(dataDir), name), '');
    await nightlyBackup(dataDir, DAY);
    expect(filesIn(dataDir)).toEqual([`${DAY}.db`, today, 'mine.part'].toSorted());
  });
});

describe('the copies there are', () => {
  const withCopies = (names: readonly string[]): string => {
    const dataDir = newFolder();
    mkdirSync(nightly(dataDir), { recursive: true });
    for (const name of names) writeFileSync(join(nightly(dataDir), name), 'copy');
    return dataDir;
  };

  it('are listed newest first; what is named otherwise is none', () => {
    const dataDir = withCopies([
      '2026-11-24.db',
      '2026-11-25.db',
      '2026-02-30.db',
      '9999-99-99.db',
      '2026-11-26.db.part',
    ]);
    mkdirSync(join(nightly(dataDir), '2026-11-23.db'));
    expect(nightlyBackups(dataDir)).toEqual(
      ['2026-11-25', '2026-11-24'].map((day) => ({
        day,
        file: join(nightly(dataDir), `${day}.db`),
        bytes: 4,
        madeAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT.*Z$/),
      })),
    );
    expect(nightlyBackups(newFolder())).toEqual([]);
  });

  it('are pruned to seven days and four weeks; what is named otherwise stays', () => {
    const days = Array.from({ length: 60 }, (_, back) => addDays('2026-11-26', -back));
    const others = ['2020-01-01.db.part', '2020-02-30.db', 'before-2020-01-01.db', '2020-01-01.db.txt'];
    const dataDir = withCopies([...days.map((day) => `${day}.db`), ...others]);
    pruneBackups(dataDir);
    // 26 November 2026 is a Thursday; the Mondays before it begin their weeks.
    const kept = ['20', '21', '22', '23', '24', '25', '26', '16', '09', '02'].map((day) => `2026-11-${day}.db`);
    expect(filesIn(dataDir)).toEqual([...kept, ...others].toSorted());
    pruneBackups(dataDir);
    expect(filesIn(dataDir)).toHaveLength(kept.length + others.length);
    pruneBackups(newFolder());
  });

  /** Days between one copy and the next: mostly a night, now and then a gap. */
  const anyWalk = fc
    .tuple(
      dayBetween('2019-12-01', '2028-12-31'),
      fc.array(
        fc.oneof({ weight: 6, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: fc.integer({ min: 2, max: 40 }) }),
        {
          maxLength: 90,
        },
      ),
    )
    .map(([first, gaps]) => {
      const days = [first];
      for (const gap of gaps) days.push(addDays(days.at(-1) ?? first, gap));
      return days;
    });

  /** The copies left after every night of a walk. */
  const nightsOf = (walk: readonly CivilDate[]): CivilDate[][] => {
    let left: CivilDate[] = [];
    return walk.map((day) => {
      left = [...keptDays([...left, day])].toSorted();
      return left;
    });
  };

  it('are never more than eleven, with the newest seven, and the same whether pruned each night or once', () => {
    fc.assert(
      fc.property(anyWalk, (walk) => {
        for (const [night, left] of nightsOf(walk).entries()) {
          const made = walk.slice(0, night + 1);
          expect(left.length).toBeLessThanOrEqual(11);
          expect(left.slice(-7)).toEqual(made.slice(-7));
          expect(left).toEqual([...keptDays(made)].toSorted());
        }
      }),
    );
  });

  it('reach back three weeks once five weeks of nights have gone by, whatever was before', () => {
    fc.assert(
      fc.property(anyWalk, fc.integer({ min: 35, max: 50 }), (before, nights) => {
        const last = before.at(-1) as CivilDate;
        const walk = [...before, ...Array.from({ length: nights }, (_, night) => addDays(last, night + 1))];
        const [oldest] = nightsOf(walk).at(-1) as [CivilDate];
        expect(oldest <= addDays(walk.at(-1) as CivilDate, -21)).toBe(true);
      }),
    );
  });

  it('are counted by weeks from Monday, also over the turn of a year', () => {
    // Sunday 3 January 2027 ends week 53 of 2026, Monday begins week 1.
    const days: CivilDate[] = ['2026-12-28', '2027-01-03', '2027-01-04', '2027-01-11', '2027-01-18'];
    const newest = Array.from({ length: 7 }, (_, n) => addDays('2027-01-19', n));
    expect([...keptDays([...days, ...newest])].toSorted()).toEqual([
      '2027-01-04',
      '2027-01-11',
      '2027-01-18',
      ...newest,
    ]);
  });
});

describe('the check of the database', () => {
  it('finds nothing in one that is whole', () => {
    expect(checkDatabase(open(filledDataDir()))).toBeNull();
  });

  it('tells of broken references', () => {
    const store = open(filledDataDir());
    store.$client.pragma('foreign_keys = OFF');
    store.$client.exec('delete from cars');
    expect(checkDatabase(store)).toMatch(
      /^The database is damaged: \d+ broken reference\(s\)\. Stop the server and restore a copy\.$/,
    );
  });

  it('tells of damage, also of one that keeps the check itself from running', () => {
    const dataDir = filledDataDir();
    const file = join(dataDir, 'standstill.db');
    damage(file);
    const sqlite = new Database(file);
    const asStore = { $client: sqlite } as unknown as Store;
    expect(checkDatabase(asStore)).toMatch(/^The database is damaged: .+\. Stop the server and restore a copy\.$/);
    sqlite.close();
    const bytes = readFileSync(file);
    bytes.fill(255, 100, 4096);
    writeFileSync(file, bytes);
    const worse = new Database(file);
    expect(checkDatabase({ $client: worse } as unknown as Store)).toMatch(/^The database is damaged: .+malformed/);
    worse.close();
  });
});

describe('the backup job', { timeout: 60_000 }, () => {
  const backup = (dataDir: string, ...options: string[]) => run('jobs/backup.ts', options, { DATA_DIR: dataDir });
  const said = (out: string): Record<string, unknown> => {
    expect(out).toMatch(/^[^\n]+\n$/);
    return JSON.parse(out) as Record<string, unknown>;
  };

  it('makes today’s copy, prunes the old ones and says so in one line', async () => {
    const dataDir = filledDataDir();
    mkdirSync(nightly(dataDir), { recursive: true });
    for (let day = 1; day <= 28; day++)
      writeFileSync(join(nightly(dataDir), `2020-01-${String(day).padStart(2, '0')}.db`), '');
    const { code, out, err } = await backup(dataDir);
    expect([code, err]).toEqual([0, '']);
    const [newest, ...older] = nightlyBackups(dataDir);
    expect(said(out)).toEqual({
      job: 'backup',
      dryRun: false,
      day: newest?.day,
      file: newest?.file,
      bytes: newest?.bytes,
      rows: expect.any(Number),
    });
    expect(older.length).toBeLessThan(11);
    expect(query(dataDir, "select trouble from runs where job = 'backup' and good_at is not null")).toHaveLength(1);
    expect(everything(newest?.file ?? '')['cars']).toHaveLength(1);
  });

  it('run again on the same day leaves the first copy as it is, and its own beside it', async () => {
    const dataDir = filledDataDir();
    await backup(dataDir);
    const [first] = nightlyBackups(dataDir);
    const before = readFileSync(first?.file ?? '');
    const store = openStore(dataDir);
    store.$client.exec("update cars set name = 'Renamed by mistake'");
    store.$client.close();
    const { code, out } = await backup(dataDir);
    expect(code).toBe(0);
    const { file } = said(out) as { file: string };
    expect(file).toMatch(/nightly\/\d{4}-\d\d-\d\dT\d{6}\.db$/);
    expect(everything(file)['cars']).toEqual([expect.stringContaining('Renamed by mistake')]);
    expect(readFileSync(first?.file ?? '').equals(before)).toBe(true);
    expect(nightlyBackups(dataDir)).toHaveLength(1);
  });

  it('in a folder without a database makes neither', async () => {
    const dataDir = newFolder();
    const { code, err } = await backup(dataDir);
    expect([code, err]).toEqual([1, expect.stringContaining('There is no database in the folder')]);
    expect(readdirSync(dataDir)).toEqual([]);
  });

  it('run twice at the same moment leaves whole copies', async () => {
    const dataDir = filledDataDir();
    const both = await Promise.all([backup(dataDir), backup(dataDir)]);
    expect(both.map(({ code, err }) => [code, err])).toEqual([
      [0, ''],
      [0, ''],
    ]);
    expect(nightlyBackups(dataDir)).toHaveLength(1);
    for (const name of filesIn(dataDir)) {
      expect(name).toMatch(/^\d{4}-\d\d-\d\d(T\d{6})?\.db$/);
      expect(everything(join(nightly(dataDir), name))['cars']).toHaveLength(1);
    }
  });

  it('with --dry-run makes none, and none under another day than its own', async () => {
    const dataDir = filledDataDir();
    const dry = await backup(dataDir, '--dry-run');
    expect([dry.code, said(dry.out)]).toEqual([0, { job: 'backup', dryRun: true, day: expect.any(String) }]);
    const later = await backup(dataDir, '--on', '2999-01-01');
    expect([later.code, said(later.out)['trouble']]).toEqual([1, expect.stringMatching(/Leave --on out\.$/)]);
    expect(existsSync(join(dataDir, 'backups'))).toBe(false);
  });

  it('that can make none ends with 1 and says why', async () => {
    const dataDir = filledDataDir();
    mkdirSync(dirname(nightly(dataDir)));
    writeFileSync(nightly(dataDir), 'in the way');
    const { code, out, err } = await backup(dataDir);
    expect([code, err]).toEqual([1, '']);
    expect(said(out)['trouble']).toMatch(/^The copy .+ could not be made: /);
  });
});
