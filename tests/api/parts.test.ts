import { describe, expect, it } from 'vitest';
import { changeMember } from '../../src/store/people.ts';
import { apiCar, document, type PartDocument, pointers, problemOf } from '../support/api.ts';
import { carIn, openBarn, partOf } from '../support/cars.ts';
import { openSite } from '../support/site.ts';

const NO_ID = '01900000-0000-7000-8000-000000000000';

const open = async () => {
  const site = openSite();
  const { car, part } = await apiCar(site);
  const tire = await part('tires-road', 'front left');
  const change = (given: unknown, query = '') => site.send('PATCH', `/api/v1/parts/${tire.id}${query}`, given);
  const renew = (given: unknown, id = tire.id) => site.send('POST', `/api/v1/parts/${id}/replacement`, given);
  const read = async (id = tire.id) => document<PartDocument>(await site.get(`/api/v1/parts/${id}`));
  return { site, car, tire, part, change, renew, read };
};

describe('PATCH /parts/{id}', () => {
  it('records dates and answers the part as it is now', async () => {
    const { tire, change, read } = await open();
    const given = { clock: 'made', typed: '2318', evidence: 'read on the part', km: 81_000, note: 'Inner side' };
    const part = await document<PartDocument>(await change({ dates: [given] }));
    expect(part).toEqual({
      ...tire,
      dates: [
        {
          ...given,
          id: expect.any(String) as string,
          said: 'date',
          edtf: '2018-06-10/2018-06-16',
          from: '2018-06-10',
          to: '2018-06-16',
          recordedOn: '2026-11-25',
        },
      ],
    });
    expect(await read()).toEqual(part);
  });

  it('takes a word for it where no evidence is named', async () => {
    const { change } = await open();
    const { dates } = await document<PartDocument>(await change({ dates: [{ clock: 'fitted', typed: 'about 2015' }] }));
    expect(dates).toMatchObject([{ evidence: 'own memory', edtf: '2015~' }]);
  });

  it('changes the note alone, and leaves it where only dates are sent', async () => {
    const { change } = await open();
    expect(await document(await change({ note: 'Cracked' }))).toMatchObject({ note: 'Cracked', dates: [] });
    expect(await document(await change({ dates: [{ clock: 'made', typed: '2318' }] }))).toMatchObject({
      note: 'Cracked',
    });
    expect(await document(await change({ note: '' }))).toMatchObject({ note: '' });
  });

  it('records all of the dates or none, and points at each that is wrong', async () => {
    const { tire, change, read } = await open();
    const dates = [
      { clock: 'made', typed: '2318' },
      { clock: 'fitted', typed: '2012' },
      { clock: 'used', typed: '2030' },
    ];
    const problem = await problemOf(await change({ note: 'x', dates }), 422);
    expect(pointers(problem)).toEqual(['#/dates/1/typed', '#/dates/2/typed']);
    expect(problem.errors?.[0]?.detail).toContain('before it was made');
    expect(await read()).toEqual(tire);
  });

  it('offers what an ambiguous text can mean; choice picks one', async () => {
    const { change } = await open();
    const given = { clock: 'made', typed: '2015', evidence: 'read on the part' };
    const problem = await problemOf(await change({ dates: [given] }), 422);
    expect(problem.errors).toMatchObject([
      {
        pointer: '#/dates/0/typed',
        choices: [
          { value: '2015-05-17/2015-05-23', label: '17 to 23 May 2015' },
          { value: '2015', label: '2015' },
        ],
      },
    ]);
    for (const { value, from } of [
      { value: '2015-05-17/2015-05-23', from: '2015-05-17' },
      { value: '2015', from: '2015-01-01' },
    ]) {
      const { dates } = await document<PartDocument>(await change({ dates: [{ ...given, choice: value }] }));
      expect(dates.at(-1)).toMatchObject({ typed: '2015', edtf: value, from });
    }
  });

  it('reads dates in the order of whoever the request acts for', async () => {
    const { site, change } = await open();
    const ada = { name: 'Ada', email: null, dateOrder: 'month first' as const, letters: true };
    changeMember(site.store, site.collectionId, site.personId, ada);
    const { dates } = await document<PartDocument>(await change({ dates: [{ clock: 'fitted', typed: '3/4/2015' }] }));
    expect(dates).toMatchObject([{ from: '2015-03-04' }]);
  });

  it('as on another day judges by that day', async () => {
    const { change } = await open();
    const ahead = { dates: [{ clock: 'fitted', typed: '2027' }] };
    await problemOf(await change(ahead), 422);
    const { dates } = await document<PartDocument>(await change(ahead, '?on=2028-01-01'));
    expect(dates).toMatchObject([{ from: '2027-01-01', recordedOn: '2028-01-01' }]);
  });

  it.each([
    [{ dates: [{ clock: 'born', typed: '2015' }] }, '#/dates/0/clock'],
    [{ dates: [{ clock: 'made', typed: '2318', evidence: 'a hunch' }] }, '#/dates/0/evidence'],
    [{ dates: [{ clock: 'made', typed: '2318', km: -1 }] }, '#/dates/0/km'],
    [{ dates: 'yesterday' }, '#/dates'],
    [{ note: 7 }, '#/note'],
    [{ note: 'x'.repeat(201) }, '#/note'],
  ])('with %j is a problem at %s', async (given, pointer) => {
    const { tire, change, read } = await open();
    expect(pointers(await problemOf(await change(given), 422))).toEqual([pointer]);
    expect(await read()).toEqual(tire);
  });
});

