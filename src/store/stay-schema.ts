/** The tables of lay-ups: stays, what was ticked, own steps, rounds, what was told of them. As `schema.ts` has it. */
import { foreignKey, index, integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Outline } from '../plans/changes.ts';
import type { PlanName, Tick } from '../plans/plan.ts';
import type { Circumstance, NumberKey, Papers } from '../plans/stay.ts';
import { letters } from './letter-schema.ts';
import { cars, day, people } from './schema.ts';

/** One stay of a car, from its plan to its return. */
export const layUps = sqliteTable(
  'lay_ups',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    carId: text('car_id').notNull(),
    parkedOn: day('parked_on').notNull(),
    /** Null: open. */
    returnOn: day('return_on'),
    placeId: text('place_id'),
    /** Who looks in; null: whoever gets the collection's letters. */
    visitorId: text('visitor_id').references(() => people.id),
    phone: text('phone').notNull(),
    circumstances: text('circumstances', { mode: 'json' }).$type<Circumstance[]>().notNull(),
    choices: text('choices', { mode: 'json' }).$type<Record<string, string>>().notNull(),
    numbers: text('numbers', { mode: 'json' }).$type<Partial<Record<NumberKey, number>>>().notNull(),
    papers: text('papers', { mode: 'json' }).$type<Papers>().notNull(),
    note: text('note').notNull(),
    /** The next lay-up can begin like this one. */
    isTemplate: integer('is_template', { mode: 'boolean' }).notNull(),
    /** The plan as it was last looked at, to say what changed since. */
    seen: text('seen', { mode: 'json' }).$type<Outline>().notNull(),
    madeOn: day('made_on').notNull(),
    madeBy: text('made_by').references(() => people.id),
    closedOn: day('closed_on'),
    closedHow: text('closed_how').$type<'back' | 'called off'>(),
    closedBy: text('closed_by').references(() => people.id),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.carId], foreignColumns: [cars.collectionId, cars.id] }),
    index('lay_ups_of_car').on(table.collectionId, table.carId, table.parkedOn),
  ],
);

/** What was said of a step; a tick that was a slip is withdrawn, not deleted. */
export const ticks = sqliteTable(
  'ticks',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    layUpId: text('lay_up_id').notNull(),
    plan: text('plan').$type<PlanName>().notNull(),
    step: text('step').notNull(),
    state: text('state').$type<Tick['state']>().notNull(),
    day: day('day').notNull(),
    note: text('note').notNull(),
    /** Who did it, where that is not who ticked it. */
    doneBy: text('done_by').notNull().default(''),
    cost: real('cost'),
    recordedOn: day('recorded_on').notNull(),
    recordedBy: text('recorded_by').references(() => people.id),
    withdrawnOn: day('withdrawn_on'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.layUpId], foreignColumns: [layUps.collectionId, layUps.id] }),
    index('ticks_of_lay_up').on(table.collectionId, table.layUpId),
  ],
);

/** Steps an owner added to a plan, so many days before the day it counts back from. */
export const ownSteps = sqliteTable(
  'own_steps',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    layUpId: text('lay_up_id').notNull(),
    plan: text('plan').$type<PlanName>().notNull(),
    title: text('title').notNull(),
    days: integer('days').notNull(),
    note: text('note').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.layUpId], foreignColumns: [layUps.collectionId, layUps.id] }),
  ],
);

/** Rounds made while a car stands; its readings lie with the parts. */
export const rounds = sqliteTable(
  'rounds',
  {
    collectionId: text('collection_id').notNull(),
    id: text('id').notNull(),
    layUpId: text('lay_up_id').notNull(),
    day: day('day').notNull(),
    answers: text('answers', { mode: 'json' }).$type<Record<string, string>>().notNull(),
    note: text('note').notNull(),
    recordedOn: day('recorded_on').notNull(),
    recordedBy: text('recorded_by').references(() => people.id),
    withdrawnOn: day('withdrawn_on'),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.id] }),
    foreignKey({ columns: [table.collectionId, table.layUpId], foreignColumns: [layUps.collectionId, layUps.id] }),
    index('rounds_of_lay_up').on(table.collectionId, table.layUpId),
  ],
);

/** What was told of a stay to whom, as `said` is of parts. */
export const toldOfStays = sqliteTable(
  'told_of_stays',
  {
    collectionId: text('collection_id').notNull(),
    personId: text('person_id').notNull(),
    layUpId: text('lay_up_id').notNull(),
    matter: text('matter').notNull(),
    saidOn: day('said_on').notNull(),
    ahead: integer('ahead', { mode: 'boolean' }).notNull(),
    letterId: text('letter_id').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.collectionId, table.personId, table.layUpId, table.matter, table.saidOn] }),
    foreignKey({ columns: [table.collectionId, table.layUpId], foreignColumns: [layUps.collectionId, layUps.id] }),
    foreignKey({ columns: [table.collectionId, table.letterId], foreignColumns: [letters.collectionId, letters.id] }),
  ],
);
