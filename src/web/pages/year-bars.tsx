/** Money month by month, each a bar from the low to the high figure: own hands hatched, a workshop’s in outline. */
import { scaleBand, scaleLinear } from 'd3-scale';
import { spanInWords } from '../../money/words.ts';
import type { Period } from '../../money/year-ahead.ts';

const WIDTH = 640;
const HEIGHT = 260;
const EDGE = { left: 70, right: 10, top: 16, bottom: 40 };

export const YearBars = ({
  periods,
  nameOf,
  currency,
  says,
}: {
  periods: readonly Period[];
  /** Short, to stand under its bar. */
  nameOf(period: Period): string;
  currency: string;
  says: string;
}) => {
  const most = Math.max(1, ...periods.map(({ cost }) => cost.workshop.high));
  const y = scaleLinear([0, most], [HEIGHT - EDGE.bottom, EDGE.top]).nice(4);
  const x = scaleBand(
    periods.map((_, index) => String(index)),
    [EDGE.left, WIDTH - EDGE.right],
  ).padding(0.25);
  const half = x.bandwidth() / 2;
  const bar = (from: number, to: number) => ({ y: y(to), height: Math.max(y(from) - y(to), from === to ? 0 : 2) });
  return (
    <figure class="year-figure">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says} class="year-bars">
        {y.ticks(4).map((tick) => (
          <>
            <line x1={EDGE.left} x2={WIDTH - EDGE.right} y1={y(tick)} y2={y(tick)} class="grid" />
            <text x={EDGE.left - 6} y={y(tick) + 4} text-anchor="end">
              {tick.toLocaleString('en-US')}
            </text>
          </>
        ))}
        {periods.map((period, index) => {
          const left = x(String(index)) ?? 0;
          const { own, workshop } = period.cost;
          return (
            <g>
              <title>{`${nameOf(period)}: own hands ${spanInWords(own, currency)}, workshop ${spanInWords(workshop, currency)}`}</title>
              <rect x={left} width={half} {...bar(own.low, own.high)} class="own" fill="url(#due)" />
              <rect x={left + half} width={half} {...bar(workshop.low, workshop.high)} class="workshop" />
              <text x={left + half} y={HEIGHT - EDGE.bottom + 18} text-anchor="middle">
                {nameOf(period)}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption>
        {currency}, each bar from the low to the high figure: striped for own hands, in outline for a workshop. The
        table below says the same.
      </figcaption>
    </figure>
  );
};
