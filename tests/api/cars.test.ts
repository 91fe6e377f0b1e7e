import { describe, expect, it } from 'vitest';
import { carsOf } from '../../src/store/cars.ts';
import { changeMember } from '../../src/store/people.ts';
import {
  apiCar,
  type CarDocument,
  document,
  type PartDocument,
  pointers,
  problemOf,
  ROADSTER_DOCUMENT,
} from '../support/api.ts';
import { carIn, openBarn, ROADSTER } from '../support/cars.ts';
import { openSite } from '../support/site.ts';

const NO_ID = '01900000-0000-7000-8000-000000000000';

interface Findings {
  carId: string;
  on: string;
  findings: {
    partId: string;
    kind: string;
    standing: string;
    severity: string;
    ruledBy: string;
    age: string;
    ageMonths: { youngest: number; oldest: number | null } | null;
    reasons: { text: string; sources: { title: string; grade: string }[] }[];
  }[];
  tires: string[];
}

describe('POST /cars', () => {
  it('adds a car with its list of parts and answers it', async () => {
    const site = openSite();
    const given = { ...ROADSTER_DOCUMENT, note: 'Red', km: 87_400 };
    const car = await document<CarDocument>(await site.send('POST', '/api/v1/cars', given), 201);
    expect(car).toMatchObject({
      name: 'Merle Tourer',
      built: { typed: 'June 1967', edtf: '1967-06', from: '1967-06-01', to: '1967-06-30' },
      note: 'Red',
      odometer: [{ day: '2026-11-25', km: 87_400 }],
    });
    expect(car.traits.toSorted()).toEqual(ROADSTER.toSorted());
    const { parts } = await document<{ parts: PartDocument[] }>(await site.get(`/api/v1/cars/${car.id}/parts`));
    expect(parts.length).toBeGreaterThan(50);
  });

  it('takes traits in place of a quick start', async () => {
    const site = openSite();
    const given = { name: 'Merle', built: 'unknown', traits: [...ROADSTER, 'timing-belt'] };
    const car = await document<CarDocument>(await site.send('POST', '/api/v1/cars', given), 201);
    expect(car.traits).toContain('timing-belt');
    expect(car.built).toEqual({ typed: 'unknown', edtf: null, from: null, to: null });
  });

  it('points at every field that is wrong, and adds nothing', async () => {
    const site = openSite();
    const send = async (given: unknown) =>
      pointers(await problemOf(await site.send('POST', '/api/v1/cars', given), 422));
    expect(await send({ name: ' ', built: '', quickStart: 'spaceship', km: 1.5 })).toEqual([
      '#/name',
      '#/built',
      '#/quickStart',
      '#/km',
    ]);
    expect(await send({ name: 'Merle', built: '1967' })).toEqual(['#/traits']);
    expect(await send({ name: 'Merle', built: '1967', traits: ['no-such-trait'] })).toEqual(['#/traits/0']);
    expect(await send({ name: 'x'.repeat(201), built: '1967', quickStart: ROADSTER_DOCUMENT.quickStart })).toEqual([
      '#/name',
    ]);
    expect(await send({ ...ROADSTER_DOCUMENT, built: 'long ago' })).toEqual(['#/built']);
    expect(new Set(await send({ name: 'Merle', built: '2027', traits: [] }))).toEqual(new Set(['#/built', '#/traits']));
    expect(carsOf(site.store, site.collectionId)).toEqual([]);
  });

  it('offers the days an ambiguous build date can be; builtChoice picks one', async () => {
    const site = openSite();
    const ada = { name: 'Ada', email: null, dateOrder: 'ask' as const, letters: true };
    changeMember(site.store, site.collectionId, site.personId, ada);
    const given = { ...ROADSTER_DOCUMENT, built: '3/4/1967' };
    const problem = await problemOf(await site.send('POST', '/api/v1/cars', given), 422);
    expect(problem.errors).toMatchObject([
      { pointer: '#/built', choices: [{ value: '1967-04-03', label: '3 April 1967' }, { value: '1967-03-04' }] },
    ]);
    const builtChoice = problem.errors?.[0]?.choices?.[1]?.value;
    const car = await document<CarDocument>(await site.send('POST', '/api/v1/cars', { ...given, builtChoice }), 201);
    expect(car.built).toMatchObject({ typed: '3/4/1967', from: '1967-03-04' });
  });

  it('as on another day adds it on that day', async () => {
    const site = openSite();
    await document(await site.send('POST', '/api/v1/cars?on=2027-04-01', { ...ROADSTER_DOCUMENT, built: '2027' }), 201);
    expect(carsOf(site.store, site.collectionId)).toMatchObject([{ addedOn: '2027-04-01', builtTo: '2027-04-01' }]);
  });
});

describe('GET /cars', () => {
  it('lists the collection’s cars by name', async () => {
    const site = openSite();
    carIn(openBarn(site.store, 'The shed'), { name: 'Their Six' });
    for (const name of ['Merle', 'Alder']) await site.send('POST', '/api/v1/cars', { ...ROADSTER_DOCUMENT, name });
    const { cars } = await document<{ cars: CarDocument[] }>(await site.get('/api/v1/cars'));
    expect(cars.map(({ name }) => name)).toEqual(['Alder', 'Merle']);
  });

  it('lists those of another collection where it is named', async () => {
    const site = openSite();
    const shed = openBarn(site.store, 'The shed');
    carIn(shed, { name: 'Their Six' });
    const answer = await site.get(`/api/v1/cars?collection=${shed.acting.collectionId}`);
    expect((await document<{ cars: CarDocument[] }>(answer)).cars.map(({ name }) => name)).toEqual(['Their Six']);
  });
});

