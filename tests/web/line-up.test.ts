import { describe, expect, it } from 'vitest';
import { changeMember } from '../../src/store/people.ts';
import { barnOf, carIn, claim, date, must, partOf } from '../support/cars.ts';
import { inside, tags, text } from '../support/html.ts';
import { closeOn, roundOn, stayIn, winterSite } from '../support/lay-ups.ts';
import { openSite } from '../support/site.ts';

describe('the line-up', () => {
  it('of an empty collection says how to begin, and that letters go nowhere yet', async () => {
    const site = openSite();
    const read = async () => text(await (await site.get('/')).text());
    expect(await read()).toContain('No cars in “My cars” yet.');
    expect(await read()).not.toContain('Letters go nowhere yet');
    const nobody = { name: 'Ada', email: null, dateOrder: 'ask' as const, letters: true };
    changeMember(site.store, site.collectionId, site.personId, nobody);
    expect(await read()).toContain('Letters go nowhere yet: give your name and address');
  });

  it('puts the car first that needs a hand first, and names its gravest part', async () => {
    const site = openSite();
    const barn = barnOf(site);
    carIn(barn, { name: 'Alder Coupe', built: 'unknown' });
    const merle = carIn(barn, { name: 'Merle Tourer', built: 'June 1967' });
    const fluid = date(barn, merle, 'brake-fluid-glycol', claim('filled', '1 June 2024'));
    const html = await (await site.get('/')).text();
    expect(inside(html, 'h2')).toEqual(['Merle Tourer built June 1967', 'Alder Coupe']);
    expect(tags(html, 'a').map(({ href }) => href)).toContain(`/parts/${fluid}`);
    expect(text(html)).toContain(
      'First: past Brake fluid, glycol (DOT 3, 4, 5.1). Filled 1 June 2024: 2 years 5 months.',
    );
    const [first, second] = tags(html, 'svg').flatMap((svg) => svg['aria-label'] ?? []);
    expect(first).toMatch(/^1 past, \d+ unproven$/);
    expect(second).toMatch(/^\d+ unproven$/);
  });
});

describe('a record that can’t be reckoned', () => {
  it.each(['/', '/year-ahead', '/shopping'])('is counted on %s, which shows all the rest', async (path) => {
    const site = openSite();
    const barn = barnOf(site);
    const merle = carIn(barn, { name: 'Merle Tourer' });
    date(barn, merle, 'brake-fluid-glycol', claim('filled', '1 January 2025'));
    const broken = partOf(barn, merle, 'spark-plugs');
    site.store.$client.exec(`update parts set details = '{' where id = '${broken.id}'`);
    const answer = await site.get(path);
    expect(answer.status).toBe(200);
    const shown = text(await answer.text());
    expect(shown).toContain('1 record could not be reckoned');
    expect(shown).toContain('Merle Tourer');
    const { unjudged } = (await (await site.get('/api/v1/year-ahead')).json()) as { unjudged: number };
    expect(unjudged).toBe(1);
  });
});

describe('a laid-up car on the line-up', () => {
  it('says what can’t wait while it stands: warnings, and what a round found to act on', async () => {
    const { site, barn, id } = await winterSite();
    carIn(barn, { name: 'Alder Coupe' });
    const read = async (on: string) => text(await (await site.get(`/?on=${on}`)).text());
    expect(await read('2026-10-20')).toContain('Lay-up planned. To be parked on 1 November 2026');
    expect(await read('2026-10-20')).not.toContain('Can’t wait');
    must(roundOn(barn, id, '2026-12-02', { smell: 'fuel', drips: 'spots' }));
    const standing = await read('2026-12-05');
    expect(standing).toContain('Laid up. Parked on 1 November 2026');
    // Once: the other car is not laid up.
    expect(standing.match(/Can’t wait:/g)).toHaveLength(1);
    const line = /Can’t wait: (.*?)\d* ?(?:past|due|look|unproven|First)/.exec(standing)?.[1] ?? '';
    for (const { title } of stayIn(barn, id, '2026-12-05').view.warnings) expect(line).toContain(`${title}.`);
    expect(line).toContain('Smell, inside and around it: fuel.');
    // Only looked after, not acted on.
    expect(line).not.toContain('spots');
    must(roundOn(barn, id, '2027-01-01', { smell: 'none' }));
    expect(await read('2027-01-02')).not.toContain('Smell, inside');
    must(closeOn(barn, id, '2027-03-28'));
    expect(await read('2027-03-28')).not.toContain('Can’t wait');
  });
});

describe('the sheet of a car', () => {
  it('lists what needs a hand first, then every part by system, and how many wait for a date', async () => {
    const site = openSite();
    const barn = barnOf(site);
    const carId = carIn(barn);
    date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2024'));
    const html = await (await site.get(`/cars/${carId}`)).text();
    const first = /<ol class="first-list">(.*?)<\/ol>/s.exec(html)?.[1] ?? '';
    expect(inside(first, 'li').map((line) => line.split('.')[0])).toEqual([
      'past Brake fluid, glycol (DOT 3, 4, 5',
      'past Spark plugs',
    ]);
    const parts = inside(html, 'h3');
    expect(text(html)).toContain(`${parts.length - 2} parts wait for a date`);
    expect(text(html)).toContain('Built 1967; no odometer reading.');
  });

  it('tells of the tires as a set', async () => {
    const site = openSite();
    const barn = barnOf(site);
    const carId = carIn(barn);
    for (const [position, code] of [
      ['front left', '2318'],
      ['front right', '2318'],
      ['rear left', '1012'],
      ['rear right', '1012'],
    ] as const)
      date(barn, carId, 'tires-road', claim('made', code), position);
    const html = await (await site.get(`/cars/${carId}`)).text();
    expect(inside(html, 'h2')).toContain('The tires as a set');
  });

  it('escapes a name that is a script', async () => {
    const site = openSite();
    const carId = carIn(barnOf(site), { name: '<script>alert(1)</script>', note: '<img src=x onerror=alert(1)>' });
    for (const path of [
      '/',
      `/cars/${carId}`,
      `/cars/${carId}/change`,
      `/cars/${carId}/parts/new`,
      '/practice/wiring',
    ]) {
      const html = await (await site.get(path)).text();
      expect(html, path).not.toContain('<script>');
      expect(html, path).not.toContain('<img');
      expect(html, path).toContain('&lt;script&gt;');
    }
  });
});
