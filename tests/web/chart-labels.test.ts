import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels, type Spot, widthOf } from '../../src/web/chart-labels.ts';

const FRAME = { left: 0, right: 600, top: 0, bottom: 300 };
const NOTHING = { dots: [], levels: [], uprights: [] };
const at = (x: number, y: number, anchor: Spot['anchor'] = 'start'): Spot => ({ x, y, anchor });

const rows = Array.from({ length: 13 }, (_, row) => at(10, 20 + row * 22));

describe('the labels of a drawing', () => {
  it('each take the first of their places that is free', () => {
    const spots = [at(10, 50), at(300, 50), at(10, 90)];
    const placed = placeLabels(
      [
        { text: 'one', spots },
        { text: 'two', spots },
        { text: 'three', spots },
      ],
      FRAME,
      NOTHING,
    );
    expect(placed.map(({ x, y }) => [x, y])).toEqual([
      [10, 50],
      [300, 50],
      [10, 90],
    ]);
  });

  it('keep off dots, off lines and within the frame', () => {
    const spots = [at(590, 40), at(10, 50), at(10, 100), at(10, 150), at(300, 150)];
    const drawn = { dots: [{ x: 20, y: 46 }], levels: [95], uprights: [15] };
    expect(placeLabels([{ text: 'name', spots }], FRAME, drawn)[0]).toMatchObject({ x: 300, y: 150 });
    expect(placeLabels([{ text: 'name', spots: [] }], FRAME, drawn)).toEqual([]);
  });

  it('never lie on each other while there is room', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,20}$/), { minLength: 1, maxLength: 13 }), (names) => {
        const placed = placeLabels(
          names.map((text) => ({ text, spots: rows })),
          FRAME,
          NOTHING,
        );
        expect(placed.map(({ text }) => text)).toEqual(names);
        expect(new Set(placed.map(({ y }) => y)).size).toBe(names.length);
        for (const { text, x } of placed) expect(x + widthOf(text)).toBeLessThanOrEqual(FRAME.right);
      }),
    );
  });
});
