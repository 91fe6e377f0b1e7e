import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { absoluteHumidity, condenses, dewPoint } from '../../src/ageing/humid-air.ts';
import {
  AIRS,
  coldestNight,
  dailySwing,
  humidityOf,
  monthOn,
  monthsOf,
  type Place,
  SHELTERS,
} from '../../src/ageing/place.ts';
import { lookFrom, placeFactor } from '../../src/ageing/rubber/place.ts';
import { interpolate, inverse, type Row } from '../../src/ageing/table.ts';
import {
  arrheniusRate,
  celsius,
  doublingRate,
  effectiveTemperature,
  fahrenheit,
} from '../../src/ageing/temperature.ts';
import { anyDay } from '../support/arbitraries.ts';

const plain: fc.Arbitrary<Place> = fc
  .record({
    winterLow: fc.integer({ min: -45, max: 15 }),
    span: fc.integer({ min: 5, max: 60 }),
    air: fc.constantFrom(...AIRS),
    shelter: fc.constantFrom(...SHELTERS),
    heatedTo: fc.option(fc.integer({ min: 5, max: 22 }), { nil: null }),
    hemisphere: fc.constantFrom('north' as const, 'south' as const),
  })
  .map(({ span, ...place }) => ({
    ...place,
    summerHigh: place.winterLow + span,
    humidity: null,
    months: Array<null>(12).fill(null),
  }));
const known = fc.array(fc.option(fc.integer({ min: -40, max: 45 }), { nil: null }), { minLength: 12, maxLength: 12 });
const anyPlace = fc
  .tuple(plain, known, fc.boolean())
  .map(([place, months, told]) => (told ? { ...place, months } : place));
const temperature = fc.double({ min: -40, max: 60, noNaN: true });

describe('the months of a place', () => {
  it('have their night below their mean and their hottest hour above it', () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        const months = monthsOf(place);
        expect(months).toHaveLength(12);
        for (const { low, mean, high } of months) {
          expect(low).toBeLessThanOrEqual(mean);
          expect(mean).toBeLessThanOrEqual(high);
        }
      }),
    );
  });

  it('are those measured, where they were', () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        for (const [month, { mean }] of monthsOf(place).entries())
          if (place.months[month] !== null) expect(mean).toBe(place.months[month]);
      }),
    );
  });

  it('of the south are those of the north half a year on', () => {
    fc.assert(
      fc.property(plain, (place) => {
        const north = monthsOf({ ...place, hemisphere: 'north' });
        const south = monthsOf({ ...place, hemisphere: 'south' });
        for (const [month, { mean }] of north.entries()) expect(south[(month + 6) % 12]?.mean).toBeCloseTo(mean, 9);
      }),
    );
  });

  it('outdoors run from the coldest night told to the hottest day told, and no roof lets more through', () => {
    fc.assert(
      fc.property(plain, fc.constantFrom(...SHELTERS), (place, shelter) => {
        const open = { ...place, shelter: 'open' as const };
        expect(coldestNight(open)).toBeCloseTo(place.winterLow, 9);
        expect(Math.max(...monthsOf(open).map(({ high }) => high))).toBeCloseTo(place.summerHigh, 9);
        expect(coldestNight({ ...place, shelter })).toBeGreaterThanOrEqual(place.winterLow - 1e-9);
        expect(dailySwing({ ...place, shelter })).toBeLessThanOrEqual(dailySwing(open));
      }),
    );
  });

  it('under any roof but a heated one have the nights of outdoors, whatever was measured', () => {
    fc.assert(
      fc.property(anyPlace, fc.constantFrom('unheated', 'damp', 'covered'), (place, shelter) => {
        const lows = (roof: Place['shelter']) => monthsOf({ ...place, shelter: roof }).map(({ low }) => low);
        expect(lows(shelter)).toEqual(lows('open'));
      }),
    );
  });

  it('heated are never colder than outdoors', () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        const [heated, open] = [monthsOf({ ...place, shelter: 'heated' }), monthsOf({ ...place, shelter: 'open' })];
        for (const [month, { low }] of heated.entries()) expect(low).toBeGreaterThanOrEqual(open[month]?.low ?? 0);
      }),
    );
  });

  it('under heating stay at what it keeps, and elsewhere no heating is counted', () => {
    fc.assert(
      fc.property(plain, fc.integer({ min: 5, max: 22 }), (place, heatedTo) => {
        const lows = (shelter: Place['shelter']) => monthsOf({ ...place, shelter, heatedTo }).map(({ low }) => low);
        for (const low of lows('heated')) expect(low).toBeGreaterThanOrEqual(heatedTo - 1e-9);
        expect(lows('unheated')).toEqual(
          monthsOf({ ...place, shelter: 'unheated', heatedTo: null }).map(({ low }) => low),
        );
      }),
    );
  });

  it('heated to nobody knows what have the nights of outdoors', () => {
    fc.assert(
      fc.property(plain, (place) => {
        const lows = (shelter: Place['shelter']) =>
          monthsOf({ ...place, shelter, heatedTo: null }).map(({ low }) => low);
        expect(lows('heated')).toEqual(lows('open'));
      }),
    );
  });

  it('are found by the day', () => {
    fc.assert(
      fc.property(anyPlace, anyDay, (place, day) => {
        const months = monthsOf(place);
        expect(monthOn(months, day)).toBe(months[Number(day.split('-')[1]) - 1]);
      }),
    );
  });
});

