import { describe, expect, it } from 'vitest';
import { coldestNight, type Place } from '../../src/ageing/place.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Answers, CarFacts, Reading } from '../../src/findings/facts.ts';
import {
  gaugesOf,
  gravestOf,
  type Measured,
  measuredOf,
  newsOfGravest,
  standingByReading,
} from '../../src/findings/measured.ts';
import { carOf, dated, finding, kindOf, partOf } from '../support/parts.ts';
import { FROSTY, reading } from '../support/readings.ts';

const TODAY: CivilDate = '2026-11-25';

const measured = (
  kind: string,
  readings: readonly Reading[],
  {
    details = {},
    car = carOf(),
    on = TODAY,
    from = null,
  }: {
    details?: Answers;
    car?: CarFacts;
    on?: CivilDate;
    from?: CivilDate | null;
  } = {},
): readonly Measured[] =>
  measuredOf({ part: partOf(kind, [], { readings, details }), kind: kindOf(kind), car }, on, from);

const gravest = (...given: Parameters<typeof measured>): Measured | null => gravestOf(measured(...given));

const volts = (day: CivilDate, value: number): Reading => reading('rest-voltage', day, value);
const density = (day: CivilDate, value: number, warmth: number | null = 26.7): Reading =>
  reading('density', day, value, warmth);

describe('the gauges of a kind', () => {
  it('are its tests that answer with a number, in their order', () => {
    expect(gaugesOf(kindOf('tires-road')).map(({ gauge }) => gauge.key)).toEqual([
      'tread',
      'hardness',
      'cold-pressure',
      'pressure-loss',
    ]);
    expect(gaugesOf(kindOf('brake-hoses'))).toEqual([]);
  });
});

describe('what was measured', () => {
  it('is the last reading of each gauge, in the order of the tests', () => {
    const found = measured('battery-flooded', [
      density('2026-01-05', 1.27),
      volts('2026-01-05', 12.2),
      density('2026-02-05', 1.23),
      volts('2026-03-05', 12.65),
    ]);
    expect(found.map(({ test, reading: { day, value }, verdict }) => [test.gauge.key, day, value, verdict])).toEqual([
      ['rest-voltage', '2026-03-05', 12.65, 'good'],
      ['density', '2026-02-05', 1.23, 'watch'],
    ]);
  });

  it.each([
    [[12.2, 12.7, 12.45], 12.45],
    [[12.7, 12.45, 12.2], 12.2],
    [[12.2, 12.45, 12.8], 12.8],
  ])('of %j on one day is the one recorded last: a battery was charged in between', (values, last) => {
    const found = measured('battery-flooded', [
      volts('2026-02-05', 11.9),
      ...values.map((value) => volts('2026-03-05', value)),
    ]);
    expect(found.map(({ reading: { day, value } }) => [day, value])).toEqual([['2026-03-05', last]]);
  });

  it.each([
    [[4, 1, 2], 4],
    [[1, 2, 4], 4],
    [[1, 4, 2], 4],
  ])('of %j %% water sampled on one day is the gravest: every caliper has its own', (values, gravest) => {
    const found = measured('brake-fluid-glycol', [
      reading('water', '2026-02-05', 5),
      ...values.map((value) => reading('water', '2026-03-05', value)),
    ]);
    expect(found.map(({ reading: { day, value } }) => [day, value])).toEqual([['2026-03-05', gravest]]);
  });

  it('is a newer one not judged as well, beside the one that is', () => {
    const found = measured('battery-flooded', [density('2026-03-01', 1.1), density('2026-04-01', 1.27, null)]);
    expect(found.map(({ reading: { day }, verdict }) => [day, verdict])).toEqual([
      ['2026-03-01', 'act'],
      ['2026-04-01', null],
    ]);
    // An older one is passed over.
    const older = measured('battery-flooded', [density('2026-03-01', 1.1, null), density('2026-04-01', 1.27)]);
    expect(older.map(({ reading: { day }, verdict }) => [day, verdict])).toEqual([['2026-04-01', 'good']]);
  });

  it('passes over what was read of the fluid before', () => {
    const readings = [reading('water', '2026-03-01', 4), reading('water', '2026-04-01', 1)];
    const since = (from: CivilDate) =>
      measured('brake-fluid-glycol', readings, { from }).map(({ reading: { day }, began }) => [day, began]);
    expect(since('2026-03-01')).toEqual([['2026-04-01', '2026-03-01']]);
    // The graver one of before belongs to no run of this fluid.
    expect(since('2026-03-02')).toEqual([['2026-04-01', '2026-04-01']]);
    expect(since('2026-04-01')).toEqual([['2026-04-01', '2026-04-01']]);
    expect(since('2026-04-02')).toEqual([]);
    expect(measured('brake-fluid-glycol', readings.slice(0, 1), { from: '2026-03-02' })).toEqual([]);
  });

  it('of a kind that goes by its fill counts from there, of another from whenever', () => {
    const filled = (day: CivilDate) =>
      finding('brake-fluid-glycol', [dated('filled', day)], TODAY, {
        part: { readings: [reading('water', '2026-03-01', 4)] },
      });
    expect(filled('2026-03-01')).toMatchObject({ standing: 'past', by: 'reading' });
    expect(filled('2026-03-02')).toMatchObject({ standing: 'in date', measured: [] });
    const made = (day: CivilDate) =>
      finding('battery-flooded', [dated('made', day)], TODAY, { part: { readings: [volts('2026-03-01', 12.2)] } });
    expect(made('2026-03-02')).toMatchObject({ standing: 'due', gravest: { began: '2026-03-01' } });
  });

  it('counts a reading from its own day on, and none of a day ahead', () => {
    const readings = [volts('2026-03-05', 12.65), volts('2026-06-05', 12.2)];
    expect(measured('battery-flooded', readings, { on: '2026-03-04' })).toEqual([]);
    expect(measured('battery-flooded', readings, { on: '2026-06-04' })).toMatchObject([{ verdict: 'good' }]);
    expect(measured('battery-flooded', readings, { on: '2026-06-05' })).toMatchObject([{ verdict: 'act' }]);
  });

  it('leaves out a gauge its kind does not have', () => {
    expect(measured('battery-flooded', [reading('flux', '2026-03-05', 1)])).toEqual([]);
    expect(measured('battery-flooded', [])).toEqual([]);
  });
});

