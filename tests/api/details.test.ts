import { describe, expect, it } from 'vitest';
import { apiCar, document, type PartDocument, pointers, problemOf } from '../support/api.ts';
import { openSite } from '../support/site.ts';

const FLUID = 'brake-fluid-glycol';

const open = async (kind: string) => {
  const site = openSite();
  const { part } = await apiCar(site);
  const { id } = await part(kind);
  const change = (given: unknown) => site.send('PATCH', `/api/v1/parts/${id}`, given);
  const now = async () => document<PartDocument>(await site.get(`/api/v1/parts/${id}`));
  return { site, id, change, now };
};

describe('PATCH /parts/{id} with details', () => {
  it('keeps answers in the unit of the detail, leaves the others, and forgets those of null', async () => {
    const { change, now } = await open(FLUID);
    const first = await document<PartDocument>(await change({ details: { grade: 'dot-4', limit: '401 °F' } }));
    expect(first.details).toEqual({ grade: 'dot-4', limit: 205 });
    expect((await document<PartDocument>(await change({ details: { limit: 220 } }))).details).toEqual({
      grade: 'dot-4',
      limit: 220,
    });
    expect((await document<PartDocument>(await change({ details: { grade: null } }))).details).toEqual({ limit: 220 });
    await document(await change({ note: 'Blue cap' }));
    expect((await now()).details).toEqual({ limit: 220 });
    expect((await document<PartDocument>(await change({ details: { limit: '' } }))).details).toEqual({});
  });

  it('points at every answer and date that is wrong, and changes nothing', async () => {
    const { change, now } = await open(FLUID);
    await document(await change({ details: { grade: 'dot-3' } }));
    const before = await now();
    const details = { grade: 'dot-7', limit: 900, volts: 12 };
    const given = { note: 'New', dates: [{ clock: 'filled', typed: 'soon' }], details };
    const problem = await problemOf(await change(given), 422);
    expect(new Set(pointers(problem))).toEqual(
      new Set(['#/dates/0/typed', '#/details/grade', '#/details/limit', '#/details/volts']),
    );
    const good = { note: 'New', dates: [{ clock: 'filled', typed: '2024' }], details: { grade: 'dot-4' } };
    const oneBad = { ...good, details: { grade: 'dot-4', limit: 'high' } };
    expect(pointers(await problemOf(await change(oneBad), 422))).toEqual(['#/details/limit']);
    expect(await now()).toEqual(before);
    expect(await document(await change(good))).toMatchObject({
      note: 'New',
      dates: [{ typed: '2024' }],
      details: { grade: 'dot-4' },
    });
  });

  it.each<[Record<string, unknown>, string[]]>([
    // What every object has is no choice, and no detail.
    [{ grade: 'toString' }, ['#/details/grade']],
    [{ constructor: 'x' }, ['#/details/constructor']],
    [{ grade: true }, ['#/details/grade']],
    [{ nothing: null }, ['#/details/nothing']],
    [{ 'a/b~c d': 1 }, ['#/details/a~1b~0c%20d']],
  ])('of %j is a problem', async (details, where) => {
    const { change, now } = await open(FLUID);
    expect(pointers(await problemOf(await change({ details }), 422))).toEqual(where);
    expect((await now()).details).toEqual({});
  });

  it('is refused for a closed part, whose note alone can change', async () => {
    const { site, id, change } = await open(FLUID);
    await document(await site.send('POST', `/api/v1/parts/${id}/replacement`, {}), 201);
    expect(pointers(await problemOf(await change({ details: { grade: 'dot-4' } }), 422))).toEqual(['#/part']);
    expect(await document(await change({ note: 'Was brown' }))).toMatchObject({ note: 'Was brown', details: {} });
  });
});
