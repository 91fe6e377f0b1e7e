import { createRoute, z } from '@hono/zod-openapi';
import type { Fault } from '../../acts/fault.ts';
import { addPlaceAct, changePlaceAct, type PlaceGiven, putCarAct } from '../../acts/places.ts';
import { carsByPlace, findPlace, placesOf } from '../../store/places.ts';
import { actingIn, type Ctx } from '../visit.ts';
import { carOut, placeOut } from './documents.ts';
import { carIn, noCar, noPlace, placeIn, seenIn } from './in-path.ts';
import { faultsProblem } from './problem.ts';
import { type Api, body, json, refusal } from './route.ts';
import { CarPath, PlacePath } from './schemas/base.ts';
import { CarOut } from './schemas/cars.ts';
import { PlaceIn, PlaceOut, StandIn } from './schemas/places.ts';

const list = createRoute({
  method: 'get',
  path: '/places',
  summary: 'The places where the collection’s cars stand',
  responses: { 200: json(z.object({ places: z.array(PlaceOut) }), 'By name') },
});
const create = createRoute({
  method: 'post',
  path: '/places',
  summary: 'Add a place by what is known of its climate',
  request: { body: body(PlaceIn) },
  responses: { 201: json(PlaceOut, 'The place'), 422: refusal('What was wrong') },
});
const one = createRoute({
  method: 'get',
  path: '/places/{placeId}',
  summary: 'One place, with the twelve months reckoned with',
  request: { params: PlacePath },
  responses: { 200: json(PlaceOut, 'The place'), 404: refusal('No such place') },
});
const change = createRoute({
  method: 'put',
  path: '/places/{placeId}',
  summary: 'Say anew what is known of a place; what is left out is no longer said',
  request: { params: PlacePath, body: body(PlaceIn) },
  responses: {
    200: json(PlaceOut, 'The place as it is now'),
    404: refusal('No such place'),
    422: refusal('What was wrong'),
  },
});
const put = createRoute({
  method: 'put',
  path: '/cars/{carId}/place',
  summary: 'Say where a car stands, or that nobody knows',
  request: { params: CarPath, body: body(StandIn) },
  responses: { 200: json(CarOut, 'The car'), 404: refusal('No such car'), 422: refusal('What was wrong') },
});

export const placeRoutes = (app: Api): void => {
  app.openapi(list, (c) => {
    const { store, id } = seenIn(c);
    const stands = carsByPlace(store, id);
    return c.json({ places: placesOf(store, id).map((place) => placeOut(place, stands.get(place.id) ?? [])) }, 200);
  });

  app.openapi(create, (c) => {
    const outcome = addPlaceAct(seenIn(c).store, actingIn(c.get('visit')), given(c.req.valid('json')));
    return outcome.ok ? answer(c, outcome.value, 201) : (refused(c, outcome.faults) as never);
  });

  app.openapi(one, (c) => answer(c, c.req.valid('param').placeId, 200));

  app.openapi(change, (c) => {
    const place = placeIn(c);
    if (!place) return noPlace(c) as never;
    const outcome = changePlaceAct(seenIn(c).store, actingIn(c.get('visit')), place.id, given(c.req.valid('json')));
    return outcome.ok ? answer(c, place.id, 200) : (refused(c, outcome.faults) as never);
  });

  app.openapi(put, (c) => {
    const found = carIn(c);
    if (!found) return noCar(c) as never;
    const { place } = c.req.valid('json');
    const outcome = putCarAct(seenIn(c).store, actingIn(c.get('visit')), found.car.id, place ?? '');
    if (!outcome.ok) return faultsProblem(c, outcome.faults) as never;
    const now = carIn(c);
    return now ? c.json(carOut(now), 200) : (noCar(c) as never);
  });
};

const answer = (c: Ctx, placeId: string, status: 200 | 201): never => {
  const { store, id } = seenIn(c);
  const place = findPlace(store, id, placeId);
  return (place ? c.json(placeOut(place, carsByPlace(store, id).get(placeId) ?? []), status) : noPlace(c)) as never;
};

/** Numbers as the act takes them: as typed. */
const given = ({
  winterLow,
  summerHigh,
  humidity,
  heatedTo,
  months,
  ...rest
}: z.infer<typeof PlaceIn>): PlaceGiven => ({
  ...rest,
  winterLow: String(winterLow),
  summerHigh: String(summerHigh),
  humidity: String(humidity ?? ''),
  heatedTo: String(heatedTo ?? ''),
  months: months.map((month) => String(month ?? '')),
});

/** The act calls the fifth month “month4”. */
const refused = (c: Ctx, faults: readonly Fault[]) =>
  faultsProblem(
    c,
    faults.map((fault) => ({ ...fault, field: fault.field.replace(/^month(\d+)$/, 'months/$1') })),
  );
