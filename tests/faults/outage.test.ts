/** The mail server down, hanging, refusing, cutting the line: what is owed arrives once, in one letter. */
import { type ParsedMail, simpleParser } from 'mailparser';
import { afterEach, describe, expect, it } from 'vitest';
import { findLetter, seeLetter } from '../../src/store/letters.ts';
import { changeMember } from '../../src/store/people.ts';
import { type BadMailServer, type Behavior, openBadMailServer } from '../support/bad-mail-server.ts';
import { carIn, claim, date } from '../support/cars.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';

const open: { server: BadMailServer; here: WakingHouse }[] = [];
afterEach(async () => {
  for (const { server, here } of open.splice(0)) {
    here.house.close();
    await server.close();
  }
});

/** News on each of three days: brake fluids that are past on the 10th, the 11th and the 12th, and due long before. */
const withNews = async (behavior: Behavior) => {
  const server = await openBadMailServer('take');
  const here = openWakingHouse(server);
  open.push({ server, here });
  for (const [name, filled] of [
    ['Alder Coupe', '9 June 2024'],
    ['Birch Sedan', '10 June 2024'],
    ['Cedar Wagon', '11 June 2024'],
  ] as const)
    date(here.barn, carIn(here.barn, { name }), 'brake-fluid-glycol', claim('filled', filled));
  // What they were due for has arrived long ago.
  await here.wakeAt('2026-06-01T07:00:00Z');
  expect(server.taken).toHaveLength(1);
  server.taken.splice(0);
  server.behavior = behavior;
  server.hangUp();
  return { server, ...here };
};

/** Wakes from seven to midnight, every few hours, for three days. */
const threeDays = async (wakeAt: WakingHouse['wakeAt']): Promise<void> => {
  for (const day of ['10', '11', '12'])
    for (const hour of ['06:30', '06:35', '07:10', '12:00', '20:00']) await wakeAt(`2026-06-${day}T${hour}:00Z`);
};

const mailsOf = (server: BadMailServer): Promise<ParsedMail[]> =>
  Promise.all(server.taken.map(({ raw }) => simpleParser(raw)));

const NEVER_TAKEN: Behavior[] = [
  'refuse connections',
  'never greet',
  'hang after EHLO',
  'broken TLS',
  { code: 421, at: 'greeting' },
  { code: 450, at: 'rcpt' },
  { code: 451, at: 'mail' },
  { code: 452, at: 'end' },
];

