import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boilingAt, roadWords, waterAtBoiling } from '../../src/ageing/brake-fluid/boiling.ts';
import { mayMix } from '../../src/ageing/brake-fluid/mixing.ts';
import { type BrakeFluidFacts, brakeFluidOutlook } from '../../src/ageing/brake-fluid/outlook.ts';
import { monthsTo, waterAfter, waterPace } from '../../src/ageing/brake-fluid/water.ts';
import { BRAKE_FLUID_GRADES, type BrakeFluidGrade } from '../../src/catalogue/brake-fluid-grades.ts';
import { addDays } from '../../src/dates/civil.ts';
import { anyRange, dayBetween } from '../support/arbitraries.ts';

const glycol = fc.constantFrom(...BRAKE_FLUID_GRADES.filter(({ base }) => base === 'glycol'));
const percent = (max: number) => fc.double({ min: 0, max, noNaN: true });
const pace = fc
  .record({ damp: fc.boolean(), hoses: fc.constantFrom('rubber' as const, 'braided' as const, 'unknown' as const) })
  .map(waterPace);

const boils = (grade: BrakeFluidGrade, water: number): number => boilingAt(grade, water) ?? Number.NaN;
const holds = (grade: BrakeFluidGrade, boiling: number): number => waterAtBoiling(grade, boiling) ?? Number.NaN;

describe('the curve of every grade', () => {
  it('never rises with water, and stays between the dry and the wet minimum', () => {
    fc.assert(
      fc.property(glycol, percent(10), percent(10), (grade, water, more) => {
        expect(boils(grade, water + more)).toBeLessThanOrEqual(boils(grade, water));
        expect(boils(grade, water)).toBeLessThanOrEqual(grade.dryMinC);
        expect(boils(grade, water)).toBeGreaterThanOrEqual(grade.wetMinC);
      }),
    );
  });

  it('is undone by its inverse up to 3.7 percent', () => {
    fc.assert(
      fc.property(glycol, percent(3.7), (grade, water) => {
        expect(holds(grade, boils(grade, water))).toBeCloseTo(water, 6);
      }),
    );
  });

  it('finds more water in what boils lower, 0 to 3.7 percent whatever is read', () => {
    fc.assert(
      fc.property(glycol, fc.integer({ min: 60, max: 350 }), fc.nat(100), (grade, boiling, lower) => {
        expect(holds(grade, boiling - lower)).toBeGreaterThanOrEqual(holds(grade, boiling));
        expect(holds(grade, boiling)).toBeGreaterThanOrEqual(0);
        expect(holds(grade, boiling)).toBeLessThanOrEqual(3.7);
      }),
    );
  });
});

describe('water', () => {
  it('never falls with time, is a band, and is never told above 8', () => {
    fc.assert(
      fc.property(pace, percent(200), percent(200), (at, months, more) => {
        const [now, then] = [waterAfter(months, at), waterAfter(months + more, at)];
        expect(then.low).toBeGreaterThanOrEqual(now.low);
        expect(then.high).toBeGreaterThanOrEqual(now.high);
        expect(now.low).toBeLessThanOrEqual(now.high);
        expect(now.high).toBeLessThanOrEqual(8);
      }),
    );
  });

  it('is reached when it is there: the months to it give it back', () => {
    fc.assert(
      fc.property(pace, percent(8), (at, water) => {
        const { low, high } = monthsTo(water, at);
        expect(low).toBeLessThanOrEqual(high);
        expect(waterAfter(low, at).high).toBeCloseTo(water, 9);
        expect(waterAfter(high, at).low).toBeCloseTo(water, 9);
      }),
    );
  });

  it('comes no slower in a damp place, and braided hoses never slow its fast end', () => {
    const paces = (['rubber', 'braided', 'unknown'] as const).map((hoses) => ({
      dry: waterPace({ damp: false, hoses }),
      damp: waterPace({ damp: true, hoses }),
    }));
    for (const { dry, damp } of paces) {
      for (const end of ['slow', 'typical', 'fast'] as const) expect(damp[end]).toBeGreaterThan(dry[end]);
      expect(dry.fast).toBe(2);
      expect(dry.slow).toBeLessThan(dry.typical);
      expect(dry.typical).toBeLessThan(dry.fast);
    }
  });
});

