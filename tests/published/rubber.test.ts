import { describe, expect, it } from 'vitest';
import { ASSUMED } from '../../src/ageing/place.ts';
import { RUBBER_GROUPS, RUBBER_STORAGE, RUBBERS, type Rubber, shelfLife } from '../../src/ageing/rubber/families.ts';
import { placeFactor } from '../../src/ageing/rubber/place.ts';
import { heatAge } from '../../src/ageing/tires/heat.ts';

/** ISO 2230 as quoted by seal-trade pages: group, years of the first period, of one extension, of both; BR, SBR and IIR from memory. */
const STANDARD: readonly ['A' | 'B' | 'C', number, number, number, Rubber[]][] = [
  ['A', 5, 2, 7, ['NR', 'IR', 'BR', 'SBR', 'AU', 'EU']],
  ['B', 7, 3, 10, ['NBR', 'HNBR', 'CR', 'IIR', 'ACM', 'ECO']],
  ['C', 10, 5, 15, ['EPDM', 'FKM', 'FFKM', 'VMQ', 'FVMQ', 'CSM']],
];

describe('rubber on a shelf, ISO 2230 as quoted by the seal trade', () => {
  it.each(STANDARD)('group %s keeps %d years and %d more, %d at most', (group, initial, extension, total, families) => {
    expect(RUBBER_GROUPS[group]).toEqual({ initial, extension });
    expect(initial + extension).toBe(total);
    for (const family of families) {
      expect(RUBBERS[family], family).toBe(group);
      expect(shelfLife(family, { from: '2017-03-04', to: '2017-03-04' })).toEqual({
        inspect: { earliest: `${2017 + initial}-03-04`, latest: `${2017 + initial}-03-04` },
        end: { earliest: `${2017 + total}-03-04`, latest: `${2017 + total}-03-04` },
      });
    }
  });

  it('names no other family', () =>
    expect(Object.keys(RUBBERS).sort()).toEqual(STANDARD.flatMap(([, , , , families]) => families).sort()));

  it('is kept at 25 °C at most, warmed to 30 °C from below 15 °C, under 70 % humidity, polyurethane under 65 %', () =>
    expect(RUBBER_STORAGE).toEqual({
      most: 25,
      warmBelow: 15,
      warmTo: 30,
      humidity: 70,
      polyurethaneHumidity: 65,
    }));
});

describe('rubber by temperature', () => {
  const steady = (t: number) => ({ ...ASSUMED, shelter: 'heated' as const, months: Array<number>(12).fill(t) });

  // Computed with 86 and 94 kJ/mol (Rubber Chemistry and Technology 74(1) 79: 90 ± 4), by hand; tolerance 1 %.
  it.each([
    [10, 0.2874, 0.2561, 0.5],
    [20, 1, 1, 1],
    [30, 3.2031, 3.569, 2],
  ])('a year at %d °C counts so many at 20 °C', (t, first, second, doubling) => {
    const { byArrhenius, byRuleOfTen } = heatAge(1, steady(t));
    expect(byArrhenius.low / Math.min(first, second)).toBeCloseTo(1, 2);
    expect(byArrhenius.high / Math.max(first, second)).toBeCloseTo(1, 2);
    expect(byRuleOfTen).toBeCloseTo(doubling, 9);
  });

  // 2^((T - 15)/10), clipped to 0.5 and 2: judgement on the trade’s doubling rule; roofs from judgement, 1.0 to 1.6.
  it.each([
    ['heated', 15, 1],
    ['heated', 25, 2],
    ['heated', 28, 2],
    ['heated', 5, 0.5],
    ['heated', -10, 0.5],
    ['unheated', 15, 1],
    ['damp', 15, 1.1],
    ['covered', 15, 1.3],
    ['open', 15, 1.6],
    ['open', 30, 3.2],
  ] as const)('a place that is %s, at %d °C, ages it %d times as fast', (shelter, t, factor) =>
    expect(placeFactor({ ...steady(t), shelter })).toBeCloseTo(factor, 9),
  );
});
