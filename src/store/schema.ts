/**
 * The tables. Ids are made by the app (UUIDv7); every key of a collection's data leads with `collection_id`.
 * Civil dates are YYYY-MM-DD text, instants are UTC ISO text, distances are km, lists are JSON text.
 */
import { sql } from 'drizzle-orm';
import { foreignKey, index, integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Place } from '../ageing/place.ts';
import type { Clock } from '../catalogue/clock.ts';
import type { Severity } from '../catalogue/kind.ts';
import type { Unit } from '../catalogue/units.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { DateOrder } from '../dates/typed-point.ts';
import type { Answers, Claim, Evidence, Override } from '../findings/facts.ts';

export const day = (name: string) => text(name).$type<CivilDate>();

export const people = sqliteTable('people', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  /** Where letters go; null: nowhere yet. */
  email: text('email'),
  dateOrder: text('date_order').$type<DateOrder>().notNull(),
});

export const collections = sqliteTable('collections', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  timeZone: text('time_zone').notNull(),
  /** ISO 4217, what parts worth one US dollar cost in it, and a workshop's hour from low to high. */
  currency: text('currency').notNull().default('USD'),
  perDollar: real('per_dollar').notNull().default(1),
  laborLow: real('labor_low').notNull().default(90),
  laborHigh: real('labor_high').notNull().default(150),
});

export const memberships = sqliteTable(
  'memberships',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    personId: text('person_id')
      .notNull()
      .references(() => people.id),
    /** Whether this person gets the collection's letters. */
    letters: integer('letters', { mode: 'boolean' }).notNull(),
    /** Hour of the day, 0-23, from which the day's letter is written; null: the server's own. */
    hour: integer('hour'),
    /** Cars and severities no letter to this person speaks of. */
    notCars: text('not_cars', { mode: 'json' }).$type<string[]>().notNull().default([]),
    notSeverities: text('not_severities', { mode: 'json' }).$type<Severity[]>().notNull().default([]),
    /** Days after which an unanswered safety item is told again; 0: never. */
    repeatDays: integer('repeat_days').notNull().default(30),
    /** First and last day of the quiet season, MM-DD; null: none. */
    quietFrom: text('quiet_from'),
    quietTo: text('quiet_to'),
    /** Month, 1-12, whose first letter shows the whole collection; null: none. */
    yearlyMonth: integer('yearly_month').default(1),
    /** Day on which this person stopped all letters by the link in one. */
    stoppedOn: day('stopped_on'),
    /** Addresses that get what the mail says: plain text by POST, a signed document by POST with its secret. */
    pushUrl: text('push_url'),
    webhookUrl: text('webhook_url'),
    webhookSecret: text('webhook_secret'),
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.personId] })],
);

export const LEFT_HOW = ['sold', 'given away', 'scrapped', 'other'] as const;
export type LeftHow = (typeof LEFT_HOW)[number];

export const cars = sqliteTable(
  'cars',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    id: text('id').notNull(),
    name: text('name').notNull(),
    /** Build date as typed, its EDTF and its range. */
    builtTyped: text('built_typed').notNull(),
    builtEdtf: text('built_edtf'),
    builtFrom: day('built_from'),
    builtTo: day('built_to'),
    traits: text('traits', { mode: 'json' }).$type<string[]>().notNull(),
    note: text('note').notNull(),
    addedOn: day('added_on').notNull(),
    /** False: one that was looked at, and is not in the collection; no letter speaks of it. */
    ours: integer('ours', { mode: 'boolean' }).notNull().default(true),
    /** Day on which it left the collection, and how: its history stays, letters fall silent. */
    leftOn: day('left_on'),
    leftHow: text('left_how').$type<LeftHow>(),
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.id] })],
);

export const odometer = sqliteTable(
  'odometer',
  {
    collectionId: text('collection_id').notNull(),
    carId: text('car_id').notNull(),
    day: day('day').notNull(),
    km: integer('km').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.carId, table.day] }),
    foreignKey({ columns: [table.collectionId, table.carId], foreignColumns: [cars.collectionId, cars.id] }),
  ],
);

