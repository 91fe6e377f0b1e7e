import { describe, expect, it } from 'vitest';
import { closedParts, findPart } from '../../src/store/cars.ts';
import { barnOf, carIn, carOf, claim, date, partOf, TODAY } from '../support/cars.ts';
import { choices, faultAt, filledIn, inside, tags, text } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const FLUID = 'brake-fluid-glycol';

/** A car whose brake fluid of June 2024 is past and whose front left tire of 2018 wants a look. */
const siteWithCar = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn);
  const fluid = date(barn, carId, FLUID, claim('filled', '1 June 2024'));
  const tire = date(barn, carId, 'tires-road', claim('made', '2318'), 'front left');
  const read = async (path: string) => (await site.get(path)).text();
  const heading = async (partId: string) => inside(await read(`/parts/${partId}`), 'h1')[0];
  const fill = async (partId: string, form: Record<string, string>, query = '') => {
    const path = `/parts/${partId}/renew`;
    const sent = filledIn(await read(`${path}${query}`), `${path}${query}`);
    return site.post(`${path}${query}`, { ...sent, ...form });
  };
  const part = (partId: string) => findPart(site.store, site.collectionId, partId);
  return { site, barn, carId, fluid, tire, read, heading, fill, part };
};

describe('the page of a part', () => {
  it('says where it stands and why, which interval rules and where that comes from, and what to do', async () => {
    const { read, tire } = siteWithCar();
    const said = text(await read(`/parts/${tire}`));
    expect(said).toContain('Made 10 to 16 June 2018: 8 years.');
    expect(said).toContain('Practice of the trade: look from 5 years, replace by 10 years.');
    expect(said).toContain('Wants a look since 10 June 2023 at the earliest (16 June 2023 at the latest)');
    expect(said).toContain('Do: Look and test.');
    expect(said).toMatch(/\((standard|common practice|[a-z ]+)\)/);
    expect(said).toContain('If ignored');
    expect(said).toContain('Before you work');
  });

  it('draws its life as a picture with words for those who can’t see it', async () => {
    const { read, tire } = siteWithCar();
    const label = tags(await read(`/parts/${tire}`), 'svg').find((svg) => svg['class'] === 'rule')?.['aria-label'];
    expect(label).toBe(
      'started 10 to 16 June 2018; look from 10 June 2023 at the earliest (16 June 2023 at the latest); replace by 10 June 2028 at the earliest (16 June 2028 at the latest); seen on 25 November 2026',
    );
  });

  it('without any date says that nothing clears it', async () => {
    const { barn, carId, read, heading } = siteWithCar();
    const wiring = partOf(barn, carId, 'wiring').id;
    expect(await heading(wiring)).toBe('Wiring insulation and connectors unproven');
    expect(text(await read(`/parts/${wiring}`))).toContain('Without a date nothing clears it.');
  });
});

