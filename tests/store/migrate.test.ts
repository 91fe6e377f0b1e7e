import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { afterEach, describe, expect, it } from 'vitest';
import { carWithParts } from '../../src/store/cars.ts';
import { backUp, migrateStore, SchemaError } from '../../src/store/migrate.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import { queueLetters } from '../../src/store/outbox.ts';
import { allCollections } from '../../src/store/people.ts';
import { addPlace, putCar } from '../../src/store/places.ts';
import { setDetails } from '../../src/store/readings.ts';
import * as schema from '../../src/store/schema.ts';
import { carIn, carOf, claim, date, must, openBarn, partOf, TODAY } from '../support/cars.ts';
import { newFolder } from '../support/folder.ts';
import { layUpIn, stayIn, sweepOn, tickOn } from '../support/lay-ups.ts';
import { justLetter, newLetter } from '../support/letters.ts';
import { FROSTY, record, typed } from '../support/readings.ts';

interface Entry {
  idx: number;
  version: string;
  when: number;
  tag: string;
  breakpoints: boolean;
}

const journalOf = (folder: string): { entries: Entry[] } =>
  JSON.parse(readFileSync(join(folder, 'meta/_journal.json'), 'utf8')) as { entries: Entry[] };

const { entries } = journalOf('migrations');
const newest = entries.at(-1) as Entry;

/** The program's migrations and one more, as a later version would bring it. */
const withOneMore = (tag: string, statements: readonly string[], when = newest.when + 1): string => {
  const folder = newFolder();
  cpSync('migrations', folder, { recursive: true });
  const journal = journalOf(folder);
  journal.entries.push({ idx: entries.length, version: newest.version, when, tag, breakpoints: true });
  writeFileSync(join(folder, 'meta/_journal.json'), JSON.stringify(journal));
  writeFileSync(join(folder, `${tag}.sql`), statements.join('\n--> statement-breakpoint\n'));
  return folder;
};

const opened: Store[] = [];
const open = (dataDir: string): Store => {
  const store = openStore(dataDir);
  opened.push(store);
  return store;
};
afterEach(() => {
  for (const store of opened.splice(0)) store.$client.close();
});

/** A database with a car, its parts, place, dates and readings, and where it lies. */
const filled = () => {
  const dataDir = newFolder();
  const store = open(dataDir);
  const barn = openBarn(store);
  const carId = carIn(barn, { km: 87_400 });
  date(barn, carId, 'brake-fluid-glycol', claim('filled', 'June 2025'));
  const { collectionId } = barn.acting;
  const { id } = partOf(barn, carId, 'brake-fluid-glycol');
  must(record(barn, carId, [typed(id, 'water', '1.5')]));
  setDetails(store, collectionId, id, { grade: 'dot-4' });
  putCar(store, collectionId, carId, addPlace(store, collectionId, { ...FROSTY, name: 'Barn', note: '' }), TODAY);
  return { dataDir, store, barn, carId, backups: join(dataDir, 'backups') };
};

const count = (sqlite: Database.Database, table: string): number =>
  sqlite.prepare(`select count(*) from ${table}`).pluck().get() as number;

const pragma = (store: Store, name: string): unknown => store.$client.pragma(name, { simple: true });

describe('the journal of migrations', () => {
  it('has dates that strictly rise: the migrator skips an older one without a word', () => {
    const dates = entries.map(({ when }) => when);
    expect(dates.length).toBeGreaterThan(0);
    expect(dates).toEqual([...new Set(dates)].toSorted((a, b) => a - b));
  });

  it('names a file for every entry, and no file is left out', () => {
    const files = readdirSync('migrations').filter((name) => name.endsWith('.sql'));
    expect(files.toSorted()).toEqual(entries.map(({ tag }) => `${tag}.sql`).toSorted());
  });
});

