import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../src/catalogue/cautions.ts';
import { MODEL_SOURCES } from '../../src/catalogue/model-sources.ts';
import { findPart } from '../../src/store/cars.ts';
import { barnOf, carIn, claim, date, openBarn, partOf, TODAY } from '../support/cars.ts';
import { choices, faultAt, field, filledIn, inside, tags, text } from '../support/html.ts';
import { openSite } from '../support/site.ts';

/** A car and the page of one of its parts, with the form for its readings. */
const siteWithPart = (kind: string, position: string | null = null) => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn);
  const part = () => partOf(barn, carId, kind, position);
  const { id } = part();
  const path = `/cars/${carId}/readings`;
  const page = async (query = '') => (await site.get(`/parts/${id}${query}`)).text();
  const send = async (typed: Record<string, string>) => {
    const named = Object.entries(typed).map(([name, value]) => [/\./.test(name) ? `${id}.${name}` : name, value]);
    return site.post(path, { ...filledIn(await page(), path), ...Object.fromEntries(named) });
  };
  const detail = async (answers: Record<string, string>) => {
    const to = `/parts/${id}/details`;
    return site.post(to, { ...filledIn(await page(), to), ...answers });
  };
  return { site, barn, carId, part, id, path, page, send, detail };
};

/** What drawings say to those who can’t see them. */
const charts = (html: string): string[] =>
  tags(html, 'svg')
    .filter((svg) => svg['class'] === 'chart')
    .map((svg) => svg['aria-label'] ?? '');

/** Each reading of the list on the page. */
const listed = (html: string): string[] =>
  inside(/<section aria-labelledby="readings">(.*?)<\/section>/s.exec(html)?.[1] ?? '', 'li').filter((line) =>
    /^\d{4}-\d\d-\d\d/.test(line),
  );

