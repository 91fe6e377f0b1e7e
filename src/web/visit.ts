/** One request: whose it is, which collection it sees, and on which day. The clock is read here, once. */
import type { Context } from 'hono';
import { getCookie } from 'hono/cookie';
import { createMiddleware } from 'hono/factory';
import { z } from 'zod';
import type { Acting } from '../acts/add-car.ts';
import { todayIn } from '../clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { Site } from '../links.ts';
import type { Log } from '../log.ts';
import type { DeliveryResult } from '../mail/deliver.ts';
import { failedLetters, lastFinishedSweep } from '../store/letters.ts';
import type { Store } from '../store/open.ts';
import { allCollections, type Collection, type Member, membersOf } from '../store/people.ts';

export interface Surroundings {
  store: Store;
  site: Site;
  log: Log;
  now(): Date;
  deliver(): Promise<DeliveryResult>;
}

export interface Visit {
  site: Site;
  /** Path below the base, for the form that changes the day. */
  path: string;
  collection: Collection;
  collections: Collection[];
  person: Member;
  members: Member[];
  /** The collection's own today, and the day the page is seen as on. */
  today: CivilDate;
  on: CivilDate;
  now: string;
  failed: number;
  lastSweep: string | null;
}

export type Env = { Variables: { around: Surroundings; visit: Visit } };
export type Ctx = Context<Env>;

/** Cookies that say which collection and person this browser acts for, until sign-in does. */
export const COOKIES = { collection: 'collection', person: 'person' } as const;

const ON = z.iso.date();

/** Thrown for `on=` that is no day. */
export class BadDay extends Error {}

export const visiting = (around: Surroundings) =>
  createMiddleware<Env>(async (c, next) => {
    const now = around.now();
    const collections = allCollections(around.store);
    const wanted = c.req.query('collection') ?? getCookie(c, COOKIES.collection);
    const collection = collections.find(({ id }) => id === wanted) ?? collections[0];
    if (!collection) throw new Error('The store holds no collection');
    const members = membersOf(around.store, collection.id);
    const person = members.find(({ id }) => id === getCookie(c, COOKIES.person)) ?? members[0];
    if (!person) throw new Error(`Collection ${collection.id} has no member`);
    const today = todayIn(collection.timeZone, now);
    const visit: Visit = {
      site: around.site,
      path: c.req.path.slice(around.site.base.length) || '/',
      collection,
      collections,
      person,
      members,
      today,
      on: today,
      now: now.toISOString(),
      failed: failedLetters(around.store, collection.id),
      lastSweep: lastFinishedSweep(around.store, collection.id),
    };
    c.set('around', around);
    // Set before the day is read: a day that is none is answered on a page, too.
    c.set('visit', visit);
    visit.on = dayAsked(c.req.query('on')) ?? today;
    await next();
  });

const dayAsked = (text: string | undefined): CivilDate | null => {
  if (!text) return null;
  const day = ON.safeParse(text);
  if (!day.success) throw new BadDay(`“${text}” is no day. Write on= as year-month-day, such as 2027-04-01.`);
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
