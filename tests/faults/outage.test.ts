/** The mail server down, hanging, refusing, cutting the line: what is owed arrives once, in one letter. */
import { type ParsedMail, simpleParser } from 'mailparser';
import { afterEach, describe, expect, it } from 'vitest';
import { type AttemptRow, failedLetters, findLetter, type LetterRow, seeLetter } from '../../src/store/letters.ts';
import { changeMember } from '../../src/store/people.ts';
import { type BadMailServer, type Behavior, openBadMailServer } from '../support/bad-mail-server.ts';
import { carIn, claim, date, ROADSTER } from '../support/cars.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';

const open: { server: BadMailServer; here: WakingHouse }[] = [];
afterEach(async () => {
  for (const { server, here } of open.splice(0)) {
    here.house.close();
    await server.close();
  }
});

/**
 * News on each of three days: brake fluids that are past on the 10th, the 11th and the 12th, and due long before; and a
 * first-aid kit that is due on the 11th and past on the 12th.
 */
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
  const van = carIn(here.barn, { name: 'Dogwood Van', traits: [...ROADSTER, 'first-aid-kit'] });
  date(here.barn, van, 'first-aid', claim('printed', '11 June 2026'));
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

/** What the mails say, a line each; every brake fluid is named by its car. */
const linesOf = (mails: readonly ParsedMail[]): string[] =>
  mails.flatMap(({ text }) => text?.match(/^(ALDER COUPE|BIRCH SEDAN|CEDAR WAGON|DOGWOOD VAN|\[.*)/gm) ?? []);

/** All of the three days, each part once and at its gravest. */
const FLUID = '[Past, safety] Brake fluid, glycol (DOT 3, 4, 5.1)';
const ALL = [
  ...['ALDER COUPE', 'BIRCH SEDAN', 'CEDAR WAGON'].flatMap((car) => [car, FLUID]),
  ...['DOGWOOD VAN', '[Past] First-aid kit'],
];
const SUBJECT = '4 past: Alder Coupe and 3 more cars';

const triesOf = ({ house }: WakingHouse, letter: LetterRow | undefined): AttemptRow[] =>
  (letter && findLetter(house.store, letter.collectionId, letter.id)?.attempts) ?? [];

const NEVER_TAKEN: Behavior[] = [
  'refuse connections',
  'never greet',
  'hang after EHLO',
  'broken TLS',
  { code: 421, at: 'greeting' },
  { code: 450, at: 'rcpt' },
  { code: 451, at: 'mail' },
  // It dislikes the sender: that says nothing of the reader.
  { code: 550, at: 'mail' },
  { code: 452, at: 'end' },
];

describe('SMTP down three days, then up', { timeout: 60_000 }, () => {
  it.each(NEVER_TAKEN)('(%o): one digest, not three', async (behavior) => {
    const { server, ...here } = await withNews(behavior);
    const { wakeAt, letters } = here;
    await threeDays(wakeAt);
    expect(server.taken.length).toBe(0);
    expect(letters().map(({ state, inDoubt }) => [state, inDoubt])).toEqual([
      ['sent', false],
      ['waiting', false],
    ]);
    server.behavior = 'take';
    server.hangUp();
    await wakeAt('2026-06-13T06:30:00Z');
    const mails = await mailsOf(server);
    expect(mails.map(({ subject }) => subject)).toEqual([SUBJECT]);
    expect(linesOf(mails)).toEqual(ALL);
    expect(mails[0]?.text).toContain('on 13 June 2026');
    const [, letter] = letters();
    expect(letter).toMatchObject({ state: 'sent', messageId: mails[0]?.messageId, inDoubt: false });
    // Every try is on record with what was heard.
    const tries = triesOf(here, letter);
    expect(tries).toHaveLength(letter?.tries ?? 0);
    expect(tries.length).toBeGreaterThan(3);
    expect(tries.map(({ ok }) => ok)).toEqual([...tries.slice(1).map(() => false), true]);
    for (const { answer } of tries)
      expect(answer).toMatch(typeof behavior === 'object' ? new RegExp(`${behavior.code}|^250`) : /\S/);
    // And no second one on any later day.
    for (const day of ['14', '20']) await wakeAt(`2026-06-${day}T06:30:00Z`);
    expect(server.taken).toHaveLength(1);
  });

  it('cut during DATA: it may not have been taken, and nothing of it is lost', async () => {
    const { server, wakeAt, letters } = await withNews('cut during DATA');
    await threeDays(wakeAt);
    expect(server.taken.length).toBe(0);
    server.behavior = 'take';
    for (const day of ['13', '14', '15']) await wakeAt(`2026-06-${day}T06:30:00Z`);
    const mails = await mailsOf(server);
    expect(linesOf(mails).filter((line) => line === FLUID)).toHaveLength(3);
    expect(linesOf(mails)).toContain('[Past] First-aid kit');
    expect(new Set(mails.map(({ messageId }) => messageId)).size).toBe(mails.length);
    expect(letters().every(({ state }) => state === 'sent')).toBe(true);
  });
});

describe('cut or silence after DATA', { timeout: 60_000 }, () => {
  it.each<Behavior>(['cut after DATA', 'hang after DATA'])(
    '(%s): the letter comes again with the same Message-ID and words; news of the next days come in another',
    async (behavior) => {
      const { server, ...here } = await withNews(behavior);
      const { wakeAt, letters } = here;
      await wakeAt('2026-06-10T06:30:00Z');
      expect(server.taken).toHaveLength(1);
      const doubtful = letters()[1];
      expect(doubtful).toMatchObject({ state: 'waiting', inDoubt: true });
      // The next day's news does not change what may have arrived, nor does a server that says “not now”.
      server.behavior = { code: 451, at: 'mail' };
      await wakeAt('2026-06-11T06:30:00Z');
      expect(letters()[1]).toMatchObject({ inDoubt: true, text: doubtful?.text, html: doubtful?.html });
      server.behavior = 'take';
      await wakeAt('2026-06-12T06:30:00Z');
      await wakeAt('2026-06-13T06:30:00Z');
      const mails = await mailsOf(server);
      const copies = mails.filter(({ messageId }) => messageId === doubtful?.messageId);
      expect(copies).toHaveLength(2);
      expect(new Set(copies.map(({ subject, text, html }) => `${subject}${text}${html}`)).size).toBe(1);
      expect(linesOf(copies.slice(1))).toEqual(ALL.slice(0, 2));
      const later = mails.filter(({ messageId }) => messageId !== doubtful?.messageId);
      expect(linesOf(later)).toEqual(ALL.slice(2));
      expect(letters().map(({ state }) => state)).toEqual(['sent', 'sent', 'sent']);
      expect(triesOf(here, letters()[1]).map(({ ok }) => ok)).toEqual([false, false, true]);
    },
  );

  it('and a final no afterwards: what the letter said is told once somebody has seen that', async () => {
    const { server, house, barn, wakeAt, letters } = await withNews('cut after DATA');
    await wakeAt('2026-06-10T06:30:00Z');
    server.behavior = { code: 550, at: 'rcpt' };
    await wakeAt('2026-06-10T07:00:00Z');
    expect(letters()[1]).toMatchObject({ state: 'failed', why: 'refused' });
    server.behavior = 'take';
    seeLetter(house.store, barn.acting.collectionId, letters()[1]?.id ?? '', '2026-06-10T08:00:00Z');
    await wakeAt('2026-06-12T06:30:00Z');
    expect(linesOf((await mailsOf(server)).slice(1))).toEqual(ALL);
  });
});

describe('5xx', { timeout: 60_000 }, () => {
  it.each<Behavior>([
    { code: 550, at: 'rcpt' },
    { code: 552, at: 'data' },
    { code: 554, at: 'end' },
  ])(
    '(%o): given up at once, shown until seen, nothing more to that address; then one letter with everything',
    async (behavior) => {
      const { server, ...here } = await withNews(behavior);
      const { wakeAt, letters, barn, house } = here;
      const { collectionId } = barn.acting;
      await threeDays(wakeAt);
      const refused = letters()[1];
      expect(letters().map(({ state, why, tries }) => [state, why, tries])).toEqual([
        ['sent', null, 1],
        ['failed', 'refused', 1],
      ]);
      expect(triesOf(here, refused)).toMatchObject([{ ok: false, answer: expect.stringContaining('told to say so') }]);
      server.behavior = 'take';
      await wakeAt('2026-06-13T06:30:00Z');
      expect([server.taken.length, failedLetters(house.store, collectionId)]).toEqual([0, 1]);
      seeLetter(house.store, collectionId, refused?.id ?? '', '2026-06-13T08:00:00Z');
      expect(failedLetters(house.store, collectionId)).toBe(0);
      await wakeAt('2026-06-14T06:30:00Z');
      await wakeAt('2026-06-15T06:30:00Z');
      const mails = await mailsOf(server);
      expect(mails.map(({ subject }) => subject)).toEqual([SUBJECT]);
      expect(linesOf(mails)).toEqual(ALL);
    },
  );

  it('to one address: another is written to as soon as there is one', async () => {
    const { server, wakeAt, barn, house } = await withNews({ code: 550, at: 'rcpt' });
    await threeDays(wakeAt);
    server.behavior = 'take';
    const { collectionId, personId } = barn.acting;
    changeMember(house.store, collectionId, personId, { email: 'ada@new.example.org' });
    await wakeAt('2026-06-13T06:30:00Z');
    const mails = await mailsOf(server);
    expect(mails).toMatchObject([{ subject: SUBJECT, to: { text: 'ada@new.example.org' } }]);
    expect(linesOf(mails)).toEqual(ALL);
  });

  it('to the greeting is no word about the letter: it waits', async () => {
    const { server, wakeAt, letters } = await withNews({ code: 554, at: 'greeting' });
    await wakeAt('2026-06-10T06:30:00Z');
    expect(letters()[1]).toMatchObject({ state: 'waiting' });
    server.behavior = 'take';
    await wakeAt('2026-06-10T06:40:00Z');
    expect(letters()[1]).toMatchObject({ state: 'sent' });
  });
});

describe('tries used up', { timeout: 60_000 }, () => {
  it('(9): what it said is in the next letter', async () => {
    const { server, ...here } = await withNews({ code: 451, at: 'rcpt' });
    const { wakeAt, letters, house, barn } = here;
    // Each morning and three times a day for a week: nine tries are over long before.
    for (let day = 10; day <= 17; day++)
      for (const hour of ['06:30', '07:40', '13:00', '21:00']) await wakeAt(`2026-06-${day}T${hour}:00Z`);
    const used = letters().filter(({ state }) => state === 'failed');
    expect(used.length).toBeGreaterThan(0);
    for (const letter of used) {
      expect(letter).toMatchObject({ why: 'tries used up', tries: 9 });
      expect(triesOf(here, letter)).toHaveLength(9);
    }
    expect(failedLetters(house.store, barn.acting.collectionId)).toBe(used.length);
    server.behavior = 'take';
    for (const day of ['18', '19', '20']) await wakeAt(`2026-06-${day}T06:30:00Z`);
    const mails = await mailsOf(server);
    expect(mails.map(({ subject }) => subject)).toEqual([SUBJECT]);
    expect(linesOf(mails)).toEqual(ALL);
  });
});
