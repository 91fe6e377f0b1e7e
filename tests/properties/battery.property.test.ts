import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chargeByDensity,
  chargeByVoltage,
  densityByCharge,
  FILLS,
  voltageByCharge,
} from '../../src/ageing/battery/charge.ts';
import { BATTERY, CHEMISTRIES } from '../../src/ageing/battery/chemistry.ts';
import {
  chargeAfter,
  daysUntil,
  drainRate,
  observedDrain,
  selfDischargeRate,
} from '../../src/ageing/battery/discharge.ts';
import {
  FLAT_FREEZES,
  FROST_MARGIN,
  freezingByCharge,
  frostLimit,
  leastCharge,
} from '../../src/ageing/battery/freezing.ts';
import { crankingPower, lifeInHeat } from '../../src/ageing/battery/life.ts';
import {
  type BatteryFacts,
  CRANKS_ABOVE,
  chargeOn,
  milestones,
  projectBattery,
  RECHARGE_AT,
} from '../../src/ageing/battery/outlook.ts';
import { AIRS, monthOn, monthsOf, type Place, SHELTERS } from '../../src/ageing/place.ts';
import type { Span } from '../../src/ageing/span.ts';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';

const anyDay = fc.nat(30_000).map((days) => addDays('1950-01-01', days));
/** On a grid of 0.001: readings have no digits beyond, and the smallest of all numbers are none of anything. */
const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(min * 1000), max: Math.floor(max * 1000) }).map((thousandths) => thousandths / 1000);
const percent = number(0, 100);
const temperature = number(-30, 45);
const perMonth = number(0.5, 25);
const mA = fc.oneof(fc.constant(0), number(0.1, 200));
const Ah = number(20, 120);
const chemistry = fc.constantFrom(...CHEMISTRIES);
const sorted = (a: number, b: number): Span => ({ low: Math.min(a, b), high: Math.max(a, b) });
const sortedPair = (of: fc.Arbitrary<number>): fc.Arbitrary<Span> => fc.tuple(of, of).map(([a, b]) => sorted(a, b));

describe('reading', () => {
  it('a higher voltage or density is never less charge, and charge reads back', () => {
    fc.assert(
      fc.property(chemistry, percent, percent, fc.constantFrom(...FILLS), (kind, a, b, fill) => {
        const { low, high } = sorted(a, b);
        expect(densityByCharge(low, fill)).toBeLessThanOrEqual(densityByCharge(high, fill));
        expect(chargeByDensity(densityByCharge(a, fill), fill)).toBeCloseTo(a, 6);
        const volts = voltageByCharge(kind, a);
        if (volts === null) return;
        expect(voltageByCharge(kind, low)).toBeLessThanOrEqual(voltageByCharge(kind, high) ?? Number.NaN);
        expect(chargeByVoltage(kind, volts, 12)?.percent).toBeCloseTo(a, 6);
        expect(chargeByVoltage(kind, voltageByCharge(kind, a, 6) ?? 0, 6)?.percent).toBeCloseTo(a, 6);
      }),
    );
  });

  it('6 volts leave twice the doubt of 12 about the same charge, cut off at empty and full', () => {
    fc.assert(
      fc.property(chemistry, percent, (kind, charge) => {
        for (const [nominal, doubt] of [
          [12, 5],
          [6, 10],
        ] as const) {
          const span = chargeByVoltage(kind, voltageByCharge(kind, charge, nominal) ?? 0, nominal)?.span;
          if (!span) continue;
          expect(span.low).toBeCloseTo(Math.max(0, charge - doubt), 6);
          expect(span.high).toBeCloseTo(Math.min(100, charge + doubt), 6);
        }
      }),
    );
  });
});