describe('GET /cars/{id}', () => {
  it('answers the car', async () => {
    const site = openSite();
    const { car } = await apiCar(site);
    expect(await document(await site.get(`/api/v1/cars/${car.id}`))).toEqual(car);
  });
});

describe('GET /cars/{id}/findings', () => {
  it('answers a finding a part, with reasons and their sources', async () => {
    const site = openSite();
    const { car, part, parts } = await apiCar(site);
    const tire = await part('tires-road', 'front left');
    await site.send('PATCH', `/api/v1/parts/${tire.id}`, { dates: [{ clock: 'made', typed: '2318' }] });
    const answer = await document<Findings>(await site.get(`/api/v1/cars/${car.id}/findings`));
    expect([answer.carId, answer.on]).toEqual([car.id, '2026-11-25']);
    expect(answer.findings.map(({ partId }) => partId)).toEqual((await parts()).map(({ id }) => id));
    const finding = answer.findings.find(({ partId }) => partId === tire.id);
    expect(finding).toMatchObject({
      kind: 'tires-road',
      position: 'front left',
      severity: 'safety',
      standing: 'look',
      began: '2023-06-10',
      since: { from: '2018-06-10', to: '2018-06-16' },
      ageMonths: { youngest: 101, oldest: 101 },
      past: { worst: '2028-06-11', best: '2028-06-17' },
      label: null,
      ruledBy: 'practice',
      interval: { lookFrom: 60, replaceBy: 120, replaceByKm: null },
      age: 'Made 10 to 16 June 2018: 8 years',
    });
    expect(finding?.reasons[0]?.sources.length).toBeGreaterThan(2);
    expect(finding?.reasons[0]?.sources[0]?.grade).not.toBe('');
    const unproven = answer.findings.find(({ kind }) => kind === 'wiring');
    expect(unproven).toMatchObject({ standing: 'unproven', ageMonths: null });
  });

  it('answers as on another day', async () => {
    const site = openSite();
    const { car, part } = await apiCar(site);
    const tire = await part('tires-road', 'front left');
    await site.send('PATCH', `/api/v1/parts/${tire.id}`, { dates: [{ clock: 'made', typed: '2318' }] });
    const standing = async (on: string) => {
      const answer = await document<Findings>(await site.get(`/api/v1/cars/${car.id}/findings?on=${on}`));
      expect(answer.on).toBe(on);
      return answer.findings.find(({ partId }) => partId === tire.id)?.standing;
    };
    expect(await standing('2019-01-01')).toBe('in date');
    expect(await standing('2028-04-01')).toBe('due');
    expect(await standing('2028-06-11')).toBe('past');
  });
});

describe('POST /cars/{id}/parts', () => {
  it('adds a part with its dates and answers it', async () => {
    const site = openSite();
    const { car } = await apiCar(site);
    const given = {
      kind: 'tires-road',
      position: 'second spare',
      note: 'On the roof',
      dates: [{ clock: 'made', typed: '2318', evidence: 'read on the part' }],
    };
    const part = await document<PartDocument>(await site.send('POST', `/api/v1/cars/${car.id}/parts`, given), 201);
    expect(part).toMatchObject({
      carId: car.id,
      kind: 'tires-road',
      position: 'second spare',
      note: 'On the roof',
      closedOn: null,
      replaces: null,
      dates: [{ clock: 'made', said: 'date', typed: '2318', from: '2018-06-10', to: '2018-06-16' }],
    });
    expect(await document(await site.get(`/api/v1/parts/${part.id}`))).toEqual(part);
  });

  it('points at what is wrong, down to each date, and adds nothing', async () => {
    const site = openSite();
    const { car, parts } = await apiCar(site);
    const dated = { kind: 'brake-fluid-glycol', dates: [{ clock: 'filled', typed: '2024' }] };
    expect((await site.send('POST', `/api/v1/cars/${car.id}/parts`, dated)).status).toBe(201);
    const before = await parts();
    const send = async (given: unknown) =>
      pointers(await problemOf(await site.send('POST', `/api/v1/cars/${car.id}/parts`, given), 422));
    expect(await send({ kind: 'flux-capacitor' })).toEqual(['#/kind']);
    expect(await send({ kind: 'brake-fluid-glycol' })).toEqual(['#/position']);
    const dates = [
      { clock: 'fitted', typed: '2019' },
      { clock: 'fitted', typed: 'soon' },
      { clock: 'made', typed: '5418' },
    ];
    expect(await send({ kind: 'tires-road', position: 'x', dates })).toEqual(['#/dates/1/typed', '#/dates/2/typed']);
    expect(await send({ kind: 'tires-road', dates: [{ clock: 'born', typed: '' }] })).toEqual([
      '#/dates/0/clock',
      '#/dates/0/typed',
    ]);
    expect(await send({})).toEqual(['#/kind']);
    expect(await parts()).toEqual(before);
  });
});

describe('an id the collection has no car by', () => {
  it.each(['', '/findings', '/parts'])('is a 404 problem: GET /cars/{id}%s', async (path) => {
    const site = openSite();
    await problemOf(await site.get(`/api/v1/cars/${NO_ID}${path}`), 404);
    const theirs = carIn(openBarn(site.store, 'The shed'));
    await problemOf(await site.get(`/api/v1/cars/${theirs}${path}`), 404);
  });

  it('is a 404 problem: POST /cars/{id}/parts', async () => {
    const site = openSite();
    await problemOf(await site.send('POST', `/api/v1/cars/${NO_ID}/parts`, { kind: 'wiring' }), 404);
  });

  it('and is no id at all is a problem that points at it', async () => {
    expect(pointers(await problemOf(await openSite().get('/api/v1/cars/mine'), 422))).toEqual(['#/carId']);
  });
});
