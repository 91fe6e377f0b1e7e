/** All that stands behind a step of a return, as it is read before anybody begins. */
import type { RevivalHere } from '../../acts/revivals.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import { dayInWords } from '../../dates/words.ts';
import { SUPPLIES } from '../../money/supplies.ts';
import { hoursInWords, paidInWords, spanInWords } from '../../money/words.ts';
import type { RevivalStep } from '../../revival/plan.ts';
import type { Act } from '../../revival/step.ts';
import { A } from '../layout.tsx';
import { Sources } from '../sources.tsx';
import { pathOf } from './in-path.ts';

export const ACT_WORDS: Readonly<Record<Act, string>> = {
  do: 'Do',
  look: 'Look',
  test: 'Test',
  flush: 'Flush',
  strip: 'Strip',
  renew: 'Renew',
};

const STATES: Readonly<Record<RevivalStep['state'], string>> = {
  open: 'open',
  again: 'to be done again',
  done: 'done',
  'left out': 'left out',
};

export const StepLine = ({ here, step }: { here: RevivalHere; step: RevivalStep }) => {
  const settled = step.state === 'done' || step.state === 'left out';
  return (
    <li class={`step ${settled ? 'done' : 'open'}`} id={step.key}>
      <h3>
        <span class="box" aria-hidden="true">
          {step.state === 'done' ? '✓' : step.state === 'left out' ? '–' : ''}
        </span>{' '}
        <A to={pathOf(here, `/steps/${step.key}`)}>{step.way.title}</A>{' '}
        <small>
          {ACT_WORDS[step.way.act]}
          {step.safety && ' · safety'}
          {step.state !== 'open' && ` · ${STATES[step.state]}`}
        </small>
      </h3>
      {settled ? <SettledWords here={here} step={step} /> : <p>{step.way.why}</p>}
      {!settled && step.because.length > 0 && <p class="hint">Because {step.because.join('; ')}.</p>}
      {!settled && step.waits.length > 0 && (
        <p class="late">First: {step.waits.map(({ words }) => words).join('; ')}.</p>
      )}
      {!settled && <TakesWords here={here} step={step} />}
    </li>
  );
};

export const SettledWords = ({ here, step }: { here: RevivalHere; step: RevivalStep }) => {
  const { settled } = step;
  if (!settled) return null;
  const cost = settled.what === 'tick' && settled.cost !== null ? paidInWords(settled.cost, here.rates.currency) : null;
  const hours = settled.what === 'tick' && settled.hours !== null ? `${settled.hours} hours` : null;
  const told = [cost, hours].filter((words) => words !== null).join(', ');
  return (
    <p>
      {settled.what === 'tick' && settled.state === 'left out' ? 'Left out' : 'Done'} on {dayInWords(settled.day)} by{' '}
      {settled.by}
      {settled.note && `: ${settled.note.replace(/\.$/, '')}`}
      {told && ` (${told})`}.
      {settled.what === 'tick' && settled.despite && ' Done before what comes first, in writing.'}
    </p>
  );
};

const TakesWords = ({ here, step: { cost } }: { here: RevivalHere; step: RevivalStep }) =>
  cost.hours.high === 0 ? null : (
    <p class="hint">
      Own hands {hoursInWords(cost.ownHours)} and {spanInWords(cost.own, here.rates.currency)}; workshop{' '}
      {hoursInWords(cost.hours)} and {spanInWords(cost.workshop, here.rates.currency)}.
    </p>
  );

/** Why, what to expect, how to test, what it takes, what a failure means. */
export const StepFacts = ({ here, step }: { here: RevivalHere; step: RevivalStep }) => (
  <>
    {step.because.length > 0 && <p>In the plan because {step.because.join('; ')}.</p>}
    {step.expects.length > 0 && (
      <>
        <h2>What to expect</h2>
        <ul>
          {step.expects.map(({ finding, odds }) => (
            <li>
              {finding} <small>({odds}, after such a sleep)</small>
            </li>
          ))}
        </ul>
      </>
    )}
    {step.test && (
      <>
        <h2>How to tell</h2>
        <p>{step.test}</p>
      </>
    )}
    <h2>If it fails</h2>
    <p>{step.fails}</p>
    <h2>What it takes</h2>
    <TakesWords here={here} step={step} />
    {step.tools.length > 0 && <p>Tools: {step.tools.join(', ')}.</p>}
    {(step.way.supplies ?? []).length > 0 && (
      <ul>
        {(step.way.supplies ?? []).map((key) => (
          <li>
            {SUPPLIES[key].name} <small>({leadInWords(SUPPLIES[key].lead)})</small>
          </li>
        ))}
      </ul>
    )}
  </>
);

export const leadInWords = ([usual, worst]: readonly [number, number]): string =>
  worst <= 1 ? 'at once' : `usually ${usual} days from order, ${worst} at worst`;

export const StepCautions = ({ step }: { step: RevivalStep }) =>
  step.cautions.length === 0 ? null : (
    <ul class="caution">
      {step.cautions.map((key) => (
        <li>{CAUTIONS[key]}</li>
      ))}
    </ul>
  );

export const StepSources = ({ step }: { step: RevivalStep }) => (
  <details>
    <summary>Sources</summary>
    <Sources keys={step.sources} />
    <p class="hint">How often something is found, hours and money: from memory of common practice.</p>
  </details>
);
