import { createRoute, z } from '@hono/zod-openapi';
import { addCarAct } from '../../acts/add-car.ts';
import { addPartAct } from '../../acts/parts.ts';
import { QUICK_STARTS } from '../../catalogue/quick-starts.ts';
import { findingsOf } from '../../findings/car.ts';
import { tireSet } from '../../findings/tire-set.ts';
import { carsOf, carWithParts } from '../../store/cars.ts';
import { overridesOf } from '../../store/overrides.ts';
import { actingIn } from '../visit.ts';
import { carOut, partOut } from './documents.ts';
import { findingOut } from './finding-document.ts';
import { carIn, noCar, seenIn } from './in-path.ts';
import { faultsProblem } from './problem.ts';
import { type Api, body, json, refusal } from './route.ts';
import { CarPath, OnQuery } from './schemas/base.ts';
import { CarIn, CarOut } from './schemas/cars.ts';
import { FindingsOut } from './schemas/findings.ts';
import { PartIn, PartOut } from './schemas/parts.ts';

const list = createRoute({
  method: 'get',
  path: '/cars',
  summary: 'All cars of the collection',
  responses: { 200: json(z.object({ cars: z.array(CarOut) }), 'By name') },
});
const create = createRoute({
  method: 'post',
  path: '/cars',
  summary: 'Add a car with its whole list of parts',
  request: { query: OnQuery, body: body(CarIn) },
  responses: { 201: json(CarOut, 'The car'), 422: refusal('What was wrong') },
});
const one = createRoute({
  method: 'get',
  path: '/cars/{carId}',
  summary: 'One car',
  request: { params: CarPath },
  responses: { 200: json(CarOut, 'The car'), 404: refusal('No such car') },
});
const findings = createRoute({
  method: 'get',
  path: '/cars/{carId}/findings',
  summary: 'The standing of every part on a day, with reasons and sources',
  request: { params: CarPath, query: OnQuery },
  responses: { 200: json(FindingsOut, 'One finding a part'), 404: refusal('No such car') },
});
const parts = createRoute({
  method: 'get',
  path: '/cars/{carId}/parts',
  summary: 'The open parts of a car',
  request: { params: CarPath },
  responses: { 200: json(z.object({ parts: z.array(PartOut) }), 'Open parts'), 404: refusal('No such car') },
});
const addPart = createRoute({
  method: 'post',
  path: '/cars/{carId}/parts',
  summary: 'Add a part, or give the first dates of one that is on the car’s list',
  request: { params: CarPath, query: OnQuery, body: body(PartIn) },
  responses: { 201: json(PartOut, 'The part'), 404: refusal('No such car'), 422: refusal('What was wrong') },
});

export const carRoutes = (app: Api): void => {
  app.openapi(list, (c) => {
    const { store, id } = seenIn(c);
    const cars = carsOf(store, id).flatMap((car) => carWithParts(store, id, car.id) ?? []);
    return c.json({ cars: cars.map(carOut) }, 200);
  });

  app.openapi(create, (c) => {
    const { store, id } = seenIn(c);
    const { quickStart, traits, name, built, builtChoice, note, km } = c.req.valid('json');
    const start = QUICK_STARTS.find(({ key }) => key === quickStart)?.traits ?? [];
    const outcome = addCarAct(store, actingIn(c.get('visit')), {
      name,
      built,
      builtChoice,
      traits: traits ?? start,
      note,
      km,
    });
    if (!outcome.ok) return faultsProblem(c, outcome.faults) as never;
    const car = carWithParts(store, id, outcome.value);
    return car ? c.json(carOut(car), 201) : (noCar(c) as never);
  });

  app.openapi(one, (c) => {
    const found = carIn(c);
    return found ? c.json(carOut(found), 200) : (noCar(c) as never);
  });

  app.openapi(findings, (c) => {
    const found = carIn(c);
    if (!found) return noCar(c) as never;
    const { store, id } = seenIn(c);
    const { on } = c.get('visit');
    const all = findingsOf(found.facts, found.parts, overridesOf(store, id), on);
    return c.json({ carId: found.car.id, on, findings: all.map(findingOut), tires: tireSet(all).notes }, 200);
  });

  app.openapi(parts, (c) => {
    const found = carIn(c);
    return found ? c.json({ parts: found.parts.map((part) => partOut(part, found.place)) }, 200) : (noCar(c) as never);
  });

  app.openapi(addPart, (c) => {
    const found = carIn(c);
    if (!found) return noCar(c) as never;
    const { dates, ...given } = c.req.valid('json');
    const { store, id } = seenIn(c);
    const outcome = addPartAct(store, actingIn(c.get('visit')), found, { ...given, claims: dates });
    if (!outcome.ok) return faultsProblem(c, outcome.faults) as never;
    const part = carWithParts(store, id, found.car.id)?.parts.find((open) => open.id === outcome.value);
    return part ? c.json(partOut(part, found.place), 201) : (noCar(c) as never);
  });
};
