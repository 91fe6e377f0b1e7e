/** Between the sweep and the delivery the facts change: the letter is written from today's, or called off with a reason. */
import { type ParsedMail, simpleParser } from 'mailparser';
import { afterEach, describe, expect, it } from 'vitest';
import { leaveCollection } from '../../src/acts/leave-collection.ts';
import { renewPart } from '../../src/acts/parts.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { retirePart } from '../../src/store/cars.ts';
import { changeMember, type Member } from '../../src/store/people.ts';
import { type BadMailServer, openBadMailServer } from '../support/bad-mail-server.ts';
import { carIn, carOf, claim, date, must, partOf } from '../support/cars.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';
import { closeOn, layUpIn, onDayIn, tellOn } from '../support/lay-ups.ts';

const open: { server: BadMailServer; here: WakingHouse }[] = [];
afterEach(async () => {
  for (const { server, here } of open.splice(0)) {
    here.house.close();
    await server.close();
  }
});

const MORNING = '2026-06-10T06:30:00Z';
const NEXT = '2026-06-11T06:30:00Z';

/** A letter about a brake fluid and plugs waits, for the server was busy when it was written. */
const waiting = async () => {
  const server = await openBadMailServer({ code: 451, at: 'mail' });
  const here = openWakingHouse(server);
  open.push({ server, here });
  const { barn, house } = here;
  const carId = carIn(barn, { name: 'Merle Tourer' });
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2020'));
  date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
  await here.wakeAt(MORNING);
  expect(here.letters()).toMatchObject([{ state: 'waiting', subject: '2 past: Merle Tourer' }]);
  server.behavior = 'take';
  const acting = { ...barn.acting, today: '2026-06-10' as CivilDate };
  const { collectionId, personId } = acting;
  const change = (member: Partial<Omit<Member, 'id'>>) => changeMember(house.store, collectionId, personId, member);
  const mails = (): Promise<ParsedMail[]> => Promise.all(server.taken.map(({ raw }) => simpleParser(raw)));
  const lines = async () => (await mails()).map(({ text }) => text?.match(/^\[.*/gm) ?? []);
  return { ...here, server, acting, carId, change, mails, lines };
};

describe('a part', () => {
  it('renewed meanwhile is left out of the letter; the rest is told', async () => {
    const { barn, acting, carId, wakeAt, lines } = await waiting();
    const fluid = { part: partOf(barn, carId, 'brake-fluid-glycol'), car: carOf(barn, carId).facts };
    const claims = [claim('filled', '9 June 2026')];
    must(renewPart(barn.store, acting, fluid, { why: 'Renewed.', note: '', claims }));
    await wakeAt('2026-06-10T06:35:00Z');
    expect(await lines()).toEqual([['[Past] Spark plugs']]);
  });

  it('and every other one taken off the car: the letter is called off, and said so', async () => {
    const { barn, acting, carId, wakeAt, letters, server } = await waiting();
    for (const kind of ['brake-fluid-glycol', 'spark-plugs'])
      retirePart(barn.store, acting.collectionId, partOf(barn, carId, kind).id, '2026-06-10', 'Not on it.');
    await wakeAt('2026-06-10T06:35:00Z');
    expect(server.taken.length).toBe(0);
    expect(letters()).toMatchObject([{ state: 'cancelled', why: 'no news' }]);
  });

  it('that became graver meanwhile is told as it is by then', async () => {
    const { barn, wakeAt, lines } = await waiting();
    const other = carIn(barn, { name: 'Alder Coupe' });
    date(barn, other, 'brake-fluid-glycol', claim('filled', '10 June 2024'));
    // Due on the 10th and past on the 11th: said once, as what it is when the letter goes.
    await wakeAt(NEXT);
    expect((await lines()).flat().toSorted()).toEqual([
      '[Past, safety] Brake fluid, glycol (DOT 3, 4, 5.1)',
      '[Past, safety] Brake fluid, glycol (DOT 3, 4, 5.1)',
      '[Past] Spark plugs',
    ]);
  });
});

describe('a car that left meanwhile', () => {
  it('is not written about; back again, it is', async () => {
    const { barn, acting, carId, wakeAt, letters, server, lines } = await waiting();
    const added = carOf(barn, carId).car.addedOn;
    must(leaveCollection(barn.store, { ...acting, today: added }, carOf(barn, carId).car, { how: 'sold', day: added }));
    await wakeAt('2026-06-10T06:35:00Z');
    expect(letters()).toMatchObject([{ state: 'cancelled', why: 'no news' }]);
    expect(server.taken.length).toBe(0);
    barn.store.$client.exec('update cars set left_on = null');
    await wakeAt(NEXT);
    expect((await lines()).flat()).toHaveLength(2);
  });
});

describe('a person', () => {
  it.each<[string, Partial<Omit<Member, 'id'>>, string]>([
    ['who stopped the letters by the link in one', { letters: false, stoppedOn: '2026-06-10' }, 'stopped'],
    ['whose letters were switched off', { letters: false }, 'letters off'],
    ['whose address is gone', { email: null }, 'no address'],
  ])('%s gets nothing, and the reason is kept', async (_, member, why) => {
    const { change, wakeAt, letters, server, lines } = await waiting();
    change(member);
    await wakeAt('2026-06-10T06:35:00Z');
    expect(server.taken.length).toBe(0);
    expect(letters()).toMatchObject([{ state: 'cancelled', why }]);
    // Nothing of it was told: once there is a way again, all of it is.
    change({ letters: true, stoppedOn: null, email: 'ada@example.org' });
    await wakeAt(NEXT);
    expect((await lines()).flat()).toHaveLength(2);
  });

  it('with another address gets it there', async () => {
    const { change, wakeAt, mails } = await waiting();
    change({ email: 'ada@new.example.org' });
    await wakeAt('2026-06-10T06:35:00Z');
    expect((await mails()).map(({ to }) => (to && 'text' in to ? to.text : ''))).toEqual(['ada@new.example.org']);
  });

  it('who wants no word of that car any more gets none', async () => {
    const { change, carId, wakeAt, letters, server } = await waiting();
    change({ notCars: [carId] });
    await wakeAt('2026-06-10T06:35:00Z');
    expect([server.taken.length, letters()[0]?.why]).toEqual([0, 'no news']);
  });
});

describe('a plan', () => {
  it('of a stay that is over by then is called off', async () => {
    const { barn, carId, wakeAt, letters, server } = await waiting();
    const on = onDayIn(barn, '2026-06-10');
    const id = layUpIn(on, carId, { parkedOn: '2026-06-10', returnOn: '2026-11-01' });
    tellOn(barn, id, '2026-06-10');
    server.behavior = { code: 451, at: 'mail' };
    await wakeAt('2026-06-10T11:00:00Z');
    must(closeOn(barn, id, '2026-06-10', 'called off', '2026-06-10'));
    server.behavior = 'take';
    await wakeAt('2026-06-10T20:00:00Z');
    expect(letters().find(({ kind }) => kind === 'plan')).toMatchObject({ state: 'cancelled', why: 'over' });
  });
});
