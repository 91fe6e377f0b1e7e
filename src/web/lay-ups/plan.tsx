/** One lay-up: what changed, what can’t wait, the rounds, and the plan by its days. */

import type { Fault } from '../../acts/fault.ts';
import { addOwnStepAct, chooseSide, closedFault, understand } from '../../acts/lay-up.ts';
import type { StayHere } from '../../acts/stays.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { changesBetween, outlineOf } from '../../plans/changes.ts';
import type { Plan, PlanName } from '../../plans/plan.ts';
import { isPreparing } from '../../plans/standing.ts';
import { endOf } from '../../plans/stay.ts';
import { removeOwnStep } from '../../store/lay-ups.ts';
import { readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { OWN_STEP_FORM, SIDE_FORM } from './forms.ts';
import { stayInPath } from './in-path.ts';
import { Standing } from './standing.tsx';
import { StayRule } from './stay-rule.tsx';
import { StepList } from './step-list.tsx';
import { isClosed, spanOf } from './words.ts';

export const layUpPage = (c: Ctx) => {
  const here = stayInPath(c);
  return here ? showLayUp(c, here) : notFound(c, 'lay-up');
};

export const seen = (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  understand(c.get('around').store, actingIn(visit), here);
  return c.redirect(at(visit, `/lay-ups/${here.record.row.id}`), 303);
};

export const takeSide = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  const { topic, side, back } = await readForm(c, SIDE_FORM);
  const outcome = chooseSide(c.get('around').store, actingIn(visit), here, topic, side);
  if (!outcome.ok) return showLayUp(c, here, outcome.faults);
  const page = back === 'sides' ? '/sides' : back === 'wake-up' ? '/wake-up' : '#changed';
  return c.redirect(at(visit, `/lay-ups/${here.record.row.id}${page}`), 303);
};

export const addOwn = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  const given = await readForm(c, OWN_STEP_FORM);
  const outcome = addOwnStepAct(c.get('around').store, actingIn(visit), here, given);
  if (!outcome.ok) return showLayUp(c, here, outcome.faults, given);
  const page = given.plan === 'wake-up' ? '/wake-up' : '';
  return c.redirect(at(visit, `/lay-ups/${here.record.row.id}${page}#${outcome.value}`), 303);
};

export const removeOwn = (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  const own = here?.record.own.find(({ id }) => id === c.req.param('step'));
  if (!here || !own) return notFound(c, 'step');
  const closed = closedFault(here.record, visit.on);
  if (closed) return showLayUp(c, here, closed.faults);
  removeOwnStep(c.get('around').store, visit.collection.id, here.record.row.id, own, visit.on);
  return c.redirect(at(visit, `/lay-ups/${here.record.row.id}${own.plan === 'wake-up' ? '/wake-up' : ''}`), 303);
};

type OwnGiven = { plan: PlanName; title: string; days: string; note: string };

export const showLayUp = (
  c: Ctx,
  here: StayHere,
  faults: readonly Fault[] = [],
  given: OwnGiven = { plan: 'lay-up', title: '', days: '', note: '' },
) =>
  page(
    c,
    `Lay-up of ${here.found.car.name}`,
    <LayUp here={here} faults={faults} given={given} />,
    faults.length > 0 ? 422 : 200,
  );

const LayUp = ({ here, faults, given }: { here: StayHere; faults: readonly Fault[]; given: OwnGiven }) => {
  const { record, found, view } = here;
  const { row } = record;
  const { on } = useVisit();
  const closed = isClosed(row, on);
  const { layUp } = view;
  const preparing = !closed && isPreparing(view);
  return (
    <>
      <p class="crumb">
        <A to={`/cars/${row.carId}`}>{found.car.name}</A>
      </p>
      <div class="title-row">
        <h1>Lay-up of {found.car.name}</h1>
        {!closed && (
          <A to={`/lay-ups/${row.id}/change`} class="button quiet">
            Change the lay-up
          </A>
        )}
      </div>
      <FaultSummary faults={faults} />
      <Faults faults={faults} field="side" />
      <Faults faults={faults} field="day" />
      <Opening here={here} />
      <StayRule here={here} />
      <nav class="systems" aria-label="Of this lay-up">
        <A to={`/lay-ups/${row.id}/wake-up`}>The way back</A>
        <A to={`/lay-ups/${row.id}/sides`}>Where the trade disagrees</A>
        <A to={`/lay-ups/${row.id}/sheets/plan`}>Print the plan</A>
        <A to={`/lay-ups/${row.id}/sheets/windshield`}>Windshield sheet</A>
        <A to={`/lay-ups/${row.id}/sheets/monthly`}>Monthly card</A>
        <A to={`/lay-ups/${row.id}/sheets/wake-up`}>Wake-up sheet</A>
        {!closed && <A to={`/lay-ups/${row.id}/close`}>Close the lay-up</A>}
        {closed && (
          <Post to={`/lay-ups/${row.id}/reopen`} class="inline">
            <button class="link">It was closed by a slip: open it again</button>
          </Post>
        )}
      </nav>
      {!closed && <Changed here={here} />}
      {view.state === 'standing' && !preparing && <Standing here={here} closed={closed} />}
      <section aria-labelledby="plan">
        <h2 id="plan">The plan before it stands</h2>
        <p>
          {progressOf(layUp)} {preparing && row.madeOn <= row.parkedOn && lateIn(layUp, on)}
        </p>
        <p class="note">
          Amounts are worked out from what you entered; the bottle’s label, the vehicle’s handbook and the law of the
          place come first. Brakes, fuel, lifting and gas are work for a licensed workshop wherever you are in doubt.
        </p>
        {!preparing ? (
          <details>
            <summary>{closed ? 'Its steps, as they were ticked' : 'Its steps, to tick what was done'}</summary>
            <StepList layUpId={row.id} plan={layUp} anchor={row.parkedOn} on={on} closed={closed} over />
          </details>
        ) : (
          <StepList
            layUpId={row.id}
            plan={layUp}
            anchor={row.parkedOn}
            on={on}
            closed={closed}
            over={row.madeOn > row.parkedOn}
          />
        )}
      </section>
      {view.state === 'standing' && preparing && <Standing here={here} closed={closed} />}
      {!closed && <OwnStep layUpId={row.id} faults={faults} given={given} />}
    </>
  );
};

