import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import type { Reading } from '../../src/findings/facts.ts';
import { viewOf } from '../../src/plans/standing.ts';
import type { Papers } from '../../src/plans/stay.ts';
import type { Warning } from '../../src/plans/warnings/warning.ts';
import { aged, PARKED, placeOf, type StayGiven, stayOf, undated } from '../support/stays.ts';

const warnings = (given: StayGiven, on: CivilDate): readonly Warning[] => viewOf(stayOf(given), on).warnings;
const keys = (given: StayGiven, on: CivilDate): string[] => warnings(given, on).map(({ key }) => key);
const warning = (given: StayGiven, on: CivilDate, key: string): Warning | undefined =>
  warnings(given, on).find((one) => one.key === key);

const volts = (value: number, day: CivilDate): Reading => ({
  gauge: 'rest-voltage',
  day,
  value,
  unit: 'V',
  warmth: null,
  recordedOn: day,
});

/** Calcium, 60 Ah, 30 mA, read on the parking day. */
const battery = (value: number, connection: string, more: StayGiven = {}): StayGiven => ({
  ...more,
  parts: {
    ...more.parts,
    'battery-flooded': {
      readings: [volts(value, PARKED)],
      details: { chemistry: 'calcium', capacity: 60, drain: 30, connection },
    },
  },
});

describe('the battery', () => {
  // Full and drawing 30 mA it is at three quarters after about two weeks: before the first round, so on the day itself.
  it('that falls to three quarters before the first visit is told at once', () => {
    const told = warning(battery(12.7, 'connected'), PARKED, 'battery-recharge');
    expect(told?.begins).toBe(PARKED);
    expect(told?.title).toMatch(/may fall to three quarters by/);
    expect(told?.todo).toContain('Charge it');
  });

  it('is told on the last visit before that day, and not before it', () => {
    const slow: StayGiven = {
      parts: {
        'battery-flooded': {
          readings: [volts(12.7, PARKED)],
          details: { chemistry: 'calcium', capacity: 100, drain: 8, connection: 'connected' },
        },
      },
    };
    // About 0.24 percent a day: at three quarters late in January, so the round of 1 January is the last chance.
    expect(keys(slow, '2026-12-31')).not.toContain('battery-recharge');
    const told = warning(slow, '2027-01-01', 'battery-recharge');
    expect(told?.begins).toBe('2027-01-01');
    expect(told?.title).toMatch(/by .*January 2027, before the visit after this one/);
  });

  it('that says it already has fallen says “already”', () =>
    expect(warning(battery(12.7, 'connected'), '2027-02-01', 'battery-recharge')?.title).toContain('already'));

  it.each(['maintainer', 'disconnected'])('that is %s is not warned of all winter', (connection) => {
    for (const on of [PARKED, '2026-12-15', '2027-03-30'] as const)
      expect(keys(battery(12.8, connection), on).filter((key) => key.startsWith('battery'))).toEqual([]);
  });

  it('that was never read is asked for after a month, and not before', () => {
    expect(keys({}, '2026-11-30')).not.toContain('battery-unread');
    expect(warning({}, '2026-12-01', 'battery-unread')?.begins).toBe('2026-12-01');
    expect(keys(battery(12.7, 'maintainer'), '2027-01-01')).not.toContain('battery-unread');
  });

  it('could freeze, where nights are cold and it is going flat', () => {
    const cold = battery(12.7, 'connected', { place: placeOf({ winterLow: -25 }) });
    const told = warning(cold, '2027-01-15', 'battery-freezes');
    expect(told?.title).toMatch(/could freeze there from/);
    expect(told?.todo).toContain('before that night');
    expect(keys(battery(12.7, 'connected', { place: placeOf({ winterLow: 5 }) }), '2027-03-01')).not.toContain(
      'battery-freezes',
    );
  });

  it('of a car without one is nothing', () =>
    expect(keys({ start: 'tourer-rod-brakes' }, '2027-03-01').filter((key) => key.startsWith('battery'))).toEqual([]));
});

