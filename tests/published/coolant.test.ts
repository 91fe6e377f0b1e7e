import { describe, expect, it } from 'vitest';
import { strengthen } from '../../src/ageing/coolant/dilution.ts';
import { COOLANT_FAMILIES, type CoolantFamily, PH_LIMITS } from '../../src/ageing/coolant/families.ts';
import {
  freezingPoint,
  freezingSpan,
  GLYCOLS,
  type Glycol,
  massFromVolume,
  strengthFor,
} from '../../src/ageing/coolant/freezing.ts';
import { coolantOutlook } from '../../src/ageing/coolant/outlook.ts';
import { brixOfIndex, index, strengthByBrix, strengthByDensity } from '../../src/ageing/coolant/sample.ts';
import { celsius, fahrenheit } from '../../src/ageing/temperature.ts';

/** ASHRAE Handbook (2001), inhibited glycol: mass %, vol %, °C. To 0.05 °C. */
const HANDBOOK: readonly [Glycol, mass: number, volume: number, freezes: number][] = [
  ['ethylene', 0, 0, 0],
  ['ethylene', 5, 4.4, -1.4],
  ['ethylene', 10, 8.9, -3.2],
  ['ethylene', 15, 13.6, -5.4],
  ['ethylene', 20, 18.1, -7.8],
  ['ethylene', 25, 22.9, -10.7],
  ['ethylene', 30, 27.7, -14.1],
  ['ethylene', 35, 32.6, -17.9],
  ['ethylene', 40, 37.5, -22.3],
  ['ethylene', 45, 42.5, -27.5],
  ['ethylene', 50, 47.6, -33.8],
  ['ethylene', 55, 52.7, -41.1],
  ['ethylene', 60, 57.8, -48.3],
  ['propylene', 0, 0, 0],
  ['propylene', 5, 4.8, -1.6],
  ['propylene', 10, 9.6, -3.3],
  ['propylene', 15, 14.5, -5.1],
  ['propylene', 20, 19.4, -7.1],
  ['propylene', 25, 24.4, -9.6],
  ['propylene', 30, 29.4, -12.7],
  ['propylene', 35, 34.4, -16.4],
  ['propylene', 40, 39.6, -21.1],
  ['propylene', 45, 44.7, -26.7],
  ['propylene', 50, 49.9, -33.5],
  ['propylene', 55, 55, -41.6],
  ['propylene', 60, 60, -51.1],
];

/** The same table at round strengths, its finer rows read linearly. To 0.3 °C and 1 °F. */
const ROUND: readonly [Glycol, volume: number, freezes: number][] = [
  ['ethylene', 5, -1.6],
  ['ethylene', 10, -3.7],
  ['ethylene', 15, -6.1],
  ['ethylene', 20, -8.8],
  ['ethylene', 25, -12.1],
  ['ethylene', 30, -15.7],
  ['ethylene', 33, -18.2],
  ['ethylene', 35, -19.9],
  ['ethylene', 40, -24.8],
  ['ethylene', 45, -30.5],
  ['ethylene', 50, -37],
  ['ethylene', 55, -44.6],
  ['propylene', 5, -1.7],
  ['propylene', 10, -3.4],
  ['propylene', 15, -5.3],
  ['propylene', 20, -7.4],
  ['propylene', 25, -10],
  ['propylene', 30, -13.1],
  ['propylene', 33, -15.2],
  ['propylene', 35, -16.9],
  ['propylene', 40, -21.5],
  ['propylene', 45, -27.1],
  ['propylene', 50, -33.7],
  ['propylene', 55, -41.6],
];

/** The handbook's polynomials by volume fraction, 0.10 to 0.60 (open fluid-property library), for a second opinion. */
const BY_VOLUME: Readonly<Record<Glycol, readonly number[]>> = {
  ethylene: [5.534468, -0.3574293, -0.6535113, -0.9039166, 1.048048, 4.622116],
  propylene: [5.546103, -0.326277, -0.6666873, -0.8800598, -1.071417, -1.875782],
};
const byVolume = (glycol: Glycol, strength: number): number =>
  Math.exp(BY_VOLUME[glycol].reduce((sum, term, power) => sum + term * (strength / 100 - 0.35) ** power, 0)) - 273.15;

/** Values of those polynomials as the library itself answers. To 0.02 °C. */
const LIBRARY_BY_VOLUME: readonly [Glycol, volume: number, freezes: number][] = [
  ['ethylene', 10, -3.62],
  ['ethylene', 40, -24.8],
  ['ethylene', 50, -37.11],
  ['ethylene', 60, -52.02],
  ['propylene', 20, -7.38],
  ['propylene', 30, -13.11],
  ['propylene', 40, -21.51],
  ['propylene', 60, -51.06],
];

