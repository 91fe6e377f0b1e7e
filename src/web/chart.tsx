/**
 * A drawn estimate: the span as a hatched band, what was measured as dots, limits as lines with their names on them.
 * Shape and words carry the meaning; there is no color to read. The caption says what each shape stands for.
 */
import { scaleLinear, scaleUtc } from 'd3-scale';
import type { CivilDate } from '../dates/civil.ts';
import { MONTHS } from '../dates/words.ts';
import { type Label, placeLabels, type Spot } from './chart-labels.ts';

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
  /** Several bear their names at their right ends. */
  bands?: readonly { name: string; points: readonly { x: Point['x']; low: number; high: number }[] }[];
  lines?: readonly { name: string; points: readonly Point[] }[];
  dots?: { name: string; points: readonly Point[] };
  /** Limits across the drawing, each with its name on it. */
  levels?: readonly { at: number; name: string }[];
  /** Days or values standing up across it, such as today. */
  uprights?: readonly { at: Point['x']; name: string }[];
}

const WIDTH = 640;
const HEIGHT = 330;
/** Room for the words as a phone shows them: the unit over the top tick, the foot’s unit under its ticks. */
const EDGE = { left: 66, right: 18, top: 46, bottom: 34, unit: 24 };

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

/** Widest words of a tick on either side of it, as a phone shows them. */
const HALF_TICK = 30;

const tickAnchor = (at: number): 'middle' | 'end' => (at > WIDTH - HALF_TICK ? 'end' : 'middle');

/** How values become places of the drawing. */
const scalesOf = ({ foot, side }: Pick<Drawn, 'foot' | 'side'>) => {
  const across = footScale(foot);
  const floor = HEIGHT - EDGE.bottom - (ofDays(foot) || foot.unit === '' ? 0 : EDGE.unit);
  const up = scaleLinear([side.from, side.to], [floor, EDGE.top]).clamp(true);
  const round = (value: number): number => Math.round(value * 10) / 10;
  return {
    floor,
    ticksAcross: across.ticks.map(({ at, words }) => ({ at: round(at), words })),
    ticksUp: up.ticks(5).map((tick) => ({ at: round(up(tick)), tick })),
    x: (value: Point['x']): number => round(across.at(value)),
    y: (value: number): number => round(up(value)),
  };
};
type Scales = ReturnType<typeof scalesOf>;

const pathOf = ({ x, y }: Scales, points: readonly Point[]): string =>
  points.map((point, index) => `${index === 0 ? 'M' : 'L'}${x(point.x)} ${y(point.y)}`).join('');

export const Chart = (drawn: Drawn) => {
  const { says, foot, side, bands = [], lines = [], dots = null, levels = [], uprights = [] } = drawn;
  const scales = scalesOf(drawn);
  const { x, y, floor, ticksAcross, ticksUp } = scales;
  const right = WIDTH - EDGE.right;
  return (
    <figure class="drawing">
      <svg class="chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says}>
        {ticksUp.map(({ at, tick }) => (
          <>
            <line x1={EDGE.left} x2={right} y1={at} y2={at} class="thread" />
            <text x={EDGE.left - 6} y={at + 5} class="number" text-anchor="end">
              {tick.toFixed(side.decimals ?? 0).replace('-', '−')}
            </text>
          </>
        ))}
        <text x={4} y={20} class="number">
          {side.unit}
        </text>
        {bands.map(({ points }) => (
          <path
            d={`${pathOf(
              scales,
              points.map((point) => ({ x: point.x, y: point.high })),
            )}${pathOf(
              scales,
              points.toReversed().map((point) => ({ x: point.x, y: point.low })),
            ).replace('M', 'L')}Z`}
            fill="url(#band)"
            class="outline"
          />
        ))}
        {lines.map(({ points }) => (
          <path d={pathOf(scales, points)} class="curve" />
        ))}
        {levels.map(({ at }) => (
          <line x1={EDGE.left} x2={right} y1={y(at)} y2={y(at)} class="level" />
        ))}
        {uprights.map(({ at }) => (
          <line x1={x(at)} x2={x(at)} y1={EDGE.top} y2={floor} class="today" />
        ))}
        {dots?.points.map((dot) => (
          <circle cx={x(dot.x)} cy={y(dot.y)} r="4" class="dot" />
        ))}
        <line x1={EDGE.left} x2={right} y1={floor} y2={floor} class="floor" />
        {ticksAcross.map(({ at, words }) => (
          <>
            <line x1={at} x2={at} y1={floor} y2={floor + 5} class="floor" />
            <text
              x={tickAnchor(at) === 'end' ? WIDTH - 2 : at}
              y={floor + 22}
              class="number"
              text-anchor={tickAnchor(at)}
            >
              {words}
            </text>
          </>
        ))}
        {!ofDays(foot) && foot.unit !== '' && (
          <text x={right} y={HEIGHT - 8} class="number" text-anchor="end">
            {foot.unit}
          </text>
        )}
        {labelsOf(drawn, scales).map(({ x: left, y: base, anchor, text }) => (
          <text x={left} y={base} class="said" text-anchor={anchor}>
            {text}
          </text>
        ))}
      </svg>
      <figcaption>{captionOf(drawn)}</figcaption>
    </figure>
  );
};