describe('opening a data folder', () => {
  it('makes the folder and a database with every migration applied', () => {
    const dataDir = join(newFolder(), 'not', 'there', 'yet');
    const store = open(dataDir);
    const applied = store.$client.prepare('select created_at from __drizzle_migrations order by id').pluck().all();
    expect(applied).toEqual(entries.map(({ when }) => when));
    expect(allCollections(store)).toEqual([]);
  });

  it('backs nothing up while there is nothing to lose', () => {
    const dataDir = newFolder();
    open(dataDir);
    open(dataDir);
    expect(existsSync(join(dataDir, 'backups'))).toBe(false);
  });

  it('leaves a database of this version as it is', () => {
    const { dataDir, barn, carId } = filled();
    const again = open(dataDir);
    expect(carOf({ ...barn, store: again }, carId)).toEqual(carOf(barn, carId));
  });

  it('writes ahead, waits for the disk at each commit, and checks foreign keys', () => {
    const store = open(newFolder());
    expect(pragma(store, 'journal_mode')).toBe('wal');
    expect(pragma(store, 'synchronous')).toBe(2);
    expect(pragma(store, 'foreign_keys')).toBe(1);
    expect(pragma(store, 'busy_timeout')).toBe(5000);
  });

  it('refuses a part on a car that is not there', () => {
    const { store } = filled();
    const adopt = store.$client.prepare(
      `insert into parts (collection_id, id, car_id, kind, note, opened_on)
       select collection_id, 'orphan', 'no such car', 'wiring', '', '2026-01-01' from cars`,
    );
    expect(() => adopt.run()).toThrow(/FOREIGN KEY/);
  });

  it('refuses a database written by a newer version, with a line that says what to do', () => {
    const { dataDir, store } = filled();
    store.$client
      .prepare('insert into __drizzle_migrations (hash, created_at) values (?, ?)')
      .run('later', newest.when + 1);
    store.$client.close();
    expect(() => open(dataDir)).toThrow(SchemaError);
    expect(() => open(dataDir)).toThrow(
      'The database holds 1 change(s) this version does not know: it was written by a newer Standstill. Start that version, or restore a backup made before it.',
    );
  });
});

