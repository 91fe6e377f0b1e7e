/** The returns of a car to the road: how it slept, what became of the gates, and the journal. */
import { isOver, type RevivalHere } from '../../../acts/revivals.ts';
import type { CivilDate } from '../../../dates/civil.ts';
import { dayInWords } from '../../../dates/words.ts';
import { paidInWords } from '../../../money/words.ts';
import type { Entry } from '../../../revival/journal.ts';
import type { RevivalPlan, StagePlan } from '../../../revival/plan.ts';
import { WHY_PARKED } from '../../../revival/sleep.ts';
import { STOPS, type StopKey } from '../../../revival/stops.ts';
import { saidInWords } from '../../revivals/journal.tsx';
import { sleptInWords } from '../../revivals/words.tsx';
import { withoutSums } from './without-sums.ts';

interface Shown {
  returns: readonly RevivalHere[];
  prices: boolean;
  on: CivilDate;
}

export const FileReturns = ({ returns, prices, on }: Shown) => (
  <>
    {returns.map((here) => (
      <Return here={here} prices={prices} on={on} />
    ))}
  </>
);

const Return = ({ here, prices, on }: { here: RevivalHere; prices: boolean; on: CivilDate }) => {
  const { plan, record, rates } = here;
  const { row } = record;
  const told = (note: string): string => (prices ? note : withoutSums(note, rates.currency));
  return (
    <section>
      <h2>Return to the road, begun {dayInWords(row.begunOn)}</h2>
      <p>
        <b>
          {isOver(record, on) && row.closedOn
            ? `Ended on ${dayInWords(row.closedOn)}: ${row.closedHow}.`
            : 'It is still on its way.'}
        </b>{' '}
        {sleptInWords(plan)} That is known by: {row.lastRanBy}. Why it was parked: {WHY_PARKED[row.why].toLowerCase()}
        {row.whyWords && `, “${told(row.whyWords)}”`} ({row.whyBy}).
      </p>
      {prices && <p>Spent, as far as it was told: {paidInWords(plan.money.spent, rates.currency)}.</p>}
      <h3>Gates</h3>
      <ul class="dense">
        {gatesInWords(plan, told).map((words) => (
          <li>{words}</li>
        ))}
      </ul>
      <h3>Journal</h3>
      {plan.entries.length === 0 ? (
        <p>Nothing was written down.</p>
      ) : (
        <ul class="dense">
          {plan.entries
            .filter((entry) => prices || !isOfMoney(entry))
            .map((entry) => (
              <li>
                {dayInWords(entry.day)}, {entry.by}: {entryInWords(entry, prices, rates.currency)}
                {entry.note && ` “${told(entry.note)}”`}
              </li>
            ))}
        </ul>
      )}
    </section>
  );
};

const namesOf = (stages: readonly StagePlan[]): string =>
  stages.map(({ stage, gate }) => `${stage.name}${gate.safety ? ' (safety)' : ''}`).join(' · ');

/** What was passed in writing is said plainly, with what it lacked; what rests on it is named. */
const gatesInWords = ({ stages }: RevivalPlan, told: (note: string) => string): string[] => {
  const written = stages.filter(({ gate }) => gate.state === 'in writing');
  const own = written.filter(({ gate }) => (gate.pass?.despite.length ?? 0) > 0);
  const resting = written.filter((stage) => !own.includes(stage));
  const shut = stages.filter(({ gate }) => gate.state === 'shut' || gate.state === 'ready');
  const passed = stages.filter(({ gate }) => gate.state === 'passed');
  return [
    ...own.flatMap(({ stage, gate: { pass, written: lacks, safety } }) =>
      pass
        ? [
            `${stage.name}${safety ? ' (safety)' : ''}: passed in writing only, on ${dayInWords(pass.day)} by ${pass.by}. It lacked: ${lacks
              .filter(({ key }) => pass.despite.includes(key))
              .map(({ words }) => words)
              .join(' ')} Reason given: ${told(pass.note)}`,
          ]
        : [],
    ),
    ...(resting.length > 0 ? [`Passed, but resting on what was passed in writing: ${namesOf(resting)}.`] : []),
    ...(shut.length > 0 ? [`Not passed: ${namesOf(shut)}.`] : []),
    ...(passed.length > 0 ? [`Passed on their evidence: ${namesOf(passed)}.`] : []),
  ];
};

/** A ceiling is a matter of money; any other decision is one of fact. */
const isOfMoney = (entry: Entry): boolean => entry.what === 'decision' && entry.stop === 'ceiling';

const entryInWords = (entry: Entry, prices: boolean, currency: string): string => {
  switch (entry.what) {
    case 'decision':
      return `${saidInWords(prices ? entry : { ...entry, ceiling: null }, currency)} It had stopped: ${STOPS[entry.stop as StopKey]}`;
    case 'tick':
      return `${saidInWords(prices ? entry : { ...entry, cost: null }, currency)}${entry.despite ? ' Before what comes first, in writing.' : ''}`;
    default:
      return saidInWords(entry, currency);
  }
};
