/**
 * If the facts changed before sending, the letter is written from today's facts, or called off and so recorded; and what
 * was not said is said when it is news again.
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type ParsedMail, simpleParser } from 'mailparser';
import { afterEach, describe, expect, it } from 'vitest';
import { comeBack, leaveCollection } from '../../src/acts/leave-collection.ts';
import { renewPart } from '../../src/acts/parts.ts';
import { testLetter } from '../../src/acts/test-letter.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { retirePart } from '../../src/store/cars.ts';
import { seeLetter } from '../../src/store/letters.ts';
import { changeMember, findCollection, type Member, membersOf } from '../../src/store/people.ts';
import { type BadMailServer, openBadMailServer } from '../support/bad-mail-server.ts';
import { carIn, carOf, claim, date, must, partOf } from '../support/cars.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';
import { closeOn, layUpIn, onDayIn, tellOn } from '../support/lay-ups.ts';
import { openListeningPost } from '../support/listening-post.ts';

const open: { server: BadMailServer; here: WakingHouse }[] = [];
const closing: { close(): void }[] = [];
afterEach(async () => {
  for (const { server, here } of open.splice(0)) {
    here.house.close();
    await server.close();
  }
  for (const one of closing.splice(0)) one.close();
});

const MORNING = '2026-06-10T06:30:00Z';
/** A later try of the same day, without a sweep. */
const LATER = '2026-06-10T06:35:00Z';
const NEXT = '2026-06-11T06:30:00Z';
const FLUID = '[Past, safety] Brake fluid, glycol (DOT 3, 4, 5.1)';
const PLUGS = '[Past] Spark plugs';

