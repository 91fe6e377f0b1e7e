/** A person’s calendar of a collection: opened by a secret address, made anew whenever it is read. */
import { createHash, randomBytes } from 'node:crypto';
import { todayIn } from '../clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import { calendarText } from '../mail/calendar.ts';
import { type CalendarEvent, limitsOf, revivalEvents, stayEvents } from '../notices/calendar.ts';
import { isSilent } from '../plans/standing.ts';
import { type FeedRow, feedBySecret, putFeed, showEvents } from '../store/feeds.ts';
import type { Store } from '../store/open.ts';
import { type Collection, findCollection } from '../store/people.ts';
import { eachCarReckoned } from './reckon.ts';

const SECRET_BYTES = 24;
const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Answers the secret: it is shown once, and only its hash is kept. A secret there was before leads nowhere any more. */
export const openFeed = (
  store: Store,
  { collectionId, personId, scopes }: Pick<FeedRow, 'collectionId' | 'personId' | 'scopes'>,
  now: string,
): string => {
  const secret = randomBytes(SECRET_BYTES).toString('base64url');
  putFeed(store, { collectionId, personId, secretHash: hashOf(secret), scopes, madeAt: now });
  return secret;
};

export const feedBehind = (store: Store, secret: string): FeedRow | undefined => feedBySecret(store, hashOf(secret));

/** All events of a collection as on a day. */
const eventsOf = (store: Store, collection: Collection, on: CivilDate): CalendarEvent[] =>
  [...eachCarReckoned(store, collection, on)].flatMap(({ name, findings, stay, back }) => {
    const stands = back !== null || (stay !== null && isSilent(stay.view));
    return [
      ...limitsOf({ name, stands }, findings, on),
      ...(stay ? stayEvents(name, stay.view) : []),
      ...(back ? revivalEvents(name, back.plan) : []),
    ];
  });

/** The calendar as a calendar program reads it; undefined where its collection is gone. */
export const feedText = (
  store: Store,
  feed: FeedRow,
  now: Date,
  href: (path: string) => string,
): string | undefined => {
  const collection = findCollection(store, feed.collectionId);
  if (!collection) return undefined;
  const on = todayIn(collection.timeZone, now);
  const host = new URL(href('/')).hostname;
  const events = eventsOf(store, collection, on)
    .filter(({ scope }) => feed.scopes.includes(scope))
    .map((event) => ({ ...event, uid: `${event.key}@${host}` }));
  const shown = showEvents(
    store,
    collection.id,
    events.map(({ uid, day, title, lines, page }) => ({
      uid,
      fingerprint: hashOf(JSON.stringify([day, title, lines, page])),
    })),
    now.toISOString(),
  );
  return calendarText(
    collection.name,
    events.flatMap((event) => {
      const { sequence, changedAt } = shown.get(event.uid) ?? {};
      return sequence === undefined || !changedAt ? [] : [{ ...event, url: href(event.page), sequence, changedAt }];
    }),
  );
};
