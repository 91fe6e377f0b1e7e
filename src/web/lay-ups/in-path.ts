import { type StayHere, stayHere } from '../../acts/stays.ts';
import type { Ctx } from '../visit.ts';

/** The lay-up a path names, as on the day of the visit, or undefined where this collection has none. */
export const stayInPath = (c: Ctx): StayHere | undefined => {
  const { collection, on } = c.get('visit');
  return stayHere(c.get('around').store, collection.id, c.req.param('layUpId') ?? '', on);
};
