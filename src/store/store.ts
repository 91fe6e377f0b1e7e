import type Database from 'better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type * as schema from './schema.ts';

/** The open database, as every query takes it. */
export type Store = BetterSQLite3Database<typeof schema> & { $client: Database.Database };
