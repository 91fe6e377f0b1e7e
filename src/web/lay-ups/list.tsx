/** Every lay-up of the collection: those that stand, those that are planned, and the stays gone by. */

import { type StayHere, stayHere } from '../../acts/stays.ts';
import { dayInWords } from '../../dates/words.ts';
import { isPreparing, isWaking } from '../../plans/standing.ts';
import { carsOf } from '../../store/cars.ts';
import { type LayUpRow, layUpsOf } from '../../store/lay-ups.ts';
import { A, page, useVisit } from '../layout.tsx';
import type { Ctx } from '../visit.ts';
import { spanOf } from './words.ts';

export const layUpsPage = (c: Ctx) => {
  const { collection, on } = c.get('visit');
  const { store } = c.get('around');
  const cars = carsOf(store, collection.id);
  const names = new Map(cars.map(({ id, name }) => [id, name]));
  const gone = new Set(cars.filter(({ leftOn }) => leftOn !== null).map(({ id }) => id));
  const rows = layUpsOf(store, collection.id).filter(({ madeOn }) => madeOn <= on);
  const isOpen = ({ closedOn, carId }: LayUpRow): boolean => !gone.has(carId) && (closedOn === null || closedOn > on);
  const open = rows.filter(isOpen).flatMap(({ id }) => stayHere(store, collection.id, id, on) ?? []);
  const past = rows.filter((row) => !isOpen(row));
  return page(c, 'Lay-ups', <LayUps open={open} past={past} names={names} />);
};

const LayUps = ({ open, past, names }: { open: StayHere[]; past: LayUpRow[]; names: ReadonlyMap<string, string> }) => {
  const { on } = useVisit();
  return (
    <>
      <div class="title-row">
        <h1>Lay-ups</h1>
        <A to="/lay-ups/new" class="button">
          Put a car away
        </A>
      </div>
      <p class="lede">
        A plan before a car is parked, a round each month while it stands, and the way back: all from its own dates, its
        place and the length of its stay.
      </p>
      {open.length === 0 && <p>No car is put away, and none is about to be.</p>}
      <ul class="line-up">
        {open.map((here) => (
          <li>
            <h2>
              <A to={`/lay-ups/${here.record.row.id}`}>{here.found.car.name}</A>
            </h2>
            <p>{spanOf(here.record.row, here.view.on)}</p>
            <p class="counts">{nextOf(here)}</p>
          </li>
        ))}
      </ul>
      {past.length > 0 && (
        <section aria-labelledby="past">
          <h2 id="past">Past stays</h2>
          <ul>
            {past.map((row) => (
              <li>
                <A to={`/lay-ups/${row.id}`}>{names.get(row.carId) ?? ''}</A>: {spanOf(row, on)}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
};

/** What comes next at this car, in one line. */
export const nextOf = ({ view }: StayHere): string => {
  const [warning] = view.warnings;
  const plan = isWaking(view.stay, view.on) ? view.wakeUp : isPreparing(view) ? view.layUp : null;
  const step = plan?.steps.find(({ tick, applies }) => tick === null && applies);
  const round = view.rounds.find(({ state }) => state === 'due' || state === 'ahead');
  const missed = view.rounds.filter(({ state }) => state === 'missed').length;
  return [
    ...(warning ? [`${warning.title}.`] : []),
    ...(step
      ? [
          `Next step, ${step.day < view.on ? `late since ${dayInWords(step.day)}` : dayInWords(step.day)}: ${step.title}.`,
        ]
      : []),
    ...(view.state === 'standing' && round
      ? [
          `${round.state === 'due' ? 'Round due since' : 'Next round'} ${dayInWords(round.due)}${missed > 0 ? `; ${missed} missed` : ''}.`,
        ]
      : []),
  ].join(' ');
};
