import { describe, expect, it } from 'vitest';
import { ASSUMED, type Place } from '../../src/ageing/place.ts';
import { flatSpotRisk } from '../../src/ageing/tires/flat-spots.ts';
import { heatAge } from '../../src/ageing/tires/heat.ts';
import {
  dueForAir,
  LAY_UP,
  layUpPressure,
  leakRate,
  lossPerMonth,
  pressureAt,
  pressureOver,
} from '../../src/ageing/tires/pressure.ts';
import { convert } from '../../src/catalogue/units.ts';

const psi = (bar: number): number => convert(bar, 'bar', 'psi');
const steady = (mean: number): Place => ({ ...ASSUMED, shelter: 'heated', months: Array<number>(12).fill(mean) });

describe('what the rubber lets through', () => {
  it('below 21 °C is no less than at 21 °C, above 32 °C its high end doubles every 10 °C', () => {
    expect(lossPerMonth(-20)).toEqual(lossPerMonth(21));
    expect(psi(lossPerMonth(42).low)).toBeCloseTo(1.5, 3);
    expect(psi(lossPerMonth(42).high)).toBeCloseTo(3, 3);
  });

  it('between them grows by equal ratios', () => {
    const [low, middle, high] = [21, 26.5, 32].map(lossPerMonth);
    expect((middle?.low ?? 0) ** 2).toBeCloseTo((low?.low ?? 0) * (high?.low ?? 0), 9);
    expect(psi(middle?.low ?? 0)).toBeCloseTo(0.866, 3);
  });
});

describe('a tire’s pressure over the months', () => {
  it('falls by the loss alone where the temperature stays', () => {
    const points = pressureOver({ pressure: 2.5, temperature: 20, day: '2025-11-15' }, '2026-11-15', steady(20));
    expect(points.map(({ day }) => day)).toEqual([
      '2025-11-15',
      '2025-12-01',
      ...Array.from({ length: 11 }, (_, month) => `2026-${String(month + 1).padStart(2, '0')}-01`),
      '2026-11-15',
    ]);
    expect(points[0]?.pressure).toEqual({ low: expect.closeTo(2.5, 9), high: expect.closeTo(2.5, 9) });
    // Twelve months of 0.5 to 1.0 psi.
    expect(psi(2.5 - (points.at(-1)?.pressure.high ?? 0))).toBeCloseTo(6, 1);
    expect(psi(2.5 - (points.at(-1)?.pressure.low ?? 0))).toBeCloseTo(12, 1);
  });

  it('is told at the temperature of the month', () => {
    const months = Array<number>(12).fill(20).with(1, -10);
    const points = pressureOver({ pressure: 2.5, temperature: 20, day: '2026-01-31' }, '2026-02-01', {
      ...steady(20),
      months,
    });
    expect(points.at(-1)?.pressure.high).toBeCloseTo(pressureAt(2.5, 20, -10), 2);
  });

  it('is two-sided from the first day where its temperature was not noted', () => {
    const place = { ...ASSUMED, shelter: 'open' as const };
    const [point] = pressureOver({ pressure: 2.5, temperature: null, day: '2026-01-10' }, '2026-01-10', place);
    expect(point?.pressure.low).toBeLessThan(2.45);
    expect(point?.pressure.high).toBeGreaterThan(2.55);
  });

  it('ends at none, not below', () =>
    expect(
      pressureOver({ pressure: 0.1, temperature: 20, day: '2020-01-01' }, '2030-01-01', steady(5)).at(-1)?.pressure,
    ).toEqual({ low: 0, high: 0 }));

  it('is due a tenth below the placard: 2.4 bar at 20 °C, placard 2.4, in 3.5 to 7 months', () => {
    // 0.24 bar are 3.48 psi.
    const due = dueForAir({ pressure: 2.4, temperature: 20, day: '2026-01-01' }, '2027-12-31', steady(20), 2.4);
    expect(due).toEqual({ earliest: '2026-04-17', latest: '2026-08-01' });
  });

  it('is due at once where it is low already, and not at all within too short a time', () => {
    const low = { pressure: 2, temperature: 20, day: '2026-01-01' } as const;
    expect(dueForAir(low, '2026-02-01', steady(20), 2.4)).toEqual({ earliest: '2026-01-01', latest: '2026-01-01' });
    expect(dueForAir({ ...low, pressure: 2.4 }, '2026-02-01', steady(20), 2.4)).toEqual({
      earliest: null,
      latest: null,
    });
  });

  it('is due when the cold month comes, without any loss to speak of', () => {
    const months = Array<number>(12).fill(20).with(11, -15);
    const due = dueForAir(
      { pressure: 2.45, temperature: 20, day: '2026-11-25' },
      '2027-01-31',
      { ...steady(20), months },
      2.4,
    );
    expect(due).toEqual({ earliest: '2026-12-01', latest: '2026-12-01' });
  });
});

