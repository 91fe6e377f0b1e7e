import { describe, expect, it } from 'vitest';
import { coldestNight, monthsOf, type Place } from '../../src/ageing/place.ts';
import { inUnit } from '../../src/ageing/words.ts';
import { addPlace, findPlace, placeOfCar, placesOf } from '../../src/store/places.ts';
import { barnOf, carIn, carOf, openBarn } from '../support/cars.ts';
import { faultAt, field, filledIn, inside, tags, text, ticked } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const BARN = {
  name: 'The <barn>',
  shelter: 'unheated',
  air: 'inland',
  degrees: '°C',
  winterLow: '-12',
  summerHigh: '33',
  note: 'Earth & straw',
};
const EMPTY_MONTHS = Array<string>(12).fill('');

const siteWithPlaces = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn);
  const { collectionId } = barn.acting;
  const read = async (path: string) => (await site.get(path)).text();
  /** Fills the form of a new place, or of one there is. */
  const save = async (form: Record<string, string | string[]>, placeId = '') => {
    const action = placeId ? `/places/${placeId}` : '/places';
    return site.post(action, { ...filledIn(await read(placeId ? action : '/places/new'), action), ...form });
  };
  const add = async (form: Record<string, string | string[]> = {}): Promise<string> => {
    const answer = await save({ ...BARN, ...form });
    expect(answer.status).toBe(303);
    return (answer.headers.get('location') ?? '').replace('/places/', '');
  };
  const place = (id: string) => findPlace(site.store, collectionId, id);
  const put = (placeId: string, car = carId) => site.post(`/cars/${car}/place`, { place: placeId });
  const standsIn = () => placeOfCar(site.store, collectionId, carId)?.place.id;
  return { site, barn, carId, collectionId, read, save, add, place, put, standsIn };
};

/** What the drawing of the year says. */
const year = (html: string): string => tags(html, 'svg').find((svg) => svg['class'] === 'chart')?.['aria-label'] ?? '';