describe('a reading on the page of a part', () => {
  it('comes back to that page, where it is judged, listed and drawn', async () => {
    const { id, page, send, part } = siteWithPart('battery-flooded');
    const answer = await send({ 'rest-voltage.typed': '12.31', instrument: 'Meter <two>' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/parts/${id}#readings`]);
    expect(part().readings).toMatchObject([{ gauge: 'rest-voltage', value: 12.31, day: TODAY }]);
    const html = await page();
    expect(listed(html)).toHaveLength(1);
    expect(listed(html)[0]).toMatch(/12\.31.*act/);
    expect(charts(html).some((says) => says.includes('12.31 V on 2026-11-25'))).toBe(true);
    expect(html).not.toContain('<two>');
  });

  it('is judged by the value beside its bands: good, watch and act', async () => {
    for (const [typed, verdict] of [
      ['12.62', 'good'],
      ['12.5', 'watch'],
      ['12.39', 'act'],
    ] as const) {
      const { page, send } = siteWithPart('battery-flooded');
      await send({ 'rest-voltage.typed': typed });
      expect(listed(await page())[0], typed).toContain(verdict);
    }
  });

  it('without what it is judged by is not judged, and never good; answering that judges it', async () => {
    const { page, send, detail } = siteWithPart('tires-road', 'front left');
    await send({ 'cold-pressure.typed': '28', 'cold-pressure.unit': 'psi' });
    const before = listed(await page())[0];
    expect(before).toContain('not judged');
    expect(before).not.toMatch(/\bgood\b/);
    await detail({ 'answer.placard': '32', 'unit.placard': 'psi' });
    expect(listed(await page())[0]).toContain('watch');
  });

  it('of acid needs the temperature of the acid, in the unit chosen for it', async () => {
    const { page, send, part } = siteWithPart('battery-flooded');
    await send({ 'density.typed': '1.25' });
    expect(listed(await page())[0]).toContain('not judged');
    await send({ 'density.typed': '1.296', 'density.warmth': '40', 'density.warmthUnit': '°F' });
    expect(part().readings.at(-1)?.warmth).toBeCloseTo(4.444, 2);
    // 1.296 at 40 °F is 1.280 at 80 °F: Army table IV.
    expect(text(await page())).toContain('1.280');
    const refused = await send({ 'density.typed': '1.25', 'density.warmth': '150', 'density.warmthUnit': '°C' });
    expect(refused.status).toBe(422);
    const html = await refused.text();
    expect(field(html, `${part().id}.density.warmth`)['value']).toBe('150');
    expect(faultAt(html, `${part().id}.density.warmth`)).toBeTruthy();
    expect(part().readings).toHaveLength(2);
  });

  it('refused keeps what was typed on the page of the part; seldom seen it is asked back there', async () => {
    const { site, id, path, send, part } = siteWithPart('brake-fluid-glycol');
    const given = { 'boiling-point.typed': '900', 'boiling-point.unit': '°F', 'water.typed': '2', note: 'Left & rear' };
    const refused = await send(given);
    expect(refused.status).toBe(422);
    const html = await refused.text();
    expect(inside(html, 'h1')[0]).toMatch(/^Brake fluid/);
    expect(filledIn(html, path)).toMatchObject({
      [`${id}.boiling-point.typed`]: '900',
      [`${id}.boiling-point.unit`]: '°F',
      [`${id}.water.typed`]: '2',
      note: 'Left & rear',
    });
    // 350 °C in the unit it was typed in.
    expect(faultAt(html, `${id}.boiling-point.typed`)).toContain('662 °F');
    const asked = await (await send({ 'boiling-point.typed': '610', 'boiling-point.unit': '°F' })).text();
    const [choice = ''] = choices(asked, `${id}.boiling-point.typed`);
    expect(part().readings).toEqual([]);
    const sure = { ...filledIn(asked, path), [`${id}.boiling-point.typedChoice`]: choice };
    expect((await site.post(path, sure)).status).toBe(303);
    expect(part().readings[0]?.value).toBeCloseTo(321.1, 1);
  });

  it('offers the unit it was last typed in', async () => {
    const { id, path, page, send } = siteWithPart('brake-fluid-glycol');
    expect(filledIn(await page(), path)).toMatchObject({ [`${id}.boiling-point.unit`]: '°C' });
    await send({ 'boiling-point.typed': '380', 'boiling-point.unit': '°F' });
    expect(filledIn(await page(), path)).toMatchObject({ [`${id}.boiling-point.unit`]: '°F' });
  });

  it('taken back no longer counts, is kept, and the one before it counts again', async () => {
    const { site, id, page, send, part } = siteWithPart('battery-flooded');
    await send({ 'rest-voltage.typed': '12.66', day: '2026-11-01' });
    await send({ 'rest-voltage.typed': '11.2' });
    const back = `/parts/${id}/readings/${part().readings.at(-1)?.id}/withdraw`;
    expect(tags(await page(), 'form').map(({ action }) => action)).toContain(back);
    const answer = await site.post(back, {});
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/parts/${id}#readings`]);
    expect(part().readings).toMatchObject([{ value: 12.66 }]);
    const html = await page();
    expect(listed(html)).toHaveLength(1);
    expect(text(html)).not.toContain('11.20 V');
    const rows = site.store.$client.prepare('select value, withdrawn_on from readings order by value').all();
    expect(rows).toEqual([
      { value: 11.2, withdrawn_on: TODAY },
      { value: 12.66, withdrawn_on: null },
    ]);
  });

  it('of a later day does not count on an earlier one', async () => {
    const { page, send } = siteWithPart('battery-flooded');
    await send({ 'rest-voltage.typed': '12.66', day: '2026-11-01' });
    await send({ 'rest-voltage.typed': '12.1' });
    expect(listed(await page())).toHaveLength(2);
    expect(listed(await page('?on=2026-11-10'))).toHaveLength(1);
    expect(text(await page('?on=2026-11-10'))).not.toContain('12.10 V');
  });

  it('of a part another collection has, or nobody, can’t be taken back', async () => {
    const { site } = siteWithPart('battery-flooded');
    const shed = openBarn(site.store, 'The shed');
    const theirs = carIn(shed);
    const battery = partOf(shed, theirs, 'battery-flooded').id;
    site.store.$client
      .prepare(
        `insert into readings (collection_id, id, part_id, gauge, day, value, typed, unit, warmth, instrument, note, recorded_on, recorded_by)
         values (?, 'theirs', ?, 'rest-voltage', ?, 12.5, '12.5', 'V', null, '', '', ?, ?)`,
      )
      .run(shed.acting.collectionId, battery, TODAY, TODAY, shed.acting.personId);
    for (const part of [battery, '01900000-0000-7000-8000-000000000000'])
      expect((await site.post(`/parts/${part}/readings/theirs/withdraw`, {})).status, part).toBe(404);
    expect(partOf(shed, theirs, 'battery-flooded').readings).toHaveLength(1);
  });

  it('of a closed part stays to be seen, with no field for another and no way to take it back', async () => {
    const { site, id, carId, path, page, send, barn } = siteWithPart('battery-flooded');
    await send({ 'rest-voltage.typed': '12.31' });
    const form = filledIn(await page(), path);
    await site.post(`/parts/${id}/retire`, { why: 'Sold' });
    const html = await page();
    expect(listed(html)).toHaveLength(1);
    expect(tags(html, 'form').map(({ action }) => action ?? '')).not.toContain(path);
    expect(html).not.toContain('/withdraw');
    expect((await site.post(path, { ...form, [`${id}.rest-voltage.typed`]: '12.6' })).status).toBe(422);
    expect(findPart(site.store, barn.acting.collectionId, id)?.readings).toHaveLength(1);
    expect((await site.get(`/cars/${carId}`)).status).toBe(200);
    const { readings = [], claims = [] } = findPart(site.store, barn.acting.collectionId, id) ?? {};
    const back = await site.post(`/parts/${id}/readings/${readings[0]?.id}/withdraw`, {});
    expect([back.status, text(await back.text())]).toEqual([422, expect.stringContaining('its record stays')]);
    expect(findPart(site.store, barn.acting.collectionId, id)).toMatchObject({ readings, claims });
  });

  it('says what was drawn as dots, and joins them once there are two', async () => {
    const { page, send } = siteWithPart('battery-flooded');
    await send({ 'rest-voltage.typed': '12.6', day: '2026-11-01' });
    expect(inside(await page(), 'figcaption')).toEqual(['Dots: what was read.']);
    await send({ 'rest-voltage.typed': '12.5' });
    expect(inside(await page(), 'figcaption')).toEqual(['Line: from one to the next; dots: what was read.']);
  });

  it('that is refused claims nothing of what was typed in the page’s other forms', async () => {
    const { send } = siteWithPart('battery-flooded');
    const said = text(await (await send({ 'rest-voltage.typed': 'much' })).text());
    expect(said).toContain('Nothing was saved yet. What you typed in that form stands in it;');
    expect(said).not.toContain('nothing you typed is lost');
  });
});

describe('the condition on the page of a part', () => {
  it('tells the estimate, the days it names, where it ends and where its figures come from', async () => {
    const { barn, carId, page } = siteWithPart('brake-fluid-glycol');
    date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
    const section = /<section aria-labelledby="condition">(.*?)<\/section>/s.exec(await page())?.[1] ?? '';
    // 1 to 2 percent a year over not quite two years.
    expect(text(section)).toContain('1.5 to 4 % water');
    expect(inside(section, 'dd').length).toBeGreaterThan(0);
    expect(text(section)).toContain('No estimate can clear brake fluid');
    expect(text(section)).toContain(MODEL_SOURCES['sae-j1707'].title);
    expect(tags(section, 'a').map(({ href }) => href?.split('?')[0])).toContain('/desks/brake-fluid');
  });

  it.each([
    ['battery-flooded', 'rest-voltage.typed', '12.5'],
    ['brake-fluid-glycol', 'water.typed', '1.5'],
    ['coolant-iat', 'freeze-point.typed', '-30'],
    ['tires-road', 'cold-pressure.typed', '2.1'],
  ])('of %s says where it ends and shows the cautions of the work', async (kind, gauge, typed) => {
    const { barn, carId, page, send, part } = siteWithPart(kind, kind === 'tires-road' ? 'front left' : null);
    const clock = kind === 'tires-road' || kind === 'battery-flooded' ? 'made' : 'filled';
    date(barn, carId, kind, claim(clock, '1 June 2025'), part().position);
    expect((await send({ [gauge]: typed })).status).toBe(303);
    const html = await page();
    const section = /<section aria-labelledby="condition">(.*?)<\/section>/s.exec(html)?.[1] ?? '';
    expect(/<p class="note">(.*?)<\/p>/s.exec(section)?.[1] ?? '').not.toBe('');
    expect(section).toContain('class="sources"');
    const cautions = Object.values(CAUTIONS).filter((caution) => text(html).includes(caution));
    expect(cautions.length).toBeGreaterThan(0);
  });

  it('leads a battery to the desk with its own numbers, and the desk answers them', async () => {
    const { site, page, send, detail } = siteWithPart('battery-flooded');
    await detail({ 'answer.capacity': '44', 'answer.chemistry': 'calcium' });
    await send({ 'rest-voltage.typed': '12.45' });
    const desk = tags(await page(), 'a').find(({ href }) => href?.startsWith('/desks/battery'))?.['href'] ?? '';
    const answer = await site.get(desk);
    expect(answer.status).toBe(200);
    const html = await answer.text();
    expect(field(html, 'capacity')['value']).toBe('44');
    expect(html).toContain('id="answers"');
  });
});