describe('a renewal', () => {
  it('closes the record and opens the next at its place, which says what was before', async () => {
    const { site, barn, carId, fluid, fill, heading, part, read } = siteWithCar();
    const answer = await fill(fluid, { fitted: '20 November 2026', why: 'Every two <years>', distance: '87 400 km' });
    expect(answer.status).toBe(303);
    const next = partOf(barn, carId, FLUID);
    expect(answer.headers.get('location')).toBe(`/parts/${next.id}`);
    expect(next).toMatchObject({
      replaces: fluid,
      claims: [{ clock: 'filled', from: '2026-11-20', km: 87_400, evidence: 'own memory' }],
    });
    expect(part(fluid)).toMatchObject({ closedOn: TODAY, closedWhy: 'Every two <years>' });
    expect(await heading(next.id)).toBe('Brake fluid, glycol (DOT 3, 4, 5.1) in date');
    expect(text(await read(`/parts/${fluid}`))).toContain('Closed on 25 November 2026. Every two <years>');
    const links = tags(await read(`/parts/${next.id}`), 'a').map(({ href }) => href);
    expect(links).toContain(`/parts/${fluid}`);
    const car = await read(`/cars/${carId}`);
    expect(text(car)).toContain('2026-11-25: Brake fluid, glycol (DOT 3, 4, 5.1). Every two <years>');
    expect(closedParts(site.store, site.collectionId, carId)).toHaveLength(1);
  });

  it('of a tire records both when it was fitted and the code read on the new one', async () => {
    const { barn, carId, tire, fill } = siteWithCar();
    await fill(tire, { fitted: '2026-11-24', typed: '0426', why: '' });
    expect(partOf(barn, carId, 'tires-road', 'front left').claims).toMatchObject([
      { clock: 'fitted', from: '2026-11-24', evidence: 'own memory' },
      { clock: 'made', typed: '0426', from: '2026-01-25', evidence: 'read on the part' },
    ]);
  });

  it('that is rejected keeps everything typed, says at each field what is wrong and renews nothing', async () => {
    const { barn, carId, tire, fill } = siteWithCar();
    const before = carOf(barn, carId);
    const given = { fitted: 'next week', typed: '5417', why: 'Worn & torn', evidence: 'own memory', note: 'n' };
    const answer = await fill(tire, given);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'fitted')).toContain('“next week” was not understood');
    expect(faultAt(html, 'typed')).toContain('No year has that many weeks');
    expect(filledIn(html, `/parts/${tire}/renew`)).toMatchObject(given);
    expect(faultAt(await (await fill(tire, { distance: 'far' })).text(), 'distance')).toContain('“far” is no distance');
    expect(carOf(barn, carId)).toEqual(before);
  });

  it('asks at each of its two dates which one is meant, and keeps one answer while the other is given', async () => {
    const { site, barn, carId, tire, fill } = siteWithCar();
    await site.post(`/members/${site.personId}`, { name: 'Ada', email: '', dateOrder: 'ask' });
    const path = `/parts/${tire}/renew`;
    const first = await (await fill(tire, { fitted: '3/4/2016', typed: '2015' })).text();
    expect(choices(first, 'fitted')).toEqual(['2016-04-03', '2016-03-04']);
    expect(choices(first, 'typed')).toEqual(['2015-05-17/2015-05-23', '2015']);
    const sent = { ...filledIn(first, path), fittedChoice: '2016-03-04' };
    const second = await (await site.post(path, sent)).text();
    expect(choices(second, 'typed')).toHaveLength(2);
    const again = { ...filledIn(second, path), typedChoice: '2015' };
    expect((await site.post(path, again)).status).toBe(303);
    expect(partOf(barn, carId, 'tires-road', 'front left').claims).toMatchObject([
      { from: '2016-03-04' },
      { from: '2015-01-01' },
    ]);
  });

  it('fitted before it was made is refused', async () => {
    const { tire, fill } = siteWithCar();
    const answer = await fill(tire, { fitted: 'May 2019', typed: '2320' });
    expect(answer.status).toBe(422);
    expect(faultAt(await answer.text(), 'typed')).toBeDefined();
  });

  it('of a part that was renewed already is refused', async () => {
    const { site, fluid, fill, part } = siteWithCar();
    await fill(fluid, {});
    const again = await site.post(`/parts/${fluid}/renew`, { clock: 'filled', evidence: 'receipt', fitted: TODAY });
    expect(again.status).toBe(422);
    expect(text(await again.text())).toContain('its successor is the one to date or renew');
    expect(part(fluid)?.closedOn).toBe(TODAY);
  });

  it('as on another day is of that day', async () => {
    const { barn, carId, fluid, fill, part } = siteWithCar();
    const answer = await fill(fluid, {}, '?on=2027-04-01');
    expect(answer.headers.get('location')).toMatch(/\?on=2027-04-01$/);
    expect(part(fluid)?.closedOn).toBe('2027-04-01');
    expect(partOf(barn, carId, FLUID).claims[0]?.from).toBe('2027-04-01');
  });
});