/** Pure glycol by mass (refrigeration-institute secondary-fluid data, 2010, as the library answers). To 0.02 °C. */
const LIBRARY_BY_MASS: readonly [Glycol, mass: number, freezes: number][] = [
  ['ethylene', 10, -3.36],
  ['ethylene', 50, -35.99],
  ['ethylene', 60, -51.2],
  ['propylene', 10, -2.87],
  ['propylene', 30, -12.79],
];

const PURE: Readonly<Record<Glycol, number>> = { ethylene: 1113.5, propylene: 1036.1 };
/** The strength by volume that is so much by mass; pure densities from a handbook of chemistry, from memory. */
const volumeOf = (glycol: Glycol, mass: number): number =>
  (100 * mass * 998.2) / (mass * 998.2 + (100 - mass) * PURE[glycol]);

describe('freezing points', () => {
  it.each(HANDBOOK)('%s glycol, %f mass %%: %f vol %% freezes at %f °C', (glycol, _, volume, freezes) => {
    expect(Math.abs(freezingPoint(glycol, volume) - freezes)).toBeLessThanOrEqual(0.05);
  });

  it.each(ROUND)('%s glycol at %f vol %% freezes at %f °C', (glycol, volume, freezes) => {
    expect(Math.abs(freezingPoint(glycol, volume) - freezes)).toBeLessThanOrEqual(0.3);
    expect(Math.abs(fahrenheit(freezingPoint(glycol, volume)) - fahrenheit(freezes))).toBeLessThanOrEqual(1);
  });

  it.each(LIBRARY_BY_VOLUME)('the polynomial for %s glycol at %f vol %% says %f °C', (glycol, volume, freezes) => {
    expect(Math.abs(byVolume(glycol, volume) - freezes)).toBeLessThanOrEqual(0.02);
  });

  it('lie within 0.4 °C of the handbook’s own polynomial wherever that holds', () => {
    for (const glycol of GLYCOLS)
      for (let strength = 10; strength <= 60; strength++)
        expect(Math.abs(freezingPoint(glycol, strength) - byVolume(glycol, strength)), `${strength}`).toBeLessThan(0.4);
  });

  it.each(LIBRARY_BY_MASS)('of pure %s glycol, %f mass %%, %f °C, end the span', (glycol, mass, freezes) => {
    const { low, high } = freezingSpan(glycol, volumeOf(glycol, mass));
    expect(Math.min(Math.abs(low - freezes), Math.abs(high - freezes))).toBeLessThanOrEqual(0.02);
  });

  it('differ between the two sets of data by 2 to 3 °C at half and half of ethylene glycol', () => {
    const { low, high } = freezingSpan('ethylene', 50);
    expect(high - low).toBeGreaterThan(2);
    expect(high - low).toBeLessThan(3);
  });

  it('are lowest at 60 vol %, at −65 °F within 3 °F (US Army OD1001; TM 9-6115-464-12 note 1)', () => {
    const { low, high } = freezingSpan('ethylene', 60);
    expect(low - 0.01).toBeLessThan(celsius(-65));
    expect(high).toBeGreaterThan(celsius(-65));
    expect(Math.abs(fahrenheit((low + high) / 2) + 65)).toBeLessThanOrEqual(3);
    for (const strength of [40, 55, 59, 68, 80, 100])
      expect(freezingPoint('ethylene', strength)).toBeGreaterThan(freezingPoint('ethylene', 60));
  });

  // Handbook of chemistry, 15th edition, table 5.13: pure propylene glycol, vol %, °C, density at 60 °F. To 1.5 °C.
  it.each([
    [10, -2.2, 1.006],
    [20, -6.7, 1.017],
    [30, -12.8, null],
    [40, -20.6, 1.032],
    [50, -33.3, null],
  ])('of propylene glycol at %f vol %%: %f °C', (volume, freezes, density) => {
    const { low, high } = freezingSpan('propylene', volume);
    expect(low - 1.5).toBeLessThanOrEqual(freezes);
    expect(high + 1.5).toBeGreaterThanOrEqual(freezes);
    // At 60 and not 68 °F: 3 vol % either way.
    if (density !== null) expect(Math.abs(strengthByDensity('propylene', density).high - volume)).toBeLessThan(3);
  });

  it('of new half-and-half coolant: ethylene at most −36.4, propylene −31 °C (ASTM D3306, from memory)', () => {
    expect(freezingSpan('ethylene', 50).high).toBeLessThanOrEqual(-36.4);
    expect(freezingSpan('propylene', 50).high).toBeLessThanOrEqual(-31);
  });
});

