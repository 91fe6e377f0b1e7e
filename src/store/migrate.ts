import { mkdirSync, readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import { fromRoot } from '../root.ts';
import type { Store } from './store.ts';

const FOLDER = fromRoot('migrations');

interface Journal {
  entries: { tag: string; when: number }[];
}

/** Thrown with a line for people when the database and the program don't fit each other. */
export class SchemaError extends Error {}

/**
 * Applies the migrations still missing, after a backup. Foreign keys are off meanwhile: the migrator works in one
 * transaction, where SQLite ignores the pragma, and a rebuilt table would take its child rows along.
 */
export const migrateStore = (store: Store, backupDir: string | null, folder = FOLDER): void => {
  const { entries } = journalIn(folder);
  const applied = appliedMigrations(store.$client);
  const unknown = unknownMigrations(store.$client, folder);
  if (unknown > 0)
    throw new SchemaError(
      `The database holds ${unknown} change(s) this version does not know: it was written by a newer Standstill. Start that version, or restore a backup made before it.`,
    );
  const sqlite = store.$client;
  // The count of migrations whose outcome was checked; a start that was cut short checks again.
  if (applied.length === entries.length && sqlite.pragma('user_version', { simple: true }) === entries.length) return;

  const next = entries[applied.length];
  if (next && applied.length > 0 && backupDir) backUp(store, backupDir, `before-${next.tag}`);
  sqlite.pragma('foreign_keys = OFF');
  try {
    migrate(store, { migrationsFolder: folder });
  } catch (error) {
    // Another process may have done the same work a moment before.
    if (appliedMigrations(store.$client).length !== entries.length) throw error;
  }
  const broken = sqlite.pragma('foreign_key_check') as unknown[];
  if (broken.length > 0)
    throw new SchemaError(`A migration left ${broken.length} broken reference(s). Restore the backup.`);
  sqlite.pragma('foreign_keys = ON');
  // The migrator skips a migration dated before the newest applied one without a word.
  const done = appliedMigrations(store.$client).length;
  if (done !== entries.length)
    throw new SchemaError(`${done} of ${entries.length} migrations are applied; their dates in the journal must rise.`);
  sqlite.pragma(`user_version = ${entries.length}`);
};

const journalIn = (folder: string): Journal =>
  JSON.parse(readFileSync(join(folder, 'meta/_journal.json'), 'utf8')) as Journal;

/** How many changes a database holds that this version does not know. */
export const unknownMigrations = (sqlite: Database.Database, folder = FOLDER): number => {
  const { entries } = journalIn(folder);
  return appliedMigrations(sqlite).filter((when) => !entries.some((entry) => entry.when === when)).length;
};

const appliedMigrations = (sqlite: Database.Database): number[] => {
  const known = sqlite.prepare("select 1 from sqlite_master where name = '__drizzle_migrations'").get();
  if (!known) return [];
  return sqlite.prepare('select created_at from __drizzle_migrations order by created_at').pluck().all() as number[];
};

/** Writes a checked copy of the database to the folder, named after the moment and the reason; answers its path. */
export const backUp = (store: Store, folder: string, reason: string): string => {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${new Date().toISOString().replaceAll(':', '')}-${reason}.db`);
  const draft = `${file}.part`;
  store.$client.prepare('vacuum into ?').run(draft);
  const copy = new Database(draft, { readonly: true });
  const verdict = copy.pragma('integrity_check', { simple: true });
  copy.close();
  if (verdict !== 'ok') throw new SchemaError(`The backup ${draft} failed its integrity check: ${verdict}`);
  renameSync(draft, file);
  return file;
};
