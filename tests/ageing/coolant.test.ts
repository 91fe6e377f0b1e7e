import { describe, expect, it } from 'vitest';
import { strengthen } from '../../src/ageing/coolant/dilution.ts';
import { COOLANT_FAMILIES, mixing } from '../../src/ageing/coolant/families.ts';
import { freezingPoint, freezingSpan, strengthFor } from '../../src/ageing/coolant/freezing.ts';
import { COOLANT_SOURCES, coolantOutlook } from '../../src/ageing/coolant/outlook.ts';
import { SAMPLE_SOURCES, strengthByBrix, strengthByDensity } from '../../src/ageing/coolant/sample.ts';
import { SOURCES } from '../../src/catalogue/sources.ts';

const exactly = (strength: number) => ({ low: strength, high: strength });

describe('strengths outside the table', () => {
  it('below nothing is water, and beyond 60 to 67 vol % is no better than 60', () => {
    expect(freezingPoint('ethylene', -5)).toBe(0);
    for (const strength of [61, 67]) expect(freezingPoint('ethylene', strength)).toBe(freezingPoint('ethylene', 60));
    for (const strength of [61, 80, 100]) expect(freezingPoint('propylene', strength)).toBe(-51.1);
  });

  it('pure ethylene glycol freezes far sooner than the best mixture', () => {
    expect(freezingPoint('ethylene', 100)).toBeCloseTo(-12.9, 9);
    expect(freezingSpan('ethylene', 100).high).toBeCloseTo(-12.9, 9);
  });

  it('no strength is given for a cold that none withstands, and none is needed above 0 °C', () => {
    expect(strengthFor('ethylene', -53)).toBeNull();
    expect(strengthFor('propylene', -51.2)).toBeNull();
    expect(strengthFor('propylene', 4)).toBe(0);
  });
});

describe('samples', () => {
  it('water reads as no glycol', () => {
    expect(strengthByDensity('ethylene', 1)).toEqual({ low: 0, high: 0 });
    expect(strengthByBrix('propylene', 0)).toEqual({ low: 0, high: expect.closeTo(1.5, 1) });
  });

  it('a hydrometer in propylene glycol past its densest reading tells no upper end', () => {
    expect(strengthByDensity('propylene', 1.045)).toEqual({ low: 50, high: 100 });
    expect(strengthByDensity('propylene', 1.06)).toEqual({ low: 60, high: 100 });
  });

  it('a hydrometer leaves half and half of ethylene glycol open by some 5 vol %', () => {
    const { low, high } = strengthByDensity('ethylene', 1.075);
    expect(low).toBe(50);
    expect(high).toBeCloseTo(55.6, 1);
  });
});

describe('strengthening', () => {
  it('is refused where it cannot be done', () => {
    expect(strengthen(8, 50, 40, 100)).toBeNull();
    expect(strengthen(8, 30, 50, 50)).toBeNull();
    expect(strengthen(8, 60, 60, 50)).toBeNull();
    expect(strengthen(0, 30, 50, 100)).toBeNull();
    expect(strengthen(8, -1, 50, 100)).toBeNull();
    expect(strengthen(8, 30, 50, 101)).toBeNull();
    expect(strengthen(Number.NaN, 30, 50, 100)).toBeNull();
    expect(strengthen(8, 40, 40, 100)).toBe(0);
  });
});