const Opening = ({ here: { record, place, view } }: { here: StayHere }) => {
  const { members, on } = useVisit();
  const { row } = record;
  const closed = isClosed(row, on);
  const visitor = members.find(({ id }) => id === row.visitorId);
  return (
    <p class="lede">
      {spanOf(row, view.on)}{' '}
      {place ? (
        <>
          {closed ? 'It stood' : 'It stands'} in <A to={`/places/${place.id}`}>{place.name}</A>.
        </>
      ) : (
        'Nobody has said where it stands: frost is taken for possible.'
      )}{' '}
      {closed ? '' : visitor ? `${visitor.name} looks in.` : 'Whoever gets the letters looks in.'}
      {row.returnOn === null &&
        row.closedOn === null &&
        ` Planned as for a year, until ${dayInWords(endOf(view.stay))}.`}
      {row.note && ` ${row.note}`}
    </p>
  );
};

/** “12 of 41 steps done, 2 left out.” */
export const progressOf = ({ steps }: Plan): string => {
  const of = (state: 'done' | 'skipped'): number => steps.filter(({ tick }) => tick?.state === state).length;
  const skipped = of('skipped');
  return `${of('done')} of ${count(steps.length, 'step')} done${skipped > 0 ? `, ${skipped} left out` : ''}.`;
};

/** “9 of them late; the next is on 4 October 2026.” */
const lateIn = ({ steps }: Plan, on: CivilDate): string => {
  const open = steps.filter(({ tick }) => tick === null);
  const late = open.filter(({ day }) => day < on).length;
  const next = open.find(({ day }) => day >= on);
  return [late > 0 ? `${late} late` : null, next ? `the next: ${dayInWords(next.day)}` : null]
    .filter((text) => text !== null)
    .join('; ')
    .concat('.');
};

/** Facts moved since somebody looked at the plan: what that changed, until it was looked at. */
const Changed = ({ here: { record, view } }: { here: StayHere }) => {
  const changes = changesBetween(record.row.seen, outlineOf(view.layUp));
  return changes.length === 0 ? null : (
    <section class="changed" aria-labelledby="changed">
      <h2 id="changed">What changed in the plan</h2>
      <ul>
        {changes.map((change) => (
          <li>{change}</li>
        ))}
      </ul>
      <p>What was ticked stays ticked.</p>
      <Post to={`/lay-ups/${record.row.id}/seen`}>
        <button class="quiet">Understood</button>
      </Post>
    </section>
  );
};

const OwnStep = ({ layUpId, faults, given }: { layUpId: string; faults: readonly Fault[]; given: OwnGiven }) => (
  <details open={faults.some(({ field }) => field === 'title' || field === 'days')}>
    <summary>Add a step of your own</summary>
    <Post to={`/lay-ups/${layUpId}/own`} class="stacked">
      <label>
        What is to be done
        <input name="title" value={given.title} {...faultsOf(faults, 'title')} />
      </label>
      <Faults faults={faults} field="title" />
      <label>
        Days before; 0 or empty is the day itself
        <input name="days" inputmode="numeric" value={given.days} {...faultsOf(faults, 'days')} />
      </label>
      <Faults faults={faults} field="days" />
      <label>
        Why, or how
        <input name="note" value={given.note} />
      </label>
      <fieldset class="targets">
        <legend>Belongs to</legend>
        <label>
          <input type="radio" name="plan" value="lay-up" checked={given.plan === 'lay-up'} /> the lay-up
        </label>
        <label>
          <input type="radio" name="plan" value="wake-up" checked={given.plan === 'wake-up'} /> the way back
        </label>
      </fieldset>
      <button class="quiet">Add the step</button>
    </Post>
  </details>
);