describe('a run of readings', () => {
  it.each<[string, Reading[], CivilDate]>([
    ['one reading is a run of one', [volts('2026-03-01', 12.2)], '2026-03-01'],
    ['as grave ones go on with it', [volts('2026-03-01', 12.2), volts('2026-04-01', 12.1)], '2026-03-01'],
    ['it begins after the last good one', [volts('2026-02-01', 12.7), volts('2026-03-01', 12.2)], '2026-03-01'],
    [
      'a good one between ends it',
      [volts('2026-02-01', 12.2), volts('2026-03-01', 12.7), volts('2026-04-01', 12.2)],
      '2026-04-01',
    ],
    ['a milder one before is not of it', [volts('2026-02-01', 12.45), volts('2026-03-01', 12.2)], '2026-03-01'],
    ['a graver one before is of it', [volts('2026-02-01', 12.2), volts('2026-03-01', 12.45)], '2026-02-01'],
  ])('%s', (_, readings, began) => expect(measured('battery-flooded', readings)[0]?.began).toBe(began));
});

describe('the day a run is news', () => {
  const news = (kind: string, readings: readonly Reading[], car?: CarFacts): CivilDate | undefined =>
    measured(kind, readings, car ? { car } : {})[0]?.news;
  const slush = reading('freeze-point', '2026-03-01', -19);

  it('is the later of the day it was read and the day it was written down', () => {
    expect(news('battery-flooded', [volts('2026-03-01', 12.2)])).toBe('2026-03-01');
    expect(news('battery-flooded', [{ ...volts('2026-03-01', 12.2), recordedOn: '2026-05-01' }])).toBe('2026-05-01');
  });

  it('is that of the first of its run', () => {
    const run = [volts('2026-03-01', 12.2), volts('2026-04-01', 12.1)];
    expect(news('battery-flooded', run)).toBe('2026-03-01');
  });

  it('waits for the car to stand where the reading is judged by', () => {
    expect(news('coolant-iat', [slush], carOf({ place: FROSTY, placedOn: '2026-06-01' }))).toBe('2026-06-01');
    expect(news('coolant-iat', [slush], carOf({ place: FROSTY, placedOn: '2026-01-01' }))).toBe('2026-03-01');
    const placed = carOf({ place: FROSTY, placedOn: '2026-06-01' });
    expect(news('battery-flooded', [volts('2026-03-01', 12.2)], placed)).toBe('2026-03-01');
  });

  it('of several gauges is that of the newest as grave', () => {
    const found = measured('battery-flooded', [volts('2026-03-01', 12.2), density('2026-04-01', 1.1)]);
    expect(newsOfGravest(found, gravestOf(found))).toBe('2026-04-01');
    const milder = measured('battery-flooded', [volts('2026-03-01', 12.2), density('2026-04-01', 1.23)]);
    expect(newsOfGravest(milder, gravestOf(milder))).toBe('2026-03-01');
    expect(newsOfGravest([], null)).toBeNull();
  });
});

