import { describe, expect, it } from 'vitest';
import { CAUTIONS, DEFERS } from '../../src/catalogue/cautions.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Finding } from '../../src/findings/assess.ts';
import { explain } from '../../src/findings/explain.ts';
import { digestOf, type OwedCar } from '../../src/notices/digest.ts';
import { owed } from '../../src/notices/owed.ts';
import { dated, finding } from '../support/parts.ts';
import { reading } from '../support/readings.ts';

const TODAY: CivilDate = '2026-11-25';

const pastTire = finding('tires-road', [dated('made', '2012-01-15')], TODAY, {
  part: { id: 'tire', position: 'front left' },
});
const dueTire = finding('tires-road', [dated('made', '2017-01-15')], TODAY, { part: { id: 'due tire' } });
const lookTire = finding('tires-road', [dated('made', '2020-01-15')], TODAY, { part: { id: 'look tire' } });
const pastBelt = finding('v-belt', [dated('made', '2012-01-15')], TODAY);
const pastOil = finding('engine-oil', [dated('filled', '2020-01-15')], TODAY);
const lookBelt = finding('v-belt', [dated('made', '2024-01-15')], TODAY, { part: { id: 'look belt' } });
const pastWax = finding('paint-care', [dated('serviced', '2020-01-15')], TODAY);
/** Of unknown age, so that the reading alone is news; of known age, due by it and bad by its reading. */
const volts = (value: number) => ({ readings: [reading('rest-voltage', '2026-11-20', value)] });
const readBattery = finding('battery-flooded', [], TODAY, { part: { id: 'act', ...volts(12.2) } });
const watchBattery = finding('battery-flooded', [], TODAY, { part: { id: 'watch', ...volts(12.45) } });
const dueBattery = finding('battery-flooded', [dated('made', '2021-01-15')], TODAY, {
  part: { id: 'due', ...volts(12.2) },
});
/** Nobody said how it stands: by self-discharge alone its estimate asks. */
const emptyBattery = finding('battery-flooded', [dated('made', '2026-01-15')], TODAY, {
  part: { id: 'empty', readings: [reading('rest-voltage', '2026-06-01', 12.65)] },
});
const wetFluid = finding('brake-fluid-glycol', [dated('filled', '2026-06-01')], TODAY, {
  part: { id: 'wet', readings: [reading('water', '2026-11-20', 4)] },
});

const car = (name: string, findings: readonly Finding[], unproven = 0): OwedCar => ({
  carId: name.toLowerCase(),
  name,
  stay: [],
  owed: owed(findings, new Map()),
  unproven,
  unjudged: 0,
});
const many = (n: number, of: Finding): Finding[] =>
  Array.from({ length: n }, (_, index) => ({ ...of, part: { ...of.part, id: `${of.part.id} ${index}` } }));

