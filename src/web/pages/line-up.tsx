/** Line-up: all cars, what needs a hand first at the top. */

import { eachCarReckoned } from '../../acts/reckon.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import { count, dayInWords, rangeInWords } from '../../dates/words.ts';
import { byUrgency, type CarSummary, summaryOf } from '../../findings/car.ts';
import { explain } from '../../findings/explain.ts';
import type { StayView } from '../../plans/standing.ts';
import { type CarRow as CarGone, carsOf } from '../../store/cars.ts';
import type { LayUpRow } from '../../store/lay-ups.ts';
import { spanOf } from '../lay-ups/words.ts';
import { A, page, useVisit } from '../layout.tsx';
import { Bay, countsInWords, StandingWord, Unjudged } from '../standing.tsx';
import type { Ctx } from '../visit.ts';

interface Row {
  id: string;
  name: string;
  built: DateRange;
  summary: CarSummary;
  layUp: LayUpRow | undefined;
  /** Its return to the road, where one is under way. */
  revivalId: string | undefined;
  /** What can’t wait while it stands. */
  cantWait: readonly string[];
  /** Records nothing could be reckoned of. */
  unjudged: number;
}

export const lineUp = (c: Ctx) => {
  const { collection, on } = c.get('visit');
  const { store } = c.get('around');
  const rows = [...eachCarReckoned(store, collection, on)].map(
    ({ name, facts, findings, stay, back, troubles }): Row => ({
      id: facts.id,
      name,
      built: facts.built,
      summary: summaryOf(findings),
      layUp: stay?.row,
      revivalId: back?.row.id,
      cantWait: stay ? cantWaitIn(stay.view) : [],
      unjudged: troubles.length,
    }),
  );
  rows.sort((a, b) => byUrgency(a.summary, b.summary) || a.name.localeCompare(b.name));
  return page(
    c,
    'Line-up',
    <LineUp rows={rows} gone={carsOf(store, collection.id).filter(({ leftOn }) => leftOn !== null)} />,
  );
};

/** Warnings, and what a round found to act on. */
const cantWaitIn = ({ warnings, found }: StayView): string[] => [
  ...warnings.map(({ title }) => `${title}.`),
  ...found
    .filter(({ answer }) => answer.verdict === 'act')
    .map(({ look, answer }) => `${look.name}: ${answer.name.toLowerCase()}.`),
];

const LineUp = ({ rows, gone }: { rows: Row[]; gone: CarGone[] }) => (
  <>
    <div class="title-row">
      <h1>Line-up</h1>
      <A to="/cars/new" class="button">
        Add a car
      </A>
    </div>
    {rows.length === 0 ? <Empty /> : <p class="lede">What needs a hand first stands first.</p>}
    <ol class="line-up">
      {rows.map((row) => (
        <CarRow row={row} />
      ))}
    </ol>
    {gone.length > 0 && (
      <details>
        <summary>Left the collection: {count(gone.length, 'car')}</summary>
        <ul>
          {gone.map(({ id, name, leftOn, leftHow }) => (
            <li>
              <A to={`/cars/${id}`}>{name}</A>, {leftHow}
              {leftOn && ` on ${dayInWords(leftOn)}`}
            </li>
          ))}
        </ul>
      </details>
    )}
  </>
);

const Empty = () => {
  const { collection, person } = useVisit();
  return (
    <div class="empty">
      <p>
        No cars in “{collection.name}” yet. Adding one takes about two minutes: a name, a year, and a starting point
        close to how it is built.
      </p>
      {!person.email && (
        <p>
          Letters go nowhere yet: <A to="/collection">give your name and address</A>.
        </p>
      )}
      <p>
        Standing before a tire? <A to="/date-codes">Read its date code</A>; that needs no car.
      </p>
    </div>
  );
};

const CarRow = ({ row: { id, name, built, summary, layUp, revivalId, cantWait, unjudged } }: { row: Row }) => {
  const { on } = useVisit();
  const first = summary.first;
  const dated = built.from !== null || built.to !== null;
  return (
    <li>
      <h2>
        <A to={`/cars/${id}`}>{name}</A> {dated && <small>built {rangeInWords(built)}</small>}
      </h2>
      {layUp && (
        <p>
          <A to={`/lay-ups/${layUp.id}`}>{layUp.parkedOn <= on ? 'Laid up' : 'Lay-up planned'}</A>. {spanOf(layUp, on)}
        </p>
      )}
      {revivalId && (
        <p>
          <A to={`/revivals/${revivalId}`}>On its way back to the road</A>.
        </p>
      )}
      {cantWait.length > 0 && (
        <p class="first">
          <strong>Can’t wait:</strong> {cantWait.join(' ')}
        </p>
      )}
      <Unjudged records={unjudged} />
      <Bay counts={summary.counts} />
      <p class="counts">{countsInWords(summary.counts)}</p>
      {first && (
        <p class="first">
          First: <StandingWord standing={first.standing} />{' '}
          <A to={`/parts/${first.part.id}`}>
            {first.kind.name}
            {first.part.position && `, ${first.part.position}`}
          </A>
          . {explain(first).age}.
        </p>
      )}
    </li>
  );
};
