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

  it.each(['unheated', 'damp', 'covered', 'open'] as const)('%s has the coldest night of outdoors', (shelter) =>
    expect(coldestNight({ ...OPEN, shelter })).toBeCloseTo(-14, 9),
  );

  it('heated has no night below what the heating is told to keep', () => {
    expect(coldestNight({ ...OPEN, shelter: 'heated', heatedTo: 8 })).toBe(8);
  });

  it('heated to nobody knows what has milder days and the nights of outdoors', () => {
    expect(coldestNight({ ...OPEN, shelter: 'heated' })).toBeCloseTo(-14, 9);
    expect(monthsOf({ ...OPEN, shelter: 'heated' })[0]?.mean).toBe(12);
  });

  it('under a roof has milder days: the more it is closed, the less', () => {
    const hottest = (shelter: Place['shelter']) => monthsOf({ ...OPEN, shelter })[6]?.high;
    // 20.8 °C and 13.2 to the hottest hour outdoors, of which 0.9, 0.5 and 0.2 get through.
    expect(hottest('covered')).toBeCloseTo(32.68, 9);
    expect(hottest('unheated')).toBeCloseTo(27.4, 9);
    expect(hottest('damp')).toBe(hottest('unheated'));
    expect(hottest('heated')).toBeCloseTo(23.44, 9);
  });

  it('takes a measured month for the wave’s, with its nights around it', () => {
    const months = monthsOf({ ...OPEN, months: Array<number | null>(12).fill(null).with(0, -5) });
    expect(months[0]).toEqual({ mean: -5, low: expect.closeTo(-18.2, 9), high: expect.closeTo(8.2, 9) });
    expect(months[1]?.mean).toBeGreaterThan(-5);
  });

  describe('heated, with a month that was measured', () => {
    const measured = (mean: number) => ({
      ...OPEN,
      shelter: 'heated' as const,
      heatedTo: 12,
      months: Array<number | null>(12).fill(null).with(0, mean),
    });

    it('below what the heating should keep, believes the measurement, with nights around it', () => {
      // A fifth of the 13.2 that outdoor nights are colder than their month.
      expect(monthsOf(measured(4))[0]).toMatchObject({ mean: 4, low: expect.closeTo(1.36, 9) });
      expect(coldestNight(measured(4))).toBeCloseTo(1.36, 9);
    });

    it('above it, has the heating in its nights', () => {
      expect(monthsOf(measured(13))[0]).toMatchObject({ mean: 13, low: 12 });
      expect(monthsOf(measured(20))[0]).toMatchObject({ mean: 20, low: expect.closeTo(17.36, 9) });
    });

    it('and no temperature told, has nights around it too', () =>
      expect(monthsOf({ ...measured(13), heatedTo: null })[0]).toMatchObject({ low: expect.closeTo(10.36, 9) }));
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
