import { describe, expect, it } from 'vitest';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import type { Answers, Claim, Reading } from '../../src/findings/facts.ts';
import { asksOf } from '../../src/findings/outlook.ts';
import { owed, type Said, STAGES, type Stage } from '../../src/notices/owed.ts';
import { carOf, dated, finding } from '../support/parts.ts';
import { FROSTY, reading } from '../support/readings.ts';

const PART = 'tires-road';
const MADE = dated('made', '2016-01-15');

const saidBy = (...lines: [Stage, CivilDate][]): Map<string, Said[]> =>
  new Map([[PART, lines.map(([stage, saidOn]) => ({ partId: PART, stage, saidOn }))]]);
const news = (claims: readonly Claim[], on: CivilDate, said: Map<string, Said[]> = new Map()): string[] =>
  owed([finding(PART, claims, on)], said).map(({ standing }) => standing);

/** Look from 15 January 2021, due from 15 October 2025, past from 16 January 2026. */
describe('what is owed of one part', () => {
  it.each<[string, CivilDate, string[]]>([
    ['in date says nothing', '2021-01-14', []],
    ['look is said on its first day', '2021-01-15', ['look']],
    ['and later, where nobody was told', '2024-01-15', ['look']],
    ['due is said', '2025-10-15', ['due']],
    ['past is said', '2026-01-16', ['past']],
  ])('%s', (_, on, wanted) => expect(news([MADE], on)).toEqual(wanted));

  it('unproven is a task on the list and no news', () => {
    expect(news([], '2026-11-25')).toEqual([]);
    expect(owed([finding('v-belt', [dated('made', '2015-01-01', '2023-12-31')], '2026-11-25')], new Map())).toEqual([]);
  });

  it('nothing is said twice, on the same day or on any later one', () => {
    const said = saidBy(['look', '2021-01-15']);
    for (const on of ['2021-01-15', '2021-01-16', '2025-10-14'] as CivilDate[])
      expect(news([MADE], on, said)).toEqual([]);
  });

  it('a graver stage is said, though the milder one was', () => {
    expect(news([MADE], '2025-10-15', saidBy(['look', '2021-01-15']))).toEqual(['due']);
    expect(news([MADE], '2026-01-16', saidBy(['look', '2021-01-15'], ['due', '2025-10-15']))).toEqual(['past']);
  });

  it('a stage that was skipped is not made up for', () => {
    const said = saidBy(['past', '2026-01-16']);
    expect(news([MADE], '2026-02-01', said)).toEqual([]);
  });

  it('walked day by day, each stage is told once and on its first day', () => {
    const said: Said[] = [];
    for (let day = 0; day <= daysBetween('2020-12-01', '2026-03-01'); day++) {
      const on = addDays('2020-12-01', day);
      for (const { told } of owed([finding(PART, [MADE], on)], new Map([[PART, said]])))
        for (const stage of told) said.push({ partId: PART, stage, saidOn: on });
    }
    expect(said.map(({ stage, saidOn }) => [stage, saidOn])).toEqual([
      ['look', '2021-01-15'],
      ['due', '2025-10-15'],
      ['past', '2026-01-16'],
    ]);
  });

  it('an item past by distance is not told again when age says the same', () => {
    const claims = [dated('filled', '2026-01-01', '2026-01-01', { km: 10_000 })];
    const car = carOf({ odometer: [{ day: '2026-02-01', km: 15_001 }] });
    const oil = (on: CivilDate) => finding('engine-oil', claims, on, { car });
    const said = new Map<string, Said[]>([
      ['engine-oil', [{ partId: 'engine-oil', stage: 'past', saidOn: '2026-02-02' }]],
    ]);
    expect(owed([oil('2026-02-02')], new Map())).toHaveLength(1);
    for (const on of ['2026-02-03', '2026-11-01', '2027-01-02', '2028-01-01'] as CivilDate[])
      expect(owed([oil(on)], said)).toEqual([]);
  });
});

describe('a stage that begins again', () => {
  const said = saidBy(['look', '2021-01-15']);

  it('after a look is said again, a year on', () => {
    const looked = [MADE, dated('serviced', '2021-03-01')];
    expect(news(looked, '2022-02-28', said)).toEqual([]);
    expect(news(looked, '2022-03-01', said)).toEqual(['look']);
    expect(news(looked, '2022-03-02', saidBy(['look', '2021-01-15'], ['look', '2022-03-01']))).toEqual([]);
  });

  it('after a better date moved it into the future is said when it comes', () => {
    const corrected = [dated('made', '2018-06-01')];
    expect(news(corrected, '2022-01-01', said)).toEqual([]);
    expect(news(corrected, '2023-06-01', said)).toEqual(['look']);
  });

  it('of a renewed part is another part’s and said for it', () => {
    const next = finding(PART, [dated('made', '2026-01-15')], '2031-01-15', { part: { id: 'next' } });
    expect(owed([next], saidBy(['look', '2021-01-15'], ['past', '2026-01-16']))).toEqual([
      { ...next, told: ['look'], lastSaid: null },
    ]);
  });
});