describe('“Looked at it today”', () => {
  it('moves the next look and says so', async () => {
    const { site, tire, heading, read } = siteWithCar();
    expect(await heading(tire)).toBe('Road tire, front left look');
    const answer = await site.post(`/parts/${tire}/looked`, {});
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/parts/${tire}`]);
    expect(await heading(tire)).toBe('Road tire, front left in date');
    expect(text(await read(`/parts/${tire}`))).toContain('Last looked at 25 November 2026');
    expect(inside(await read(`/parts/${tire}?on=2027-11-25`), 'h1')).toEqual(['Road tire, front left look']);
  });

  it('clears no part that is past', async () => {
    const { site, fluid, heading } = siteWithCar();
    await site.post(`/parts/${fluid}/looked`, {});
    expect(await heading(fluid)).toBe('Brake fluid, glycol (DOT 3, 4, 5.1) past');
  });
});

describe('taking back a slip', () => {
  it('takes the date out of the reckoning', async () => {
    const { site, fluid, heading, part } = siteWithCar();
    const [slip] = part(fluid)?.claims ?? [];
    const answer = await site.post(`/parts/${fluid}/claims/${slip?.id}/withdraw`, {});
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/parts/${fluid}`]);
    expect(part(fluid)?.claims).toEqual([]);
    expect(await heading(fluid)).toBe('Brake fluid, glycol (DOT 3, 4, 5.1) unproven');
  });

  it('is refused for a closed part, whose record stays', async () => {
    const { site, fluid, part } = siteWithCar();
    await site.post(`/parts/${fluid}/retire`, { why: 'Sold' });
    const before = part(fluid);
    const answer = await site.post(`/parts/${fluid}/claims/${before?.claims[0]?.id}/withdraw`, {});
    expect([answer.status, text(await answer.text())]).toEqual([422, expect.stringContaining('its record stays')]);
    expect(part(fluid)).toEqual(before);
  });
});

describe('taking a part off the list', () => {
  it('closes its record with the reason; the car’s sheet keeps it below', async () => {
    const { site, carId, fluid, part, read } = siteWithCar();
    const answer = await site.post(`/parts/${fluid}/retire`, { why: 'Silicone <now>' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/cars/${carId}`]);
    expect(part(fluid)).toMatchObject({ closedOn: TODAY, closedWhy: 'Silicone <now>' });
    const car = await read(`/cars/${carId}`);
    expect(inside(car, 'h3').some((heading) => heading.startsWith('Brake fluid'))).toBe(false);
    expect(text(car)).toContain('2026-11-25: Brake fluid, glycol (DOT 3, 4, 5.1). Silicone <now>');
  });

  it('needs no reason, and the page of a closed part offers nothing but to take that back', async () => {
    const { site, fluid, part, read } = siteWithCar();
    await site.post(`/parts/${fluid}/retire`, {});
    expect(part(fluid)?.closedWhy).toBe('Not fitted to this car.');
    const forms = tags(await read(`/parts/${fluid}`), 'form').filter(({ method }) => method === 'post');
    expect(forms.map(({ action }) => action)).toEqual([`/parts/${fluid}/reopen`]);
    await site.post(`/parts/${fluid}/reopen`, {});
    expect(part(fluid)).toMatchObject({ closedOn: null, closedWhy: null });
  });
});

describe('adding a part that is not on the list', () => {
  it('leads on to its date', async () => {
    const { site, barn, carId } = siteWithCar();
    const form = { kind: 'tires-road', position: 'second <spare>', note: 'On the roof' };
    const answer = await site.post(`/cars/${carId}/parts`, form);
    const { id } = partOf(barn, carId, 'tires-road', 'second <spare>');
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/parts/${id}/date`]);
    expect(text(await (await site.get(`/parts/${id}`)).text())).toContain('On the roof');
  });

  it.each([
    [{ kind: FLUID, position: '', note: 'kept & shown' }, 'position', 'already has this part'],
    [{ kind: '', position: 'somewhere', note: '' }, 'kind', 'There is no kind “”'],
  ])('is refused for %j beside the field, and what was given stays', async (form, at, why) => {
    const { site, barn, carId } = siteWithCar();
    const before = carOf(barn, carId);
    const answer = await site.post(`/cars/${carId}/parts`, form);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, at)).toContain(why);
    expect(filledIn(html, `/cars/${carId}/parts`)).toEqual(form);
    expect(carOf(barn, carId)).toEqual(before);
  });
});
