/** Clocks that go back and forth, nights of summer time, leap days, zones that change: no second mail, no missed day. */
import { afterEach, describe, expect, it } from 'vitest';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import { changeCollection, changeMember } from '../../src/store/people.ts';
import { carIn, claim, date } from '../support/cars.ts';
import { openWakingHouse, type WakingHouse } from '../support/house.ts';

const open: WakingHouse[] = [];
afterEach(() => {
  for (const { house } of open.splice(0)) house.close();
});

const HOUR = 3_600_000;

/** Cars whose brake fluids are past on the days given, in a collection of that zone whose letter has that hour. */
const house = (timeZone: string, hour: number, ...pastOn: readonly CivilDate[]) => {
  const here = openWakingHouse(null, { LETTER_HOUR: String(hour) });
  open.push(here);
  const { store } = here.house;
  changeCollection(store, here.barn.acting.collectionId, { timeZone });
  for (const day of pastOn) {
    // Past the day after its limit of 24 months; nothing else of it is news by then, for it was due long before.
    const filled = addDays(day, -1);
    const two = `${Number(filled.slice(0, 4)) - 2}${filled.slice(4)}`;
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

describe('the planner', () => {
  it('run twice in a day, and with the clock set back a day and forth again, adds nothing', async () => {
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

  it('by a clock that was years ahead for a while says nothing twice', async () => {
    const { wakeAt, subjects } = house('Europe/Lisbon', 7, '2026-06-10');
    await wakeAt('2031-01-15T08:00:00Z');
    const ahead = subjects();
    expect(ahead).toEqual(['1 past: Car of 2026-06-10']);
    for (const day of ['2026-06-10', '2026-06-11', '2027-06-11']) await wakeAt(`${day}T08:00:00Z`);
    expect(subjects()).toEqual(ahead);
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
  ] as const)('in %s at %i on %s brings one letter that day and one the next', async (zone, hour, day) => {
    const { subjects, days, wakeThrough } = house(zone, hour, day, addDays(day, 1));
    await wakeThrough(`${addDays(day, -1)}T00:00:00Z`, `${addDays(day, 2)}T00:00:00Z`);
    expect(subjects().filter((subject) => /past/.test(subject))).toEqual([
      `1 past: Car of ${day}`,
      `1 past: Car of ${addDays(day, 1)}`,
    ]);
    expect(days()).toEqual(expect.arrayContaining([day, addDays(day, 1)]));
    expect(new Set(days()).size).toBe(days().length);
  });
});

describe('the leap day', () => {
  it('has its morning, and so has the day after', async () => {
    const { subjects, wakeThrough, days } = house('Asia/Kathmandu', 7, '2028-02-29', '2028-03-01');
    await wakeThrough('2028-02-27T00:00:00Z', '2028-03-02T12:00:00Z');
    expect(subjects().filter((subject) => /past/.test(subject))).toEqual([
      '1 past: Car of 2028-02-29',
      '1 past: Car of 2028-03-01',
    ]);
    expect(days()).toContain('2028-02-29');
  });
});

describe('a collection that moves to another zone', () => {
  it.each([
    ['Pacific/Apia', 'Pacific/Pago_Pago'],
    ['Pacific/Pago_Pago', 'Pacific/Apia'],
    ['Europe/Lisbon', 'Pacific/Auckland'],
    ['America/New_York', 'Europe/Lisbon'],
    ['Europe/Lisbon', 'America/New_York'],
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
