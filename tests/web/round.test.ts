import { describe, expect, it } from 'vitest';
import { recordReadingsAct } from '../../src/acts/record-reading.ts';
import { retirePart } from '../../src/store/cars.ts';
import { barnOf, carIn, carOf, claim, date, must, openBarn, partOf, TODAY } from '../support/cars.ts';
import { choices, faultAt, field, filledIn, inside, tags, text } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const CORNERS = ['front left', 'front right', 'rear left', 'rear right'];

/** A car, its form of the round as a browser would fill it in, and what its parts have been read at. */
const siteWithRound = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn);
  const path = `/cars/${carId}/readings`;
  const part = (kind: string, position: string | null = null) => partOf(barn, carId, kind, position);
  const battery = part('battery-flooded').id;
  const tire = (corner: string) => part('tires-road', corner).id;
  const volts = `${battery}.rest-voltage.`;
  const page = async (query = '') => (await site.get(`${path}${query}`)).text();
  /** Fills some fields of the form as the page shows it, and sends all of it. */
  const send = async (typed: Record<string, string>, query = '') =>
    site.post(`${path}${query}`, { ...filledIn(await page(query), `${path}${query}`), ...typed });
  const read = () => carOf(barn, carId).parts.flatMap(({ readings }) => readings);
  return { site, barn, carId, path, part, battery, tire, volts, page, send, read };
};

