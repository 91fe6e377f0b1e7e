/** Going back to a copy: it is checked before anything is swapped, and what was there is kept beside it. */
import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sync, troubleIn } from './backup.ts';
import { unknownMigrations } from './migrate.ts';

/** Thrown with a line for people; the database in place was not touched. */
export class RestoreError extends Error {}

export interface Restored {
  restored: string;
  /** Where the database that was replaced lies now; null where there was none. */
  replaced: string | null;
  collections: number;
}

export const restoreBackup = (dataDir: string, file: string, now: Date): Restored => {
  const target = join(dataDir, 'standstill.db');
  const draft = `${target}.restoring`;
  if (!existsSync(file)) throw new RestoreError(`There is no file ${file}.`);
  try {
    rmSync(draft, { force: true });
    copyFileSync(file, draft);
    // The copy is what will be used, so the copy is what is checked.
    const collections = check(draft, file);
    sync(draft);
    if (!existsSync(target)) {
      renameSync(draft, target);
      sync(dataDir);
      return { restored: file, replaced: null, collections };
    }
    leaveAlone(target);
    const replaced = join(dataDir, `standstill-replaced-${now.toISOString().replaceAll(':', '')}.db`);
    renameSync(target, replaced);
    // A damaged one may have left its side files: they belong to it, and must not meet the copy.
    for (const end of ['-wal', '-shm'])
      if (existsSync(`${target}${end}`)) renameSync(`${target}${end}`, `${replaced}${end}`);
    try {
      renameSync(draft, target);
    } catch (error) {
      renameSync(replaced, target);
      throw error;
    }
    sync(dataDir);
    return { restored: file, replaced, collections };
  } catch (error) {
    throw error instanceof RestoreError
      ? error
      : new RestoreError(`${file} could not be restored: ${error instanceof Error ? error.message : error}`);
  } finally {
    for (const end of ['', '-journal', '-wal', '-shm']) rmSync(`${draft}${end}`, { force: true });
  }
};

/** Answers how many collections a copy holds. */
const check = (draft: string, file: string): number => {
  const sqlite = new Database(draft);
  try {
    sqlite.pragma('journal_mode = DELETE');
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
    return sqlite.prepare('select count(*) from collections').pluck().get() as number;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'SQLITE_NOTADB')
      throw new RestoreError(`${file} is no database.`);
    throw error;
  } finally {
    sqlite.close();
  }
};

const IN_USE = new RestoreError('The database is in use. Stop the server and any job first; nothing was changed.');

/** Refuses while a server or a job has it open, and folds its log of changes into it: leaving WAL needs it alone. */
const leaveAlone = (target: string): void => {
  const sqlite = new Database(target, { timeout: 500 });
  try {
    if (sqlite.pragma('journal_mode = DELETE', { simple: true }) !== 'delete') throw IN_USE;
  } catch (error) {
    // One that is damaged can't be asked; it is to be replaced just for that.
    if (error === IN_USE || (error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY')))
      throw IN_USE;
  } finally {
    sqlite.close();
  }
};
