import { describe, expect, it } from 'vitest';
import { apiCar, document, type PartDocument, pointers, problemOf } from '../support/api.ts';
import { carIn, openBarn, partOf } from '../support/cars.ts';
import { openSite } from '../support/site.ts';

const NO_ID = '01900000-0000-7000-8000-000000000000';

const open = async (kind = 'battery-flooded', position: string | null = null) => {
  const site = openSite();
  const { car, part } = await apiCar(site);
  const { id } = await part(kind, position);
  const read = (given: unknown, query = '') => site.send('POST', `/api/v1/parts/${id}/readings${query}`, given);
  const change = (given: unknown) => site.send('PATCH', `/api/v1/parts/${id}`, given);
  const now = async () => document<PartDocument>(await site.get(`/api/v1/parts/${id}`));
  return { site, car, part, id, read, change, now };
};

interface Finding {
  partId: string;
  standing: string;
  by: string;
  readings: string[];
  surer: string | null;
  outlook: {
    now: string;
    measured: boolean;
    days: { what: string; earliest: string | null; latest: string | null }[];
    says: string[];
    ends: string;
    sources: { title: string; grade: string }[];
  } | null;
}

describe('POST /parts/{id}/readings', () => {
  it('records what a gauge showed and answers the part with it, judged', async () => {
    const { read, now } = await open();
    const given = { gauge: 'rest-voltage', value: 12.45, instrument: 'pocket multimeter', note: 'After a night' };
    const part = await document<PartDocument>(await read(given), 201);
    expect(part.readings).toEqual([
      {
        id: expect.any(String) as string,
        gauge: 'rest-voltage',
        day: '2026-11-25',
        value: 12.45,
        unit: 'V',
        typed: '12.45',
        typedUnit: 'V',
        warmth: null,
        instrument: 'pocket multimeter',
        note: 'After a night',
        recordedOn: '2026-11-25',
        verdict: 'watch',
        wants: null,
      },
    ]);
    expect(await now()).toEqual(part);
  });

  it.each<[Record<string, unknown>, string, number?]>([
    [{ value: 32, unit: 'psi' }, '32 psi'],
    [{ value: '32', unit: 'psi' }, '32 psi'],
    [{ value: '32 psi' }, '32 psi'],
    // What is written behind the number is what was read.
    [{ value: '32 psi', unit: 'bar' }, '32 psi'],
    // In the gauge’s own unit with its decimals, and no more.
    [{ value: ' 2,2063 ' }, '2,2063', 2.21],
  ])('takes %j in the unit it bears', async (given, typed, kept = 2.2063) => {
    const { read } = await open('tires-road', 'front left');
    const part = await document<PartDocument>(await read({ gauge: 'cold-pressure', ...given }), 201);
    expect(part.readings[0]).toMatchObject({ typed, unit: 'bar' });
    expect(part.readings[0]?.typedUnit).toBe(typed.includes('psi') ? 'psi' : 'bar');
    expect(part.readings[0]?.value).toBeCloseTo(kept, 4);
  });

  it('says what is missing to judge it, until that is told', async () => {
    const { read, change } = await open('tires-road', 'front left');
    const given = { gauge: 'cold-pressure', value: 1.2, warmth: 68, warmthUnit: '°F' };
    const unjudged = await document<PartDocument>(await read(given), 201);
    expect(unjudged.readings).toMatchObject([
      { verdict: null, wants: 'tell its “Placard pressure, cold” on its own page', warmth: 20 },
    ]);
    const told = await document<PartDocument>(await change({ details: { placard: '32 psi' } }));
    expect(told.readings).toMatchObject([{ verdict: 'act', wants: null }]);
  });

  it('is judged by the coldest night of the place its car stands in', async () => {
    const { site, car, read, now } = await open('coolant-iat');
    const part = await document<PartDocument>(await read({ gauge: 'freeze-point', value: -24 }), 201);
    expect(part.readings).toMatchObject([{ verdict: null, wants: 'say where the car stands, for its coldest night' }]);
    const place = { name: 'Yard', winterLow: -22, summerHigh: 30, air: 'inland', shelter: 'open' };
    const { id } = await document<{ id: string }>(await site.send('POST', '/api/v1/places', place), 201);
    await document(await site.send('PUT', `/api/v1/cars/${car.id}/place`, { place: id }));
    expect((await now()).readings).toMatchObject([{ verdict: 'watch', wants: null }]);
    const { parts } = await document<{ parts: PartDocument[] }>(await site.get(`/api/v1/cars/${car.id}/parts`));
    expect(parts.find(({ readings }) => readings.length > 0)?.readings).toMatchObject([{ verdict: 'watch' }]);
  });

  it('asks back what is seldom seen, and takes it from whoever is sure', async () => {
    const { read, now } = await open();
    const given = { gauge: 'rest-voltage', value: 9 };
    const problem = await problemOf(await read(given), 422);
    expect(problem.errors).toMatchObject([{ pointer: '#/value', choices: [{ value: 'sure', label: 'Yes, 9 V' }] }]);
    expect((await now()).readings).toEqual([]);
    const part = await document<PartDocument>(await read({ ...given, sure: true }), 201);
    expect(part.readings).toMatchObject([{ value: 9, verdict: 'act' }]);
  });

  it.each<[Record<string, unknown>, string[]]>([
    [{}, ['#/gauge', '#/value']],
    [{ gauge: 'tea-leaves', value: 1 }, ['#/gauge']],
    [{ gauge: 'rest-voltage', value: 'much' }, ['#/value']],
    [{ gauge: 'rest-voltage', value: '' }, ['#/value']],
    [{ gauge: 'rest-voltage', value: null }, ['#/value']],
    [{ gauge: 'rest-voltage', value: 200, sure: true }, ['#/value']],
    // A unit of something else is never passed over.
    [{ gauge: 'rest-voltage', value: 12.4, unit: 'psi' }, ['#/value']],
    [{ gauge: 'rest-voltage', value: 12.4, unit: 'furlong' }, ['#/unit']],
    [{ gauge: 'rest-voltage', value: 12.4, day: '2026-11-26' }, ['#/day']],
    [{ gauge: 'rest-voltage', value: 12.4, day: 'today' }, ['#/day']],
    [{ gauge: 'density', value: 1.25, warmth: 'mild' }, ['#/warmth']],
    [{ gauge: 'density', value: 9, warmth: 400, day: '2027-01-01' }, ['#/value', '#/warmth', '#/day']],
    [{ gauge: 'rest-voltage', value: 12.4, sure: 'yes' }, ['#/sure']],
    [{ gauge: 'rest-voltage', value: 12.4, note: 'x'.repeat(4001) }, ['#/note']],
  ])('points at what is wrong with %j, and records nothing', async (given, where) => {
    const { read, now } = await open();
    expect(pointers(await problemOf(await read(given), 422))).toEqual(where);
    expect((await now()).readings).toEqual([]);
  });

  it('records it on the day asked for, of that day or of one before', async () => {
    const { read } = await open();
    await document(await read({ gauge: 'rest-voltage', value: 12.7 }, '?on=2026-12-24'), 201);
    const earlier = { gauge: 'rest-voltage', value: 12.6, day: '2026-10-01' };
    const part = await document<PartDocument>(await read(earlier, '?on=2026-12-24'), 201);
    expect(part.readings.map(({ day, recordedOn }) => [day, recordedOn])).toEqual([
      ['2026-10-01', '2026-12-24'],
      ['2026-12-24', '2026-12-24'],
    ]);
  });

  it('is refused for a closed part, whose readings stay', async () => {
    const { site, id, read, now } = await open();
    await document(await read({ gauge: 'rest-voltage', value: 12.4 }), 201);
    await document(await site.send('POST', `/api/v1/parts/${id}/replacement`, {}), 201);
    const problem = await problemOf(await read({ gauge: 'rest-voltage', value: 12.7 }), 422);
    expect(problem.detail).toContain('not on this car any more');
    expect((await now()).readings).toMatchObject([{ value: 12.4 }]);
  });

  it('is a 404 problem for a part of another collection', async () => {
    const { site } = await open();
    const barn = openBarn(site.store, 'The shed');
    const theirs = partOf(barn, carIn(barn), 'battery-flooded').id;
    const given = { gauge: 'rest-voltage', value: 12.4 };
    for (const id of [theirs, NO_ID])
      await problemOf(await site.send('POST', `/api/v1/parts/${id}/readings`, given), 404);
    expect(site.store.$client.prepare('select * from readings').all()).toEqual([]);
  });
});

