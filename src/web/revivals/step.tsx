/** One step of a return: what stands behind it, and the form that settles it: a tick, a road test or a leak survey. */
import { effectsOf } from '../../acts/effects.ts';
import type { Fault, Outcome } from '../../acts/fault.ts';
import { isOver } from '../../acts/revivals.ts';
import { leaveOut, takeBackStep, tickRevivalStep } from '../../acts/work-revival.ts';
import { isSettled } from '../../revival/step-state.ts';
import { notADistance, readDistance, readForm } from '../forms.ts';
import { TICK_FORM, type TickForm } from '../lay-ups/forms.ts';
import { TickFields } from '../lay-ups/tick-fields.tsx';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { fieldOf } from '../pages/reading-field.tsx';
import { besideFields, readingsIn } from '../reading-form.ts';
import { answersIn } from '../renewal-answers.ts';
import { actingIn, at, type Ctx } from '../visit.ts';
import { Despite } from './despite.tsx';
import { LEAVE_FORM, looksIn } from './forms.ts';
import { backTo, type Given, pathOf, type StepShown, stepInPath } from './in-path.ts';
import { LeaksForm } from './leaks-form.tsx';
import { LookField } from './look-field.tsx';
import { dueInWords } from './plan.tsx';
import { RunForm } from './run-form.tsx';
import { SettledWords, StepCautions, StepFacts, StepSources } from './step-facts.tsx';

export const revivalStepPage = (c: Ctx) => {
  const found = stepInPath(c);
  return found ? showStep(c, found, {}, []) : notFound(c, 'step');
};

export const tickPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  if (!found) return notFound(c, 'step');
  const { here, step } = found;
  const form = await readForm(c, TICK_FORM);
  // Pressed twice, it was done once.
  if (isSettled(step)) return c.redirect(at(visit, backTo(found)), 303);
  const km = form.distance === '' ? null : readDistance(form.distance);
  const { effects, ...fields } = form;
  const given = { ...fields, day: form.day || visit.on };
  const text = (name: string): string => fields[name] ?? '';
  const outcome: Outcome<null> =
    km === null && form.distance !== ''
      ? { ok: false, faults: [notADistance(form.distance)] }
      : tickRevivalStep(
          c.get('around').store,
          actingIn(visit),
          here,
          step,
          {
            day: given.day,
            by: form.by === visit.person.name ? '' : form.by,
            note: form.note,
            cost: form.cost,
            hours: text('hours'),
            despite: text('despite'),
            evidence: form.evidence,
            km,
            effects,
            answers: answersIn(form),
            readings: readingsIn(given, given.day),
            looks: looksIn(form),
          },
          (one) => fieldOf(one.partId, one.gauge),
        );
  if (!outcome.ok) return showStep(c, found, form, besideFields(outcome.faults, fields));
  return c.redirect(at(visit, backTo(found)), 303);
};

export const leaveOutPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  if (!found) return notFound(c, 'step');
  const { day, by, reason } = await readForm(c, LEAVE_FORM);
  const outcome = leaveOut(c.get('around').store, actingIn(visit), found.here, found.step, {
    day: day || visit.on,
    by: by === visit.person.name ? '' : by,
    note: reason,
  });
  if (!outcome.ok) return showStep(c, found, { reason }, outcome.faults);
  return c.redirect(at(visit, backTo(found)), 303);
};

export const takeBackPage = (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  if (!found) return notFound(c, 'step');
  const outcome = takeBackStep(c.get('around').store, actingIn(visit), found.here, found.step);
  if (!outcome.ok) return showStep(c, found, {}, outcome.faults);
  return c.redirect(at(visit, pathOf(found.here, `/steps/${found.step.key}`)), 303);
};

export const showStep = (c: Ctx, found: StepShown, given: Given, faults: readonly Fault[]) =>
  page(c, found.step.way.title, <Step {...found} given={given} faults={faults} />, faults.length > 0 ? 422 : 200);

