import { describe, expect, it } from 'vitest';
import { absoluteHumidity, condenses, dewPoint, saturation } from '../../src/ageing/humid-air.ts';

describe('water in air, by the Magnus formula', () => {
  // °C, relative humidity in %, g/m³ to 0.05, dew point to 0.1 °C.
  it.each([
    [20, 80, 13.79, 16.44],
    [20, 100, 17.24, 20],
    [30, 90, 27.24, 28.18],
    [5, 90, 6.11, 3.5],
    [38, 100, 46.07, 38],
  ])('at %i °C and %i %%: %f g/m³, dew point %f °C', (temperature, humidity, grams, dew) => {
    expect(Math.abs(absoluteHumidity(temperature, humidity) - grams)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(dewPoint(temperature, humidity) - dew)).toBeLessThanOrEqual(0.1);
  });

  // Steam tables, from memory: hPa, to 0.5 %.
  it.each([
    [0, 6.11],
    [10, 12.27],
    [20, 23.39],
    [30, 42.46],
    [40, 73.84],
  ])('saturated at %i °C: %f hPa', (temperature, pressure) => {
    expect(Math.abs(saturation(temperature) / pressure - 1)).toBeLessThan(0.005);
  });

  it.each([
    [3, 10, 70, true],
    [6, 10, 70, false],
    [12, 20, 80, true],
  ])('metal at %i °C in air of %i °C and %i %%: wet %s', (metal, air, humidity, wet) => {
    expect(condenses(metal, air, humidity)).toBe(wet);
  });

  it('30 L of air at 20 °C and 80 % shed 0.34 g on the way to −10 °C, to 0.01', () => {
    const shed = (30 * (absoluteHumidity(20, 80) - absoluteHumidity(-10, 100))) / 1000;
    expect(Math.abs(shed - 0.34)).toBeLessThanOrEqual(0.01);
  });
});