describe('freezing', () => {
  it('more charge never freezes sooner', () => {
    fc.assert(
      fc.property(chemistry, percent, percent, (kind, a, b) => {
        const { low, high } = sorted(a, b);
        if (!BATTERY[kind].acid) return;
        expect(freezingByCharge(kind, high)).toBeLessThanOrEqual(freezingByCharge(kind, low) ?? Number.NaN);
      }),
    );
  });

  it('the least charge for a night is the one that freezes the margin below it', () => {
    fc.assert(
      fc.property(percent, (charge) => {
        const freezes = freezingByCharge('calcium', charge) as number;
        expect(leastCharge(freezes + FROST_MARGIN)).toBeCloseTo(charge, 6);
      }),
    );
    fc.assert(
      fc.property(number(-56, -8), (night) => {
        expect(freezingByCharge('calcium', leastCharge(night))).toBeCloseTo(night - FROST_MARGIN, 6);
      }),
    );
  });

  it('above the limit of a night nothing freezes, below it everything may', () => {
    fc.assert(
      fc.property(chemistry, number(-50, 10), percent, (kind, night, charge) => {
        const limit = frostLimit(kind, night);
        const freezes = freezingByCharge(kind, charge);
        if (limit === null || freezes === null)
          expect(freezes === null || night - FROST_MARGIN >= FLAT_FREEZES).toBe(true);
        else if (charge > limit + 1e-6) expect(freezes).toBeLessThanOrEqual(night - FROST_MARGIN);
        else if (charge < limit - 1e-6) expect(freezes).toBeGreaterThan(night - FROST_MARGIN);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('left alone', () => {
  it('charge never rises, and is never below 0', () => {
    fc.assert(
      fc.property(percent, perMonth, temperature, mA, Ah, number(0, 900), number(0, 900), (start, k, t, i, c, a, b) => {
        const { low: sooner, high: later } = sorted(a, b);
        const left = (days: number): number => chargeAfter(start, selfDischargeRate(k, t), drainRate(i, c), days);
        expect(left(0)).toBe(start);
        expect(left(sooner)).toBeLessThanOrEqual(start);
        expect(left(later)).toBeLessThanOrEqual(left(sooner) + 1e-9);
        expect(left(later)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('colder is slower, and more drain sooner', () => {
    fc.assert(
      fc.property(percent, percent, perMonth, sortedPair(temperature), sortedPair(mA), Ah, (a, b, k, t, i, c) => {
        const { low: target, high: start } = sorted(a, b);
        const days = (warmth: number, drawn: number): number =>
          daysUntil(start, target, selfDischargeRate(k, warmth), drainRate(drawn, c));
        expect(selfDischargeRate(k, t.low)).toBeLessThanOrEqual(selfDischargeRate(k, t.high));
        expect(days(t.low, i.low)).toBeGreaterThanOrEqual(days(t.high, i.low) * (1 - 1e-9));
        expect(days(t.low, i.low)).toBeGreaterThanOrEqual(days(t.low, i.high) * (1 - 1e-9));
      }),
    );
  });

  it('after the days to a charge it has that charge', () => {
    const self = fc.oneof(fc.constantFrom(0, 1e-12, 1e-9, 1e-6), number(0.001, 0.05));
    fc.assert(
      fc.property(percent, percent, self, mA, Ah, (a, b, k, i, c) => {
        const { low: target, high: start } = sorted(a, b);
        const drain = drainRate(i, c);
        const days = daysUntil(start, target, k, drain);
        if (days === Number.POSITIVE_INFINITY) expect(drain === 0 && (k === 0 || target === 0)).toBe(true);
        else expect(chargeAfter(start, k, drain, days)).toBeCloseTo(target, 6);
      }),
      { numRuns: 1000 },
    );
  });

  it('days add up', () => {
    fc.assert(
      fc.property(percent, perMonth, temperature, mA, Ah, number(0, 90), number(0, 90), (start, k, t, i, c, a, b) => {
        const [self, drain] = [selfDischargeRate(k, t), drainRate(i, c)];
        const halfway = chargeAfter(start, self, drain, a);
        expect(chargeAfter(halfway, self, drain, b)).toBeCloseTo(chargeAfter(start, self, drain, a + b), 6);
      }),
    );
  });

  it('the drain is found again from two readings', () => {
    fc.assert(
      fc.property(
        number(50, 100),
        perMonth,
        temperature,
        mA,
        Ah,
        anyDay,
        fc.integer({ min: 1, max: 60 }),
        (start, k, t, i, c, day, days) => {
          const self = selfDischargeRate(k, t);
          const left = chargeAfter(start, self, drainRate(i, c), days);
          fc.pre(left > 0);
          const after = { percent: left, day: addDays(day, days) };
          expect(observedDrain({ percent: start, day }, after, self, c)).toBeCloseTo(i, 5);
        },
      ),
    );
  });
});

const place: fc.Arbitrary<Place> = fc.record({
  winterLow: number(-35, 5),
  summerHigh: number(10, 45),
  air: fc.constantFrom(...AIRS),
  shelter: fc.constantFrom(...SHELTERS),
  humidity: fc.constant(null),
  heatedTo: fc.constant(null),
  hemisphere: fc.constantFrom('north' as const, 'south' as const),
  months: fc.constant(Array<null>(12).fill(null)),
});

const facts: fc.Arbitrary<BatteryFacts> = fc.record({
  chemistry,
  capacity: Ah,
  drain: sortedPair(mA),
  maintained: fc.constant(false),
  charge: sortedPair(percent),
  from: anyDay,
});

describe('outlook', () => {
  const ahead = fc.integer({ min: 0, max: 700 });

  it('bounds are ordered, fall, and are the charge of their day', () => {
    fc.assert(
      fc.property(facts, place, ahead, (battery, where, days) => {
        const outlook = projectBattery(battery, where, addDays(battery.from, days));
        let last = { low: 100, high: 100 };
        for (const { day, charge } of outlook.points) {
          expect(charge.low).toBeLessThanOrEqual(charge.high);
          expect(charge.low).toBeLessThanOrEqual(last.low + 1e-9);
          expect(charge.high).toBeLessThanOrEqual(last.high + 1e-9);
          const alone = chargeOn(battery, where, day);
          expect(alone.low).toBeCloseTo(charge.low, 9);
          expect(alone.high).toBeCloseTo(charge.high, 9);
          last = charge;
        }
      }),
    );
  });

  it('the earliest is never after the latest, nor either after the day asked for', () => {
    fc.assert(
      fc.property(facts, place, ahead, (battery, where, days) => {
        const until = addDays(battery.from, days);
        const { recharge, noCrank, freezes } = projectBattery(battery, where, until);
        for (const span of [recharge, noCrank, ...(freezes ? [freezes] : [])]) {
          if (span.latest) expect(span.earliest && span.earliest <= span.latest && span.latest <= until).toBe(true);
          if (span.earliest) expect(battery.from <= span.earliest && span.earliest <= until).toBe(true);
        }
        if (noCrank.earliest) expect(recharge.earliest && recharge.earliest <= noCrank.earliest).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('its days are the same asked for alone', () => {
    fc.assert(
      fc.property(
        facts,
        fc.boolean(),
        place,
        fc.integer({ min: -30, max: 700 }),
        (battery, maintained, where, days) => {
          const one = { ...battery, maintained };
          const until = addDays(one.from, days);
          const { points, ...asked } = projectBattery(one, where, until);
          expect(points.length).toBeGreaterThan(0);
          expect(milestones(one, where, until)).toEqual(asked);
        },
      ),
    );
  });

  it('each day is the first on which it is so', () => {
    const ROUNDING = 1e-6;
    fc.assert(
      fc.property(facts, place, ahead, (battery, where, days) => {
        const until = addDays(battery.from, days);
        const { recharge, noCrank, freezes } = projectBattery(battery, where, until);
        const months = monthsOf(where);
        const frost = (day: CivilDate): number => frostLimit(battery.chemistry, monthOn(months, day).low) ?? -1;
        const all = Array.from({ length: days + 1 }, (_, index) => addDays(battery.from, index));
        const kinds = [
          [recharge, () => RECHARGE_AT],
          [noCrank, () => CRANKS_ABOVE],
          [freezes, frost],
        ] as const;
        for (const [span, target] of kinds)
          for (const [bound, day] of [
            ['low', span?.earliest],
            ['high', span?.latest],
          ] as const) {
            const over = (on: CivilDate): number => chargeOn(battery, where, on)[bound] - target(on);
            for (const before of all.filter((one) => !day || one < day))
              if (span) expect(over(before)).toBeGreaterThan(-ROUNDING);
            if (day) expect(over(day)).toBeLessThan(ROUNDING);
          }
      }),
      { numRuns: 40 },
    );
  });

  it('more drain, less charge or a smaller battery never makes it better', () => {
    fc.assert(
      fc.property(facts, place, fc.integer({ min: 1, max: 400 }), number(0, 50), (battery, where, days, more) => {
        const on = addDays(battery.from, days);
        const { drain, capacity, charge } = battery;
        const base = chargeOn(battery, where, on);
        const worse: readonly BatteryFacts[] = [
          { ...battery, drain: { low: drain.low + more, high: drain.high + more } },
          { ...battery, capacity: capacity - more / 10 },
          { ...battery, charge: { low: Math.max(0, charge.low - more), high: Math.max(0, charge.high - more) } },
        ];
        for (const one of worse) {
          expect(chargeOn(one, where, on).low).toBeLessThanOrEqual(base.low + 1e-9);
          expect(chargeOn(one, where, on).high).toBeLessThanOrEqual(base.high + 1e-9);
        }
      }),
    );
  });
});

it('heat takes life and cold takes power', () => {
  fc.assert(
    fc.property(sortedPair(number(-60, 80)), ({ low, high }) => {
      expect(lifeInHeat(high)).toBeLessThanOrEqual(lifeInHeat(low));
      expect(crankingPower(low)).toBeLessThanOrEqual(crankingPower(high));
    }),
  );
  fc.assert(
    fc.property(number(25, 70), (warm) => {
      expect(lifeInHeat(warm + 8)).toBeCloseTo(lifeInHeat(warm) / 2, 12);
    }),
  );
});
