import { beforeAll, describe, expect, it } from 'vitest';
import { carIn, claim, date, openBarn, partOf } from '../support/cars.ts';
import { addresses, field, inside, tags, text } from '../support/html.ts';
import { type FullSite, onDay, openFullSite } from '../support/pages.ts';

const NO_ID = '01900000-0000-7000-8000-000000000000';
const NAMES = [
  'the line-up',
  'a new car',
  'a car',
  'the round of a car',
  'changing a car',
  'a new part',
  'a part',
  'a part without a date',
  'a part with readings',
  'dating a tire',
  'dating in a round',
  'renewing a part',
  'date codes',
  'date codes read',
  'places',
  'a new place',
  'a place',
  'desks',
  'the brake fluid desk',
  'the coolant desk',
  'the battery desk',
  'the fuel desk',
  'the rubber desk',
  'practice',
  'a kind',
  'a kind for a car',
  'lay-ups',
  'a new lay-up',
  'a lay-up',
  'the sides of a lay-up',
  'changing a lay-up',
  'a step',
  'the way back',
  'a step of the way back',
  'a round',
  'closing a lay-up',
  'revivals',
  'a new revival',
  'a revival',
  'changing a revival',
  'a first look',
  'a verdict',
  'a stage',
  'a step of a return',
  'a road test',
  'a leak survey',
  'a journal',
  'ending a revival',
  'a road check',
  'the year ahead',
  'shopping',
  'money',
  'letters',
  'letters just written',
  'a letter',
  'the collection',
];

let full: FullSite;
beforeAll(async () => {
  full = await openFullSite();
});

const html = async (path: string): Promise<string> => (await full.site.get(path)).text();
const pageOf = (name: string): string => full.pages[name] ?? '';

it('all pages are in this list', () => expect(Object.keys(full.pages).toSorted()).toEqual(NAMES.toSorted()));

describe.each(NAMES)('the page of %s', (name) => {
  it('answers with one heading, a title and a language', async () => {
    const answer = await full.site.get(pageOf(name));
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toMatch(/^text\/html/);
    const body = await answer.text();
    expect(body).toMatch(/^<!DOCTYPE html><html lang="en">/);
    const headings = inside(body, 'h1');
    expect(headings).toHaveLength(1);
    expect(headings[0]).not.toBe('');
    expect(inside(body, 'title')[0]).toMatch(/^.+ · Standstill$/);
  });

  it('carries a policy against foreign content and is kept by no cache', async () => {
    const { headers } = await full.site.get(pageOf(name));
    expect(headers.get('cache-control')).toBe('no-store');
    expect(headers.get('content-security-policy')).toBe(
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    );
    expect(headers.get('referrer-policy')).toBe('same-origin');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
  });

  it('has no inline script or style its own policy would stop', async () => {
    const body = await html(pageOf(name));
    expect(body).not.toMatch(/<style|\sstyle="|\son[a-z]+="|<script>/);
  });

  it('escapes what people typed', async () => {
    expect(await html(pageOf(name))).not.toContain('<Tourer>');
  });

  it('leads to no dead end: every link answers', async () => {
    const links = tags(await html(pageOf(name)), 'a').map(({ href }) => href ?? '');
    const dead = [];
    for (const link of new Set(links.filter((href) => href.startsWith('/')))) {
      const { status } = await full.site.get(link.split('#')[0] ?? '');
      if (status !== 200 && status !== 303) dead.push(`${status} ${link}`);
    }
    expect(links.length).toBeGreaterThan(5);
    expect(dead).toEqual([]);
  });

  it('seen as on another day says so, and every way onward keeps that day', async () => {
    const body = await html(onDay(pageOf(name), '2028-02-29'));
    expect(/<p class="elsewhen" role="status">(.*?)<\/p>/s.exec(body)?.[1]).toContain('29 February 2028');
    expect(field(body, 'on')['value']).toBe('2028-02-29');
    const path = (pageOf(name).split('?')[0] ?? '').replaceAll('&', '&amp;');
    // What was asked stays asked when the day is left.
    const back = (address: string): boolean => address.split('?')[0] === path || address.includes('/static/');
    // Forms that ask (GET) carry the day in a field of their own.
    const asks = tags(body, 'form').filter(({ method }) => method === 'get');
    const asked = asks.map(({ action }) => action);
    const onward = addresses(body).filter((address) => !back(address) && !asked.includes(address));
    expect(onward.length).toBeGreaterThan(5);
    expect(onward.filter((address) => !address.includes('on=2028-02-29'))).toEqual([]);
    const fields = tags(body, 'input').filter((one) => one['name'] === 'on' && one['value'] === '2028-02-29');
    expect(fields).toHaveLength(asks.length);
  });

  it('answers on= that is no day with a page that says what to write', async () => {
    for (const day of ['tomorrow', '2026-02-30', '2026-2-3']) {
      const answer = await full.site.get(onDay(pageOf(name), day));
      expect(answer.status).toBe(400);
      const body = await answer.text();
      expect(inside(body, 'h1')).toHaveLength(1);
      expect(text(body)).toContain(`“${day}” is no day. Write on= as year-month-day`);
    }
  });
});

