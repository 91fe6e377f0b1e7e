/** What a path of the API names, in the collection the request sees, and the answers where there is none. */
import { carWithParts } from '../../store/cars.ts';
import { findPlace, type PlaceRow } from '../../store/places.ts';
import type { Ctx } from '../visit.ts';
import { problem } from './problem.ts';

export const seenIn = (c: Ctx) => ({ store: c.get('around').store, id: c.get('visit').collection.id });

export const carIn = (c: Ctx) => {
  const { store, id } = seenIn(c);
  return carWithParts(store, id, c.req.param('carId') ?? '');
};

export const placeIn = (c: Ctx): PlaceRow | undefined => {
  const { store, id } = seenIn(c);
  return findPlace(store, id, c.req.param('placeId') ?? '');
};

export const noCar = (c: Ctx) => problem(c, { status: 404, title: 'There is no such car in this collection' });
export const noPart = (c: Ctx) => problem(c, { status: 404, title: 'There is no such part in this collection' });
export const noPlace = (c: Ctx) => problem(c, { status: 404, title: 'There is no such place in this collection' });