describe('a migration of a filled database', () => {
  const addColumn = () => withOneMore('0099_color', ['ALTER TABLE `cars` ADD `color` text;']);

  it('comes after a backup that opens, passes its integrity check and holds what was there', () => {
    const { store, backups } = filled();
    migrateStore(store, backups, addColumn());
    const files = readdirSync(backups);
    expect(files).toEqual([expect.stringMatching(/^\d{4}-\d\d-\d\dT\d{6}\.\d{3}Z-before-0099_color\.db$/)]);

    const copy = new Database(join(backups, files[0] ?? ''), { readonly: true });
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(copy.pragma('table_info(cars)')).not.toContainEqual(expect.objectContaining({ name: 'color' }));
    for (const table of [
      'cars',
      'parts',
      'claims',
      'odometer',
      'readings',
      'places',
      'car_places',
      '__drizzle_migrations',
    ])
      expect(count(copy, table), table).toBe(count(store.$client, table) - (table === '__drizzle_migrations' ? 1 : 0));
    expect(count(copy, 'claims')).toBe(1);
    copy.close();
    expect(store.$client.pragma('table_info(cars)')).toContainEqual(expect.objectContaining({ name: 'color' }));
  });

  it('runs once', () => {
    const { store, backups } = filled();
    const folder = addColumn();
    migrateStore(store, backups, folder);
    migrateStore(store, backups, folder);
    expect(readdirSync(backups)).toHaveLength(1);
  });

  it('that rebuilds a table keeps the rows that hang on it, and foreign keys are checked again afterwards', () => {
    const { store, barn, carId, backups } = filled();
    const before = carOf(barn, carId);
    // As drizzle-kit writes it; inside the migrator's transaction SQLite ignores its pragma lines.
    const folder = withOneMore('0099_rebuild', [
      'PRAGMA foreign_keys=OFF;',
      `CREATE TABLE \`__new_cars\` (
        \`collection_id\` text NOT NULL, \`id\` text NOT NULL, \`name\` text NOT NULL, \`built_typed\` text NOT NULL,
        \`built_edtf\` text, \`built_from\` text, \`built_to\` text, \`traits\` text NOT NULL, \`note\` text NOT NULL,
        \`added_on\` text NOT NULL, \`ours\` integer DEFAULT true NOT NULL, \`left_on\` text, \`left_how\` text,
        \`color\` text DEFAULT 'green' NOT NULL,
        PRIMARY KEY(\`collection_id\`, \`id\`),
        FOREIGN KEY (\`collection_id\`) REFERENCES \`collections\`(\`id\`) ON UPDATE no action ON DELETE no action
      );`,
      `INSERT INTO \`__new_cars\`("collection_id", "id", "name", "built_typed", "built_edtf", "built_from", "built_to", "traits", "note", "added_on")
       SELECT "collection_id", "id", "name", "built_typed", "built_edtf", "built_from", "built_to", "traits", "note", "added_on" FROM \`cars\`;`,
      'DROP TABLE `cars`;',
      'ALTER TABLE `__new_cars` RENAME TO `cars`;',
      'PRAGMA foreign_keys=ON;',
    ]);
    migrateStore(store, backups, folder);
    expect(store.$client.prepare('select color from cars').pluck().all()).toEqual(['green']);
    const after = carOf(barn, carId);
    expect(after).toEqual(before);
    expect(after.parts.length).toBeGreaterThan(50);
    expect(after.facts.odometer).toHaveLength(1);
    expect(after.place?.name).toBe('Barn');
    expect(after.parts.flatMap(({ readings }) => readings)).toHaveLength(1);
    expect(pragma(store, 'foreign_keys')).toBe(1);
    expect(pragma(store, 'foreign_key_check')).toBeUndefined();
  });

  it('that leaves a row hanging on nothing is refused', () => {
    const { store, backups } = filled();
    const folder = withOneMore('0099_careless', ['DELETE FROM `cars`;']);
    expect(() => migrateStore(store, backups, folder)).toThrow(/left \d+ broken reference\(s\)\. Restore the backup/);
    expect(readdirSync(backups)).toHaveLength(1);
  });

  it('that fails changes nothing', () => {
    const { store, barn, carId, backups } = filled();
    const before = carOf(barn, carId);
    const folder = withOneMore('0099_half', ['ALTER TABLE `cars` ADD `color` text;', 'DROP TABLE `no_such_table`;']);
    expect(() => migrateStore(store, backups, folder)).toThrow(/no_such_table/);
    expect(store.$client.pragma('table_info(cars)')).not.toContainEqual(expect.objectContaining({ name: 'color' }));
    expect(carOf(barn, carId)).toEqual(before);
  });

  it('dated before one already applied is not passed over in silence', () => {
    const { store, backups } = filled();
    const folder = withOneMore('0099_late', ['ALTER TABLE `cars` ADD `color` text;'], newest.when - 1);
    expect(() => migrateStore(store, backups, folder)).toThrow(
      `${entries.length} of ${entries.length + 1} migrations are applied; their dates in the journal must rise.`,
    );
  });
});

