import { describe, expect, it } from 'vitest';
import { findLayUp, layUpsOf } from '../../src/store/lay-ups.ts';
import { carIn, carOf, claim, date, openBarn } from '../support/cars.ts';
import { addresses, faultAt, field, filledIn, inside, tags, text, ticked } from '../support/html.ts';
import { everythingIn, layUpIn, onDayIn, PLANNED, stayIn, winterSite } from '../support/lay-ups.ts';

const BACK_ON = '2027-03-28';
const NO_ID = '01900000-0000-7000-8000-000000000000';

/** What the car’s sheet says of its stays. */
const staysOn = (html: string): string =>
  text(/<section aria-labelledby="stays">(.*?)<\/section>/s.exec(html)?.[1] ?? '');

const REOPEN = 'It was closed by a slip: open it again';

describe('opening a lay-up again', () => {
  it('takes the closing back with one press: its forms are there again', async () => {
    const { site, barn, id, at, page, send } = await winterSite();
    await send('/close', '/close', {}, BACK_ON);
    const closed = await page('', BACK_ON);
    expect(filledIn(closed, at('/reopen', BACK_ON))).toEqual({});
    expect(inside(closed, 'button')).toContain(REOPEN);
    const answer = await site.post(at('/reopen', BACK_ON), {});
    expect([answer.status, answer.headers.get('location')]).toEqual([303, at('', BACK_ON)]);
    expect(findLayUp(site.store, barn.acting.collectionId, id)?.row).toMatchObject({
      closedOn: null,
      isTemplate: false,
    });
    const html = await page('', BACK_ON);
    expect(inside(html, 'button')).not.toContain(REOPEN);
    expect(tags(html, 'a').map(({ href }) => href)).toContain(at('/close', BACK_ON));
    expect((await send('/wake-up/cover-off', '/wake-up/cover-off/done', {}, BACK_ON)).status).toBe(303);
  });

  it('is refused on a page once the car was put away again', async () => {
    const { site, barn, carId, at, send } = await winterSite();
    await send('/close', '/close', {}, BACK_ON);
    expect((await site.post('/lay-ups?on=2027-09-01', { car: carId, parkedOn: '2027-11-01' })).status).toBe(303);
    const before = everythingIn(barn);
    const answer = await site.post(at('/reopen', '2027-09-02'), {});
    expect(answer.status).toBe(422);
    expect(text(await answer.text())).toContain('The car was put away again since: this stay is over.');
    expect(everythingIn(barn)).toEqual(before);
  });
});

