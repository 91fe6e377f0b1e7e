/**
 * A drawn estimate: the span as a hatched band, what was measured as dots, limits as lines with their names on them.
 * Shape and words carry the meaning; there is no color to read.
 */
import { scaleLinear, scaleUtc } from 'd3-scale';
import type { CivilDate } from '../dates/civil.ts';
import { MONTHS } from '../dates/words.ts';

/** Along the foot: numbers with a unit, or days. */
type Foot =
  | { from: number; to: number; unit: string; ticks?: readonly { at: number; words: string }[] }
  | { from: CivilDate; to: CivilDate };

export interface Point {
  x: number | CivilDate;
  y: number;
}

interface Drawn {
  /** What the drawing says, for those who don't see it. */
  says: string;
  foot: Foot;
  side: { from: number; to: number; unit: string; decimals?: number };
  bands?: readonly { name: string; points: readonly { x: Point['x']; low: number; high: number }[] }[];
  lines?: readonly { name: string; points: readonly Point[] }[];
  dots?: readonly Point[];
  /** Limits across the drawing, each with its name above it. */
  levels?: readonly { at: number; name: string }[];
  /** Days or values standing up across it, such as today. */
  uprights?: readonly { at: Point['x']; name: string }[];
}

const WIDTH = 640;
const HEIGHT = 300;
const EDGE = { left: 66, right: 16, top: 30, bottom: 34 };

const instant = (day: CivilDate): Date => new Date(`${day}T00:00:00Z`);

const ofDays = (foot: Foot): foot is { from: CivilDate; to: CivilDate } => typeof foot.from === 'string';

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

export const Chart = ({ says, foot, side, bands = [], lines = [], dots = [], levels = [], uprights = [] }: Drawn) => {
  const across = footScale(foot);
  const up = scaleLinear([side.from, side.to], [HEIGHT - EDGE.bottom, EDGE.top]).clamp(true);
  const round = (value: number): number => Math.round(value * 10) / 10;
  const x = (value: Point['x']): number => round(across.at(value));
  const y = (value: number): number => round(up(value));
  const path = (points: readonly { x: Point['x']; y: number }[]): string =>
    points.map((point, index) => `${index === 0 ? 'M' : 'L'}${x(point.x)} ${y(point.y)}`).join('');
  const floor = HEIGHT - EDGE.bottom;
  return (
    <svg class="chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says}>
      {up.ticks(5).map((tick) => (
        <>
          <line x1={EDGE.left} x2={WIDTH - EDGE.right} y1={y(tick)} y2={y(tick)} class="thread" />
          <text x={EDGE.left - 6} y={y(tick) + 4} class="number" text-anchor="end">
            {tick.toFixed(side.decimals ?? 0).replace('-', '−')}
          </text>
        </>
      ))}
      <text x={EDGE.left - 6} y={14} class="number" text-anchor="end">
        {side.unit}
      </text>
      {bands.map(({ points }) => (
        <path
          d={`${path(points.map((point) => ({ x: point.x, y: point.high })))}${path(
            points.toReversed().map((point) => ({ x: point.x, y: point.low })),
          ).replace('M', 'L')}Z`}
          fill="url(#band)"
          class="outline"
        />
      ))}
      {lines.map(({ points }) => (
        <path d={path(points)} class="curve" />
      ))}
      {levels.map(({ at, name }) => (
        <>
          <line x1={EDGE.left} x2={WIDTH - EDGE.right} y1={y(at)} y2={y(at)} class="level" />
          <text x={WIDTH - EDGE.right - 2} y={y(at) - 4} class="said" text-anchor="end">
            {name}
          </text>
        </>
      ))}
      {uprights.map(({ at, name }) => (
        <>
          <line x1={x(at)} x2={x(at)} y1={EDGE.top} y2={floor} class="today" />
          <text x={Math.min(x(at) + 4, WIDTH - 60)} y={EDGE.top + 8} class="said">
            {name}
          </text>
        </>
      ))}
      {dots.map((dot) => (
        <circle cx={x(dot.x)} cy={y(dot.y)} r="4" class="dot" />
      ))}
      <line x1={EDGE.left} x2={WIDTH - EDGE.right} y1={floor} y2={floor} class="floor" />
      {across.ticks.map(({ at, words }) => (
        <>
          <line x1={round(at)} x2={round(at)} y1={floor} y2={floor + 5} class="floor" />
          <text x={round(at)} y={floor + 18} class="number" text-anchor="middle">
            {words}
          </text>
        </>
      ))}
      {!ofDays(foot) && (
        <text x={WIDTH - EDGE.right} y={HEIGHT - 3} class="number" text-anchor="end">
          {foot.unit}
        </text>
      )}
    </svg>
  );
};