const Step = ({ here, step, given, faults }: StepShown & { given: Given; faults: readonly Fault[] }) => {
  const { on } = useVisit();
  const { way } = step;
  const open = !isOver(here.record, on) && !isSettled(step);
  const stage = here.plan.stages.find(({ key }) => key === step.stage);
  return (
    <>
      <p class="crumb">
        <A to={pathOf(here)}>Return of {here.found.car.name}</A> ·{' '}
        <A to={pathOf(here, `/stages/${step.stage}#${step.key}`)}>{stage?.stage.name}</A>
      </p>
      <h1>{way.title}</h1>
      <p class="lede">{way.why}</p>
      {step.due && <p>Due {dueInWords(step.due)}.</p>}
      <CardOf here={here} step={step} />
      <FaultSummary faults={faults} kept="Nothing was saved yet, and what you typed is kept." />
      <Faults faults={faults} field="step" />
      <StepCautions step={step} />
      {step.state === 'again' && (
        <div class="note">
          <SettledWords here={here} step={step} />
          <p>It came back: {step.because.join('; ')}.</p>
        </div>
      )}
      {isSettled(step) && (
        <div class="note">
          <SettledWords here={here} step={step} />
          {!isOver(here.record, on) && (
            <Post to={pathOf(here, `/steps/${step.key}/take-back`)} class="inline">
              <button class="link">Take that back</button>
            </Post>
          )}
          {effectsOf(way, here.found.parts).length > 0 && (
            <p class="hint">What it wrote into the car’s records stays there, and is taken back there.</p>
          )}
        </div>
      )}
      <StepFacts here={here} step={step} />
      {open && step.waits.length > 0 && (
        <div class="note">
          <p>Before it:</p>
          <ul>
            {step.waits.map(({ words }) => (
              <li>{words}</li>
            ))}
          </ul>
        </div>
      )}
      {open && step.run && <RunForm here={here} step={step} run={step.run} given={given} faults={faults} />}
      {(open || (step.survey && !isOver(here.record, on))) && step.survey && (
        <LeaksForm here={here} step={step} survey={step.survey} given={given} faults={faults} />
      )}
      {open && !step.run && !step.survey && <TickOff here={here} step={step} given={given} faults={faults} />}
      {open && (
        <details open={faults.some(({ field }) => field === 'reason')}>
          <summary>Leave it out, and say why</summary>
          {step.safety && <p class="hint">It is a step of safety: left out, its gate opens in writing only.</p>}
          <Post to={pathOf(here, `/steps/${step.key}/leave-out`)} class="stacked">
            <label>
              Reason
              <input name="reason" value={String(given['reason'] ?? '')} {...faultsOf(faults, 'reason')} />
            </label>
            <Faults faults={faults} field="reason" />
            <button class="quiet">Leave it out</button>
          </Post>
        </details>
      )}
      <StepSources step={step} />
    </>
  );
};

/** The card that lies beside the work, where it has one. */
const CardOf = ({ here, step }: StepShown) => {
  const card = step.run || step.survey ? 'road-tests' : step.stage === 'first-start' ? 'first-start' : null;
  const name = card === 'road-tests' ? 'Road-test card with the leak map, to print' : 'First-start card, to print';
  return (
    card && (
      <p>
        <A to={pathOf(here, `/sheets/${card}`)}>{name}</A>
      </p>
    )
  );
};

const TickOff = ({ here, step, given, faults }: StepShown & { given: Given; faults: readonly Fault[] }) => (
  <section aria-labelledby="done">
    <h2 id="done">Tick it off</h2>
    <Post to={pathOf(here, `/steps/${step.key}/done`)} class="stacked">
      {(step.asks ?? []).map((look) => (
        <LookField
          look={look}
          given={String(given[`look.${look}`] ?? '')}
          faults={faults}
          last={here.plan.picture.answers.get(look)?.answer}
        />
      ))}
      <TickFields
        parts={here.found.parts}
        records={{
          ...(step.way.renews ? { renews: step.way.renews } : {}),
          ...(step.way.services ? { services: step.way.services } : {}),
          ...(step.way.uses ? { uses: step.way.uses } : {}),
          ...(step.reads ? { reads: step.reads } : {}),
          odometer: true,
        }}
        given={given as Partial<TickForm>}
        faults={faults}
      />
      <label>
        Own hours
        <input
          name="hours"
          inputmode="decimal"
          autocomplete="off"
          value={String(given['hours'] ?? '')}
          {...faultsOf(faults, 'hours')}
        />
      </label>
      <Faults faults={faults} field="hours" />
      <Despite step={step} given={given} faults={faults} />
      <button class="big">Done</button>
    </Post>
  </section>
);
