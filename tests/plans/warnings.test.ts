import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import type { Reading } from '../../src/findings/facts.ts';
import { viewOf } from '../../src/plans/standing.ts';
import type { Papers } from '../../src/plans/stay.ts';
import type { Warning } from '../../src/plans/warnings/warning.ts';
import { aged, PARKED, placeOf, roundMade, type StayGiven, stayOf, tick, undated } from '../support/stays.ts';

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

  it('that may have fallen by the day it is seen says so, and tells no day that is over', () =>
    expect(warning(battery(12.7, 'connected'), '2027-02-01', 'battery-recharge')?.title).toBe(
      'The battery may be down to three quarters or less by now (read on 1 November 2026)',
    ));

  it.each(['maintainer', 'disconnected'])('that is %s is not warned of all winter', (connection) => {
    for (const on of [PARKED, '2026-12-15', '2027-03-30'] as const)
      expect(keys(battery(12.8, connection), on).filter((key) => key.startsWith('battery'))).toEqual([]);
  });

  it('is not counted as kept up by a maintainer whose lamp showed a fault, until a later round saw it full', () => {
    const failed = battery(12.7, 'maintainer', { rounds: [roundMade('2026-12-01', { lamp: 'fault' })] });
    expect(keys(failed, '2026-11-30')).not.toContain('battery-recharge');
    expect(keys(failed, '2026-12-02')).toContain('battery-recharge');
    const mended = { ...failed, rounds: [...(failed.rounds ?? []), roundMade('2027-01-01', { lamp: 'full' })] };
    expect(keys(mended, '2027-01-02')).not.toContain('battery-recharge');
    const charging = battery(12.7, 'maintainer', { rounds: [roundMade('2026-12-01', { lamp: 'charging' })] });
    expect(keys(charging, '2026-12-02')).not.toContain('battery-recharge');
  });

  it('kept disconnected that falls all the same is charged where it is kept', () =>
    expect(warning(battery(12.4, 'disconnected'), '2027-03-30', 'battery-recharge')?.todo).toContain(
      'Charge it where it is kept',
    ));

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

  it('nobody can date is not said to be good or old: its day is asked for, after a month', () => {
    const given: StayGiven = { parts: { 'fuel-gasoline': undated('fuel-gasoline') } };
    const told = (on: CivilDate): string[] => keys(given, on).filter((key) => /^fuel/.test(key));
    expect(told('2026-11-30')).toEqual([]);
    expect(told('2026-12-01')).toEqual(['fuel-undated']);
    expect(told('2027-03-01')).toEqual(['fuel-undated']);
    const drained: StayGiven = { ...given, ticks: [tick('lay-up', 'drain-tank', PARKED)] };
    expect(keys(drained, '2027-03-01')).not.toContain('fuel-undated');
  });
});

describe('coolant that nobody measured', () => {
  const told = (given: StayGiven): Warning | undefined => warning(given, PARKED, 'coolant-unmeasured');
  const sample: Reading = {
    gauge: 'freeze-point',
    day: '2026-10-01',
    value: -30,
    unit: '°C',
    warmth: null,
    recordedOn: '2026-10-01',
  };

  it('is told from the parking day on, where it can freeze or nobody said where it stands', () => {
    expect(told({})).toMatchObject({ begins: PARKED, title: expect.stringMatching(/nights there fall to −12 °C/) });
    expect(told({ place: null })?.title).toContain('nobody has said where it stands');
    expect(told({ place: placeOf({ winterLow: 5 }) })).toBeUndefined();
    expect(told({ start: 'rear-engine-air-cooled' })).toBeUndefined();
  });

  it('is not told once it was measured, or the step is ticked', () => {
    expect(told({ parts: { 'coolant-iat': { readings: [sample] } } })).toBeUndefined();
    const ticks = (state: 'done' | 'skipped') => [tick('lay-up', 'coolant-strength', '2026-10-20', { state })];
    expect(told({ ticks: ticks('done') })).toBeUndefined();
    expect(told({ ticks: ticks('skipped') })).toBeDefined();
  });

  it('is told where it was changed after it was measured', () => {
    const ticks = [tick('lay-up', 'coolant-strength', '2026-09-20')];
    expect(told({ ticks, parts: { 'coolant-iat': aged('coolant-iat', 1) } })).toBeDefined();
    expect(told({ ticks, parts: { 'coolant-iat': aged('coolant-iat', 2) } })).toBeUndefined();
  });
});

const GAPS = ['notice-late', 'uncovered', 'road-cover-early', 'notice-early'];

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
    expect(papers({ roadUntil, noticeFrom }, PARKED).includes('notice-late')).toBe(gap),
  );

  it.each([
    ['2026-12-02', false],
    ['2026-12-03', true],
  ] as const)('road cover to 1 December with storage cover from %s is a gap: %s', (storageFrom, gap) =>
    expect(papers({ roadUntil: '2026-12-01', storageFrom }, PARKED).includes('uncovered')).toBe(gap),
  );

  it('with one of the two untold are no gap that could be known', () =>
    expect(papers({ roadUntil: '2026-12-01' }, PARKED).filter((key) => GAPS.includes(key))).toEqual([]));

  it('with a gap are heard 30 days before it opens, before the parking day too', () => {
    const told = { roadUntil: '2026-10-20' } as const;
    expect(papers(told, '2026-09-19')).not.toContain('road-cover-early');
    expect(papers(told, '2026-09-20')).toContain('road-cover-early');
    // A notice that is early lets nothing lapse: it is read on the steps.
    expect(papers({ noticeFrom: '2026-10-20' }, PARKED)).not.toContain('notice-early');
  });
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

  it.each([
    ['2027-05-14', '2027-04-15'],
    ['2027-05-15', '2027-05-15'],
    ['2028-01-20', '2028-01-15'],
  ] as const)('a car that did not come back is told of anew each month: on %s from %s', (on, begins) =>
    expect(warning({}, on, 'overdue')?.begins).toBe(begins),
  );

  it('one that stands on beyond the day it was to be back is told of its months', () => {
    expect(keys({ months: 2 }, '2027-08-01')).toContain('stood-9');
    expect(keys({ months: 2 }, '2027-11-01')).toContain('stood-12');
  });

  it('nobody ticked that it was parked is told after two weeks', () => {
    expect(keys({}, '2026-11-14')).not.toContain('unparked');
    expect(warning({}, '2026-11-15', 'unparked')?.begins).toBe('2026-11-15');
    const ticks = (state: 'done' | 'skipped') => [tick('lay-up', 'park', PARKED, { state })];
    expect(keys({ ticks: ticks('done') }, '2026-11-15')).not.toContain('unparked');
    expect(keys({ ticks: ticks('skipped') }, '2026-11-15')).toContain('unparked');
    // Made after the parking day: who made it said that it stands.
    expect(keys({ ahead: -1 }, '2026-11-15')).not.toContain('unparked');
  });
});

it('nothing but the papers warns before the parking day, and nothing else begins before it', () => {
  const given = battery(12.0, 'connected', { papers: { renewsOn: '2026-11-05' } });
  expect(keys(given, addDays(PARKED, -1))).toEqual(['policy']);
  const told = warnings(given, PARKED);
  expect(told.map(({ key }) => key)).toEqual(expect.arrayContaining(['battery-recharge', 'policy']));
  for (const { key, begins } of told) expect(begins >= PARKED || key === 'policy', key).toBe(true);
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