describe('a correction that moves the day back', () => {
  it('says nothing new of the same stage', () => {
    const said = saidBy(['look', '2021-01-15']);
    expect(news([dated('made', '2015-10-01')], '2021-01-16', said)).toEqual([]);
  });

  it('but says the graver stage it leads to', () => {
    const said = saidBy(['look', '2021-01-15']);
    expect(news([dated('made', '2010-01-15')], '2021-01-16', said)).toEqual(['past']);
  });
});

describe('several parts', () => {
  it('are each held against what was said of them alone, in their order', () => {
    const findings = ['a', 'b', 'c'].map((id) => finding(PART, [MADE], '2026-02-01', { part: { id } }));
    const said = new Map<string, Said[]>([
      ['a', [{ partId: 'a', stage: 'past', saidOn: '2026-01-16' }]],
      ['c', [{ partId: 'c', stage: 'due', saidOn: '2025-10-15' }]],
    ]);
    expect(owed(findings, said).map(({ part }) => part.id)).toEqual(['b', 'c']);
  });

  it('the stages told are three of age, two of readings and one of estimates', () =>
    expect(STAGES).toEqual(['look', 'due', 'past', 'watch', 'act', 'estimate']));
});

describe('what is owed of readings', () => {
  const volts = (day: CivilDate, value: number): Reading => reading('rest-voltage', day, value);
  const NEW = [dated('made', '2026-01-15')];
  const battery = (readings: Reading[], on: CivilDate, claims: readonly Claim[] = NEW) =>
    finding('battery-flooded', claims, on, { part: { readings } });
  const told = (readings: Reading[], on: CivilDate, said: Said[] = [], claims: readonly Claim[] = NEW): Stage[] =>
    owed([battery(readings, on, claims)], new Map([['battery-flooded', said]])).flatMap(({ told }) => told);
  const toldOn = (stage: Stage, saidOn: CivilDate): Said => ({ partId: 'battery-flooded', stage, saidOn });

  const BAD = [volts('2026-06-01', 12.2)];

  it('is the reading itself, and no stage of age', () => {
    expect(told(BAD, '2026-05-31')).toEqual([]);
    expect(told(BAD, '2026-06-01')).toEqual(['act']);
    expect(told([volts('2026-06-01', 12.45)], '2026-06-01')).toEqual(['watch']);
    expect(told([volts('2026-06-01', 12.65)], '2026-06-01')).toEqual([]);
  });

  it('is told of a part without a date, and of one past by age already', () => {
    expect(told(BAD, '2026-06-02', [], [])).toEqual(['act']);
    const old = [dated('made', '2012-01-15')];
    expect(told(BAD, '2026-06-02', [toldOn('past', '2018-01-16')], old)).toEqual(['act']);
    expect(told(BAD, '2026-06-02', [], old)).toEqual(['past', 'act']);
  });

  it('is told once a run, however many bad readings it has', () => {
    const said = [toldOn('act', '2026-06-02')];
    expect(told(BAD, '2026-06-03', said)).toEqual([]);
    expect(told([...BAD, volts('2026-07-01', 12.1)], '2026-07-02', said)).toEqual([]);
    expect(told([...BAD, volts('2026-07-01', 12.45)], '2026-07-02', said)).toEqual([]);
  });

  it('is told again after a good one in between', () => {
    const said = [toldOn('act', '2026-06-02')];
    const charged = [...BAD, volts('2026-07-01', 12.7)];
    expect(told(charged, '2026-07-02', said)).toEqual([]);
    expect(told([...charged, volts('2026-08-01', 12.2)], '2026-08-02', said)).toEqual(['act']);
    expect(told([...charged, volts('2026-08-01', 12.45)], '2026-08-02', said)).toEqual(['watch']);
  });

  it('is told again where “watch” turns to “act”', () => {
    const said = [toldOn('watch', '2026-06-02')];
    expect(told([volts('2026-06-01', 12.45), volts('2026-07-01', 12.2)], '2026-07-02', said)).toEqual(['act']);
  });

  it('stages of age silence none of readings, nor the other way round', () => {
    const old = [dated('made', '2020-08-15')];
    expect(told(BAD, '2026-06-02', [toldOn('past', '2026-06-02')])).toEqual(['act']);
    expect(told(BAD, '2026-06-02', [toldOn('due', '2026-06-02')], old)).toEqual(['act']);
    expect(told(BAD, '2026-06-02', [toldOn('act', '2026-06-02')], old)).toEqual(['due']);
    const said = [toldOn('due', '2026-06-02'), toldOn('act', '2026-06-02'), toldOn('estimate', '2026-08-15')];
    expect(told(BAD, '2026-08-16', said, old)).toEqual(['past']);
  });

  it('is told of a second gauge that turns bad later, and of both once', () => {
    const both = [...BAD, reading('density', '2026-06-10', 1.1, 27)];
    expect(told(both, '2026-06-11', [toldOn('act', '2026-06-02')])).toEqual(['act']);
    expect(told(both, '2026-06-12', [toldOn('act', '2026-06-02'), toldOn('act', '2026-06-11')])).toEqual([]);
    // Milder than what was told already, it adds nothing.
    const milder = [...BAD, reading('density', '2026-06-10', 1.23, 27)];
    expect(told(milder, '2026-06-11', [toldOn('act', '2026-06-02')])).toEqual([]);
  });

  it('counts from the day it was written down, and not from a day ahead of it', () => {
    const late = volts('2026-06-01', 12.2);
    const said = [toldOn('act', '2026-06-05')];
    expect(told([late], '2026-06-20', said)).toEqual([]);
    expect(told([{ ...late, recordedOn: '2026-06-20' }], '2026-06-20', said)).toEqual(['act']);
    expect(told([{ ...late, recordedOn: '2026-06-20' }], '2026-06-21', [toldOn('act', '2026-06-20')])).toEqual([]);
  });

  it('an older one of the same run, written down later, is told no second time', () => {
    const older = reading('rest-voltage', '2026-05-20', 12.2, null, { recordedOn: '2026-06-20' });
    expect(told([older, ...BAD], '2026-06-21', [toldOn('act', '2026-06-02')])).toEqual([]);
  });

  it('counts from the day the car was put where it is judged by, and only where it is', () => {
    const on = '2026-09-02';
    const told = (kind: string, read: Reading, said: Stage, placedOn: CivilDate): Stage[] =>
      owed(
        [finding(kind, [], on, { car: carOf({ place: FROSTY, placedOn }), part: { readings: [read] } })],
        new Map([[kind, [{ partId: kind, stage: said, saidOn: '2026-06-15' }]]]),
      ).flatMap((one) => one.told);
    const slush = reading('freeze-point', '2026-06-01', -19);
    expect(told('coolant-iat', slush, 'act', '2026-06-10')).toEqual([]);
    expect(told('coolant-iat', slush, 'act', '2026-09-01')).toEqual(['act']);
    expect(told('battery-flooded', volts('2026-06-01', 12.2), 'act', '2026-09-01')).not.toContain('act');
  });
});