describe('closing a lay-up', () => {
  it('asks what became of it, its day and its odometer, and keeps all that in the car’s history', async () => {
    const { site, barn, carId, id, page, at, send } = await winterSite();
    await send('/steps/photographs', '/steps/photographs/done', {}, '2026-10-12');
    await send('/round', '/round', { 'look.smell': 'none' }, '2026-12-02');
    const form = filledIn(await page('/close', BACK_ON), at('/close', BACK_ON));
    expect(form).toMatchObject({ how: 'back', day: BACK_ON, template: 'on' });
    const answer = await send('/close', '/close', { distance: '87,500', unit: 'km' }, BACK_ON);
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/cars/${carId}?on=${BACK_ON}#stays`]);
    expect(findLayUp(site.store, barn.acting.collectionId, id)?.row).toMatchObject({
      closedOn: BACK_ON,
      closedHow: 'back',
      isTemplate: true,
    });
    expect(carOf(barn, carId).facts.odometer).toEqual([{ day: BACK_ON, km: 87_500 }]);
    const sheet = await (await site.get(`/cars/${carId}?on=${BACK_ON}`)).text();
    expect(staysOn(sheet)).toMatch(
      /^Stays 1 November 2026: Parked on 1 November 2026, back on 28 March 2027 \(4 months\)\. In Garage <north>\. 1 of \d+ steps done before it stood, 1 round made, 3 missed\.$/,
    );
    expect(sheet).not.toContain('<north>');
    // It can be put away again.
    expect(tags(sheet, 'a').map(({ href }) => href)).toContain(`/lay-ups/new?car=${carId}&on=${BACK_ON}`);
    // As on a day in winter it stands.
    const winter = await (await site.get(`/cars/${carId}?on=2027-01-05`)).text();
    expect(inside(winter, 'h2')).toContain('Laid up');
    expect(staysOn(winter)).toBe('');
  });

  it('says how much of the way back is open, and that closing clears nothing', async () => {
    const { page } = await winterSite();
    expect(text(await page('/close', BACK_ON))).toMatch(
      /The way back: 0 of \d+ steps done\. Closing clears nothing: what is open stays as it is on the car’s sheet\./,
    );
    expect(text(await page('/close', PLANNED))).not.toContain('The way back:');
  });

  it('restores the ordinary words of the car’s sheet', async () => {
    const { site, barn, carId, send } = await winterSite();
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 February 2025'));
    const sheet = async () => text(await (await site.get(`/cars/${carId}?on=${BACK_ON}`)).text());
    expect(await sheet()).toContain('Its ordinary letters are silent until it is back.');
    await send('/close', '/close', {}, BACK_ON);
    expect(await sheet()).not.toContain('silent');
    expect(await sheet()).toContain('1 past');
  });

  it.each([
    ['before the parking day', { day: '2026-10-31' }, 'It can’t be back before 1 November 2026.'],
    ['ahead of today', { day: '2027-03-29' }, 'That day lies ahead.'],
    ['on no day at all', { day: 'soon' }, '“soon” is no day.'],
  ])('is refused %s, with what was typed kept', async (_, given, says) => {
    const { site, barn, id, send } = await winterSite();
    const answer = await send('/close', '/close', { ...given, distance: '87,500', unit: 'km', template: [] }, BACK_ON);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'day')).toBe(says);
    expect(field(html, 'day')['value']).toBe(given.day);
    expect(field(html, 'distance')['value']).toBe('87,500');
    expect(ticked(html, 'template')).toEqual([]);
    expect(findLayUp(site.store, barn.acting.collectionId, id)?.row.closedOn).toBeNull();
  });

  it('with an odometer that runs backwards, or without its unit, closes nothing', async () => {
    const { site, barn, carId, id, send } = await winterSite();
    await site.post(`/cars/${carId}/odometer`, { distance: '90,000', unit: 'km', day: '2026-08-01' });
    const before = everythingIn(barn);
    for (const given of [{ distance: '87,500', unit: 'km' }, { distance: '91,000' }]) {
      const answer = await send('/close', '/close', given, BACK_ON);
      expect(answer.status).toBe(422);
      expect(faultAt(await answer.text(), 'distance')).toBeTruthy();
    }
    expect(everythingIn(barn)).toEqual(before);
    expect(stayIn(barn, id, BACK_ON).record.row.closedOn).toBeNull();
  });

  it('called off can come before the parking day; the car’s sheet says so in a line', async () => {
    const { site, carId, send } = await winterSite();
    const answer = await send('/close', '/close', { how: 'called off' }, '2026-10-15');
    expect(answer.status).toBe(303);
    const sheet = await (await site.get(`/cars/${carId}?on=2026-10-16`)).text();
    expect(staysOn(sheet)).toBe('Stays 1 November 2026: Called off on 15 October 2026.');
  });

  it('without the pattern offers none next time', async () => {
    const { site, carId, send } = await winterSite({ phone: '0170 555' });
    const form = { template: [] };
    await send('/close', '/close', form, BACK_ON);
    const html = await (await site.get(`/lay-ups/new?car=${carId}&on=2027-09-01`)).text();
    expect(html).not.toContain('name="like"');
    expect(field(html, 'phone')['value']).toBe('0170 555');
  });

  it('leaves pages that show what was, and offer nothing to change but to open it again', async () => {
    const { page, send } = await winterSite();
    await send('/steps/hinges', '/steps/hinges/done', {}, '2026-10-12');
    await send('/round', '/round', { 'look.smell': 'fuel' }, '2026-12-02');
    await send('/close', '/close', {}, BACK_ON);
    for (const path of ['', '/wake-up', '/sides', '/steps/hinges', '/steps/wax']) {
      const html = await page(path, '2027-06-01');
      expect(inside(html, 'h1'), path).toHaveLength(1);
      // Both sides stay readable; there is no button to take one.
      expect(inside(/<main.*<\/main>/s.exec(html)?.[0] ?? '', 'button'), path).toEqual(path === '' ? [REOPEN] : []);
      expect(html, path).not.toContain('Done, with details');
    }
    const plan = text(await page('', '2027-06-01'));
    expect(plan).toContain('back on 28 March 2027');
    expect(plan).toContain('Smell, inside and around it: fuel.');
    expect(plan).not.toContain('What can’t wait');
  });

  it('tells in the past tense what is over, and checks no road any more', async () => {
    const { page, send } = await winterSite();
    expect(text(await page('', BACK_ON))).toContain('It stands in Garage <north>.');
    expect(await page('/wake-up', BACK_ON)).toContain('class="road-check"');
    await send('/close', '/close', {}, BACK_ON);
    const plan = text(await page('', '2027-06-01'));
    expect(plan).toContain('It stood in Garage <north>.');
    expect(plan).toContain('Its steps, as they were ticked');
    expect(plan).not.toContain('looks in.');
    const back = await page('/wake-up', '2027-06-01');
    expect(text(back)).toContain('It was to come back on 1 April 2027.');
    expect(back).not.toContain('class="road-check"');
    expect(text(back)).not.toContain('Before the road:');
  });

  it('refuses on a page what is sent to it later', async () => {
    const { site, at, barn, send } = await winterSite();
    await send('/close', '/close', {}, BACK_ON);
    const before = everythingIn(barn);
    const later = '2027-06-01';
    for (const [path, form] of [
      ['/close', { how: 'back' }],
      ['/change', { parkedOn: '2026-11-05' }],
      ['/sides', { topic: 'tank', side: 'drained' }],
      ['/own', { plan: 'lay-up', title: 'Pins', days: '', note: '' }],
      ['/steps/wax/done', {}],
      ['/steps/wax/skip', { reason: 'Late' }],
      ['/round', { 'look.smell': 'none' }],
    ] as const) {
      const answer = await site.post(at(path, later), { ...form });
      expect(answer.status, path).toBe(422);
      expect(text(await answer.text()), path).toContain('This lay-up was closed on 28 March 2027');
    }
    expect(everythingIn(barn)).toEqual(before);
  });

  it('takes nothing back of a stay that is over', async () => {
    const { site, at, barn, id, send } = await winterSite();
    await send('', '/own', { title: 'Pins', days: '' });
    await send('/steps/photographs', '/steps/photographs/done', {}, '2026-10-12');
    await send('/round', '/round', { 'look.smell': 'none' }, '2026-12-02');
    await send('/close', '/close', {}, BACK_ON);
    const { own, rounds } = stayIn(barn, id, BACK_ON).record;
    const before = everythingIn(barn);
    for (const path of ['/steps/photographs/untick', `/rounds/${rounds[0]?.id}/withdraw`, `/own/${own[0]?.id}/remove`])
      expect((await site.post(at(path, '2027-06-01'), {})).status, path).toBe(422);
    expect(everythingIn(barn)).toEqual(before);
  });
});

