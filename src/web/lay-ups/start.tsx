/** Starting a lay-up in a minute, and changing what is known of it. */
import type { Fault } from '../../acts/fault.ts';
import { changeLayUpAct, startLayUp } from '../../acts/lay-up.ts';
import { stayHere } from '../../acts/stays.ts';
import { tellPlan } from '../../acts/tell-plan.ts';
import { CIRCUMSTANCES, NUMBERS, type NumberKey } from '../../plans/stay.ts';
import { type CarRow, carsOf, carWithParts } from '../../store/cars.ts';
import { type LayUpRow, layUpsOf } from '../../store/lay-ups.ts';
import { type PlaceRow, placeOfCar, placesOf } from '../../store/places.ts';
import { readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { givenIn, LAY_UP_FORM, type LayUpForm } from './forms.ts';
import { stayInPath, toRecord } from './in-path.ts';
import { isClosed, spanOf } from './words.ts';

export const newLayUp = (c: Ctx) => {
  const { collection } = c.get('visit');
  const { store } = c.get('around');
  const car = c.req.query('car') ?? '';
  const [last] = car === '' ? [] : layUpsOf(store, collection.id, car);
  const place = (car !== '' && placeOfCar(store, collection.id, car)?.place.id) || '';
  return show(c, null, { ...EMPTY, ...(last ? asBefore(last) : {}), car, place }, []);
};

const EMPTY: LayUpForm = {
  car: '',
  like: '',
  parkedOn: '',
  returnOn: '',
  place: '',
  visitor: '',
  phone: '',
  circumstances: [],
  dose: '',
  engine: '',
  cylinders: '',
  storageFrom: '',
  roadUntil: '',
  noticeFrom: '',
  renewsOn: '',
  rules: '',
  note: '',
};

/** What does not change from winter to winter. */
const asBefore = (row: LayUpRow): Partial<LayUpForm> => ({
  like: row.isTemplate ? row.id : '',
  visitor: row.visitorId ?? '',
  phone: row.phone,
  circumstances: row.circumstances,
  ...numbersOf(row),
  rules: row.papers.rules,
});

const numbersOf = ({ numbers }: LayUpRow): Record<NumberKey, string> => ({
  dose: String(numbers.dose ?? ''),
  engine: String(numbers.engine ?? ''),
  cylinders: String(numbers.cylinders ?? ''),
});

export const addLayUp = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store } = c.get('around');
  const form = await readForm(c, LAY_UP_FORM);
  const found = carWithParts(store, visit.collection.id, form.car);
  if (!found) return show(c, null, form, [{ field: 'car', message: 'Choose the car.' }]);
  const outcome = startLayUp(store, actingIn(visit), found, givenIn(form), form.like);
  if (!outcome.ok) return show(c, null, form, outcome.faults);
  const here = stayHere(store, visit.collection.id, outcome.value, visit.on);
  const writing = { today: visit.on, now: visit.now, href: visit.site.href };
  if (here) tellPlan(store, visit.collection, here, writing);
  return c.redirect(at(visit, `/lay-ups/${outcome.value}`), 303);
};

export const changeLayUpPage = (c: Ctx) => {
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  if (isClosed(here.record.row, c.get('visit').on)) return toRecord(c, here);
  const { row } = here.record;
  const { papers } = row;
  const form: LayUpForm = {
    ...EMPTY,
    ...asBefore(row),
    car: row.carId,
    parkedOn: row.parkedOn,
    returnOn: row.returnOn ?? '',
    place: here.place?.id ?? '',
    storageFrom: papers.storageFrom ?? '',
    roadUntil: papers.roadUntil ?? '',
    noticeFrom: papers.noticeFrom ?? '',
    renewsOn: papers.renewsOn ?? '',
    note: row.note,
  };
  return show(c, row, form, []);
};

export const changeLayUp = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  const form = await readForm(c, LAY_UP_FORM);
  const outcome = changeLayUpAct(c.get('around').store, actingIn(visit), here, givenIn(form));
  if (!outcome.ok) return show(c, here.record.row, form, outcome.faults);
  return c.redirect(at(visit, `/lay-ups/${here.record.row.id}`), 303);
};

const show = (c: Ctx, row: LayUpRow | null, given: LayUpForm, faults: readonly Fault[]) => {
  const { collection } = c.get('visit');
  const { store } = c.get('around');
  const cars = carsOf(store, collection.id).filter(({ ours, leftOn }) => ours && leftOn === null);
  const shown: Shown = {
    row,
    given,
    faults,
    cars,
    places: placesOf(store, collection.id),
    before: layUpsOf(store, collection.id).filter(({ isTemplate }) => isTemplate),
  };
  return page(c, row ? 'Change the lay-up' : 'Put a car away', <LayUpPage {...shown} />, faults.length > 0 ? 422 : 200);
};

interface Shown {
  row: LayUpRow | null;
  given: LayUpForm;
  faults: readonly Fault[];
  cars: CarRow[];
  places: PlaceRow[];
  before: LayUpRow[];
}

