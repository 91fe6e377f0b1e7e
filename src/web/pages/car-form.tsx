/** Adding a car in under two minutes, and changing what it has. */
import { addCarAct, type CarGiven, changeCarAct } from '../../acts/add-car.ts';
import type { Fault } from '../../acts/fault.ts';
import { QUICK_STARTS } from '../../catalogue/quick-starts.ts';
import { FACETS } from '../../catalogue/traits.ts';
import { type CarRow, carWithParts } from '../../store/cars.ts';
import { CAR_FORM, type CarForm, notADistance, readDistance, readForm } from '../forms.ts';
import { A, choiceOf, DistanceField, FaultSummary, Faults, faultsOf, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { LeftForm } from './car-left.tsx';

const EMPTY: CarForm = {
  name: '',
  built: '',
  builtChoice: '',
  builtAsked: '',
  start: '',
  distance: '',
  note: '',
  traits: [],
};

export const newCar = (c: Ctx) => page(c, 'Add a car', <NewCar given={EMPTY} faults={[]} />);

export const addCar = async (c: Ctx) => {
  const given = await readForm(c, CAR_FORM);
  const start = QUICK_STARTS.find(({ key }) => key === given.start);
  const { car, faults } = carGiven(given, start?.traits ?? []);
  if (!start)
    faults.push({
      field: 'start',
      message: 'Choose the one that comes closest; every detail can be changed afterwards.',
    });
  const outcome =
    faults.length > 0
      ? { ok: false as const, faults }
      : addCarAct(c.get('around').store, actingIn(c.get('visit')), car);
  if (!outcome.ok) return page(c, 'Add a car', <NewCar given={given} faults={outcome.faults} />, 422);
  return c.redirect(at(c.get('visit'), `/cars/${outcome.value}`), 303);
};

export const changeCarPage = (c: Ctx) => {
  const found = carWithParts(c.get('around').store, c.get('visit').collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const { name, builtTyped, builtEdtf, note, traits } = found.car;
  // What it meant when it was typed, not what it would mean to whoever changes the car now.
  const built = { built: builtTyped, builtAsked: builtTyped, builtChoice: builtEdtf ?? '' };
  const given = { ...EMPTY, ...built, name, note, traits: traits as CarForm['traits'] };
  return page(c, `Change ${name}`, <ChangeCar car={found.car} given={given} faults={[]} />);
};

export const changeCar = async (c: Ctx) => {
  const given = await readForm(c, CAR_FORM);
  const found = carWithParts(c.get('around').store, c.get('visit').collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const { car, faults } = carGiven(given, given.traits);
  const outcome =
    faults.length > 0
      ? { ok: false as const, faults }
      : changeCarAct(c.get('around').store, actingIn(c.get('visit')), found, car);
  if (!outcome.ok)
    return page(
      c,
      `Change ${found.car.name}`,
      <ChangeCar car={found.car} given={given} faults={outcome.faults} />,
      422,
    );
  return c.redirect(at(c.get('visit'), `/cars/${found.car.id}`), 303);
};

const carGiven = (given: CarForm, traits: readonly string[]): { car: CarGiven; faults: Fault[] } => {
  const faults: Fault[] = [];
  if (given.name === '') faults.push({ field: 'name', message: 'Give the car a name you know it by.' });
  const km = given.distance === '' ? null : readDistance(given.distance);
  if (given.distance !== '' && km === null) faults.push(notADistance(given.distance));
  const { name, built, builtChoice, builtAsked, note } = given;
  return { car: { name, built, builtChoice: choiceOf(built, builtAsked, builtChoice), traits, note, km }, faults };
};

interface Shown {
  given: CarForm;
  faults: readonly Fault[];
}

const NewCar = ({ given, faults }: Shown) => (
  <>
    <h1>Add a car</h1>
    <FaultSummary faults={faults} />
    <Post to="/cars" class="stacked">
      <NameAndBuild given={given} faults={faults} />
      <DistanceField label="Odometer, if you know it" value={given.distance} faults={faults} />
      <fieldset>
        <legend>How is it built? Take what comes closest.</legend>
        <Faults faults={faults} field="start" />
        <div class="cards">
          {QUICK_STARTS.map(({ key, name, era }) => (
            <label class="card">
              <input type="radio" name="start" value={key} checked={key === given.start} /> <strong>{name}</strong>{' '}
              <small>{era}</small>
            </label>
          ))}
        </div>
      </fieldset>
      <Note given={given} />
      <button>Add the car and its list of parts</button>
    </Post>
  </>
);

const ChangeCar = ({ car, given, faults }: Shown & { car: CarRow }) => (
  <>
    <h1>Change {given.name || 'the car'}</h1>
    <FaultSummary faults={faults} />
    <Post to={`/cars/${car.id}`} class="stacked">
      <NameAndBuild given={given} faults={faults} />
      <Faults faults={faults} field="traits" />
      <p class="hint">
        What you tick adds its parts to the list. What you take away closes its parts; those with a recorded date stay
        in the history.
      </p>
      <div class="facets">
        {FACETS.map(({ key, name, choose, traits }) => (
          <fieldset class="facet">
            <legend>{name}</legend>
            {Object.entries(traits).map(([trait, words]) => (
              <label>
                <input
                  type={choose === 'one' ? 'radio' : 'checkbox'}
                  name={choose === 'one' ? `one-${key}` : 'traits'}
                  value={trait}
                  checked={(given.traits as readonly string[]).includes(trait)}
                />{' '}
                {words}
              </label>
            ))}
          </fieldset>
        ))}
      </div>
      <Note given={given} />
      <button>Save the car</button>
    </Post>
    <p>
      <A to={`/cars/${car.id}`}>Back without saving</A>
    </p>
    {car.ours && car.leftOn === null && <LeftForm car={car} />}
  </>
);

const NameAndBuild = ({ given, faults }: Shown) => (
  <>
    <label>
      Name
      <input name="name" value={given.name} required maxlength={200} autocomplete="off" {...faultsOf(faults, 'name')} />
    </label>
    <Faults faults={faults} field="name" />
    <label>
      Built
      <input
        name="built"
        value={given.built}
        placeholder="1967, June 1967, about 1967, unknown"
        autocomplete="off"
        data-reads="date"
        {...faultsOf(faults, 'built')}
      />
    </label>
    <Faults faults={faults} field="built" picked={given.builtChoice} asked={given.builtAsked} text={given.built} />
  </>
);

const Note = ({ given }: { given: CarForm }) => (
  <label>
    Note
    <textarea name="note" rows={2}>
      {given.note}
    </textarea>
  </label>
);
