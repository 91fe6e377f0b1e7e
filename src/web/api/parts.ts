import { createRoute } from '@hono/zod-openapi';
import type { AnswerGiven } from '../../acts/details.ts';
import { changePartAct, renewPart } from '../../acts/parts.ts';
import { findPart } from '../../store/cars.ts';
import type { PlaceRow } from '../../store/places.ts';
import { partInPath } from '../find-part.ts';
import { actingIn, type Ctx } from '../visit.ts';
import { partOut } from './documents.ts';
import { noPart } from './in-path.ts';
import { faultsProblem } from './problem.ts';
import { type Api, body, json, refusal } from './route.ts';
import { OnQuery, PartPath } from './schemas/base.ts';
import { PartChange, PartOut, RenewalIn } from './schemas/parts.ts';

const one = createRoute({
  method: 'get',
  path: '/parts/{partId}',
  summary: 'One part, open or closed',
  request: { params: PartPath },
  responses: { 200: json(PartOut, 'The part'), 404: refusal('No such part') },
});
const change = createRoute({
  method: 'patch',
  path: '/parts/{partId}',
  summary: 'Record dates of a part, answer what is asked about it, or change its note; all or nothing',
  request: { params: PartPath, query: OnQuery, body: body(PartChange) },
  responses: {
    200: json(PartOut, 'The part as it is now'),
    404: refusal('No such part'),
    422: refusal('What was wrong'),
  },
});
const renew = createRoute({
  method: 'post',
  path: '/parts/{partId}/replacement',
  summary: 'Close a part and open its successor',
  request: { params: PartPath, query: OnQuery, body: body(RenewalIn) },
  responses: { 201: json(PartOut, 'The new part'), 404: refusal('No such part'), 422: refusal('What was wrong') },
});

export const partRoutes = (app: Api): void => {
  app.openapi(one, (c) => {
    const here = partInPath(c);
    return here ? c.json(partOut(here.part, here.found.place), 200) : (noPart(c) as never);
  });

  app.openapi(change, (c) => {
    const here = partInPath(c);
    if (!here) return noPart(c) as never;
    const { note, dates, details } = c.req.valid('json');
    const outcome = changePartAct(
      c.get('around').store,
      actingIn(c.get('visit')),
      { part: here.part, car: here.found.facts },
      { note, claims: dates, details: details && answersIn(details) },
    );
    return outcome.ok ? answer(c, here.part.id, here.found.place, 200) : (faultsProblem(c, outcome.faults) as never);
  });

  app.openapi(renew, (c) => {
    const here = partInPath(c);
    if (!here) return noPart(c) as never;
    const { why, note, dates } = c.req.valid('json');
    const outcome = renewPart(
      c.get('around').store,
      actingIn(c.get('visit')),
      { part: here.part, car: here.found.facts },
      { why, note, claims: dates },
    );
    return outcome.ok ? answer(c, outcome.value, here.found.place, 201) : (faultsProblem(c, outcome.faults) as never);
  });
};

const answer = (c: Ctx, partId: string, place: PlaceRow | undefined, status: 200 | 201): never => {
  const part = findPart(c.get('around').store, c.get('visit').collection.id, partId);
  return (part ? c.json(partOut(part, place), status) : noPart(c)) as never;
};

/** Answers as typed; null forgets one, as a field left empty does. */
const answersIn = (details: Readonly<Record<string, string | number | null>>): Record<string, AnswerGiven> =>
  Object.fromEntries(Object.entries(details).map(([key, told]) => [key, { typed: String(told ?? ''), unit: '' }]));
