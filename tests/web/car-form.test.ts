import { describe, expect, it } from 'vitest';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import { FACETS, STATED_TRAITS } from '../../src/catalogue/traits.ts';
import { type CarRow, carsOf } from '../../src/store/cars.ts';
import { changeMember } from '../../src/store/people.ts';
import { barnOf, carIn, carOf, ROADSTER } from '../support/cars.ts';
import { choices, faultAt, field, filledIn, inside, tags, text, ticked } from '../support/html.ts';
import { openSite, type TestSite } from '../support/site.ts';

const FORM = {
  name: 'Merle <Tourer> & "co"',
  built: 'June 1967',
  builtChoice: '',
  builtAsked: '',
  start: 'roadster-disc-drum-overdrive',
  distance: '54,300 mi',
  note: 'Second body,\nred & white',
};

const cars = ({ store, collectionId }: TestSite): CarRow[] => carsOf(store, collectionId);
const onlyCar = (site: TestSite): CarRow => {
  const [car, ...others] = cars(site);
  if (!car || others.length > 0) throw new Error(`There are ${others.length + (car ? 1 : 0)} cars`);
  return car;
};

/** A site whose person has set no order of day and month. */
const askingSite = (): TestSite => {
  const site = openSite();
  const ada = { name: 'Ada', email: 'ada@example.org', letters: true };
  changeMember(site.store, site.collectionId, site.personId, { ...ada, dateOrder: 'ask' });
  return site;
};

describe('adding a car', () => {
  it('leads to the new car’s sheet, with everything that was typed on it', async () => {
    const site = openSite();
    const answer = await site.post('/cars', FORM);
    expect(answer.status).toBe(303);
    const car = onlyCar(site);
    expect(answer.headers.get('location')).toBe(`/cars/${car.id}`);
    expect(car).toMatchObject({ name: FORM.name, builtFrom: '1967-06-01', builtTo: '1967-06-30', traits: ROADSTER });
    const html = await (await site.get(`/cars/${car.id}`)).text();
    expect(inside(html, 'h1')).toEqual([FORM.name]);
    expect(text(html)).toContain('Built June 1967; 87,387 km on 2026-11-25.');
    expect(text(html)).toContain('red & white');
    expect(inside(await (await site.get('/')).text(), 'h2')[0]).toBe(`${FORM.name} built June 1967`);
  });

  it('as on another day adds it on that day', async () => {
    const site = openSite();
    const answer = await site.post('/cars?on=2027-04-01', FORM);
    expect(answer.headers.get('location')).toBe(`/cars/${onlyCar(site).id}?on=2027-04-01`);
    expect(onlyCar(site).addedOn).toBe('2027-04-01');
  });

  it('that is rejected keeps everything typed and says at each field what is wrong', async () => {
    const site = openSite();
    const answer = await site.post('/cars', {
      ...FORM,
      name: '',
      built: 'once <upon> a time',
      distance: 'far',
      start: '',
    });
    expect(answer.status).toBe(422);
    expect(cars(site)).toEqual([]);
    const html = await answer.text();
    expect(inside(html, 'h1')).toEqual(['Add a car']);
    expect(field(html, 'name')['value']).toBe('');
    expect(field(html, 'built')['value']).toBe('once <upon> a time');
    expect(field(html, 'distance')['value']).toBe('far');
    expect(inside(html, 'textarea')).toEqual(['Second body, red & white']);
    expect(faultAt(html, 'name')).toBe('Give the car a name you know it by.');
    expect(faultAt(html, 'distance')).toContain('“far” is no distance');
    expect(field(html, 'name')['aria-invalid']).toBe('true');
    expect(text(html)).toContain('Nothing was saved yet and nothing you typed is lost. 3 things need your answer:');
    expect(text(html)).toContain('Choose the one that comes closest');
  });

  it('keeps the start picked where something else was wrong', async () => {
    const html = await (await openSite().post('/cars', { ...FORM, built: '' })).text();
    expect(ticked(html, 'start')).toEqual([FORM.start]);
    expect(faultAt(html, 'built')).toContain('Nothing was typed');
    expect(field(html, 'name')['aria-describedby']).toBeUndefined();
    expect(field(html, 'name')['value']).toBe(FORM.name);
  });

  it('offers every quick start', async () => {
    const html = await (await openSite().get('/cars/new')).text();
    const offered = tags(html, 'input').filter(({ name }) => name === 'start');
    expect(offered.map(({ value }) => value)).toEqual(QUICK_STARTS.map(({ key }) => key));
  });
});

