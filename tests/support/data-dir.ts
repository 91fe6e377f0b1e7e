/** A data folder on the disk with a car in it, for processes to work on. */
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openStore } from '../../src/store/open.ts';
import { queueLetters } from '../../src/store/outbox.ts';
import { changeMember } from '../../src/store/people.ts';
import { carIn, claim, date, openBarn } from './cars.ts';
import { newFolder } from './folder.ts';
import { justLetter, newLetter } from './letters.ts';

/** Whose brake fluid, filled on 1 June 2004, is long past by any clock; a letter may wait in its outbox. */
export const filledDataDir = ({ letter = false } = {}): string => {
  const dataDir = newFolder();
  const store = openStore(dataDir);
  const barn = openBarn(store);
  date(barn, carIn(barn), 'brake-fluid-glycol', claim('filled', '1 June 2004'));
  // Due by any clock, too: processes read the real one.
  const now = '2020-01-01T07:00:00.000Z';
  // Processes read the real clock: the yearly letter must not come in between.
  changeMember(store, barn.acting.collectionId, barn.acting.personId, { yearlyMonth: null });
  if (letter) queueLetters(store, [justLetter(newLetter(barn.acting, 'a', now))]);
  store.$client.close();
  return dataDir;
};

/** Answers a query of the database in a data folder. */
export const query = (dataDir: string, sql: string): unknown[] => {
  const sqlite = new Database(join(dataDir, 'standstill.db'));
  const rows = sqlite.prepare(sql).all();
  sqlite.close();
  return rows;
};

/** Marks the database as one that a later version has changed. */
export const fromTheFuture = (dataDir: string): void => {
  const sqlite = new Database(join(dataDir, 'standstill.db'));
  sqlite.exec("insert into __drizzle_migrations (hash, created_at) values ('later', 9999999999999)");
  sqlite.close();
};
