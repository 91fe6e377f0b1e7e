/** The stay drawn as a rule: months its graduations, rounds its marks, today a line. */
import { scaleUtc } from 'd3-scale';
import type { StayHere } from '../../acts/stays.ts';
import { addMonths, type CivilDate, firstOfMonth, latest, yearOf } from '../../dates/civil.ts';
import { dayInWords, MONTHS } from '../../dates/words.ts';
import { endOf } from '../../plans/stay.ts';
import { useVisit } from '../layout.tsx';

const WIDTH = 420;
const EDGE = 12;
const BASE = 34;
const instant = (day: CivilDate): Date => new Date(`${day}T00:00:00Z`);

export const StayRule = ({ here: { record, view } }: { here: StayHere }) => {
  const { stay, rounds } = view;
  const { on } = useVisit();
  const end = record.row.closedOn ?? endOf(stay);
  const first = [stay.parkedOn, stay.madeOn, on].toSorted()[0] as CivilDate;
  const last = latest(end, on < addMonths(end, 2) ? on : end);
  if (first === last) return <></>;
  const scale = scaleUtc([instant(first), instant(last)], [EDGE, WIDTH - EDGE]);
  const x = (day: CivilDate): number => Math.round(scale(instant(day)) * 10) / 10;
  return (
    <svg
      class="rule stay-rule"
      viewBox={`0 0 ${WIDTH} 74`}
      role="img"
      aria-label={inWords(here(stay.parkedOn, end), rounds)}
    >
      <rect
        x={x(stay.parkedOn)}
        y={BASE - 12}
        width={Math.max(2, x(end) - x(stay.parkedOn))}
        height="14"
        class="steel"
      />
      <Months first={first} last={last} x={x} />
      {rounds.map(({ due, state }) => (
        <RoundMark at={x(due)} state={state} />
      ))}
      <path d={`M${x(stay.parkedOn) - 2} ${BASE - 20} h4 v24 h-4 z`} class="ink" />
      {(record.row.closedOn ?? stay.returnOn) && <path d={`M${x(end) - 2} ${BASE - 20} h4 v24 h-4 z`} class="ink" />}
      {on >= first && on <= last && (
        <>
          <line x1={x(on)} x2={x(on)} y1={BASE - 22} y2={BASE + 24} class="today" />
          <text x={Math.min(Math.max(x(on), 24), WIDTH - 24)} y={BASE + 36} class="said" text-anchor="middle">
            this day
          </text>
        </>
      )}
      <text x={Math.max(x(stay.parkedOn), 24)} y="10" class="said" text-anchor="middle">
        parked
      </text>
      <text x={Math.min(x(end), WIDTH - 24)} y="10" class="said" text-anchor="middle">
        {record.row.closedOn || stay.returnOn ? 'back' : 'open'}
      </text>
    </svg>
  );
};

const here = (parkedOn: CivilDate, end: CivilDate): string => `From ${dayInWords(parkedOn)} to ${dayInWords(end)}`;

const inWords = (from: string, rounds: StayHere['view']['rounds']): string => {
  const of = (state: string): number => rounds.filter((round) => round.state === state).length;
  return rounds.length === 0 ? from : `${from}: ${of('done')} rounds made, ${of('missed')} missed, ${of('due')} due`;
};

/** Made: filled. Missed: crossed out. Due or ahead: open. */
const RoundMark = ({ at, state }: { at: number; state: string }) => (
  <g>
    <rect x={at - 4} y={BASE - 9} width="8" height="8" class={state === 'done' ? 'ink' : 'open'} />
    {state === 'missed' && <path d={`M${at - 4} ${BASE - 9} l8 8 m0 -8 l-8 8`} class="year" />}
  </g>
);

const Months = ({ first, last, x }: { first: CivilDate; last: CivilDate; x(day: CivilDate): number }) => {
  const start = firstOfMonth(yearOf(first), Number(first.slice(5, 7)));
  const all = Array.from({ length: 140 }, (_, n) => addMonths(start, n)).filter((day) => day > first && day < last);
  const every = [1, 2, 3, 6, 12].find((step) => all.length / step <= 7) ?? 12;
  return (
    <>
      {all.map((day, index) => {
        const named = index % every === 0;
        const at = x(day);
        return (
          <>
            <line x1={at} x2={at} y1={BASE + 2} y2={BASE - (named ? 12 : 4)} class="year" />
            {named && at > 16 && at < WIDTH - 16 && (
              <text x={at} y={BASE + 16} class="number" text-anchor="middle">
                {MONTHS[Number(day.slice(5, 7)) - 1]?.slice(0, 3)}
              </text>
            )}
          </>
        );
      })}
    </>
  );
};
