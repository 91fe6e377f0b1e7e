/** Clocks that go back and forth, nights of summer time, leap days, zones that change: no second mail, no missed day. */
import { afterEach, describe, expect, it } from 'vitest';
import { hourIn, todayIn } from '../../src/clock.ts';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import { nightlyBackups } from '../../src/store/backup.ts';
import { changeCollection, changeMember } from '../../src/store/people.ts';
import { runsOf } from '../../src/store/runs.ts';
import { type BadMailServer, openBadMailServer } from '../support/bad-mail-server.ts';
import { carIn, claim, date, ROADSTER } from '../support/cars.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';

const open: WakingHouse[] = [];
const servers: BadMailServer[] = [];
afterEach(async () => {
  for (const { house } of open.splice(0)) house.close();
  for (const server of servers.splice(0)) await server.close();
});
const served = async (...behavior: Parameters<typeof openBadMailServer>): Promise<BadMailServer> => {
  const server = await openBadMailServer(...behavior);
  servers.push(server);
  return server;
};

const HOUR = 3_600_000;

/** Cars whose brake fluids are past on the days given, in a collection of that zone whose letter has that hour. */
const house = (timeZone: string, hour: number, ...pastOn: readonly CivilDate[]) =>
  filled(openWakingHouse(null, { LETTER_HOUR: String(hour) }), timeZone, pastOn);

const filled = (here: WakingHouse, timeZone: string, pastOn: readonly CivilDate[]) => {
  open.push(here);
  const { store } = here.house;
  changeCollection(store, here.barn.acting.collectionId, { timeZone });
  for (const day of pastOn) {
    // Past the day after its limit of 24 months; nothing else of it is news by then, for it was due long before.
    const two = addMonths(addDays(day, -1), -24);
    date(here.barn, carIn(here.barn, { name: `Car of ${day}` }), 'brake-fluid-glycol', claim('filled', two));
  }
  const subjects = (): string[] => here.letters().map(({ subject }) => subject);
  const days = (): string[] =>
    here.house.store.$client.prepare('select day from mornings order by day').pluck().all() as string[];
  /** Wakes every hour from one instant to another. */
  const wakeThrough = async (from: string, to: string): Promise<void> => {
    for (let at = Date.parse(from); at <= Date.parse(to); at += HOUR) await here.wakeAt(new Date(at).toISOString());
  };
  return { ...here, subjects, days, wakeThrough };
};