describe('a database of the first version', () => {
  /** As that version left it: its own tables alone, with one dated part. */
  const firstVersion = (): Store => {
    const folder = newFolder();
    cpSync('migrations', folder, { recursive: true });
    writeFileSync(
      join(folder, 'meta/_journal.json'),
      JSON.stringify({ ...journalOf(folder), entries: entries.slice(0, 1) }),
    );
    const store = drizzle(new Database(join(newFolder(), 'old.db')), { schema });
    opened.push(store);
    migrateStore(store, null, folder);
    store.$client.exec(`
      insert into collections values ('c', 'The barn', 'Europe/Lisbon');
      insert into cars values ('c', 'car', 'Merle Tourer', '1967', '1967', '1967-01-01', '1967-12-31', '[]', '', '2026-01-01');
      insert into parts (collection_id, id, car_id, kind, note, opened_on)
        values ('c', 'battery', 'car', 'battery-flooded', 'Left side', '2026-01-01');
      insert into claims (collection_id, id, part_id, clock, said, typed, from_day, to_day, evidence, note, recorded_on)
        values ('c', 'claim', 'battery', 'made', 'date', 'June 2025', '2025-06-01', '2025-06-30', 'receipt', '', '2026-01-01');
    `);
    return store;
  };

  it('gets readings, details and places, and keeps what it held', () => {
    const store = firstVersion();
    expect(store.$client.pragma('table_info(parts)')).not.toContainEqual(expect.objectContaining({ name: 'details' }));
    const backups = join(newFolder(), 'backups');
    migrateStore(store, backups);
    expect(readdirSync(backups)).toEqual([expect.stringContaining(`-before-${entries[1]?.tag}.db`)]);
    expect(carWithParts(store, 'c', 'car')).toMatchObject({
      car: { name: 'Merle Tourer' },
      place: undefined,
      facts: { place: null },
      parts: [{ id: 'battery', note: 'Left side', details: {}, readings: [], claims: [{ typed: 'June 2025' }] }],
    });
  });

  it('takes readings and places from then on', () => {
    const store = firstVersion();
    migrateStore(store, null);
    putCar(store, 'c', 'car', addPlace(store, 'c', { ...FROSTY, name: 'Barn', note: '' }), TODAY);
    setDetails(store, 'c', 'battery', { volts: '12' });
    expect(carWithParts(store, 'c', 'car')).toMatchObject({
      place: { name: 'Barn' },
      parts: [{ details: { volts: '12' } }],
    });
  });
});

/** The database as a release before some migration would have left it: its tables and columns, with the rows of this one. */
const asLeftBefore = (full: Store, migration: string): string => {
  const dataDir = newFolder();
  const folder = newFolder();
  cpSync('migrations', folder, { recursive: true });
  const last = entries.findIndex(({ tag }) => tag.endsWith(migration));
  const known = { ...journalOf(folder), entries: entries.slice(0, last) };
  writeFileSync(join(folder, 'meta/_journal.json'), JSON.stringify(known));
  const old = drizzle(new Database(join(dataDir, 'standstill.db')), { schema });
  migrateStore(old, null, folder);
  const sqlite = old.$client;
  sqlite.pragma('foreign_keys = OFF');
  const tables = sqlite
    .prepare(
      "select name from sqlite_master where type = 'table' and name not like 'sqlite%' and name not like '\\_\\_%' escape '\\'",
    )
    .pluck()
    .all() as string[];
  const still = full.$client.prepare('select 1 from sqlite_master where name = ?').pluck();
  for (const table of tables.filter((name) => still.get(name))) {
    const columns = (sqlite.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => `"${name}"`);
    const insert = sqlite.prepare(
      `insert into ${table} (${columns.join(', ')}) values (${columns.map(() => '?').join(', ')})`,
    );
    for (const row of full.$client
      .prepare(`select ${columns.join(', ')} from ${table}`)
      .raw()
      .all())
      insert.run(...(row as unknown[]));
  }
  sqlite.close();
  return dataDir;
};

