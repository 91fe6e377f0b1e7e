import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AIRS, type Place, SHELTERS } from '../../src/ageing/place.ts';
import { flatSpotRisk } from '../../src/ageing/tires/flat-spots.ts';
import { heatAge } from '../../src/ageing/tires/heat.ts';
import {
  dueForAir,
  firstLow,
  layUpPressure,
  leakRate,
  lossOver,
  lossPerMonth,
  type PressureReading,
  pressureAt,
  pressureOver,
} from '../../src/ageing/tires/pressure.ts';
import { addDays, daysBetween } from '../../src/dates/civil.ts';
import { anyDay } from '../support/arbitraries.ts';

const pressure = fc.double({ min: 0.5, max: 6, noNaN: true });
const temperature = fc.double({ min: -40, max: 60, noNaN: true });
const days = fc.nat(700);
const anyPlace: fc.Arbitrary<Place> = fc
  .record({
    winterLow: fc.integer({ min: -45, max: 15 }),
    span: fc.integer({ min: 5, max: 60 }),
    air: fc.constantFrom(...AIRS),
    shelter: fc.constantFrom(...SHELTERS),
    heatedTo: fc.option(fc.integer({ min: 5, max: 22 }), { nil: null }),
    hemisphere: fc.constantFrom('north' as const, 'south' as const),
    months: fc.array(fc.option(fc.integer({ min: -40, max: 45 }), { nil: null, freq: 3 }), {
      minLength: 12,
      maxLength: 12,
    }),
  })
  .map(({ span, ...place }) => ({ ...place, summerHigh: place.winterLow + span, humidity: null }));
const anyReading: fc.Arbitrary<PressureReading> = fc.record({
  pressure,
  temperature: fc.option(temperature, { nil: null }),
  day: anyDay,
});

describe('pressure and temperature', () => {
  it('colder never raises it, and coming back restores it', () => {
    fc.assert(
      fc.property(pressure, temperature, fc.double({ min: 0, max: 60, noNaN: true }), (bar, at, colder) => {
        expect(pressureAt(bar, at, at - colder)).toBeLessThanOrEqual(bar + 1e-12);
        expect(pressureAt(pressureAt(bar, at, at - colder), at - colder, at)).toBeCloseTo(bar, 9);
      }),
    );
  });

  it('warmer never lets less through, nor does more time', () => {
    fc.assert(
      fc.property(temperature, fc.nat(40), fc.nat(60), fc.nat(60), (at, warmer, months, more) => {
        const [now, then] = [lossPerMonth(at), lossPerMonth(at + warmer)];
        expect(then.low).toBeGreaterThanOrEqual(now.low - 1e-12);
        expect(then.high).toBeGreaterThanOrEqual(now.high - 1e-12);
        expect(now.low).toBeLessThanOrEqual(now.high + 1e-12);
        expect(lossOver(months + more, at).low).toBeGreaterThanOrEqual(lossOver(months, at).low);
      }),
    );
  });
});

