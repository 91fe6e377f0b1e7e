import { describe, expect, it } from 'vitest';
import { siteAt } from '../../src/links.ts';
import { createLog } from '../../src/log.ts';
import { openMemoryStore } from '../../src/store/open.ts';
import { ensureCollection } from '../../src/store/people.ts';
import { createApp } from '../../src/web/app.tsx';
import { apiCar, document, type PartDocument, pointers, problemOf } from '../support/api.ts';
import { barnOf, carIn } from '../support/cars.ts';
import { openSite } from '../support/site.ts';

interface Operation {
  summary?: string;
  parameters?: { name: string; in: string; required?: boolean; schema: unknown }[];
  requestBody?: { required: boolean; content: Record<string, { schema: unknown }> };
  responses: Record<string, { description: string; content: Record<string, { schema: unknown }> }>;
}
interface OpenApi {
  openapi: string;
  info: { title: string; version: string };
  servers: { url: string }[];
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, unknown> };
}

const openapi = async () => document<OpenApi>(await openSite().get('/api/v1/openapi.json'));
const operations = ({ paths }: OpenApi) =>
  Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({
      name: `${method.toUpperCase()} ${path}`,
      path,
      operation,
    })),
  );

describe('openapi.json', () => {
  it('describes every path there is, and no other', async () => {
    const store = openMemoryStore();
    ensureCollection(store, 'Europe/Lisbon');
    const app = createApp({
      store,
      site: siteAt(null, 3000),
      log: createLog('error', () => {}),
      now: () => new Date('2026-11-25T10:00:00Z'),
      dataDir: null,
      hasMailServer: true,
      metricsToken: null,
      deliver: async () => ({ sent: 0, waiting: 0, failed: 0, calledOff: 0 }),
    });
    const routed = app.routes
      .filter(({ method, path }) => method !== 'ALL' && path.startsWith('/api/v1/') && !path.endsWith('/openapi.json'))
      .map(({ method, path }) => `${method} ${path.slice('/api/v1'.length).replace(/:(\w+)/g, '{$1}')}`);
    const described = operations(await openapi()).map(({ name }) => name);
    expect(described.toSorted()).toEqual([...new Set(routed)].toSorted());
    expect(described).toEqual(
      expect.arrayContaining([
        'GET /date-codes/tire',
        'GET /cars',
        'POST /cars',
        'GET /cars/{carId}',
        'GET /cars/{carId}/findings',
        'GET /cars/{carId}/parts',
        'POST /cars/{carId}/parts',
        'PATCH /parts/{partId}',
        'POST /parts/{partId}/replacement',
        'POST /parts/{partId}/readings',
        'POST /parts/{partId}/readings/{readingId}/withdrawal',
        'GET /places',
        'POST /places',
        'GET /places/{placeId}',
        'PUT /places/{placeId}',
        'PUT /cars/{carId}/place',
        'GET /desks/brake-fluid',
        'GET /desks/coolant',
        'GET /desks/battery',
        'GET /desks/fuel',
        'GET /desks/rubber',
        'GET /kinds',
        'GET /lay-ups',
        'POST /lay-ups',
        'GET /lay-ups/looks',
        'GET /lay-ups/topics',
        'GET /lay-ups/{layUpId}',
        'PATCH /lay-ups/{layUpId}',
        'POST /lay-ups/{layUpId}/seen',
        'POST /lay-ups/{layUpId}/sides',
        'POST /lay-ups/{layUpId}/ticks',
        'DELETE /lay-ups/{layUpId}/ticks/{plan}/{step}',
        'POST /lay-ups/{layUpId}/steps',
        'DELETE /lay-ups/{layUpId}/steps/{step}',
        'POST /lay-ups/{layUpId}/rounds',
        'DELETE /lay-ups/{layUpId}/rounds/{roundId}',
        'POST /lay-ups/{layUpId}/close',
      ]),
    );
  });

  it('is OpenAPI 3.1 whose references all lead somewhere', async () => {
    const api = await openapi();
    expect(api.openapi).toBe('3.1.0');
    expect(api.servers).toEqual([{ url: '/api/v1' }]);
    const references = [...JSON.stringify(api).matchAll(/"\$ref":"#\/components\/schemas\/([^"]+)"/g)].map(
      ([, name]) => name,
    );
    expect(references.length).toBeGreaterThan(5);
    for (const name of references) expect(Object.keys(api.components.schemas)).toContain(name);
  });

  it('gives every operation a summary, its path’s parameters, a success and a schema for each answer', async () => {
    for (const { name, path, operation } of operations(await openapi())) {
      expect(operation.summary, name).toBeTruthy();
      const inPath = (operation.parameters ?? []).filter((parameter) => parameter.in === 'path').map((one) => one.name);
      expect(inPath, name).toEqual([...path.matchAll(/\{(\w+)\}/g)].map(([, parameter]) => parameter));
      const statuses = Object.keys(operation.responses);
      expect(
        statuses.filter((status) => status.startsWith('2')),
        name,
      ).toHaveLength(1);
      for (const [status, { description, content }] of Object.entries(operation.responses)) {
        expect(description, name).toBeTruthy();
        const type = status.startsWith('2') ? 'application/json' : 'application/problem+json';
        expect(Object.keys(content), `${name} ${status}`).toEqual([type]);
        expect(content[type]?.schema, `${name} ${status}`).toBeTruthy();
      }
      if (operation.requestBody) {
        expect(operation.requestBody.required, name).toBe(true);
        expect(statuses, name).toContain('422');
      }
      if (inPath.length > 0) expect(statuses, name).toContain('404');
    }
  });

  it('names the pointer and the choices of an error', async () => {
    const { paths } = await openapi();
    const schema = JSON.stringify(
      paths['/cars']?.['post']?.responses['422']?.content['application/problem+json']?.schema,
    );
    for (const member of ['title', 'status', 'detail', 'errors', 'pointer', 'choices'])
      expect(schema).toContain(`"${member}"`);
  });
});

