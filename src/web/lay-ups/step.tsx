/** One step: all that stands behind it, ticking it off with what that records, leaving it out, taking that back. */

import { effectsOf } from '../../acts/effects.ts';
import type { Fault, Outcome } from '../../acts/fault.ts';
import type { StayHere } from '../../acts/stays.ts';
import { skipStep, stepIn, takeBackTick, tickDone } from '../../acts/tick.ts';
import { dayInWords } from '../../dates/words.ts';
import type { PlanName, PlanStep } from '../../plans/plan.ts';
import { Cautions } from '../cautions.tsx';
import { notADistance, readDistance, readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { fieldOf } from '../pages/reading-field.tsx';
import { besideFields, readingsIn } from '../reading-form.ts';
import { answersIn } from '../renewal-answers.ts';
import { actingIn, at, type Ctx } from '../visit.ts';
import { SKIP_FORM, TICK_FORM, type TickForm } from './forms.ts';
import { stayInPath } from './in-path.ts';
import { Behind, isQuick, StepFacts } from './step-list.tsx';
import { dayWithName, stepPath, withoutEnd } from './step-words.ts';
import { TickFields } from './tick-fields.tsx';
import { isClosed } from './words.ts';

interface InPath {
  here: StayHere;
  step: PlanStep;
  plan: PlanName;
}

const stepInPath = (c: Ctx): InPath | undefined => {
  const here = stayInPath(c);
  const plan: PlanName = c.req.path.includes('/wake-up/') ? 'wake-up' : 'lay-up';
  const step = here && stepIn(here.view, plan, c.req.param('step') ?? '');
  return here && step ? { here, step, plan } : undefined;
};

const backTo = ({ here, plan, step }: InPath): string =>
  `/lay-ups/${here.record.row.id}${plan === 'wake-up' ? '/wake-up' : ''}#${step.key}`;

export const stepPage = (c: Ctx) => {
  const found = stepInPath(c);
  return found ? show(c, found, {}, []) : notFound(c, 'step');
};

export const tickStepPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  if (!found) return notFound(c, 'step');
  const { here, step, plan } = found;
  const form = await readForm(c, TICK_FORM);
  // Pressed twice, it was done once.
  if (step.tick?.state === 'done') return c.redirect(at(visit, backTo(found)), 303);
  const quick = form['quick'] === 'on' && isQuick(step);
  const km = form.distance === '' ? null : readDistance(form.distance);
  const { effects, ...fields } = form;
  const given = { ...fields, day: form.day || visit.on };
  const outcome: Outcome<null> =
    km === null && form.distance !== ''
      ? { ok: false, faults: [notADistance(form.distance)] }
      : tickDone(
          c.get('around').store,
          actingIn(visit),
          here,
          step,
          plan,
          {
            day: given.day,
            note: form.note,
            by: form.by === visit.person.name ? '' : form.by,
            cost: form.cost,
            evidence: form.evidence,
            km,
            effects: quick ? effectsOf(step.records, here.found.parts).map(({ key }) => key) : effects,
            answers: answersIn(form),
            readings: readingsIn(given, given.day),
          },
          (one) => fieldOf(one.partId, one.gauge),
        );
  if (!outcome.ok) return show(c, found, form, besideFields(outcome.faults, fields));
  return c.redirect(at(visit, backTo(found)), 303);
};

export const skip = async (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  if (!found) return notFound(c, 'step');
  const { reason } = await readForm(c, SKIP_FORM);
  const outcome = skipStep(c.get('around').store, actingIn(visit), found.here, found.step, found.plan, reason);
  if (!outcome.ok) return show(c, found, {}, outcome.faults);
  return c.redirect(at(visit, backTo(found)), 303);
};

export const untick = (c: Ctx) => {
  const visit = c.get('visit');
  const found = stepInPath(c);
  if (!found) return notFound(c, 'step');
  const outcome = takeBackTick(c.get('around').store, actingIn(visit), found.here, found.step, found.plan);
  if (!outcome.ok) return show(c, found, {}, outcome.faults);
  return c.redirect(at(visit, backTo(found)), 303);
};

const show = (c: Ctx, found: InPath, given: Partial<TickForm>, faults: readonly Fault[]) =>
  page(c, found.step.title, <StepShown {...found} given={given} faults={faults} />, faults.length > 0 ? 422 : 200);

const StepShown = ({
  here,
  step,
  plan,
  given,
  faults,
}: InPath & { given: Partial<TickForm>; faults: readonly Fault[] }) => {
  const { row } = here.record;
  const { on } = useVisit();
  const closed = isClosed(row, on);
  const path = stepPath(row.id, plan, step.key);
  return (
    <>
      <p class="crumb">
        <A to={`/lay-ups/${row.id}${plan === 'wake-up' ? '/wake-up' : ''}`}>
          {plan === 'wake-up' ? 'The way back of' : 'Lay-up of'} {here.found.car.name}
        </A>
      </p>
      <h1>{step.title}</h1>
      <p class="lede">
        {dayWithName(step.day)}. {step.why}
      </p>
      <FaultSummary faults={faults} kept="Nothing was saved yet." />
      <Faults faults={faults} field="step" />
      {(closed || step.tick) && <Faults faults={faults} field="day" />}
      <StepFacts step={step} />
      <Cautions keys={step.cautions} />
      {step.tick && (
        <div class="note">
          <p>
            {step.tick.state === 'done' ? 'Done' : 'Left out'} on {dayInWords(step.tick.day)} by {step.tick.by}
            {step.tick.note && `: ${withoutEnd(step.tick.note)}`}.
          </p>
          {!closed && (
            <Post to={`${path}/untick`} class="inline">
              <button class="link">Take that back</button>
            </Post>
          )}
          {effectsOf(step.records, here.found.parts).length > 0 && (
            <p class="hint">What it wrote into the car’s records stays there, and is taken back there.</p>
          )}
        </div>
      )}
      {!closed && step.tick === null && (
        <>
          <section aria-labelledby="done">
            <h2 id="done">Tick it off</h2>
            <Post to={`${path}/done`} class="stacked">
              <TickFields parts={here.found.parts} records={step.records} given={given} faults={faults} />
              <button class="big">Done</button>
            </Post>
          </section>
          <details open={faults.some(({ field }) => field === 'reason')}>
            <summary>Leave it out, and say why</summary>
            <Post to={`${path}/skip`} class="stacked">
              <label>
                Reason
                <input name="reason" {...faultsOf(faults, 'reason')} />
              </label>
              <Faults faults={faults} field="reason" />
              <button class="quiet">Leave it out</button>
            </Post>
          </details>
        </>
      )}
      {step.phase === 'own' && !closed && step.tick === null && (
        <Post to={`/lay-ups/${row.id}/own/${step.key}/remove`} class="inline">
          <button class="link">Take this step off the plan</button>
        </Post>
      )}
      <section aria-labelledby="behind">
        <h2 id="behind">Why, and sources</h2>
        <Behind layUpId={row.id} name={plan} step={step} closed={closed} />
      </section>
    </>
  );
};
