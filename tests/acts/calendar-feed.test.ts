import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { feedBehind, feedText, openFeed } from '../../src/acts/calendar-feed.ts';
import { datePart, renewPart } from '../../src/acts/parts.ts';
import { siteAt } from '../../src/links.ts';
import { SCOPES, type Scope } from '../../src/notices/calendar.ts';
import { changeScopes, endFeed } from '../../src/store/feeds.ts';
import { changeCollection } from '../../src/store/people.ts';
import { carIn, carOf, claim, date, must, openBarn, partOf } from '../support/cars.ts';
import { layUpIn, winterBarn } from '../support/lay-ups.ts';

const { href } = siteAt(new URL('https://barn.example.org/cars-here'), 3000);
const NOW = '2026-11-25T10:00:00.000Z';

const open = (scopes: readonly Scope[] = SCOPES) => {
  const barn = openBarn();
  const carId = carIn(barn);
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 March 2026'));
  date(barn, carId, 'engine-oil', claim('filled', '1 May 2026'));
  const { collectionId, personId } = barn.acting;
  const secret = openFeed(barn.store, { collectionId, personId, scopes: [...scopes] }, NOW);
  const textAt = (now = NOW): string => {
    const feed = feedBehind(barn.store, secret);
    return (feed && feedText(barn.store, feed, new Date(now), href)) ?? '';
  };
  return { barn, carId, secret, textAt };
};

const read = (text: string): Map<string, ICAL.Event> =>
  new Map(
    new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => {
      const event = new ICAL.Event(one);
      return [event.uid, event];
    }),
  );
const stamp = (event: ICAL.Event | undefined): string =>
  String(event?.component.getFirstPropertyValue('last-modified') ?? '');

describe('a calendar', () => {
  it('holds the days on which parts are due and past, with a link below the base path', () => {
    const { barn, carId, textAt } = open();
    const fluid = partOf(barn, carId, 'brake-fluid-glycol').id;
    const events = read(textAt());
    const due = events.get(`due.${fluid}@barn.example.org`);
    expect(due?.summary).toBe('Merle Tourer: Brake fluid, glycol (DOT 3, 4, 5.1) is due');
    expect(due?.description).toContain(`https://barn.example.org/cars-here/parts/${fluid}`);
    expect(events.get(`past.${fluid}@barn.example.org`)?.startDate.toString()).toBe('2028-03-02');
    expect(textAt()).not.toMatch(/\b(fine|OK|all is well)\b/i);
  });

  it('bears the name of its collection, whatever stands in it, and no line of its own', () => {
    const { barn, textAt } = open();
    const name = 'Barn; shed, \\ and “yard”\r\nX-EVIL:1';
    changeCollection(barn.store, barn.acting.collectionId, { name });
    const calendar = new ICAL.Component(ICAL.parse(textAt()));
    // TEXT of RFC 5545, 3.3.11, which this reader hands out as it is written.
    const written = 'Barn\\; shed\\, \\\\ and “yard” X-EVIL:1';
    for (const by of ['name', 'x-wr-calname']) expect(calendar.getFirstPropertyValue(by)).toBe(written);
    expect(calendar.getFirstPropertyValue('x-evil')).toBeNull();
  });

  it('read twice is the same, byte for byte, on whatever day nothing changed', () => {
    const { textAt } = open();
    const first = textAt();
    expect(textAt()).toBe(first);
    expect(textAt('2026-11-26T18:00:00.000Z')).toBe(first);
  });

  it('keeps the UID when the day moves, raises its sequence by one, and no other', () => {
    const { barn, carId, textAt } = open();
    const before = read(textAt());
    const part = partOf(barn, carId, 'brake-fluid-glycol');
    const older = claim('filled', '1 February 2026', { evidence: 'read on the part' });
    must(datePart(barn.store, barn.acting, { part, car: carOf(barn, carId).facts }, older));
    const later = '2026-12-24T10:00:00.000Z';
    const after = read(textAt(later));
    expect([...after.keys()]).toEqual([...before.keys()]);
    for (const [uid, event] of after) {
      const moved = uid.includes(part.id);
      expect(event.sequence, uid).toBe(moved ? 1 : 0);
      expect(stamp(event).slice(0, 10), uid).toBe(moved ? '2026-12-24' : '2026-11-25');
    }
  });

  it('of a renewed part is that of its successor', () => {
    const { barn, carId, textAt } = open();
    const part = partOf(barn, carId, 'brake-fluid-glycol');
    const claims = [claim('filled', '20 November 2026')];
    must(renewPart(barn.store, barn.acting, { part, car: carOf(barn, carId).facts }, { why: '', note: '', claims }));
    const uids = [...read(textAt()).keys()];
    expect(uids.some((uid) => uid.includes(part.id))).toBe(false);
    expect(uids.some((uid) => uid.includes(partOf(barn, carId, 'brake-fluid-glycol').id))).toBe(true);
  });

  it('leaves out what somebody wrote: notes of cars and parts', () => {
    const { barn, textAt } = open();
    barn.store.$client.exec(
      "update parts set note = 'hidden under the floor'; update cars set note = 'key in the oven'",
    );
    expect(textAt()).not.toMatch(/hidden under|key in the oven/);
  });

  it('of one damaged part still holds the others', () => {
    const { barn, carId, textAt } = open();
    const count = read(textAt()).size;
    barn.store.$client.exec(`update parts set details = '{' where id = '${partOf(barn, carId, 'engine-oil').id}'`);
    expect(read(textAt()).size).toBeLessThan(count);
    expect(textAt()).toContain('Brake fluid');
  });
});