describe('the round of a car', () => {
  it('asks every gauge of the car once, with a field for a number and units to choose from', async () => {
    const { path, page, volts, tire, battery } = siteWithRound();
    const html = await page();
    for (const corner of CORNERS) {
      const at = `${tire(corner)}.cold-pressure.`;
      expect(field(html, `${at}typed`)).toMatchObject({ inputmode: 'decimal', value: '' });
      expect(filledIn(html, path)).toHaveProperty([`${at}unit`], 'bar');
    }
    expect(field(html, `${volts}typed`)['inputmode']).toBe('decimal');
    expect(field(html, `${battery}.density.typed`)['value']).toBe('');
    const names = tags(html, 'input').flatMap(({ name = '', type }) => (type === 'radio' ? [] : [name]));
    expect(names).toEqual([...new Set(names)]);
  });

  it('keeps five readings with one button, each in its own unit, all of the day, and leaves empty fields out', async () => {
    const { carId, battery, tire, volts, send, read } = siteWithRound();
    const pressures = Object.fromEntries(
      CORNERS.flatMap((corner, index) => [
        [`${tire(corner)}.cold-pressure.typed`, String(30 + index)],
        [`${tire(corner)}.cold-pressure.unit`, 'psi'],
      ]),
    );
    const answer = await send({
      [`${volts}typed`]: '12,45',
      ...pressures,
      warmth: '50',
      warmthUnit: '°F',
      instrument: 'Pocket <meter>',
    });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/cars/${carId}#read-today`]);
    const stored = read();
    expect(stored).toHaveLength(5);
    expect(new Set(stored.map(({ day }) => day))).toEqual(new Set([TODAY]));
    expect(stored.find(({ partId }) => partId === battery)).toMatchObject({
      gauge: 'rest-voltage',
      typed: '12,45',
      unit: 'V',
      value: 12.45,
      warmth: null,
      instrument: 'Pocket <meter>',
    });
    for (const [index, corner] of CORNERS.entries()) {
      const one = stored.find(({ partId }) => partId === tire(corner));
      expect(one).toMatchObject({ gauge: 'cold-pressure', typed: String(30 + index), unit: 'psi' });
      expect(one?.value).toBeCloseTo((30 + index) * 0.0689476, 4);
      // Asked once for all four tires.
      expect(one?.warmth).toBeCloseTo(10, 9);
    }
  });

  it('takes a unit written with the number before the one chosen beside it', async () => {
    const { tire, send, read } = siteWithRound();
    const at = `${tire('rear left')}.cold-pressure.`;
    await send({ [`${at}typed`]: '32 psi', [`${at}unit`]: 'bar' });
    expect(read()).toMatchObject([{ typed: '32 psi', unit: 'psi' }]);
    expect(read()[0]?.value).toBeCloseTo(2.2063, 4);
  });

  it('sent empty stores nothing and says so', async () => {
    const { send, read } = siteWithRound();
    const answer = await send({});
    expect(answer.status).toBe(422);
    expect(inside(await answer.text(), 'h1')).toHaveLength(1);
    expect(read()).toEqual([]);
  });

  it('with one number that can’t be keeps all that was typed, marks that field alone and stores none', async () => {
    const { site, path, battery, tire, volts, send, read } = siteWithRound();
    const pressure = `${tire('front left')}.cold-pressure.`;
    const typed = {
      [`${volts}typed`]: '124',
      [`${pressure}typed`]: '33',
      [`${pressure}unit`]: 'psi',
      [`${battery}.density.typed`]: '1.26',
      [`${battery}.density.warmth`]: '68',
      [`${battery}.density.warmthUnit`]: '°F',
      warmth: '12',
      day: '2026-11-20',
      instrument: 'Shop meter',
      note: 'After a <week>',
    };
    const answer = await send(typed);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(filledIn(html, path)).toMatchObject(typed);
    // The range in the unit of the field.
    expect(faultAt(html, `${volts}typed`)).toMatch(/\b0\b.*\b16 V/);
    expect(choices(html, `${volts}typed`)).toEqual([]);
    expect(faultAt(html, `${pressure}typed`)).toBeUndefined();
    expect(read()).toEqual([]);
    const mended = { ...filledIn(html, path), [`${volts}typed`]: '12.4' };
    expect((await site.post(path, mended)).status).toBe(303);
    expect(read().map(({ gauge, day }) => [gauge, day])).toEqual(
      expect.arrayContaining([
        ['rest-voltage', '2026-11-20'],
        ['cold-pressure', '2026-11-20'],
        ['density', '2026-11-20'],
      ]),
    );
  });

  it.each(['volts', '12.4.5', '--', '12 psi'])('does not take “%s” for volts', async (typed) => {
    const { volts, send, read } = siteWithRound();
    const answer = await send({ [`${volts}typed`]: typed });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, `${volts}typed`)).toBeTruthy();
    expect(field(html, `${volts}typed`)['value']).toBe(typed);
    expect(read()).toEqual([]);
  });

  it('asks back what is seldom seen, and takes it once that is confirmed', async () => {
    const { site, path, tire, volts, send, read } = siteWithRound();
    const pressure = `${tire('front right')}.cold-pressure.`;
    const asked = await send({ [`${volts}typed`]: '9.8', [`${pressure}typed`]: '2.2' });
    expect(asked.status).toBe(422);
    const html = await asked.text();
    const [choice = ''] = choices(html, `${volts}typed`);
    expect(choices(html, `${volts}typed`)).toHaveLength(1);
    expect(faultAt(html, `${pressure}typed`)).toBeUndefined();
    expect(read()).toEqual([]);
    // Not chosen, it is asked again.
    expect((await site.post(path, filledIn(html, path))).status).toBe(422);
    expect(read()).toEqual([]);
    const sure = { ...filledIn(html, path), [`${volts}typedChoice`]: choice };
    expect((await site.post(path, sure)).status).toBe(303);
    expect(
      read()
        .map(({ value }) => value)
        .toSorted(),
    ).toEqual([2.2, 9.8]);
  });

  it('confirmed for one number is asked anew of another, and not asked twice while the rest is mended', async () => {
    const { site, path, volts, battery, send, read } = siteWithRound();
    const html = await (await send({ [`${volts}typed`]: '9.8', [`${battery}.charging.typed`]: 'dim' })).text();
    const [choice = ''] = choices(html, `${volts}typed`);
    const sure = { ...filledIn(html, path), [`${volts}typedChoice`]: choice };
    const other = await site.post(path, { ...sure, [`${volts}typed`]: '9.1', [`${battery}.charging.typed`]: '' });
    expect(other.status).toBe(422);
    expect(choices(await other.text(), `${volts}typed`)).toHaveLength(1);
    const again = await (await site.post(path, sure)).text();
    expect(faultAt(again, `${volts}typed`)).toBeUndefined();
    const mended = { ...filledIn(again, path), [`${battery}.charging.typed`]: '14.1' };
    expect((await site.post(path, mended)).status).toBe(303);
    expect(
      read()
        .map(({ value }) => value)
        .toSorted(),
    ).toEqual([14.1, 9.8].toSorted());
  });

  it('offers the unit of the last reading the next time', async () => {
    const { tire, path, page, send } = siteWithRound();
    const [left, right] = [`${tire('front left')}.cold-pressure.unit`, `${tire('front right')}.cold-pressure.unit`];
    await send({ [`${tire('front left')}.cold-pressure.typed`]: '230', [left]: 'kPa' });
    expect(filledIn(await page(), path)).toMatchObject({ [left]: 'kPa', [right]: 'bar' });
  });

  it('marks the temperature it asks once for all tires, and the acid’s only where that one is wrong', async () => {
    const { tire, battery, send, read } = siteWithRound();
    const pressures = Object.fromEntries(CORNERS.map((corner) => [`${tire(corner)}.cold-pressure.typed`, '2.2']));
    const air = await (await send({ ...pressures, warmth: 'mild' })).text();
    expect(field(air, 'warmth')).toMatchObject({ value: 'mild', 'aria-invalid': 'true' });
    expect(faultAt(air, 'warmth')).toBeTruthy();
    const density = { [`${battery}.density.typed`]: '1.26', [`${battery}.density.warmth`]: 'mild' };
    const acid = await (await send({ ...pressures, ...density, warmth: '12' })).text();
    expect(faultAt(acid, `${battery}.density.warmth`)).toBeTruthy();
    expect(field(acid, 'warmth')).not.toHaveProperty('aria-invalid');
    expect(read()).toEqual([]);
  });

  it('leads from what was wrong to the field it stands beside', async () => {
    const { tire, battery, volts, send } = siteWithRound();
    const pressures = Object.fromEntries(CORNERS.map((corner) => [`${tire(corner)}.cold-pressure.typed`, '2.2']));
    for (const wrong of [{ warmth: 'mild' }, { day: '2027-01-01' }, { [`${volts}typed`]: 'x' }]) {
      const html = await (
        await send({ ...pressures, [`${volts}typed`]: '12.5', [`${battery}.charging.typed`]: '14', ...wrong })
      ).text();
      const ways = tags(html, 'a').flatMap(({ href = '' }) => (href.endsWith('-fault') ? [href.slice(1)] : []));
      const places = [...html.matchAll(/\sid="([^"]+-fault)"/g)].map(([, id]) => id);
      expect(ways.length, Object.keys(wrong)[0]).toBeGreaterThan(0);
      expect(places, Object.keys(wrong)[0]).toEqual([...new Set(places)]);
      expect(ways.filter((way) => !places.includes(way))).toEqual([]);
    }
  });

  it('refuses a day that lies ahead, is none, or is before the part was there', async () => {
    const { barn, carId, battery, volts, send, read } = siteWithRound();
    date(barn, carId, 'battery-flooded', claim('made', '1 March 2026'));
    for (const day of ['2026-11-26', '2026-02-28', '2026-02-30']) {
      const answer = await send({ [`${volts}typed`]: '12.5', day });
      expect(answer.status, day).toBe(422);
      expect(filledIn(await answer.text(), `/cars/${carId}/readings`)).toMatchObject({
        day,
        [`${volts}typed`]: '12.5',
      });
    }
    expect(read()).toEqual([]);
    expect((await send({ [`${volts}typed`]: '12.5', day: '2026-03-01' })).status).toBe(303);
    expect(read()).toMatchObject([{ partId: battery, day: '2026-03-01', recordedOn: TODAY }]);
  });

  it('as on another day is of that day, and onward keeps it', async () => {
    const { carId, volts, send, read } = siteWithRound();
    const answer = await send({ [`${volts}typed`]: '12.5' }, '?on=2027-04-01');
    expect(answer.headers.get('location')).toBe(`/cars/${carId}?on=2027-04-01#read-today`);
    expect(read()).toMatchObject([{ day: '2027-04-01', recordedOn: '2027-04-01' }]);
  });

  it('does not ask of a part that was taken off the list, nor takes a reading of it', async () => {
    const { site, barn, battery, path, volts, page, read } = siteWithRound();
    const before = filledIn(await page(), path);
    retirePart(site.store, barn.acting.collectionId, battery, TODAY, 'Gone');
    expect(tags(await page(), 'input').map(({ name }) => name)).not.toContain(`${volts}typed`);
    const answer = await site.post(path, { ...before, [`${volts}typed`]: '12.5' });
    expect(answer.status).toBe(422);
    expect(read()).toEqual([]);
  });

  it('of another collection is not there, and no reading gets into its parts', async () => {
    const { site, path, page, read } = siteWithRound();
    const shed = openBarn(site.store, 'The shed');
    const theirs = carIn(shed);
    const battery = partOf(shed, theirs, 'battery-flooded').id;
    const form = { [`${battery}.rest-voltage.typed`]: '12.5' };
    expect((await site.get(`/cars/${theirs}/readings`)).status).toBe(404);
    expect((await site.post(`/cars/${theirs}/readings`, form)).status).toBe(404);
    // Through our own car’s form neither.
    expect((await site.post(path, { ...filledIn(await page(), path), ...form })).status).toBe(422);
    expect(partOf(shed, theirs, 'battery-flooded').readings).toEqual([]);
    expect(read()).toEqual([]);
  });

  it('shows on the car’s sheet what was read, escaped', async () => {
    const { site, carId, volts, battery, send } = siteWithRound();
    await send({ [`${volts}typed`]: '12.31', note: 'Cold & <damp>' });
    expect(text(await (await site.get(`/cars/${carId}`)).text())).toContain('12.31 V');
    const part = await (await site.get(`/parts/${battery}`)).text();
    expect(part).not.toContain('<damp>');
    expect(text(part)).toContain('Cold & <damp>');
  });
});

describe('readings recorded by the same door', () => {
  it('are stored all or none', () => {
    const barn = openBarn();
    const carId = carIn(barn);
    const car = carOf(barn, carId);
    const given = (typed: string) => ({
      partId: partOf(barn, carId, 'battery-flooded').id,
      gauge: 'rest-voltage',
      typed,
      unit: 'V',
      day: TODAY,
      warmth: '',
      warmthUnit: '°C',
      instrument: '',
      note: '',
      sure: false,
    });
    const refused = recordReadingsAct(barn.store, barn.acting, car, [given('12.5'), given('99')], () => '');
    expect(refused.ok).toBe(false);
    expect(partOf(barn, carId, 'battery-flooded').readings).toEqual([]);
    expect(must(recordReadingsAct(barn.store, barn.acting, car, [given('12.5'), given('12.6')], () => ''))).toBe(2);
    expect(partOf(barn, carId, 'battery-flooded').readings).toHaveLength(2);
  });
});