/** “Hatched: …; line: …; dots: …”: what no shape can say of itself. */
const captionOf = ({ bands = [], lines = [], dots }: Drawn): string => {
  const said = [
    ...(bands.length > 0 ? [`hatched: ${bands.map(({ name }) => name).join(' and ')}`] : []),
    ...(lines.length > 0 ? [`line: ${lines.map(({ name }) => name).join(' and ')}`] : []),
    ...(dots && dots.points.length > 0 ? [`dots: ${dots.name}`] : []),
  ].join('; ');
  return said === '' ? '' : `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
};

const labelsOf = (drawn: Drawn, scales: Scales) => {
  const { bands = [], dots, levels = [], uprights = [] } = drawn;
  const { x, y, floor } = scales;
  return placeLabels(
    [
      ...uprights.map(({ at, name }, index) => ({
        text: name,
        spots: besideUpright(x(at), index === 0 && uprights.length > 1),
      })),
      ...levels.map(({ at, name }) => ({ text: name, spots: onLevel(y(at)) })),
      ...(bands.length > 1 ? namesOf(bands, scales) : []),
    ],
    { left: EDGE.left, right: WIDTH, top: EDGE.top - 26, bottom: floor },
    (dots?.points ?? []).map((dot) => ({ x: x(dot.x), y: y(dot.y) })),
  );
};

/** The first of two reads outward, to the left; where two stand close, the second goes a line lower. */
const besideUpright = (x: number, outward: boolean): Spot[] => {
  const rows = [EDGE.top + 16, EDGE.top + 38, EDGE.top + 60];
  const [left, right] = (['end', 'start'] as const).map((anchor) =>
    rows.map((y) => ({ x: anchor === 'end' ? x - 5 : x + 5, y, anchor })),
  ) as [Spot[], Spot[]];
  return outward ? [...left, ...right] : [...right, ...left];
};

/** On the line or under it, at the side where there is room. */
const onLevel = (y: number): Spot[] => {
  const ends: Spot[] = [
    { x: WIDTH - EDGE.right - 2, y: 0, anchor: 'end' },
    { x: EDGE.left + 4, y: 0, anchor: 'start' },
    { x: (EDGE.left + WIDTH) / 2, y: 0, anchor: 'middle' },
  ];
  return [y - 5, y + 18].flatMap((base) => ends.map((end) => ({ ...end, y: base })));
};

/** At the right end of each: above the highest, below the others. */
const namesOf = (bands: NonNullable<Drawn['bands']>, { x, y }: Scales): Label[] => {
  const ends = bands.flatMap(({ name, points }) => {
    const last = points.at(-1);
    return last ? [{ name, at: x(last.x), top: y(last.high), bottom: y(last.low) }] : [];
  });
  const highest = Math.min(...ends.map(({ top }) => top));
  return ends.map(({ name, at, top, bottom }): Label => {
    const spot = (base: number): Spot => ({ x: at - 2, y: base, anchor: 'end' });
    const above = [top - 7, top - 32].map(spot);
    const below = [bottom + 20, bottom + 45].map(spot);
    return { text: name, spots: top === highest ? [...above, ...below] : [...below, ...above] };
  });
};
