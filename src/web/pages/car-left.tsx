/** A car leaves the collection, or is back. */
import type { Fault } from '../../acts/fault.ts';
import { comeBack, leaveCollection } from '../../acts/leave-collection.ts';
import { dayInWords } from '../../dates/words.ts';
import { type CarRow, carWithParts } from '../../store/cars.ts';
import { LEFT_HOW } from '../../store/schema.ts';
import { LEFT_FORM, readForm } from '../forms.ts';
import { A, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';

const carInPath = (c: Ctx): CarRow | undefined =>
  carWithParts(c.get('around').store, c.get('visit').collection.id, c.req.param('carId') ?? '')?.car;

export const carLeft = async (c: Ctx) => {
  const form = await readForm(c, LEFT_FORM);
  const car = carInPath(c);
  if (!car) return notFound(c, 'car');
  const visit = c.get('visit');
  const outcome = leaveCollection(c.get('around').store, actingIn(visit), car, form);
  if (!outcome.ok)
    return page(
      c,
      `${car.name} has left`,
      <>
        <h1>{car.name} has left</h1>
        <LeftForm car={car} given={form} faults={outcome.faults} />
      </>,
      422,
    );
  return c.redirect(at(visit, `/cars/${car.id}`), 303);
};

export const backInCollection = (c: Ctx) => {
  const car = carInPath(c);
  if (!car) return notFound(c, 'car');
  comeBack(c.get('around').store, actingIn(c.get('visit')), car);
  return c.redirect(at(c.get('visit'), `/cars/${car.id}`), 303);
};

/** At the top of the sheet of a car that is gone. */
export const LeftNote = ({ car }: { car: CarRow }) =>
  car.leftOn ? (
    <div class="fault">
      <p>
        It left the collection on {dayInWords(car.leftOn)}: {car.leftHow}. Its history stays here; no letter, plan or
        calendar speaks of it.
      </p>
      <Post to={`/cars/${car.id}/back`}>
        <button class="quiet">It is back</button>
      </Post>
    </div>
  ) : null;

export const LeftForm = ({
  car,
  given,
  faults = [],
}: {
  car: CarRow;
  given?: { how: string; day: string };
  faults?: readonly Fault[];
}) => {
  const { on } = useVisit();
  return (
    <details open={faults.length > 0}>
      <summary>It was sold, given away or scrapped</summary>
      <Post to={`/cars/${car.id}/left`} class="stacked">
        <fieldset class="targets">
          <legend>How</legend>
          {LEFT_HOW.map((how) => (
            <label>
              <input type="radio" name="how" value={how} checked={how === (given?.how ?? 'sold')} /> <span>{how}</span>
            </label>
          ))}
        </fieldset>
        <label>
          On
          <input type="date" name="day" value={given?.day ?? on} required {...faultsOf(faults, 'left')} />
        </label>
        <Faults faults={faults} field="left" />
        <p class="hint">
          Nothing is deleted: the sheet and the file of the car stay, letters, plans and calendar fall silent.
        </p>
        <button>It has left</button>
        <p>
          <A to={`/cars/${car.id}`}>Back to the car</A>
        </p>
      </Post>
    </details>
  );
};