describe('the US Army’s table of ethylene glycol (TM 9-6115-464-12 table 2-1)', () => {
  const ARMY: readonly [pints: number, fahrenheit: number, density: number][] = [
    [1.5, 20, 1.022],
    [2, 10, 1.036],
    [2.75, 0, 1.047],
    [3.25, -10, 1.055],
    [3.5, -20, 1.062],
    [4, -30, 1.067],
    [4.25, -40, 1.073],
  ];

  it.each(ARMY)('%f pints a gallon for %i °F: the handbook freezes 0 to 2.6 °C below that', (pints, ambient) => {
    const below = celsius(ambient) - freezingPoint('ethylene', (pints / 8) * 100);
    expect(below).toBeGreaterThanOrEqual(-0.3);
    expect(below).toBeLessThanOrEqual(2.6 + 0.3);
  });

  it.each([
    [2.75, -19.3],
    [3.5, -29.1],
  ])('%f pints a gallon freeze at %f °C by the handbook, to 0.3', (pints, freezes) => {
    expect(Math.abs(freezingPoint('ethylene', (pints / 8) * 100) - freezes)).toBeLessThanOrEqual(0.3);
  });

  it.each(ARMY)(
    '%f pints (%i °F) at a density of %f: never told stronger, at most 4 vol %% weaker',
    (pints, _, density) => {
      const { high } = strengthByDensity('ethylene', density);
      expect(high - (pints / 8) * 100).toBeLessThan(0.3);
      expect(high - (pints / 8) * 100).toBeGreaterThan(-4);
    },
  );
});

describe('samples', () => {
  // Densities of the open library’s fits, index by Lorentz and Lorenz, Brix by the sucrose scale (both from memory).
  const READINGS: readonly [Glycol, volume: number, pure: number, inhibited: number, n: number, brix: number][] = [
    ['ethylene', 10, 1.014, 1.015, 1.3435, 7.2],
    ['ethylene', 20, 1.029, 1.032, 1.3544, 14.2],
    ['ethylene', 30, 1.043, 1.047, 1.3653, 20.9],
    ['ethylene', 40, 1.057, 1.062, 1.376, 27.1],
    ['ethylene', 50, 1.07, 1.075, 1.3863, 32.8],
    ['ethylene', 60, 1.079, 1.088, 1.3952, 37.6],
    ['propylene', 10, 1.008, 1.01, 1.3444, 7.8],
    ['propylene', 20, 1.017, 1.021, 1.3561, 15.2],
    ['propylene', 30, 1.026, 1.03, 1.3679, 22.4],
    ['propylene', 40, 1.034, 1.038, 1.3795, 29],
    ['propylene', 50, 1.041, 1.045, 1.3905, 35.1],
    ['propylene', 60, 1.045, 1.05, 1.4007, 40.4],
  ];

  it.each(READINGS)(
    '%s glycol at %f vol %% by hydrometer and refractometer',
    (glycol, volume, pure, inhibited, n, brix) => {
      // Densities to 0.002, told as strength: 0.002 is 2 vol % of ethylene and up to 5 of propylene glycol.
      const slack = glycol === 'ethylene' ? 2 : 5;
      expect(Math.abs(strengthByDensity(glycol, inhibited).low - volume)).toBeLessThanOrEqual(slack);
      if (volume < 60) expect(Math.abs(strengthByDensity(glycol, pure).high - volume)).toBeLessThanOrEqual(slack);
      expect(Math.abs(index(glycol, volume) - n)).toBeLessThanOrEqual(0.0015);
      expect(Math.abs(brixOfIndex(index(glycol, volume)) - brix)).toBeLessThanOrEqual(1);
      const { low, high } = strengthByBrix(glycol, brix);
      expect(low).toBeLessThanOrEqual(volume);
      expect(high).toBeGreaterThanOrEqual(volume);
    },
  );

  it('pure water and the pure glycols bend light as handbooks say, from memory, to 0.0005', () => {
    for (const [glycol, n] of [
      ['ethylene', 1.4318],
      ['propylene', 1.4325],
    ] as const) {
      expect(Math.abs(index(glycol, 0) - 1.333)).toBeLessThan(0.0005);
      expect(Math.abs(index(glycol, 100) - n)).toBeLessThan(0.0005);
    }
  });

  // The international sucrose scale at 20 °C, from memory. To 0.05.
  it.each([
    [1.34782, 10],
    [1.36384, 20],
    [1.38115, 30],
    [1.39986, 40],
    [1.42009, 50],
  ])('an index of %f is %i Brix', (n, brix) => {
    expect(Math.abs(brixOfIndex(n) - brix)).toBeLessThanOrEqual(0.05);
  });

  // By the pure densities of a handbook of chemistry, from memory. To 0.3 mass %.
  it.each([
    ['ethylene', 30, 32.3],
    ['ethylene', 50, 52.7],
    ['propylene', 30, 30.8],
    ['propylene', 50, 50.9],
  ] as const)('%s glycol: %i vol %% are %f mass %%', (glycol, volume, mass) => {
    expect(Math.abs(massFromVolume(glycol, volume) - mass)).toBeLessThanOrEqual(0.3);
  });
});