describe('as on another day', () => {
  it('standings are those of that day, on every page that shows them', async () => {
    const fluid = 'Brake fluid, glycol (DOT 3, 4, 5.1)';
    const heading = async (day: string) => inside(await html(onDay(`/parts/${full.fluidId}`, day)), 'h1')[0];
    expect(await heading('2025-01-01')).toBe(`${fluid} in date`);
    expect(await heading('2026-07-01')).toBe(`${fluid} look`);
    expect(await heading('2026-12-01')).toBe(`${fluid} due`);
    expect(await heading('2026-12-02')).toBe(`${fluid} past`);
    for (const path of ['/', `/cars/${full.carId}`]) {
      const counts = async (day: string) => /<p class="counts">(.*?)<\/p>/.exec(await html(onDay(path, day)))?.[1];
      expect(await counts('2026-12-01')).toMatch(/^\d+ unproven, 1 due, 1 look$/);
      expect(await counts('2026-12-02')).toMatch(/^1 past, \d+ unproven, 1 look$/);
    }
    expect(inside(await html(onDay(`/cars/${full.carId}`, '2026-12-02')), 'h3')).toContain(`${fluid} past`);
    expect(text(await html(onDay('/date-codes?fl=2318', '2019-06-16')))).toContain('Age on 16 June 2019: 1 year');
  });

  it('a later code may be read that lies ahead today', async () => {
    expect(text(await html('/date-codes?fl=1027'))).toContain('That week has not begun');
    expect(text(await html(onDay('/date-codes?fl=1027', '2027-12-01')))).toContain('Week 10 of 2027');
  });

  it('today itself is no other day', async () => {
    expect(await html(onDay('/', '2026-11-25'))).not.toContain('elsewhen');
  });

  it('today is the day of the collection’s own zone', async () => {
    const { site } = await openFullSite({ now: '2026-11-24T23:59:59Z' });
    const day = async () => field(await (await site.get('/')).text(), 'on')['value'];
    expect(await day()).toBe('2026-11-24');
    await site.post('/collection', { name: 'East', timeZone: 'Asia/Tokyo' });
    expect(await day()).toBe('2026-11-25');
  });
});

describe('what is not there', () => {
  it.each([
    '/nothing',
    `/cars/${NO_ID}`,
    `/cars/${NO_ID}/change`,
    `/cars/${NO_ID}/dating`,
    `/cars/${NO_ID}/parts/new`,
    `/cars/${NO_ID}/readings`,
    `/places/${NO_ID}`,
    `/lay-ups/${NO_ID}`,
    '/desks/no-such-desk',
    `/parts/${NO_ID}`,
    `/parts/${NO_ID}/date`,
    `/parts/${NO_ID}/renew`,
    '/practice/no-such-kind',
    `/letters/${NO_ID}`,
    `/letters/${NO_ID}/html`,
    '/cars/x',
    '/parts/%00',
  ])('is a page that says so: GET %s', async (path) => {
    const answer = await full.site.get(path);
    expect(answer.status).toBe(404);
    expect(inside(await answer.text(), 'h1')[0]).toMatch(/^There is no such /);
  });

  it.each([
    `/cars/${NO_ID}`,
    `/cars/${NO_ID}/odometer`,
    `/cars/${NO_ID}/parts`,
    `/cars/${NO_ID}/readings`,
    `/cars/${NO_ID}/place`,
    `/places/${NO_ID}`,
    `/places/${NO_ID}/forget`,
    `/parts/${NO_ID}/details`,
    `/parts/${NO_ID}/readings/${NO_ID}/withdraw`,
    `/parts/${NO_ID}/date`,
    `/parts/${NO_ID}/renew`,
    `/parts/${NO_ID}/looked`,
    `/parts/${NO_ID}/retire`,
    `/parts/${NO_ID}/claims/${NO_ID}/withdraw`,
    '/practice/no-such-kind',
    `/members/${NO_ID}`,
  ])('can be changed by nobody: POST %s', async (path) => {
    expect((await full.site.post(path, {})).status).toBe(404);
  });

  it('includes what another collection has', async () => {
    const shed = openBarn(full.site.store, 'The shed');
    const carId = carIn(shed, { name: 'Their Six' });
    const partId = date(shed, carId, 'wiring', claim('fitted', '2015'));
    const claimId = partOf(shed, carId, 'wiring').claims[0]?.id;
    for (const path of [
      `/cars/${carId}`,
      `/cars/${carId}/change`,
      `/cars/${carId}/dating`,
      `/cars/${carId}/readings`,
      `/parts/${partId}`,
      `/parts/${partId}/date`,
    ])
      expect((await full.site.get(path)).status, path).toBe(404);
    for (const path of [
      `/cars/${carId}`,
      `/cars/${carId}/odometer`,
      `/cars/${carId}/parts`,
      `/cars/${carId}/readings`,
      `/cars/${carId}/place`,
      `/parts/${partId}/details`,
      `/parts/${partId}/looked`,
      `/parts/${partId}/retire`,
      `/parts/${partId}/claims/${claimId}/withdraw`,
      `/members/${shed.acting.personId}`,
    ])
      expect((await full.site.post(path, {})).status, path).toBe(404);
    const scoped = await full.site.post('/practice/wiring', { scope: carId, replaceBy: '12', note: 'x' });
    expect(scoped.status).toBe(404);
    expect(await html('/')).not.toContain('Their Six');
    expect(partOf(shed, carId, 'wiring').claims).toHaveLength(1);
  });
});
