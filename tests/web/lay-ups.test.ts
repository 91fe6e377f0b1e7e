import { describe, expect, it } from 'vitest';
import { layUpsOf } from '../../src/store/lay-ups.ts';
import { lettersOf } from '../../src/store/letters.ts';
import { carIn, carOf, claim, date, must, partOf } from '../support/cars.ts';
import { faultAt, field, filledIn, inside, tags, text, ticked } from '../support/html.ts';
import {
  BACK,
  layUpIn,
  PARKED,
  personIn,
  placeIn,
  roundOn,
  stayIn,
  tickOn,
  titleOf,
  winterSite,
} from '../support/lay-ups.ts';

/** What the section under a heading says, up to the next section. */
const section = (html: string, id: string): string | undefined => {
  const found = new RegExp(`<section[^>]* aria-labelledby="${id}">(.*?)</section>`, 's').exec(html);
  return found ? text(found[1] ?? '') : undefined;
};

describe('starting a lay-up', () => {
  it('asks a car, a day and a place, and leads to the plan it made', async () => {
    const { site, barn } = await winterSite();
    const carId = carIn(barn, { name: 'Alder Coupe' });
    const form = filledIn(await (await site.get(`/lay-ups/new?car=${carId}`)).text(), '/lay-ups');
    expect(form).toMatchObject({ car: carId, parkedOn: '', returnOn: '', place: '' });
    const made = await site.post('/lay-ups', { ...form, parkedOn: PARKED });
    expect(made.status).toBe(303);
    const plan = await (await site.get(made.headers.get('location') ?? '')).text();
    expect(inside(plan, 'h1')).toEqual(['Lay-up of Alder Coupe']);
    expect(text(plan)).toContain('To be parked on 1 November 2026, with an open end.');
    expect(text(plan)).toContain('Nobody has said where it stands: frost is taken for possible.');
    expect(inside(plan, 'h2')).toContain('Sunday, 20 September 2026 6 weeks before');
    expect(text(plan)).toMatch(/0 of \d+ steps done\./);
  });

  it('takes the place the car stands in for the one it is put away in', async () => {
    const { site, barn, placeId } = await winterSite();
    const carId = carIn(barn, { name: 'Alder Coupe' });
    await site.post(`/cars/${carId}/place`, { place: placeId });
    const html = await (await site.get(`/lay-ups/new?car=${carId}`)).text();
    expect(filledIn(html, '/lay-ups')).toMatchObject({ car: carId, place: placeId });
  });

  it('writes the plan’s letter at once', async () => {
    const { site, barn, id } = await winterSite();
    const letters = lettersOf(site.store, barn.acting.collectionId);
    expect(letters.map(({ kind, recipient }) => [kind, recipient])).toEqual([['plan', 'ada@example.org']]);
    expect(letters[0]?.text).toContain(`/lay-ups/${id}`);
    expect(text(await (await site.get('/letters')).text())).toContain('Lay-up of Merle <Tourer> from 1 November 2026');
  });

  it('refused keeps everything that was typed, beside what is wrong', async () => {
    const { site, barn, placeId } = await winterSite();
    const bram = personIn(barn, 'Bram', 'bram@example.org', false);
    const typed = {
      car: carIn(barn, { name: 'Alder Coupe' }),
      parkedOn: PARKED,
      returnOn: '2026-10-01',
      place: placeId,
      visitor: bram,
      phone: '0170 <555>',
      circumstances: ['no-mains', 'mice'],
      dose: 'much',
      engine: '1.8',
      cylinders: '4',
      renewsOn: '2027-02-01',
      rules: 'Ask <them>',
      note: 'Key & lock',
    };
    const answer = await site.post('/lay-ups', typed);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(filledIn(html, '/lay-ups')).toMatchObject(typed);
    expect(ticked(html, 'circumstances')).toEqual(['no-mains', 'mice']);
    expect(faultAt(html, 'returnOn')).toContain('comes back after the day it is parked');
    expect(faultAt(html, 'dose')).toContain('a number from 2 to 200');
    expect(faultAt(html, 'parkedOn')).toBeUndefined();
    expect(layUpsOf(site.store, barn.acting.collectionId)).toHaveLength(1);
    expect((await site.post('/lay-ups', { ...typed, returnOn: BACK, dose: '' })).status).toBe(303);
  });

  it('without a car, or for one that has an open lay-up, says so at the car', async () => {
    const { site, carId } = await winterSite();
    const nobody = await site.post('/lay-ups', { parkedOn: PARKED });
    expect(nobody.status).toBe(422);
    expect(faultAt(await nobody.text(), 'car')).toBe('Choose the car.');
    const second = await site.post('/lay-ups', { car: carId, parkedOn: PARKED });
    expect(second.status).toBe(422);
    expect(faultAt(await second.text(), 'car')).toContain('Merle <Tourer> has a lay-up from 1 November 2026 on');
  });

  it('of a car that is parked already stands it there since then', async () => {
    const { site, barn, placeId } = await winterSite();
    const carId = carIn(barn, { name: 'Alder Coupe' });
    const made = await site.post('/lay-ups', { car: carId, parkedOn: '2026-06-01', place: placeId });
    expect(carOf(barn, carId).facts.placedOn).toBe('2026-06-01');
    const plan = text(await (await site.get(made.headers.get('location') ?? '')).text());
    expect(plan).toContain('While it stands');
    // Its plan is made today: for a fortnight it is the work at hand, after that it is folded away and nothing is late.
    expect(plan).toContain('Parked on 1 June 2026, with an open end.');
    expect(plan).not.toContain('Its steps, to tick what was done');
    const later = text(await (await site.get(`${made.headers.get('location')}?on=2026-09-25`)).text());
    expect(later).toContain('Its steps, to tick what was done');
    expect(later).not.toContain('Its day was');
    expect(later).not.toMatch(/\d late/);
  });

  it('asks who is to be called and the number in one field, for the sheet', async () => {
    const { site, carId } = await winterSite();
    const html = await (await site.get(`/lay-ups/new?car=${carId}`)).text();
    expect(text(html)).toContain('Who to call, and the number, for the sheet behind the windshield');
    expect(field(html, 'phone')['value']).toBe('');
  });

  it('says of the place it is the one it stands in now, and that frost is taken for possible otherwise', async () => {
    const { site, carId } = await winterSite();
    expect(text(await (await site.get(`/lay-ups/new?car=${carId}`)).text())).toContain(
      'Where the car stands now; if nobody has said, frost is taken for possible',
    );
  });

  it('offers an earlier lay-up as the pattern, and takes what does not change from it', async () => {
    const { site, carId, send, id } = await winterSite({
      phone: '0170 555',
      circumstances: ['mice'],
      dose: '32',
      note: 'This year only',
    });
    await send('', '/own', { title: 'Oil the <hood> pins', days: '3' });
    await send('/close', '/close', {}, '2027-03-28');
    const html = await (await site.get(`/lay-ups/new?car=${carId}&on=2027-09-01`)).text();
    expect(filledIn(html, '/lay-ups?on=2027-09-01')).toMatchObject({
      like: id,
      phone: '0170 555',
      circumstances: 'mice',
      dose: '32',
      parkedOn: '',
      note: '',
    });
    const form = { ...filledIn(html, '/lay-ups?on=2027-09-01'), parkedOn: '2027-11-05' };
    const made = await site.post('/lay-ups?on=2027-09-01', form);
    expect(text(await (await site.get(made.headers.get('location') ?? '')).text())).toContain('Oil the <hood> pins');
  });
});

