import { describe, expect, it } from 'vitest';
import type { Detail } from '../../src/catalogue/gauge.ts';
import { DETAILS as BATTERY } from '../../src/web/desks/battery.tsx';
import { DETAILS as BRAKE_FLUID } from '../../src/web/desks/brake-fluid.tsx';
import { DETAILS as COOLANT } from '../../src/web/desks/coolant.tsx';
import { DETAILS as FUEL } from '../../src/web/desks/fuel.tsx';
import { RUBBER_QUESTIONS as RUBBER } from '../../src/web/desks/rubber.tsx';
import { document, pointers, problemOf } from '../support/api.ts';
import { openSite } from '../support/site.ts';

const DESKS: [string, readonly Detail[], Record<string, string>, string[]][] = [
  ['brake-fluid', BRAKE_FLUID, {}, ['on', 'filled']],
  ['coolant', COOLANT, { strength: '40' }, ['on']],
  ['battery', BATTERY, { capacity: '60', charge: '100' }, ['on', 'from', 'until']],
  ['fuel', FUEL, { blend: 'e10' }, ['on', 'bought']],
  ['rubber', RUBBER, { rubber: 'EPDM', made: '2019' }, ['on', 'made']],
];

const ask = (desk: string, query: Record<string, string>) =>
  openSite().get(`/api/v1/desks/${desk}?${new URLSearchParams(query)}`);
const reckon = async <T>(desk: string, query: Record<string, string>) => document<T>(await ask(desk, query));

interface Parameter {
  name: string;
  in: string;
  required?: boolean;
  description?: string;
  schema: { enum?: string[] };
}

describe.each(DESKS)('GET /desks/%s', (desk, details, least, besides) => {
  it('describes each of its questions, and no other', async () => {
    const { paths } = await document<{ paths: Record<string, { get?: { parameters: Parameter[] } }> }>(
      await openSite().get('/api/v1/openapi.json'),
    );
    const parameters = paths[`/desks/${desk}`]?.get?.parameters ?? [];
    const units = details.filter((detail) => 'also' in detail && detail.also).map(({ key }) => `${key}-unit`);
    const keys = details.map(({ key }) => key);
    expect(parameters.map(({ name }) => name).toSorted()).toEqual([...besides, ...keys, ...units].toSorted());
    for (const detail of details) {
      const { schema, description, ...about } = parameters.find(({ name }) => name === detail.key) as Parameter;
      expect(about, detail.key).toMatchObject({ in: 'query', required: false });
      expect(description, detail.key).toContain(detail.name);
      expect(schema.enum, detail.key).toEqual('choices' in detail ? Object.keys(detail.choices) : undefined);
    }
  });

  it('answers with sources, whatever choice is made, and takes fields left empty as open', async () => {
    const plain = await reckon<{ says: string[]; sources: unknown[] }>(desk, least);
    expect(plain.sources.length).toBeGreaterThan(1);
    const empty = Object.fromEntries(details.map(({ key }) => [key, '']));
    expect(await reckon(desk, { ...empty, ...least })).toEqual(plain);
    for (const detail of details)
      if ('choices' in detail)
        for (const choice of Object.keys(detail.choices)) {
          const answer = await ask(desk, { ...least, charge: '80', [detail.key]: choice });
          expect(answer.status, `${detail.key} ${choice}`).toBe(200);
        }
  });

  it('points at each field that is wrong', async () => {
    for (const detail of details) {
      const wrong = 'choices' in detail ? ['nonsense', 'toString'] : ['much', '1000000'];
      for (const typed of wrong)
        expect(
          pointers(await problemOf(await ask(desk, { ...least, [detail.key]: typed }), 422)),
          `${detail.key} ${typed}`,
        ).toContain(`#/${detail.key}`);
      if ('also' in detail && detail.also) {
        const unit = { [`${detail.key}-unit`]: 'furlong' };
        expect(pointers(await problemOf(await ask(desk, { ...least, ...unit }), 422))).toEqual([
          `#/${detail.key}-unit`,
        ]);
      }
    }
    await problemOf(await ask(desk, { ...least, on: 'soon' }), 400);
  });

  it('asked for one thing twice is a problem', async () => {
    const [first] = details;
    const key = first?.key ?? '';
    const twice = [...Object.entries(least), [key, '1'], [key, '2']].map((pair) => pair.join('=')).join('&');
    const answer = await openSite().get(`/api/v1/desks/${desk}?${twice}`);
    expect(pointers(await problemOf(answer, 422))).toContain(`#/${key}`);
  });
});