describe('a request that makes no sense', () => {
  /** Every address that takes a document, on a car that is there. */
  const open = async () => {
    const lines: string[] = [];
    const site = openSite({ log: (line) => lines.push(line) });
    const { car, part } = await apiCar(site);
    const { id } = await part('wiring');
    const read = { gauge: 'standing-drain', value: 20 };
    const { readings } = await document<PartDocument>(
      await site.send('POST', `/api/v1/parts/${id}/readings`, read),
      201,
    );
    const barn = { name: 'Barn', winterLow: -12, summerHigh: 33, air: 'inland', shelter: 'unheated' };
    const place = await document<{ id: string }>(await site.send('POST', '/api/v1/places', barn), 201);
    await document(await site.send('PUT', `/api/v1/cars/${car.id}/place`, { place: place.id }));
    const stay = { car: car.id, parkedOn: '2026-10-01' };
    const layUp = await document<{ id: string }>(await site.send('POST', '/api/v1/lay-ups', stay), 201);
    const takers = [
      ['POST', '/cars'],
      ['POST', `/cars/${car.id}/parts`],
      ['PATCH', `/parts/${id}`],
      ['POST', `/parts/${id}/replacement`],
      ['POST', `/parts/${id}/readings`],
      ['POST', `/parts/${id}/readings/${readings[0]?.id}/withdrawal`],
      ['POST', '/places'],
      ['PUT', `/places/${place.id}`],
      ['PUT', `/cars/${car.id}/place`],
      ['POST', '/lay-ups'],
      ['PATCH', `/lay-ups/${layUp.id}`],
      ['POST', `/lay-ups/${layUp.id}/seen`],
      ['POST', `/lay-ups/${layUp.id}/sides`],
      ['POST', `/lay-ups/${layUp.id}/ticks`],
      ['DELETE', `/lay-ups/${layUp.id}/ticks/lay-up/wax`],
      ['POST', `/lay-ups/${layUp.id}/steps`],
      ['DELETE', `/lay-ups/${layUp.id}/steps/${layUp.id}`],
      ['POST', `/lay-ups/${layUp.id}/rounds`],
      ['DELETE', `/lay-ups/${layUp.id}/rounds/${layUp.id}`],
      ['POST', `/lay-ups/${layUp.id}/close`],
    ] as const;
    const tables = [
      ...['cars', 'parts', 'claims', 'readings', 'places', 'car_places'],
      ...['lay_ups', 'ticks', 'own_steps', 'rounds', 'letters'],
    ];
    const everything = () => tables.map((table) => site.store.$client.prepare(`select * from ${table}`).all());
    const raw = (method: string, path: string, type: string | null, body?: string, origin = 'http://localhost:3000') =>
      site.raw(`/api/v1${path}`, {
        method,
        body: body ?? null,
        headers: { ...(type ? { 'content-type': type } : {}), ...(origin ? { origin } : {}) },
      });
    return { takers, everything, raw, lines };
  };

  it.each([
    ['JSON that is none', 'application/json', '{"name": ', 400],
    ['nothing, called JSON', 'application/json', '', 400],
    ['a text', 'application/json', '"Merle"', 422],
    ['a list', 'application/json', '[]', 422],
    ['null', 'application/json', 'null', 422],
    ['nothing, called nothing', null, undefined, 415],
    ['a document called text', 'text/plain', '{"name":"Merle","built":"1967","kind":"wiring"}', 415],
    ['a form', 'application/x-www-form-urlencoded', 'name=Merle&built=1967&kind=wiring', 415],
    ['another kind of document', 'application/xml', '<car/>', 415],
  ])('with %s is a problem, changes nothing, and is no error of ours', async (_, type, body, status) => {
    const { takers, everything, raw, lines } = await open();
    const before = everything();
    for (const [method, path] of takers) {
      const problem = await problemOf(await raw(method, path, type, body), status);
      if (status === 422) expect(pointers(problem)).toEqual(['#']);
    }
    expect(everything()).toEqual(before);
    expect(lines).toEqual([]);
  });

  it('with a form from another site’s page is refused', async () => {
    const { takers, everything, raw } = await open();
    const before = everything();
    for (const [method, path] of takers)
      for (const origin of ['https://evil.example.org', ''])
        await problemOf(await raw(method, path, 'text/plain', '{}', origin), 403);
    expect(everything()).toEqual(before);
  });

  it('with a document of an unnamed or more closely named JSON type is taken', async () => {
    const { raw } = await open();
    const car = JSON.stringify({ name: 'Merle', built: '1967', quickStart: 'roadster-disc-drum-overdrive' });
    for (const type of ['application/json; charset=utf-8', 'application/merge-patch+json'])
      expect((await raw('POST', '/cars', type, car)).status, type).toBe(201);
  });

  it('with a document far too large is a 413 problem', async () => {
    const { raw } = await open();
    const large = JSON.stringify({ name: 'Merle', note: 'x'.repeat(300 * 1024) });
    await problemOf(await raw('POST', '/cars', 'application/json', large), 413);
  });

  it('to an address or by a method there is none of is a 404 problem', async () => {
    const { raw } = await open();
    await problemOf(await raw('GET', '/nothing', null), 404);
    await problemOf(await raw('DELETE', '/cars', 'application/json'), 404);
  });

  it('as on a day that is none is a 400 problem, whatever is asked', async () => {
    const { takers, raw } = await open();
    for (const path of [
      '/cars',
      '/kinds',
      '/places',
      '/desks/fuel?blend=e10',
      '/openapi.json',
      '/date-codes/tire?code=2318',
    ])
      await problemOf(await raw('GET', `${path}${path.includes('?') ? '&' : '?'}on=2026-02-30`, null), 400);
    for (const [method, path] of takers)
      await problemOf(await raw(method, `${path}?on=soon`, 'application/json', '{}'), 400);
  });

  it('with faults of its own points at each of them', async () => {
    const { raw } = await open();
    const problem = await problemOf(await raw('POST', '/cars', 'application/json', '{"traits":[1]}'), 422);
    expect(pointers(problem)).toEqual(['#/name', '#/built', '#/traits/0']);
  });
});

describe('an answer of the API', () => {
  it('is kept by no cache', async () => {
    expect((await openSite().get('/api/v1/cars')).headers.get('cache-control')).toBe('no-store');
  });

  it('to a fault of ours is a problem that names the line in the log', async () => {
    const lines: string[] = [];
    const site = openSite({ log: (line) => lines.push(line) });
    carIn(barnOf(site));
    site.store.$client.exec('drop table claims');
    const problem = await problemOf(await site.get('/api/v1/cars'), 500);
    const { id } = JSON.parse(lines.at(-1) ?? '{}') as { id: string };
    expect(problem.detail).toBe(`It is in the log under ${id}.`);
    expect(JSON.stringify(problem)).not.toContain('claims');
  });
});
