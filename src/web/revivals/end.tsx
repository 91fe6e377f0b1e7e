/** Ending a return: the car is on the road, the work is given up, or a car that was only looked at is let go. */
import { endRevival, reopenRevival } from '../../acts/begin-revival.ts';
import type { Fault } from '../../acts/fault.ts';
import { isOver, type RevivalHere } from '../../acts/revivals.ts';
import { readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { END_FORM } from './forms.ts';
import { pathOf, revivalInPath } from './in-path.ts';

export const endPage = (c: Ctx) => {
  const here = revivalInPath(c);
  return here ? show(c, here, {}, []) : notFound(c, 'return');
};

export const endRevivalPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = revivalInPath(c);
  if (!here) return notFound(c, 'return');
  const { how, despite } = await readForm(c, END_FORM);
  const outcome = endRevival(c.get('around').store, actingIn(visit), here, how, despite);
  if (!outcome.ok) return show(c, here, { how, despite }, outcome.faults);
  return c.redirect(at(visit, pathOf(here)), 303);
};

export const reopenPage = (c: Ctx) => {
  const here = revivalInPath(c);
  if (!here) return notFound(c, 'return');
  const outcome = reopenRevival(c.get('around').store, actingIn(c.get('visit')), here);
  if (!outcome.ok) return show(c, here, {}, outcome.faults);
  return c.redirect(at(c.get('visit'), pathOf(here)), 303);
};

interface Given {
  how?: string;
  despite?: string;
}

const show = (c: Ctx, here: RevivalHere, given: Given, faults: readonly Fault[]) =>
  page(
    c,
    `End the return of ${here.found.car.name}`,
    <End here={here} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );

const End = ({ here, given, faults }: { here: RevivalHere; given: Given; faults: readonly Fault[] }) => {
  const { found, plan, record } = here;
  const { on } = useVisit();
  const shut = plan.stages.filter(({ gate }) => gate.safety && gate.state !== 'passed');
  const choices = found.car.ours
    ? { 'on the road': 'It is back on the road', 'given up': 'The work is given up; the car stays' }
    : { 'not bought': 'It is not bought: let it go' };
  return (
    <>
      <p class="crumb">
        <A to={pathOf(here)}>Return of {found.car.name}</A>
      </p>
      <h1>End the return of {found.car.name}</h1>
      <FaultSummary faults={faults} />
      <Faults faults={faults} field="day" />
      {isOver(record, on) ? (
        <>
          <p>It has ended. What was recorded stays in the car’s history.</p>
          <Post to={pathOf(here, '/reopen')} class="inline">
            <button class="quiet">Take the ending back</button>
          </Post>
          {record.row.closedHow === 'on the road' && (
            <p>
              <A to={`/cars/${found.car.id}`}>Its Car sheet</A> goes on from here; before its next winter,{' '}
              <A to={`/lay-ups/new?car=${found.car.id}`}>put it away</A>.
            </p>
          )}
        </>
      ) : (
        <>
          {found.car.ours && shut.length > 0 && (
            <>
              <p>Gates of safety that are not passed on their evidence:</p>
              <ul>
                {shut.map(({ key, stage }) => (
                  <li>
                    <A to={pathOf(here, `/stages/${key}#gate`)}>{stage.name}</A>
                  </li>
                ))}
              </ul>
            </>
          )}
          <Post to={pathOf(here, '/end')} class="stacked">
            <fieldset class="choices">
              <legend>How it ends</legend>
              {Object.entries(choices).map(([how, words], index) => (
                <label>
                  <input type="radio" name="how" value={how} checked={given.how ? given.how === how : index === 0} />{' '}
                  {words}
                </label>
              ))}
            </fieldset>
            <Faults faults={faults} field="how" />
            <label>
              Note; where a gate is not passed, why it goes on the road all the same
              <textarea name="despite" rows={3} {...faultsOf(faults, 'despite')}>
                {given.despite ?? ''}
              </textarea>
            </label>
            <Faults faults={faults} field="despite" />
            <button class="big">End it</button>
          </Post>
        </>
      )}
    </>
  );
};