describe('the outlook', () => {
  const reading = (min: number, max: number) =>
    fc.option(fc.record({ value: fc.double({ min, max, noNaN: true }), day: dayBetween('2015-01-01', '2030-01-01') }), {
      nil: undefined,
    });
  const facts: fc.Arbitrary<BrakeFluidFacts> = fc
    .record({
      grade: glycol,
      filled: fc.option(anyRange, { nil: null }),
      pace,
      water: reading(0, 10),
      boiling: reading(60, 350),
      ownLimit: fc.option(fc.integer({ min: 140, max: 300 }), { nil: null }),
    })
    .map(({ water, boiling, ...rest }) => ({
      ...rest,
      measured: { ...(water && { water }), ...(boiling && { boiling }) },
    }));
  const anyDay = dayBetween('2015-01-01', '2032-01-01');

  it('has its low end below its high end, and its earliest day before its latest', () => {
    fc.assert(
      fc.property(facts, anyDay, (given, on) => {
        const { water, boiling, wet, limit, says } = brakeFluidOutlook(given, on);
        if (water) expect(water.low).toBeLessThanOrEqual(water.high);
        if (boiling) expect(boiling.low).toBeLessThanOrEqual(boiling.high + 1e-9);
        for (const days of [wet, limit])
          if (days?.earliest && days.latest) expect(days.earliest <= days.latest).toBe(true);
        expect(says.join(' ')).not.toMatch(/undefined|NaN|null/);
      }),
      { numRuns: 2000 },
    );
  });

  it('without readings never promises a higher boiling point or less water on a later day', () => {
    fc.assert(
      fc.property(facts, anyDay, fc.nat(3000), (given, on, later) => {
        const untested = { ...given, measured: {} };
        const [now, then] = [brakeFluidOutlook(untested, on), brakeFluidOutlook(untested, addDays(on, later))];
        if (!now.water || !then.water || !now.boiling || !then.boiling) return;
        expect(then.water.high).toBeGreaterThanOrEqual(now.water.high);
        expect(then.boiling.low).toBeLessThanOrEqual(now.boiling.low);
      }),
    );
  });

  it('a bounded fill never tells worse than the same fill with an open end', () => {
    fc.assert(
      fc.property(facts, dayBetween('2000-01-01', '2026-01-01'), anyDay, (given, from, on) => {
        const fill = { ...given, measured: {} };
        const known = brakeFluidOutlook({ ...fill, filled: { from, to: from } }, on);
        const open = brakeFluidOutlook({ ...fill, filled: { from: null, to: from } }, on);
        expect(open.water?.high).toBeGreaterThanOrEqual(known.water?.high ?? Number.NaN);
        expect(open.boiling?.low).toBeLessThanOrEqual(known.boiling?.low ?? Number.NaN);
      }),
    );
  });

  it('on the day of a boiling point is that point, give or take 5 °C, whatever the grade', () => {
    fc.assert(
      fc.property(facts, anyDay, fc.integer({ min: 60, max: 350 }), (given, day, value) => {
        const { boiling, measured } = brakeFluidOutlook(
          { ...given, filled: null, measured: { boiling: { value, day } } },
          day,
        );
        expect(measured).toBe(true);
        expect(boiling?.low).toBeCloseTo(value - 5, 6);
        expect(boiling?.high).toBeCloseTo(value + 5, 6);
      }),
    );
  });

  it('never reaches the owner’s higher limit later than a lower one', () => {
    fc.assert(
      fc.property(facts, anyDay, fc.integer({ min: 140, max: 250 }), fc.nat(50), (given, on, limit, higher) => {
        const [low, high] = [limit, limit + higher].map(
          (ownLimit) => brakeFluidOutlook({ ...given, ownLimit }, on).limit,
        );
        if (low?.latest && high?.latest) expect(high.latest <= low.latest).toBe(true);
        if (low?.earliest && high?.earliest) expect(high.earliest <= low.earliest).toBe(true);
      }),
    );
  });
});

describe('words and mixing', () => {
  it('a fluid that boils lower is never told to bear more', () => {
    const order = ['any road', 'binding brake', 'laden car could boil', 'lies above'];
    const rank = (low: number): number =>
      order.findIndex((words) => roadWords({ low, high: 300, atMost: false }).includes(words));
    fc.assert(
      fc.property(fc.integer({ min: 40, max: 300 }), fc.nat(100), (low, higher) => {
        expect(rank(low)).toBeGreaterThanOrEqual(0);
        expect(rank(low + higher)).toBeGreaterThanOrEqual(rank(low));
      }),
    );
  });

  it('mixing has no direction, and an unknown name mixes with nothing', () => {
    const name = fc.constantFrom(...BRAKE_FLUID_GRADES.map((grade) => grade.name));
    fc.assert(
      fc.property(name, name, fc.string(), (a, b, other) => {
        expect(mayMix(a, b)).toBe(mayMix(b, a));
        if (!BRAKE_FLUID_GRADES.some((grade) => grade.name === other)) expect(mayMix(a, other)).toBe(false);
      }),
    );
  });
});