describe('fuel', () => {
  const filled = (details: Record<string, string | number>, months = 0): StayGiven => ({
    months: null,
    place: placeOf({ winterLow: -5, summerHigh: 20 }),
    parts: { 'fuel-gasoline': { ...aged('fuel-gasoline', months), details } },
  });
  const first = (given: StayGiven, key: string): CivilDate | undefined =>
    Array.from({ length: 30 }, (_, n) => addMonths(PARKED, n)).find((on) => keys(given, on).includes(key));

  // E10 untreated: three months to a doubt, six to an end; treated 12; without ethanol, treated, 12 and 24.
  it.each([
    ['e10', 'no', 3, 6],
    ['e0', 'yes', 12, 24],
  ] as const)('%s, treated: %s, is getting old after %d months and over after %d', (blend, stabilized, watch, stop) => {
    const given = filled({ blend, stabilized, fullness: 95 });
    for (const [key, months] of [
      ['fuel-watch', watch],
      ['fuel-stop', stop],
    ] as const)
      expect([addMonths(PARKED, months), addMonths(PARKED, months + 1)]).toContain(first(given, key));
  });

  it('E10, treated, is over after a year, and told once', () => {
    const given = filled({ blend: 'e10', stabilized: 'yes', fullness: 95 });
    expect([addMonths(PARKED, 12), addMonths(PARKED, 13)]).toContain(first(given, 'fuel-stop'));
    expect(first(given, 'fuel-watch')).toBeUndefined();
  });

  it('nobody can date is not said to be good or old', () =>
    expect(
      keys({ parts: { 'fuel-gasoline': undated('fuel-gasoline') } }, '2027-03-01').filter((key) => /^fuel/.test(key)),
    ).toEqual([]));
});

describe('papers', () => {
  const papers = (told: Partial<Papers>, on: CivilDate): string[] => keys({ papers: told, months: 12 }, on);

  it.each([
    ['2027-01-30', false],
    ['2027-01-31', true],
    ['2027-03-02', true],
    ['2027-04-01', true],
    ['2027-04-02', false],
  ] as const)('a policy that ends on 2 March is told from 30 days before to 30 after: on %s %s', (on, told) =>
    expect(papers({ renewsOn: '2027-03-02' }, on).includes('policy')).toBe(told),
  );

  it('say that it ran out once it has', () => {
    const at = (on: CivilDate) => warning({ papers: { renewsOn: '2027-03-02' }, months: 12 }, on, 'policy')?.title;
    expect(at('2027-03-02')).toContain('runs out or renews on');
    expect(at('2027-03-03')).toContain('ran out or renewed on');
  });

  it.each([
    ['2026-12-01', '2026-12-01', false],
    ['2026-12-01', '2026-12-02', true],
    ['2026-12-05', '2026-12-01', false],
  ] as const)('road cover to %s with the notice from %s is a gap: %s', (roadUntil, noticeFrom, gap) =>
    expect(papers({ roadUntil, noticeFrom }, PARKED).includes('papers-gap')).toBe(gap),
  );

  it('with one of the two untold are no gap that could be known', () =>
    expect(papers({ roadUntil: '2026-12-01' }, PARKED)).not.toContain('papers-gap'));
});

describe('months gone by', () => {
  it.each([
    ['stood-9', 9],
    ['stood-12', 12],
  ])('%s is heard from %d months on', (key, months) => {
    const day = addMonths(PARKED, months);
    expect(keys({ months: null }, addDays(day, -1))).not.toContain(key);
    expect(warning({ months: null }, day, key)?.begins).toBe(day);
    // Not where it was back by then anyway.
    expect(keys({ months }, day)).not.toContain(key);
    expect(keys({ months, days: 1 }, day)).toContain(key);
  });

  it('a car that did not come back is told of after two weeks', () => {
    expect(keys({}, '2027-04-14')).not.toContain('overdue');
    expect(warning({}, '2027-04-15', 'overdue')?.title).toContain('It was to come back on');
    expect(keys({ months: null }, '2029-04-15')).not.toContain('overdue');
  });
});

it('nothing warns before the parking day, and nothing begins before it', () => {
  const given = battery(12.0, 'connected', { papers: { renewsOn: '2026-11-05' } });
  expect(warnings(given, addDays(PARKED, -1))).toEqual([]);
  const told = warnings(given, PARKED);
  expect(told.map(({ key }) => key)).toEqual(expect.arrayContaining(['battery-recharge', 'policy']));
  for (const { begins } of told) expect(begins >= PARKED).toBe(true);
});

it('every warning is told under a key of its own', () => {
  const given = battery(12.2, 'connected', {
    place: placeOf({ winterLow: -25 }),
    months: 14,
    papers: { renewsOn: '2028-01-01', roadUntil: '2026-11-01', noticeFrom: '2026-11-10' },
  });
  const all = keys(given, '2028-01-20');
  expect(all.length).toBeGreaterThan(5);
  expect(new Set(all).size).toBe(all.length);
});
