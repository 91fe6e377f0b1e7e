/** The way back: its steps by their days, what autumn left undone among them, and the road check at the end. */
import type { StayHere } from '../../acts/stays.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { explain } from '../../findings/explain.ts';
import { nameOf } from '../../plans/lists.ts';
import { roadCheck } from '../../plans/road-check.ts';
import { isWaking } from '../../plans/standing.ts';
import { A, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import type { Ctx } from '../visit.ts';
import { stayInPath } from './in-path.ts';
import { progressOf } from './plan.tsx';
import { StepList } from './step-list.tsx';

export const wakeUpPage = (c: Ctx) => {
  const here = stayInPath(c);
  return here ? page(c, `The way back of ${here.found.car.name}`, <WakeUp here={here} />) : notFound(c, 'lay-up');
};

const WakeUp = ({ here }: { here: StayHere }) => {
  const { record, found, view } = here;
  const { row } = record;
  const { on } = useVisit();
  const closed = row.closedOn !== null && row.closedOn <= on;
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
          ? `It comes back on ${dayInWords(row.returnOn)}.`
          : 'No day is set for its return: this is the plan as if it came back today.'}{' '}
        {ahead
          ? 'As it would be if every step before it stands is done; what is left out comes back here.'
          : 'What was not ticked before it stood comes back here as work.'}
      </p>
      <p>
        {progressOf(view.wakeUp)} <A to={`/lay-ups/${row.id}/sheets/wake-up`}>Print it</A>
      </p>
      {!ahead && <RoadCheck here={here} />}
      <StepList layUpId={row.id} plan={view.wakeUp} anchor={anchor} on={on} closed={closed} />
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
  const { answer, against, unchecked, due } = roadCheck(view.stay, view.findings);
  const steps = view.wakeUp.steps.filter(({ tick, key }) => tick === null && key !== 'road-check').length;
  return (
    <section class="road-check" aria-labelledby="road">
      <h2 id="road">
        Before the road: <span class="standing past">{answer}</span>
      </h2>
      <Reasons title="Against it" list={against} />
      <Reasons title="Not checked: no date clears them" list={unchecked} />
      <Reasons title="Due, or to be looked at" list={due} />
      {steps > 0 && <p>{steps} steps of the way back are open; each belongs before the first drive.</p>}
      <p class="hint">
        {answer === 'no'
          ? 'It does not move under its own power before these are put right, or dated.'
          : 'Once the steps are done: daylight, dry, under 50 km/h, under 10 km, a phone, somebody who knows. Dates and readings are no proof of condition; the handbook, the law and a licensed workshop come first.'}
      </p>
    </section>
  );
};

const MOST = 12;

const Reasons = ({ title, list }: { title: string; list: readonly Finding[] }) =>
  list.length === 0 ? null : (
    <>
      <h3>{title}</h3>
      <ul>
        {list.slice(0, MOST).map((finding) => (
          <li>
            <A to={`/parts/${finding.part.id}`}>{nameOf(finding)}</A>: {finding.standing}. {explain(finding).age}.
          </li>
        ))}
        {list.length > MOST && <li>and {list.length - MOST} more on the car’s sheet</li>}
      </ul>
    </>
  );
