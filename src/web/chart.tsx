/**
 * A drawn estimate: the span as a hatched band, what was measured as dots, limits as lines with their names on them.
 * Shape and words carry the meaning; there is no color to read. The caption says what each shape stands for.
 */
import { type Label, placeLabels, type Spot, widthOf } from './chart-labels.ts';
import {
  EDGE,
  type Foot,
  HEIGHT,
  hangsOver,
  ofDays,
  type Point,
  type Scales,
  type Side,
  scalesOf,
  WIDTH,
} from './chart-scales.ts';

interface Drawn {
  /** What the drawing says, for those who don't see it. */
  says: string;
  foot: Foot;
  side: Side;
  /** Several bear their labels, or names, toward their right ends. */
  bands?: readonly { name: string; label?: string; points: readonly { x: Point['x']; low: number; high: number }[] }[];
  lines?: readonly { name: string; points: readonly Point[] }[];
  dots?: { name: string; points: readonly Point[] };
  /** Limits across the drawing, each with its name on it. */
  levels?: readonly { at: number; name: string }[];
  /** Days or values standing up across it, such as today. */
  uprights?: readonly { at: Point['x']; name: string }[];
}

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
        {ticksUp.map(({ at, words }) => (
          <>
            <line x1={EDGE.left} x2={right} y1={at} y2={at} class="thread" />
            <text x={EDGE.left - 6} y={at + 5} class="number" text-anchor="end">
              {words}
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
              x={hangsOver(at, words) ? WIDTH - 2 : at}
              y={floor + 26}
              class="number"
              text-anchor={hangsOver(at, words) ? 'end' : 'middle'}
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
    {
      dots: (dots?.points ?? []).map((dot) => ({ x: x(dot.x), y: y(dot.y) })),
      levels: levels.map(({ at }) => y(at)),
      uprights: uprights.map(({ at }) => x(at)),
    },
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

/** Toward the right end of each: above the highest, below the others, clear of its own slope. */
const namesOf = (bands: NonNullable<Drawn['bands']>, { x, y }: Scales): Label[] => {
  const drawn = bands.map(({ name, label = name, points }) => ({
    label,
    edges: points.map((point) => ({ x: x(point.x), top: y(point.high), bottom: y(point.low) })),
  }));
  const highest = Math.min(...drawn.map(({ edges }) => edges.at(-1)?.top ?? Number.POSITIVE_INFINITY));
  return drawn.map(({ label, edges }): Label => {
    const end = edges.at(-1);
    const above = end?.top === highest;
    const spots = [0, 60, 120, 180, 240].map((back): Spot => {
      const right = (end?.x ?? WIDTH) - back - 2;
      const under = edges.filter((edge) => edge.x <= right && edge.x >= right - widthOf(label));
      const base = above
        ? Math.min(...under.map(({ top }) => top)) - 6
        : Math.max(...under.map(({ bottom }) => bottom)) + 19;
      return { x: right, y: base, anchor: 'end' };
    });
    return { text: label, spots: spots.filter((spot) => Number.isFinite(spot.y)) };
  });
};