describe('the plan’s page', () => {
  it('shows each step with its day, its reason, its figures, and what stands behind it', async () => {
    const { page } = await winterSite();
    const html = await page();
    const fill = /<li class="step open" id="fuel-fill">(.*?)<\/details>/s.exec(html)?.[1] ?? '';
    expect(text(fill)).toContain(titleOf('fuel-fill'));
    expect(text(fill)).toContain('Stabilizer for each 10 L: 25 to 35 mL');
    expect(text(fill)).toContain('Full tank or empty?');
    expect(text(fill)).toContain('In the plan because: fuel: gasoline; usual here: full and treated');
    expect(text(fill)).toContain('Needs: fuel stabilizer, in date.');
    expect(html).not.toContain('<north>');
    expect(text(html)).toContain('It stands in Garage <north>.');
  });

  it('stays open on the parking day and for a fortnight while steps are open', async () => {
    const { page, barn, id } = await winterSite();
    const folded = async (on: string) =>
      text(await page('', on as '2026-11-01')).includes('Its steps, to tick what was done');
    expect(await folded(PARKED)).toBe(false);
    expect(text(await page('', PARKED))).toContain('While it stands');
    expect(await folded('2026-11-15')).toBe(false);
    expect(await folded('2026-11-16')).toBe(true);
    // Ticked off to the last it is folded at once.
    for (const { key } of stayIn(barn, id, PARKED).view.layUp.steps) must(tickOn(barn, id, key, PARKED));
    expect(await folded('2026-11-02')).toBe(true);
  });

  it('says where its amounts come from', async () => {
    const { page } = await winterSite();
    expect(text(await page())).toContain('Amounts are worked out from what you entered');
  });

  it('says what changed when facts move, until that was understood; ticks stay', async () => {
    const { site, barn, carId, page, send, at } = await winterSite();
    expect(section(await page(), 'changed')).toBeUndefined();
    await send('/steps/photographs', '/steps/photographs/done', { note: 'Forty' });
    const form = { parkedOn: '2026-11-15' };
    expect((await send('/change', '/change', form)).headers.get('location')).toBe(at(''));
    const moved = section(await page(), 'changed');
    expect(moved).toContain('steps moved: the first from 20 September 2026 to 4 October 2026');
    expect(moved).toContain('What was ticked stays ticked.');
    expect(text(await page())).toContain('Done on 10 September 2026 by Ada: Forty.');
    expect((await site.post(at('/seen'), {})).status).toBe(303);
    expect(section(await page(), 'changed')).toBeUndefined();
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 September 2026'));
    expect(section(await page(), 'changed')).toContain(`No longer needed: ${titleOf('brake-fluid')}.`);
  });

  it('says nothing of a change where a step was ticked off that renews what brought it in', async () => {
    const { page, send, barn, carId } = await winterSite();
    const { id } = partOf(barn, carId, 'brake-fluid-glycol');
    await send('/steps/brake-fluid', '/steps/brake-fluid/done', {}, '2026-10-20');
    expect(partOf(barn, carId, 'brake-fluid-glycol')).toMatchObject({ id, claims: [{ from: '2026-10-20' }] });
    expect(section(await page('', '2026-10-20'), 'changed')).toBeUndefined();
    const step = /<li class="step done" id="brake-fluid">(.*?)<\/h3>(.*?)<div/s.exec(await page('', '2026-10-20'))?.[2];
    expect(text(step ?? '')).toBe('Done on 20 October 2026 by Ada.');
  });

  it('shows a tick whose step no longer applies, and says that', async () => {
    const { barn, page, send } = await winterSite();
    await send('/steps/traps', '/steps/traps/done', {});
    const mild = placeIn(barn, 'Orangery', { shelter: 'heated', heatedTo: 15, winterLow: 8, summerHigh: 27 });
    await send('/change', '/change', { place: mild });
    const html = await page();
    expect(text(/<li class="step done" id="traps">(.*?)<div/s.exec(html)?.[1] ?? '')).toContain(
      'By what is known today it would not be in the plan.',
    );
    expect(section(html, 'changed')).toContain(`No longer needed: ${titleOf('desiccant')}.`);
  });

  it('changed to what can’t be keeps what was typed and changes nothing', async () => {
    const { page, send, barn, at } = await winterSite();
    const answer = await send('/change', '/change', { returnOn: '2026-10-01', note: 'Was <typed>' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(field(html, 'returnOn')['value']).toBe('2026-10-01');
    expect(filledIn(html, at('/change'))).toMatchObject({ note: 'Was <typed>' });
    expect(faultAt(html, 'returnOn')).toBeTruthy();
    expect(text(await page())).toContain('until 1 April 2027');
    expect(layUpsOf(barn.store, barn.acting.collectionId)[0]?.note).toBe('');
  });

  it('has its form filled in with all that was said', async () => {
    const said = {
      phone: '0170 555',
      circumstances: 'mice',
      dose: '32',
      engine: '1.8',
      cylinders: '4',
      storageFrom: '2026-11-02',
      roadUntil: '2026-11-03',
      noticeFrom: '2026-11-04',
      renewsOn: '2027-02-01',
      rules: 'Ask <them>',
      note: 'Key & lock',
    };
    const { page, at, placeId } = await winterSite(said);
    expect(filledIn(await page('/change'), at('/change'))).toMatchObject({
      ...said,
      parkedOn: PARKED,
      returnOn: BACK,
      place: placeId,
    });
  });

  it('tells the gap between the papers', async () => {
    const { page } = await winterSite({ roadUntil: '2026-11-03', noticeFrom: '2026-11-10' });
    expect(text(await page('/steps/insurer'))).toContain('such a gap draws letters and fines');
  });

  it('of a car whose battery was never read warns once it stands, and not before', async () => {
    const { page } = await winterSite();
    expect(text(await page('', '2026-10-31'))).not.toContain('What can’t wait');
    expect(text(await page('', '2026-12-05'))).toContain('The battery was not read since it stands.');
  });
});

describe('the list of lay-ups', () => {
  it('is in the menu, and shows what stands, what comes next, and what is over', async () => {
    const { site, barn, id, send } = await winterSite();
    const coupe = carIn(barn, { name: 'Alder Coupe' });
    layUpIn(barn, coupe, { parkedOn: '2026-11-20', returnOn: '' });
    const list = await (await site.get('/lay-ups')).text();
    expect(tags(await (await site.get('/')).text(), 'a').map((one) => one['href'])).toContain('/lay-ups');
    expect(inside(list, 'h2').toSorted()).toEqual(['Alder Coupe', 'Merle <Tourer>']);
    expect(text(list)).toContain(`Next step, 20 September 2026: ${titleOf('settle-place')}.`);
    await send('/close', '/close', {}, '2027-03-28');
    const after = await (await site.get('/lay-ups?on=2027-03-28')).text();
    expect(section(after, 'past')).toMatch(/^Past stays /);
    expect(section(after, 'past')).toContain('Merle <Tourer>: Parked on 1 November 2026, back on 28 March 2027');
    expect(tags(after, 'a').map((one) => one['href'])).toContain(`/lay-ups/${id}?on=2027-03-28`);
    // As on a day in winter it stands.
    expect(section(await (await site.get('/lay-ups?on=2027-01-05')).text(), 'past')).toBeUndefined();
  });

  it('names the round that is due, and the missed ones', async () => {
    const { site, barn, id } = await winterSite();
    const line = async (on: string) => text(await (await site.get(`/lay-ups?on=${on}`)).text());
    expect(await line('2026-11-20')).toContain('Next round 1 December 2026.');
    expect(await line('2027-01-05')).toContain('Round due since 1 January 2027; 1 missed.');
    roundOn(barn, id, '2027-01-05', { smell: 'none' });
    expect(await line('2027-01-05')).toContain('Next round 1 February 2027; 1 missed.');
  });

  it('is empty in words', async () => {
    const { site, barn } = await winterSite();
    barn.store.$client.exec('delete from told_of_stays; delete from lay_ups');
    expect(text(await (await site.get('/lay-ups')).text())).toContain('No car is put away, and none is about to be.');
  });
});

describe('the car’s sheet', () => {
  it('offers to put it away, then shows its lay-up', async () => {
    const { site, barn, carId, id } = await winterSite();
    const coupe = carIn(barn, { name: 'Alder Coupe' });
    const offered = await (await site.get(`/cars/${coupe}`)).text();
    expect(tags(offered, 'a').map((one) => one['href'])).toContain(`/lay-ups/new?car=${coupe}`);
    const sheet = async (on: string) => section(await (await site.get(`/cars/${carId}?on=${on}`)).text(), 'laid-up');
    expect(await sheet('2026-10-01')).toMatch(/^Lay-up planned To be parked on 1 November 2026 until 1 April 2027/);
    expect(await sheet('2026-10-01')).not.toContain('silent');
    expect(await sheet('2026-11-05')).toMatch(/^Laid up .*Its ordinary letters are silent until it is back\./);
    const html = await (await site.get(`/cars/${carId}?on=2026-11-05`)).text();
    expect(tags(html, 'a').map((one) => one['href'])).toContain(`/lay-ups/${id}?on=2026-11-05`);
  });
});
