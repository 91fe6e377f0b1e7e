/** Odometer readings, and parts the list of the car's traits does not hold. */

import type { Fault } from '../../acts/fault.ts';
import { recordReadingAct } from '../../acts/odometer.ts';
import { addPartAct } from '../../acts/parts.ts';
import { KINDS } from '../../catalogue/kinds.ts';
import { SYSTEMS, type System } from '../../catalogue/systems.ts';
import { isCivilDate } from '../../dates/civil.ts';
import { carWithParts } from '../../store/cars.ts';
import { notADistance, ODOMETER_FORM, PART_FORM, readDistance, readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { showCar } from './car-sheet.tsx';

export const recordReading = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store } = c.get('around');
  const found = carWithParts(store, visit.collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const given = await readForm(c, ODOMETER_FORM);
  const km = readDistance(given.distance);
  const day = given.day || visit.on;
  const faults: Fault[] = [];
  if (km === null) faults.push(notADistance(given.distance));
  if (!isCivilDate(day)) faults.push({ field: 'day', message: `“${day}” is no day.` });
  if (km === null || !isCivilDate(day)) return showCar(c, found.car.id, faults, given);
  const outcome = recordReadingAct(store, actingIn(visit), found.facts, { day, km });
  if (!outcome.ok) return showCar(c, found.car.id, outcome.faults, given);
  return c.redirect(at(visit, `/cars/${found.car.id}#odometer`), 303);
};

type PartForm = { kind: string; position: string; note: string };

export const newPart = (c: Ctx) => showNewPart(c, { kind: '', position: '', note: '' }, []);

export const addPart = async (c: Ctx) => {
  const given = await readForm(c, PART_FORM);
  const visit = c.get('visit');
  const { store } = c.get('around');
  const found = carWithParts(store, visit.collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const outcome = addPartAct(store, actingIn(visit), found, { ...given, position: given.position || null, claims: [] });
  if (!outcome.ok) return showNewPart(c, given, outcome.faults);
  return c.redirect(at(visit, `/parts/${outcome.value}/date`), 303);
};

const showNewPart = (c: Ctx, given: PartForm, faults: readonly Fault[]) => {
  const carId = c.req.param('carId') ?? '';
  const found = carWithParts(c.get('around').store, c.get('visit').collection.id, carId);
  if (!found) return notFound(c, 'car');
  return page(
    c,
    `Add a part to ${found.car.name}`,
    <NewPart carId={carId} carName={found.car.name} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );
};

const NewPart = ({
  carId,
  carName,
  given,
  faults,
}: {
  carId: string;
  carName: string;
  given: PartForm;
  faults: readonly Fault[];
}) => (
  <>
    <h1>Add a part to {carName}</h1>
    <FaultSummary faults={faults} />
    <Post to={`/cars/${carId}/parts`} class="stacked">
      <label>
        What is it?
        <select name="kind" required {...faultsOf(faults, 'kind')}>
          <option value="">Choose</option>
          {(Object.keys(SYSTEMS) as System[]).map((system) => (
            <optgroup label={SYSTEMS[system]}>
              {[...KINDS.values()]
                .filter((kind) => kind.system === system)
                .map(({ key, name }) => (
                  <option value={key} selected={key === given.kind}>
                    {name}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
      <Faults faults={faults} field="kind" />
      <label>
        Where on the car, if there are several
        <input
          name="position"
          value={given.position}
          placeholder="second spare, trailer, left bank"
          {...faultsOf(faults, 'position')}
        />
      </label>
      <Faults faults={faults} field="position" />
      <label>
        Note
        <input name="note" value={given.note} />
      </label>
      <button>Add the part</button>
    </Post>
    <p>
      <A to={`/cars/${carId}`}>Back without saving</A>
    </p>
  </>
);