describe('POST /parts/{id}/readings/{id}/withdrawal', () => {
  it('takes back a reading, and only that', async () => {
    const { site, id, read } = await open();
    await read({ gauge: 'rest-voltage', value: 12.4 });
    const { readings } = await document<PartDocument>(await read({ gauge: 'rest-voltage', value: 12.7 }), 201);
    const path = `/api/v1/parts/${id}/readings/${readings[0]?.id}/withdrawal`;
    const part = await document<PartDocument>(await site.send('POST', path, {}));
    expect(part.readings).toEqual([readings[1]]);
    await problemOf(await site.send('POST', path, {}), 404);
  });

  it('is refused for a closed part, whose record stays', async () => {
    const { site, id, read, now } = await open();
    const { readings } = await document<PartDocument>(await read({ gauge: 'rest-voltage', value: 12.4 }), 201);
    await document(await site.send('POST', `/api/v1/parts/${id}/replacement`, {}), 201);
    const path = `/api/v1/parts/${id}/readings/${readings[0]?.id}/withdrawal`;
    expect((await problemOf(await site.send('POST', path, {}), 422)).title).toContain('its record stays');
    expect((await now()).readings).toMatchObject([{ value: 12.4 }]);
  });

  it('is a 404 problem for a reading of another part', async () => {
    const { site, id, read, part, now } = await open();
    const { readings } = await document<PartDocument>(await read({ gauge: 'rest-voltage', value: 12.4 }), 201);
    const other = await part('wiring');
    for (const [partId, readingId] of [
      [other.id, readings[0]?.id],
      [NO_ID, readings[0]?.id],
      [id, NO_ID],
    ])
      await problemOf(await site.send('POST', `/api/v1/parts/${partId}/readings/${readingId}/withdrawal`, {}), 404);
    expect((await now()).readings).toEqual(readings);
  });
});

