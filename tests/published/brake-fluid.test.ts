import { describe, expect, it } from 'vitest';
import { boilingAt, ROAD_HEAT, roadWords, VAPOR_LOCK, waterAtBoiling } from '../../src/ageing/brake-fluid/boiling.ts';
import { mayMix } from '../../src/ageing/brake-fluid/mixing.ts';
import { monthsTo, waterAfter, waterPace } from '../../src/ageing/brake-fluid/water.ts';
import { judge } from '../../src/ageing/judge.ts';
import { BRAKE_FLUID_GRADES } from '../../src/catalogue/brake-fluid-grades.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';

const gradeOf = (name: string) => {
  const grade = BRAKE_FLUID_GRADES.find((one) => one.name === name);
  if (!grade) throw new Error(`no grade ${name}`);
  return grade;
};
const glycols = BRAKE_FLUID_GRADES.filter(({ base }) => base === 'glycol');
const USUAL = waterPace({ damp: false, hoses: 'rubber' });

describe('the boiling point by water', () => {
  // Two trade articles on a typical DOT 3 fluid: 401, 369, 320 and 293 °F, which are 205, 187.2, 160 and 145 °C; closed
  // by 49 CFR 571.116 at 3.7 percent and 140 °C. Linear between: tolerance 0.2 °C.
  it.each([
    [0, 205],
    [0.5, 196.1],
    [1, 187.2],
    [1.5, 173.6],
    [2, 160],
    [2.5, 152.5],
    [3, 145],
    [3.35, 142.5],
    [3.7, 140],
  ])('of DOT 3 with %d percent is %d °C, and the other way', (water, boiling) => {
    expect(Math.abs((boilingAt(gradeOf('DOT 3'), water) ?? 0) - boiling)).toBeLessThanOrEqual(0.2);
    expect(Math.abs((waterAtBoiling(gradeOf('DOT 3'), boiling) ?? -1) - water)).toBeLessThanOrEqual(0.03);
  });

  it.each(glycols)('of $name runs from its dry to its wet minimum: 49 CFR 571.116, ISO 4925 from memory', (grade) => {
    expect(boilingAt(grade, 0)).toBe(grade.dryMinC);
    expect(boilingAt(grade, 3.7)).toBe(grade.wetMinC);
    expect(boilingAt(grade, 6)).toBe(grade.wetMinC);
  });

  it('lies near the vapor lock that LR903 gives, 180 °C with 1, 145 °C with 3 percent; tolerance 8 °C for DOT 3', () => {
    expect(VAPOR_LOCK.rows).toEqual([
      [0, 250],
      [1, 180],
      [3, 145],
    ]);
    // Dry, the fluids of that report began far above the least of any grade then sold.
    for (const [water, lock] of VAPOR_LOCK.rows.slice(1))
      expect(Math.abs((boilingAt(gradeOf('DOT 3'), water) ?? 0) - lock)).toBeLessThanOrEqual(8);
  });

  it('of silicone is told by no curve', () => {
    expect(boilingAt(gradeOf('DOT 5 silicone'), 1)).toBeNull();
    expect(waterAtBoiling(gradeOf('DOT 5 silicone'), 200)).toBeNull();
  });
});

describe('the road', () => {
  it('heats fluid to the temperatures of report LR903, abstract', () =>
    expect(ROAD_HEAT).toEqual({
      normal: { low: 50, high: 60 },
      bindingBrake: 143,
      ladenDescent: { low: 150, high: 160 },
    }));

  // Report LR903, abstract: 50 to 60 °C in ordinary driving, 143 °C with a binding brake, 150 to 160 °C on a laden descent.
  it.each([
    [60, /any road.*50 to 60 °C/],
    [61, /binding brake.*143 °C/],
    [143, /binding brake.*143 °C/],
    [144, /descent.*150 to 160 °C/],
    [160, /descent with a laden car could boil it.*150 to 160 °C/],
    [161, /above the 150 to 160 °C of a laden descent/],
  ])('asks of a fluid that boils from %d °C what the report measured', (low, words) =>
    expect(roadWords({ low, high: 230, atMost: false })).toMatch(words),
  );
});

