import { describe, expect, it } from 'vitest';
import { sweepCollection } from '../../src/acts/sweep.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { siteAt } from '../../src/links.ts';
import { changeLeft } from '../../src/store/cars.ts';
import { lettersOf } from '../../src/store/letters.ts';
import { changeMember, findCollection, membersOf } from '../../src/store/people.ts';
import { barnOf, carIn, claim, date, TODAY } from '../support/cars.ts';
import { filledIn, text } from '../support/html.ts';
import { layUpIn } from '../support/lay-ups.ts';
import { allSent } from '../support/letters.ts';
import { openSite } from '../support/site.ts';

const { href } = siteAt(null, 3000);

const open = () => {
  const site = openSite();
  const barn = barnOf(site);
  const old = carIn(barn, { name: 'Merle Tourer' });
  date(barn, old, 'brake-fluid-glycol', claim('filled', '1 June 2024'));
  date(barn, old, 'spark-plugs', claim('fitted', '2015'));
  const other = carIn(barn, { name: 'Alder Coupe' });
  date(barn, other, 'engine-oil', claim('filled', '1 June 2022'));
  const path = `/members/${site.personId}/letters`;
  const save = async (more: Record<string, string | string[]>) => {
    const html = await (await site.get(path)).text();
    return site.post(path, { ...filledIn(html, path), ...more });
  };
  const me = () => membersOf(site.store, site.collectionId)[0];
  const sweepOn = (today: CivilDate): string[] => {
    const collection = findCollection(site.store, site.collectionId);
    if (!collection) throw new Error('No collection');
    allSent(site.store);
    const options = { today, now: `${today}T07:00:00.000Z`, href, dryRun: false };
    return sweepCollection(site.store, collection, options).letters.map(({ subject }) => subject);
  };
  return { site, barn, old, other, path, save, me, sweepOn };
};