const PAGES = ['', '/change', '/sides', '/wake-up', '/round', '/close', '/steps/wax', '/wake-up/battery'];
const SHEETS = ['/sheets/plan', '/sheets/windshield', '/sheets/monthly', '/sheets/wake-up'];
const FORMS = [
  '/change',
  '/seen',
  '/sides',
  '/own',
  `/own/${NO_ID}/remove`,
  '/steps/wax/done',
  '/steps/wax/skip',
  '/steps/wax/untick',
  '/wake-up/battery/done',
  '/wake-up/battery/skip',
  '/wake-up/battery/untick',
  '/round',
  `/rounds/${NO_ID}/withdraw`,
  '/close',
  '/reopen',
];

describe('a lay-up that is not there', () => {
  it.each([...PAGES, ...SHEETS])('is a page that says so: GET %s', async (path) => {
    const { site, at } = await winterSite();
    expect((await site.get(at(path))).status).toBe(200);
    for (const id of [NO_ID, 'x', '%00']) {
      const answer = await site.get(`/lay-ups/${id}${path}`);
      expect(answer.status, id).toBe(404);
      expect(inside(await answer.text(), 'h1')[0]).toMatch(/^There is no such /);
    }
  });

  it.each(FORMS)('can be changed by nobody: POST %s', async (path) => {
    const { site } = await winterSite();
    expect((await site.post(`/lay-ups/${NO_ID}${path}`, {})).status).toBe(404);
  });

  it('includes one of another collection, on every way to it', async () => {
    const { site } = await winterSite();
    const shed = onDayIn(openBarn(site.store, 'The shed'), PLANNED);
    const theirs = layUpIn(shed, carIn(shed, { name: 'Their Six' }));
    const before = everythingIn(shed);
    for (const path of [...PAGES, ...SHEETS])
      expect((await site.get(`/lay-ups/${theirs}${path}?on=2026-12-05`)).status, path).toBe(404);
    for (const path of FORMS)
      expect((await site.post(`/lay-ups/${theirs}${path}?on=2026-12-05`, {})).status, path).toBe(404);
    expect(everythingIn(shed)).toEqual(before);
    expect(await (await site.get('/lay-ups')).text()).not.toContain('Their Six');
    const car = carOf(shed, layUpsOf(site.store, shed.acting.collectionId)[0]?.carId ?? '').car.id;
    expect((await site.post('/lay-ups', { car, parkedOn: '2026-11-01' })).status).toBe(422);
    expect(everythingIn(shed)).toEqual(before);
  });
});