describe('water', () => {
  // SAE J1707 as quoted: 1 to 2 percent a year; never beyond 8. Exact.
  it.each([
    [0, 0, 0],
    [6, 0.5, 1],
    [12, 1, 2],
    [18, 1.5, 3],
    [24, 2, 4],
    [36, 3, 6],
    [60, 5, 8],
    [120, 8, 8],
  ])('after %d months is %d to %d percent', (months, low, high) =>
    expect(waterAfter(months, USUAL)).toEqual({ low, high }),
  );

  // The same the other way; tolerance 0.1 month.
  it.each([
    [2, 12, 24],
    [3, 18, 36],
    [3.7, 22.2, 44.4],
  ])('reaches %d percent in %d to %d months', (water, earliest, latest) => {
    const months = monthsTo(water, USUAL);
    expect(Math.abs(months.low - earliest)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(months.high - latest)).toBeLessThanOrEqual(0.1);
  });

  it('grows in a damp place by up to the 3 percent a year of a workshop writer', () =>
    expect(waterPace({ damp: true, hoses: 'rubber' })).toEqual({ slow: 1.5, typical: 2.25, fast: 3 }));
});

describe('what is measured', () => {
  const gaugeOf = (key: string) => {
    const gauge = KINDS.get('brake-fluid-glycol')?.tests.find((test) => test.gauge?.key === key)?.gauge;
    if (!gauge) throw new Error(`no gauge ${key}`);
    return gauge;
  };
  const verdict = (key: string, value: number, grade?: string) =>
    judge(gaugeOf(key), { value, warmth: null }, { details: grade ? { grade } : {}, coldest: null }).verdict;

  // The wet minimum of 49 CFR 571.116 S5.1.2, and 20 °C above it: the margin is a choice.
  it.each([
    ['dot-3', 139, 'act'],
    ['dot-3', 140, 'watch'],
    ['dot-3', 159, 'watch'],
    ['dot-3', 160, 'good'],
    ['dot-4', 154.9, 'act'],
    ['dot-4', 155, 'watch'],
    ['dot-4', 174.9, 'watch'],
    ['dot-4', 175, 'good'],
    ['dot-5-1', 179, 'act'],
    ['dot-5-1', 180, 'watch'],
    ['dot-5-1', 199, 'watch'],
    ['dot-5-1', 200, 'good'],
  ])('%s that boils at %d °C is %s', (grade, value, wanted) =>
    expect(verdict('boiling-point', value, grade)).toBe(wanted),
  );

  // Trade practice: 3 percent is changed, 2 is watched.
  it.each([
    [1.9, 'good'],
    [2, 'watch'],
    [2.9, 'watch'],
    [3, 'act'],
  ])('%d percent of water is %s', (value, wanted) => expect(verdict('water', value)).toBe(wanted));

  // US repair-trade association standard: 200 ppm of copper or more is an exchange.
  it.each([
    [100, 'good'],
    [199, 'good'],
    [200, 'act'],
    [250, 'act'],
  ])('%d ppm of copper is %s', (value, wanted) => expect(verdict('copper', value)).toBe(wanted));
});

describe('mixing, trade practice from memory', () => {
  it.each([
    ['DOT 3', 'DOT 4', true],
    ['DOT 4', 'DOT 5.1', true],
    ['DOT 3', 'DOT 5.1', true],
    ['DOT 4', 'ISO class 6', true],
    ['DOT 5 silicone', 'DOT 5 silicone', true],
    ['DOT 4', 'DOT 5 silicone', false],
    ['DOT 5.1', 'DOT 5 silicone', false],
    ['DOT 3', 'hydraulic system mineral oil', false],
    ['DOT 5 silicone', 'hydraulic system mineral oil', false],
  ])('%s with %s: %s', (a, b, may) => {
    expect(mayMix(a, b)).toBe(may);
    expect(mayMix(b, a)).toBe(may);
  });
});