describe('the mail server down for three days, then up', { timeout: 60_000 }, () => {
  it.each(NEVER_TAKEN)('(%o): one digest, not three', async (behavior) => {
    const { server, wakeAt, letters, house } = await withNews(behavior);
    await threeDays(wakeAt);
    expect(server.taken.length).toBe(0);
    expect(letters().map(({ state }) => state)).toEqual(['sent', 'waiting']);
    server.behavior = 'take';
    server.hangUp();
    await wakeAt('2026-06-13T06:30:00Z');
    const mails = await mailsOf(server);
    expect(mails.map(({ subject }) => subject)).toEqual(['3 past: Alder Coupe and 2 more cars']);
    expect(mails[0]?.text?.match(/^\[Past/gm)).toHaveLength(3);
    expect(mails[0]?.text).toContain('on 13 June 2026');
    const [, letter] = letters();
    expect(letter).toMatchObject({ state: 'sent', messageId: mails[0]?.messageId, inDoubt: false });
    const tries = letter && findLetter(house.store, letter.collectionId, letter.id)?.attempts;
    expect(tries?.length).toBeGreaterThan(3);
    expect(tries?.slice(0, -1).every(({ ok, answer }) => !ok && answer !== '')).toBe(true);
    // And no second one on any later day.
    await wakeAt('2026-06-14T06:30:00Z');
    await wakeAt('2026-06-20T06:30:00Z');
    expect(server.taken).toHaveLength(1);
  });

  it('cut in the middle of the text: it may not have been taken, and comes in full', async () => {
    const { server, wakeAt } = await withNews('cut during DATA');
    await threeDays(wakeAt);
    expect(server.taken.length).toBe(0);
    server.behavior = 'take';
    for (const day of ['13', '14', '15']) await wakeAt(`2026-06-${day}T06:30:00Z`);
    const past = (await mailsOf(server)).flatMap(({ text }) => text?.match(/^\[Past/gm) ?? []);
    expect(past).toHaveLength(3);
  });
});

describe('a letter the server took without saying so', { timeout: 60_000 }, () => {
  it.each<Behavior>(['cut after DATA', 'hang after DATA'])(
    '(%s) comes again as the same message word for word, and later news in another',
    async (behavior) => {
      const { server, wakeAt, letters } = await withNews(behavior);
      await wakeAt('2026-06-10T06:30:00Z');
      expect(server.taken).toHaveLength(1);
      expect(letters()[1]).toMatchObject({ state: 'waiting', inDoubt: true });
      // The next day's news does not change what may have arrived.
      server.behavior = { code: 451, at: 'mail' };
      await wakeAt('2026-06-11T06:30:00Z');
      server.behavior = 'take';
      await wakeAt('2026-06-12T06:30:00Z');
      await wakeAt('2026-06-13T06:30:00Z');
      const mails = await mailsOf(server);
      const [first, ...others] = mails;
      const copies = mails.filter(({ messageId }) => messageId === first?.messageId);
      expect(copies).toHaveLength(2);
      expect(new Set(copies.map(({ text, html }) => `${text}${html}`)).size).toBe(1);
      expect(first?.text?.match(/^\[Past/gm)).toHaveLength(1);
      const later = others.filter(({ messageId }) => messageId !== first?.messageId);
      expect(later.flatMap(({ text }) => text?.match(/^(BIRCH SEDAN|CEDAR WAGON)/gm) ?? [])).toEqual([
        'BIRCH SEDAN',
        'CEDAR WAGON',
      ]);
      expect(letters().map(({ state }) => state)).not.toContain('waiting');
    },
  );
});

describe('a server that says no for good', { timeout: 60_000 }, () => {
  it('is asked once; nothing more goes to that address until somebody has seen it, and then all of it in one letter', async () => {
    const { server, wakeAt, letters, barn, house } = await withNews({ code: 550, at: 'rcpt' });
    await threeDays(wakeAt);
    expect(letters().map(({ state, why, tries }) => [state, why, tries])).toEqual([
      ['sent', null, 1],
      ['failed', 'refused', 1],
    ]);
    server.behavior = 'take';
    await wakeAt('2026-06-13T06:30:00Z');
    expect(server.taken.length).toBe(0);
    seeLetter(house.store, barn.acting.collectionId, letters()[1]?.id ?? '', '2026-06-13T08:00:00Z');
    await wakeAt('2026-06-14T06:30:00Z');
    expect((await mailsOf(server)).map(({ subject }) => subject)).toEqual(['3 past: Alder Coupe and 2 more cars']);
  });

  it('to one address hears of another as soon as it is changed', async () => {
    const { server, wakeAt, barn, house } = await withNews({ code: 550, at: 'rcpt' });
    await threeDays(wakeAt);
    server.behavior = 'take';
    const { collectionId, personId } = barn.acting;
    changeMember(house.store, collectionId, personId, { email: 'ada@new.example.org' });
    await wakeAt('2026-06-13T06:30:00Z');
    const [mail] = await mailsOf(server);
    expect(mail?.to).toMatchObject({ text: 'ada@new.example.org' });
    expect(mail?.subject).toBe('3 past: Alder Coupe and 2 more cars');
  });
});

describe('tries used up', { timeout: 60_000 }, () => {
  it('lose nothing: what the letter said is in the next one', async () => {
    const { server, wakeAt, letters } = await withNews({ code: 451, at: 'rcpt' });
    // Each morning and three times a day for a week: nine tries are over long before.
    for (let day = 10; day <= 17; day++)
      for (const hour of ['06:30', '07:40', '13:00', '21:00']) await wakeAt(`2026-06-${day}T${hour}:00Z`);
    expect(letters().filter(({ state, why }) => state === 'failed' && why === 'tries used up').length).toBeGreaterThan(
      0,
    );
    server.behavior = 'take';
    for (const day of ['18', '19', '20']) await wakeAt(`2026-06-${day}T06:30:00Z`);
    const mails = await mailsOf(server);
    expect(mails.map(({ subject }) => subject)).toEqual(['3 past: Alder Coupe and 2 more cars']);
  });
});