describe('strengthening, by the balance of the mixture, to 0.005 L', () => {
  it.each([
    [10, 25, 50, 100, 3.333],
    [8, 35, 50, 100, 1.846],
    [6, 30, 50, 95, 1.846],
  ])('%f L from %i to %i vol %% with %i: %f L', (liters, from, to, concentrate, exchanged) => {
    expect(Math.abs((strengthen(liters, from, to, concentrate) ?? Number.NaN) - exchanged)).toBeLessThanOrEqual(0.005);
  });

  it('starts from the strength that the night asks for: −37 °C is half and half of ethylene glycol, to 0.5 vol %', () => {
    expect(Math.abs((strengthFor('ethylene', -37) ?? 0) - 50)).toBeLessThan(0.5);
  });
});

describe('families', () => {
  // IAT and OAT: DTIC AD1112055 and a trade page; the hybrids from memory. Kilometers never above the miles.
  it.each<[CoolantFamily, years: number, miles: number]>([
    ['iat', 2, 30_000],
    ['oat', 5, 150_000],
    ['hoat', 5, 100_000],
    ['p-hoat', 5, 100_000],
    ['si-oat', 5, 100_000],
    ['unknown', 2, 30_000],
  ])('%s lasts %i years or %i miles', (family, years, miles) => {
    const { months, km } = COOLANT_FAMILIES[family];
    expect(months).toBe(years * 12);
    expect(km).toBeLessThanOrEqual(miles * 1.609344);
    expect(km).toBeGreaterThan(miles * 1.609344 * 0.99);
  });

  it('hold inorganic coolant good where cooling water of diesels is accepted, pH 8.5 to 10 (TM 5-685 appendix D)', () => {
    const { good } = COOLANT_FAMILIES.iat.ph;
    expect(good.from).toBe(8.5);
    expect(good.to).toBeGreaterThanOrEqual(10);
  });

  it('let pH condemn and never clear (ASTM D1287 section 4.4)', () => {
    expect(PH_LIMITS.says).toContain('never clears it');
    expect(PH_LIMITS.sources).toEqual(['astm-d1287']);
  });

  it('judge reserve alkalinity of inorganic coolant only: watch under 5, act under 3 mL (ASTM D1121, from memory)', () => {
    const { reserve: iat, ...others } = Object.fromEntries(
      Object.entries(COOLANT_FAMILIES).map(([key, { reserve }]) => [key === 'iat' ? 'reserve' : key, reserve]),
    );
    expect(iat).toEqual({ good: { from: 5 }, watch: { from: 3 } });
    expect(Object.values(others)).toEqual([null, null, null, null, null]);
  });
});

describe('limits of strength', () => {
  // TM 5-3820-245-14&P: under 30 no corrosion protection, over 67 worse; TM 5-3805-254-14&P-2: at least 33; OD1001: 60.
  it.each([
    [29.9, 'act'],
    [30, 'watch'],
    [32.9, 'watch'],
    [33, 'good'],
    [60, 'good'],
    [60.1, 'watch'],
    [67, 'watch'],
    [67.1, 'act'],
  ] as const)('%f vol %% in a mild place: %s', (strength, verdict) => {
    expect(coolantOutlook({ glycol: 'ethylene', strength: { low: strength, high: strength } }, 5).verdict).toBe(
      verdict,
    );
  });

  it('slush at 30 vol % from −16 °C does not burst the engine (industrial engine handbook)', () => {
    const { freezes, says } = coolantOutlook({ glycol: 'ethylene', strength: { low: 30, high: 30 } }, -20);
    expect(Math.abs(freezes.high + 16)).toBeLessThan(0.5);
    expect(says.join(' ')).toContain('From 30 % glycol on slush does not burst the block.');
    expect(says.join(' ')).toContain('pump can shear');
  });
});