describe('what is owed of estimates', () => {
  const READ = reading('rest-voltage', '2026-03-01', 12.65);
  const CAR = carOf({ place: FROSTY, drain: 10 });
  const on = (day: CivilDate, details: Answers = { connection: 'connected', capacity: 60 }) =>
    finding('battery-flooded', [dated('made', '2026-01-15')], day, { car: CAR, part: { readings: [READ], details } });
  const told = (day: CivilDate, said: Said[]): Stage[] =>
    owed([on(day)], new Map([['battery-flooded', said]])).flatMap((one) => one.told);

  it('each day that comes is told by itself, once and on that day', () => {
    const said: Said[] = [];
    for (let day: CivilDate = '2026-03-01'; day <= '2027-03-01'; day = addDays(day, 1))
      for (const stage of told(day, said)) said.push({ partId: 'battery-flooded', stage, saidOn: day });
    // Down to three quarters, no longer to crank, to freeze in the first cold month.
    expect(said).toHaveLength(3);
    expect(new Set(said.map(({ stage }) => stage))).toEqual(new Set(['estimate']));
    expect(said.map(({ saidOn }) => saidOn)).toEqual(asksOf(on('2027-03-01')));
    expect(on('2027-03-01')).toMatchObject({ standing: 'look', by: 'estimate', began: said[0]?.saidOn });
  });

  it('days that came unseen are told as one', () => {
    expect(told('2027-03-01', [])).toEqual(['estimate']);
    expect(told('2027-03-02', [{ partId: 'battery-flooded', stage: 'estimate', saidOn: '2027-03-01' }])).toEqual([]);
  });

  it('neither hides a stage of age or of a reading, nor is hidden by one', () => {
    const before: Said[] = (['look', 'due', 'past', 'watch', 'act'] as const).map((stage) => ({
      partId: 'battery-flooded',
      stage,
      saidOn: '2027-03-01',
    }));
    expect(told('2027-03-01', before)).toEqual(['estimate']);
    const part = { readings: [READ], details: { connection: 'connected' } };
    const old = finding('battery-flooded', [dated('made', '2012-01-15')], '2027-03-01', { car: CAR, part });
    const said = new Map([
      ['battery-flooded', [{ partId: 'battery-flooded', stage: 'estimate' as const, saidOn: '2027-03-01' as const }]],
    ]);
    expect(owed([old], said)).toMatchObject([{ told: ['past'] }]);
    expect(owed([old], new Map())).toMatchObject([{ told: ['past', 'estimate'] }]);
  });
});
