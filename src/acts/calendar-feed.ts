/** A person’s calendar of a collection: opened by a secret address, made anew whenever it is read. */
import { createHash, randomBytes } from 'node:crypto';
import { todayIn } from '../clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import { calendarText } from '../mail/calendar.ts';
import { type CalendarEvent, limitsOf, revivalEvents, stayEvents } from '../notices/calendar.ts';
import { isSilent } from '../plans/standing.ts';
import { revivalPlan } from '../revival/plan.ts';
import { type FeedRow, feedBySecret, putFeed, showEvents } from '../store/feeds.ts';
import { openLayUps } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import { type Collection, findCollection } from '../store/people.ts';
import { placesOf } from '../store/places.ts';
import { openRevivals } from '../store/revivals.ts';
import { eachCar } from '../store/stream.ts';
import { judge } from './judge.ts';
import { ratesOf } from './rates.ts';
import { revivalFacts } from './revivals.ts';
import { viewBeside } from './stays.ts';

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

/** All events of a collection as on a day. A car that can’t be reckoned keeps none of the others out. */
const eventsOf = (store: Store, collection: Collection, on: CivilDate): CalendarEvent[] => {
  const { id: collectionId } = collection;
  const overrides = overridesOf(store, collectionId);
  const layUps = openLayUps(store, collectionId, on);
  const revivals = openRevivals(store, collectionId, on);
  const rates = ratesOf(collection);
  const places = new Map(placesOf(store, collectionId).map((place) => [place.id, place]));
  return [...eachCar(store, collectionId)].flatMap((car) => {
    const { parts, findings } = judge(car, overrides, on);
    const sound = { ...car, parts: [...parts] };
    const layUp = layUps.get(car.facts.id);
    const view = layUp && viewBeside(layUp, sound, { places, overrides }, on).view;
    const back = revivals.get(car.facts.id);
    const plan =
      back && revivalPlan(revivalFacts(back, { car: car.facts, traits: car.traits, parts, overrides, rates }), on);
    const stands = plan !== undefined || (view !== undefined && isSilent(view));
    return [
      ...limitsOf({ name: car.name, stands }, findings, on),
      ...(view ? stayEvents(car.name, view) : []),
      ...(plan ? revivalEvents(car.name, plan) : []),
    ];
  });
};

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