describe('a place', () => {
  it('is added, listed, and drawn on its own page', async () => {
    const { read, add, place } = siteWithPlaces();
    const id = await add();
    expect(place(id)).toMatchObject({
      name: 'The <barn>',
      shelter: 'unheated',
      air: 'inland',
      winterLow: -12,
      summerHigh: 33,
      humidity: null,
      heatedTo: null,
      hemisphere: 'north',
      months: Array(12).fill(null),
      note: 'Earth & straw',
    });
    const list = await read('/places');
    expect(tags(list, 'a').map(({ href }) => href)).toContain(`/places/${id}`);
    expect(text(list)).toMatch(/The <barn>.*−12 °C.*33 °C/);
    const page = await read(`/places/${id}`);
    expect(inside(page, 'h1')).toEqual(['The <barn>']);
    expect(page).not.toContain('<barn>');
    expect(year(page)).not.toBe('');
  });

  it('says what a warm front wets there: metal below the dew point in the coldest month', async () => {
    const { read, add, place } = siteWithPlaces();
    const cold = await add();
    const metal = Math.min(...monthsOf(place(cold) as Place).map(({ mean }) => mean));
    // Air of 10 °C and 70 percent sheds water at 4.8 °C.
    expect(metal).toBeLessThan(4);
    const said = text(await read(`/places/${cold}`));
    expect(said).toContain('at 10 °C and 70 % humidity wets whatever is colder than 5 °C');
    expect(said).toContain(`metal there is about ${inUnit(metal, '°C', 0)}: keep doors shut in a warm front.`);
    const warm = await add({ shelter: 'heated', heatedTo: '15' });
    expect(text(await read(`/places/${warm}`))).not.toContain('keep doors shut');
  });

  it('may be told in °F, with decimals and units, and is kept in °C', async () => {
    const { read, add, place } = siteWithPlaces();
    const id = await add({ degrees: '°F', winterLow: '14', summerHigh: '95', shelter: 'heated', heatedTo: '59,0' });
    expect(place(id)).toMatchObject({ winterLow: -10, summerHigh: 35, heatedTo: 15 });
    const html = await read(`/places/${id}`);
    // Shown in the unit it says.
    expect(ticked(html, 'degrees')).toEqual(['°C']);
    for (const [name, degrees] of [
      ['winterLow', -10],
      ['summerHigh', 35],
      ['heatedTo', 15],
    ] as const)
      expect(Number.parseFloat(field(html, name)['value'] ?? '')).toBe(degrees);
    const other = await add({ winterLow: '5 °F', summerHigh: '30 °C' });
    expect(place(other)).toMatchObject({ winterLow: -15, summerHigh: 30 });
  });

  it('is changed, and saved as it stands stays as it is', async () => {
    const { add, save, place } = siteWithPlaces();
    const id = await add({ humidity: '62', hemisphere: 'south', month: ['21,5', ...EMPTY_MONTHS.slice(1)] });
    const before = place(id);
    expect(before).toMatchObject({ humidity: 62, hemisphere: 'south' });
    expect(before?.months[0]).toBe(21.5);
    expect((await save({}, id)).headers.get('location')).toBe(`/places/${id}`);
    expect(place(id)).toEqual(before);
    await save({ name: 'Coach house', shelter: 'damp', humidity: '' }, id);
    expect(place(id)).toMatchObject({ name: 'Coach house', shelter: 'damp', humidity: null, hemisphere: 'south' });
  });

  it('is corrected month by month; the others stay with the wave, and one emptied goes back to it', async () => {
    const { read, add, save, place } = siteWithPlaces();
    const id = await add();
    const wave = year(await read(`/places/${id}`));
    await save({ month: ['23 °F', ...EMPTY_MONTHS.slice(1, 11), '0'] }, id);
    expect(place(id)?.months).toEqual([-5, ...Array(10).fill(null), 0]);
    const stored = place(id);
    if (!stored) throw new Error('The place is gone');
    expect(monthsOf(stored)[0]?.mean).toBe(-5);
    expect(monthsOf(stored)[6]?.mean).toBe(monthsOf({ ...stored, months: Array(12).fill(null) })[6]?.mean);
    const html = await read(`/places/${id}`);
    expect([filledIn(html, `/places/${id}`)['month']].flat().map((typed) => Number.parseFloat(typed ?? ''))).toEqual([
      -5,
      ...Array(10).fill(Number.NaN),
      0,
    ]);
    expect(year(html)).not.toBe(wave);
    await save({ month: EMPTY_MONTHS }, id);
    expect(year(await read(`/places/${id}`))).toBe(wave);
  });

  it('keeps the numbers nobody touched when another unit is chosen for one month', async () => {
    const { add, save, place } = siteWithPlaces();
    const id = await add();
    await save({ month: ['23', ...EMPTY_MONTHS.slice(1)], degrees: '°F' }, id);
    expect(place(id)).toMatchObject({ winterLow: -12, summerHigh: 33, months: [-5, ...Array(11).fill(null)] });
  });

  it('that can’t be is refused, each fault beside its field, with all that was typed', async () => {
    const { save, collectionId, site } = siteWithPlaces();
    const months = ['mild', '200', ...EMPTY_MONTHS.slice(2)];
    const given = { ...BARN, name: '', winterLow: 'cold', summerHigh: '140', humidity: '3', month: months };
    const answer = await save(given);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    for (const name of ['name', 'winterLow', 'summerHigh', 'humidity']) expect(faultAt(html, name), name).toBeTruthy();
    expect(filledIn(html, '/places')).toMatchObject(given);
    const wrong = tags(html, 'input').filter((one) => one['name'] === 'month' && one['aria-invalid']);
    expect(wrong.map(({ value }) => value)).toEqual(['mild', '200']);
    // Every line of the summary leads to where it is wrong.
    const ways = tags(html, 'a').flatMap(({ href = '' }) => (href.endsWith('-fault') ? [href.slice(1)] : []));
    expect(ways).toHaveLength(6);
    expect(ways.filter((way) => !html.includes(`id="${way}"`))).toEqual([]);
    expect(placesOf(site.store, collectionId)).toEqual([]);
  });

  it.each([
    [{ winterLow: '20', summerHigh: '20' }, 'summerHigh'],
    [{ winterLow: '-12', summerHigh: '-13' }, 'summerHigh'],
    [{ winterLow: '-61' }, 'winterLow'],
    [{ winterLow: '' }, 'winterLow'],
    [{ summerHigh: '61' }, 'summerHigh'],
    [{ humidity: '101' }, 'humidity'],
    [{ shelter: 'heated', heatedTo: 'warm' }, 'heatedTo'],
  ])('with %j is wrong at %s', async (form, name) => {
    const { save, collectionId, site } = siteWithPlaces();
    const answer = await save({ ...BARN, ...form });
    expect(answer.status).toBe(422);
    expect(faultAt(await answer.text(), name)).toBeTruthy();
    expect(placesOf(site.store, collectionId)).toEqual([]);
  });

  it('asks what is over the car and what the air is like', async () => {
    const { site } = siteWithPlaces();
    const { shelter: _, air: __, ...rest } = BARN;
    const answer = await site.post('/places', rest);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('id="shelter-fault"');
    expect(html).toContain('id="air-fault"');
    expect(field(html, 'winterLow')['value']).toBe('-12');
  });

  it('of a form no page of ours sends is refused as a whole', async () => {
    const { site, collectionId } = siteWithPlaces();
    expect((await site.post('/places', { ...BARN, month: ['1', '2'] })).status).toBe(400);
    expect(placesOf(site.store, collectionId)).toEqual([]);
  });

  it('takes a car in and lets it go again', async () => {
    const { carId, read, add, put, standsIn } = siteWithPlaces();
    const [one, two] = [await add(), await add({ name: 'Garage' })];
    const answer = await put(one);
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/cars/${carId}#place`]);
    expect(standsIn()).toBe(one);
    const html = await read(`/cars/${carId}`);
    expect(filledIn(html, `/cars/${carId}/place`)).toEqual({ place: one });
    expect(tags(html, 'a').map(({ href }) => href)).toContain(`/places/${one}`);
    expect(text(await read('/places'))).toMatch(/The <barn>.*Merle Tourer/);
    await put(two);
    expect(standsIn()).toBe(two);
    await put('');
    expect(standsIn()).toBeUndefined();
  });

  it('judges frost for the car that stands there', async () => {
    const { site, barn, carId, read, add, put } = siteWithPlaces();
    const coolant = carOf(barn, carId).parts.find(({ kind }) => kind === 'coolant-iat')?.id ?? '';
    await site.post(`/cars/${carId}/readings`, { [`${coolant}.freeze-point.typed`]: '-20' });
    const line = async () => /<article class="gauge"><p>(.*?)<\/p>/s.exec(await read(`/parts/${coolant}`))?.[1] ?? '';
    expect(await line()).toContain('not judged');
    const id = await add({ shelter: 'open', winterLow: '-35' });
    await put(id);
    expect(await line()).toContain('act');
    await put(await add({ shelter: 'heated' }));
    expect(await line()).toContain('good');
    const place = findPlace(site.store, barn.acting.collectionId, id);
    expect(place && coldestNight(place)).toBeLessThan(-20);
  });

  it('forgotten leaves its cars nowhere said', async () => {
    const { site, carId, read, add, put, place, standsIn } = siteWithPlaces();
    const id = await add();
    await put(id);
    const action = `/places/${id}/forget`;
    expect(tags(await read(`/places/${id}`), 'form').map((form) => form['action'])).toContain(action);
    const answer = await site.post(action, {});
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/places']);
    expect(place(id)).toBeUndefined();
    expect(standsIn()).toBeUndefined();
    expect((await site.get(`/places/${id}`)).status).toBe(404);
    expect((await site.get(`/cars/${carId}`)).status).toBe(200);
    // A form that still offers it loses nothing and stores nothing.
    expect((await put(id)).status).toBe(422);
    expect(standsIn()).toBeUndefined();
  });

  it('of another collection is not there, can’t be written, and takes none of our cars', async () => {
    const { site, read, add, place, put, standsIn } = siteWithPlaces();
    const shed = openBarn(site.store, 'The shed');
    const ours = await add();
    const plain = place(ours);
    if (!plain) throw new Error('The place is gone');
    const { collectionId: _, id: __, ...copied } = plain;
    const theirs = addPlace(site.store, shed.acting.collectionId, { ...copied, name: 'Their loft' });
    const before = findPlace(site.store, shed.acting.collectionId, theirs);
    const theirCar = carIn(shed);
    expect((await site.get(`/places/${theirs}`)).status).toBe(404);
    expect((await site.post(`/places/${theirs}`, { ...BARN, month: EMPTY_MONTHS })).status).toBe(404);
    expect((await site.post(`/places/${theirs}/forget`, {})).status).toBe(404);
    expect(text(await read('/places'))).not.toContain('Their loft');
    expect((await put(theirs)).status).toBe(422);
    expect((await put(ours, theirCar)).status).toBe(404);
    expect(standsIn()).toBeUndefined();
    expect(placeOfCar(site.store, shed.acting.collectionId, theirCar)).toBeUndefined();
    expect(findPlace(site.store, shed.acting.collectionId, theirs)).toEqual(before);
  });

  it('seen as on another day keeps that day onward', async () => {
    const { site, save } = siteWithPlaces();
    expect((await save(BARN)).headers.get('location')).toMatch(/^\/places\/[^?]+$/);
    const answer = await site.post('/places?on=2027-04-01', { ...BARN, month: EMPTY_MONTHS });
    expect(answer.headers.get('location')).toMatch(/^\/places\/[^?]+\?on=2027-04-01$/);
  });
});
