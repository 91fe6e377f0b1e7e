import { describe, expect, it } from 'vitest';
import { flatSpotRisk } from '../../src/ageing/tires/flat-spots.ts';
import { LAY_UP, layUpPressure, lossOver, pressureAt } from '../../src/ageing/tires/pressure.ts';
import { convert } from '../../src/catalogue/units.ts';

const bar = (psi: number): number => convert(psi, 'psi', 'bar');
const psi = (pressure: number): number => convert(pressure, 'bar', 'psi');
const celsius = (f: number): number => convert(f, '°F', '°C');

describe('a tire’s pressure', () => {
  // Gas law at constant volume, (p + 14.696) T2/T1 - 14.696, gauge psi and °F: computed; tolerance 0.02 psi.
  it.each([
    [32, 68, 32, 28.81],
    [35, 70, 20, 30.31],
    [35, 70, 100, 37.81],
    [40, 50, 50, 40],
    [28, 60, 0, 23.07],
    [30, 68, 68, 30],
    [33, 75, 40, 29.88],
  ])('of %d psi at %d °F is at %d °F %d psi', (pressure, from, to, wanted) =>
    expect(Math.abs(psi(pressureAt(bar(pressure), celsius(from), celsius(to))) - wanted)).toBeLessThanOrEqual(0.02),
  );

  it('changes by about a psi for 10 °F, the trade’s rule; tolerance 0.15 psi between 20 and 80 °F', () => {
    for (const from of [30, 50, 80]) {
      const fall = 32 - psi(pressureAt(bar(32), celsius(from), celsius(from - 10)));
      expect(Math.abs(fall - 1)).toBeLessThanOrEqual(0.15);
    }
  });

  // Tire Science and Technology 13(1) 16, abstract: 0.5 to 1.0 psi a month at 21 °C, 1.5 at 32 °C; tolerance 0.001 psi.
  it.each([
    [1, 21, 0.5, 1],
    [6, 21, 3, 6],
    [12, 21, 6, 12],
    [1, 32, 1.5, 1.5],
    [6, 32, 9, 9],
  ])('falls in %d months at %d °C by %d to %d psi', (months, t, low, high) => {
    const loss = lossOver(months, t);
    expect(Math.abs(psi(loss.low) - low)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(psi(loss.high) - high)).toBeLessThanOrEqual(0.001);
  });

  // Storage procedures: 10 to 15 psi more (0.7 to 1 bar), never above the sidewall’s maximum; a vehicle maker’s bulletin:
  // 40 psi or the sidewall’s maximum. Tolerance 0.05 bar for the rounding between the units.
  it('for a lay-up is 10 to 15 psi above the placard', () => {
    expect(Math.abs(psi(LAY_UP.above.low) - 10)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(psi(LAY_UP.above.high) - 15)).toBeLessThanOrEqual(0.5);
    const { low, high } = layUpPressure(bar(30), bar(51));
    expect(low).toBeLessThanOrEqual(bar(40) + 0.05);
    expect(high).toBeGreaterThanOrEqual(bar(40) - 0.05);
  });
});

describe('a car that stands on its tires', () => {
  const standing = { days: 200, share: 1, coldest: 5 };

  it('is moved every three months, every 30 days with a cap ply: tire makers’ storage guides', () => {
    expect(flatSpotRisk({ ...standing, capPly: false }).moveEvery).toBe(91);
    expect(flatSpotRisk({ ...standing, capPly: true }).moveEvery).toBe(30);
  });

  it('has its tires looked at every 6 months, for 60 months at most: TM 9-2610-200-14 2-53', () =>
    expect(flatSpotRisk({ ...standing, capPly: false }).says.at(-1)).toMatch(/ every 6 months.* 60 months at most/));
});
