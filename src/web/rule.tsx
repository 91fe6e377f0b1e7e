/**
 * The rule: a ruler laid along a part's life. Years are its graduations, the look-from and replace-by days its marks,
 * the span in which the clock may have started a hatched band, today a line.
 */
import { scaleUtc } from 'd3-scale';
import { addDays, type CivilDate, yearOf } from '../dates/civil.ts';
import { dayInWords, rangeInWords } from '../dates/words.ts';
import type { Finding } from '../findings/assess.ts';
import { turnInWords } from '../findings/explain.ts';
import type { Turn } from '../findings/turns.ts';
import { useVisit } from './layout.tsx';

const WIDTH = 360;
const EDGE = 8;
/** Lower edge of the steel; marks stand above it, numbers hang below. */
const BASE = 26;

const instant = (day: CivilDate): Date => new Date(`${day}T00:00:00Z`);

export const Rule = ({ finding }: { finding: Finding }) => {
  const { today } = useVisit();
  const { since, look, past, label, on } = finding;
  const limit = past && { worst: past.worst && addDays(past.worst, -1), best: past.best && addDays(past.best, -1) };
  const start = label ? null : since;
  const days = [start?.from, start?.to, look?.worst, look?.best, limit?.worst, limit?.best, on]
    .filter((day): day is CivilDate => Boolean(day))
    .sort();
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last || first === last) return <></>;
  const scale = scaleUtc([instant(first), instant(last)], [EDGE, WIDTH - EDGE]);
  const x = (day: CivilDate): number => Math.round(scale(instant(day)) * 10) / 10;
  return (
    <svg class="rule" viewBox={`0 0 ${WIDTH} 54`} role="img" aria-label={inWords(finding, limit)}>
      <rect x={EDGE - 4} y={BASE - 12} width={WIDTH - 2 * EDGE + 8} height="14" rx="2" class="steel" />
      <Graduations first={first} last={last} x={x} />
      {start?.from && start.to && start.from !== start.to && (
        <rect
          x={x(start.from)}
          y={BASE - 11}
          width={Math.max(2, x(start.to) - x(start.from))}
          height="12"
          fill="url(#band)"
          class="outline"
        />
      )}
      {look && <Mark turn={look} x={x} name="look" />}
      {limit && <Mark turn={limit} x={x} name={label ? 'label' : 'replace'} />}
      <line x1={x(on)} x2={x(on)} y1={BASE - 18} y2={BASE + 17} class="today" />
      <text x={clamp(x(on))} y={BASE + 26} class="said" text-anchor="middle">
        {on === today ? 'today' : 'that day'}
      </text>
    </svg>
  );
};

/** Year lines, and their numbers as often as there is room. */
const Graduations = ({ first, last, x }: { first: CivilDate; last: CivilDate; x(day: CivilDate): number }) => {
  const years = Array.from({ length: yearOf(last) - yearOf(first) }, (_, index) => yearOf(first) + 1 + index);
  const every = [1, 2, 5, 10, 20, 50].find((step) => years.length / step <= 8) ?? 100;
  return (
    <>
      {years.map((year) => {
        const numbered = year % every === 0;
        const at = x(`${year}-01-01` as CivilDate);
        return (
          <>
            <line x1={at} x2={at} y1={BASE + 2} y2={BASE - (numbered ? 6 : 3)} class="year" />
            {numbered && at > 14 && at < WIDTH - 14 && (
              <text x={at} y={BASE + 14} class="number" text-anchor="middle">
                {year}
              </text>
            )}
          </>
        );
      })}
    </>
  );
};

/** A mark stands at its earliest day; a foot runs to its latest where the two differ. */
const Mark = ({
  turn: { worst, best },
  x,
  name,
}: {
  turn: Turn;
  x(day: CivilDate): number;
  name: 'look' | 'replace' | 'label';
}) => {
  const day = worst ?? best;
  if (!day) return <></>;
  const at = x(day);
  return (
    <g class={`mark-${name}`}>
      {best && worst && best !== worst && <line x1={at} x2={x(best)} y1={BASE + 4} y2={BASE + 4} class="foot" />}
      {name === 'look' ? (
        <path d={`M${at} ${BASE - 12} l-4 -7 h8 z`} class="open" />
      ) : (
        <path d={`M${at - 2} ${BASE - 20} h4 v24 h-4 z`} class="ink" />
      )}
    </g>
  );
};

const clamp = (at: number): number => Math.min(Math.max(at, 16), WIDTH - 16);

const inWords = ({ since, look, label, on }: Finding, limit: Turn | null): string =>
  [
    label ? `label valid through ${dayInWords(label)}` : since ? `started ${rangeInWords(since)}` : null,
    look ? `look from ${turnInWords(look)}` : null,
    limit && !label ? `replace by ${turnInWords(limit)}` : null,
    `seen on ${dayInWords(on)}`,
  ]
    .filter(Boolean)
    .join('; ');
