import { describe, expect, it } from 'vitest';
import { monthsOf } from '../../src/ageing/place.ts';
import { addPlace, placesOf } from '../../src/store/places.ts';
import { apiCar, type CarDocument, document, pointers, problemOf } from '../support/api.ts';
import { carIn, openBarn } from '../support/cars.ts';
import { FROSTY } from '../support/readings.ts';
import { openSite } from '../support/site.ts';

const NO_ID = '01900000-0000-7000-8000-000000000000';
const NO_MONTHS = Array<null>(12).fill(null);
const BARN = { name: 'Barn', winterLow: -12, summerHigh: 33, air: 'inland', shelter: 'unheated' };

interface Place {
  id: string;
  name: string;
  winterLow: number;
  months: (number | null)[];
  cars: string[];
  year: { mean: number; low: number; high: number }[];
}

const open = () => {
  const site = openSite();
  const add = (given: unknown) => site.send('POST', '/api/v1/places', given);
  const added = async (given: unknown = BARN) => document<Place>(await add(given), 201);
  const list = async () => (await document<{ places: Place[] }>(await site.get('/api/v1/places'))).places;
  const put = (carId: string, place: unknown) => site.send('PUT', `/api/v1/cars/${carId}/place`, { place });
  return { site, add, added, list, put };
};

describe('POST /places', () => {
  it('adds a place and answers it with the year it is reckoned with', async () => {
    const { site, added } = open();
    const place = await added({ ...BARN, note: 'Earth floor' });
    expect(place).toMatchObject({
      ...BARN,
      humidity: null,
      heatedTo: null,
      hemisphere: 'north',
      months: NO_MONTHS,
      note: 'Earth floor',
      cars: [],
    });
    const [stored] = placesOf(site.store, site.collectionId);
    const months = stored ? monthsOf(stored) : [];
    expect(place.year).toHaveLength(12);
    for (const [index, { mean, low, high }] of place.year.entries()) {
      expect(mean).toBeCloseTo(months[index]?.mean ?? Number.NaN, 0);
      expect([low <= mean, mean <= high]).toEqual([true, true]);
    }
    expect(await document(await site.get(`/api/v1/places/${place.id}`))).toEqual(place);
  });

  it('takes temperatures in °F, as numbers or as typed, and months known better', async () => {
    const { added } = open();
    const months = ['50', 50, ...Array<null>(10).fill(null)];
    const given = { ...BARN, unit: '°F', winterLow: 14, summerHigh: '32 °C', shelter: 'heated', heatedTo: 59, months };
    const place = await added({ ...given, humidity: 60, hemisphere: 'south' });
    expect(place).toMatchObject({ winterLow: -10, summerHigh: 32, heatedTo: 15, humidity: 60, hemisphere: 'south' });
    expect(place.months).toEqual([10, 10, ...Array<null>(10).fill(null)]);
    expect(place.year.slice(0, 2).map(({ mean }) => mean)).toEqual([10, 10]);
  });

  it.each<[Record<string, unknown>, string[]]>([
    [{ name: ' ' }, ['#/name']],
    [{ winterLow: 'cold' }, ['#/winterLow']],
    [{ winterLow: null, air: 'sea', shelter: '' }, ['#/winterLow', '#/air', '#/shelter']],
    [{ winterLow: 33 }, ['#/summerHigh']],
    [{ winterLow: -90, humidity: 120 }, ['#/winterLow', '#/humidity']],
    [{ unit: 'K' }, ['#/unit']],
    [{ months: [1, 2] }, ['#/months']],
    [{ months: [...Array<null>(10).fill(null), 'mild', 99] }, ['#/months/10', '#/months/11']],
  ])('points at what is wrong with %j, and adds nothing', async (more, where) => {
    const { add, list } = open();
    expect(pointers(await problemOf(await add({ ...BARN, ...more }), 422))).toEqual(where);
    expect(await list()).toEqual([]);
  });
});

describe('GET /places', () => {
  it('lists the collection’s places by name, with the cars that stand there', async () => {
    const { site, added, list, put } = open();
    const shed = openBarn(site.store, 'The shed');
    addPlace(site.store, shed.acting.collectionId, { ...FROSTY, name: 'Their yard', note: '' });
    const { car } = await apiCar(site);
    const garage = await added({ ...BARN, name: 'Garage' });
    const barn = await added();
    await document(await put(car.id, garage.id));
    expect((await list()).map(({ name, cars }) => [name, cars])).toEqual([
      [barn.name, []],
      [garage.name, [car.id]],
    ]);
  });
});

describe('PUT /places/{id}', () => {
  it('says the place anew: what is left out is no longer said', async () => {
    const { site, added } = open();
    const { id } = await added({ ...BARN, humidity: 70, months: [5, ...Array<null>(11).fill(null)] });
    const change = (given: unknown) => site.send('PUT', `/api/v1/places/${id}`, given);
    const place = await document<Place>(await change({ ...BARN, winterLow: -20 }));
    expect(place).toMatchObject({ id, winterLow: -20, humidity: null, months: NO_MONTHS });
    expect(pointers(await problemOf(await change({ ...BARN, winterLow: 60 }), 422))).toEqual(['#/summerHigh']);
    expect(await document(await site.get(`/api/v1/places/${id}`))).toEqual(place);
  });
});

describe('PUT /cars/{id}/place', () => {
  it('puts the car there, elsewhere, or nowhere known', async () => {
    const { site, added, put } = open();
    const { car } = await apiCar(site);
    expect(car.place).toBeNull();
    for (const place of [(await added()).id, (await added({ ...BARN, name: 'Yard' })).id, null]) {
      expect(await document(await put(car.id, place))).toEqual({ ...car, place });
      expect(await document<CarDocument>(await site.get(`/api/v1/cars/${car.id}`))).toEqual({ ...car, place });
    }
  });

  it('points at a place that is none of the collection’s, and leaves the car where it is', async () => {
    const { site, added, put } = open();
    const { car } = await apiCar(site);
    const { id } = await added();
    await document(await put(car.id, id));
    const shed = openBarn(site.store, 'The shed');
    const theirs = addPlace(site.store, shed.acting.collectionId, { ...FROSTY, name: 'Their yard', note: '' });
    for (const place of [theirs, NO_ID, 'barn', undefined])
      expect(pointers(await problemOf(await put(car.id, place), 422))).toEqual(['#/place']);
    expect((await document<CarDocument>(await site.get(`/api/v1/cars/${car.id}`))).place).toBe(id);
  });
});

describe('an id the collection has no place or car by', () => {
  it('is a 404 problem', async () => {
    const { site, put } = open();
    const shed = openBarn(site.store, 'The shed');
    const theirs = addPlace(site.store, shed.acting.collectionId, { ...FROSTY, name: 'Their yard', note: '' });
    for (const id of [theirs, NO_ID]) {
      await problemOf(await site.get(`/api/v1/places/${id}`), 404);
      await problemOf(await site.send('PUT', `/api/v1/places/${id}`, BARN), 404);
    }
    await problemOf(await put(carIn(shed), null), 404);
    expect(placesOf(site.store, shed.acting.collectionId)).toMatchObject([{ name: 'Their yard', winterLow: -20 }]);
  });
});
