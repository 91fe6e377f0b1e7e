import { type CarWithParts, carWithParts, findPart, type PartOnRecord } from '../store/cars.ts';
import type { Ctx } from './visit.ts';

/** The part a path names, with its car, or undefined where this collection has none. */
export const partInPath = (c: Ctx): { part: PartOnRecord; found: CarWithParts } | undefined => {
  const { store } = c.get('around');
  const { id } = c.get('visit').collection;
  const part = findPart(store, id, c.req.param('partId') ?? '');
  const found = part && carWithParts(store, id, part.carId);
  return part && found ? { part, found } : undefined;
};
