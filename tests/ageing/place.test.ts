import { describe, expect, it } from 'vitest';
import {
  ASSUMED,
  coldestNight,
  dailySwing,
  humidityOf,
  monthOn,
  monthsOf,
  type Place,
} from '../../src/ageing/place.ts';

const OPEN: Place = { ...ASSUMED, winterLow: -14, summerHigh: 34, shelter: 'open' };

describe('a place', () => {
  it('outdoors inland has a wave of 45 % of its span around its middle', () => {
    const months = monthsOf(OPEN);
    // Middle 10, half of 45 % of 48: 10.8.
    expect(months[0]?.mean).toBeCloseTo(-0.8, 9);
    expect(months[3]?.mean).toBeCloseTo(10, 9);
    expect(months[6]?.mean).toBeCloseTo(20.8, 9);
    expect(months[0]?.low).toBeCloseTo(-14, 9);
    expect(months[6]?.high).toBeCloseTo(34, 9);
  });

  it('has its winter in July in the south', () => {
    const south = monthsOf({ ...OPEN, hemisphere: 'south' });
    expect(south[6]?.mean).toBeCloseTo(-0.8, 9);
    expect(south[0]?.mean).toBeCloseTo(20.8, 9);
  });

  it('under a roof has milder nights: the less, the more it is closed', () => {
    const night = (shelter: Place['shelter']) => coldestNight({ ...OPEN, shelter });
    expect(night('covered')).toBeCloseTo(-12.68, 2);
    expect(night('unheated')).toBeCloseTo(-7.4, 2);
    expect(night('damp')).toBe(night('unheated'));
    expect(night('heated')).toBe(12);
    expect(coldestNight({ ...OPEN, shelter: 'heated', heatedTo: 8 })).toBe(8);
  });

  it('takes a measured month for the wave’s, with its nights around it', () => {
    const months = monthsOf({ ...OPEN, months: Array<number | null>(12).fill(null).with(0, -5) });
    expect(months[0]).toEqual({ mean: -5, low: expect.closeTo(-18.2, 9), high: expect.closeTo(8.2, 9) });
    expect(months[1]?.mean).toBeGreaterThan(-5);
  });

  it('heated, with a month measured below what the heating should keep, believes the measurement', () => {
    const place = { ...OPEN, shelter: 'heated' as const, months: Array<number | null>(12).fill(null).with(0, 4) };
    expect(monthsOf(place)[0]).toMatchObject({ mean: 4, low: 4 });
    expect(coldestNight(place)).toBe(4);
  });

  it('finds a month by its day', () => expect(monthOn(monthsOf(OPEN), '2026-07-31').mean).toBeCloseTo(20.8, 9));

  it.each([
    ['inland', 'open', 70],
    ['inland', 'damp', 82],
    ['coast', 'heated', 60],
    ['coast', 'damp', 92],
    ['desert', 'open', 35],
  ] as const)('%s and %s has %d %% humidity', (air, shelter, humidity) =>
    expect(humidityOf({ ...OPEN, air, shelter })).toBe(humidity),
  );

  it('takes a measured humidity for the usual one', () => expect(humidityOf({ ...OPEN, humidity: 55 })).toBe(55));

  it.each([
    ['coast', 'open', 7],
    ['inland', 'unheated', 5],
    ['desert', 'covered', 13.5],
  ] as const)('%s and %s swings %d °C a day', (air, shelter, swing) =>
    expect(dailySwing({ ...OPEN, air, shelter })).toBeCloseTo(swing, 9),
  );

  it('nobody has told is an unheated garage inland in the north', () =>
    expect(ASSUMED).toMatchObject({ shelter: 'unheated', air: 'inland', hemisphere: 'north', humidity: null }));
});
