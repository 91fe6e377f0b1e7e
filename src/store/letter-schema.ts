/** Tables of what is told to people, how it goes out, and what the server does by itself. */
import { sql } from 'drizzle-orm';
import { foreignKey, index, integer, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { AnswerWord } from '../notices/answers.ts';
import type { Scope } from '../notices/calendar.ts';
import type { Stage } from '../notices/owed.ts';
import { collections, day, parts, people } from './schema.ts';

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
    kind: text('kind').$type<LetterKind>().notNull(),
    /** By which door it goes; a copy by another door names the letter it repeats. */
    door: text('door').$type<Door>().notNull().default('mail'),
    copyOf: text('copy_of'),
    day: day('day').notNull(),
    /** Written as on a day that had not come yet. */
    ahead: integer('ahead', { mode: 'boolean' }).notNull().default(false),
    recipient: text('recipient').notNull(),
    subject: text('subject').notNull(),
    text: text('text').notNull(),
    html: text('html').notNull(),
    messageId: text('message_id').notNull(),
    state: text('state').$type<LetterState>().notNull(),
    why: text('why').$type<GivenUp | CalledOff>(),
    /** A try ended without an answer: it may have arrived, so it is never changed and goes out again as the same message. */
    inDoubt: integer('in_doubt', { mode: 'boolean' }).notNull().default(false),
    /** When somebody saw that it was given up; null: nobody has. */
    seenAt: text('seen_at'),
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
export type LetterKind = 'digest' | 'yearly' | 'plan' | 'test';
/** Why a letter was given up, or called off. */
export type GivenUp = 'refused' | 'tries used up';
export type CalledOff = 'stopped' | 'letters off' | 'no address' | 'no news' | 'its car' | 'over' | 'its letter';
export type LetterState = 'waiting' | 'sending' | 'sent' | 'failed' | 'cancelled';
export type Door = 'mail' | 'push' | 'webhook';

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

/** What somebody answered to a letter about a part. */
export const answers = sqliteTable(
  'answers',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    partId: text('part_id').notNull(),
    personId: text('person_id')
      .notNull()
      .references(() => people.id),
    letterId: text('letter_id').notNull(),
    word: text('word').$type<AnswerWord>().notNull(),
    /** The last day of waiting for parts. */
    until: day('until'),
    answeredOn: day('answered_on').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.partId], foreignColumns: [parts.collectionId, parts.id] }),
    foreignKey({ columns: [table.collectionId, table.letterId], foreignColumns: [letters.collectionId, letters.id] }),
    index('answers_to_part').on(table.collectionId, table.partId),
  ],
);

/** Whose collection was looked over on which day, so that a missed hour is made up and a day is not swept twice. */
export const mornings = sqliteTable(
  'mornings',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    personId: text('person_id')
      .notNull()
      .references(() => people.id),
    day: day('day').notNull(),
    finishedAt: text('finished_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.personId, table.day] })],
);

/** A person's calendar of a collection, read by a secret address; only the secret's hash is kept. */
export const feeds = sqliteTable(
  'feeds',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    personId: text('person_id')
      .notNull()
      .references(() => people.id),
    secretHash: text('secret_hash').notNull(),
    scopes: text('scopes', { mode: 'json' }).$type<Scope[]>().notNull(),
    madeAt: text('made_at').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.personId] }),
    unique('feeds_secret').on(table.secretHash),
  ],
);

/** What calendars were shown of each event, so that a change raises its sequence and nothing else does. */
export const calendarEvents = sqliteTable(
  'calendar_events',
  {
    collectionId: text('collection_id')
      .notNull()
      .references(() => collections.id),
    uid: text('uid').notNull(),
    fingerprint: text('fingerprint').notNull(),
    sequence: integer('sequence').notNull(),
    changedAt: text('changed_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.collectionId, table.uid] })],
);

/** The last good and the last bad run of each job, or of a job for one collection. */
export const runs = sqliteTable('runs', {
  job: text('job').primaryKey(),
  goodAt: text('good_at'),
  badAt: text('bad_at'),
  /** What went wrong in the last run; null where it was good. */
  trouble: text('trouble'),
});

/** Keys this server made for itself. */
export const keys = sqliteTable('keys', {
  name: text('name').primaryKey(),
  value: text('value').notNull(),
});
