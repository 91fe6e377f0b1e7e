import { describe, expect, it } from 'vitest';
import { apiCar, document } from '../support/api.ts';
import { openSite, type TestSite } from '../support/site.ts';

/** As much of a JSON schema as the description uses. */
interface Schema {
  $ref?: string;
  type?: string | string[];
  enum?: unknown[];
  anyOf?: Schema[];
  allOf?: Schema[];
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: Schema;
  items?: Schema;
}
interface OpenApi {
  paths: Record<string, Record<string, { responses: Record<string, { content: Record<string, { schema: Schema }> }> }>>;
  components: { schemas: Record<string, Schema> };
}

/** Where a document differs from its schema; a member the schema does not name is a difference, too. */
const differences = (api: OpenApi, schema: Schema, value: unknown, at = '#'): string[] => {
  if (schema.$ref) {
    const named = api.components.schemas[schema.$ref.split('/').at(-1) ?? ''];
    return named ? differences(api, named, value, at) : [`${at} refers to nothing`];
  }
  if (schema.anyOf)
    return schema.anyOf.some((one) => differences(api, one, value, at).length === 0)
      ? []
      : [`${at} is none of its kinds`];
  if (schema.allOf) return schema.allOf.flatMap((one) => differences(api, one, value, at));
  const types = [schema.type ?? []].flat();
  if (types.length > 0 && !types.some((type) => isOf(type, value))) return [`${at} is no ${types.join(' or ')}`];
  if (schema.enum && !schema.enum.includes(value)) return [`${at} is none of ${schema.enum.join(', ')}`];
  if (Array.isArray(value))
    return value.flatMap((one, index) => differences(api, schema.items ?? {}, one, `${at}/${index}`));
  return value !== null && typeof value === 'object' && types.length > 0 ? membersOf(api, schema, value, at) : [];
};

const membersOf = (api: OpenApi, schema: Schema, value: object, at: string): string[] => [
  ...(schema.required ?? []).filter((name) => !(name in value)).map((name) => `${at}/${name} is missing`),
  ...Object.entries(value).flatMap(([name, member]) => {
    const described = schema.properties?.[name] ?? schema.additionalProperties;
    return described ? differences(api, described, member, `${at}/${name}`) : [`${at}/${name} is not described`];
  }),
];

const isOf = (type: string, value: unknown): boolean => {
  if (type === 'null') return value === null;
  if (type === 'array') return Array.isArray(value);
  if (type === 'object') return value !== null && typeof value === 'object' && !Array.isArray(value);
  return type === 'integer' ? Number.isInteger(value) : typeof value === type;
};

/** A car with dates, readings judged and not, an outlook, and a place. */
const lived = async (site: TestSite) => {
  const { car, part } = await apiCar(site);
  const send = (method: string, path: string, given: unknown) => site.send(method, `/api/v1${path}`, given);
  const [fluid, battery, tire] = [
    await part('brake-fluid-glycol'),
    await part('battery-flooded'),
    await part('tires-road', 'front left'),
  ];
  const details = { grade: 'dot-4', limit: 200 };
  await document(await send('PATCH', `/parts/${fluid.id}`, { dates: [{ clock: 'filled', typed: '2024' }], details }));
  await document(await send('POST', `/parts/${battery.id}/readings`, { gauge: 'rest-voltage', value: 12.3 }), 201);
  await document(
    await send('POST', `/parts/${tire.id}/readings`, { gauge: 'cold-pressure', value: 2, warmth: 5 }),
    201,
  );
  const place = { name: 'Barn', winterLow: -12, summerHigh: 33, air: 'inland', shelter: 'unheated', humidity: 60 };
  const { id } = await document<{ id: string }>(await send('POST', '/places', place), 201);
  await document(await send('PUT', `/cars/${car.id}/place`, { place: id }));
  const stay = { car: car.id, parkedOn: '2026-08-01', place: id, numbers: { dose: 30 } };
  const layUp = await document<{ id: string }>(await send('POST', '/lay-ups', stay), 201);
  const layUpPath = `/lay-ups/${layUp.id}`;
  const cost = { plan: 'lay-up', step: 'oil-change', state: 'done', cost: 45.5 };
  await document(await send('POST', `${layUpPath}/ticks`, cost), 201);
  await document(await send('POST', `${layUpPath}/steps`, { title: 'Call Ada' }), 201);
  await document(await send('POST', `${layUpPath}/rounds`, { answers: { mice: 'traces' } }), 201);
  await document(await send('PATCH', layUpPath, { returnOn: '2028-04-01' }));
  const sleeper = { newCar: { name: 'Sleeper', quickStart: 'diesel-wagon', ours: true }, lastRan: 'about 2010' };
  const revival = await document<{ id: string }>(await send('POST', '/revivals', sleeper), 201);
  await document(await send('POST', `/revivals/${revival.id}/looks`, { looks: { title: 'unclear', floor: 'soft' } }));
  return { carId: car.id, partId: tire.id, placeId: id, layUpPath, revivalPath: `/revivals/${revival.id}` };
};

