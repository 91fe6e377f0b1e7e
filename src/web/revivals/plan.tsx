/** One return: where it stands, what stops it, its stages with their gates, its money. */
import type { Fault } from '../../acts/fault.ts';
import { isOver, type RevivalHere } from '../../acts/revivals.ts';
import { decideStop } from '../../acts/work-revival.ts';
import { dayInWords } from '../../dates/words.ts';
import { spanInWords } from '../../money/words.ts';
import type { RevivalStep, StagePlan } from '../../revival/plan.ts';
import { WHY_PARKED } from '../../revival/sleep.ts';
import { isSettled } from '../../revival/step-state.ts';
import { STOPS, type Stop, type StopKey } from '../../revival/stops.ts';
import { readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { STOP_FORM } from './forms.ts';
import { pathOf, revivalInPath } from './in-path.ts';
import { GATE_WORDS, GateMark, MoneyTable, progressOf, sleptInWords, stageAtHand } from './words.tsx';

export const revivalPage = (c: Ctx) => {
  const here = revivalInPath(c);
  return here ? show(c, here, [], {}) : notFound(c, 'return');
};

type StopGiven = { stop?: string; by?: string; note?: string; ceiling?: string };

const show = (c: Ctx, here: RevivalHere, faults: readonly Fault[], given: StopGiven) =>
  page(
    c,
    `Return of ${here.found.car.name}`,
    <Return here={here} faults={faults} given={given} />,
    faults.length > 0 ? 422 : 200,
  );

export const decideStopPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = revivalInPath(c);
  const stop = c.req.param('stop') ?? '';
  if (!here || !Object.hasOwn(STOPS, stop)) return notFound(c, 'stop');
  const form = await readForm(c, STOP_FORM);
  const outcome = decideStop(c.get('around').store, actingIn(visit), here, stop as StopKey, {
    ...form,
    day: form.day || visit.on,
  });
  if (!outcome.ok) return show(c, here, outcome.faults, { ...form, stop });
  return c.redirect(at(visit, pathOf(here)), 303);
};

const Return = ({ here, faults, given }: { here: RevivalHere; faults: readonly Fault[]; given: StopGiven }) => {
  const { found, plan, record } = here;
  const { on } = useVisit();
  const { row } = record;
  const over = isOver(record, on);
  const hand = stageAtHand(plan);
  const dated = plan.stages.flatMap(({ steps }) => steps).filter((step) => !isSettled(step) && step.due);
  return (
    <>
      <p class="crumb">
        <A to="/revivals">Return to road</A> · <A to={`/cars/${found.car.id}`}>{found.car.name}</A>
      </p>
      <h1>Return of {found.car.name}</h1>
      <p class="lede">{sleptInWords(plan)}</p>
      <p>
        Why it was parked: {WHY_PARKED[row.why].toLowerCase()}
        {row.whyWords && ` (“${row.whyWords}”, ${row.whyBy})`}.{' '}
        {!over && <A to={pathOf(here, '/change')}>Change how it slept</A>}
      </p>
      {over && row.closedOn && (
        <p class="note">
          {ENDED[row.closedHow ?? 'given up']} on {dayInWords(row.closedOn)}.
        </p>
      )}
      {!found.car.ours && <p class="note">It is not ours: only looked at. No letter speaks of it.</p>}
      <FaultSummary faults={faults} />
      {plan.stops.map((stop) => (
        <StopShown here={here} stop={stop} over={over} faults={faults} given={given} />
      ))}
      {!over && hand && <AtHand here={here} stage={hand} />}
      {!over && dated.length > 0 && <Dated here={here} steps={dated} />}
      <p>
        <A to={pathOf(here, '/survey')}>First look</A> · <A to={pathOf(here, '/verdict')}>Verdict</A> ·{' '}
        <A to={`/cars/${found.car.id}/road-check`}>Road check</A> · <A to={pathOf(here, '/journal')}>Journal</A> ·{' '}
        <A to={pathOf(here, '/sheets/stages')}>Sheets to print</A>
      </p>
      <section aria-labelledby="stages">
        <h2 id="stages">Stages, each with its gate</h2>
        <ol class="stages">
          {plan.stages.map((stage) => (
            <StageLine here={here} stage={stage} />
          ))}
        </ol>
      </section>
      <section aria-labelledby="money">
        <h2 id="money">Money and hours</h2>
        <MoneyTable here={here} />
      </section>
      {!over && (
        <p class="call">
          <A to={pathOf(here, '/end')} class="button quiet">
            End it: on the road, or given up
          </A>
        </p>
      )}
    </>
  );
};

const ENDED = {
  'on the road': 'Back on the road',
  'given up': 'Given up',
  'not bought': 'Let go, not bought',
} as const;