describe('the reading that weighs most', () => {
  it('is none where nothing was read, or all of it is good or not judged', () => {
    expect(gravestOf([])).toBeNull();
    expect(gravest('battery-flooded', [volts('2026-03-01', 12.7)])).toBeNull();
    expect(gravest('tires-road', [reading('cold-pressure', '2026-03-01', 0.5)])).toBeNull();
  });

  it('is the gravest, whatever the order of gauges and days', () => {
    const acting = [volts('2026-03-01', 12.2), density('2026-04-01', 1.23)];
    expect(gravest('battery-flooded', acting)).toMatchObject({ verdict: 'act', reading: { gauge: 'rest-voltage' } });
    const other = [volts('2026-03-01', 12.45), density('2026-04-01', 1.1)];
    expect(gravest('battery-flooded', other)).toMatchObject({ verdict: 'act', reading: { gauge: 'density' } });
  });

  it('of two as grave is the one whose run began first', () => {
    const readings = [density('2026-03-01', 1.1), volts('2026-04-01', 12.2), density('2026-05-01', 1.1)];
    expect(gravest('battery-flooded', readings)).toMatchObject({ reading: { gauge: 'density' }, began: '2026-03-01' });
  });
});

describe('the standing readings bring', () => {
  it('of a safety part is past for “act”, of another due; “watch” is a look', () => {
    const [act, watch, good] = [12.2, 12.45, 12.7].map(
      (value) => measured('battery-flooded', [volts('2026-03-01', value)])[0] ?? null,
    );
    expect([act, watch, good].map((one) => one?.verdict)).toEqual(['act', 'watch', 'good']);
    expect([act, watch, good, null].map((one) => standingByReading(one ?? null, true))).toEqual([
      'past',
      'look',
      'in date',
      'in date',
    ]);
    expect([act, watch, good, null].map((one) => standingByReading(one ?? null, false))).toEqual([
      'due',
      'look',
      'in date',
      'in date',
    ]);
  });
});

describe('what is missing', () => {
  it('a temperature leaves an acid density unjudged, and says so', () => {
    expect(measured('battery-flooded', [density('2026-03-01', 1.1, null)])).toMatchObject([
      { verdict: null, wants: 'its temperature' },
    ]);
  });

  it('a place leaves a freezing point unjudged; a place told judges it', () => {
    const readings = [reading('freeze-point', '2026-03-01', -25)];
    expect(measured('coolant-iat', readings)).toMatchObject([
      { verdict: null, wants: 'the coldest night where it stands' },
    ]);
    expect(coldestNight(FROSTY)).toBe(-20);
    expect(measured('coolant-iat', readings, { car: carOf({ place: FROSTY }) })).toMatchObject([{ verdict: 'good' }]);
  });

  it('but what is condemned wherever it stands needs no place', () => {
    expect(measured('coolant-iat', [reading('freeze-point', '2026-03-01', -10)])).toMatchObject([{ verdict: 'act' }]);
  });

  it('a temperature leaves a coolant’s density unjudged, however thin it is', () => {
    const thin = (warmth: number | null) => measured('coolant-iat', [reading('density', '2026-03-01', 1.02, warmth)]);
    expect(thin(null)).toMatchObject([{ verdict: null, wants: 'its temperature' }]);
    expect(thin(20)).toMatchObject([{ verdict: 'act' }]);
  });

  it('only a heating whose temperature is told keeps frost off a coolant', () => {
    const verdict = (shelter: Place['shelter'], value: number, heatedTo: number | null = null) =>
      measured('coolant-iat', [reading('freeze-point', '2026-03-01', value)], {
        car: carOf({ place: { ...FROSTY, shelter, heatedTo } }),
      })[0]?.verdict;
    for (const shelter of ['open', 'covered', 'damp', 'unheated', 'heated'] as const)
      expect(
        [-23, -21, -19].map((value) => verdict(shelter, value)),
        shelter,
      ).toEqual(['good', 'watch', 'act']);
    expect(verdict('heated', -19, 12)).toBe('good');
  });

  it('a handbook figure leaves a reading unjudged, and is named', () => {
    const readings = [reading('cold-pressure', '2026-03-01', 2.2)];
    expect(measured('tires-road', readings)).toMatchObject([{ verdict: null, wants: { detail: 'placard' } }]);
    expect(measured('tires-road', readings, { details: { placard: 2.2 } })).toMatchObject([{ verdict: 'good' }]);
  });

  it('takes back no bad reading of before: unjudged is not good', () => {
    const bad = density('2026-03-01', 1.1);
    expect(gravest('battery-flooded', [bad, density('2026-04-01', 1.27)])).toBeNull();
    expect(gravest('battery-flooded', [bad, density('2026-04-01', 1.27, null)])).toMatchObject({
      verdict: 'act',
      began: '2026-03-01',
    });
  });
});
