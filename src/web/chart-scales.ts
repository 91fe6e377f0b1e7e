/** Where the values of a drawing stand on it, and its ticks, thinned until their words stand apart on a phone. */
import { scaleLinear, scaleUtc } from 'd3-scale';
import type { CivilDate } from '../dates/civil.ts';
import { MONTHS } from '../dates/words.ts';
import { widthOf } from './chart-labels.ts';

/** Along the foot: numbers with a unit, or days. */
export type Foot =
  | { from: number; to: number; unit: string; ticks?: readonly { at: number; words: string }[] }
  | { from: CivilDate; to: CivilDate };

/** Along the side. */
export interface Side {
  from: number;
  to: number;
  unit: string;
  decimals?: number;
}

export interface Point {
  x: number | CivilDate;
  y: number;
}

export const WIDTH = 640;
export const HEIGHT = 330;
/** Room for the words as a phone shows them: the unit over the top tick, the foot’s unit under its ticks. */
export const EDGE = { left: 66, right: 18, top: 46, bottom: 36, unit: 24 };

const instant = (day: CivilDate): Date => new Date(`${day}T00:00:00Z`);

export const ofDays = (foot: Foot): foot is { from: CivilDate; to: CivilDate } => typeof foot.from === 'string';

/** Where a foot's values stand, and its ticks with their words. */
const footScale = (foot: Foot) => {
  const reach: [number, number] = [EDGE.left, WIDTH - EDGE.right];
  if (ofDays(foot)) {
    const scale = scaleUtc([instant(foot.from), instant(foot.to)], reach);
    return {
      at: (x: Point['x']): number => scale(instant(x as CivilDate)),
      ticks: scale.ticks(6).map((tick) => ({ at: scale(tick), words: dayOnFoot(tick) })),
    };
  }
  const scale = scaleLinear([foot.from, foot.to], reach);
  return {
    at: (x: Point['x']): number => scale(x as number),
    ticks:
      foot.ticks?.map(({ at, words }) => ({ at: scale(at), words })) ??
      scale.ticks(7).map((tick) => ({ at: scale(tick), words: String(tick).replace('-', '−') })),
  };
};

/** Short enough to stand side by side on a phone: “Nov”, the year in January, “23 Nov” within a month. */
const dayOnFoot = (tick: Date): string => {
  const month = (MONTHS[tick.getUTCMonth()] ?? '').slice(0, 3);
  if (tick.getUTCDate() !== 1) return `${tick.getUTCDate()} ${month}`;
  return tick.getUTCMonth() === 0 ? String(tick.getUTCFullYear()) : month;
};

/** Ticks whose words stand clear of those before them, as wide as a phone shows them. */
const apart = (ticks: readonly { at: number; words: string }[]) => {
  let taken = Number.NEGATIVE_INFINITY;
  return ticks.filter(({ at, words }) => {
    const half = widthOf(words) / 2;
    if (at - half < taken) return false;
    taken = at + half + 6;
    return true;
  });
};

export const hangsOver = (at: number, words: string): boolean => at + widthOf(words) / 2 > WIDTH - 2;

/** How values become places of the drawing. */
export const scalesOf = ({ foot, side }: { foot: Foot; side: Side }) => {
  const decimals = side.decimals ?? 0;
  const across = footScale(foot);
  const floor = HEIGHT - EDGE.bottom - (ofDays(foot) || foot.unit === '' ? 0 : EDGE.unit);
  const up = scaleLinear([side.from, side.to], [floor, EDGE.top]).clamp(true);
  const round = (value: number): number => Math.round(value * 10) / 10;
  return {
    floor,
    ticksAcross: apart(across.ticks).map(({ at, words }) => ({ at: round(at), words })),
    // A tick between two that its decimals can tell would bear the number of another.
    ticksUp: up
      .ticks(5)
      .filter((tick) => Math.abs(Number(tick.toFixed(decimals)) - tick) < 1e-9)
      .map((tick) => ({ at: round(up(tick)), words: tick.toFixed(decimals).replace('-', '−') })),
    x: (value: Point['x']): number => round(across.at(value)),
    y: (value: number): number => round(up(value)),
  };
};
export type Scales = ReturnType<typeof scalesOf>;
