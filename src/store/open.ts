import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { migrateStore } from './migrate.ts';
import * as schema from './schema.ts';
import type { Store } from './store.ts';

export type { Store };

/** Name of the database file in the data folder. */
export const DATABASE = 'standstill.db';

/**
 * Opens (or makes) the database of a data folder, brought up to this program's schema with a backup before.
 * `synchronous=FULL`: a letter that was queued must outlive a power cut, and writes are few.
 */
export const openStore = (dataDir: string): Store => {
  mkdirSync(dataDir, { recursive: true });
  const file = join(dataDir, DATABASE);
  const sqlite = new Database(file);
  try {
    return prepareStore(sqlite, join(dataDir, 'backups'));
  } catch (error) {
    sqlite.close();
    throw error;
  }
};

/** A store in memory, for tests. */
export const openMemoryStore = (): Store => prepareStore(new Database(':memory:'), null);

const prepareStore = (sqlite: Database.Database, backupDir: string | null): Store => {
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = FULL');
  sqlite.pragma('busy_timeout = 5000');
  sqlite.pragma('foreign_keys = ON');
  sqlite.pragma('trusted_schema = OFF');
  const store = drizzle(sqlite, { schema });
  migrateStore(store, backupDir);
  return store;
};

/**
 * Every write is one transaction that takes the write lock at once, so that it can't fail half way for another's. There
 * is one connection, so what is asked of it by hand meanwhile belongs to the transaction, too.
 */
export const inTransaction = <T>(store: Store, work: (store: Store) => T): T =>
  store.transaction((tx) => work(Object.assign(tx, { $client: store.$client }) as unknown as Store), {
    behavior: 'immediate',
  });
