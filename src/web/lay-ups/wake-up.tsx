/** The way back: its steps by their days, what autumn left undone among them, and the road check at the end. */
import type { StayHere } from '../../acts/stays.ts';
import { count, dayInWords } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { explain } from '../../findings/explain.ts';
import { nameOf } from '../../plans/lists.ts';
import { foundInWords } from '../../plans/rounds.ts';
import { isWaking } from '../../plans/standing.ts';
import { standsFor } from '../../plans/stay.ts';
import { A, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import type { Ctx } from '../visit.ts';
import { stayInPath } from './in-path.ts';
import { progressOf } from './plan.tsx';
import { StepList } from './step-list.tsx';
import { isClosed } from './words.ts';

export const wakeUpPage = (c: Ctx) => {
  const here = stayInPath(c);
  return here ? page(c, `The way back of ${here.found.car.name}`, <WakeUp here={here} />) : notFound(c, 'lay-up');
};

/** Months from which a stay is a sleep; common practice. */
const LONG_SLEEP = 24;

const WakeUp = ({ here }: { here: StayHere }) => {
  const { record, found, view } = here;
  const { row } = record;
  const { on } = useVisit();
  const closed = isClosed(row, on);
  const anchor = view.stay.returnOn ?? on;
  const ahead = view.state === 'ahead';
  return (
    <>
      <p class="crumb">
        <A to={`/lay-ups/${row.id}`}>Lay-up of {found.car.name}</A>
      </p>
      <h1>The way back of {found.car.name}</h1>
      <p class="lede">
        {row.returnOn
          ? `${closed ? 'It was to come back' : 'It comes back'} on ${dayInWords(row.returnOn)}.`
          : 'No day is set for its return: this is the plan as if it came back today.'}{' '}
        {ahead
          ? 'As it would be if every step before it stands is done; what is left out comes back here.'
          : 'What was not ticked before it stood comes back here as work.'}
      </p>
      <p>
        {progressOf(view.wakeUp)} <A to={`/lay-ups/${row.id}/sheets/wake-up`}>Print it</A>
      </p>
      {!ahead && !closed && standsFor({ ...view.stay, returnOn: on }, LONG_SLEEP) && (
        <p class="note">
          It has stood two years or longer: nothing of it is to be trusted by a winter’s plan.{' '}
          <A to={`/revivals/new?car=${found.car.id}`}>Bring it back stage by stage</A>, with gates, money and hours.
        </p>
      )}
      {!ahead && !closed && <RoadCheck here={here} />}
      <StepList layUpId={row.id} plan={view.wakeUp} anchor={anchor} on={on} closed={closed} over={closed} />
      {!closed && isWaking(view.stay, on) && (
        <p class="call">
          <A to={`/lay-ups/${row.id}/close`} class="button">
            It is back: close the lay-up
          </A>
        </p>
      )}
    </>
  );
};

/** The reasons against first, then what was not checked, then what is merely due. */
const RoadCheck = ({ here: { view } }: { here: StayHere }) => {
  const { answer, against, found, unchecked, due } = view.roadCheck;
  const steps = view.wakeUp.steps.filter(({ tick, key }) => tick === null && key !== 'road-check').length;
  return (
    <section class="road-check" aria-labelledby="road">
      <h2 id="road">Before the road: {inWords(answer, steps)}</h2>
      <Reasons title="Against it" list={against} />
      {found.length > 0 && (
        <>
          <h3>Found on the rounds</h3>
          <ul>
            {found.map((one) => (
              <li>{foundInWords(one)}</li>
            ))}
          </ul>
        </>
      )}
      <Reasons title="Not checked: no date clears them" list={unchecked} />
      <Reasons title="Due, or to be looked at" list={due} />
      <p class="hint">
        {answer === 'no'
          ? 'It does not move under its own power before these are put right, or dated.'
          : 'Once the steps are done: daylight, dry, under 50 km/h, under 10 km, a phone, somebody who knows. Dates and readings are no proof of condition; the handbook, the law and a licensed workshop come first.'}
      </p>
    </section>
  );
};

/** While steps are open the answer is no answer yet. */
const inWords = (answer: 'no' | 'local only', steps: number): string => {
  if (answer === 'no') return 'not on the road until these are put right, or dated';
  return steps > 0 ? `not before the ${count(steps, 'open step')} below are done` : 'a local drive at most';
};

const Reasons = ({ title, list }: { title: string; list: readonly Finding[] }) =>
  list.length === 0 ? null : (
    <>
      <h3>{title}</h3>
      <ul>
        {list.map((finding) => (
          <li>
            <A to={`/parts/${finding.part.id}`}>{nameOf(finding)}</A>: {finding.standing}. {explain(finding).age}.
          </li>
        ))}
      </ul>
    </>
  );