describe('a build date that can mean two days', () => {
  const typed = { ...FORM, built: '3/4/1967' };

  it('is asked beside its field, and the one picked is taken', async () => {
    const site = askingSite();
    const asked = await site.post('/cars', typed);
    expect(asked.status).toBe(422);
    const html = await asked.text();
    expect(choices(html, 'built')).toEqual(['1967-04-03', '1967-03-04']);
    expect(faultAt(html, 'built')).toContain('3 April 1967');
    const builtAsked = field(html, 'builtAsked')['value'] ?? '';
    expect(builtAsked).toBe('3/4/1967');
    expect((await site.post('/cars', { ...typed, builtAsked, builtChoice: '1967-03-04' })).status).toBe(303);
    expect(onlyCar(site)).toMatchObject({ builtTyped: '3/4/1967', builtFrom: '1967-03-04' });
  });

  it('forgets the choice once the text is another one', async () => {
    const site = askingSite();
    const changed = { ...FORM, built: '5/6/1967', builtAsked: '3/4/1967', builtChoice: '1967-03-04' };
    const answer = await site.post('/cars', changed);
    expect(answer.status).toBe(422);
    expect(choices(await answer.text(), 'built')).toEqual(['1967-06-05', '1967-05-06']);
    await site.post('/cars', { ...changed, built: '1968' });
    expect(onlyCar(site)).toMatchObject({ builtTyped: '1968', builtFrom: '1968-01-01' });
  });

  it('keeps the choice while another field is put right', async () => {
    const site = askingSite();
    const picked = { ...typed, builtAsked: '3/4/1967', builtChoice: '1967-03-04' };
    const html = await (await site.post('/cars', { ...picked, name: '' })).text();
    expect(faultAt(html, 'name')).toBeDefined();
    const again = { ...filledIn(html, '/cars'), name: 'Merle' };
    expect((await site.post('/cars', again)).status).toBe(303);
    expect(onlyCar(site).builtFrom).toBe('1967-03-04');
  });
});

describe('changing a car', () => {
  const siteWithCar = () => {
    const site = openSite();
    const barn = barnOf(site);
    return { site, barn, carId: carIn(barn) };
  };

  it('shows every trait, those of the car ticked', async () => {
    const { site, carId } = siteWithCar();
    const html = await (await site.get(`/cars/${carId}/change`)).text();
    const inputs = tags(html, 'input').filter(({ name = '' }) => name === 'traits' || name.startsWith('one-'));
    expect(inputs.map(({ value }) => value)).toEqual(STATED_TRAITS);
    const checked = inputs.filter((one) => 'checked' in one).map(({ value }) => value ?? '');
    expect(checked.toSorted()).toEqual(ROADSTER.toSorted());
    expect(field(html, 'built')['value']).toBe('1967');
  });

  /** The form of the page as it is filled in, with some of it changed. */
  const changed = async (site: TestSite, carId: string, more: Record<string, string | string[]>) => {
    const html = await (await site.get(`/cars/${carId}/change`)).text();
    return site.post(`/cars/${carId}`, { ...filledIn(html, `/cars/${carId}`), ...more });
  };
  const boxes = (without: string, having: string): string[] => {
    const ticks = FACETS.filter(({ choose }) => choose === 'any').flatMap(({ traits }) => Object.keys(traits));
    return [...ROADSTER.filter((trait) => ticks.includes(trait) && trait !== without), having];
  };

  it('saved as it is shown changes nothing', async () => {
    const { site, barn, carId } = siteWithCar();
    const before = carOf(barn, carId);
    expect((await changed(site, carId, {})).status).toBe(303);
    const { car, parts } = carOf(barn, carId);
    expect({ ...car, traits: car.traits.toSorted() }).toEqual({ ...before.car, traits: ROADSTER.toSorted() });
    expect(parts).toEqual(before.parts);
  });

  it('adds and takes away parts by what is ticked', async () => {
    const { site, barn, carId } = siteWithCar();
    const answer = await changed(site, carId, {
      name: 'Merle',
      built: 'about 1967',
      traits: boxes('overdrive', 'timing-belt'),
      'one-rear-brakes': 'rear-discs',
    });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/cars/${carId}`]);
    const { car, parts } = carOf(barn, carId);
    expect(car).toMatchObject({ name: 'Merle', builtEdtf: '1967~' });
    const kinds = parts.map(({ kind }) => kind);
    expect(kinds).toContain('timing-belt');
    expect(kinds).not.toContain('overdrive');
    expect(kinds).not.toContain('wheel-cylinders');
  });

  it('that is rejected keeps the ticks and says why', async () => {
    const { site, barn, carId } = siteWithCar();
    const before = carOf(barn, carId);
    const traits = boxes('overdrive', 'timing-belt');
    const answer = await changed(site, carId, { built: '', traits, 'one-fuel': [], note: 'Red <body>' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'built')).toBeDefined();
    expect(text(html)).toContain('Fuel: choose one, 0 were given.');
    expect(ticked(html, 'traits').toSorted()).toEqual(traits.toSorted());
    expect(ticked(html, 'one-fuel')).toEqual([]);
    expect(filledIn(html, `/cars/${carId}`)['note']).toBe('Red <body>');
    expect(carOf(barn, carId)).toEqual(before);
  });

  it('leaves a build date as it was meant when somebody with another order of day and month saves the car', async () => {
    const { site, barn, carId } = siteWithCar();
    await changed(site, carId, { built: '3/4/1967' });
    expect(carOf(barn, carId).car.builtFrom).toBe('1967-04-03');
    for (const dateOrder of ['month first', 'ask'] as const) {
      const ada = { name: 'Ada', email: null, letters: true };
      changeMember(site.store, site.collectionId, site.personId, { ...ada, dateOrder });
      expect((await changed(site, carId, { note: dateOrder })).status).toBe(303);
      expect(carOf(barn, carId).car).toMatchObject({
        note: dateOrder,
        builtTyped: '3/4/1967',
        builtFrom: '1967-04-03',
      });
    }
    // Another text is another date, read in the order of whoever types it.
    await changed(site, carId, { built: '5/31/1967' });
    expect(carOf(barn, carId).car.builtFrom).toBe('1967-05-31');
  });
});
