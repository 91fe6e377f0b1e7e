import { describe, expect, it } from 'vitest';
import { type Air, ASSUMED, coldestNight, monthsOf, type Place } from '../../src/ageing/place.ts';

type City = readonly [
  name: string,
  air: Air,
  hemisphere: Place['hemisphere'],
  low: number,
  high: number,
  means: string,
];

/**
 * Monthly mean temperatures 1991–2020, °C, January first, with the coldest night and hottest day of an ordinary year:
 * from memory.
 */
const CITIES: readonly City[] = [
  ['Berlin', 'inland', 'north', -12, 34, '1.2 2.2 5.2 10.1 14.8 18.1 20.0 19.6 15.2 10.3 5.5 2.3'],
  ['Moscow', 'inland', 'north', -25, 33, '-6.2 -5.9 -0.7 6.9 13.6 17.3 19.7 17.6 11.9 5.8 -0.5 -4.4'],
  ['Madrid', 'inland', 'north', -4, 38, '6.5 7.8 11.1 13.6 17.9 23.4 26.5 26.0 21.2 15.5 9.9 7.0'],
  ['Buenos Aires', 'inland', 'south', 0, 37, '24.9 24.0 21.9 18.0 14.7 11.9 11.0 13.2 14.9 18.0 21.0 23.6'],
  ['London', 'coast', 'north', -5, 33, '5.7 6.0 8.0 10.5 13.7 16.8 19.0 18.7 15.9 12.3 8.4 6.0'],
  ['Bergen', 'coast', 'north', -8, 27, '2.4 1.9 3.4 6.9 10.9 13.9 15.7 15.4 12.5 8.9 5.6 3.1'],
  ['Tokyo', 'coast', 'north', -3, 36, '5.4 6.1 9.4 14.3 18.8 21.9 25.7 26.9 23.3 18.0 12.5 7.7'],
  ['Auckland', 'coast', 'south', 3, 29, '19.8 20.3 18.9 16.5 14.2 12.0 11.1 11.6 13.0 14.4 16.0 18.3'],
  ['Cape Town', 'coast', 'south', 3, 36, '21.9 22.0 20.8 18.2 15.6 13.4 12.6 13.1 14.6 16.8 18.7 20.9'],
  ['Phoenix', 'desert', 'north', 1, 46, '13.8 15.5 19.1 22.9 27.8 33.0 35.3 34.7 31.8 25.2 18.4 13.2'],
  ['Riyadh', 'desert', 'north', 2, 46, '14.7 17.4 21.5 27.2 33.1 36.0 37.0 36.9 33.5 28.0 21.2 16.3'],
  ['Alice Springs', 'desert', 'south', -4, 44, '29.6 28.6 25.7 21.0 15.9 12.6 12.2 14.8 19.6 23.6 26.5 28.4'],
];

/** Where one wave does not fit: warm autumns of a continent, rare hot winds or summer fog on a coast. From memory too. */
const MISSES: readonly City[] = [
  ['Minneapolis', 'inland', 'north', -27, 35, '-8.8 -6.3 0.7 8.4 15.3 20.9 23.5 22.1 17.5 9.7 1.6 -5.6'],
  ['Chicago', 'inland', 'north', -22, 35, '-3.9 -2.1 3.9 9.9 15.8 21.4 23.9 23.1 19.1 12.3 5.2 -0.9'],
  ['Sydney', 'coast', 'south', 6, 40, '23.5 23.4 22.1 19.5 16.6 14.2 13.4 14.5 17.0 18.9 20.4 22.1'],
  ['Melbourne', 'coast', 'south', 2, 42, '21.1 21.2 19.1 16.0 13.1 10.7 10.1 11.0 12.9 15.0 17.2 19.2'],
  ['San Francisco', 'coast', 'north', 4, 33, '11.2 12.2 12.8 13.3 14.2 15.3 15.6 16.2 17.0 16.5 13.8 11.3'],
];

const placeOf = ([, air, hemisphere, winterLow, summerHigh]: City): Place => ({
  ...ASSUMED,
  air,
  hemisphere,
  winterLow,
  summerHigh,
  shelter: 'open',
});

const normals = (city: City): number[] => city[5].split(' ').map(Number);

const worstMonth = (city: City): number =>
  Math.max(...monthsOf(placeOf(city)).map(({ mean }, month) => Math.abs(mean - (normals(city)[month] ?? Number.NaN))));

describe('months outdoors from two temperatures', () => {
  it.each(CITIES)('in %s lie within 6 °C of the normals', (...city) => {
    expect(normals(city)).toHaveLength(12);
    expect(worstMonth(city)).toBeLessThanOrEqual(6);
  });

  it.each(MISSES)('in %s miss a month by more than 6 °C, none by more than 9 °C', (...city) => {
    expect(worstMonth(city)).toBeGreaterThan(6);
    expect(worstMonth(city)).toBeLessThanOrEqual(9);
  });

  it.each(MISSES)('in %s are the normals once they are entered', (...city) => {
    const months = monthsOf({ ...placeOf(city), months: normals(city) });
    expect(months.map(({ mean }) => mean)).toEqual(normals(city));
  });

  it.each([...CITIES, ...MISSES])('in %s reach the coldest night and the hottest day that were told', (...city) => {
    const place = placeOf(city);
    expect(coldestNight(place)).toBeCloseTo(city[3], 9);
    expect(Math.max(...monthsOf(place).map(({ high }) => high))).toBeCloseTo(city[4], 9);
  });

  it.each([...CITIES, ...MISSES])('in %s have their winter in the half of the year that has it', (...city) => {
    const summer = city[2] === 'north' ? 6 : 0;
    const months = monthsOf(placeOf(city));
    expect((months[summer]?.mean ?? 0) > (months[(summer + 6) % 12]?.mean ?? 0)).toBe(true);
    expect((normals(city)[summer] ?? 0) > (normals(city)[(summer + 6) % 12] ?? 0)).toBe(true);
  });
});
