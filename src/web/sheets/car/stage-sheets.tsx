/** Stage sheets for the bench or a workshop: each step with its reason, test, tools and lines to write on. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { dayInWords } from '../../../dates/words.ts';
import { SUPPLIES } from '../../../money/supplies.ts';
import { hoursInWords, spanInWords } from '../../../money/words.ts';
import type { RevivalStep, StagePlan } from '../../../revival/plan.ts';
import { isSettled } from '../../../revival/step-state.ts';
import { Blank, Box } from '../sheet.tsx';

interface Shown {
  here: RevivalHere;
  stages: readonly StagePlan[];
  /** Left out for a workshop that makes its own. */
  prices: boolean;
}

export const StageSheets = ({ here, stages, prices }: Shown) => (
  <>
    {stages.map((stage, index) => (
      <section class={index > 0 ? 'page-break' : undefined}>
        <h2>{stage.stage.name}</h2>
        <p>{stage.stage.why}</p>
        {stage.steps.length === 0 && <p>Nothing to do here on this car, by what is known of it.</p>}
        {stage.steps.map((step) => (
          <Work here={here} step={step} prices={prices} />
        ))}
        <div class="gate-box">
          <b>Gate: {stage.stage.gate}.</b>
          {stage.gate.state === 'in writing' && <p>Passed in writing only: it clears nothing for the road.</p>}
          {stage.gate.state === 'passed' && stage.gate.pass && (
            <p>
              Passed on {dayInWords(stage.gate.pass.day)} by {stage.gate.pass.by}.
            </p>
          )}
          <p class="sign">
            <span>
              <Box /> passed
            </span>
            <span>
              <Box /> fix first
            </span>
            <span>
              <Box /> stop and ask
            </span>
            <span>
              Name <Blank /> Day <Blank />
            </span>
          </p>
        </div>
      </section>
    ))}
  </>
);

const Work = ({ here, step, prices }: { here: RevivalHere; step: RevivalStep; prices: boolean }) => {
  const { way, because, expects, test, tools, fails, cost, settled } = step;
  const done = isSettled(step);
  return (
    <div class="work">
      <Box state={step.state === 'done' ? 'done' : step.state === 'left out' ? 'skipped' : 'open'} />
      <div>
        <b>{way.title}</b>
        {step.safety && ' (safety)'}
        {done && settled ? (
          <p>
            {step.state === 'done' ? 'Done' : 'Left out'} on {dayInWords(settled.day)} by {settled.by}
            {settled.note && `: ${settled.note}`}
          </p>
        ) : (
          <>
            <p>
              {way.why}
              {because.length > 0 && ` Because ${because.slice(0, 2).join('; ')}.`}
            </p>
            {expects.length > 0 && (
              <p>Expect: {expects.map(({ finding, odds }) => `${finding.toLowerCase()} (${odds})`).join('; ')}.</p>
            )}
            {test && <p>Tell by: {test}</p>}
            <p>If it fails: {fails}</p>
            <p>
              {tools.length > 0 && `Tools: ${tools.join(', ')}. `}
              {(way.supplies ?? []).length > 0 &&
                `Needs: ${(way.supplies ?? []).map((key) => SUPPLIES[key].name).join(', ')}. `}
              {cost.hours.high > 0 && `A workshop takes ${hoursInWords(cost.hours)}`}
              {cost.hours.high > 0 && prices && `, ${spanInWords(cost.workshop, here.rates.currency)} with parts`}
              {cost.hours.high > 0 && '.'}
            </p>
          </>
        )}
      </div>
      <div class="write">
        <p>
          Found <Blank />
        </p>
        <p>
          Measured <Blank />
        </p>
        <p>
          Who, day <Blank />
        </p>
        <p>
          Hours <Blank />
        </p>
      </div>
    </div>
  );
};
