/** The tables of returns to the road: how a car slept, what was said of it since, and who may see its road check. */
import { foreignKey, index, integer, primaryKey, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { Evidence } from '../findings/facts.ts';
import type { Said } from '../revival/journal.ts';
import type { Hands } from '../revival/revival.ts';
import type { PutAway, Stood, WhyParked } from '../revival/sleep.ts';
import { letters } from './letter-schema.ts';
import { cars, day, people } from './schema.ts';

/** One return of a car, from the first look at it to the road. */
export const revivals = sqliteTable(
  'revivals',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    carId: text('car_id').notNull(),
    begunOn: day('begun_on').notNull(),
    begunBy: text('begun_by').references(() => people.id),
    /** When it last ran, as typed, with its range. */
    lastRanTyped: text('last_ran_typed').notNull(),
    lastRanFrom: day('last_ran_from'),
    lastRanTo: day('last_ran_to'),
    lastRanBy: text('last_ran_by').$type<Evidence>().notNull(),
    why: text('why').$type<WhyParked>().notNull(),
    whyWords: text('why_words').notNull(),
    whyBy: text('why_by').$type<Evidence>().notNull(),
    stood: text('stood', { mode: 'json' }).$type<Stood[]>().notNull(),
    putAway: text('put_away').$type<PutAway>().notNull(),
    putAwayBy: text('put_away_by').$type<Evidence>().notNull(),
    /** What may be spent in all, in the collection's currency; null: nothing agreed. */
    ceiling: real('ceiling'),
    hands: text('hands').$type<Hands>().notNull(),
    note: text('note').notNull(),
    closedOn: day('closed_on'),
    closedHow: text('closed_how').$type<'on the road' | 'given up' | 'not bought'>(),
    closedBy: text('closed_by').references(() => people.id),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.carId], foreignColumns: [cars.collectionId, cars.id] }),
    index('revivals_of_car').on(table.collectionId, table.carId),
  ],
);

/** Its journal: answers, ticks, gates, decisions, runs, surveys, in the order they were said; a slip is withdrawn. */
export const revivalEntries = sqliteTable(
  'revival_entries',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    revivalId: text('revival_id').notNull(),
    day: day('day').notNull(),
    said: text('said', { mode: 'json' }).$type<Said>().notNull(),
    /** Who did it, where that is not who wrote it down. */
    doneBy: text('done_by').notNull(),
    note: text('note').notNull(),
    recordedOn: day('recorded_on').notNull(),
    recordedBy: text('recorded_by').references(() => people.id),
    withdrawnOn: day('withdrawn_on'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({
      columns: [table.collectionId, table.revivalId],
      foreignColumns: [revivals.collectionId, revivals.id],
    }),
    index('entries_of_revival').on(table.collectionId, table.revivalId),
  ],
);

/** What was told of a return to whom, as `said` is of parts. */
export const toldOfRevivals = sqliteTable(
  'told_of_revivals',
  {
    collectionId: text('collection_id').notNull(),
    personId: text('person_id').notNull(),
    revivalId: text('revival_id').notNull(),
    matter: text('matter').notNull(),
    saidOn: day('said_on').notNull(),
    ahead: integer('ahead', { mode: 'boolean' }).notNull(),
    letterId: text('letter_id').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.personId, table.revivalId, table.matter, table.saidOn] }),
    foreignKey({
      columns: [table.collectionId, table.revivalId],
      foreignColumns: [revivals.collectionId, revivals.id],
    }),
    foreignKey({ columns: [table.collectionId, table.letterId], foreignColumns: [letters.collectionId, letters.id] }),
  ],
);

/** What was looked at before a drive: it counts that day only. */
export const walkrounds = sqliteTable(
  'walkrounds',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    carId: text('car_id').notNull(),
    day: day('day').notNull(),
    answers: text('answers', { mode: 'json' }).$type<Record<string, string>>().notNull(),
    by: text('by').notNull(),
    note: text('note').notNull(),
    recordedOn: day('recorded_on').notNull(),
    withdrawnOn: day('withdrawn_on'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.carId], foreignColumns: [cars.collectionId, cars.id] }),
    index('walkrounds_of_car').on(table.collectionId, table.carId, table.day),
  ],
);

/** Links to one car's road check for somebody without an account; only the secret's hash is kept, and each ends. */
export const guestLinks = sqliteTable(
  'guest_links',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    carId: text('car_id').notNull(),
    secretHash: text('secret_hash').notNull(),
    guest: text('guest').notNull(),
    madeAt: text('made_at').notNull(),
    madeBy: text('made_by').references(() => people.id),
    endsAt: text('ends_at').notNull(),
    endedAt: text('ended_at'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    unique('guest_links_secret').on(table.secretHash),
    foreignKey({ columns: [table.collectionId, table.carId], foreignColumns: [cars.collectionId, cars.id] }),
  ],
);
