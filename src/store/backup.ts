/** Nightly copies of the database: made while it is in use, checked before they count, seven days and four weeks kept. */
import { closeSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { type CivilDate, daysBetween, isCivilDate } from '../dates/civil.ts';
import { newId } from './ids.ts';
import { DATABASE } from './open.ts';
import type { Store } from './store.ts';

/** Thrown with a line for people when a copy could not be made, or does not hold what it should. */
export class BackupError extends Error {}

export interface Backup {
  day: CivilDate;
  file: string;
  bytes: number;
  /** Instant of its making, UTC. */
  madeAt: string;
}

const DAYS = 7;
const WEEKS = 4;
const NAME = /^(\d{4}-\d{2}-\d{2})\.db$/;
/** A copy in the making; each has a name of its own, so that two made at once never meet. */
const DRAFT = /^(\d{4}-\d{2}-\d{2})(?:T\d{6})?\.db\.[\da-f-]{36}\.part(-journal)?$/;

const folderOf = (dataDir: string): string => join(dataDir, 'backups', 'nightly');

/**
 * Copies the database as it is at this moment, through SQLite's own online backup, from a connection that holds that
 * moment while others write. The copy gets its name only after it was read back; answers how many rows it holds. Under
 * another name than its day's it is kept until somebody removes it.
 */
export const nightlyBackup = async (
  dataDir: string,
  day: CivilDate,
  name: string = day,
): Promise<{ day: CivilDate; file: string; bytes: number; rows: number }> => {
  const folder = folderOf(dataDir);
  const file = join(folder, `${name}.db`);
  const draft = `${file}.${newId()}.part`;
  let reader: Database.Database | undefined;
  try {
    mkdirSync(folder, { recursive: true });
    reader = new Database(join(dataDir, DATABASE), { readonly: true, fileMustExist: true });
    reader.exec('begin');
    const counts = countsIn(reader);
    await reader.backup(draft);
    reader.exec('commit');
    verify(draft, file, counts);
    sync(draft);
    renameSync(draft, file);
    sync(folder);
    sweepDrafts(folder, day);
    return { day, file, bytes: statSync(file).size, rows: [...counts.values()].reduce((sum, n) => sum + n, 0) };
  } catch (error) {
    throw error instanceof BackupError
      ? error
      : new BackupError(`The copy ${file} could not be made: ${error instanceof Error ? error.message : error}`);
  } finally {
    reader?.close();
    tidyUp(draft);
  }
};

export const SIDES = ['-wal', '-shm', '-journal'];

/** Removes a draft and its side files, as far as it goes: how the work itself ended is what has to be heard. */
export const tidyUp = (draft: string): void => {
  for (const end of ['', ...SIDES])
    try {
      rmSync(`${draft}${end}`, { force: true });
    } catch {
      // The next run meets it again.
    }
};

/** Clears away what runs of earlier days left that were killed. */
const sweepDrafts = (folder: string, today: CivilDate): void => {
  for (const name of readdirSync(folder)) {
    const day = DRAFT.exec(name)?.[1];
    if (day && day !== today) tidyUp(join(folder, name));
  }
};

const countsIn = (sqlite: Database.Database): Map<string, number> => {
  const tables = sqlite
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%' order by name")
    .pluck()
    .all() as string[];
  return new Map(
    tables.map((name) => [name, sqlite.prepare(`select count(*) from "${name}"`).pluck().get() as number]),
  );
};

/** Reads a copy back: whole, no broken reference, as many rows in each table. It stands alone, without side files. */
const verify = (draft: string, file: string, counts: ReadonlyMap<string, number>): void => {
  const copy = new Database(draft, { fileMustExist: true });
  try {
    const trouble = troubleIn(copy);
    if (trouble)
      throw new BackupError(
        `The copy ${file} was not kept, because it is damaged: ${trouble}. Check the disk; if the next copy fails, too, restore an older one.`,
      );
    copy.pragma('journal_mode = DELETE');
    const held = countsIn(copy);
    for (const [table, n] of counts)
      if (held.get(table) !== n)
        throw new BackupError(
          `The copy ${file} was not kept: it holds ${held.get(table) ?? 'no'} rows of ${table} in place of ${n}.`,
        );
  } finally {
    copy.close();
  }
};

/** What is wrong inside a database, or null. */
export const troubleIn = (sqlite: Database.Database): string | null => {
  try {
    const verdict = sqlite.pragma('integrity_check(5)') as { integrity_check: string }[];
    if (verdict[0]?.integrity_check !== 'ok') return verdict.map((row) => row.integrity_check).join('; ');
    const broken = sqlite.pragma('foreign_key_check') as unknown[];
    return broken.length > 0 ? `${broken.length} broken reference(s)` : null;
  } catch (error) {
    // So damaged that the check itself can't be run.
    if (isDamage(error)) return error.message;
    throw error;
  }
};

/** Whether SQLite says that a file is damaged, or is none of its own. */
export const isDamage = (error: unknown): error is Error =>
  error instanceof Error && 'code' in error && /^SQLITE_(CORRUPT|NOTADB)/.test(String(error.code));

/** The weekly check of the database in use, which also renews what SQLite knows of its own tables. */
export const checkDatabase = ({ $client: sqlite }: Store): string | null => {
  const trouble = troubleIn(sqlite);
  if (trouble === null) sqlite.pragma('optimize');
  return trouble && `The database is damaged: ${trouble}. Stop the server and restore a copy.`;
};

/** Forces a file, or the names in a folder, down to the disk. */
export const sync = (path: string): void => {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

/** The copies there are, newest first. */
export const nightlyBackups = (dataDir: string): Backup[] => {
  let names: string[] = [];
  try {
    names = readdirSync(folderOf(dataDir));
  } catch {
    // No copy was ever made.
  }
  return names
    .flatMap((name) => {
      const day = NAME.exec(name)?.[1] ?? '';
      if (!isCivilDate(day)) return [];
      const file = join(folderOf(dataDir), name);
      const about = statSync(file, { throwIfNoEntry: false });
      return about?.isFile() ? [{ day, file, bytes: about.size, madeAt: about.mtime.toISOString() }] : [];
    })
    .toSorted((a, b) => b.day.localeCompare(a.day));
};

/** Monday of the first week counted; days before it have negative weeks. */
const FIRST_MONDAY: CivilDate = '1970-01-05';
const weekOf = (day: CivilDate): number => Math.floor(daysBetween(FIRST_MONDAY, day) / 7);

/** The newest seven days, and of each of the four newest weeks the first copy: once kept for its week, it stays so. */
export const keptDays = (days: readonly CivilDate[]): Set<CivilDate> => {
  const sorted = days.toSorted();
  const firsts = new Map<number, CivilDate>();
  for (const day of sorted) if (!firsts.has(weekOf(day))) firsts.set(weekOf(day), day);
  return new Set([...sorted.slice(-DAYS), ...[...firsts.values()].slice(-WEEKS)]);
};

export const pruneBackups = (dataDir: string): void => {
  const backups = nightlyBackups(dataDir);
  const kept = keptDays(backups.map(({ day }) => day));
  for (const { day, file } of backups) if (!kept.has(day)) rmSync(file);
};
