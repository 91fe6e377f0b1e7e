/** One request: whose it is, which collection it sees, and on which day. The clock is read here, once. */
import type { Context } from 'hono';
import { getCookie } from 'hono/cookie';
import { createMiddleware } from 'hono/factory';
import { z } from 'zod';
import type { Acting } from '../acts/add-car.ts';
import { todayIn } from '../clock.ts';
import { addMonths, type CivilDate } from '../dates/civil.ts';
import type { Site } from '../links.ts';
import type { Log } from '../log.ts';
import type { DeliveryResult } from '../mail/deliver.ts';
import { failedLetters } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import { allCollections, type Collection, type Member, membersOf } from '../store/people.ts';
import { isBad, JOBS, type Job, lastGoodSweep, runsOf } from '../store/runs.ts';

export interface Surroundings {
  store: Store;
  site: Site;
  log: Log;
  now(): Date;
  deliver(): Promise<DeliveryResult>;
  /** Where backups lie; null for a store in memory. */
  dataDir: string | null;
  /** False: letters by mail are written as files. */
  hasMailServer: boolean;
  /** What opens /metrics; null: nothing does. */
  metricsToken: string | null;
}

export interface Visit {
  site: Site;
  /** Path below the base. */
  path: string;
  /** What a GET asked besides the day: kept when the day changes. */
  query: Readonly<Record<string, string>>;
  /** Where the day can be changed: this page, or after a form was sent, which has no page of its own, the line-up. */
  page: string;
  collection: Collection;
  collections: Collection[];
  person: Member;
  members: Member[];
  /** The collection's own today, and the day the page is seen as on. */
  today: CivilDate;
  on: CivilDate;
  now: string;
  failed: number;
  /** Jobs whose last run went wrong. */
  trouble: readonly Job[];
  lastSweep: string | null;
}

export type Env = { Variables: { around: Surroundings; visit: Visit } };
export type Ctx = Context<Env>;

/** Cookies that say which collection and person this browser acts for, until sign-in does. */
export const COOKIES = { collection: 'collection', person: 'person' } as const;

const ON = z.iso.date();

/** Thrown for `on=` that is no day. */
export class BadDay extends Error {}

/** Thrown for `?collection=` that names none. */
export class NoCollection extends Error {}

/** Days a page can be seen as on: from the first cars to as far ahead as anyone plans, in years. */
const FIRST_DAY = '1885-01-01';
const YEARS_AHEAD = 50;

export const visiting = (around: Surroundings) =>
  createMiddleware<Env>(async (c, next) => {
    const now = around.now();
    const collections = allCollections(around.store);
    const named = c.req.query('collection');
    const wanted = named ?? getCookie(c, COOKIES.collection);
    const found = collections.find(({ id }) => id === wanted);
    if (named && !found) throw new NoCollection(`There is no collection “${named}”.`);
    const collection = found ?? collections[0];
    if (!collection) throw new Error('The store holds no collection');
    const members = membersOf(around.store, collection.id);
    const person = members.find(({ id }) => id === getCookie(c, COOKIES.person)) ?? members[0];
    if (!person) throw new Error(`Collection ${collection.id} has no member`);
    const today = todayIn(collection.timeZone, now);
    const path = c.req.path.slice(around.site.base.length) || '/';
    const visit: Visit = {
      site: around.site,
      path,
      query: c.req.method === 'GET' ? asked(c) : {},
      page: c.req.method === 'GET' ? path : '/',
      collection,
      collections,
      person,
      members,
      today,
      on: today,
      now: now.toISOString(),
      failed: failedLetters(around.store, collection.id),
      trouble: troubleOf(around.store),
      lastSweep: lastGoodSweep(around.store, collection.id),
    };
    c.set('around', around);
    // Set before the day is read: a day that is none is answered on a page, too.
    c.set('visit', visit);
    visit.on = dayAsked(c.req.query('on'), today) ?? today;
    await next();
  });

const troubleOf = (store: Store): Job[] => {
  const runs = runsOf(store);
  return JOBS.filter((job) => isBad(runs[job]));
};

const asked = (c: Context): Record<string, string> => {
  const { on, ...query } = c.req.query();
  return query;
};

const dayAsked = (text: string | undefined, today: CivilDate): CivilDate | null => {
  if (!text) return null;
  const day = ON.safeParse(text);
  if (!day.success) throw new BadDay(`“${text}” is no day. Write on= as year-month-day, such as 2027-04-01.`);
  if (text < FIRST_DAY || text > addMonths(today, YEARS_AHEAD * 12))
    throw new BadDay(`“${text}” is out of reach. Take a day from 1885 to ${YEARS_AHEAD} years from now.`);
  return day.data as CivilDate;
};

/** Address of a page in this visit: below the base, and still on the day it is seen as on. */
export const at = ({ site, on, today }: Visit, path: string): string => {
  if (on === today) return `${site.base}${path}`;
  const [page, anchor] = path.split('#');
  return `${site.base}${page}${page?.includes('?') ? '&' : '?'}on=${on}${anchor ? `#${anchor}` : ''}`;
};

export const actingIn = ({ collection, person, on }: Visit): Acting => ({
  collectionId: collection.id,
  personId: person.id,
  order: person.dateOrder,
  today: on,
});