describe('a tire over the months', () => {
  it('has points from the reading to the last day, in order, one a month between, none below 0', () => {
    fc.assert(
      fc.property(anyReading, days, anyPlace, (start, length, place) => {
        const until = addDays(start.day, length);
        const points = pressureOver(start, until, place);
        expect(points[0]?.day).toBe(start.day);
        expect(points.at(-1)?.day).toBe(until);
        for (const [index, { day, pressure }] of points.entries()) {
          const before = points[index - 1];
          if (before) expect(daysBetween(before.day, day)).toBeGreaterThan(0);
          if (before) expect(daysBetween(before.day, day)).toBeLessThanOrEqual(31);
          expect(pressure.low).toBeGreaterThanOrEqual(0);
          expect(pressure.low).toBeLessThanOrEqual(pressure.high + 1e-9);
        }
      }),
    );
  });

  it('a year on, in the same month, has never gained', () => {
    fc.assert(
      fc.property(anyReading, anyPlace, (start, place) => {
        const points = pressureOver(start, addDays(start.day, 365), place);
        const [first, last] = [points[0], points.at(-1)];
        if (first?.day.slice(5, 7) !== last?.day.slice(5, 7)) return;
        expect(last?.pressure.high).toBeLessThan(Math.max(first?.pressure.high ?? 0, 1e-9));
      }),
    );
  });

  it('the first day it may be low is the earliest of those it is due', () => {
    fc.assert(
      fc.property(anyReading, days, anyPlace, (start, length, place) => {
        const until = addDays(start.day, length);
        expect(firstLow(start, until, place, 2.2)).toBe(dueForAir(start, until, place, 2.2).earliest);
      }),
    );
  });

  it('pumped up more is never due sooner, and due at the earliest before at the latest', () => {
    fc.assert(
      fc.property(
        anyReading,
        days,
        anyPlace,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (start, length, place, more) => {
          const until = addDays(start.day, length);
          const due = dueForAir(start, until, place, 2.2);
          const fuller = dueForAir({ ...start, pressure: start.pressure + more }, until, place, 2.2);
          expect((fuller.earliest ?? '9999') >= (due.earliest ?? '9999')).toBe(true);
          expect((fuller.latest ?? '9999') >= (due.latest ?? '9999')).toBe(true);
          expect((due.latest ?? '9999') >= (due.earliest ?? '9999')).toBe(true);
        },
      ),
    );
  });

  it('a reading without its temperature never tells a better one than any temperature of that month would', () => {
    fc.assert(
      fc.property(pressure, anyDay, anyPlace, days, (bar, day, place, length) => {
        const until = addDays(day, length);
        const noted = pressureOver({ pressure: bar, temperature: 15, day }, until, {
          ...place,
          months: Array(12).fill(15),
        });
        const not = pressureOver({ pressure: bar, temperature: null, day }, until, {
          ...place,
          months: Array(12).fill(15),
        });
        expect(not.at(-1)?.pressure.low).toBeLessThanOrEqual((noted.at(-1)?.pressure.low ?? Number.NaN) + 1e-9);
      }),
    );
  });

  it('the loss put in is the leak read out, at whatever temperatures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        temperature,
        temperature,
        fc.integer({ min: 7, max: 700 }),
        (bar, lost, at, then, apart) => {
          const rate = leakRate(
            { pressure: bar, temperature: at, day: '2024-01-01' },
            { pressure: pressureAt(bar - lost, at, then), temperature: then, day: addDays('2024-01-01', apart) },
          );
          expect(((rate ?? Number.NaN) * apart) / (365.25 / 12)).toBeCloseTo(lost, 9);
        },
      ),
    );
  });

  it('a lay-up never asks for more than the sidewall, nor for more than a bar', () => {
    fc.assert(
      fc.property(pressure, fc.option(pressure, { nil: null }), (placard, sidewall) => {
        const { low, high } = layUpPressure(placard, sidewall);
        expect(low).toBeLessThanOrEqual(high);
        expect(high).toBeLessThanOrEqual(Math.min(sidewall ?? placard, placard + 1));
      }),
    );
  });
});

describe('flat spots', () => {
  const levels = ['passing', 'may stay', 'likely to stay'];
  const standing = fc.record({
    days: fc.nat(1000),
    share: fc.option(fc.double({ min: 0, max: 1.5, noNaN: true }), { nil: null }),
    coldest: temperature,
    capPly: fc.option(fc.boolean(), { nil: null }),
  });
  const rank = (given: Parameters<typeof flatSpotRisk>[0]): number => levels.indexOf(flatSpotRisk(given).level);

  it('never get better with days, frost or less air, nor by not having looked', () => {
    fc.assert(
      fc.property(
        standing,
        fc.nat(500),
        fc.nat(30),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (given, more, colder, share) => {
          expect(rank({ ...given, days: given.days + more })).toBeGreaterThanOrEqual(rank(given));
          expect(rank({ ...given, coldest: given.coldest - colder })).toBeGreaterThanOrEqual(rank(given));
          if (given.share !== null)
            expect(rank({ ...given, share: given.share * share })).toBeGreaterThanOrEqual(rank(given));
          expect(rank({ ...given, share: null })).toBeGreaterThanOrEqual(rank({ ...given, share: 1 }));
          expect(rank({ ...given, capPly: null })).toBe(rank({ ...given, capPly: true }));
        },
      ),
    );
  });
});

describe('the age by heat', () => {
  it('grows with the years and with warmth', () => {
    fc.assert(
      fc.property(
        anyPlace,
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 10 }),
        (place, years, warmer) => {
          const now = heatAge(years, place);
          const warm = { ...place, winterLow: place.winterLow + warmer, summerHigh: place.summerHigh + warmer };
          const heated = {
            ...warm,
            months: place.months.map((mean) => (mean === null ? null : mean + warmer)),
            heatedTo: (place.heatedTo ?? 12) + warmer,
          };
          const then = heatAge(years, heated);
          expect(now.byArrhenius.low).toBeLessThanOrEqual(now.byArrhenius.high);
          expect(then.byArrhenius.low).toBeGreaterThanOrEqual(now.byArrhenius.low);
          expect(then.byRuleOfTen).toBeGreaterThanOrEqual(now.byRuleOfTen);
          expect(heatAge(2 * years, place).byRuleOfTen).toBeCloseTo(2 * now.byRuleOfTen, 6);
        },
      ),
    );
  });
});