describe('a step that is not there', () => {
  it.each(['no-such-step', 'toString', '__proto__', NO_ID, 'battery-off'])('answers so: %s', async (key) => {
    const { site, at } = await winterSite();
    for (const plan of ['steps', 'wake-up']) {
      expect((await site.get(at(`/${plan}/${key}`))).status, plan).toBe(404);
      for (const verb of ['done', 'skip', 'untick'])
        expect((await site.post(at(`/${plan}/${key}/${verb}`), { reason: 'x' })).status, `${plan} ${verb}`).toBe(404);
    }
    expect((await site.post(at(`/own/${key}/remove`), {})).status).toBe(404);
    expect((await site.post(at(`/rounds/${key}/withdraw`), {})).status).toBe(404);
    expect((await site.get(at(`/sheets/${key}`))).status).toBe(404);
  });

  it('of the other plan is not this one’s', async () => {
    const { site, at } = await winterSite();
    expect((await site.get(at('/steps/first-start'))).status).toBe(404);
    expect((await site.get(at('/wake-up/wax'))).status).toBe(404);
  });
});

describe('forms no page of ours sends', () => {
  it.each([
    ['/own', { plan: 'third', title: 'x', days: '', note: '' }],
    ['/close', { how: 'stolen' }],
    ['/steps/wax/done', { evidence: 'hearsay' }],
    ['/change', { circumstances: 'haunted' }],
    ['/steps/wax/skip', { reason: 'x'.repeat(201) }],
  ])('are answered with 400: %s', async (path, form) => {
    const { site, at, barn } = await winterSite();
    const before = everythingIn(barn);
    expect((await site.post(at(path), form)).status).toBe(400);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('take no step from another site', async () => {
    const { site, at } = await winterSite();
    const answer = await site.post(at('/steps/hinges/done'), { quick: 'on' }, { origin: 'https://elsewhere.example' });
    expect(answer.status).toBe(403);
  });
});

describe('every page of a lay-up', () => {
  it.each([...PAGES, '/sheets/plan'])('keeps the day, escapes names and leads to no dead end: %s', async (path) => {
    const { site, at, page, send } = await winterSite({ note: 'Key of <Nell>', rules: 'Ask <them>' });
    await send('', '/own', { title: 'Oil the <hood> pins', days: '3', note: '<b>both</b>' });
    const html = await page(path, '2026-12-05');
    for (const raw of ['<Tourer>', '<north>', '<Nell>', '<them>', '<hood>', '<b>both']) expect(html).not.toContain(raw);
    const ways = addresses(html).filter((way) => way.startsWith('/') && !way.includes('/static/'));
    const own = at(path).split('?')[0];
    expect(ways.filter((way) => way.split('?')[0] !== own && !way.includes('on=2026-12-05'))).toEqual([]);
    for (const href of new Set(tags(html, 'a').map((one) => one['href'] ?? '')))
      if (href.startsWith('/')) expect((await site.get(href.split('#')[0] ?? '')).status, href).toBe(200);
  });
});
