import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interpolate, inverse, type Row } from '../../src/ageing/table.ts';

const ROWS: Row[] = [
  [0, 10],
  [10, 20],
  [30, 10],
];

describe('a table', () => {
  it.each([
    [-5, 10],
    [0, 10],
    [5, 15],
    [10, 20],
    [20, 15],
    [30, 10],
    [99, 10],
  ])('at %d gives %d: its rows, lines between them, and its ends beyond', (x, y) =>
    expect(interpolate(ROWS, x)).toBe(y),
  );

  it('of one row is that row everywhere', () => {
    expect([-1, 3, 9].map((x) => interpolate([[3, 7]], x))).toEqual([7, 7, 7]);
  });

  it('read the other way, there and back, gives what it was asked', () => {
    const rising = fc
      .uniqueArray(fc.integer({ min: -100, max: 100 }), { minLength: 2, maxLength: 6 })
      .map((xs) => xs.toSorted((a, b) => a - b));
    fc.assert(
      fc.property(rising, fc.boolean(), fc.double({ min: 0, max: 1, noNaN: true }), (xs, falls, share) => {
        const rows = xs.map((x, index): Row => [x, (falls ? -1 : 1) * index * 3]);
        const [low, high] = [xs[0] as number, xs.at(-1) as number];
        const x = low + share * (high - low);
        expect(interpolate(inverse(rows), interpolate(rows, x))).toBeCloseTo(x, 6);
      }),
    );
  });

  it('stays between the values of its rows', () => {
    fc.assert(
      fc.property(fc.double({ min: -1000, max: 1000, noNaN: true }), (x) => {
        expect(interpolate(ROWS, x)).toBeGreaterThanOrEqual(10);
        expect(interpolate(ROWS, x)).toBeLessThanOrEqual(20);
      }),
    );
  });
});
