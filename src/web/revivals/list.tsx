/** Every return of the collection: those under way, cars that are only looked at, and what is over. */
import { type RevivalHere, revivalHere } from '../../acts/revivals.ts';
import { dayInWords } from '../../dates/words.ts';
import { spanInWords } from '../../money/words.ts';
import { isSettled } from '../../revival/step-state.ts';
import { carsOf } from '../../store/cars.ts';
import { type RevivalRow, revivalsOf } from '../../store/revivals.ts';
import { A, page } from '../layout.tsx';
import type { Ctx } from '../visit.ts';
import { pathOf } from './in-path.ts';
import { GATE_WORDS, sleptInWords, stageAtHand } from './words.tsx';

export const revivalsPage = (c: Ctx) => {
  const { collection, on } = c.get('visit');
  const { store } = c.get('around');
  const cars = carsOf(store, collection.id);
  const names = new Map(cars.map(({ id, name }) => [id, name]));
  const gone = new Set(cars.filter(({ leftOn }) => leftOn !== null).map(({ id }) => id));
  const rows = revivalsOf(store, collection.id).filter(({ begunOn }) => begunOn <= on);
  const isOpen = ({ closedOn, carId }: RevivalRow): boolean => !gone.has(carId) && (closedOn === null || closedOn > on);
  const open = rows.filter(isOpen).flatMap(({ id }) => revivalHere(store, collection, id, on) ?? []);
  return page(
    c,
    'Return to road',
    <Revivals
      ours={open.filter(({ found }) => found.car.ours)}
      looked={open.filter(({ found }) => !found.car.ours)}
      past={rows.filter((row) => !isOpen(row))}
      names={names}
    />,
  );
};

interface Shown {
  ours: RevivalHere[];
  looked: RevivalHere[];
  past: RevivalRow[];
  names: ReadonlyMap<string, string>;
}

const Revivals = ({ ours, looked, past, names }: Shown) => (
  <>
    <div class="title-row">
      <h1>Return to road</h1>
      <A to="/revivals/new" class="button">
        Stand before a sleeper
      </A>
    </div>
    <p class="lede">
      For a car that has not moved for a year or for thirty: what to expect, in which order to work, where to stop, what
      it may cost, and when it may move. <A to="/revivals/new?look=yes">Look at one you may buy</A>
    </p>
    {ours.length === 0 && looked.length === 0 && <p>No car is on its way back.</p>}
    <ul class="line-up">
      {ours.map((here) => (
        <Line here={here} Name="h2" />
      ))}
    </ul>
    {looked.length > 0 && (
      <section aria-labelledby="looked">
        <h2 id="looked">Only looked at</h2>
        <ul class="line-up">
          {looked.map((here) => (
            <Line here={here} Name="h3" />
          ))}
        </ul>
      </section>
    )}
    {past.length > 0 && (
      <section aria-labelledby="past">
        <h2 id="past">Over</h2>
        <ul>
          {past.map((row) => (
            <li>
              <A to={`/revivals/${row.id}`}>{names.get(row.carId) ?? ''}</A>: {row.closedHow}
              {row.closedOn && `, ${dayInWords(row.closedOn)}`}
            </li>
          ))}
        </ul>
      </section>
    )}
  </>
);

const Line = ({ here, Name }: { here: RevivalHere; Name: 'h2' | 'h3' }) => {
  const { plan, found, rates } = here;
  const hand = stageAtHand(plan);
  const next = hand?.steps.find((step) => !isSettled(step));
  return (
    <li>
      <Name>
        <A to={found.car.ours ? pathOf(here) : pathOf(here, '/verdict')}>{found.car.name}</A>
      </Name>
      <p>{sleptInWords(plan)}</p>
      <p class="counts">
        {plan.stops.some(({ decided }) => !decided)
          ? 'Stopped: somebody has to decide. '
          : hand
            ? `At hand: ${hand.stage.name}${next ? `, ${next.way.title}` : `, ${GATE_WORDS[hand.gate.state].toLowerCase()}`}. `
            : 'Every gate is passed. '}
        Spent and to come: {spanInWords(plan.money.total, rates.currency)}.
      </p>
    </li>
  );
};