/** A letter about a brake fluid and plugs waits, for the server was busy when it was written. */
const waiting = async (member: Partial<Omit<Member, 'id'>> = {}) => {
  const server = await openBadMailServer({ code: 451, at: 'mail' });
  const here = openWakingHouse(server, { HOOKS_MAY_BE_PRIVATE: 'true' });
  open.push({ server, here });
  const { barn, house } = here;
  const carId = carIn(barn, { name: 'Merle Tourer' });
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2020'));
  date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
  const { collectionId, personId } = barn.acting;
  const change = (more: Partial<Omit<Member, 'id'>>) => changeMember(house.store, collectionId, personId, more);
  change(member);
  await here.wakeAt(MORNING);
  expect(here.letters()[0]).toMatchObject({ state: 'waiting', subject: '2 past: Merle Tourer' });
  server.behavior = 'take';
  const acting = { ...barn.acting, today: '2026-06-10' as CivilDate };
  const mails = (): Promise<ParsedMail[]> => Promise.all(server.taken.map(({ raw }) => simpleParser(raw)));
  const lines = async () => (await mails()).flatMap(({ text }) => text?.match(/^\[.*/gm) ?? []);
  const renew = (kind: string, filled: string) => {
    const fluid = { part: partOf(barn, carId, kind), car: carOf(barn, carId).facts };
    must(renewPart(barn.store, acting, fluid, { why: 'Renewed.', note: '', claims: [claim('filled', filled)] }));
  };
  const close = (kind: string) =>
    retirePart(barn.store, collectionId, partOf(barn, carId, kind).id, '2026-06-10', 'Not on it.');
  return { ...here, server, acting, carId, change, mails, lines, renew, close };
};

describe('where a letter goes is today’s', () => {
  it('by post where the mail address was taken away meanwhile', async () => {
    const post = await openListeningPost((response) => response.end('thanks'));
    closing.push(post);
    const { change, wakeAt, letters, server } = await waiting();
    change({ email: null, pushUrl: post.url });
    await wakeAt(LATER);
    expect([server.taken.length, post.heard.length]).toEqual([0, 1]);
    expect(letters()).toMatchObject([{ state: 'sent', door: 'push', recipient: post.url }]);
  });

  it('and nowhere for who stopped the letters, were it only a test', async () => {
    const { change, barn, house, wakeAt, letters, server } = await waiting();
    const collection = findCollection(house.store, barn.acting.collectionId);
    const [member] = membersOf(house.store, barn.acting.collectionId);
    const writing = { today: '2026-06-10', now: '2026-06-10T06:31:00.000Z', href: house.site.href } as const;
    if (collection && member) testLetter(house.store, collection, member, writing);
    change({ stoppedOn: '2026-06-10' });
    await wakeAt(LATER);
    expect(letters().map(({ kind, state, why }) => [kind, state, why])).toEqual([
      ['digest', 'cancelled', 'stopped'],
      ['test', 'cancelled', 'stopped'],
    ]);
    expect(server.taken).toHaveLength(0);
  });

  /** The server took the letter and said nothing. */
  const inDoubt = async () => {
    const here = await waiting();
    here.server.behavior = 'cut after DATA';
    await here.wakeAt(LATER);
    expect(here.letters()).toMatchObject([{ state: 'waiting', inDoubt: true }]);
    here.server.behavior = 'take';
    return here;
  };

  it('also of one in doubt, whose words stay', async () => {
    const { change, wakeAt, letters, server } = await inDoubt();
    change({ email: 'ada@new.example.org' });
    await wakeAt('2026-06-10T09:30:00Z');
    expect(letters()).toMatchObject([{ state: 'sent', recipient: 'ada@new.example.org' }]);
    const [first, again] = server.taken;
    expect(again?.messageId).toBe(first?.messageId);
  });

  it('and one in doubt goes no more to who wants none', async () => {
    const { change, wakeAt, letters, server } = await inDoubt();
    change({ letters: false });
    await wakeAt('2026-06-10T09:30:00Z');
    expect(letters()).toMatchObject([{ state: 'cancelled', why: 'letters off' }]);
    expect(server.taken).toHaveLength(1);
  });

  it('by a door that refused a copy for good goes none until somebody has seen that', async () => {
    const post = await openListeningPost((response) => {
      response.writeHead(410).end('gone');
    });
    closing.push(post);
    const { acting, house, letters, change, server, renew, wakeAt } = await waiting({ pushUrl: post.url });
    await wakeAt(LATER);
    expect(server.taken).toHaveLength(1);
    const refused = () => letters().filter(({ door, state }) => door === 'push' && state === 'failed');
    expect(refused()).toHaveLength(1);
    // News of the next years.
    renew('brake-fluid-glycol', '9 June 2024');
    for (const day of ['11', '12', '13']) await wakeAt(`2026-06-${day}T06:30:00Z`);
    expect([server.taken.length > 1, refused().length, post.heard.length]).toEqual([true, 1, 1]);
    seeLetter(house.store, acting.collectionId, refused()[0]?.id ?? '', '2026-06-13T08:00:00Z');
    change({ yearlyMonth: 7 });
    await wakeAt('2026-07-01T06:30:00Z');
    expect(post.heard).toHaveLength(2);
  });
});

describe('If the facts changed before sending, the letter is written from today’s facts: a part', () => {
  it('that was renewed is left out; the rest is told, and the new one when it comes of age', async () => {
    const { renew, wakeAt, letters, lines } = await waiting();
    renew('brake-fluid-glycol', '9 June 2026');
    await wakeAt(LATER);
    expect(await lines()).toEqual([PLUGS]);
    expect(letters()).toMatchObject([{ state: 'sent', subject: '1 past: Merle Tourer', tries: 2 }]);
    await wakeAt('2028-06-12T06:30:00Z');
    expect((await lines()).slice(1)).toEqual([FLUID]);
  });

  it('that was closed is left out', async () => {
    const { close, wakeAt, lines } = await waiting();
    close('spark-plugs');
    await wakeAt(LATER);
    expect(await lines()).toEqual([FLUID]);
  });

  it('that became graver is told as it is by then, and only so', async () => {
    const { barn, server, wakeAt, lines, letters } = await waiting();
    date(barn, carIn(barn, { name: 'Alder Coupe' }), 'brake-fluid-glycol', claim('filled', '11 June 2024'));
    server.behavior = { code: 451, at: 'mail' };
    await wakeAt('2026-06-11T06:30:00Z');
    expect(letters()[0]?.text.match(/^\[.*/gm)).toContain('[Due, safety] Brake fluid, glycol (DOT 3, 4, 5.1)');
    server.behavior = 'take';
    // Before the hour of the day’s sweep: nobody but the delivery looks at the facts.
    await wakeAt('2026-06-12T05:30:00Z');
    expect((await lines()).toSorted()).toEqual([FLUID, FLUID, PLUGS]);
    await wakeAt('2026-06-12T06:30:00Z');
    expect(letters().map(({ state }) => state)).toEqual(['sent']);
  });

  it('that is laid up meanwhile is left out of the letter, which tells of the stay; off it, the part is told of', async () => {
    const { barn, carId, wakeAt, letters, lines, server } = await waiting();
    const on = onDayIn(barn, '2026-06-10');
    const id = layUpIn(on, carId, { parkedOn: '2026-06-10', returnOn: '2026-11-01' });
    tellOn(on, id, '2026-06-10');
    await wakeAt('2026-06-10T11:00:00Z');
    expect(letters().map(({ kind, state, subject }) => [kind, state, /past/.test(subject)])).toEqual([
      ['digest', 'sent', false],
      ['plan', 'sent', false],
    ]);
    expect(await lines()).toEqual([expect.stringMatching(/^\[While it stands\]/)]);
    server.taken.splice(0);
    must(closeOn(onDayIn(barn, '2026-06-20'), id, '2026-06-20', 'called off'));
    await wakeAt('2026-06-21T06:30:00Z');
    expect(await lines()).toEqual([FLUID, PLUGS]);
  });
});

describe('… or called off and so recorded', () => {
  it('where every part of it was closed: no news', async () => {
    const { close, wakeAt, letters, server } = await waiting();
    for (const kind of ['brake-fluid-glycol', 'spark-plugs']) close(kind);
    await wakeAt(LATER);
    expect(server.taken.length).toBe(0);
    expect(letters()).toMatchObject([{ state: 'cancelled', why: 'no news' }]);
  });

  it('where the car left the collection; back again, it is told of', async () => {
    const { barn, acting, carId, wakeAt, letters, server, lines } = await waiting();
    const { car } = carOf(barn, carId);
    must(leaveCollection(barn.store, { ...acting, today: car.addedOn }, car, { how: 'sold', day: car.addedOn }));
    await wakeAt(LATER);
    expect(letters()).toMatchObject([{ state: 'cancelled', why: 'no news' }]);
    comeBack(barn.store, acting, carOf(barn, carId).car);
    await wakeAt(NEXT);
    expect(await lines()).toEqual([FLUID, PLUGS]);
    expect(server.taken).toHaveLength(1);
  });
});

describe('Unsubscribed or deleted between plan and send: not sent, recorded why', () => {
  it.each<[string, Partial<Omit<Member, 'id'>>, string]>([
    ['who stopped the letters by the link in one', { stoppedOn: '2026-06-10' }, 'stopped'],
    ['who stopped them, and has letters off besides', { letters: false, stoppedOn: '2026-06-10' }, 'stopped'],
    ['whose letters were switched off', { letters: false }, 'letters off'],
    ['whose address is gone', { email: null }, 'no address'],
  ])('a person %s gets nothing', async (_, member, why) => {
    const { change, wakeAt, letters, server, lines } = await waiting();
    change(member);
    await wakeAt(LATER);
    expect(server.taken.length).toBe(0);
    expect(letters()).toMatchObject([{ state: 'cancelled', why }]);
    // Nothing of it was told: once there is a way again, all of it is.
    change({ letters: true, stoppedOn: null, email: 'ada@example.org' });
    await wakeAt(NEXT);
    await wakeAt('2026-06-12T06:30:00Z');
    expect(await lines()).toEqual([FLUID, PLUGS]);
  });

  it('a person who is no member any more gets nothing', async () => {
    const { house, wakeAt, letters, server } = await waiting();
    house.store.$client.exec('delete from memberships');
    await wakeAt(LATER);
    await wakeAt(NEXT);
    expect([server.taken.length, letters().map(({ state, why }) => [state, why])]).toEqual([
      0,
      [['cancelled', 'no address']],
    ]);
  });

  it('nor by another door: the copy is called off with its letter', async () => {
    const asked: string[] = [];
    let status = 503;
    const door = createServer((request, response) => {
      request.resume().on('end', () => {
        asked.push(request.url ?? '');
        response.writeHead(status).end();
      });
    });
    await new Promise<void>((listening) => door.listen(0, '127.0.0.1', listening));
    closing.push(door);
    const pushUrl = `http://127.0.0.1:${(door.address() as AddressInfo).port}/ada`;
    const { change, close, wakeAt, letters, server } = await waiting({ pushUrl });
    expect(letters().map((letter) => [letter.door, letter.state])).toEqual([
      ['mail', 'waiting'],
      ['push', 'waiting'],
    ]);
    status = 204;
    for (const kind of ['brake-fluid-glycol', 'spark-plugs']) close(kind);
    await wakeAt(LATER);
    expect(letters().map(({ state, why }) => [state, why])).toEqual([
      ['cancelled', 'no news'],
      ['cancelled', 'its letter'],
    ]);
    change({ pushUrl: null });
    expect([server.taken.length, asked.length]).toEqual([0, 1]);
  });
});

describe('what a person wants to hear, changed before sending', () => {
  it('of another address: it goes there', async () => {
    const { change, wakeAt, mails, letters } = await waiting();
    change({ email: 'ada@new.example.org' });
    await wakeAt(LATER);
    expect(await mails()).toMatchObject([{ to: { text: 'ada@new.example.org' } }]);
    expect(letters()).toMatchObject([{ state: 'sent', recipient: 'ada@new.example.org' }]);
  });

  it('not this car: called off, and told when it is wanted again', async () => {
    const { change, carId, wakeAt, letters, server, lines } = await waiting();
    change({ notCars: [carId] });
    await wakeAt(LATER);
    expect(letters()).toMatchObject([{ state: 'cancelled', why: 'no news' }]);
    expect(server.taken.length).toBe(0);
    change({ notCars: [] });
    await wakeAt(NEXT);
    expect(await lines()).toEqual([FLUID, PLUGS]);
  });

  it.each<[string, Partial<Omit<Member, 'id'>>, Partial<Omit<Member, 'id'>>]>([
    ['not what strands', { notSeverities: ['strands'] }, { notSeverities: [] }],
    ['quiet from now on', { quietFrom: '06-10', quietTo: '06-30' }, { quietFrom: null, quietTo: null }],
  ])('%s: the rest goes, and what was kept back comes when it may', async (_, narrow, wide) => {
    const { change, wakeAt, lines } = await waiting();
    change(narrow);
    await wakeAt(LATER);
    expect(await lines()).toEqual([FLUID]);
    await wakeAt(NEXT);
    expect(await lines()).toEqual([FLUID]);
    change(wide);
    await wakeAt('2026-06-12T06:30:00Z');
    expect(await lines()).toEqual([FLUID, PLUGS]);
  });
});

describe('a plan', () => {
  /** It waits, and was tried in vain. */
  const planned = async () => {
    const here = await waiting();
    const { barn, carId, server, wakeAt, letters } = here;
    await wakeAt(LATER);
    server.taken.splice(0);
    const on = onDayIn(barn, '2026-06-10');
    const id = layUpIn(on, carId, { parkedOn: '2026-06-14', returnOn: '2026-11-01' });
    expect(tellOn(on, id, '2026-06-10')).toBe(1);
    server.behavior = { code: 451, at: 'mail' };
    await wakeAt('2026-06-10T11:00:00Z');
    server.behavior = 'take';
    const plan = () => letters().find(({ kind }) => kind === 'plan');
    expect(plan()).toMatchObject({ state: 'waiting' });
    const plans = async () =>
      (await here.mails()).filter(({ messageId }) => messageId?.startsWith('<plan.')).map(({ subject }) => subject);
    return { ...here, id, on, plan, plans };
  };

  it('of a stay that was closed is called off', async () => {
    const { on, id, wakeAt, plan, plans } = await planned();
    must(closeOn(on, id, '2026-06-10', 'called off'));
    await wakeAt('2026-06-10T20:00:00Z');
    expect(plan()).toMatchObject({ state: 'cancelled', why: 'over' });
    await wakeAt(NEXT);
    expect(await plans()).toEqual([]);
  });

  it('whose car has left is called off', async () => {
    const { barn, acting, carId, wakeAt, plan, plans } = await planned();
    const { car } = carOf(barn, carId);
    must(leaveCollection(barn.store, { ...acting, today: car.addedOn }, car, { how: 'sold', day: car.addedOn }));
    await wakeAt('2026-06-10T20:00:00Z');
    await wakeAt(NEXT);
    expect(await plans()).toEqual([]);
    expect(plan()).toMatchObject({ state: 'cancelled', why: 'its car' });
  });

  it('of a car this person wants no word of any more is called off', async () => {
    const { change, carId, wakeAt, plan, plans } = await planned();
    change({ notCars: [carId] });
    await wakeAt('2026-06-10T20:00:00Z');
    await wakeAt(NEXT);
    expect(await plans()).toEqual([]);
    expect(plan()?.state).toBe('cancelled');
  });

  it('to somebody whose letters were switched off is called off, and comes when they are on again', async () => {
    const { change, wakeAt, plan, plans } = await planned();
    change({ letters: false });
    await wakeAt('2026-06-10T20:00:00Z');
    expect(plan()).toMatchObject({ state: 'cancelled', why: 'letters off' });
    change({ letters: true });
    await wakeAt(NEXT);
    expect(await plans()).toHaveLength(1);
  });
});
