/**
 * The tables. Ids are made by the app (UUIDv7); every key of a collection's data leads with `collection_id`.
 * Civil dates are YYYY-MM-DD text, instants are UTC ISO text, distances are km, lists are JSON text.
 */
import { sql } from 'drizzle-orm';
import { foreignKey, index, integer, primaryKey, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { Place } from '../ageing/place.ts';
import type { Clock } from '../catalogue/clock.ts';
import type { Unit } from '../catalogue/units.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { DateOrder } from '../dates/typed-point.ts';
import type { Answers, Claim, Evidence, Override } from '../findings/facts.ts';
import type { Stage } from '../notices/owed.ts';

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
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.personId] })],
);

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

/** The outbox: letters are written here in the same transaction as what they say, and sent from here. */
export const letters = sqliteTable(
  'letters',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    id: text('id').notNull(),
    personId: text('person_id')
      .notNull()
      .references(() => people.id),
    kind: text('kind').$type<'digest' | 'plan'>().notNull(),
    day: day('day').notNull(),
    recipient: text('recipient').notNull(),
    subject: text('subject').notNull(),
    text: text('text').notNull(),
    html: text('html').notNull(),
    messageId: text('message_id').notNull(),
    state: text('state').$type<LetterState>().notNull(),
    tries: integer('tries').notNull(),
    nextTryAt: text('next_try_at').notNull(),
    leaseUntil: text('lease_until'),
    writtenAt: text('written_at').notNull(),
    sentAt: text('sent_at'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    unique('letters_message').on(table.messageId),
    // Delivery asks for what is waiting or whose lease ran out.
    index('letters_waiting').on(table.nextTryAt).where(sql`state in ('waiting', 'sending')`),
  ],
);
export type LetterState = 'waiting' | 'sending' | 'sent' | 'failed';

export const attempts = sqliteTable(
  'attempts',
  {
    collectionId: text('collection_id').notNull(),
    letterId: text('letter_id').notNull(),
    at: text('at').notNull(),
    ok: integer('ok', { mode: 'boolean' }).notNull(),
    /** What the mail server (or the file system) answered. */
    answer: text('answer').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.letterId, table.at] }),
    foreignKey({ columns: [table.collectionId, table.letterId], foreignColumns: [letters.collectionId, letters.id] }),
  ],
);

/** What has been announced to whom, so that nothing is said twice. */
export const said = sqliteTable(
  'said',
  {
    collectionId: text('collection_id').notNull(),
    personId: text('person_id').notNull(),
    partId: text('part_id').notNull(),
    stage: text('stage').$type<Stage>().notNull(),
    saidOn: day('said_on').notNull(),
    /** Said as on a day that had not come yet: it counts from that day on, and silences nothing before. */
    ahead: integer('ahead', { mode: 'boolean' }).notNull(),
    letterId: text('letter_id').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.personId, table.partId, table.stage, table.saidOn] }),
    foreignKey({ columns: [table.collectionId, table.partId], foreignColumns: [parts.collectionId, parts.id] }),
    foreignKey({ columns: [table.collectionId, table.letterId], foreignColumns: [letters.collectionId, letters.id] }),
  ],
);

/** The days on which a collection was swept, so that a missed hour is made up and a day is not swept twice. */
export const sweeps = sqliteTable(
  'sweeps',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    day: day('day').notNull(),
    finishedAt: text('finished_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.day] })],
);