describe('the outlook', () => {
  it('of half and half in a cold winter: a wide margin and nothing to say', () => {
    const { margin, verdict, says } = coolantOutlook({ glycol: 'ethylene', strength: exactly(50) }, -20);
    expect(margin?.low).toBeCloseTo(17.2, 1);
    expect(verdict).toBe('good');
    expect(says).toEqual([]);
  });

  it('watches a margin under 3 °C and acts on none', () => {
    const freezes = freezingSpan('ethylene', 45).high;
    const at = (margin: number) => coolantOutlook({ glycol: 'ethylene', strength: exactly(45) }, freezes + margin);
    expect([at(3.01), at(2.99), at(0), at(-0.01)].map(({ verdict }) => verdict)).toEqual([
      'good',
      'watch',
      'watch',
      'act',
    ]);
    expect(at(1).says.join(' ')).toContain('make it stronger before winter');
    expect(at(-1).says.join(' ')).toContain('Do not start the engine');
  });

  it('decides by the weak end of the sample', () => {
    const strength = strengthByDensity('ethylene', 1.062);
    expect(coolantOutlook({ glycol: 'ethylene', strength: exactly(strength.high) }, -25).verdict).toBe('good');
    expect(coolantOutlook({ glycol: 'ethylene', strength }, -25).verdict).toBe('act');
    expect(coolantOutlook({ glycol: 'ethylene', strength }, -25).says.at(-1)).toContain('a refractometer');
  });

  it('watches what may be too strong, and acts on what surely is', () => {
    const of = (low: number, high: number) =>
      coolantOutlook({ glycol: 'propylene', strength: { low, high } }, 0).verdict;
    expect([of(50, 60), of(50, 62), of(50, 100), of(68, 71)]).toEqual(['good', 'watch', 'watch', 'act']);
  });

  it('does not call frost when nobody said how cold it gets, and says so', () => {
    const { margin, verdict, says } = coolantOutlook({ glycol: 'ethylene', strength: exactly(50) }, null);
    expect([margin, verdict]).toEqual([null, null]);
    expect(says).toEqual(['Nobody has said where the car stands: frost is not judged.']);
    expect(coolantOutlook({ glycol: 'ethylene', strength: exactly(20) }, null).verdict).toBe('act');
  });

  it('takes the graver of both glycols where it is not told', () => {
    const of = (glycol: 'ethylene' | 'propylene' | 'unknown') => coolantOutlook({ glycol, strength: exactly(40) }, -23);
    expect(of('ethylene').verdict).toBe('watch');
    expect(of('propylene').verdict).toBe('act');
    expect(of('unknown').verdict).toBe('act');
    expect(of('unknown').says.at(-1)).toContain('both are reckoned with');
  });

  it('rules bursting out for ethylene glycol from 30 to 67 % alone, and thins what is too strong', () => {
    const at = (strength: number, glycol: 'ethylene' | 'propylene' = 'ethylene') =>
      coolantOutlook({ glycol, strength: exactly(strength) }, -30).says.join(' ');
    expect(at(20)).toContain('can burst the block');
    expect(at(35)).toContain('does not burst the block');
    expect(at(35, 'propylene')).toContain('can burst the block');
    expect(at(35)).toContain('make it stronger');
    expect(at(100)).toContain('can burst the block');
    expect(at(100)).toContain('thin it before the frost');
    expect(at(100)).not.toContain('make it stronger');
  });
});

describe('mixing', () => {
  it('names both families, and both glycols where they differ', () => {
    const warning = mixing({ family: 'iat', glycol: 'ethylene' }, { family: 'oat', glycol: 'propylene' });
    expect(warning).toContain('Inorganic (IAT) meets Organic acid (OAT)');
    expect(warning).toContain('wrong on either scale');
    expect(mixing({ family: 'oat', glycol: 'ethylene' }, { family: 'oat', glycol: 'ethylene' })).toBeNull();
  });

  it('an unknown family is never passed, nor an unknown glycol', () => {
    expect(mixing({ family: 'unknown', glycol: 'ethylene' }, { family: 'unknown', glycol: 'ethylene' })).toContain(
      'two years',
    );
    expect(mixing({ family: 'iat', glycol: 'unknown' }, { family: 'iat', glycol: 'unknown' })).toContain('not known');
  });
});

it('an unknown family lasts no longer and reads no better than any other', () => {
  const { unknown, ...known } = COOLANT_FAMILIES;
  for (const { months, km, ph } of Object.values(known)) {
    expect(unknown.months).toBeLessThanOrEqual(months);
    expect(unknown.km).toBeLessThanOrEqual(km);
    expect(unknown.ph.good.from).toBeGreaterThanOrEqual(ph.good.from ?? Number.NaN);
    expect(unknown.ph.good.to).toBeLessThanOrEqual(ph.good.to ?? Number.NaN);
    expect(unknown.ph.watch?.from).toBeGreaterThanOrEqual(ph.watch?.from ?? Number.NaN);
  }
});

it('every source it names is listed', () => {
  const named = [
    ...COOLANT_SOURCES,
    ...SAMPLE_SOURCES,
    ...Object.values(COOLANT_FAMILIES).flatMap(({ sources }) => sources),
  ];
  expect(named.filter((key) => !SOURCES[key])).toEqual([]);
});
