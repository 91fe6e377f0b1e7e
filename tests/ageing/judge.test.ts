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

/** What is known beside a reading. */
interface Told {
  coldest: number;
  warmth: number;
}

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

  const SAMPLES = { 'coolant strength': 40, 'coolant density': 1.05, 'coolant sugar scale': 25 } as const;
  const READS = ['coolant strength', 'coolant density', 'coolant sugar scale'] as const;
  const sample = (
    reads: (typeof READS)[number],
    value: number,
    details: Record<string, string>,
    more: Partial<Told> = {},
  ) => judge(coolant(reads), { value, warmth: more.warmth ?? 20 }, { details, coldest: more.coldest ?? null });

  it.each(READS)('%s: where it freezes, of an unknown glycol no colder than of either', (reads) => {
    const at = (details: Record<string, string>): number => sample(reads, SAMPLES[reads], details).value;
    const [ethylene, propylene] = [at({ glycol: 'ethylene' }), at({ glycol: 'propylene' })];
    expect(ethylene).not.toBe(propylene);
    expect(at({})).toBeGreaterThanOrEqual(Math.max(ethylene, propylene));
  });

  it('coolant of a glycol nobody told: of each by its own weak end, and the warmer ice', () => {
    // 1.05 is 32 % of ethylene glycol at the weak end, which freezes at −17.4 °C; as propylene glycol it is 60 % and more.
    expect(sample('coolant density', 1.05, {}).value).toBeCloseTo(-17.43, 2);
    expect(sample('coolant strength', 32, { glycol: 'propylene' }).value).toBeCloseTo(-14.624, 3);
  });

  it.each([
    [29.9, 'act'],
    [30, 'watch'],
    [32.9, 'watch'],
    [33, 'good'],
    [60, 'good'],
    [60.1, 'watch'],
    [67, 'watch'],
    [67.1, 'act'],
  ])('coolant of %d %%, where frost is far: %s', (strength, wanted) => {
    for (const glycol of ['ethylene', 'propylene'])
      expect(sample('coolant strength', strength, { glycol }, { coldest: 5 }).verdict).toBe(wanted);
  });

  it('coolant is held against the coldest night by the warm end of its ice, with 3 °C to spare', () => {
    // Half ethylene glycol: the warmer of its two sets of data has the first ice at −37.2 °C.
    const at = (coldest: number) => sample('coolant strength', 50, { glycol: 'ethylene' }, { coldest }).verdict;
    expect([-20, -34, -35, -37, -38].map(at)).toEqual(['good', 'good', 'watch', 'watch', 'act']);
  });

  it.each(READS)('%s: without the coldest night good is left open, and too weak is not', (reads) => {
    const weak = { 'coolant strength': 20, 'coolant density': 1.02, 'coolant sugar scale': 10 }[reads];
    const right = { 'coolant strength': 50, 'coolant density': 1.073, 'coolant sugar scale': 33 }[reads];
    const details = { glycol: 'ethylene' };
    expect(sample(reads, weak, details)).toMatchObject({ verdict: 'act', wants: null });
    expect(sample(reads, right, details)).toMatchObject({
      verdict: null,
      wants: 'the coldest night where it stands',
    });
    expect(sample(reads, right, details, { coldest: -10 })).toMatchObject({ verdict: 'good', wants: null });
  });

  it('coolant density: at 20 °C, 0.0005 a degree, and not at all without its temperature', () => {
    const details = { glycol: 'ethylene' };
    const at = (value: number, warmth: number) => sample('coolant density', value, details, { warmth }).value;
    expect(at(1.075, 0)).toBeCloseTo(at(1.065, 20), 9);
    expect(at(1.055, 40)).toBeCloseTo(at(1.065, 20), 9);
    for (const value of [1.02, 1.075])
      expect(judge(coolant('coolant density'), { value, warmth: null }, { details, coldest: 5 })).toMatchObject({
        verdict: null,
        wants: 'its temperature',
      });
  });

  it('coolant density of half and half is no alarm where nobody told the glycol: no glycol can be what the other would be', () => {
    // 1.075 is half ethylene glycol, or 60 % and more of propylene glycol: either way no ice above −30 °C.
    for (const glycol of ['ethylene', 'propylene'])
      expect(sample('coolant density', 1.075, { glycol }, { coldest: -20 }).verdict).not.toBe('act');
    expect(sample('coolant density', 1.075, {}, { coldest: -20 }).verdict).toBe('watch');
  });
});

describe('the pressure of a tire', () => {
  const tire = gauge({
    unit: 'bar',
    reads: 'tire pressure',
    against: { what: 'detail', key: 'placard', as: 'difference' },
    bands: { good: { from: -0.2, to: 1 }, watch: { from: -0.55, to: 1 } },
  });
  const at = (value: number, warmth: number | null) =>
    judge(tire, { value, warmth }, { details: { placard: 2.2 }, coldest: null });

  it('read warm is what it would be at 20 °C', () => {
    // 3.41325 bar from vacuum, by 293.15 and 313.15 K.
    expect(at(2.4, 40).value).toBeCloseTo(2.182, 3);
    expect([at(2.1, null).verdict, at(2.1, 20).verdict, at(2.1, 40).verdict]).toEqual(['good', 'good', 'watch']);
    expect([at(3.3, 20).verdict, at(3.3, 40).verdict]).toEqual(['act', 'good']);
  });

  it.each([20, 5, -20, null])('read at %s °C is what was read: cold, it holds the car up with no more', (warmth) =>
    expect(at(2.1, warmth)).toEqual({ verdict: 'good', wants: null, value: 2.1 }),
  );
});
