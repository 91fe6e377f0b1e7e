import { describe, expect, it } from 'vitest';
import {
  arrheniusRate,
  celsius,
  doublingRate,
  effectiveTemperature,
  fahrenheit,
  kelvin,
} from '../../src/ageing/temperature.ts';

/** F = 9C/5 + 32, exact; the boiling points as 49 CFR 571.116 S5.1.1 and S5.1.2 state them in both units. */
const BOTH: readonly [c: number, f: number][] = [
  [140, 284],
  [145, 293],
  [155, 311],
  [180, 356],
  [200, 392],
  [205, 401],
  [230, 446],
  [260, 500],
  [0, 32],
  [-40, -40],
];

/** Rate beside 20 °C at 90 kJ/mol, Rubber Chemistry and Technology 74(1) 79, and by doubling: computed; tolerance 0.002. */
const BESIDE_20: readonly [t: number, arrhenius: number, doubling: number][] = [
  [5, 0.137, 0.354],
  [10, 0.271, 0.5],
  [15, 0.527, 2 ** -0.5],
  [20, 1, 1],
  [25, 1.858, 2 ** 0.5],
  [30, 3.38, 2],
  [35, 6.034, 2.828],
  [40, 10.573, 4],
];

describe('temperature', () => {
  it.each(BOTH)('%d °C is %d °F', (c, f) => {
    expect(fahrenheit(c)).toBe(f);
    expect(celsius(f)).toBe(c);
  });

  it('0 K is -273.15 °C, by definition', () => expect(kelvin(-273.15)).toBe(0));

  it.each(BESIDE_20)('rubber ages at %d °C by these factors beside 20 °C', (t, arrhenius, doubling) => {
    expect(Math.abs(arrheniusRate(t, 20, 90) - arrhenius)).toBeLessThanOrEqual(0.002);
    expect(Math.abs(doublingRate(t, 20) - doubling)).toBeLessThanOrEqual(0.002);
  });

  it('an oven of 65 °C ages 93.7 times as fast as 23 °C at 90 kJ/mol, computed; tolerance 0.2', () =>
    expect(Math.abs(arrheniusRate(65, 23, 90) - 93.7)).toBeLessThanOrEqual(0.2));

  it('in seawater, 63 kJ/mol by the same paper, 30 °C ages 2.346 times as fast as 20 °C; tolerance 0.002', () =>
    expect(Math.abs(arrheniusRate(30, 20, 63) - 2.346)).toBeLessThanOrEqual(0.002));

  it('doubling from 20 to 30 °C is an energy of 51.2 kJ/mol, ln 2 R / (1/293.15 - 1/303.15); tolerance 0.1', () => {
    expect(arrheniusRate(30, 20, 51.1)).toBeLessThan(2);
    expect(arrheniusRate(30, 20, 51.3)).toBeGreaterThan(2);
  });

  it('hose trade articles: damage doubles with every 18 °F, which are 10 °C', () => {
    expect(celsius(fahrenheit(20) + 18) - 20).toBeCloseTo(10, 12);
    for (const t of [-10, 15, 90]) expect(doublingRate(t + 10, t)).toBe(2);
  });

  it('Army battery manual: self-discharge doubles every 9 °C, which the rule of ten understates by under a tenth', () =>
    expect(doublingRate(29, 20)).toBeGreaterThan(1.8));

  // Computed by 25 + 10 log2(mean 2^((T - 25)/10)); tolerances 0.02 °C and 0.003, of the temperate year 0.05 °C.
  it('a hot desert year of 25.8 °C ages like a steady 27.96 °C: 2.456 times 15 °C, 1.228 times 25 °C', () => {
    const effective = effectiveTemperature([15, 17, 20, 25, 30, 35, 37, 36, 33, 27, 20, 15]);
    expect(Math.abs(effective - 27.96)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(doublingRate(effective, 15) - 2.456)).toBeLessThanOrEqual(0.003);
    expect(Math.abs(doublingRate(effective, 25) - 1.228)).toBeLessThanOrEqual(0.003);
  });

  it('a temperate year of 11.5 °C ages like a steady 13.6 °C', () =>
    expect(Math.abs(effectiveTemperature([0, 2, 6, 11, 16, 20, 23, 22, 18, 12, 6, 2]) - 13.6)).toBeLessThanOrEqual(
      0.05,
    ));
});