const AtHand = ({ here, stage }: { here: RevivalHere; stage: StagePlan }) => {
  const next = stage.steps.find((step) => !isSettled(step) && step.waits.length === 0);
  return (
    <section class="at-hand" aria-labelledby="at-hand">
      <h2 id="at-hand">At hand: {stage.stage.name}</h2>
      <p>{stage.stage.why}</p>
      <p class="call">
        <A to={next ? pathOf(here, `/steps/${next.key}`) : pathOf(here, `/stages/${stage.key}#gate`)} class="button">
          {next ? next.way.title : `Its gate: ${GATE_WORDS[stage.gate.state].toLowerCase()}`}
        </A>
      </p>
      {stage.gate.state === 'shut' && (
        <details>
          <summary>What its gate still asks for ({stage.gate.lacks.length})</summary>
          <ul>
            {stage.gate.lacks.map(({ words }) => (
              <li>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};

const Dated = ({ here, steps }: { here: RevivalHere; steps: readonly RevivalStep[] }) => (
  <section aria-labelledby="dated">
    <h2 id="dated">Due after what was driven</h2>
    <ul>
      {steps.map(({ key, way, due }) => (
        <li>
          <A to={pathOf(here, `/steps/${key}`)}>{way.title}</A>
          {due && `: ${dueInWords(due)}`}
        </li>
      ))}
    </ul>
  </section>
);

/** “after 80 to 160 km, by 3 May 2027 at the latest”. */
export const dueInWords = ({ day, km, odometer }: NonNullable<RevivalStep['due']>): string => {
  const distance = km ? `after ${km[0]} to ${km[1]} km` : '';
  const read = odometer
    ? ` (at ${odometer[0].toLocaleString('en-US')} to ${odometer[1].toLocaleString('en-US')} km)`
    : '';
  const by = day ? `by ${dayInWords(day)} at the latest` : 'once it has been driven';
  return [`${distance}${read}`, by].filter((words) => words !== '').join(', ');
};

const StageLine = ({ here, stage }: { here: RevivalHere; stage: StagePlan }) => (
  <li class={`stage ${stage.gate.state.replace(' ', '-')}`} id={stage.key}>
    <h3>
      <A to={pathOf(here, `/stages/${stage.key}`)}>{stage.stage.name}</A>
    </h3>
    <p>
      {progressOf(stage.steps)}
      {stage.money.open.workshop.high > 0 && (
        <>
          {' · '}still {spanInWords(stage.money.open.own, here.rates.currency)} own,{' '}
          {spanInWords(stage.money.open.workshop, here.rates.currency)} workshop
        </>
      )}
    </p>
    <p class="gate-line">
      <GateMark gate={stage.gate} /> {GATE_WORDS[stage.gate.state]}
      {stage.gate.safety && ' · safety'}
    </p>
  </li>
);

const StopShown = ({
  here,
  stop,
  over,
  faults,
  given,
}: {
  here: RevivalHere;
  stop: Stop;
  over: boolean;
  faults: readonly Fault[];
  given: StopGiven;
}) => {
  const { person } = useVisit();
  const mine = given.stop === stop.key ? faults : [];
  const own = given.stop === stop.key ? given : {};
  return (
    <section class="stop" aria-labelledby={`stop-${stop.key}`}>
      <h2 id={`stop-${stop.key}`}>Stop: {stop.words}</h2>
      {stop.decided && (
        <p>
          {stop.decided.by} decided on {dayInWords(stop.decided.day)} to go on: {stop.decided.reason}
        </p>
      )}
      {!stop.decided && !over && (
        <details open={mine.length > 0}>
          <summary>Go on all the same, in writing</summary>
          <Post to={pathOf(here, `/stops/${stop.key}`)} class="stacked">
            {stop.key === 'ceiling' && (
              <>
                <label>
                  New ceiling, {here.rates.currency}
                  <input name="ceiling" inputmode="decimal" value={own.ceiling ?? ''} {...faultsOf(mine, 'ceiling')} />
                </label>
                <Faults faults={mine} field="ceiling" />
              </>
            )}
            <label>
              Name
              <input name="by" value={own.by ?? person.name} autocomplete="off" {...faultsOf(mine, 'by')} />
            </label>
            <Faults faults={mine} field="by" />
            <label>
              Reason
              <textarea name="note" rows={2} {...faultsOf(mine, 'note')}>
                {own.note ?? ''}
              </textarea>
            </label>
            <Faults faults={mine} field="note" />
            <Faults faults={mine} field="stop" />
            <button class="quiet">Go on</button>
          </Post>
        </details>
      )}
    </section>
  );
};
