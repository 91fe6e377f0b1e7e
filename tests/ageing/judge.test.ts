import { describe, expect, it } from 'vitest';
import { bandsOf, judge, referenceOf, VERDICTS } from '../../src/ageing/judge.ts';
import type { Gauge } from '../../src/catalogue/gauge.ts';

const gauge = (more: Partial<Gauge> = {}): Gauge => ({
  key: 'test',
  unit: 'V',
  decimals: 2,
  range: [0, 100],
  usual: [0, 100],
  bands: { good: { from: 10, to: 20 }, watch: { under: 30 } },
  minutes: 1,
  ...more,
});

const verdict = (of: Gauge, value: number, details = {}, coldest: number | null = null, warmth: number | null = null) =>
  judge(of, { value, warmth }, { details, coldest }).verdict;

describe('bands', () => {
  it.each([
    [9.99, 'watch'],
    [10, 'good'],
    [20, 'good'],
    [20.01, 'watch'],
    [29.99, 'watch'],
    [30, 'act'],
    [-5, 'watch'],
  ])('with their edges: %d is %s', (value, wanted) => expect(verdict(gauge(), value)).toBe(wanted));

  it('without a watch know only good and act', () => {
    const strict = gauge({ bands: { good: { to: 5 } } });
    expect([5, 5.01].map((value) => verdict(strict, value))).toEqual(['good', 'act']);
  });

  it('grow graver in one order', () => expect(VERDICTS).toEqual(['good', 'watch', 'act']));

  const byKind = gauge({
    bands: { by: 'type', of: { a: { good: { from: 1 } }, '6': { good: { from: 2 } }, unknown: { good: { from: 3 } } } },
  });

  it('by an answer are those of that answer, or of the unknown where there is none', () => {
    expect(verdict(byKind, 1, { type: 'a' })).toBe('good');
    expect(verdict(byKind, 1, { type: 6 })).toBe('act');
    expect(verdict(byKind, 2, {})).toBe('act');
    expect(verdict(byKind, 3, {})).toBe('good');
  });

  it('by an answer without bands of the unknown leave it unjudged, and name the question', () => {
    const asked = gauge({ bands: { by: 'type', of: { a: { good: { from: 1 } } } } });
    expect(judge(asked, { value: 50, warmth: null }, { details: {}, coldest: null })).toEqual({
      verdict: null,
      wants: { detail: 'type' },
      value: 50,
    });
    expect(bandsOf(asked, {})).toBeNull();
    expect(bandsOf(asked, { type: 'b' })).toBeNull();
  });
});

describe('a reading held against something', () => {
  const drop = gauge({ against: { what: 'detail', key: 'new', as: 'difference' }, bands: { good: { from: -1 } } });
  const share = gauge({
    against: { what: 'detail', key: 'new', as: 'percent' },
    bands: { good: { from: 90, to: 110 } },
  });

  it('is judged by the difference, without the dust of binary fractions', () => {
    expect(verdict(drop, 1.1, { new: 2.1 })).toBe('good');
    expect(verdict(drop, 1.09, { new: 2.1 })).toBe('act');
  });

  it('is judged by its share', () => {
    expect([89.9, 90, 110, 110.1].map((value) => verdict(share, value, { new: 100 }))).toEqual([
      'act',
      'good',
      'good',
      'act',
    ]);
  });

  it('is left unjudged without it, and without a number for it', () => {
    for (const details of [{}, { new: 'seven' }])
      expect(judge(drop, { value: 2, warmth: null }, { details, coldest: -5 })).toEqual({
        verdict: null,
        wants: { detail: 'new' },
        value: 2,
      });
  });

  it('is the coldest night where the car stands, if anybody has said', () => {
    const frost = gauge({ against: { what: 'coldest night' }, bands: { good: { to: -3 }, watch: { to: 0 } } });
    expect([-13, -12.9, -10, -9.9].map((value) => verdict(frost, value, {}, -10))).toEqual([
      'good',
      'watch',
      'watch',
      'act',
    ]);
    expect(judge(frost, { value: -60, warmth: null }, { details: {}, coldest: null })).toMatchObject({
      verdict: null,
      wants: 'the coldest night where it stands',
    });
    expect(verdict({ ...frost, ceiling: -18 }, -17, {}, null)).toBe('act');
    expect(verdict({ ...frost, ceiling: -18 }, -18, {}, null)).toBeNull();
  });

  it('stands for itself where nothing is said', () => {
    expect(referenceOf(gauge(), { new: 4 }, -5)).toBe(0);
    expect(referenceOf(drop, { new: 4 }, -5)).toBe(4);
    expect(referenceOf(gauge({ against: { what: 'coldest night' } }), {}, null)).toBeNull();
  });
});

describe('a reading that says something of the fluid', () => {
  const acid = gauge({ unit: 'SG', decimals: 3, reads: 'acid density', bands: { good: { from: 1.25 } } });
  const coolant = (reads: NonNullable<Gauge['reads']>) => gauge({ reads, decimals: 0, bands: { good: { to: -30 } } });

  it('acid: at 26.7 °C, and not at all without its temperature', () => {
    expect(judge(acid, { value: 1.26, warmth: 10 }, { details: {}, coldest: null })).toMatchObject({
      value: 1.248,
      verdict: 'act',
    });
    expect(verdict(acid, 1.26, {}, null, 26.7)).toBe('good');
    expect(judge(acid, { value: 1.3, warmth: null }, { details: {}, coldest: null })).toMatchObject({
      verdict: null,
      wants: 'its temperature',
    });
  });

  it.each(['coolant strength', 'coolant density', 'coolant sugar scale'] as const)(
    '%s: where it freezes, of an unknown glycol the warmer of both',
    (reads) => {
      const value = { 'coolant strength': 40, 'coolant density': 1.05, 'coolant sugar scale': 25 }[reads];
      const at = (details: Record<string, string>): number =>
        judge(coolant(reads), { value, warmth: null }, { details, coldest: null }).value;
      const [ethylene, propylene] = [at({ glycol: 'ethylene' }), at({ glycol: 'propylene' })];
      expect(ethylene).not.toBe(propylene);
      expect(at({})).toBe(Math.max(ethylene, propylene));
    },
  );
});