describe('a finding', () => {
  it('names what brought it, its readings, its outlook, and what would make it surer', async () => {
    const { site, car, id, read, change } = await open('brake-fluid-glycol');
    const dates = [{ clock: 'filled', typed: 'May 2026', evidence: 'receipt' }];
    await document(await change({ dates, details: { grade: 'dot-4' } }));
    const find = async () => {
      const answer = await document<{ findings: Finding[] }>(await site.get(`/api/v1/cars/${car.id}/findings`));
      return answer.findings.find(({ partId }) => partId === id);
    };
    const estimated = await find();
    expect(estimated).toMatchObject({ standing: 'in date', by: 'age', readings: [], outlook: { measured: false } });
    expect(estimated?.surer).toContain('Measure it');
    expect(estimated?.outlook?.now).toContain('% water');
    expect(estimated?.outlook?.ends).not.toBe('');
    expect(estimated?.outlook?.sources[0]?.grade).not.toBe('');
    const [day] = estimated?.outlook?.days ?? [];
    expect(day?.what).toBe('Down to its wet minimum, 155 °C');
    expect((day?.earliest ?? '') < (day?.latest ?? '')).toBe(true);

    await document(await read({ gauge: 'boiling-point', value: 150 }), 201);
    const measured = await find();
    expect(measured).toMatchObject({ standing: 'past', by: 'reading', surer: null, outlook: { measured: true } });
    expect(measured?.readings).toEqual([expect.stringMatching(/^Boiling point 150 °C on 25 November 2026: act\./)]);
  });
});
