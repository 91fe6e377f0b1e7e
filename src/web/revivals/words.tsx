/** Words and small drawings the pages of a return share. */
import type { RevivalHere } from '../../acts/revivals.ts';
import { count, dayInWords } from '../../dates/words.ts';
import type { Rates } from '../../money/cost.ts';
import { hoursInWords, paidInWords, spanInWords } from '../../money/words.ts';
import type { Gate, GateState } from '../../revival/gates.ts';
import type { Money } from '../../revival/money.ts';
import type { RevivalPlan, RevivalStep, StagePlan } from '../../revival/plan.ts';
import { isSettled } from '../../revival/step-state.ts';
import { ceilingOf } from '../../revival/stops.ts';
import { asleepInWords } from '../../revival/when.ts';

export const GATE_WORDS: Readonly<Record<GateState, string>> = {
  shut: 'Gate shut',
  ready: 'Gate can be passed',
  passed: 'Gate passed',
  'in writing': 'Passed in writing',
};

/** A bar across the way: closed, on the latch, swung open, or swung open with a note pinned to it. */
export const GateMark = ({ gate }: { gate: Gate }) => (
  <svg class="gate-mark" viewBox="0 0 36 20" width="36" height="20" aria-hidden="true">
    <line x1="3" y1="2" x2="3" y2="18" class="post" />
    <line x1="33" y1="2" x2="33" y2="18" class="post" />
    {gate.state === 'shut' && <path d="M3 7H33M3 13H33" class="bar" />}
    {gate.state === 'ready' && <path d="M3 10H33" class="bar" stroke-dasharray="4 3" />}
    {(gate.state === 'passed' || gate.state === 'in writing') && <path d="M3 10L15 2" class="bar" />}
    {gate.state === 'in writing' && <rect x="17" y="7" width="10" height="10" class="post" fill="none" />}
  </svg>
);

export const progressOf = (steps: readonly RevivalStep[]): string =>
  steps.length === 0 ? 'nothing to do here' : `${steps.filter(isSettled).length} of ${count(steps.length, 'step')}`;

/** The first stage whose gate is not passed: where the work is. */
export const stageAtHand = ({ stages }: RevivalPlan): StagePlan | undefined =>
  stages.find(({ gate }) => gate.state === 'shut' || gate.state === 'ready');

export const sleptInWords = ({ row }: RevivalPlan): string => {
  const { from, to } = row.since;
  const since =
    from === null
      ? 'Nobody knows since when it stands'
      : from === to
        ? `It stands since ${dayInWords(from)}`
        : `It stands since ${to ? `some day between ${dayInWords(from)} and ${dayInWords(to)}` : `${dayInWords(from)} at the earliest`}`;
  const moved = row.shifts.map(({ by, why }) => `${why}: so it counts ${by > 0 ? 'longer' : 'shorter'}`);
  return `${since}; ${asleepInWords(row.years)}${moved.length > 0 ? ` (${moved.join('; ')})` : ''}.`;
};

/** What was spent and what is to come, against the ceiling. */
export const MoneyTable = ({ here }: { here: RevivalHere }) => {
  const { plan, rates } = here;
  const { money } = plan;
  const ceiling = ceilingOf(plan.entries, plan.revival);
  return (
    <>
      <section class="scroll" tabindex={0} aria-label="Money and hours, table">
        <table class="money">
          <caption class="unseen">Money and hours from low to high</caption>
          <thead>
            <tr>
              <th scope="col">Money and hours</th>
              <th scope="col">Own hands</th>
              <th scope="col">Workshop</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Still to come, money</th>
              <td>{spanInWords(money.open.own, rates.currency)}</td>
              <td>{spanInWords(money.open.workshop, rates.currency)}</td>
            </tr>
            <tr>
              <th scope="row">Kept for what shows itself</th>
              <td>{spanInWords(money.reserve.own, rates.currency)}</td>
              <td>{spanInWords(money.reserve.workshop, rates.currency)}</td>
            </tr>
            <tr>
              <th scope="row">Hours</th>
              <td>{hoursInWords(money.open.ownHours)}</td>
              <td>{hoursInWords(money.open.hours)}</td>
            </tr>
          </tbody>
        </table>
      </section>
      <p>
        Spent so far: {paidInWords(money.spent, rates.currency)}
        {money.hours > 0 && `, ${money.hours} own hours`}
        {money.untold > 0 && `; nobody said what ${count(money.untold, 'step')} did cost`}. With what is to come:{' '}
        <strong>{spanInWords(money.total, rates.currency)}</strong>
        {ceiling !== null &&
          ` against a ceiling of ${paidInWords(ceiling, rates.currency)}: ${against(money, ceiling)}`}
        .
      </p>
      <p class="hint">
        From memory of common practice for an ordinary car, without body and engine rebuilding; parts dear and rare cost
        half as much again to three times. Never a quote. Rates: {ratesInWords(rates)}.
      </p>
    </>
  );
};

export const against = ({ total }: Money, ceiling: number): string => {
  if (total.low > ceiling) return 'it passes it even at the lowest figures';
  return total.high > ceiling ? 'the high end is above it' : 'within it, by these figures';
};

const ratesInWords = ({ currency, labor }: Rates): string =>
  `${paidInWords(labor.low, currency)} to ${paidInWords(labor.high, currency)} for a workshop’s hour`;
