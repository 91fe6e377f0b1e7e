/** Stage sheets for the bench or a workshop: each step with its reason, test, tools and lines to write on, then the gate. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { CAUTIONS, type CautionKey, DEFERS } from '../../../catalogue/cautions.ts';
import { dayInWords } from '../../../dates/words.ts';
import type { Gate } from '../../../revival/gates.ts';
import type { StagePlan } from '../../../revival/plan.ts';
import type { Stage } from '../../../revival/stages.ts';
import { isSettled } from '../../../revival/step-state.ts';
import { Blank, Box } from '../sheet.tsx';
import { shutBelow } from './shut-below.ts';
import { StageStep } from './stage-step.tsx';
import { Stopped } from './stopped.tsx';
import { withoutSums } from './without-sums.ts';

interface Shown {
  here: RevivalHere;
  stages: readonly StagePlan[];
  /** Left out for a workshop that makes its own. */
  prices: boolean;
}

export const StageSheets = ({ here, stages, prices }: Shown) => {
  const { currency } = here.rates;
  const told = (note: string): string => (prices ? note : withoutSums(note, currency));
  return (
    <>
      <Stopped plan={here.plan} />
      {stages.map((stage, index) => (
        // What is behind it needs no page of its own; what is still to do can hang at its bench.
        <section class={index > 0 && isToDo(stage) ? 'page-break' : undefined}>
          <h2>{stage.stage.name}</h2>
          <p>{stage.stage.why}</p>
          <Before here={here} stage={stage} />
          <Cautions keys={cautionsOf(stage)} />
          {stage.steps.length === 0 && <p>Nothing to do here on this car, by what is known of it.</p>}
          {stage.steps.map((step) => (
            <StageStep here={here} step={step} prices={prices} cautions={cautionsOf(stage)} told={told} />
          ))}
          <GateBox stage={stage} told={told} />
        </section>
      ))}
      {/* Where nothing is to do the stages have no cautions of their own. */}
      {!stages.some((stage) => cautionsOf(stage).length > 0) && <p class="defers">{DEFERS}</p>}
    </>
  );
};

const isToDo = ({ steps, gate }: StagePlan): boolean =>
  steps.some((step) => !isSettled(step)) || gate.state === 'shut' || gate.state === 'ready';

/** Of the steps still to do, each once; the steps name them by their number. */
const cautionsOf = ({ steps }: StagePlan): CautionKey[] => [
  ...new Set(steps.filter((step) => !isSettled(step)).flatMap(({ cautions }) => cautions)),
];

const Before = ({ here, stage }: { here: RevivalHere; stage: StagePlan }) => {
  const shut = (stage.stage as Stage).power ? shutBelow(here.plan, stage.key) : [];
  return shut.length === 0 ? null : (
    <p class="stopped">
      <b>Not before these gates are passed:</b> {shut.map(({ stage: { name } }) => name).join(' · ')}.
    </p>
  );
};

const Cautions = ({ keys }: { keys: readonly CautionKey[] }) =>
  keys.length === 0 ? null : (
    <section class="cautions">
      <h3>Before you work</h3>
      <ul>
        {keys.map((key, index) => (
          <li>
            <b>{index + 1}</b> {CAUTIONS[key]}
          </li>
        ))}
        <li>
          <b>{DEFERS}</b>
        </li>
      </ul>
    </section>
  );

const GateBox = ({ stage: { stage, gate }, told }: { stage: StagePlan; told: (note: string) => string }) => {
  const held = gate.state === 'passed' || gate.state === 'in writing';
  return (
    <div class="gate-box">
      <p>
        <b>
          Gate{gate.safety && ' (safety)'}: {stage.gate}.
        </b>
      </p>
      {gate.pass && <p>{passInWords(gate, held, told)}</p>}
      {gate.state === 'in writing' && (
        <p>
          <b>In writing only: it clears nothing for the road.</b> What it lacked:{' '}
          {gate.written.map(({ words }) => words).join(' ')}
        </p>
      )}
      {!held && (
        <p class="sign">
          <span>
            <Box /> passed
          </span>
          <span>
            <Box /> fix first
          </span>
          <span>
            <Box /> stop and ask
          </span>{' '}
          <span>
            Name <Blank /> Day <Blank />
          </span>
        </p>
      )}
    </div>
  );
};

const passInWords = ({ pass }: Gate, held: boolean, told: (note: string) => string): string => {
  if (!pass) return '';
  const note = pass.note === '' ? '' : `: ${told(pass.note).replace(/\.$/, '')}`;
  const since = held ? '' : '; something came up since';
  return `${held ? 'Passed' : 'It was passed'} on ${dayInWords(pass.day)} by ${pass.by}${note}${since}.`;
};
