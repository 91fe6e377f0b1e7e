/**
 * Where the words of a drawing go: beside what they name, off the dots and off each other. Reckoned with the widest
 * letters a phone shows, so that what holds there holds everywhere.
 */

/** A place for a label: the point its text is anchored to, on its baseline. */
export interface Spot {
  x: number;
  y: number;
  anchor: 'start' | 'end' | 'middle';
}

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Label {
  text: string;
  /** Places it may take, the best first. */
  spots: readonly Spot[];
}

export interface Placed extends Spot {
  text: string;
}

/** Height of a line and width of a letter on a phone, where the drawing is shown at half its size. */
const LINE = 21;
const LETTER = 12;

/** Width of some words, as wide as a phone shows them. */
export const widthOf = (text: string): number => text.length * LETTER;

const boxOf = (text: string, { x, y, anchor }: Spot): Box => {
  const width = widthOf(text);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - LINE * 0.8, bottom: y + LINE * 0.2 };
};

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

const outside = (box: Box, within: Box): number => {
  const area = (box.right - box.left) * (box.bottom - box.top);
  return area - overlap(box, within);
};

/** What no label should cover. */
export interface Drawn {
  dots: readonly { x: number; y: number }[];
  /** Lines across, by their height, and lines standing up. */
  levels: readonly number[];
  uprights: readonly number[];
}

/** Half the stroke of a line, and the rim of a dot. */
const STROKE = 0.7;
const DOT = 6;

/** One after the other, each at the first of its places that is free, or else at the one that covers least. */
export const placeLabels = (labels: readonly Label[], within: Box, { dots, levels, uprights }: Drawn): Placed[] => {
  const taken: Box[] = [
    ...dots.map(({ x, y }) => ({ left: x - DOT, right: x + DOT, top: y - DOT, bottom: y + DOT })),
    ...levels.map((y) => ({ ...within, top: y - STROKE, bottom: y + STROKE })),
    ...uprights.map((x) => ({ ...within, left: x - STROKE, right: x + STROKE })),
  ];
  return labels.flatMap(({ text, spots }) => {
    const costs = spots.map((spot) => {
      const box = boxOf(text, spot);
      return outside(box, within) + taken.reduce((sum, one) => sum + overlap(box, one), 0);
    });
    const spot = spots[costs.indexOf(Math.min(...costs))];
    if (!spot) return [];
    taken.push(boxOf(text, spot));
    return [{ ...spot, text }];
  });
};
