/** The steps of a plan by their days, each with its figures, a way to tick it and all that stands behind it. */

import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { figureInWords } from '../../plans/figures/figure.ts';
import type { Plan, PlanName, PlanStep } from '../../plans/plan.ts';
import { A, Post } from '../layout.tsx';
import { Sources } from '../sources.tsx';
import { BothSides } from './sides.tsx';
import { before, dayWithName, phaseName, stepPath, withoutEnd } from './step-words.ts';

interface Shown {
  layUpId: string;
  plan: Plan;
  anchor: CivilDate;
  on: CivilDate;
  closed: boolean;
  /** Whether its days are over: then none is late by itself. */
  over?: boolean;
}

export const StepList = ({ layUpId, plan, anchor, on, closed, over = false }: Shown) => (
  <>
    {[...Map.groupBy(plan.steps, ({ day }) => day)].map(([day, steps]) => (
      <section class="plan-day" aria-labelledby={`on-${day}`}>
        <h2 id={`on-${day}`}>
          {dayWithName(day)} <small>{before(day, anchor)}</small>
        </h2>
        <ol>
          {steps.map((step) => (
            <StepLine layUpId={layUpId} name={plan.name} step={step} on={over ? null : on} closed={closed} />
          ))}
        </ol>
      </section>
    ))}
  </>
);

const StepLine = ({
  layUpId,
  name,
  step,
  on,
  closed,
}: {
  layUpId: string;
  name: PlanName;
  step: PlanStep;
  /** Day by which it is late; null: none. */
  on: CivilDate | null;
  closed: boolean;
}) => (
  <li class={`step ${step.tick?.state ?? 'open'}`} id={step.key}>
    <h3>
      <span class="box" aria-hidden="true">
        {step.tick?.state === 'done' ? '✓' : step.tick ? '–' : ''}
      </span>{' '}
      <A to={stepPath(layUpId, name, step.key)}>{step.title}</A> <small>{phaseName(step)}</small>
    </h3>
    {step.tick ? <TickWords step={step} /> : <p>{step.why}</p>}
    {step.tick === null && on !== null && step.day < on && <p class="late">Its day was {dayInWords(step.day)}.</p>}
    {step.tick === null && <StepFacts step={step} />}
    {step.tick === null && <AtHand step={step} />}
    <div class="actions">
      {step.tick === null && !closed && isQuick(step) && (
        <Post to={`${stepPath(layUpId, name, step.key)}/done`} class="inline">
          <input type="hidden" name="quick" value="on" />
          <button class="quiet">
            Done<span class="unseen">: {step.title}</span>
          </button>
        </Post>
      )}
      {step.tick === null && !closed && !isQuick(step) && (
        <A to={stepPath(layUpId, name, step.key)} class="button quiet">
          Done, with details<span class="unseen">: {step.title}</span>
        </A>
      )}
      <details>
        <summary>
          {step.topic ? 'Why, and both sides' : 'Why'}
          <span class="unseen">: {step.title}</span>
        </summary>
        <Behind layUpId={layUpId} name={name} step={step} closed={closed} />
      </details>
    </div>
  </li>
);

/** What writes nothing into the records needs no question: it can be ticked where it stands. */
export const isQuick = ({ records: { renews, services, uses, reads, odometer } }: PlanStep): boolean =>
  !renews && !services && !uses && !reads && !odometer;

const TickWords = ({ step: { tick, applies, records } }: { step: PlanStep }) =>
  tick === null ? null : (
    <p>
      {tick.state === 'done' ? 'Done' : 'Left out'} on {dayInWords(tick.day)} by {tick.by}
      {tick.note && `: ${withoutEnd(tick.note)}`}
      {tick.cost !== null && ` (cost ${tick.cost})`}.{/* What was renewed is what had brought it in. */}
      {!applies && !(tick.state === 'done' && records.renews) && ' By what is known today it would not be in the plan.'}
    </p>
  );

/** What it takes, and what to mind: in sight before anybody begins. */
const AtHand = ({ step: { minutes, needs, cautions } }: { step: PlanStep }) => (
  <>
    {(minutes !== null && minutes > 0) || needs.length > 0 ? (
      <p class="hint">
        {minutes !== null && minutes > 0 && `About ${count(minutes, 'minute')}. `}
        {needs.length > 0 && `Needs: ${needs.join(', ')}.`}
      </p>
    ) : null}
    {cautions.length > 0 && (
      <ul class="caution">
        {cautions.map((key) => (
          <li>{CAUTIONS[key]}</li>
        ))}
      </ul>
    )}
  </>
);

/** Figures and lines about this car. */
export const StepFacts = ({ step: { figures, lines } }: { step: PlanStep }) => (
  <>
    {figures.map((figure) => (
      <p class="figure">
        <strong>{figureInWords(figure)}</strong> <span class="hint">{figure.says.join(' ')}</span>
      </p>
    ))}
    {lines.length > 0 && (
      <ul class="lines">
        {lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    )}
  </>
);

export const Behind = ({
  layUpId,
  name,
  step,
  closed,
}: {
  layUpId: string;
  name: PlanName;
  step: PlanStep;
  closed: boolean;
}) => (
  <>
    {step.tick && <p>{step.why}</p>}
    {step.phase !== 'own' && (
      <p>{step.because.length > 0 ? `In the plan because: ${step.because.join('; ')}.` : 'Every car gets it.'}</p>
    )}
    {step.topic && <BothSides layUpId={layUpId} topic={step.topic} side={step.side} back={name} closed={closed} />}
    <Sources keys={step.sources} />
  </>
);