describe('a leak', () => {
  const first = { pressure: 2.4, temperature: 20, day: '2026-01-01' } as const;

  it('is counted at one temperature', () => {
    const colder = { pressure: pressureAt(2.4, 20, 0), temperature: 0, day: '2026-02-01' } as const;
    expect(leakRate(first, colder)).toBeCloseTo(0, 9);
    expect(leakRate({ ...first, temperature: null }, { ...colder, temperature: null })).toBeGreaterThan(0.2);
  });

  it('is not told from a week short of a day, nor backwards, nor from one noted temperature', () => {
    expect(leakRate(first, { ...first, pressure: 2.3, day: '2026-01-07' })).toBeNull();
    expect(leakRate(first, { ...first, pressure: 2.3, day: '2026-01-08' })).toBeCloseTo(0.435, 3);
    expect(leakRate({ ...first, day: '2026-03-01' }, first)).toBeNull();
    expect(leakRate(first, { ...first, pressure: 2.3, temperature: null, day: '2026-03-01' })).toBeNull();
  });

  it('is below 0 where air was added', () =>
    expect(leakRate(first, { ...first, pressure: 2.6, day: '2026-02-01' })).toBeLessThan(0));
});

describe('the pressure for a lay-up', () => {
  it('is 0.7 to 1 bar above the placard, up to the sidewall’s maximum', () => {
    expect(layUpPressure(2, 3.5)).toEqual({ low: 2.7, high: 3 });
    expect(layUpPressure(2, 2.8)).toEqual({ low: 2.7, high: 2.8 });
    expect(layUpPressure(2.4, 2.4)).toEqual({ low: 2.4, high: 2.4 });
  });

  it('is the placard’s where nobody has read the sidewall', () =>
    expect(layUpPressure(2, null)).toEqual({ low: 2, high: 2 }));

  it('comes with the words that sources differ and that it is set back', () =>
    expect(LAY_UP.says.join(' ')).toMatch(/Sources differ.*Set it back to the placard before driving/));
});

describe('flat spots', () => {
  const standing = { days: 20, share: 1, coldest: 5, capPly: false };

  it.each([
    ['a short stand passes', {}, 'passing'],
    ['a week passes even low on air', { days: 7, share: 0.5 }, 'passing'],
    ['up to the days between moves passes', { days: 91 }, 'passing'],
    ['longer may stay', { days: 92 }, 'may stay'],
    ['with a cap ply from 31 days', { days: 31, capPly: true }, 'may stay'],
    ['with nobody having looked for one, too', { days: 31, capPly: null }, 'may stay'],
    ['low on air may stay', { share: 0.85 }, 'may stay'],
    ['air nobody looked at counts as low', { share: null }, 'may stay'],
    ['very low on air is likely to', { share: 0.6 }, 'likely to stay'],
    ['long and low on air is likely to', { days: 92, share: 0.85 }, 'likely to stay'],
    ['a year is likely to, at full pressure', { days: 365 }, 'likely to stay'],
    ['long in hard frost is likely to', { days: 92, coldest: -15 }, 'likely to stay'],
  ])('%s', (_, differs, level) => expect(flatSpotRisk({ ...standing, ...differs }).level).toBe(level));

  it('say what speaks for them', () => {
    expect(flatSpotRisk({ ...standing, days: 92, share: null }).says).toEqual([
      expect.stringContaining('likely to stay'),
      expect.stringContaining('longer than tire makers allow'),
      expect.stringContaining('nobody has looked'),
      expect.stringContaining('every 6 months'),
    ]);
    expect(flatSpotRisk(standing).says).toHaveLength(2);
  });
});

describe('the age by heat', () => {
  it('is the calendar’s at 20 °C, and an estimate with two ends elsewhere', () => {
    const at20 = heatAge(10, steady(20));
    expect(at20.byArrhenius).toEqual({ low: expect.closeTo(10, 9), high: expect.closeTo(10, 9) });
    const hot = heatAge(10, { ...ASSUMED, winterLow: 2, summerHigh: 46, air: 'desert', shelter: 'open' });
    expect(hot.byArrhenius.low).toBeGreaterThan(hot.byRuleOfTen);
    expect(hot.byArrhenius.high).toBeGreaterThan(hot.byArrhenius.low + 0.5);
    const cold = heatAge(10, ASSUMED);
    expect(cold.byArrhenius.high).toBeLessThan(10);
    expect(cold.byArrhenius.low).toBeLessThan(cold.byArrhenius.high);
  });
});
