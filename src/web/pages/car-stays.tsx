/** The lay-up a car is in, and the stays it has behind it. */
import { type StayHere, withView } from '../../acts/stays.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { isDone } from '../../plans/plan.ts';
import type { CarWithParts } from '../../store/cars.ts';
import { findLayUp, layUpsOf } from '../../store/lay-ups.ts';
import type { Store } from '../../store/open.ts';
import { nextOf } from '../lay-ups/list.tsx';
import { spanOf } from '../lay-ups/words.ts';
import { A } from '../layout.tsx';

export interface StaysOfCar {
  open: StayHere | undefined;
  past: StayHere[];
}

export const staysOfCar = (store: Store, collectionId: string, found: CarWithParts, on: CivilDate): StaysOfCar => {
  const here = layUpsOf(store, collectionId, found.car.id)
    .filter(({ madeOn }) => madeOn <= on)
    .flatMap((row) => {
      const record = findLayUp(store, collectionId, row.id);
      // A stay gone by is seen as on the day it ended.
      const day = row.closedOn !== null && row.closedOn <= on ? row.closedOn : on;
      return record ? [withView(store, collectionId, record, found, day)] : [];
    });
  // What a car that has left was in is over, too.
  const isPast = ({ record: { row } }: StayHere): boolean =>
    found.car.leftOn !== null || (row.closedOn !== null && row.closedOn <= on);
  return { open: here.find((one) => !isPast(one)), past: here.filter(isPast) };
};

export const LaidUp = ({ stays: { open }, carId }: { stays: StaysOfCar; carId: string }) =>
  open ? (
    <section class="laid-up" aria-labelledby="laid-up">
      <h2 id="laid-up">
        <A to={`/lay-ups/${open.record.row.id}`}>{open.view.state === 'standing' ? 'Laid up' : 'Lay-up planned'}</A>
      </h2>
      <p>
        {spanOf(open.record.row, open.view.on)} {nextOf(open)}
      </p>
      {open.view.state === 'standing' && (
        <p class="hint">
          Its ordinary letters are silent until it is back. What stands below goes on ageing all the same.
        </p>
      )}
    </section>
  ) : (
    <p class="call">
      <A to={`/lay-ups/new?car=${carId}`} class="button quiet">
        Put it away
      </A>{' '}
      A plan before it is parked, a round each month, and the way back.
    </p>
  );

/** History: how long it stood, how well it was prepared, how often somebody looked. */
export const Stays = ({ rows }: { rows: readonly StayHere[] }) =>
  rows.length === 0 ? null : (
    <section aria-labelledby="stays">
      <h2 id="stays">Stays</h2>
      <ul>
        {rows.map(({ record, place, view }) => (
          <li>
            <A to={`/lay-ups/${record.row.id}`}>{dayInWords(record.row.parkedOn)}</A>: {spanOf(record.row, view.on)}{' '}
            {record.row.closedHow === 'back' && (
              <>
                {place ? `In ${place.name}. ` : ''}
                {view.layUp.steps.filter(isDone).length} of {count(view.layUp.steps.length, 'step')} done before it
                stood, {count(record.rounds.length, 'round')} made,{' '}
                {view.rounds.filter(({ state }) => state === 'missed').length} missed.
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
