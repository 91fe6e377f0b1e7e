import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { overridesOf } from '../../src/store/overrides.ts';
import { barnOf, carIn, claim, date } from '../support/cars.ts';
import { faultAt, filledIn, inside, tags, text } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const FLUID = 'brake-fluid-glycol';
const PATH = `/practice/${FLUID}`;

/** A car whose brake fluid of June 2024 is past by practice (24 months). */
const siteWithCar = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn, { name: 'Merle <Tourer>' });
  const fluid = date(barn, carId, FLUID, claim('filled', '1 June 2024'));
  const read = async (path: string) => (await site.get(path)).text();
  const fill = async (form: Record<string, string>, path = PATH) =>
    site.post(PATH, { ...filledIn(await read(path), PATH), ...form });
  const overrides = () => overridesOf(site.store, site.collectionId);
  return { site, barn, carId, fluid, read, fill, overrides };
};

describe('the practice page', () => {
  it('lists every kind once, each with its interval and a link to its sources', async () => {
    const { read } = siteWithCar();
    const html = await read('/practice');
    const kinds = [...KINDS.values()];
    expect(inside(html, 'h3').toSorted()).toEqual(kinds.map(({ name }) => name).toSorted());
    const links = tags(html, 'a').map(({ href }) => href);
    for (const { key } of kinds) expect(links).toContain(`/practice/${key}`);
    expect(html.match(/<p class="ruling">Counts from: [a-z ]+\. Practice of the trade: /g)).toHaveLength(kinds.length);
  });
});

describe('the page of every kind', () => {
  it.each([...KINDS.keys()])('%s says where its figures come from and what happens if it is ignored', async (key) => {
    const kind = KINDS.get(key);
    const html = await (await openSite().get(`/practice/${key}`)).text();
    expect(inside(html, 'h1')).toEqual([kind?.name]);
    expect(html.match(/<ul class="sources"><li>[^<]+ <span class="grade">\(/)).not.toBeNull();
    expect(text(html)).toContain(kind?.ignored.replace(/\s+/g, ' ') ?? '');
  });
});

describe('an interval of one’s own', () => {
  const OWN = { scope: '', authority: 'own', lookFrom: '', replaceBy: '60', distance: '', note: 'Dry <barn>' };

  it('rules from then on, and the part, the car, the kind and the list say that it does', async () => {
    const { carId, fluid, read, fill } = siteWithCar();
    expect(inside(await read(`/parts/${fluid}`), 'h1')[0]).toMatch(/ past$/);
    const answer = await fill(OWN);
    expect([answer.status, answer.headers.get('location')]).toEqual([303, PATH]);
    const ruling = 'Your own interval: replace by 5 years. Note: Dry <barn>';
    const part = await read(`/parts/${fluid}`);
    expect(inside(part, 'h1')[0]).toMatch(/ in date$/);
    for (const path of [`/parts/${fluid}`, `/cars/${carId}`, PATH, '/practice'])
      expect(text(await read(path)), path).toContain(ruling);
    expect(text(await read(PATH))).toContain('All cars of the collection: Your own interval');
  });

  it('for one car rules that car alone, a handbook’s before it', async () => {
    const { barn, carId, fluid, read, fill } = siteWithCar();
    const other = date(barn, carIn(barn, { name: 'Alder Coupe' }), FLUID, claim('filled', '1 June 2024'));
    const answer = await fill({ ...OWN, scope: carId, authority: 'handbook', replaceBy: '48', note: 'Page 12' });
    expect(answer.headers.get('location')).toBe(`${PATH}?car=${carId}`);
    expect(text(await read(`/parts/${fluid}`))).toContain('Handbook: replace by 4 years. Note: Page 12');
    expect(text(await read(`/parts/${other}`))).toContain('Practice of the trade: look from 18 months');
    expect(text(await read('/practice'))).toContain('Some cars have their own interval.');
    expect(text(await read(PATH))).toContain('Merle <Tourer>: Handbook: replace by 4 years.');
  });

  it('is in the form when it is opened again, figure by figure', async () => {
    const { carId, read, fill } = siteWithCar();
    await fill({ ...OWN, distance: '10 000 km' });
    expect(filledIn(await read(PATH), PATH)).toEqual({ ...OWN, distance: '10000', unit: 'km' });
    const practice = { scope: carId, authority: 'own', lookFrom: '18', replaceBy: '24', distance: '', note: '' };
    expect(filledIn(await read(`${PATH}?car=${carId}`), PATH)).toEqual(practice);
  });

  it('can be given up: practice rules again', async () => {
    const { fluid, read, fill, overrides } = siteWithCar();
    await fill(OWN);
    expect((await fill({ end: '1' })).status).toBe(303);
    expect(overrides()).toEqual([]);
    expect(inside(await read(`/parts/${fluid}`), 'h1')[0]).toMatch(/ past$/);
  });

  it.each([
    [{ lookFrom: 'one year', replaceBy: '0', distance: 'far', note: 'kept' }, ['lookFrom', 'replaceBy', 'distance']],
    [{ lookFrom: '1201', replaceBy: '1.5', note: 'kept' }, ['lookFrom', 'replaceBy']],
    [{ lookFrom: '', replaceBy: '', note: 'kept' }, ['replaceBy']],
    [{ lookFrom: '70', replaceBy: '60', note: 'kept' }, ['lookFrom']],
    [{ note: '' }, ['note']],
  ])('given as %j is rejected at its fields, keeps what was typed and sets nothing', async (form, at) => {
    const { fill, overrides } = siteWithCar();
    const answer = await fill({ ...OWN, ...form });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    for (const name of ['lookFrom', 'replaceBy', 'distance', 'note'])
      expect(faultAt(html, name) !== undefined, name).toBe(at.includes(name));
    expect(filledIn(html, PATH)).toEqual({ ...OWN, ...form });
    expect(overrides()).toEqual([]);
  });

  it('of a handbook for all cars is rejected with the reason', async () => {
    const { fill, overrides } = siteWithCar();
    const answer = await fill({ ...OWN, authority: 'handbook' });
    expect(answer.status).toBe(422);
    expect(text(await answer.text())).toContain('A handbook is one car’s: choose the car');
    expect(overrides()).toEqual([]);
  });

  it('on a safety part is said to be one’s own decision', async () => {
    const { read } = siteWithCar();
    expect(text(await read(PATH))).toContain('a longer interval than practice is your own decision');
    expect(text(await read('/practice/spark-plugs'))).not.toContain('a longer interval than practice');
  });
});