describe('the day’s letter', () => {
  it('is none where nothing is owed, however many parts are unproven', () => {
    expect(digestOf([])).toBeNull();
    expect(digestOf([car('Marlow Six', [], 40)])).toBeNull();
  });

  it('leaves out a car without news', () => {
    const digest = digestOf([car('Marlow Six', []), car('Tern 40', [lookBelt])]);
    expect(digest?.cars.map(({ name }) => name)).toEqual(['Tern 40']);
    expect(digest?.subject).toBe('1 to look at: Tern 40');
  });

  it.each<[string, OwedCar[], string]>([
    ['one car, one line', [car('Tern 40', [pastTire])], '1 past: Tern 40'],
    [
      'every stage, gravest first',
      [car('Tern 40', [lookTire, lookBelt, dueTire, pastTire, pastBelt])],
      '2 past, 1 due, 2 to look at: Tern 40',
    ],
    [
      'two cars',
      [car('Marlow Six', [lookBelt]), car('Tern 40', [pastTire])],
      '1 past, 1 to look at: Tern 40 and 1 more car',
    ],
    [
      'three cars',
      [car('Marlow Six', [lookBelt]), car('Tern 40', [dueTire]), car('Heron', [lookBelt])],
      '1 due, 2 to look at: Tern 40 and 2 more cars',
    ],
  ])('says in its subject what there is: %s', (_, cars, wanted) => expect(digestOf(cars)?.subject).toBe(wanted));

  it('tells each line’s part, stage, age, reasons, doubts and what to do, as the car sheet does', () => {
    const [line] = digestOf([car('Tern 40', [pastTire])])?.cars[0]?.lines ?? [];
    const words = explain(pastTire);
    expect(line).toEqual({
      partId: 'tire',
      stage: 'past',
      again: null,
      news: ['past'],
      safety: true,
      title: 'Road tire, front left',
      age: words.age,
      why: words.reasons.map(({ text }) => text),
      doubts: words.doubts,
      todo: words.todo,
    });
  });

  it('tells a reading where age says nothing new, with what it asks for', () => {
    const digest = digestOf([car('Tern 40', [readBattery, watchBattery])]);
    expect(digest?.subject).toBe('1 to act on by reading, 1 to watch by reading: Tern 40');
    expect(digest?.cars[0]?.lines).toMatchObject([
      { stage: 'act', news: ['act'], why: expect.arrayContaining([expect.stringContaining('12.20 V')]) as string[] },
      { stage: 'watch', news: ['watch'] },
    ]);
    expect(digest?.cars[0]?.lines[0]?.todo).toContain('Rest voltage: under 12.40');
  });

  it('counts a part once where its standing and its reading are both new', () => {
    const digest = digestOf([car('Tern 40', [dueBattery])]);
    expect(digest?.subject).toBe('1 due: Tern 40');
    expect(digest?.cars[0]?.lines).toMatchObject([{ stage: 'due', news: ['due', 'act'] }]);
  });

  it('tells an estimate that asks by a stage of its own, with what would settle it', () => {
    const digest = digestOf([car('Tern 40', [emptyBattery])]);
    expect(digest?.subject).toBe('1 to measure by estimate: Tern 40');
    expect(digest?.cars[0]?.lines).toMatchObject([{ stage: 'estimate', news: ['estimate'] }]);
    expect(digest?.cars[0]?.lines[0]?.todo).toMatch(/^Charge it, or put it on a maintainer/);
  });

  it('names the stages of age before those of readings, and estimates last', () => {
    const digest = digestOf([
      car('Tern 40', [emptyBattery, watchBattery, readBattery, dueBattery, lookTire, pastTire]),
    ]);
    expect(digest?.subject).toBe(
      '1 past, 1 due, 1 to look at, 1 to act on by reading, 1 to watch by reading, 1 to measure by estimate: Tern 40',
    );
  });

  it('puts a car whose brakes are condemned by a reading before one whose tire wants a look', () => {
    const cars = [car('First', [wetFluid]), car('Second', [lookTire])];
    for (const list of [cars, cars.toReversed()])
      expect(digestOf(list)?.cars.map(({ name }) => name)).toEqual(['First', 'Second']);
  });

  it('names a part without a place by its kind alone', () => {
    expect(digestOf([car('Tern 40', [pastOil])])?.cars[0]?.lines[0]?.title).toBe('Engine oil');
  });

  it('puts safety first, though another item is graver; then the gravest', () => {
    const digest = digestOf([car('Tern 40', [pastWax, pastOil, lookTire, pastBelt, dueTire, pastTire])]);
    expect(digest?.cars[0]?.lines.map(({ partId }) => partId)).toEqual([
      'tire',
      'due tire',
      'look tire',
      'v-belt',
      'engine-oil',
      'paint-care',
    ]);
    expect(digest?.cars[0]?.lines.map(({ safety }) => safety)).toEqual([true, true, true, false, false, false]);
  });

  it.each<[string, Finding[], Finding[]]>([
    ['one safety item past before any number of others', [pastTire], many(12, pastBelt)],
    ['one safety item to look at before any number of others', [lookTire], many(12, pastBelt)],
    ['safety past before more safety to look at', [pastTire], many(12, lookTire)],
    ['more safety past before less', many(2, pastTire), [pastTire]],
    ['more safety before less', many(2, lookTire), [lookTire]],
    ['past before look', [pastBelt], many(3, lookBelt)],
    ['more before less', many(2, lookBelt), [lookBelt]],
  ])('puts the car first that needs a hand first: %s', (_, first, second) => {
    const cars = [car('First', first), car('Second', second)];
    for (const list of [cars, cars.toReversed()])
      expect(digestOf(list)?.cars.map(({ name }) => name)).toEqual(['First', 'Second']);
  });

  it('keeps the order of the collection between equals', () => {
    const cars = ['A', 'B', 'C'].map((name) => car(name, [lookBelt]));
    expect(digestOf(cars)?.cars.map(({ name }) => name)).toEqual(['A', 'B', 'C']);
  });

  it('carries each caution of the work once a car, with the word that defers', () => {
    const cautions = digestOf([car('Tern 40', [pastTire, dueTire, lookTire])])?.cars[0]?.cautions ?? [];
    expect(cautions).toContain(CAUTIONS['tire-fitting']);
    expect(cautions.filter((caution) => caution === DEFERS)).toHaveLength(1);
    expect(new Set(cautions).size).toBe(cautions.length);
  });

  it('names how many parts are unproven, beside the news', () => {
    expect(digestOf([car('Tern 40', [pastTire], 7)])?.cars[0]?.unproven).toBe(7);
  });
});