describe('Running the planner', () => {
  it('twice in a day, or with the clock set back a day and forth again, adds nothing', async () => {
    const { wakeAt, subjects, days } = house('Europe/Lisbon', 7, '2026-06-10', '2026-06-11');
    await wakeAt('2026-06-10T06:30:00Z');
    const first = subjects();
    expect(first).toEqual(['1 past, 1 due: Car of 2026-06-10 and 1 more car']);
    for (const again of [
      '2026-06-10T06:35:00Z',
      '2026-06-10T23:00:00Z',
      '2026-06-09T12:00:00Z',
      '2026-06-01T12:00:00Z',
    ])
      await wakeAt(again);
    expect(subjects()).toEqual(first);
    await wakeAt('2026-06-10T07:00:00Z');
    expect(subjects()).toEqual(first);
    await wakeAt('2026-06-11T06:30:00Z');
    expect(subjects()).toEqual([...first, '1 past: Car of 2026-06-11']);
    expect(days()).toEqual(['2026-06-01', '2026-06-09', '2026-06-10', '2026-06-11']);
  });

  it('twice at the same time adds nothing, and sends nothing twice', async () => {
    const server = await served();
    const { wakeAt, subjects, letters } = filled(openWakingHouse(server), 'Europe/Lisbon', ['2026-06-10']);
    const at = '2026-06-10T06:30:00Z';
    await Promise.all([wakeAt(at), wakeAt(at), wakeAt(at)]);
    expect(subjects()).toEqual(['1 past: Car of 2026-06-10']);
    expect(letters()).toMatchObject([{ state: 'sent', tries: 1 }]);
    expect(server.taken).toHaveLength(1);
  });

  it('by a clock set back while a letter waits loses nothing and says nothing twice', async () => {
    const server = await served({ code: 451, at: 'mail' });
    const { wakeAt, letters } = filled(openWakingHouse(server), 'Europe/Lisbon', ['2026-06-10', '2026-06-11']);
    await wakeAt('2026-06-11T06:30:00Z');
    for (const back of ['2026-06-10T06:30:00Z', '2026-06-09T06:30:00Z', '2025-03-01T08:00:00Z']) await wakeAt(back);
    server.behavior = 'take';
    for (const day of ['11', '12', '13', '14']) await wakeAt(`2026-06-${day}T06:30:00Z`);
    const sent = letters().filter(({ state }) => state === 'sent');
    expect(sent.flatMap(({ text }) => text.match(/^\[Past/gm) ?? [])).toHaveLength(2);
    expect(server.taken).toHaveLength(sent.length);
    expect(letters().some(({ state }) => state === 'waiting')).toBe(false);
  });

  it('by a clock that was years ahead for a while says nothing twice', async () => {
    const { wakeAt, subjects } = house('Europe/Lisbon', 7, '2026-06-10');
    await wakeAt('2031-01-15T08:00:00Z');
    const ahead = subjects();
    expect(ahead).toEqual(['1 past: Car of 2026-06-10']);
    for (const day of ['2026-06-10', '2026-06-11', '2027-06-11']) await wakeAt(`${day}T08:00:00Z`);
    expect(subjects()).toEqual(ahead);
  });
});

describe('A machine that is off at the hour of the letter', () => {
  it.each(['2026-12-10', '2026-06-10'] as const)(
    'writes it when it is up, once a day, also the first one (%s)',
    async (first) => {
      // The cars were added in November: whoever comes in December was never swept for, whoever in June was once.
      const days = [first, addDays(first, 1), addDays(first, 2)];
      const { wakeAt, subjects } = house('Europe/Lisbon', 22, ...days);
      if (first < '2026-11') await wakeAt(`${addDays(first, -3)}T22:00:00Z`);
      const before = subjects().length;
      for (const day of days)
        for (const hour of ['08:00', '08:05', '13:00', '19:00']) await wakeAt(`${day}T${hour}:00Z`);
      const told = subjects().slice(before);
      expect(told).toHaveLength(3);
      for (const [n, day] of days.entries()) expect(told[n]).toContain(`Car of ${day}`);
    },
  );

  it.each(['2026-10-25', '2027-03-28'] as const)(
    'and is on every day never writes before it, nor in the night of %s',
    async (night) => {
      const { wakeThrough, house: opened } = house('Europe/Lisbon', 7, night);
      await wakeThrough(`${addDays(night, -2)}T00:00:00Z`, `${addDays(night, 2)}T00:00:00Z`);
      const swept = opened.store.$client.prepare('select finished_at from mornings').pluck().all() as string[];
      expect(swept.map((instant) => hourIn('Europe/Lisbon', new Date(instant)))).toEqual([7, 7, 7, 7]);
    },
  );

  it('and is left on for once does not write before its hour', async () => {
    const { wakeThrough, subjects } = house('UTC', 20, '2026-06-10', '2026-06-11');
    await wakeThrough('2026-06-09T20:00:00Z', '2026-06-10T19:00:00Z');
    expect(subjects()).not.toContainEqual(expect.stringContaining('past'));
    await wakeThrough('2026-06-10T20:00:00Z', '2026-06-11T19:00:00Z');
    expect(subjects().at(-1)).toContain('Car of 2026-06-10');
  });
});

describe('A clock that was years ahead for a while', () => {
  it('puts no letter off to that year', async () => {
    const server = await served({ code: 451, at: 'mail' });
    const { wakeAt, letters } = filled(openWakingHouse(server), 'Europe/Lisbon', ['2026-06-10']);
    await wakeAt('2031-01-15T08:00:00Z');
    expect(letters()).toMatchObject([{ state: 'waiting', nextTryAt: expect.stringMatching(/^2031/) }]);
    server.behavior = 'take';
    await wakeAt('2026-06-10T08:00:00Z');
    expect(letters().filter(({ state }) => state === 'sent')).toHaveLength(1);
  });

  it('keeps no letter with a sender that died then', async () => {
    const server = await served();
    const { wakeAt, letters, house: opened } = filled(openWakingHouse(server), 'Europe/Lisbon', ['2026-06-10']);
    await wakeAt('2026-06-10T08:00:00Z');
    opened.store.$client.exec("update letters set state = 'sending', lease_until = '2031-01-15T08:10:00.000Z'");
    await wakeAt('2026-06-10T08:05:00Z');
    expect(letters()).toMatchObject([{ state: 'sent', tries: 2 }]);
  });

  it('keeps no night without its copy and no week without its check', async () => {
    const { wakeAt, house: opened } = house('Europe/Lisbon', 7, '2026-06-10');
    await wakeAt('2031-01-15T08:00:00Z');
    await wakeAt('2026-06-10T08:00:00Z');
    expect(nightlyBackups(opened.config.dataDir).map(({ day }) => day)).toEqual(['2031-01-15', '2026-06-10']);
    expect(runsOf(opened.store).integrity.goodAt).toBe('2026-06-10T08:00:00.000Z');
  });
});

describe('a night in which the clocks change', () => {
  it.each([
    // The hour the letter waits for does not exist that night, or exists twice.
    ['Europe/Lisbon', 1, '2027-03-28'],
    ['Europe/Lisbon', 1, '2026-10-25'],
    ['America/New_York', 2, '2027-03-14'],
    ['America/New_York', 1, '2026-11-01'],
    ['Australia/Lord_Howe', 2, '2026-10-04'],
    ['Australia/Lord_Howe', 1, '2027-04-04'],
    ['America/New_York', 3, '2027-03-14'],
    // Zones that keep one time all year, and one of a quarter of an hour.
    ['Asia/Kathmandu', 2, '2027-03-28'],
    ['Pacific/Apia', 3, '2027-04-04'],
  ] as const)('in %s at %i on %s brings one letter that day and one the next', async (zone, hour, day) => {
    const { subjects, days, letters, wakeThrough } = house(zone, hour, day, addDays(day, 1));
    // It begins before the hour of a day, in any zone.
    await wakeThrough(`${addDays(day, -2)}T10:00:00Z`, `${addDays(day, 2)}T00:00:00Z`);
    expect(subjects().filter((subject) => /past/.test(subject))).toEqual([
      `1 past: Car of ${day}`,
      `1 past: Car of ${addDays(day, 1)}`,
    ]);
    // In the first hour that is there from the one it waits for on: in spring that can be the next.
    for (const { day: on, writtenAt } of letters().slice(-2)) {
      expect(todayIn(zone, new Date(writtenAt))).toBe(on);
      expect([hour, hour + 1]).toContain(hourIn(zone, new Date(writtenAt)));
    }
    expect(days()).toEqual(expect.arrayContaining([day, addDays(day, 1)]));
    expect(new Set(days()).size).toBe(days().length);
  });
});

describe('29 February', () => {
  it('has its morning, and so has the day after: no second mail, no missed day', async () => {
    const { barn, subjects, wakeThrough, days } = house('Asia/Kathmandu', 7, '2028-02-29', '2028-03-02');
    const carId = carIn(barn, { name: 'Kit', traits: [...ROADSTER, 'first-aid-kit'] });
    date(barn, carId, 'first-aid', claim('printed', '29 February 2028'));
    await wakeThrough('2028-02-27T00:00:00Z', '2028-03-02T12:00:00Z');
    expect(subjects().filter((subject) => /past/.test(subject))).toEqual([
      '1 past: Car of 2028-02-29',
      '1 past: Kit',
      '1 past: Car of 2028-03-02',
    ]);
    expect(days()).toEqual(['2028-02-27', '2028-02-28', '2028-02-29', '2028-03-01', '2028-03-02']);
  });

  it('as the day of a filling: past after 28 February of a common year', async () => {
    const { barn, letters, wakeThrough } = house('Europe/Lisbon', 7);
    date(barn, carIn(barn), 'brake-fluid-glycol', claim('filled', '29 February 2024'));
    await wakeThrough('2026-02-27T08:00:00Z', '2026-03-02T12:00:00Z');
    expect(letters().map(({ day, subject }) => [day, subject.slice(0, 6)])).toEqual([
      ['2026-02-27', '1 due:'],
      ['2026-03-01', '1 past'],
    ]);
  });
});

describe('a collection that moves to another zone', () => {
  it.each([
    ['Pacific/Apia', 'Pacific/Pago_Pago'],
    ['Pacific/Pago_Pago', 'Pacific/Apia'],
    ['Europe/Lisbon', 'Pacific/Auckland'],
    ['America/New_York', 'Europe/Lisbon'],
    ['Europe/Lisbon', 'America/New_York'],
    ['America/New_York', 'Asia/Kathmandu'],
  ])('from %s to %s at any hour says each thing once', async (from, to) => {
    for (const at of ['2026-06-10T01:00:00Z', '2026-06-10T18:30:00Z']) {
      const { house: opened, barn, subjects, wakeThrough } = house(from, 7, '2026-06-10', '2026-06-11');
      await wakeThrough('2026-06-08T00:00:00Z', at);
      changeCollection(opened.store, barn.acting.collectionId, { timeZone: to });
      await wakeThrough(at, '2026-06-13T00:00:00Z');
      const told = subjects().filter((subject) => /past/.test(subject));
      expect(
        told
          .join('\n')
          .match(/\d+ past/g)
          ?.reduce((sum, words) => sum + Number.parseInt(words, 10), 0),
        at,
      ).toBe(2);
    }
  });
});

describe('a person’s own hour', () => {
  it('is by the collection’s zone, and nobody else’s letter waits for it', async () => {
    const { house: opened, barn, letters, wakeAt } = house('America/New_York', 7, '2026-06-10');
    const { collectionId, personId } = barn.acting;
    changeMember(opened.store, collectionId, personId, { hour: 18 });
    await wakeAt('2026-06-10T21:59:00Z');
    expect(letters()).toEqual([]);
    await wakeAt('2026-06-10T22:00:00Z');
    expect(letters()).toHaveLength(1);
    // Moved to an earlier hour the same day, it is not written twice.
    changeMember(opened.store, collectionId, personId, { hour: 6 });
    await wakeAt('2026-06-10T22:30:00Z');
    expect(letters()).toHaveLength(1);
  });
});

describe('a quiet season', () => {
  /** A first-aid kit that is past on its day, which can wait, and fluids that can hurt; the days and subjects of letters. */
  const walked = async (
    [quietFrom, quietTo]: [string, string],
    kitPastOn: CivilDate,
    fluidsPastOn: CivilDate[],
    [from, to]: [CivilDate, CivilDate],
  ): Promise<[string, string][]> => {
    const { house: opened, barn, wakeAt, letters } = house('Europe/Lisbon', 7, ...fluidsPastOn);
    const { collectionId, personId } = barn.acting;
    const carId = carIn(barn, { name: 'Kit', traits: [...ROADSTER, 'first-aid-kit'] });
    date(barn, carId, 'first-aid', claim('printed', addDays(kitPastOn, -1)));
    changeMember(opened.store, collectionId, personId, { quietFrom, quietTo });
    for (let day = from; day <= to; day = addDays(day, 1)) await wakeAt(`${day}T08:00:00Z`);
    return letters().map(({ day, subject }) => [day, subject]);
  };

  it('over the turn of the year keeps back what can wait until its end, and says what can hurt on its day', async () => {
    const walk = walked(['12-20', '01-10'], '2026-12-31', ['2027-01-03'], ['2026-12-20', '2027-01-12']);
    expect(await walk).toEqual([
      ['2027-01-03', '1 past: Car of 2027-01-03'],
      ['2027-01-11', '1 past: Kit'],
    ]);
  });

  it.each<[string, string, string, CivilDate, CivilDate]>([
    ['ends on', '02-10', '02-29', '2028-02-29', '2028-03-01'],
    ['ends on', '02-10', '02-29', '2027-02-28', '2027-03-01'],
    ['ends the day before', '02-10', '02-28', '2028-02-28', '2028-02-29'],
  ])('that %s 29 February (%s to %s) is over the day after its last, %s, and on %s tells', async (...given) => {
    const [, quietFrom, quietTo, last, after] = given;
    const walk = await walked([quietFrom, quietTo], addDays(last, -3), [], [addDays(last, -5), addDays(after, 1)]);
    expect(walk).toEqual([[after, '1 past: Kit']]);
  });

  it.each<[CivilDate, CivilDate[]]>([
    ['2028-02-28', ['2028-02-28']],
    ['2028-02-29', ['2028-03-11']],
    ['2027-03-01', ['2027-03-11']],
  ])('that begins on 29 February keeps back what is past on %s until %s', async (past, told) => {
    const walk = await walked(['02-29', '03-10'], past, [], [past, addDays(past, 14)]);
    expect(walk.map(([day]) => day)).toEqual(told);
  });
});
