/** Going back to a copy: it is checked before anything is swapped, and what was there is kept beside it. */
import {
  chmodSync,
  constants,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  realpathSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { isDamage, SIDES, sync, tidyUp, troubleIn } from './backup.ts';
import { unknownMigrations } from './migrate.ts';
import { DATABASE } from './open.ts';

/** Thrown with a line for people; the database in place was not touched. */
export class RestoreError extends Error {}

export interface Restored {
  restored: string;
  /** Where the database that was replaced lies now; null where there was none. */
  replaced: string | null;
  collections: number;
}

export const restoreBackup = (dataDir: string, file: string, now: Date): Restored => {
  const target = join(dataDir, DATABASE);
  const draft = `${target}.restoring`;
  if (!existsSync(file)) throw new RestoreError(`There is no file ${file}.`);
  if (existsSync(target) && realpathSync(target) === realpathSync(file))
    throw new RestoreError(`${file} is the database itself. Name a copy of it.`);
  try {
    mkdirSync(dataDir, { recursive: true });
    for (const end of ['', ...SIDES]) rmSync(`${draft}${end}`, { force: true });
    copyFileSync(file, draft);
    // What a copy's side files hold belongs to it: changes that were never folded in.
    for (const end of ['-wal', '-journal'])
      if (existsSync(`${file}${end}`)) copyFileSync(`${file}${end}`, `${draft}${end}`);
    // One from a read-only place must be writable here.
    chmodSync(draft, 0o600);
    // The copy is what will be used, so the copy is what is checked.
    const collections = check(draft, file);
    sync(draft);
    const replaced = join(dataDir, `standstill-replaced-${now.toISOString().replaceAll(':', '')}.db`);
    const had = existsSync(target);
    if (had) whileAlone(target, () => swap(draft, target, replaced));
    else swap(draft, target, replaced);
    sync(dataDir);
    return { restored: file, replaced: had ? replaced : null, collections };
  } catch (error) {
    throw error instanceof RestoreError
      ? error
      : new RestoreError(`${file} could not be restored: ${error instanceof Error ? error.message : error}`);
  } finally {
    tidyUp(draft);
  }
};

/** Answers how many collections a copy holds, once it has been found whole and known. Its side files are folded in. */
const check = (draft: string, file: string): number => {
  const sqlite = new Database(draft);
  try {
    const ours = sqlite
      .prepare("select count(*) from sqlite_master where name in ('__drizzle_migrations', 'collections')")
      .pluck()
      .get();
    if (ours !== 2) throw new RestoreError(`${file} is a database, but none of Standstill’s.`);
    const trouble = troubleIn(sqlite);
    if (trouble) throw new RestoreError(`${file} is damaged: ${trouble}. Take another copy.`);
    const unknown = unknownMigrations(sqlite);
    if (unknown > 0)
      throw new RestoreError(
        `${file} was written by a newer Standstill (${unknown} unknown change(s)). Restore it with that version.`,
      );
    sqlite.pragma('journal_mode = DELETE');
    return sqlite.prepare('select count(*) from collections').pluck().get() as number;
  } catch (error) {
    if (!isDamage(error)) throw error;
    throw new RestoreError(
      'code' in error && error.code === 'SQLITE_NOTADB'
        ? `${file} is no database. Take another copy.`
        : `${file} is damaged: ${error.message}. Take another copy.`,
    );
  } finally {
    sqlite.close();
  }
};

/**
 * Does something while nobody else can have the database open, or refuses. Leaving WAL is possible only alone, and folds
 * the log of changes in. The lock then stays until the end: a job that starts in between must not begin a new log, which
 * would be taken for the restored one's.
 */
const whileAlone = (target: string, work: () => void): void => {
  const sqlite = new Database(target, { timeout: 500 });
  try {
    try {
      if (sqlite.pragma('journal_mode = DELETE', { simple: true }) !== 'delete') throw new InUse();
      sqlite.exec('begin exclusive');
    } catch (error) {
      if (error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY')) throw new InUse();
      // One so damaged that it can't be asked is to be replaced just for that.
      if (!isDamage(error)) throw error;
    }
    work();
  } finally {
    sqlite.close();
  }
};

class InUse extends RestoreError {
  constructor() {
    super('The database is in use. Stop the server and any job first; nothing was changed.');
  }
}

/** At no moment is there no database: a server started just then would make an empty one. */
const swap = (draft: string, target: string, replaced: string): void => {
  if (existsSync(replaced)) throw new RestoreError(`${replaced} exists already. Try again.`);
  const moved: string[] = [];
  try {
    if (existsSync(target)) keep(target, replaced);
    // Side files of a damaged one, or of one that was removed, must not meet the copy.
    for (const end of SIDES.filter((side) => existsSync(`${target}${side}`))) {
      renameSync(`${target}${end}`, `${replaced}${end}`);
      moved.push(end);
    }
    renameSync(draft, target);
  } catch (error) {
    for (const end of moved) renameSync(`${replaced}${end}`, `${target}${end}`);
    rmSync(replaced, { force: true });
    throw error;
  }
};

/** A second name for the same file, or a copy where a disk knows no second names. */
const keep = (target: string, replaced: string): void => {
  try {
    linkSync(target, replaced);
  } catch {
    copyFileSync(target, replaced, constants.COPYFILE_EXCL);
    sync(replaced);
  }
};
