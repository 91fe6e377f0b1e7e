import { type StayHere, stayHere } from '../../acts/stays.ts';
import { at, type Ctx } from '../visit.ts';

/** The lay-up a path names, as on the day of the visit, or undefined where this collection has none. */
export const stayInPath = (c: Ctx): StayHere | undefined => {
  const { collection, on } = c.get('visit');
  return stayHere(c.get('around').store, collection.id, c.req.param('layUpId') ?? '', on);
};

/** Once it has ended no form is offered: only its record. */
export const toRecord = (c: Ctx, { record: { row } }: StayHere) =>
  c.redirect(at(c.get('visit'), `/lay-ups/${row.id}`), 303);