const LayUpPage = ({ row, given, faults, cars, places, before }: Shown) => {
  const { on } = useVisit();
  const nameOf = (id: string): string => cars.find((car) => car.id === id)?.name ?? '';
  return (
    <>
      <p class="crumb">
        <A to={row ? `/lay-ups/${row.id}` : '/lay-ups'}>{row ? nameOf(row.carId) : 'Lay-ups'}</A>
      </p>
      <h1>{row ? 'Change the lay-up' : 'Put a car away'}</h1>
      <p class="lede">
        {row
          ? 'The plan follows from what you say here. What was ticked stays ticked, and the plan says what changed.'
          : 'The car, the day and the place are enough; everything else can follow. A car that is parked already takes the day it was.'}
      </p>
      <FaultSummary faults={faults} />
      <Faults faults={faults} field="day" />
      <Post to={row ? `/lay-ups/${row.id}/change` : '/lay-ups'} class="stacked">
        {row ? (
          <input type="hidden" name="car" value={row.carId} />
        ) : (
          <>
            <label>
              Car
              <select name="car" required {...faultsOf(faults, 'car')}>
                <option value="">Choose</option>
                {cars.map(({ id, name }) => (
                  <option value={id} selected={id === given.car}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
            <Faults faults={faults} field="car" />
          </>
        )}
        <div class="row">
          <Day name="parkedOn" label="Parked on" given={given} faults={faults} />
          <Day name="returnOn" label="Comes back on (empty if open)" given={given} faults={faults} />
        </div>
        <label>
          Place it stands in
          <select name="place" {...faultsOf(faults, 'place')}>
            <option value="">Where the car stands now; if nobody has said, frost is taken for possible</option>
            {places.map(({ id, name }) => (
              <option value={id} selected={id === given.place}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <Faults faults={faults} field="place" />
        <p class="hint">
          Not in the list? <A to="/places/new">Add the place</A> before you fill this in, or later and then change the
          lay-up: its coldest night decides about coolant, battery and washer.
        </p>
        <Visitor given={given} faults={faults} />
        <label>
          Who to call, and the number, for the sheet behind the windshield
          <input name="phone" value={given.phone} placeholder="Odile, 555 0134" autocomplete="off" />
        </label>
        <fieldset class="choices">
          <legend>What is true of this stay</legend>
          {Object.entries(CIRCUMSTANCES).map(([key, words]) => (
            <label>
              <input
                type="checkbox"
                name="circumstances"
                value={key}
                checked={(given.circumstances as readonly string[]).includes(key)}
              />{' '}
              {words}
            </label>
          ))}
        </fieldset>
        {!row && before.length > 0 && (
          <label>
            Begin like
            <select name="like" {...faultsOf(faults, 'like')}>
              <option value="">No earlier one</option>
              {before.map((one) => (
                <option value={one.id} selected={one.id === given.like}>
                  {nameOf(one.carId)}: {spanOf(one, on)}
                </option>
              ))}
            </select>
          </label>
        )}
        <Papers given={given} faults={faults} />
        <Numbers given={given} faults={faults} />
        <label>
          Note
          <textarea name="note" rows={2}>
            {given.note}
          </textarea>
        </label>
        <button>{row ? 'Update the plan' : 'Make the plan'}</button>
      </Post>
    </>
  );
};

type Fields = { given: LayUpForm; faults: readonly Fault[] };
type DayName = 'parkedOn' | 'returnOn' | 'storageFrom' | 'roadUntil' | 'noticeFrom' | 'renewsOn';

const Day = ({ name, label, given, faults }: Fields & { name: DayName; label: string }) => (
  <div>
    <label>
      {label}
      <input name={name} type="date" value={given[name]} {...faultsOf(faults, name)} />
    </label>
    <Faults faults={faults} field={name} />
  </div>
);

const Visitor = ({ given, faults }: Fields) => {
  const { members } = useVisit();
  return (
    <>
      <label>
        Who looks in each month
        <select name="visitor" {...faultsOf(faults, 'visitor')}>
          <option value="">Whoever gets the letters</option>
          {members.map(({ id, name, email }) => (
            <option value={id} selected={id === given.visitor}>
              {name}
              {email ? '' : ' (no mail address)'}
            </option>
          ))}
        </select>
      </label>
      <Faults faults={faults} field="visitor" />
    </>
  );
};

const PAPER_DAYS = [
  ['storageFrom', 'Cover while it stands begins'],
  ['roadUntil', 'Cover for the road ends'],
  ['noticeFrom', 'Off-road notice takes effect'],
  ['renewsOn', 'The policy renews or runs out'],
] as const;

const Papers = ({ given, faults }: Fields) => (
  <details open={PAPER_DAYS.some(([name]) => given[name] !== '') || given.rules !== ''}>
    <summary>Insurer and registry: days, and the rules of your place</summary>
    <p class="hint">
      Nothing of this is guessed: what the law of the place asks is yours to find out and to write down here.
    </p>
    {PAPER_DAYS.map(([name, label]) => (
      <>
        <Day name={name} label={label} given={given} faults={faults} />
        <Faults faults={faults} field={name} />
      </>
    ))}
    <label>
      Rules of the place, policy number, whom to ask
      <textarea name="rules" rows={3}>
        {given.rules}
      </textarea>
    </label>
  </details>
);

const Numbers = ({ given, faults }: Fields) => (
  <details open={Object.keys(NUMBERS).some((key) => given[key as NumberKey] !== '')}>
    <summary>For amounts: stabilizer, oil into the bores</summary>
    {(Object.keys(NUMBERS) as NumberKey[]).map((key) => (
      <>
        <label>
          {NUMBERS[key].name}
          {NUMBERS[key].unit && `, ${NUMBERS[key].unit}`}
          <input name={key} inputmode="decimal" autocomplete="off" value={given[key]} {...faultsOf(faults, key)} />
        </label>
        <Faults faults={faults} field={key} />
      </>
    ))}
    <p class="hint">
      Tank size, placard and sidewall pressures, coolant and battery are told on the pages of those parts.
    </p>
  </details>
);