describe('the wishes of a person', () => {
  it('saved as they stand change nothing', async () => {
    const { save, me } = open();
    const before = me();
    expect((await save({})).status).toBe(303);
    expect(me()).toEqual(before);
  });

  it('leave a car alone that came, or came back, while the form was open', async () => {
    const { site, barn, old, other, path, me } = open();
    const { collectionId } = barn.acting;
    changeLeft(site.store, collectionId, other, { leftOn: TODAY, leftHow: 'sold' });
    const form = filledIn(await (await site.get(path)).text(), path);
    const later = carIn(barn, { name: 'Birch Sedan' });
    changeLeft(site.store, collectionId, other, { leftOn: null, leftHow: null });
    await site.post(path, form);
    expect(me()?.notCars).toEqual([]);
    await site.post(path, { ...form, cars: [] });
    expect(me()?.notCars).toEqual([old]);
    // What was put out before stays out, though this form did not ask.
    changeMember(site.store, collectionId, site.personId, { notCars: [later] });
    await site.post(path, form);
    expect(me()?.notCars).toEqual([later]);
  });

  it('another address of documents has a key of its own; the same one keeps it', async () => {
    const { save, me } = open();
    await save({ webhookUrl: 'https://hook.example.org/one' });
    const first = me()?.webhookSecret;
    await save({ webhookUrl: 'https://hook.example.org/one', hour: '8' });
    expect(me()?.webhookSecret).toBe(first);
    await save({ webhookUrl: 'https://hook.example.org/two' });
    expect(me()?.webhookSecret).toMatch(/^[\w+/]{32}$/);
    expect(me()?.webhookSecret).not.toBe(first);
  });

  it('are kept whole, and stand in the form again', async () => {
    const { site, path, old, save, me } = open();
    const given = {
      hour: '18',
      cars: [old],
      severities: ['strands'],
      repeatDays: '',
      quietFromDay: '1',
      quietFromMonth: '12',
      quietToDay: '29',
      quietToMonth: '2',
      yearlyMonth: '',
      pushUrl: 'https://push.example.org/barn',
      webhookUrl: 'https://hook.example.org/barn?a=b',
    };
    expect((await save(given)).status).toBe(303);
    expect(me()).toMatchObject({
      hour: 18,
      notCars: [expect.not.stringMatching(old)],
      notSeverities: ['engine', 'damage', 'nuisance', 'cosmetic'],
      repeatDays: 0,
      quietFrom: '12-01',
      quietTo: '02-29',
      yearlyMonth: null,
      webhookSecret: expect.stringMatching(/^[\w+/]{32}$/),
    });
    const html = await (await site.get(path)).text();
    // What can hurt somebody is ticked for good, and sent by no form.
    expect(filledIn(html, path)).toMatchObject({
      ...given,
      cars: old,
      severities: expect.arrayContaining(['strands']),
    });
    expect(text(html)).toContain(`whsec_${me()?.webhookSecret}`);
  });

  it.each<[Record<string, string>, string]>([
    [{ hour: '24' }, 'The hour is a whole number from 0 to 23'],
    [{ hour: 'seven' }, 'The hour is a whole number from 0 to 23'],
    [{ repeatDays: '0' }, 'Say after how many days, 1 to 366'],
    [{ repeatDays: '-3' }, 'Say after how many days, 1 to 366'],
    [
      { quietFromDay: '30', quietFromMonth: '2', quietToDay: '1', quietToMonth: '3' },
      'There is no day 30 in February.',
    ],
    [{ quietFromDay: '1', quietFromMonth: '12' }, 'A quiet season has a first and a last day'],
    [{ quietFromDay: '1', quietToDay: '2' }, 'A quiet season has a first and a last day'],
    [{ pushUrl: 'push.example.org' }, '“push.example.org” is no address.'],
    [{ webhookUrl: 'file:///etc/passwd' }, '“file:///etc/passwd” is no address.'],
  ])('that cannot be are told beside the field, and nothing is lost: %o', async (more, message) => {
    const { path, save, me } = open();
    const before = me();
    const refused = await save(more);
    expect(refused.status).toBe(422);
    const html = await refused.text();
    expect(text(html)).toContain(message);
    expect(filledIn(html, path)).toMatchObject(more);
    expect(me()).toEqual(before);
  });

  it('leave a car out of the letters, and it comes when it is wanted again', async () => {
    const { old, other, save, sweepOn } = open();
    await save({ cars: [other] });
    expect(sweepOn(TODAY)).toEqual(['1 past: Alder Coupe']);
    await save({ cars: [old, other] });
    expect(sweepOn('2026-11-26')).toEqual(['2 past: Merle Tourer']);
  });

  it('keep a quiet season, and one letter after it holds what waited', async () => {
    const { save, sweepOn } = open();
    await save({ quietFromDay: '1', quietFromMonth: '11', quietToDay: '28', quietToMonth: '2', yearlyMonth: '' });
    expect(sweepOn(TODAY)).toEqual(['1 past: Merle Tourer']);
    expect(sweepOn('2027-02-28')).toEqual([]);
    expect(sweepOn('2027-03-01')).toEqual(['2 past, 1 told again: Merle Tourer and 1 more car']);
  });

  it('bring a yearly letter with every car in it, once a year', async () => {
    const { site, save, sweepOn } = open();
    await save({ yearlyMonth: '12' });
    sweepOn(TODAY);
    expect(sweepOn('2026-12-01')).toEqual(['The whole collection, 2 cars']);
    const [letter] = lettersOf(site.store, site.collectionId);
    expect(letter).toMatchObject({ kind: 'yearly' });
    expect(letter?.text).toContain('once a year, the whole of “My cars”, as on 1 December 2026.');
    expect(letter?.text).toMatch(
      /THE WHOLE COLLECTION[\s\S]*Merle Tourer[\s\S]*Alder Coupe|Alder Coupe[\s\S]*Merle Tourer/,
    );
    expect(letter?.text).toMatch(/\d+ unproven/);
    expect(letter?.text).not.toMatch(/\bfine\b|\bOK\b/);
    expect(sweepOn('2026-12-02')).toEqual([]);
    expect(sweepOn('2027-12-05')).toEqual([expect.stringMatching(/^The whole collection, 2 cars; /)]);
  });
});

