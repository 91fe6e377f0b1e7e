import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../src/catalogue/cautions.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { TOPICS } from '../../src/plans/topics.ts';
import { closedParts } from '../../src/store/cars.ts';
import { carOf, claim, date, partOf } from '../support/cars.ts';
import { faultAt, field, filledIn, inside, tags, text, ticked } from '../support/html.ts';
import { everythingIn, PARKED, stayIn, stepOn, titleOf, winterSite } from '../support/lay-ups.ts';

const DAY: CivilDate = '2026-10-30';
const tick = async (made: Awaited<ReturnType<typeof winterSite>>, step: string, fields = {}, on: CivilDate = DAY) =>
  made.send(`/steps/${step}`, `/steps/${step}/done`, fields, on);
const words = (html: string, key: string): string =>
  text(new RegExp(`<li class="step \\w+" id="${key}">(.*?)<div class="actions">`, 's').exec(html)?.[1] ?? '');

describe('ticking a step', () => {
  it('asks day, note and cost, and says on the plan what was done', async () => {
    const made = await winterSite();
    const html = await made.page('/steps/photographs', DAY);
    expect(field(html, 'day')['value']).toBe(DAY);
    expect(field(html, 'cost')['inputmode']).toBe('decimal');
    const answer = await tick(made, 'photographs', { day: '2026-10-12', note: 'Forty, <blue> folder', cost: '12,50' });
    expect(answer.status).toBe(303);
    expect(answer.headers.get('location')).toBe(`/lay-ups/${made.id}?on=${DAY}#photographs`);
    const plan = await made.page('', DAY);
    expect(words(plan, 'photographs')).toContain('Done on 12 October 2026 by Ada: Forty, <blue> folder (cost 12.5).');
    expect(plan).not.toContain('<blue>');
    expect(text(plan)).toMatch(/1 of \d+ steps done\./);
  });

  it('that writes nothing into the records takes one press on the plan itself', async () => {
    const made = await winterSite();
    const to = made.at('/steps/photographs/done', DAY);
    expect(filledIn(await made.page('', DAY), to)).toEqual({ quick: 'on' });
    expect((await made.site.post(to, { quick: 'on' })).status).toBe(303);
    expect(stepOn(made.barn, made.id, 'photographs', DAY).tick).toMatchObject({ state: 'done', day: DAY });
  });

  it('that writes into the records is asked for, and pressed twice records it once', async () => {
    const made = await winterSite();
    const to = made.at('/steps/hinges/done', DAY);
    const seals = partOf(made.barn, made.carId, 'door-seals').id;
    expect(filledIn(await made.page('/steps/hinges', DAY), to)).toMatchObject({ effects: `services:${seals}` });
    const form = filledIn(await made.page('/steps/hinges', DAY), to);
    await made.site.post(to, form);
    const again = await made.site.post(to, form);
    expect([303, 422]).toContain(again.status);
    expect(partOf(made.barn, made.carId, 'door-seals').claims).toMatchObject([{ clock: 'serviced', from: DAY }]);
  });

  it('of the fuel is asked whole: stabilizer in, filled to 95 %, and its record opens anew', async () => {
    const made = await winterSite();
    const { barn, carId, page, at } = made;
    date(barn, carId, 'fuel-gasoline', claim('filled', '1 July 2026'));
    const old = partOf(barn, carId, 'fuel-gasoline').id;
    const form = filledIn(await page('/steps/fuel-fill', DAY), at('/steps/fuel-fill/done', DAY));
    expect(form).toMatchObject({
      effects: `renews:${old}`,
      [`answer.${old}.stabilized`]: 'yes',
      [`answer.${old}.fullness`]: '95',
    });
    expect((await tick(made, 'fuel-fill', { [`answer.${old}.blend`]: 'e5' })).status).toBe(303);
    expect(partOf(barn, carId, 'fuel-gasoline')).toMatchObject({
      replaces: old,
      claims: [{ clock: 'filled', from: DAY, to: DAY }],
      details: { stabilized: 'yes', fullness: 95, blend: 'e5' },
    });
  });

  it('of the oil renews it and its filter, each named and each to be left out', async () => {
    const made = await winterSite();
    const { barn, carId, page } = made;
    const [oil, filter] = ['engine-oil', 'oil-filter'].map((kind) => partOf(barn, carId, kind).id);
    date(barn, carId, 'engine-oil', claim('filled', '3 May 2025'));
    const html = await page('/steps/oil-change', DAY);
    expect(ticked(html, 'effects').toSorted()).toEqual([`renews:${oil}`, `renews:${filter}`].toSorted());
    expect(text(html)).toContain('Engine oil: renewed');
    await tick(made, 'oil-change', { effects: [`renews:${oil}`], evidence: 'workshop statement' });
    expect(partOf(barn, carId, 'engine-oil')).toMatchObject({
      replaces: oil,
      claims: [{ from: DAY, evidence: 'workshop statement' }],
    });
    expect(partOf(barn, carId, 'oil-filter').claims).toEqual([]);
    expect(closedParts(barn.store, barn.acting.collectionId, carId)).toHaveLength(1);
  });

  it('of parking puts the car into its place and keeps the odometer, in the unit that was chosen', async () => {
    const made = await winterSite();
    const bare = await tick(made, 'park', { distance: '54,300' }, PARKED);
    expect(bare.status).toBe(422);
    expect(faultAt(await bare.text(), 'distance')).toContain('in km or in miles');
    expect(carOf(made.barn, made.carId).place).toBeUndefined();
    expect((await tick(made, 'park', { distance: '54,300', unit: 'mi' }, PARKED)).status).toBe(303);
    expect(carOf(made.barn, made.carId).facts).toMatchObject({
      place: { name: 'Garage <north>' },
      placedOn: PARKED,
      odometer: [{ day: PARKED, km: 87_387 }],
    });
  });

  it('with one reading that can’t be keeps all that was typed and writes nothing', async () => {
    const made = await winterSite();
    const { barn, carId, at, page } = made;
    const tire = (corner: string) => `${partOf(barn, carId, 'tires-road', corner).id}.cold-pressure.`;
    const before = everythingIn(barn);
    const given = {
      [`${tire('front left')}typed`]: '3.0',
      [`${tire('front right')}typed`]: 'firm',
      note: 'Gauge of <Bram>',
      cost: '0',
    };
    const answer = await tick(made, 'pressure', given, PARKED);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(filledIn(html, at('/steps/pressure/done', PARKED))).toMatchObject(given);
    expect(faultAt(html, `${tire('front right')}typed`)).toBeTruthy();
    expect(faultAt(html, `${tire('front left')}typed`)).toBeUndefined();
    expect(everythingIn(barn)).toEqual(before);
    const mended = { ...given, [`${tire('front right')}typed`]: '2.9' };
    expect((await tick(made, 'pressure', mended, PARKED)).status).toBe(303);
    expect(partOf(barn, carId, 'tires-road', 'front right').readings).toMatchObject([{ value: 2.9, day: PARKED }]);
    expect(await page('/steps/pressure', PARKED)).not.toContain('<Bram>');
  });

  it('keeps the effects that were left out while something else is mended', async () => {
    const made = await winterSite();
    const oil = `renews:${partOf(made.barn, made.carId, 'engine-oil').id}`;
    const answer = await tick(made, 'oil-change', { effects: [oil], cost: 'EUR 45' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'cost')).toContain('“EUR 45” is no amount');
    expect(ticked(html, 'effects')).toEqual([oil]);
    expect(field(html, 'cost')['value']).toBe('EUR 45');
  });

  it('keeps them left out where none was wanted', async () => {
    const made = await winterSite();
    const answer = await tick(made, 'oil-change', { effects: [], day: '2026-10-31' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'day')).toBe('That day lies ahead.');
    expect(ticked(html, 'effects')).toEqual([]);
  });

  it('leads from what was wrong to the field it stands beside', async () => {
    const made = await winterSite();
    const fuel = partOf(made.barn, made.carId, 'fuel-gasoline').id;
    const wrong = { day: '2026-10-31', cost: 'x', [`answer.${fuel}.fullness`]: '195' };
    for (const [name, value] of Object.entries(wrong)) {
      const html = await (await tick(made, 'fuel-fill', { [name]: value })).text();
      const ways = tags(html, 'a').flatMap(({ href = '' }) => (href.endsWith('-fault') ? [href.slice(1)] : []));
      expect(ways, name).toHaveLength(1);
      expect(html, name).toContain(`id="${ways[0]}"`);
      expect(field(html, name), name).toMatchObject({ value, 'aria-invalid': 'true' });
    }
  });

  it('that wrote something off the record with a date that can’t be says so on its page', async () => {
    const made = await winterSite();
    const { barn, carId } = made;
    date(barn, carId, 'engine-oil', claim('filled', '3 May 2025'));
    const before = everythingIn(barn);
    const answer = await tick(made, 'oil-change', { day: '1955-01-01' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    const ways = tags(html, 'a').flatMap(({ href = '' }) => (href.endsWith('-fault') ? [href.slice(1)] : []));
    expect(ways.length).toBeGreaterThan(0);
    for (const way of ways) expect(html).toContain(`id="${way}"`);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('is taken back, and what it wrote is named to be taken back there', async () => {
    const made = await winterSite();
    await tick(made, 'oil-change');
    const page = await made.page('/steps/oil-change', DAY);
    expect(text(page)).toContain('Done on 30 October 2026 by Ada.');
    expect(text(page)).toContain('What it wrote into the car’s records stays there, and is taken back there.');
    expect(inside(page, 'button')).not.toContain('Done');
    const back = made.at('/steps/oil-change/untick', DAY);
    expect(filledIn(page, back)).toEqual({});
    expect((await made.site.post(back, {})).status).toBe(303);
    expect(stepOn(made.barn, made.id, 'oil-change', DAY).tick).toBeNull();
    expect(partOf(made.barn, made.carId, 'engine-oil').claims).toHaveLength(1);
  });
});

describe('leaving a step out', () => {
  it('wants a reason, and shows it', async () => {
    const { site, at, page } = await winterSite();
    const empty = await site.post(at('/steps/wax/skip', DAY), { reason: ' ' });
    expect(empty.status).toBe(422);
    expect(faultAt(await empty.text(), 'reason')).toContain('Say why it is left out');
    expect((await site.post(at('/steps/wax/skip', DAY), { reason: 'It is <wrapped>' })).status).toBe(303);
    const html = await page('', DAY);
    expect(words(html, 'wax')).toContain('Left out on 30 October 2026 by Ada: It is <wrapped>.');
    expect(html).not.toContain('<wrapped>');
    expect(text(html)).toMatch(/0 of \d+ steps done, 1 left out\./);
  });
});

describe('a step that was done', () => {
  it('is not left out on top of that', async () => {
    const made = await winterSite();
    await tick(made, 'photographs');
    const answer = await made.site.post(made.at('/steps/photographs/skip', DAY), { reason: 'Too dark' });
    expect(answer.status).toBe(422);
    expect(text(await answer.text())).toContain('This step was ticked already');
    expect(stepOn(made.barn, made.id, 'photographs', DAY).tick).toMatchObject({ state: 'done', note: '' });
  });
});

describe('fresh fuel in spring', () => {
  it('is asked anew: what was put into the old fill is not said of it', async () => {
    const made = await winterSite();
    const { barn, carId, page, at, send } = made;
    await tick(made, 'fuel-fill');
    const old = partOf(barn, carId, 'fuel-gasoline');
    expect(old.details).toMatchObject({ stabilized: 'yes', fullness: 95 });
    // It stands longer than it was filled for.
    const on: CivilDate = '2028-03-27';
    await send('/change', '/change', { returnOn: '2028-04-01' }, '2027-03-01');
    const form = filledIn(await page('/wake-up/fuel-drain', on), at('/wake-up/fuel-drain/done', on));
    expect(form).toMatchObject({ [`answer.${old.id}.stabilized`]: '', [`answer.${old.id}.fullness`]: '' });
    expect((await send('/wake-up/fuel-drain', '/wake-up/fuel-drain/done', {}, on)).status).toBe(303);
    const fresh = partOf(barn, carId, 'fuel-gasoline');
    expect(fresh).toMatchObject({ replaces: old.id, claims: [{ from: on }] });
    expect(fresh.details).not.toHaveProperty('stabilized');
  });
});

describe('both sides', () => {
  it('are shown with what speaks for each; the one taken changes the plan', async () => {
    const { send, page, at } = await winterSite();
    const html = await page('/steps/fuel-fill');
    expect(ticked(html, 'side')).toEqual(['full']);
    expect(text(html)).toContain('Drained. Nothing is in it that could go bad');
    const taken = await send('/steps/fuel-fill', '/sides', { side: 'drained' });
    expect(taken.headers.get('location')).toBe(`${at('')}#changed`);
    const plan = await page();
    expect(plan).toContain('<li class="step open" id="drain-tank">');
    expect(plan).not.toContain('id="fuel-fill"');
    expect(ticked(await page('/steps/drain-tank'), 'side')).toEqual(['drained']);
  });

  it('that are none are refused on a page', async () => {
    const { site, at, page } = await winterSite();
    const answer = await site.post(at('/sides'), { topic: 'tank', side: 'half' });
    expect(answer.status).toBe(422);
    expect(text(await answer.text())).toContain('There is no such side to take.');
    expect(ticked(await page('/steps/fuel-fill'), 'side')).toEqual(['full']);
  });

  it('taken on the way back lead back there', async () => {
    const { site, at } = await winterSite();
    const form = { topic: 'oil', side: 'after', back: 'wake-up' };
    expect((await site.post(at('/sides'), form)).headers.get('location')).toBe(at('/wake-up'));
  });
});

describe('the page of all sides', () => {
  /** The form of a topic on the page. */
  const topicOn = (html: string, topic: string): string =>
    [...html.matchAll(/<form[^>]*>.*?<\/form>/gs)]
      .map(([form]) => form)
      .find((form) => form.includes(`value="${topic}"`)) ?? '';

  it('has every topic that concerns the car, each with the side that is usual here', async () => {
    const { page, at } = await winterSite();
    expect(tags(await page(), 'a').map(({ href }) => href)).toContain(at('/sides'));
    const html = await page('/sides');
    const shown = tags(html, 'input').flatMap(({ name, value }) => (name === 'topic' ? [value] : []));
    expect(shown).toEqual(Object.keys(TOPICS).filter((key) => key !== 'silicone'));
    for (const key of shown) {
      const form = topicOn(html, key ?? '');
      // Nobody has chosen: the usual one is marked, and none of the sides by itself.
      expect(ticked(form, 'side'), key).toEqual(['']);
      expect(text(form), key).toContain('The usual one here: ');
      expect(inside(form, 'button'), key).toEqual(['Take this side']);
    }
    expect(text(topicOn(html, 'tank'))).toContain('The usual one here: full and treated');
  });

  it('takes a side, leads back to itself, and goes back to the usual one', async () => {
    const { site, page, at, barn, id } = await winterSite();
    const take = (side: string) => site.post(at('/sides'), { topic: 'tank', side, back: 'sides' });
    expect((await take('drained')).headers.get('location')).toBe(at('/sides'));
    expect(ticked(topicOn(await page('/sides'), 'tank'), 'side')).toEqual(['drained']);
    expect(text(topicOn(await page('/sides'), 'tank'))).toContain('The usual one here: full and treated');
    expect(await page()).toContain('<li class="step open" id="drain-tank">');
    expect(text(await page('/steps/drain-tank'))).toContain('your choice: ');
    const form = { ...filledIn(topicOn(await page('/sides'), 'tank'), at('/sides')), side: '' };
    expect(form).toEqual({ topic: 'tank', side: '', back: 'sides' });
    expect((await site.post(at('/sides'), form)).status).toBe(303);
    expect(stayIn(barn, id).record.row.choices).toEqual({});
    expect(ticked(topicOn(await page('/sides'), 'tank'), 'side')).toEqual(['']);
    expect(await page()).toContain('<li class="step open" id="fuel-fill">');
    expect(await page()).not.toContain('id="drain-tank"');
    expect(text(await page('/steps/fuel-fill'))).toContain('usual here: full and treated');
  });

  it('keeps a side that is chosen though it is the usual one', async () => {
    const { site, page, at, barn, id } = await winterSite();
    await site.post(at('/sides'), { topic: 'tank', side: 'full', back: 'sides' });
    expect(stayIn(barn, id).record.row.choices).toEqual({ tank: 'full' });
    expect(ticked(topicOn(await page('/sides'), 'tank'), 'side')).toEqual(['full']);
  });
});

describe('a step on the plan', () => {
  /** What stands openly on a step, and its buttons, before all that is folded away. */
  const openly = (html: string, key: string): string =>
    new RegExp(`<li class="step \\w+" id="${key}">(.*?)<details>`, 's').exec(html)?.[1] ?? '';

  it('has what it takes and what to mind in sight, and its title in every button', async () => {
    const { page, at, barn, id } = await winterSite();
    const html = await page();
    const title = titleOf('oil-change');
    const oil = openly(html, 'oil-change');
    const { cautions } = stepOn(barn, id, 'oil-change', '2026-09-10');
    expect(cautions.length).toBeGreaterThan(0);
    for (const key of cautions) expect(text(oil), key).toContain(CAUTIONS[key]);
    expect(text(oil)).toMatch(/About \d+ minutes\. Needs: engine oil/);
    expect(oil).toContain(`<span class="unseen">: ${title}</span>`);
    expect(tags(oil, 'a').map(({ href }) => href)).toContain(at('/steps/oil-change'));
    expect(inside(oil, 'a')).toContain(`Done, with details: ${title}`);
    expect(inside(oil, 'button')).toEqual([]);
    expect(inside(html, 'summary')).toContain(`Why: ${titleOf('photographs')}`);
    expect(inside(html, 'summary').join()).toContain(`Why, and both sides: ${titleOf('fuel-fill')}`);
  });

  it('takes one press only where nothing is asked and nothing goes into the records', async () => {
    const { page, barn, id } = await winterSite();
    const html = await page();
    for (const { key, title, records } of stayIn(barn, id).view.layUp.steps) {
      const { renews, services, uses, reads, odometer } = records;
      const asks = Boolean(renews || services || uses || reads || odometer);
      const actions = openly(html, key);
      expect(inside(actions, 'button'), key).toEqual(asks ? [] : [`Done: ${title}`]);
      expect(inside(actions, 'a').includes(`Done, with details: ${title}`), key).toBe(asks);
    }
  });

  it('of an oil change asks the odometer', async () => {
    const made = await winterSite();
    expect(field(await made.page('/steps/oil-change', DAY), 'distance')).toMatchObject({ value: '' });
    expect((await tick(made, 'oil-change', { distance: '87,400', unit: 'km' })).status).toBe(303);
    expect(carOf(made.barn, made.carId).facts.odometer).toEqual([{ day: DAY, km: 87_400 }]);
    expect(partOf(made.barn, made.carId, 'engine-oil').claims).toMatchObject([{ from: DAY, km: 87_400 }]);
  });

  it('taken back on its page loses what it said of the battery', async () => {
    const made = await winterSite();
    await tick(made, 'battery-maintainer', {}, PARKED);
    expect(partOf(made.barn, made.carId, 'battery-flooded').details).toMatchObject({ connection: 'maintainer' });
    const back = made.at('/steps/battery-maintainer/untick', PARKED);
    expect((await made.site.post(back, {})).status).toBe(303);
    expect(partOf(made.barn, made.carId, 'battery-flooded').details).not.toHaveProperty('connection');
    expect(stepOn(made.barn, made.id, 'battery-maintainer', PARKED).tick).toBeNull();
  });
});

describe('a step of one’s own', () => {
  it('is added, ticked where it stands, and taken off again', async () => {
    const { site, send, page, at } = await winterSite();
    const added = await send('', '/own', { title: 'Oil the <hood> pins', days: '5', note: 'Both & all' });
    const key = added.headers.get('location')?.split('#')[1] ?? '';
    const html = await page();
    expect(html).not.toContain('<hood>');
    expect(words(html, key)).toBe('Oil the <hood> pins Your own Both & all');
    expect((await site.post(at(`/steps/${key}/done`), { quick: 'on' })).status).toBe(303);
    expect(words(await page(), key)).toContain('Done on 10 September 2026');
    expect((await site.post(at(`/own/${key}/remove`), {})).status).toBe(303);
    expect(await page()).not.toContain(key);
  });

  it('refused keeps what was typed, and which plan it belongs to', async () => {
    const { send, at } = await winterSite();
    const typed = { title: '', days: 'some', note: 'Both <of> them', plan: 'wake-up' };
    const answer = await send('', '/own', typed);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(filledIn(html, at('/own'))).toMatchObject(typed);
    expect(faultAt(html, 'title')).toBeTruthy();
    expect(faultAt(html, 'days')).toContain('“some” is no number of days');
  });

  it('of the way back stands on its page', async () => {
    const { send, page, at } = await winterSite();
    const added = await send('', '/own', { title: 'Ask for the good plates', plan: 'wake-up' });
    expect(added.headers.get('location')).toContain(at('/wake-up#'));
    expect(inside(await page('/wake-up'), 'h3').join()).toContain('Ask for the good plates');
    expect(inside(await page(), 'h3').join()).not.toContain('Ask for the good plates');
  });
});
