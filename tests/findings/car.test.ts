import { describe, expect, it } from 'vitest';
import { KINDS, partsFor } from '../../src/catalogue/kinds.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { byNeed, byUrgency, byWeight, type CarSummary, findingsOf, summaryOf } from '../../src/findings/car.ts';
import { carOf, dated, finding, override, partOf } from '../support/parts.ts';
import { HOT, reading } from '../support/readings.ts';

const TODAY: CivilDate = '2026-11-25';

const PAST_TIRE = finding('tires-road', [dated('made', '2012-01-15')], TODAY);
const OLDER_TIRE = finding('tires-road', [dated('made', '2010-01-15')], TODAY);
const PAST_BELT = finding('v-belt', [dated('made', '2012-01-15')], TODAY);
const PAST_WAX = finding('paint-care', [dated('serviced', '2012-01-15')], TODAY);
const UNPROVEN_HOSE = finding('brake-hoses', [], TODAY);
const UNPROVEN_BELT = finding('v-belt', [], TODAY);
const DUE_TIRE = finding('tires-road', [dated('made', '2017-01-15')], TODAY);
const LOOK_TIRE = finding('tires-road', [dated('made', '2020-01-15')], TODAY);
const LOOK_BELT = finding('v-belt', [dated('made', '2024-01-15')], TODAY);
const READ_CYLINDER = finding('brake-master', [dated('fitted', '2025-01-15')], TODAY, {
  part: { readings: [reading('pedal-creep', '2026-11-01', 8)] },
});
const IN_DATE = finding('tires-road', [dated('made', '2026-01-15')], TODAY);

describe('the findings of a car', () => {
  it('are one a part, in the order of the parts, each under its own ruling', () => {
    const parts = [
      partOf('v-belt', [dated('made', '2024-01-15')], { id: 'a' }),
      partOf('tires-road', [dated('made', '2024-01-15')], { id: 'b', position: 'front left' }),
    ];
    const overrides = [
      override('v-belt', { replaceBy: 12 }),
      override('tires-road', { carId: 'other', replaceBy: 12 }),
    ];
    const found = findingsOf(carOf(), parts, overrides, TODAY);
    expect(found.map(({ part }) => part.id)).toEqual(['a', 'b']);
    expect(found.map(({ standing }) => standing)).toEqual(['past', 'in date']);
    expect(found.map(({ ruling }) => ruling.by)).toEqual(['own', 'practice']);
    expect(found.every(({ on }) => on === TODAY)).toBe(true);
  });

  it('leave out a part of a kind this version does not know', () => {
    expect(findingsOf(carOf(), [partOf('flux-capacitor', [])], [], TODAY)).toEqual([]);
  });

  it('know the drain last read at the wiring by that day, for the battery', () => {
    const parts = [
      partOf('battery-flooded', []),
      partOf('wiring', [], {
        readings: [reading('standing-drain', '2026-03-01', 40), reading('standing-drain', '2026-06-01', 12)],
      }),
    ];
    const drainOn = (on: CivilDate) => findingsOf(carOf(), parts, [], on)[0]?.car.drain;
    expect((['2026-02-28', '2026-03-01', '2026-05-31', '2026-06-01'] as const).map(drainOn)).toEqual([
      undefined,
      40,
      40,
      12,
    ]);
    expect(findingsOf(carOf(), parts.slice(0, 1), [], TODAY)[0]?.car).not.toHaveProperty('drain');
  });

  it('are under practice as it applies where the car stands', () => {
    const belt = [partOf('v-belt', [dated('made', '2024-06-15')])];
    const [there, anywhere] = [carOf({ place: HOT }), carOf()].map((car) => findingsOf(car, belt, [], TODAY)[0]);
    expect(there?.ruling.lookFrom).toBeLessThan(anywhere?.ruling.lookFrom ?? 0);
  });

  it('of a new car are all unproven: a list of dates to find, and no pass', () => {
    for (const { traits } of QUICK_STARTS) {
      const parts = partsFor(traits).map((part) => partOf(part.kind, [], part));
      const found = findingsOf(carOf(), parts, [], TODAY);
      expect(found).toHaveLength(parts.length);
      expect(new Set(found.map(({ standing }) => standing))).toEqual(new Set(['unproven']));
    }
  });
});

describe('what needs a hand first', () => {
  it('is the gravest standing, safety first within it, the longest first within that', () => {
    const wanted = [
      OLDER_TIRE,
      PAST_TIRE,
      READ_CYLINDER,
      PAST_BELT,
      PAST_WAX,
      UNPROVEN_HOSE,
      UNPROVEN_BELT,
      DUE_TIRE,
      LOOK_TIRE,
      LOOK_BELT,
      IN_DATE,
    ];
    expect(wanted.toReversed().toSorted(byNeed)).toEqual(wanted);
    expect([...wanted.slice(6), ...wanted.slice(0, 6)].toSorted(byNeed)).toEqual(wanted);
  });

  it('of parts to be dated is the one whose failure is gravest', () => {
    const order = [...KINDS.values()]
      .map(({ key }) => finding(key, [], TODAY))
      .toSorted(byWeight)
      .map(({ kind }) => kind.severity);
    expect(order.lastIndexOf('safety')).toBeLessThan(order.indexOf('strands'));
    expect(order.lastIndexOf('nuisance')).toBeLessThan(order.indexOf('cosmetic'));
  });
});

describe('a car in the line-up', () => {
  it('counts every standing, and safety apart', () => {
    const summary = summaryOf([PAST_TIRE, PAST_BELT, UNPROVEN_HOSE, UNPROVEN_BELT, DUE_TIRE, LOOK_TIRE, IN_DATE]);
    expect(summary.counts).toEqual({ 'in date': 1, look: 1, due: 1, unproven: 2, past: 2 });
    expect(summary.safety).toEqual({ past: 1, unproven: 1 });
    expect(summary.first).toBe(PAST_TIRE);
  });

  it('names first what needs a hand first, wherever it stands in the list', () => {
    expect(summaryOf([IN_DATE, LOOK_BELT, LOOK_TIRE]).first).toBe(LOOK_TIRE);
    expect(summaryOf([LOOK_TIRE, UNPROVEN_BELT, IN_DATE]).first).toBe(UNPROVEN_BELT);
  });

  it('names nothing where nothing is owed, nor of a car without parts', () => {
    expect(summaryOf([IN_DATE]).first).toBeNull();
    expect(summaryOf([])).toEqual({
      counts: { 'in date': 0, look: 0, due: 0, unproven: 0, past: 0 },
      safety: { past: 0, unproven: 0 },
      first: null,
    });
  });

  it('comes before another by safety past, safety unproven, then past, due and look', () => {
    const cars: [string, CarSummary][] = [
      ['safety past', summaryOf([PAST_TIRE])],
      ['safety unproven', summaryOf([UNPROVEN_HOSE])],
      ['two past', summaryOf([PAST_BELT, PAST_WAX])],
      ['one past', summaryOf([PAST_BELT])],
      ['due', summaryOf([DUE_TIRE])],
      ['look', summaryOf([LOOK_BELT])],
      ['in date', summaryOf([IN_DATE])],
    ];
    const sorted = cars.toReversed().toSorted(([, a], [, b]) => byUrgency(a, b));
    expect(sorted.map(([name]) => name)).toEqual(cars.map(([name]) => name));
  });
});
