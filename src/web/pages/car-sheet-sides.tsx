/** What else a car sheet holds: where the car stands, its odometer, its closed records. */
import type { Fault } from '../../acts/fault.ts';
import type { CarWithParts, PartOnRecord } from '../../store/cars.ts';
import type { PlaceRow } from '../../store/places.ts';
import { A, DistanceField, Faults, faultsOf, Post } from '../layout.tsx';
import { nameOf } from './part-name.ts';

/** Where the car stands: its climate goes into every estimate. */
export const StandsIn = ({
  found: { car, place },
  places,
  faults,
}: {
  found: CarWithParts;
  places: PlaceRow[];
  faults: readonly Fault[];
}) => (
  <section class="side" aria-labelledby="place">
    <h2 id="place">Where it stands</h2>
    {!place && (
      <p>
        Nobody has said. Without it frost can’t be judged, and estimates assume an unheated garage in a temperate place.
      </p>
    )}
    {places.length > 0 && (
      <Post to={`/cars/${car.id}/place`} class="row">
        <label>
          Place
          <select name="place" {...faultsOf(faults, 'place')}>
            <option value="">Not said</option>
            {places.map(({ id, name }) => (
              <option value={id} selected={id === place?.id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button>It stands here</button>
      </Post>
    )}
    <Faults faults={faults} field="place" />
    <p>{place ? <A to={`/places/${place.id}`}>Its year there</A> : <A to="/places/new">Add a place</A>}</p>
  </section>
);

export const Odometer = ({
  carId,
  faults,
  given,
}: {
  carId: string;
  faults: readonly Fault[];
  given: { distance?: string; day?: string };
}) => (
  <section class="side" aria-labelledby="odometer">
    <h2 id="odometer">Odometer</h2>
    <Post to={`/cars/${carId}/odometer`} class="row">
      <DistanceField label="Reading" value={given.distance ?? ''} faults={faults} />
      <label>
        Day <input name="day" type="date" value={given.day ?? ''} {...faultsOf(faults, 'day')} />
      </label>
      <button>Record</button>
    </Post>
    <Faults faults={faults} field="day" />
    <p class="hint">Without a day it is today’s; a second reading of the same day takes the first one’s place.</p>
  </section>
);

export const History = ({ past }: { past: PartOnRecord[] }) => (
  <section aria-labelledby="history">
    <h2 id="history">Closed records</h2>
    <ul>
      {past.map((part) => (
        <li>
          {part.closedOn}: <A to={`/parts/${part.id}`}>{nameOf(part)}</A>. {part.closedWhy}
        </li>
      ))}
    </ul>
  </section>
);
