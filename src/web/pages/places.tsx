/** Places: where the cars stand, the few numbers that tell their climate, and the year drawn from them. */
import type { Fault } from '../../acts/fault.ts';
import { addPlaceAct, changePlaceAct, putCarAct } from '../../acts/places.ts';
import { condenses, dewPoint } from '../../ageing/humid-air.ts';
import { monthsOf } from '../../ageing/place.ts';
import { inUnit } from '../../ageing/words.ts';
import { carsOf, carWithParts } from '../../store/cars.ts';
import { carsByPlace, findPlace, type PlaceRow, placesOf, removePlace } from '../../store/places.ts';
import { PLACE_FORM, type PlaceForm, PUT_FORM, readForm } from '../forms.ts';
import { A, FaultSummary, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { SHELTER_WORDS } from '../place-words.ts';
import { actingIn, at, type Ctx } from '../visit.ts';
import { showCar } from './car-sheet.tsx';
import { PlaceFields } from './place-form.tsx';
import { YearChart } from './year-chart.tsx';

export const placesPage = (c: Ctx) => {
  const { collection } = c.get('visit');
  const { store } = c.get('around');
  const stands = carsByPlace(store, collection.id);
  const here = carsOf(store, collection.id).filter(({ leftOn }) => leftOn === null);
  const names = new Map(here.map(({ id, name }) => [id, name]));
  const lines = placesOf(store, collection.id).map((place) => ({
    place,
    cars: (stands.get(place.id) ?? []).flatMap((id) => names.get(id) ?? []),
  }));
  return page(c, 'Places', <Places lines={lines} />);
};

const Places = ({ lines }: { lines: { place: PlaceRow; cars: string[] }[] }) => (
  <>
    <h1>Places</h1>
    <p class="lede">
      Where a car stands decides how cold its battery and coolant get, how fast its rubber and fuel age. A few numbers
      are enough.
    </p>
    {lines.length === 0 && <p>No place yet.</p>}
    <ul class="claims">
      {lines.map(({ place, cars }) => (
        <li>
          <A to={`/places/${place.id}`}>{place.name}</A>: {SHELTER_WORDS[place.shelter].toLowerCase()}, from{' '}
          {inUnit(place.winterLow, '°C', 0)} to {inUnit(place.summerHigh, '°C', 0)} outdoors.{' '}
          {cars.length === 0 ? 'No car stands there.' : `Here: ${cars.join(', ')}.`}
        </li>
      ))}
    </ul>
    <p>
      <A to="/places/new" class="button">
        Add a place
      </A>
    </p>
  </>
);

const EMPTY: PlaceForm = {
  name: '',
  winterLow: '',
  summerHigh: '',
  air: '',
  shelter: '',
  humidity: '',
  heatedTo: '',
  hemisphere: 'north',
  month: Array(12).fill(''),
  degrees: '°C',
  note: '',
};

export const newPlace = (c: Ctx) => showPlace(c, null, EMPTY, []);

export const placePage = (c: Ctx) => {
  const place = placeInPath(c);
  return place ? showPlace(c, place, formOf(place), []) : notFound(c, 'place');
};

export const savePlace = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store } = c.get('around');
  const place = placeInPath(c);
  if (c.req.param('placeId') && !place) return notFound(c, 'place');
  const form = await readForm(c, PLACE_FORM);
  const { month: months, degrees: unit, ...rest } = form;
  const given = { ...rest, months, unit };
  const outcome = place
    ? changePlaceAct(store, actingIn(visit), place.id, given)
    : addPlaceAct(store, actingIn(visit), given);
  if (!outcome.ok) return showPlace(c, place ?? null, form, outcome.faults);
  return c.redirect(at(visit, `/places/${place?.id ?? outcome.value}`), 303);
};

export const forgetPlace = (c: Ctx) => {
  const visit = c.get('visit');
  const place = placeInPath(c);
  if (!place) return notFound(c, 'place');
  removePlace(c.get('around').store, visit.collection.id, place.id);
  return c.redirect(at(visit, '/places'), 303);
};

/** Which place a car stands in. */
export const putCar = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store } = c.get('around');
  const found = carWithParts(store, visit.collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const { place } = await readForm(c, PUT_FORM);
  const outcome = putCarAct(store, actingIn(visit), found.car.id, place);
  if (!outcome.ok) return showCar(c, found.car.id, outcome.faults);
  return c.redirect(at(visit, `/cars/${found.car.id}#place`), 303);
};

const placeInPath = (c: Ctx): PlaceRow | undefined =>
  findPlace(c.get('around').store, c.get('visit').collection.id, c.req.param('placeId') ?? '');

const said = (value: number | null): string => (value === null ? '' : String(Number(value.toFixed(1))));

const degrees = (value: number | null): string => (value === null ? '' : `${said(value)} °C`);

const formOf = (place: PlaceRow): PlaceForm => ({
  name: place.name,
  winterLow: degrees(place.winterLow),
  summerHigh: degrees(place.summerHigh),
  air: place.air,
  shelter: place.shelter,
  humidity: said(place.humidity),
  heatedTo: degrees(place.heatedTo),
  hemisphere: place.hemisphere,
  month: place.months.map(degrees),
  degrees: '°C',
  note: place.note,
});

const showPlace = (c: Ctx, place: PlaceRow | null, given: PlaceForm, faults: readonly Fault[]) =>
  page(
    c,
    place?.name ?? 'Add a place',
    <PlacePage place={place} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );

interface Shown {
  place: PlaceRow | null;
  given: PlaceForm;
  faults: readonly Fault[];
}

/** A warm front: °C and % of the air that comes in. */
const FRONT = { air: 10, humidity: 70 } as const;

/** What warm air does to the metal there in the coldest month. */
const dampWords = (place: PlaceRow): string => {
  const metal = Math.min(...monthsOf(place).map(({ mean }) => mean));
  const wets = `Warm air let in at ${inUnit(FRONT.air, '°C', 0)} and ${inUnit(FRONT.humidity, '%', 0)} humidity wets whatever is colder than ${inUnit(dewPoint(FRONT.air, FRONT.humidity), '°C', 0)}`;
  const there = `in the coldest month metal there is about ${inUnit(metal, '°C', 0)}`;
  return condenses(metal, FRONT.air, FRONT.humidity)
    ? `${wets}; ${there}: keep doors shut in a warm front.`
    : `${wets}; ${there} and stays dry in it.`;
};

const PlacePage = ({ place, given, faults }: Shown) => (
  <>
    <p class="crumb">
      <A to="/places">Places</A>
    </p>
    <h1>{place?.name ?? 'Add a place'}</h1>
    <FaultSummary faults={faults} />
    {place && (
      <section aria-labelledby="year">
        <h2 id="year">Its year</h2>
        <YearChart place={place} />
        <p class="hint">
          Drawn from the numbers below: in most cities within 6 °C of what a weather office measures, in the rest within
          9 °C. A month you know better takes the place of the drawn one. For frost that matters, read a thermometer
          beside the car.
        </p>
        <p>{dampWords(place)}</p>
      </section>
    )}
    <PlaceFields place={place} given={given} faults={faults} />
    {place && (
      <details>
        <summary>Forget this place</summary>
        <Post to={`/places/${place.id}/forget`}>
          <p>The cars that stand there will stand nobody has said where.</p>
          <button>Forget it</button>
        </Post>
      </details>
    )}
  </>
);
