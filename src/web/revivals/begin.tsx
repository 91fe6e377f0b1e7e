/** The intake: which car, when it last ran, why it was parked, where it stood, how it was put away, what it may cost. */
import { beginRevival, changeRevivalAct } from '../../acts/begin-revival.ts';
import type { Fault } from '../../acts/fault.ts';
import { isOver } from '../../acts/revivals.ts';
import type { Place } from '../../ageing/place.ts';
import { QUICK_STARTS } from '../../catalogue/quick-starts.ts';
import { dayInWords } from '../../dates/words.ts';
import { EVIDENCE, type Evidence } from '../../findings/facts.ts';
import { HANDS } from '../../revival/revival.ts';
import { PUT_AWAY, STOOD, type Stood, WHY_PARKED } from '../../revival/sleep.ts';
import { type CarRow, carsOf } from '../../store/cars.ts';
import { openLayUps } from '../../store/lay-ups.ts';
import { placeOfCar } from '../../store/places.ts';
import { notADistance, readDistance, readForm } from '../forms.ts';
import { A, choiceOf, DistanceField, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { INTAKE_FORM, type IntakeForm, SLEEP_FORM, sleepIn } from './forms.ts';
import { pathOf, revivalInPath } from './in-path.ts';

const EMPTY: IntakeForm = {
  car: '',
  name: '',
  built: '',
  builtChoice: '',
  builtAsked: '',
  start: '',
  ours: 'ours',
  distance: '',
  lastRan: '',
  lastRanChoice: '',
  lastRanAsked: '',
  lastRanBy: 'own memory',
  why: 'unknown',
  whyWords: '',
  whyBy: 'own memory',
  stood: [],
  putAway: 'unknown',
  putAwayBy: 'own memory',
  ceiling: '',
  hands: 'both',
  note: '',
};

/** What the records know already: a car that was laid up stood where its stay has it, from its parking day on. */
export const newRevival = (c: Ctx) => {
  const { collection, on } = c.get('visit');
  const { store } = c.get('around');
  const car = c.req.query('car') ?? '';
  const stay = openLayUps(store, collection.id, on).get(car);
  const place = placeOfCar(store, collection.id, car)?.place;
  const known: Partial<IntakeForm> = {
    car,
    ours: c.req.query('look') === undefined ? 'ours' : 'looking',
    stood: place ? stoodIn(place) : [],
    ...(stay ? { lastRan: dayInWords(stay.parkedOn), why: 'put away' } : {}),
  };
  return show(c, { ...EMPTY, ...known }, []);
};

const SHELTERS: Readonly<Partial<Record<Place['shelter'], Stood>>> = {
  heated: 'heated',
  unheated: 'dry',
  damp: 'damp',
  covered: 'covered',
  open: 'open',
};

const stoodIn = ({ shelter, air }: Place): Stood[] => {
  const under = SHELTERS[shelter];
  return [...(under ? [under] : []), ...(air === 'coast' || air === 'desert' ? [air] : [])];
};

export const addRevival = async (c: Ctx) => {
  const visit = c.get('visit');
  const form = await readForm(c, INTAKE_FORM);
  const km = form.distance === '' ? null : readDistance(form.distance);
  if (form.distance !== '' && km === null) return show(c, form, [notADistance(form.distance)]);
  const { name, built, builtChoice, builtAsked, start } = form;
  const outcome = beginRevival(c.get('around').store, actingIn(visit), {
    ...sleepIn(form),
    km,
    car:
      form.car === ''
        ? { name, built, builtChoice: choiceOf(built, builtAsked, builtChoice), start, ours: form.ours === 'ours' }
        : { carId: form.car },
  });
  if (!outcome.ok) return show(c, form, outcome.faults);
  return c.redirect(at(visit, `/revivals/${outcome.value}/survey`), 303);
};

const show = (c: Ctx, given: IntakeForm, faults: readonly Fault[]) => {
  const { collection } = c.get('visit');
  const cars = carsOf(c.get('around').store, collection.id).filter(({ ours, leftOn }) => ours && leftOn === null);
  return page(c, 'A sleeper', <Intake given={given} faults={faults} cars={cars} />, faults.length > 0 ? 422 : 200);
};

interface Shown {
  given: IntakeForm;
  faults: readonly Fault[];
}

const Intake = ({ given, faults, cars }: Shown & { cars: readonly CarRow[] }) => (
  <>
    <p class="crumb">
      <A to="/revivals">Return to road</A>
    </p>
    <h1>Stand before a sleeper</h1>
    <p class="lede">
      Ten minutes at the car; most of it can be left empty, and is then taken at its worst. Nothing is started, charged,
      jumped or cleaned before its plan says so.
    </p>
    <FaultSummary faults={faults} />
    <Post to="/revivals" class="stacked">
      <fieldset class="choices">
        <legend>The car</legend>
        {cars.length > 0 && (
          <label>
            One of yours
            <select name="car" {...faultsOf(faults, 'car')}>
              <option value="">none of them: it is described below</option>
              {cars.map(({ id, name }) => (
                <option value={id} selected={id === given.car}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        )}
        <Faults faults={faults} field="car" />
        <details open={given.car === ''}>
          <summary>Another one: yours by now, or one you only look at</summary>
          <label>
            Name
            <input name="name" value={given.name} autocomplete="off" {...faultsOf(faults, 'name')} />
          </label>
          <Faults faults={faults} field="name" />
          <label>
            Built
            <input
              name="built"
              value={given.built}
              placeholder="1967, about 1967, unknown"
              autocomplete="off"
              data-reads="date"
              {...faultsOf(faults, 'built')}
            />
          </label>
          <Faults
            faults={faults}
            field="built"
            picked={given.builtChoice}
            asked={given.builtAsked}
            text={given.built}
          />
          <label>
            What comes closest
            <select name="start" {...faultsOf(faults, 'start')}>
              <option value="">choose</option>
              {QUICK_STARTS.map(({ key, name }) => (
                <option value={key} selected={key === given.start}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <Faults faults={faults} field="start" />
          <label>
            <input type="radio" name="ours" value="ours" checked={given.ours === 'ours'} /> It is in the collection
          </label>
          <label>
            <input type="radio" name="ours" value="looking" checked={given.ours === 'looking'} /> It is not ours: only
            looked at, no letter speaks of it
          </label>
        </details>
      </fieldset>
      <DistanceField label="Odometer, if it can be read" value={given.distance} faults={faults} />
      <SleepFields given={given} faults={faults} />
      <button class="big">Go on to the first look</button>
    </Post>
  </>
);

type SleepForm = Pick<
  IntakeForm,
  | 'lastRan'
  | 'lastRanChoice'
  | 'lastRanAsked'
  | 'lastRanBy'
  | 'why'
  | 'whyWords'
  | 'whyBy'
  | 'stood'
  | 'putAway'
  | 'putAwayBy'
  | 'ceiling'
  | 'hands'
  | 'note'
>;

const SleepFields = ({ given, faults }: { given: SleepForm; faults: readonly Fault[] }) => {
  const { collection } = useVisit();
  return (
    <>
      <label>
        When it last ran
        <input
          name="lastRan"
          value={given.lastRan}
          placeholder="2004, about 2004, before 1998, unknown"
          autocomplete="off"
          data-reads="date"
          {...faultsOf(faults, 'lastRan')}
        />
      </label>
      <Faults
        faults={faults}
        field="lastRan"
        picked={given.lastRanChoice}
        asked={given.lastRanAsked}
        text={given.lastRan}
      />
      <HowKnown name="lastRanBy" value={given.lastRanBy} />
      <Choices legend="Why it was parked" name="why" of={WHY_PARKED} chosen={given.why} />
      <label>
        In their words
        <input name="whyWords" value={given.whyWords} autocomplete="off" placeholder="water pump noisy" />
      </label>
      <HowKnown name="whyBy" value={given.whyBy} />
      <fieldset class="choices">
        <legend>Where it stood: all that is true</legend>
        {Object.entries(STOOD).map(([key, words]) => (
          <label>
            <input type="checkbox" name="stood" value={key} checked={given.stood.includes(key as Stood)} /> {words}
          </label>
        ))}
      </fieldset>
      <Choices legend="How it was put away" name="putAway" of={PUT_AWAY} chosen={given.putAway} />
      <HowKnown name="putAwayBy" value={given.putAwayBy} />
      <label>
        What it may cost in all, {collection.currency}
        <input
          name="ceiling"
          inputmode="decimal"
          autocomplete="off"
          value={given.ceiling}
          {...faultsOf(faults, 'ceiling')}
        />
      </label>
      <Faults faults={faults} field="ceiling" />
      <Choices legend="Whose hands" name="hands" of={HANDS} chosen={given.hands} />
      <label>
        Note
        <textarea name="note" rows={2}>
          {given.note}
        </textarea>
      </label>
    </>
  );
};

const HowKnown = ({ name, value }: { name: string; value: Evidence }) => (
  <label>
    How that is known
    <select name={name}>
      {EVIDENCE.map((one) => (
        <option value={one} selected={one === value}>
          {one}
        </option>
      ))}
    </select>
  </label>
);

const Choices = ({
  legend,
  name,
  of,
  chosen,
}: {
  legend: string;
  name: string;
  of: Readonly<Record<string, string>>;
  chosen: string;
}) => (
  <fieldset class="choices">
    <legend>{legend}</legend>
    {Object.entries(of).map(([key, words]) => (
      <label>
        <input type="radio" name={name} value={key} checked={key === chosen} /> {words}
      </label>
    ))}
  </fieldset>
);

export const changeRevivalPage = (c: Ctx) => {
  const here = revivalInPath(c);
  if (!here) return notFound(c, 'return');
  if (isOver(here.record, c.get('visit').on)) return c.redirect(at(c.get('visit'), pathOf(here)), 303);
  const { row } = here.record;
  const given: SleepForm = {
    ...row,
    lastRan: row.lastRanTyped,
    // What it meant when it was typed, not what it would mean to whoever changes it now.
    lastRanAsked: row.lastRanTyped,
    lastRanChoice: row.lastRanFrom === row.lastRanTo ? (row.lastRanFrom ?? '') : '',
    ceiling: row.ceiling === null ? '' : String(row.ceiling),
  };
  return showChange(c, pathOf(here), here.found.car.name, given, []);
};

export const changeRevival = async (c: Ctx) => {
  const here = revivalInPath(c);
  if (!here) return notFound(c, 'return');
  const form = await readForm(c, SLEEP_FORM);
  const outcome = changeRevivalAct(c.get('around').store, actingIn(c.get('visit')), here, sleepIn(form));
  if (!outcome.ok) return showChange(c, pathOf(here), here.found.car.name, form, outcome.faults);
  return c.redirect(at(c.get('visit'), pathOf(here)), 303);
};

const showChange = (c: Ctx, path: string, name: string, given: SleepForm, faults: readonly Fault[]) =>
  page(
    c,
    `How ${name} slept`,
    <>
      <p class="crumb">
        <A to={path}>Return of {name}</A>
      </p>
      <h1>How {name} slept</h1>
      <p class="lede">The plan is made anew from it; what was done and seen stays.</p>
      <FaultSummary faults={faults} />
      <Post to={`${path}/change`} class="stacked">
        <SleepFields given={given} faults={faults} />
        <button>Save</button>
      </Post>
    </>,
    faults.length > 0 ? 422 : 200,
  );
