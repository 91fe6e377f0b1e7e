/** The return to the road a car is on, and those it has behind it. */
import type { CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Store } from '../../store/open.ts';
import { type RevivalRow, revivalsOf } from '../../store/revivals.ts';
import { A } from '../layout.tsx';

interface RevivalsOfCar {
  open: RevivalRow | undefined;
  past: RevivalRow[];
}

export const revivalsOfCar = (store: Store, collectionId: string, carId: string, on: CivilDate): RevivalsOfCar => {
  const rows = revivalsOf(store, collectionId, carId).filter(({ begunOn }) => begunOn <= on);
  const isPast = ({ closedOn }: RevivalRow): boolean => closedOn !== null && closedOn <= on;
  return { open: rows.find((row) => !isPast(row)), past: rows.filter(isPast) };
};

export const ComesBack = ({ revivals: { open, past }, carId }: { revivals: RevivalsOfCar; carId: string }) => (
  <>
    {open ? (
      <section class="laid-up" aria-labelledby="comes-back">
        <h2 id="comes-back">
          <A to={`/revivals/${open.id}`}>On its way back to the road</A>
        </h2>
        <p>
          Since {dayInWords(open.begunOn)}. Its plan is the list of work: the letters say what is dated there, and the
          rest once it is back.
        </p>
      </section>
    ) : (
      <p class="call">
        <A to={`/revivals/new?car=${carId}`} class="button quiet">
          It has slept for a year or more
        </A>{' '}
        The way back stage by stage, with gates, money and hours.
      </p>
    )}
    {past.length > 0 && (
      <p>
        Brought back:{' '}
        {past.map((row, index) => (
          <>
            {index > 0 && ', '}
            <A to={`/revivals/${row.id}`}>{row.closedOn ? dayInWords(row.closedOn) : ''}</A> ({row.closedHow})
          </>
        ))}
        .
      </p>
    )}
  </>
);