describe('POST /parts/{id}/replacement', () => {
  it('closes the part and answers its successor; the old one can still be read', async () => {
    const { tire, renew, read, part } = await open();
    const given = {
      why: 'Cracked.',
      note: 'Same size',
      dates: [
        { clock: 'fitted', typed: '2026-11-20', evidence: 'receipt' },
        { clock: 'made', typed: '0426', evidence: 'read on the part' },
      ],
    };
    const next = await document<PartDocument>(await renew(given), 201);
    expect(next).toMatchObject({
      kind: 'tires-road',
      position: 'front left',
      replaces: tire.id,
      note: 'Same size',
      closedOn: null,
      dates: [{ from: '2026-11-20' }, { from: '2026-01-25' }],
    });
    expect(await read()).toMatchObject({ closedOn: '2026-11-25', closedWhy: 'Cracked.' });
    expect((await part('tires-road', 'front left')).id).toBe(next.id);
  });

  it('needs no more than an empty document', async () => {
    const { renew, read } = await open();
    await document(await renew({}), 201);
    expect(await read()).toMatchObject({ closedWhy: 'Renewed.' });
  });

  it('is refused where a date is wrong, and closes nothing', async () => {
    const { tire, renew, read } = await open();
    const dates = [
      { clock: 'fitted', typed: '2018' },
      { clock: 'made', typed: '2320' },
    ];
    expect(pointers(await problemOf(await renew({ dates }), 422))).toEqual(['#/dates/1/typed']);
    expect(await read()).toEqual(tire);
  });

  it('is refused for a part that is closed already', async () => {
    const { renew, read } = await open();
    await renew({});
    const before = await read();
    const problem = await problemOf(await renew({ why: 'Again' }), 422);
    expect(problem.detail).toContain('its successor is the one to date or renew');
    expect(await read()).toEqual(before);
  });
});

describe('an id the collection has no part by', () => {
  it.each([
    ['GET', ''],
    ['PATCH', ''],
    ['POST', '/replacement'],
  ])('is a 404 problem: %s /parts/{id}%s', async (method, path) => {
    const site = openSite();
    const shed = openBarn(site.store, 'The shed');
    const theirs = partOf(shed, carIn(shed), 'wiring').id;
    for (const id of [NO_ID, theirs]) {
      const address = `/api/v1/parts/${id}${path}`;
      await problemOf(method === 'GET' ? await site.get(address) : await site.send(method, address, {}), 404);
    }
    expect(partOf(shed, shed.store.$client.prepare('select id from cars').pluck().get() as string, 'wiring').id).toBe(
      theirs,
    );
  });
});