describe('a database of the release before lay-ups', () => {
  /** As that release left it: its own tables, with a car, its place, dates, readings and a letter that was sent. */
  const leftBehind = () => {
    const store = open(newFolder());
    const barn = openBarn(store);
    const carId = carIn(barn, { km: 87_400 });
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
    const { id } = partOf(barn, carId, 'battery-flooded');
    must(record(barn, carId, [typed(id, 'rest-voltage', '12.6')]));
    const { collectionId } = barn.acting;
    putCar(store, collectionId, carId, addPlace(store, collectionId, { ...FROSTY, name: 'Barn', note: '' }), TODAY);
    const now = `${TODAY}T07:00:00.000Z`;
    const letter = newLetter(barn.acting, 'a', now);
    const said = [{ partId: partOf(barn, carId, 'brake-fluid-glycol').id, stage: 'due' as const, saidOn: TODAY }];
    queueLetters(store, [{ ...justLetter(letter), said }]);
    const keptIn = (opened: Store) => ({
      car: carOf({ ...barn, store: opened }, carId),
      rows: ['collections', 'people', 'memberships', 'letters', 'said'].map((table) =>
        opened.$client.prepare(`select * from ${table}`).all(),
      ),
    });
    return { dataDir: asLeftBefore(store, 'add-lay-ups'), barn, carId, was: keptIn(store), keptIn };
  };

  it('has none of their tables', () => {
    const { dataDir } = leftBehind();
    const old = new Database(join(dataDir, 'standstill.db'), { readonly: true });
    const tables = old.prepare("select name from sqlite_master where type = 'table'").pluck().all();
    old.close();
    expect(tables).toContain('said');
    for (const table of ['lay_ups', 'ticks', 'own_steps', 'rounds', 'told_of_stays'])
      expect(tables).not.toContain(table);
  });

  it('opened, keeps everything, after a backup', () => {
    const { dataDir, was, keptIn } = leftBehind();
    const store = open(dataDir);
    expect(keptIn(store)).toEqual(was);
    expect(readdirSync(join(dataDir, 'backups'))).toEqual([expect.stringMatching(/-before-\d{4}_add-lay-ups\.db$/)]);
    expect(pragma(store, 'foreign_key_check')).toBeUndefined();
  });

  it('takes a lay-up from then on, and says nothing of the parts again', () => {
    const { dataDir, barn, carId } = leftBehind();
    const here = { ...barn, store: open(dataDir) };
    const id = layUpIn(here, carId, { parkedOn: '2026-12-15', returnOn: '' });
    must(tickOn(here, id, 'photographs', TODAY));
    expect(stayIn(here, id).record.ticks).toMatchObject([{ step: 'photographs', state: 'done', by: 'Ada' }]);
    const { letters } = sweepOn(here, TODAY);
    expect(letters.map(({ subject }) => subject)).toEqual([expect.stringMatching(/^Lay-up of Merle Tourer/)]);
  });
});

describe('a backup', () => {
  it('is a database of its own: what is written later is not in it', () => {
    const { store, barn, backups } = filled();
    const file = backUp(store, backups, 'by-hand');
    carIn(barn, { name: 'Later' });
    const copy = new Database(file, { readonly: true });
    expect(copy.prepare('select name from cars').pluck().all()).toEqual(['Merle Tourer']);
    copy.close();
    expect(readdirSync(backups)).toEqual([expect.stringMatching(/-by-hand\.db$/)]);
  });
});

describe('a database of the release before returns to the road', () => {
  const leftBehind = () => {
    const { store, barn, carId } = filled();
    const layUpId = layUpIn(barn, carId);
    return { dataDir: asLeftBefore(store, 'add-revivals'), barn, carId, layUpId, store };
  };

  it('has neither their tables nor the money of its collection', () => {
    const old = new Database(join(leftBehind().dataDir, 'standstill.db'), { readonly: true });
    const tables = old.prepare("select name from sqlite_master where type = 'table'").pluck().all();
    expect(tables).toContain('lay_ups');
    for (const table of ['revivals', 'revival_entries', 'told_of_revivals', 'walkrounds', 'guest_links'])
      expect(tables).not.toContain(table);
    expect(old.pragma('table_info(collections)')).not.toContainEqual(expect.objectContaining({ name: 'currency' }));
    old.close();
  });

  it('opened, keeps everything; its cars are ours and its money is dollars at common rates', () => {
    const { dataDir, barn, carId, store: full } = leftBehind();
    const store = open(dataDir);
    expect(carOf({ ...barn, store }, carId)).toEqual(carOf({ ...barn, store: full }, carId));
    expect(carOf({ ...barn, store }, carId).car.ours).toBe(true);
    expect(allCollections(store)[0]).toMatchObject({ currency: 'USD', perDollar: 1, laborLow: 90, laborHigh: 150 });
    expect(readdirSync(join(dataDir, 'backups'))).toEqual([expect.stringMatching(/-before-\d{4}_add-revivals\.db$/)]);
    expect(pragma(store, 'foreign_key_check')).toBeUndefined();
  });
});