describe('what openapi.json says of an answer', () => {
  it('is what is answered', async () => {
    const site = openSite();
    const { carId, partId, placeId, layUpPath, revivalPath } = await lived(site);
    const api = await document<OpenApi>(await site.get('/api/v1/openapi.json'));
    const asked: [string, string][] = [
      ['/cars', '/cars'],
      ['/cars/{carId}', `/cars/${carId}`],
      ['/cars/{carId}/findings', `/cars/${carId}/findings`],
      ['/cars/{carId}/parts', `/cars/${carId}/parts`],
      ['/parts/{partId}', `/parts/${partId}`],
      ['/places', '/places'],
      ['/places/{placeId}', `/places/${placeId}`],
      ['/lay-ups', '/lay-ups'],
      ['/lay-ups/looks', '/lay-ups/looks'],
      ['/lay-ups/topics', '/lay-ups/topics'],
      ['/lay-ups/{layUpId}', layUpPath],
      ['/lay-ups/{layUpId}', `${layUpPath}?on=2028-03-20`],
      ['/looks', '/looks'],
      ['/revivals', '/revivals'],
      ['/revivals/{revivalId}', revivalPath],
      ['/revivals/{revivalId}/verdict', `${revivalPath}/verdict`],
      ['/cars/{carId}/road-check', `/cars/${carId}/road-check`],
      ['/year-ahead', '/year-ahead'],
      ['/kinds', '/kinds'],
      ['/date-codes/tire', '/date-codes/tire?code=417'],
      ['/dates/read', '/dates/read?text=about%202015'],
      ['/dates/read', '/dates/read?text=unknown'],
      ['/desks/brake-fluid', '/desks/brake-fluid'],
      ['/desks/brake-fluid', '/desks/brake-fluid?filled=2025&limit=200&added=dot-3&copper=5'],
      ['/desks/coolant', '/desks/coolant?strength=40'],
      ['/desks/coolant', '/desks/coolant?brix=30&night=-20&volume=8&wanted=60&there=oat&added=iat'],
      ['/desks/battery', '/desks/battery?capacity=60&charge=90'],
      ['/desks/battery', '/desks/battery?capacity=60&volts=12.5&low=-20&connection=maintainer'],
      ['/desks/fuel', '/desks/fuel?blend=e10&tank=50'],
      ['/desks/fuel', '/desks/fuel?blend=diesel'],
      ['/desks/rubber', '/desks/rubber?rubber=NBR&made=2019'],
      ['/desks/rubber', '/desks/rubber?rubber=NBR&made=2019&low=-10'],
    ];
    const read = Object.entries(api.paths).filter(([, methods]) => methods['get']);
    expect(new Set(asked.map(([path]) => path))).toEqual(new Set(read.map(([path]) => path)));
    for (const [path, address] of asked) {
      const schema = api.paths[path]?.['get']?.responses['200']?.content['application/json']?.schema ?? {};
      const answer = await document(await site.get(`/api/v1${address}`));
      expect(differences(api, schema, answer), address).toEqual([]);
    }
  });
});
