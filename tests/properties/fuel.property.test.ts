import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FUELS, type FuelKey } from '../../src/ageing/fuel/fuels.ts';
import { type FuelFacts, goodUntil, lifeAt } from '../../src/ageing/fuel/life.ts';
import { fuelOutlook } from '../../src/ageing/fuel/outlook.ts';
import {
  breathing,
  daysToSeparate,
  expansion,
  heldIn,
  separates,
  shedOnCooling,
  tolerance,
} from '../../src/ageing/fuel/water.ts';
import { AIRS, monthsOf, type Place, SHELTERS } from '../../src/ageing/place.ts';
import { addDays } from '../../src/dates/civil.ts';
import { anyDay, anyRange } from '../support/arbitraries.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const fuel = fc.constantFrom(...(Object.keys(FUELS) as FuelKey[]));
const ethanol = fc.constantFrom(0, 5, 10, 15, 20, 85);
const percent = between(0, 100);
const place: fc.Arbitrary<Place> = fc.record({
  winterLow: between(-35, 10),
  summerHigh: between(15, 45),
  air: fc.constantFrom(...AIRS),
  shelter: fc.constantFrom(...SHELTERS),
  humidity: fc.option(between(10, 95), { nil: null }),
  heatedTo: fc.option(between(5, 22), { nil: null }),
  hemisphere: fc.constantFrom('north' as const, 'south' as const),
  months: fc.constant(Array<null>(12).fill(null)),
});
const facts: fc.Arbitrary<FuelFacts> = fc.record({
  fuel,
  stabilized: fc.boolean(),
  filled: anyRange,
  fullness: percent,
  container: fc.constantFrom('vehicle tank' as const, 'closed can' as const),
});
const warmer = (where: Place, by: number): Place => ({
  ...where,
  winterLow: where.winterLow + by,
  summerHigh: where.summerHigh + by,
  heatedTo: where.heatedTo === null ? null : where.heatedTo + by,
});