describe('a test', () => {
  it('is written, sent, and shows what was answered', async () => {
    let delivered = 0;
    const site = openSite({
      deliver: async () => ({ sent: ++delivered, waiting: 0, failed: 0, calledOff: 0 }),
    });
    const sent = await site.post('/letters/test', {});
    expect(sent.status).toBe(303);
    expect(delivered).toBe(1);
    const shown = text(await (await site.get(sent.headers.get('location') ?? '')).text());
    expect(shown).toContain('A test: letters arrive');
    expect(shown).toContain('test by mail to ada@example.org');
    expect(shown).toContain('Nothing in it is news of a car.');
  });
});

describe('a letter that was refused', () => {
  const refused = async () => {
    const here = open();
    const { site, sweepOn } = here;
    sweepOn(TODAY);
    site.store.$client.exec("update letters set state = 'failed', why = 'refused', tries = 1");
    const id = lettersOf(site.store, site.collectionId)[0]?.id ?? '';
    return { ...here, id };
  };

  it('is told on every page until it is seen', async () => {
    const { site, id } = await refused();
    expect(text(await (await site.get('/places')).text())).toContain('A letter was given up');
    expect((await site.post(`/letters/${id}/seen`, {})).status).toBe(303);
    expect(text(await (await site.get('/places')).text())).not.toContain('A letter was given up');
    expect(text(await (await site.get(`/letters/${id}`)).text())).toContain('given up: it was refused for good');
  });

  it('keeps further ones back until it is seen, and then one letter says it all', async () => {
    const { site, id, sweepOn } = await refused();
    expect(sweepOn('2026-11-26')).toEqual([]);
    await site.post(`/letters/${id}/seen`, {});
    expect(sweepOn('2026-11-27')).toEqual(['3 past: Merle Tourer and 1 more car']);
  });

  it('is no matter once the address is another', async () => {
    const { site, sweepOn } = await refused();
    await site.post(`/members/${site.personId}`, {
      name: 'Ada',
      email: 'new@example.org',
      dateOrder: 'ask',
      letters: 'on',
    });
    expect(sweepOn('2026-11-26')).toEqual(['3 past: Merle Tourer and 1 more car']);
  });

  it('can be tried again from the start', async () => {
    const { site, id } = await refused();
    expect((await site.post(`/letters/${id}/retry`, {})).status).toBe(303);
    expect(lettersOf(site.store, site.collectionId)[0]).toMatchObject({ state: 'waiting', tries: 0, why: null });
  });
});

describe('a car that has left', () => {
  it('falls silent, keeps its sheet, and can come back', async () => {
    const { site, old, sweepOn } = open();
    expect((await site.post(`/cars/${old}/left`, { how: 'sold', day: TODAY })).status).toBe(303);
    expect(sweepOn(TODAY)).toEqual(['1 past: Alder Coupe']);
    expect(text(await (await site.get(`/cars/${old}`)).text())).toContain(
      'It left the collection on 25 November 2026: sold.',
    );
    expect(text(await (await site.get('/')).text())).toContain(
      'Left the collection: 1 car Merle Tourer, sold on 25 November 2026',
    );
    expect((await site.post(`/cars/${old}/back`, {})).status).toBe(303);
    expect(sweepOn('2026-11-26')).toEqual(['2 past: Merle Tourer']);
  });

  it('is put away and on its way back no more, until it comes back itself', async () => {
    const { site, barn, old } = open();
    layUpIn(barn, old, { parkedOn: '2026-12-15', returnOn: '2027-04-01' });
    const read = async (path: string) => text(await (await site.get(path)).text());
    expect(await read(`/cars/${old}`)).toContain('Lay-up planned');
    await site.post(`/cars/${old}/left`, { how: 'sold', day: TODAY });
    expect(await read('/lay-ups')).toMatch(/No car is put away.*Past stays Merle Tourer/);
    expect(await read(`/cars/${old}`)).not.toMatch(/Lay-up planned|Put it away/);
    await site.post(`/cars/${old}/back`, {});
    expect(await read('/lay-ups')).toMatch(/Merle Tourer To be parked/);
  });

  it.each(['2026-11-26', '1990-01-01', ''])('on “%s” is asked back', async (day) => {
    const { site, old } = open();
    const refused = await site.post(`/cars/${old}/left`, { how: 'sold', day });
    expect(refused.status).toBe(422);
    expect(text(await refused.text())).toContain('Say on which day it left');
  });
});
