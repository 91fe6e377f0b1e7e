/** The places where cars stand: saying what is known of their climate, and which car stands where. */
import { AIRS, type Air, type Place, SHELTERS, type Shelter } from '../ageing/place.ts';
import { convert } from '../catalogue/units.ts';
import { MONTHS } from '../dates/words.ts';
import type { Store } from '../store/open.ts';
import { addPlace, changePlace, findPlace, type NewPlace, putCar } from '../store/places.ts';
import type { Acting } from './add-car.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { readNumber } from './typed-number.ts';

/** A place as a person describes it; temperatures in the unit chosen, numbers as typed. */
export interface PlaceGiven {
  name: string;
  winterLow: string;
  summerHigh: string;
  air: string;
  shelter: string;
  humidity: string;
  heatedTo: string;
  hemisphere: string;
  months: readonly string[];
  unit: string;
  note: string;
}

const isAir = (text: string): text is Air => AIRS.some((air) => air === text);
const isShelter = (text: string): text is Shelter => SHELTERS.some((shelter) => shelter === text);

export const addPlaceAct = (store: Store, acting: Acting, given: PlaceGiven, id?: string): Outcome<string> => {
  const read = readPlace(given);
  return read.ok ? done(addPlace(store, acting.collectionId, read.value, id)) : read;
};

export const changePlaceAct = (store: Store, acting: Acting, id: string, given: PlaceGiven): Outcome<null> => {
  const read = readPlace(given);
  if (!read.ok) return read;
  changePlace(store, acting.collectionId, id, read.value, acting.today);
  return done(null);
};

/** Puts a car into a place of its own collection, or (empty) nowhere known. */
export const putCarAct = (store: Store, acting: Acting, carId: string, placeId: string): Outcome<null> => {
  if (placeId !== '' && !findPlace(store, acting.collectionId, placeId))
    return refused({ field: 'place', message: 'There is no such place any more. Choose another.' });
  putCar(store, acting.collectionId, carId, placeId || null, acting.today);
  return done(null);
};

/** What places on earth have had, °C. */
const ON_EARTH: readonly [number, number] = [-60, 60];

/** Reads a place, or says all that is wrong with it. */
const readPlace = (given: PlaceGiven): Outcome<NewPlace> => {
  const faults: Fault[] = [];
  const temperature = (field: string, name: string, typed: string): number | null => {
    const read = readNumber(typed, given.unit === '°F' ? '°F' : '°C', ['°C', '°F'], 1);
    const value = read.ok ? convert(read.value, read.unit, '°C') : null;
    if (!read.ok) faults.push({ field, message: `${name}: ${read.message}` });
    else if (value !== null && (value < ON_EARTH[0] || value > ON_EARTH[1]))
      faults.push({ field, message: `${name}: “${typed}” is beyond what any place has; check the unit.` });
    return value;
  };
  const maybe = (field: string, name: string, typed: string): number | null =>
    typed.trim() === '' ? null : temperature(field, name, typed);
  const { name, air, shelter, hemisphere, note } = given;
  if (name === '') faults.push({ field: 'name', message: 'Give the place a name, such as “barn” or “home garage”.' });
  const winterLow = temperature('winterLow', 'Coldest night', given.winterLow);
  const summerHigh = temperature('summerHigh', 'Hottest day', given.summerHigh);
  if (winterLow !== null && summerHigh !== null && winterLow >= summerHigh)
    faults.push({ field: 'summerHigh', message: 'The hottest day must be warmer than the coldest night.' });
  if (!isAir(air)) faults.push({ field: 'air', message: 'Choose coast, inland or desert.' });
  if (!isShelter(shelter)) faults.push({ field: 'shelter', message: 'Choose what is over the car.' });
  const heatedTo = shelter === 'heated' ? maybe('heatedTo', 'Heated to', given.heatedTo) : null;
  const humidity = humidityOf(given.humidity, faults);
  const months: Place['months'] = Array.from({ length: 12 }, (_, month) =>
    maybe(`month${month}`, MONTHS[month] ?? '', given.months[month] ?? ''),
  );
  if (faults.length > 0 || winterLow === null || summerHigh === null || !isAir(air) || !isShelter(shelter))
    return { ok: false, faults };
  return done({
    name,
    note,
    winterLow,
    summerHigh,
    air,
    shelter,
    humidity,
    heatedTo,
    hemisphere: hemisphere === 'south' ? 'south' : 'north',
    months,
  });
};

const humidityOf = (typed: string, faults: Fault[]): number | null => {
  if (typed.trim() === '') return null;
  const read = readNumber(typed, '%', ['%'], 0);
  if (read.ok && read.value >= 5 && read.value <= 100) return read.value;
  faults.push({ field: 'humidity', message: 'Humidity is a number from 5 to 100 %, or leave it empty.' });
  return null;
};