describe('air', () => {
  it('has a humidity from 0 to 95 %, and the one measured where it was', () => {
    fc.assert(
      fc.property(anyPlace, fc.integer({ min: 1, max: 100 }), (place, measured) => {
        expect(humidityOf(place)).toBeGreaterThan(0);
        expect(humidityOf(place)).toBeLessThanOrEqual(95);
        expect(humidityOf({ ...place, humidity: measured })).toBe(measured);
      }),
    );
  });

  it('sheds water just below its dew point, which is never above the air', () => {
    fc.assert(
      fc.property(temperature, fc.integer({ min: 5, max: 100 }), (air, humidity) => {
        const point = dewPoint(air, humidity);
        expect(point).toBeLessThanOrEqual(air + 1e-9);
        expect(condenses(point - 0.01, air, humidity)).toBe(true);
        expect(condenses(point + 0.01, air, humidity)).toBe(false);
        expect(absoluteHumidity(point, 100)).toBeGreaterThanOrEqual(absoluteHumidity(air, humidity) - 1e-9);
      }),
    );
  });
});

describe('temperature and its rates', () => {
  it('goes to °F and back', () => {
    fc.assert(
      fc.property(temperature, (t) => {
        expect(celsius(fahrenheit(t))).toBeCloseTo(t, 9);
      }),
    );
  });

  it('never slows what it warms, and is undone by its reverse', () => {
    fc.assert(
      fc.property(temperature, temperature, fc.integer({ min: 20, max: 120 }), (t, other, energy) => {
        for (const rate of [doublingRate(t, other), arrheniusRate(t, other, energy)]) {
          // Too near to tell apart.
          if (Math.abs(t - other) > 0.001) expect(rate > 1).toBe(t > other);
        }
        expect(doublingRate(t, other) * doublingRate(other, t)).toBeCloseTo(1, 9);
        expect(arrheniusRate(t, other, energy) * arrheniusRate(other, t, energy)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('the effective one lies between mean and warmest', () => {
    fc.assert(
      fc.property(fc.array(temperature, { minLength: 1, maxLength: 24 }), (all) => {
        const effective = effectiveTemperature(all);
        expect(effective).toBeLessThanOrEqual(Math.max(...all) + 1e-9);
        expect(effective).toBeGreaterThanOrEqual(all.reduce((sum, t) => sum + t, 0) / all.length - 1e-9);
      }),
    );
  });
});

describe('tables', () => {
  const rows: fc.Arbitrary<Row[]> = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 50 })), { minLength: 2, maxLength: 8 })
    .chain((steps) =>
      fc.constantFrom(1, -1).map((sign) => {
        let [x, y] = [0, 0];
        return steps.map(([dx, dy]): Row => {
          x += dx;
          y += dy * sign;
          return [x, y];
        });
      }),
    );

  it('give their rows, stay between them, hold beyond their ends, and read back the other way', () => {
    fc.assert(
      fc.property(rows, fc.double({ min: 0, max: 1, noNaN: true }), (table, share) => {
        for (const [x, y] of table) expect(interpolate(table, x)).toBe(y);
        const [first, last] = [table[0] as Row, table.at(-1) as Row];
        expect(interpolate(table, first[0] - 5)).toBe(first[1]);
        expect(interpolate(table, last[0] + 5)).toBe(last[1]);
        const x = first[0] + share * (last[0] - first[0]);
        const y = interpolate(table, x);
        expect(y).toBeGreaterThanOrEqual(Math.min(first[1], last[1]));
        expect(y).toBeLessThanOrEqual(Math.max(first[1], last[1]));
        expect(interpolate(inverse(table), y)).toBeCloseTo(x, 6);
      }),
    );
  });
});

describe('a look shifted by the place', () => {
  const months = fc.integer({ min: 1, max: 240 });
  const limit = fc.option(months, { nil: null });

  it('falls on a whole month, never past the replace-by, never past one and a half times its months without', () => {
    fc.assert(
      fc.property(months, limit, anyPlace, fc.boolean(), (from, replaceBy, place, safety) => {
        const look = lookFrom(from, replaceBy, place, safety);
        expect(Number.isInteger(look)).toBe(true);
        expect(look).toBeGreaterThanOrEqual(0);
        expect(look).toBeLessThanOrEqual(replaceBy ?? from * 1.5);
      }),
    );
  });

  it('of a part that safety rests on is never later than without the place, nor later than of any other', () => {
    fc.assert(
      fc.property(months, limit, anyPlace, (from, replaceBy, place) => {
        expect(lookFrom(from, replaceBy, place, true)).toBeLessThanOrEqual(from);
        expect(lookFrom(from, replaceBy, place, true)).toBeLessThanOrEqual(lookFrom(from, replaceBy, place, false));
      }),
    );
  });

  it('is never later in the open than under a roof', () => {
    fc.assert(
      fc.property(
        months,
        limit,
        plain,
        fc.constantFrom('unheated', 'damp', 'covered'),
        (from, replaceBy, place, shelter) => {
          const look = (roof: Place['shelter']) => lookFrom(from, replaceBy, { ...place, shelter: roof }, false);
          expect(look('open')).toBeLessThanOrEqual(look(shelter));
        },
      ),
    );
  });

  it('moves by a factor of 0.5 to 3.2', () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        expect(placeFactor(place)).toBeGreaterThanOrEqual(0.5);
        expect(placeFactor(place)).toBeLessThanOrEqual(3.2);
      }),
    );
  });
});
