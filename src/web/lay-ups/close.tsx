/** Ending a stay: back on the road, or never parked. The stay stays in the car’s history. */

import type { z } from 'zod';
import type { Fault } from '../../acts/fault.ts';
import { closeLayUp, reopenLayUp } from '../../acts/lay-up.ts';
import type { StayHere } from '../../acts/stays.ts';
import { notADistance, readDistance, readForm } from '../forms.ts';
import { A, DistanceField, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { CLOSE_FORM } from './forms.ts';
import { stayInPath, toRecord } from './in-path.ts';
import { progressOf, showLayUp } from './plan.tsx';
import { isClosed } from './words.ts';

type CloseForm = z.infer<typeof CLOSE_FORM>;

export const closePage = (c: Ctx) => {
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  return isClosed(here.record.row, c.get('visit').on) ? toRecord(c, here) : show(c, here, {}, []);
};

export const closeStay = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store } = c.get('around');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  const form = await readForm(c, CLOSE_FORM);
  const km = form.distance === '' ? null : readDistance(form.distance);
  if (form.distance !== '' && km === null) return show(c, here, form, [notADistance(form.distance)]);
  const outcome = closeLayUp(store, actingIn(visit), here, {
    day: form.day || visit.on,
    how: form.how,
    km,
    pattern: form.template === 'on',
  });
  if (!outcome.ok) return show(c, here, form, outcome.faults);
  return c.redirect(at(visit, `/cars/${here.record.row.carId}#stays`), 303);
};

export const reopen = (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  const outcome = reopenLayUp(c.get('around').store, actingIn(visit), here);
  return outcome.ok ? c.redirect(at(visit, `/lay-ups/${here.record.row.id}`), 303) : showLayUp(c, here, outcome.faults);
};

const show = (c: Ctx, here: StayHere, given: Partial<CloseForm>, faults: readonly Fault[]) =>
  page(
    c,
    `Close the lay-up of ${here.found.car.name}`,
    <Close here={here} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );

const Close = ({
  here: { record, found, view },
  given,
  faults,
}: {
  here: StayHere;
  given: Partial<CloseForm>;
  faults: readonly Fault[];
}) => {
  const { on } = useVisit();
  const { row } = record;
  const back = view.state === 'standing';
  const open = view.wakeUp.steps.filter(({ tick }) => tick === null).length;
  return (
    <>
      <p class="crumb">
        <A to={`/lay-ups/${row.id}`}>Lay-up of {found.car.name}</A>
      </p>
      <h1>Close the lay-up of {found.car.name}</h1>
      <p class="lede">
        Its ordinary letters begin again, with what was kept quiet meanwhile. Plan, rounds and ticks stay in its
        history.
      </p>
      <FaultSummary faults={faults} />
      {back && (
        <p class="note">
          The way back: {progressOf(view.wakeUp)}{' '}
          {open > 0 && 'Closing clears nothing: what is open stays as it is on the car’s sheet.'}
        </p>
      )}
      <Post to={`/lay-ups/${row.id}/close`} class="stacked">
        <fieldset class="targets">
          <legend>What became of it</legend>
          <label>
            <input
              type="radio"
              name="how"
              value="back"
              checked={(given.how ?? (back ? 'back' : 'called off')) === 'back'}
            />{' '}
            It is back
          </label>
          <label>
            <input
              type="radio"
              name="how"
              value="called off"
              checked={(given.how ?? (back ? 'back' : 'called off')) === 'called off'}
            />{' '}
            Called off: it was not put away
          </label>
        </fieldset>
        <label>
          Day
          <input name="day" type="date" value={given.day || on} {...faultsOf(faults, 'day')} />
        </label>
        <Faults faults={faults} field="day" />
        <DistanceField label="Odometer" value={given.distance ?? ''} faults={faults} />
        <label>
          <input
            type="checkbox"
            name="template"
            value="on"
            checked={given.template === undefined || given.template === 'on'}
          />{' '}
          Keep it as the pattern for next time: own steps, steps left out with their reasons, sides taken
        </label>
        <button>Close the lay-up</button>
      </Post>
    </>
  );
};
