import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { convert, UNITS, type Unit } from '../../src/catalogue/units.ts';

const units = Object.keys(UNITS) as Unit[];

/** Pairs by definition: international yard and pound, standard gravity, conventional mercury at 0 °C. */
const DEFINED: readonly [number, Unit, number, Unit][] = [
  [1, 'in', 25.4, 'mm'],
  [32, '/32 in', 25.4, 'mm'],
  [1, 'ft', 0.3048, 'm'],
  [1, 'psi', 6.894757, 'kPa'],
  [1, 'bar', 100, 'kPa'],
  [1, 'inHg', 3.386389, 'kPa'],
  [1, 'psi/month', 0.06894757, 'bar/month'],
  [1, 'lb ft', 1.355818, 'Nm'],
  [1, 'US gal', 3.785412, 'L'],
  [1, 'US gal/min', 3.785412, 'L/min'],
  [1, 'A', 1000, 'mA'],
  [9, '°F apart', 5, '°C apart'],
];

/** What a band may stand on must come out whole: F = 9C/5 + 32. */
const WHOLE: readonly [number, number][] = [
  [-40, -40],
  [0, 32],
  [5, 41],
  [100, 212],
  [140, 284],
  [145, 293],
  [155, 311],
  [160, 320],
  [165, 329],
  [175, 347],
  [180, 356],
  [185, 365],
  [200, 392],
  [205, 401],
  [230, 446],
  [260, 500],
];

describe('units', () => {
  it.each(DEFINED)('%d %s are %d %s, to seven figures', (value, from, same, to) => {
    expect(convert(value, from, to) / same).toBeCloseTo(1, 6);
    expect(convert(same, to, from) / value).toBeCloseTo(1, 6);
  });

  it.each(WHOLE)('%d °C are %d °F, exactly, both ways', (celsius, degrees) => {
    expect(convert(celsius, '°C', '°F')).toBe(degrees);
    expect(convert(degrees, '°F', '°C')).toBe(celsius);
  });

  it('keep a difference of temperatures apart from a temperature', () => {
    expect(convert(18, '°F apart', '°C apart')).toBe(10);
    expect(() => convert(18, '°F apart', '°C')).toThrow('No way from °F apart to °C');
  });

  it('do not turn one quantity into another', () => {
    expect(() => convert(1, 'V', 'mA')).toThrow('No way from V to mA');
    expect(() => convert(1, 'bar', 'bar/month')).toThrow('No way');
  });

  it('are each in use', () => {
    const gauges = [...KINDS.values()].flatMap(({ tests }) => tests.flatMap(({ gauge }) => gauge ?? []));
    const asked = [...KINDS.values()].flatMap(({ details }) =>
      (details ?? []).flatMap((one) => ('unit' in one ? [one] : [])),
    );
    const used = new Set([...gauges, ...asked].flatMap(({ unit, also }) => [unit, ...(also ?? [])]));
    expect(units.filter((unit) => !used.has(unit))).toEqual([]);
  });

  const pairs = units.flatMap((a) =>
    units.flatMap((b) => {
      try {
        convert(1, a, b);
        return [[a, b] as const];
      } catch {
        return [];
      }
    }),
  );

  it('come back as they went, to ten figures', () => {
    expect(pairs.length).toBeGreaterThan(units.length);
    fc.assert(
      fc.property(fc.constantFrom(...pairs), fc.double({ min: -500, max: 500, noNaN: true }), ([a, b], value) => {
        expect(Math.abs(convert(convert(value, a, b), b, a) - value)).toBeLessThanOrEqual(1e-7);
      }),
    );
  });

  it('keep the order of any two values', () => {
    const value = fc.integer({ min: -500, max: 500 });
    fc.assert(
      fc.property(fc.constantFrom(...pairs), value, value, ([a, b], low, high) => {
        fc.pre(low < high);
        expect(convert(low, a, b)).toBeLessThan(convert(high, a, b));
      }),
    );
  });
});