export const parts = sqliteTable(
  'parts',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    carId: text('car_id').notNull(),
    kind: text('kind').notNull(),
    position: text('position'),
    note: text('note').notNull(),
    openedOn: day('opened_on').notNull(),
    /** A replaced part is closed, never deleted. */
    closedOn: day('closed_on'),
    closedWhy: text('closed_why'),
    replaces: text('replaces'),
    /** What it is or holds, as its models ask: grade, capacity, handbook figures. */
    details: text('details', { mode: 'json' }).$type<Answers>().notNull().default({}),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.carId], foreignColumns: [cars.collectionId, cars.id] }),
    // The car sheet and the sweep read a car's parts together; its history, the closed ones.
    index('parts_of_car').on(table.collectionId, table.carId, table.id),
  ],
);

export const claims = sqliteTable(
  'claims',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    partId: text('part_id').notNull(),
    clock: text('clock').$type<Clock>().notNull(),
    said: text('said').$type<Claim['said']>().notNull(),
    typed: text('typed').notNull(),
    edtf: text('edtf'),
    from: day('from_day'),
    to: day('to_day'),
    evidence: text('evidence').$type<Evidence>().notNull(),
    km: integer('km'),
    note: text('note').notNull(),
    recordedOn: day('recorded_on').notNull(),
    recordedBy: text('recorded_by').references(() => people.id),
    /** A claim that was a slip is withdrawn, not deleted. */
    withdrawnOn: day('withdrawn_on'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.partId], foreignColumns: [parts.collectionId, parts.id] }),
    index('claims_of_part').on(table.collectionId, table.partId).where(sql`withdrawn_on is null`),
  ],
);

/** Numbers read off a part, in the unit of its gauge; what was typed is kept beside. */
export const readings = sqliteTable(
  'readings',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    partId: text('part_id').notNull(),
    gauge: text('gauge').notNull(),
    day: day('day').notNull(),
    value: real('value').notNull(),
    typed: text('typed').notNull(),
    unit: text('unit').$type<Unit>().notNull(),
    /** Temperature of what was read, °C, where it was taken. */
    warmth: real('warmth'),
    instrument: text('instrument').notNull(),
    note: text('note').notNull(),
    recordedOn: day('recorded_on').notNull(),
    recordedBy: text('recorded_by').references(() => people.id),
    /** A reading that was a slip is withdrawn, not deleted. */
    withdrawnOn: day('withdrawn_on'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.partId], foreignColumns: [parts.collectionId, parts.id] }),
    index('readings_of_part').on(table.collectionId, table.partId).where(sql`withdrawn_on is null`),
  ],
);

/** Where cars stand, with the few numbers its climate is told from. Temperatures in °C, humidity in %. */
export const places = sqliteTable(
  'places',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    id: text('id').notNull(),
    name: text('name').notNull(),
    winterLow: real('winter_low').notNull(),
    summerHigh: real('summer_high').notNull(),
    air: text('air').$type<Place['air']>().notNull(),
    shelter: text('shelter').$type<Place['shelter']>().notNull(),
    humidity: real('humidity'),
    heatedTo: real('heated_to'),
    hemisphere: text('hemisphere').$type<Place['hemisphere']>().notNull(),
    months: text('months', { mode: 'json' }).$type<(number | null)[]>().notNull(),
    note: text('note').notNull(),
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.id] })],
);

/** The place a car stands in; a car without a row stands nobody has said where. */
export const carPlaces = sqliteTable(
  'car_places',
  {
    collectionId: text('collection_id').notNull(),
    carId: text('car_id').notNull(),
    placeId: text('place_id').notNull(),
    /** Day it was put there, or the place was last told anew. */
    since: day('since').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.carId] }),
    foreignKey({ columns: [table.collectionId, table.carId], foreignColumns: [cars.collectionId, cars.id] }),
    foreignKey({ columns: [table.collectionId, table.placeId], foreignColumns: [places.collectionId, places.id] }),
  ],
);

export const overrides = sqliteTable(
  'overrides',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    id: text('id').notNull(),
    /** Null: for the whole collection. */
    carId: text('car_id'),
    kind: text('kind').notNull(),
    authority: text('authority').$type<Override['authority']>().notNull(),
    lookFrom: integer('look_from'),
    replaceBy: integer('replace_by'),
    replaceByKm: integer('replace_by_km'),
    note: text('note').notNull(),
    setOn: day('set_on').notNull(),
    endedOn: day('ended_on'),
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.id] })],
);