describe('life', () => {
  it('warmer never keeps longer, stabilized never shorter, and doubt comes before the end', () => {
    fc.assert(
      fc.property(fuel, fc.boolean(), between(-30, 45), between(0, 20), (one, stabilized, at, by) => {
        const life = lifeAt(one, stabilized, at);
        expect(life.low).toBeLessThanOrEqual(life.high);
        expect(life.low).toBeGreaterThan(0);
        expect(lifeAt(one, stabilized, at + by).low).toBeLessThanOrEqual(life.low);
        expect(lifeAt(one, stabilized, at + by).high).toBeLessThanOrEqual(life.high);
        expect(lifeAt(one, true, at).low).toBeGreaterThanOrEqual(lifeAt(one, false, at).low);
        expect(lifeAt(one, true, at).high).toBeGreaterThanOrEqual(lifeAt(one, false, at).high);
      }),
    );
  });

  it('frost keeps it no longer than 0 °C, of which alone something is known', () => {
    fc.assert(
      fc.property(fuel, fc.boolean(), between(-60, 0), (one, stabilized, at) => {
        expect(lifeAt(one, stabilized, at)).toEqual(lifeAt(one, stabilized, 0));
      }),
    );
  });

  it('its days follow the fill, in order, and an end that is open stays open', () => {
    fc.assert(
      fc.property(facts, place, (given, where) => {
        const { watch, stop } = goodUntil(given, where);
        const { from, to } = given.filled;
        expect([watch.earliest === null, stop.earliest === null]).toEqual([from === null, from === null]);
        expect([watch.latest === null, stop.latest === null]).toEqual([to === null, to === null]);
        if (from && watch.earliest && stop.earliest)
          expect(from < watch.earliest && watch.earliest <= stop.earliest).toBe(true);
        if (to && watch.latest && stop.latest) expect(to < watch.latest && watch.latest <= stop.latest).toBe(true);
        if (watch.earliest && watch.latest) expect(watch.earliest <= watch.latest).toBe(true);
        if (stop.earliest && stop.latest) expect(stop.earliest <= stop.latest).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('no place and no tank keeps it longer than published for 20 °C, and none that is nowhere warmer, shorter', () => {
    fc.assert(
      fc.property(facts, anyDay, place, (given, day, where) => {
        const { watch, stop } = goodUntil({ ...given, filled: { from: day, to: day } }, where);
        const published = lifeAt(given.fuel, given.stabilized, 20);
        const latest = (months: number) => addDays(day, Math.ceil((months * 365.25) / 12));
        expect(watch.latest && watch.latest <= latest(published.low)).toBe(true);
        expect(stop.latest && stop.latest <= latest(published.high)).toBe(true);
        const cool = monthsOf(where).every(({ mean }) => mean <= 20);
        const roofed = !['covered', 'open'].includes(where.shelter);
        if (cool && roofed && given.fullness >= 25) {
          expect(watch.earliest).toBe(latest(published.low));
          expect(stop.earliest).toBe(latest(published.high));
        }
      }),
      { numRuns: 500 },
    );
  });

  it('bought later it lasts to a later day; a warmer place, an open one and a near-empty tank never keep it longer', () => {
    fc.assert(
      fc.property(facts, anyDay, place, fc.nat(400), between(0, 10), (given, day, where, later, by) => {
        const on = (from: typeof day, more: Partial<FuelFacts> = {}, at = where) =>
          goodUntil({ ...given, ...more, filled: { from, to: from } }, at).stop.latest ?? '';
        expect(on(day) <= on(addDays(day, later))).toBe(true);
        expect(on(day, {}, warmer(where, by)) <= on(day)).toBe(true);
        expect(on(day, { fullness: 10 }) <= on(day, { fullness: 90 })).toBe(true);
        expect(on(day, { stabilized: false }) <= on(day, { stabilized: true })).toBe(true);
        const outdoors = (shelter: Place['shelter']) => on(day, {}, { ...where, shelter });
        expect(outdoors('open') <= outdoors('covered') && outdoors('covered') <= outdoors('unheated')).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

describe('water', () => {
  it('colder fuel and fuel with less ethanol never hold more', () => {
    fc.assert(
      fc.property(between(0, 69), between(0, 69), between(-60, 50), between(0, 30), (a, b, at, colder) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        const held = tolerance(more, at) ?? Number.NaN;
        expect(held).toBeGreaterThanOrEqual(0);
        expect(tolerance(more, at - colder)).toBeLessThanOrEqual(held);
        expect(tolerance(less, at)).toBeLessThanOrEqual(held);
      }),
      { numRuns: 1000 },
    );
  });

  it('what cooling sheds is what no longer fits, and it separates just beyond what fits', () => {
    fc.assert(
      fc.property(ethanol, between(-30, 40), between(-30, 40), (one, from, to) => {
        const [before, after] = [tolerance(one, from), tolerance(one, to)];
        const shed = shedOnCooling(one, from, to);
        if (before === null || after === null) {
          expect(shed).toBe(0);
          expect(separates(100, one, to)).toBe(false);
          return;
        }
        expect(shed).toBeCloseTo(Math.max(before - after, 0), 12);
        expect(separates(before, one, to)).toBe(before > after);
        expect(separates(after, one, to)).toBe(false);
        expect(separates(after + 1e-6, one, to)).toBe(true);
      }),
    );
  });

  it('a fuller tank never takes more water, more swing, warmth or humidity never less, and a full one none', () => {
    fc.assert(
      fc.property(
        fc.tuple(between(5, 120), percent, percent, between(0, 20), between(-10, 35), between(10, 100)),
        between(0, 1),
        ([tank, a, b, swing, at, humidity], less) => {
          const [empty, full] = [Math.min(a, b), Math.max(a, b)];
          const much = breathing(tank, empty, swing, at, humidity);
          expect(breathing(tank, full, swing, at, humidity).high).toBeLessThanOrEqual(much.high);
          expect(breathing(tank, empty, swing * less, at, humidity).high).toBeLessThanOrEqual(much.high);
          expect(breathing(tank, empty, swing, at, humidity * less).high).toBeLessThanOrEqual(much.high + 1e-12);
          expect(breathing(tank, empty, swing, at - 20 * less, humidity).high).toBeLessThanOrEqual(much.high + 1e-12);
          expect(much.high).toBeCloseTo(3 * much.low, 9);
          expect(breathing(tank, 100, swing, at, humidity)).toEqual({ low: 0, high: 0 });
        },
      ),
      { numRuns: 500 },
    );
  });

  it('a fuller tank never separates sooner, and its size changes nothing', () => {
    fc.assert(
      fc.property(
        place,
        fc.constantFrom(5, 10, 15),
        between(1, 98),
        between(0, 1),
        between(5, 120),
        (where, one, full, more, tank) => {
          const days = (liters: number, at: number) => daysToSeparate(liters, at, one, where).days;
          const [sooner, later] = [days(tank, full), days(tank, full + more)];
          expect(sooner && later && sooner.low <= later.low && sooner.high <= later.high).toBe(true);
          expect(days(2 * tank, full)?.low).toBeCloseTo(sooner?.low ?? Number.NaN, 3);
          expect(sooner && sooner.low <= sooner.high).toBe(true);
        },
      ),
    );
  });

  it('what it holds grows with the liters', () => {
    fc.assert(
      fc.property(between(1, 100), ethanol, between(-20, 40), (liters, one, at) => {
        const [single, double] = [heldIn(liters, one, at), heldIn(2 * liters, one, at)];
        expect(double === null).toBe(single === null);
        if (single !== null && double !== null) expect(double).toBeCloseTo(2 * single, 6);
      }),
    );
  });

  it('gasoline grows with every degree and shrinks back', () => {
    fc.assert(
      fc.property(between(0, 60), between(0.01, 10), (rise, more) => {
        expect(expansion(-rise)).toBeCloseTo(-expansion(rise), 12);
        expect(expansion(rise + more)).toBeGreaterThan(expansion(rise));
      }),
    );
  });
});

describe('the outlook', () => {
  it('always has something to do, in whole sentences, and water for gasoline alone', () => {
    fc.assert(
      fc.property(facts, fc.option(between(10, 100), { nil: null }), place, anyDay, (given, tank, where, on) => {
        const { water, says } = fuelOutlook({ ...given, tank }, where, on);
        expect(water === null).toBe(FUELS[given.fuel].diesel);
        expect(says.length).toBeGreaterThan(0);
        for (const text of says) {
          expect(text).toMatch(/^[A-Z].*\.$/);
          expect(text).not.toMatch(/undefined|null|NaN|\b(?:safe|fine|ok)\b/i);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('asks to drain it from its earliest last day on, or at once where the oldest day is open', () => {
    fc.assert(
      fc.property(facts, place, anyDay, (given, where, on) => {
        const { stop, says } = fuelOutlook({ ...given, tank: null }, where, on);
        const drains = says.some((text) => text.includes('drain it before the engine is started'));
        expect(drains).toBe(stop.earliest === null || stop.earliest <= on);
      }),
      { numRuns: 500 },
    );
  });
});