describe('its address', () => {
  it('is kept as a hash only', () => {
    const { barn, secret } = open();
    const rows = JSON.stringify(barn.store.$client.prepare('select * from feeds').all());
    expect(rows).not.toContain(secret);
    expect(secret.length).toBeGreaterThanOrEqual(32);
  });

  it('made anew, the old one leads nowhere; ended, none does', () => {
    const { barn, secret } = open();
    const { collectionId, personId } = barn.acting;
    const next = openFeed(barn.store, { collectionId, personId, scopes: ['limits'] }, NOW);
    expect(feedBehind(barn.store, secret)).toBeUndefined();
    expect(feedBehind(barn.store, next)).toBeDefined();
    endFeed(barn.store, collectionId, personId);
    expect(feedBehind(barn.store, next)).toBeUndefined();
  });
});

describe('a stay', () => {
  const stay = () => {
    const { barn, carId, placeId } = winterBarn();
    const id = layUpIn(barn, carId, { place: placeId });
    const { collectionId, personId } = barn.acting;
    const secret = openFeed(barn.store, { collectionId, personId, scopes: [...SCOPES] }, NOW);
    const on = (scopes: readonly Scope[]): string[] => {
      changeScopes(barn.store, collectionId, personId, [...scopes]);
      const feed = feedBehind(barn.store, secret);
      const text = feed && feedText(barn.store, feed, new Date('2026-09-20T10:00:00Z'), href);
      return [...read(text ?? '').keys()].map((uid) => uid.replace(`.${id}`, '').replace('@barn.example.org', ''));
    };
    return { on };
  };

  it('brings its parking day, its return, its steps and its rounds, each by its scope', () => {
    const { on } = stay();
    const [steps, rounds, limits] = [on(['steps']), on(['rounds']), on(['limits'])];
    expect(steps).toEqual(expect.arrayContaining(['parking', 'return', 'step.park']));
    expect(rounds).toEqual(expect.arrayContaining(['round.1']));
    expect(rounds.every((uid) => uid.startsWith('round.'))).toBe(true);
    expect(limits.every((uid) => /^(look|due|past)\./.test(uid))).toBe(true);
    expect(on([])).toEqual([]);
  });
});
