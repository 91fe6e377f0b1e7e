import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asTyped, isUnit, limitIn, readNumber } from '../../src/acts/typed-number.ts';
import { UNITS, type Unit } from '../../src/catalogue/units.ts';

const PRESSURE: readonly Unit[] = ['bar', 'psi', 'kPa'];

describe('a number as people type it', () => {
  it.each<[string, Unit, readonly Unit[], number, Unit]>([
    ['12.45', 'V', ['V'], 12.45, 'V'],
    ['12,45', 'V', ['V'], 12.45, 'V'],
    [' 12,45 v ', 'V', ['V'], 12.45, 'V'],
    ['.5', 'mm', ['mm', 'in'], 0.5, 'mm'],
    [',5', 'mm', ['mm', 'in'], 0.5, 'mm'],
    ['32', 'psi', PRESSURE, 32, 'psi'],
    ['32 psi', 'bar', PRESSURE, 32, 'psi'],
    ['220kpa', 'bar', PRESSURE, 220, 'kPa'],
    ['-24', '°C', ['°C', '°F'], -24, '°C'],
    ['−24', '°C', ['°C', '°F'], -24, '°C'],
    ['– 24', '°C', ['°C', '°F'], -24, '°C'],
    ['+5', '°C', ['°C', '°F'], 5, '°C'],
    ['14 °F', '°C', ['°C', '°F'], 14, '°F'],
    ['14 f', '°C', ['°C', '°F'], 14, '°F'],
    ['7/32 in', 'mm', ['mm', '/32 in'], 7, '/32 in'],
    ['9/32', 'mm', ['mm', '/32 in'], 9, '/32 in'],
    ['9 / 32', 'mm', ['mm', '/32 in'], 9, '/32 in'],
  ])('%j with %s picked', (typed, picked, offered, value, unit) => {
    expect(readNumber(typed, picked, offered, 2)).toEqual({ ok: true, value, unit });
  });

  it.each(['', ' ', 'full', 'about 12', '1.2.3', '12..4', '1e5', '--3', 'Infinity', 'NaN', '0x10'])(
    '%j is none',
    (typed) => {
      expect(readNumber(typed, 'V', ['V'], 2).ok).toBe(false);
    },
  );

  it('in a unit that is not offered is refused, with those that are', () => {
    expect(readNumber('12 mA', 'V', ['V'], 2)).toEqual({
      ok: false,
      message: '“mA” is not a unit for this: use V.',
    });
    expect(readNumber('2 feet', 'bar', PRESSURE, 2)).toMatchObject({
      message: '“feet” is not a unit for this: use bar or psi or kPa.',
    });
    expect(readNumber('9/32', 'mm', ['mm', 'in'], 1)).toMatchObject({
      message: '“/32” is not a unit for this: use mm or in.',
    });
  });

  it('with a comma before three digits is asked back, where so many decimals are not usual', () => {
    expect(readNumber('1,200', 'ppm', ['ppm'], 0)).toMatchObject({
      ok: false,
      message: expect.stringContaining('two numbers'),
    });
    for (const typed of ['12,598', '−1,200', ' 1,200.5', '12,345 ppm'])
      expect(readNumber(typed, 'ppm', ['ppm'], 2), typed).toMatchObject({ ok: false });
    expect(readNumber('1,2', 'bar', PRESSURE, 2)).toMatchObject({ ok: true, value: 1.2 });
    expect(readNumber('1,265', 'SG', ['SG'], 3)).toEqual({ ok: true, value: 1.265, unit: 'SG' });
    expect(readNumber('1200', 'ppm', ['ppm'], 0)).toEqual({ ok: true, value: 1200, unit: 'ppm' });
  });

  it('reads back whatever is written with a point, a comma and any minus', () => {
    const number = fc.double({ min: -9999, max: 9999, noNaN: true }).map((value) => Number(value.toFixed(2)));
    fc.assert(
      fc.property(number, fc.constantFrom('.', ','), fc.constantFrom('-', '−', '–'), (value, point, minus) => {
        const text = value.toFixed(2).replace('.', point).replace('-', minus);
        const read = readNumber(text, 'V', ['V'], 2);
        expect(read.ok && read.value + 0).toBe(value + 0);
      }),
    );
  });
});

describe('words for numbers', () => {
  it('tell a limit in the unit typed in, without idle zeros', () => {
    expect(limitIn(0, 'bar', 'psi', 2)).toBe('0 psi');
    expect(limitIn(10, 'bar', 'psi', 2)).toBe('145 psi');
    expect(limitIn(4.5, 'bar', 'psi', 2)).toBe('65.3 psi');
    expect(limitIn(0.25, 'bar', 'bar', 2)).toBe('0.25 bar');
    expect(limitIn(10, 'bar', 'bar', 2)).toBe('10 bar');
    expect(limitIn(-75, '°C', '°F', 0)).toBe('−103 °F');
  });

  it('tell a limit of another unit with no more than one decimal', () => {
    const limit = fc.tuple(fc.double({ min: -100, max: 100, noNaN: true }), fc.integer({ min: 0, max: 3 }));
    fc.assert(
      fc.property(limit, ([value, decimals]) => {
        expect(limitIn(value, 'bar', 'psi', decimals)).toMatch(/^−?\d+(\.\d)? psi$/);
      }),
    );
  });

  it('tell a number with the digits it was typed with', () => {
    expect(asTyped(12.345, 'V')).toBe('12.345 V');
    expect(asTyped(-4, '°C')).toBe('−4 °C');
  });
});

describe('a unit', () => {
  it('is one of those in the catalogue', () => {
    for (const unit of Object.keys(UNITS)) expect(isUnit(unit)).toBe(true);
    expect(isUnit('furlong')).toBe(false);
  });

  it('is no word that every object knows', () => {
    for (const word of ['toString', 'constructor', '__proto__']) expect(isUnit(word), word).toBe(false);
  });
});
