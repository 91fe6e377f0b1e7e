import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import { findingsOf } from '../../src/findings/car.ts';
import type { PartFacts } from '../../src/findings/facts.ts';
import { JOBS } from '../../src/money/jobs.ts';
import { KIND_JOBS } from '../../src/money/kind-jobs.ts';
import { type Need, ordersOf } from '../../src/money/shopping.ts';
import { SUPPLIES } from '../../src/money/supplies.ts';
import { itemsOf, yearAhead } from '../../src/money/year-ahead.ts';
import { carOf, dated, partOf } from '../support/parts.ts';
import { DOLLARS, traitsOf, undated } from '../support/sleepers.ts';

const ON: CivilDate = '2026-11-26';
const ahead = (parts: readonly PartFacts[], on = ON) =>
  yearAhead(itemsOf('Merle', findingsOf(carOf(), parts, [], on), DOLLARS, on), on);
const fluid = (day: CivilDate): PartFacts => partOf('brake-fluid-glycol', [dated('filled', day)]);

describe('the year ahead', () => {
  it('tells a renewal in the month of its limit', () => {
    const { months, owed } = ahead([fluid('2025-03-10')]);
    expect(owed.items).toEqual([]);
    const march = months.find(({ from }) => from === '2027-03-01');
    expect(march?.items.map(({ title, day }) => [title, day])).toEqual([
      ['Brake fluid, glycol (DOT 3, 4, 5.1)', '2027-03-10'],
    ]);
    expect(march?.cost.workshop).toEqual({ low: 15 + 0.8 * 90, high: 40 + 1.5 * 150 });
  });

  it('tells it again after its interval, within five years', () => {
    const { years } = ahead([fluid('2025-03-10')]);
    expect(years.map(({ items }) => items.length)).toEqual([1, 0, 1, 0, 1]);
  });

  it('counts what is past or undated as owed, and again after its interval from today', () => {
    const { owed, years } = ahead([fluid('2020-01-01')]);
    expect(owed.items).toHaveLength(1);
    expect(years.map(({ items }) => items.length)).toEqual([1, 0, 1, 0, 1]);
    expect(ahead([partOf('brake-fluid-glycol', [])]).owed.items[0]).toMatchObject({ undated: true, day: null });
  });

  it('counts four tires of one age as one set, and oil and its filter as one job', () => {
    const tires = ['front left', 'front right', 'rear left', 'rear right'].map((position) =>
      partOf('tires-road', [dated('made', '2017-05-01')], { id: position, position }),
    );
    const oil = ['engine-oil', 'oil-filter'].map((kind) =>
      partOf(kind, [dated('filled', '2026-06-01'), dated('fitted', '2026-06-01')]),
    );
    const { months } = ahead([...tires, ...oil]);
    expect(months.flatMap(({ items }) => items.map(({ title }) => title))).toEqual([
      'Road tire',
      'Engine oil, Oil filter and drain washer',
    ]);
  });

  it('loses nothing and counts nothing twice: owed, months and years add up', () => {
    const anyAges = fc.array(fc.option(fc.nat(6000), { nil: null, freq: 5 }), { minLength: 5, maxLength: 9 });
    fc.assert(
      fc.property(anyAges, fc.constantFrom('big-automatic-v8', 'diesel-wagon', 'tourer-rod-brakes'), (ages, start) => {
        const parts = undated(traitsOf(start)).map((part, index) => {
          const age = ages[index % ages.length];
          return age == null
            ? part
            : {
                ...part,
                claims: (['made', 'fitted', 'filled', 'serviced'] as const).map((clock) =>
                  dated(clock, addDays(ON, -age)),
                ),
              };
        });
        const items = itemsOf('Merle', findingsOf(carOf(), parts, [], ON), DOLLARS, ON);
        const { owed, months, years } = yearAhead(items, ON);
        expect(years.reduce((sum, year) => sum + year.items.length, 0)).toBe(items.length);
        const total = (of: readonly { cost: { workshop: { high: number } } | null }[]): number =>
          of.reduce((sum, { cost }) => sum + (cost?.workshop.high ?? 0), 0);
        expect(total(years)).toBeCloseTo(total(items), 4);
        expect(total([owed, ...months])).toBeCloseTo(total(years.slice(0, 1)), 4);
        for (const { items: those, cost } of [owed, ...months, ...years])
          expect(total(those)).toBeCloseTo(cost.workshop.high, 4);
      }),
      { numRuns: 60 },
    );
  });

  it('has a figure, or says that it has none, for every kind that is renewed by age', () => {
    const renewed = [...KINDS.values()].filter(({ interval }) => interval.replaceBy !== null).map(({ key }) => key);
    expect(renewed.filter((key) => !Object.hasOwn(KIND_JOBS, key))).toEqual([]);
    expect(Object.keys(KIND_JOBS).filter((key) => !renewed.includes(key))).toEqual([]);
  });

  it('has spans that run from low to high, and a worst lead time that is the longest', () => {
    for (const { hours, parts } of Object.values(JOBS)) {
      expect(hours.low).toBeLessThanOrEqual(hours.high);
      expect(parts.low).toBeLessThanOrEqual(parts.high);
    }
    for (const { lead } of Object.values(SUPPLIES)) expect(lead[0]).toBeLessThanOrEqual(lead[1]);
  });
});

describe('the shopping list', () => {
  const need = (more: Partial<Need>): Need => ({
    carId: 'car',
    car: 'Merle',
    what: 'Tires',
    lead: [7, 30],
    neededOn: '2027-03-01',
    forWhat: 'New tires',
    page: '/',
    ...more,
  });

  it('counts back the longest lead time, late ones first, those without a day last and longest first', () => {
    const orders = ordersOf(
      [
        need({}),
        need({ what: 'Oil', lead: [2, 7], neededOn: '2026-11-30' }),
        need({ what: 'Bulbs', lead: [1, 3], neededOn: null }),
        need({ what: 'Tank', lead: [10, 60], neededOn: null }),
      ],
      ON,
    );
    expect(orders.map(({ what, orderBy, late }) => [what, orderBy, late])).toEqual([
      ['Oil', '2026-11-23', true],
      ['Tires', '2027-01-30', false],
      ['Tank', null, false],
      ['Bulbs', null, false],
    ]);
  });

  it('names the same thing for one car once, for the earliest work', () => {
    const orders = ordersOf([need({ neededOn: null }), need({ neededOn: '2027-06-01' }), need({})], ON);
    expect(orders.map(({ neededOn }) => neededOn)).toEqual(['2027-03-01']);
  });
});
