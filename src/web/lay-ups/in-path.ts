import { type StayHere, stayHere } from '../../acts/stays.ts';
import { at, type Ctx } from '../visit.ts';

/** The lay-up a path names, as on the day of the visit, or undefined where this collection has none. */
export const stayInPath = (c: Ctx): StayHere | undefined => {
  const { collection, on } = c.get('visit');
  return stayHere(c.get('around').store, collection.id, c.req.param('layUpId') ?? '', on);
};

/** Whether it has ended by the day of the visit: then it is read, and no form is offered. */
export const isClosed = (c: Ctx, { record: { row } }: StayHere): boolean =>
  row.closedOn !== null && row.closedOn <= c.get('visit').on;

export const toRecord = (c: Ctx, { record: { row } }: StayHere) =>
  c.redirect(at(c.get('visit'), `/lay-ups/${row.id}`), 303);
