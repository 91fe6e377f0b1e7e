import { describe, expect, it } from 'vitest';
import { setDetails } from '../../src/store/readings.ts';
import { barnOf, carIn, openBarn, partOf } from '../support/cars.ts';
import { faultAt, field, filledIn, inside, tags } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const siteWithDetails = (kind: string, position: string | null = null) => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn);
  const part = () => partOf(barn, carId, kind, position);
  const { id } = part();
  const path = `/parts/${id}/details`;
  const page = async () => (await site.get(`/parts/${id}`)).text();
  const save = async (answers: Record<string, string>) =>
    site.post(path, { ...filledIn(await page(), path), ...answers });
  return { site, barn, carId, part, id, path, page, save, details: () => part().details };
};

describe('details of a part', () => {
  it('are stored in the unit they are asked in, and shown again', async () => {
    const { id, path, page, save, details } = siteWithDetails('brake-fluid-glycol');
    const answer = await save({
      'answer.grade': 'dot-4',
      'answer.hoses': 'ptfe',
      'answer.limit': '356',
      'unit.limit': '°F',
    });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/parts/${id}#details`]);
    expect(details()).toEqual({ grade: 'dot-4', hoses: 'ptfe', limit: 180 });
    expect(filledIn(await page(), path)).toMatchObject({
      'answer.grade': 'dot-4',
      'answer.hoses': 'ptfe',
      'answer.limit': '180',
      'unit.limit': '°C',
    });
  });

  it('saved as they stand stay as they are, and an emptied one is none', async () => {
    const { save, details } = siteWithDetails('battery-flooded');
    await save({ 'answer.capacity': '60', 'answer.volts': '12', 'answer.chemistry': 'antimony' });
    await save({});
    expect(details()).toEqual({ capacity: 60, volts: '12', chemistry: 'antimony' });
    await save({ 'answer.capacity': '', 'answer.volts': '' });
    expect(details()).toEqual({ chemistry: 'antimony' });
  });

  it('out of range are refused with the range beside the field, in the unit typed; nothing typed is lost', async () => {
    const { path, save, details } = siteWithDetails('brake-fluid-glycol');
    const given = { 'answer.grade': 'dot-5-1', 'answer.limit': '100', 'unit.limit': '°F' };
    const answer = await save(given);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(inside(html, 'h1')[0]).toMatch(/^Brake fluid/);
    // 140 and 300 °C.
    expect(faultAt(html, 'answer.limit')).toMatch(/284 °F.*572 °F|284 to 572 °F/);
    expect(filledIn(html, path)).toMatchObject(given);
    expect(details()).toEqual({});
  });

  it.each(['much', '4,4,4', '60 V', '-', '4', '251'])('do not take “%s” for a capacity', async (typed) => {
    const { save, details } = siteWithDetails('battery-flooded');
    const answer = await save({ 'answer.capacity': typed, 'answer.volts': '12' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(field(html, 'answer.capacity')).toMatchObject({ value: typed, 'aria-invalid': 'true' });
    expect(faultAt(html, 'answer.capacity')).toBeTruthy();
    expect(details()).toEqual({});
  });

  it('take decimals with a point or a comma', async () => {
    const { save, details } = siteWithDetails('coolant-iat');
    await save({ 'answer.volume': '7,5' });
    expect(details()).toEqual({ volume: 7.5 });
    await save({ 'answer.volume': '2', 'unit.volume': 'US gal' });
    expect(details()['volume']).toBeCloseTo(7.5708, 4);
  });

  it('nobody asks for, or that are no choice, are refused', async () => {
    const { site, path, save, details } = siteWithDetails('battery-flooded');
    expect((await save({ 'answer.color': 'green' })).status).toBe(422);
    expect((await save({ 'answer.chemistry': 'plutonium' })).status).toBe(422);
    expect((await site.post(path, { 'answer.toString': 'x', 'answer.chemistry': 'constructor' })).status).toBe(422);
    expect(details()).toEqual({});
  });

  it('of a kind that asks none have no form', async () => {
    const { site, barn, carId } = siteWithDetails('battery-flooded');
    const filter = partOf(barn, carId, 'oil-filter').id;
    const html = await (await site.get(`/parts/${filter}`)).text();
    expect(tags(html, 'form').map(({ action }) => action)).not.toContain(`/parts/${filter}/details`);
  });

  it('narrow the estimate: the drain and the capacity told are reckoned with', async () => {
    const { site, carId, id, page, save } = siteWithDetails('battery-flooded');
    await site.post(`/cars/${carId}/readings`, { [`${id}.rest-voltage.typed`]: '12.65', day: '2026-10-25' });
    const charge = async (): Promise<number[]> => {
      const line = /<p class="outlook">(.*?)<\/p>/s.exec(await page())?.[1] ?? '';
      return /(\d+) to (\d+) % charged/.exec(line)?.slice(1).map(Number) ?? [];
    };
    const [low = 0, high = 0] = await charge();
    await save({ 'answer.connection': 'disconnected', 'answer.capacity': '60', 'answer.chemistry': 'calcium' });
    const [narrowLow = 0, narrowHigh = 0] = await charge();
    expect(high - low).toBeGreaterThan(30);
    expect(narrowHigh - narrowLow).toBeLessThan(20);
    expect(narrowLow).toBeGreaterThan(low);
  });

  it('of another collection’s part can’t be seen or set', async () => {
    const { site } = siteWithDetails('battery-flooded');
    const shed = openBarn(site.store, 'The shed');
    const theirs = carIn(shed);
    const { id } = partOf(shed, theirs, 'battery-flooded');
    setDetails(site.store, shed.acting.collectionId, id, { capacity: 70 });
    expect((await site.get(`/parts/${id}`)).status).toBe(404);
    expect((await site.post(`/parts/${id}/details`, { 'answer.capacity': '40' })).status).toBe(404);
    expect(partOf(shed, theirs, 'battery-flooded').details).toEqual({ capacity: 70 });
  });

  it('of a closed part can’t be set any more', async () => {
    const { site, id, path, save, page } = siteWithDetails('battery-flooded');
    await save({ 'answer.capacity': '60' });
    await site.post(`/parts/${id}/retire`, { why: 'Sold' });
    expect((await site.post(path, { 'answer.capacity': '40' })).status).toBe(422);
    expect(tags(await page(), 'form').map(({ action }) => action)).not.toContain(path);
  });
});
