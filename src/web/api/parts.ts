import { createRoute } from '@hono/zod-openapi';
import { changePartAct, renewPart } from '../../acts/parts.ts';
import { findPart } from '../../store/cars.ts';
import { partInPath } from '../find-part.ts';
import { actingIn, type Ctx } from '../visit.ts';
import { partOut } from './documents.ts';
import { faultsProblem, problem } from './problem.ts';
import { type Api, body, json, refusal } from './route.ts';
import { OnQuery, PartChange, PartOut, PartPath, RenewalIn } from './schemas.ts';

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
  summary: 'Record dates of a part, or change its note; all or nothing',
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
    return here ? c.json(partOut(here.part), 200) : (noPart(c) as never);
  });

  app.openapi(change, (c) => {
    const here = partInPath(c);
    if (!here) return noPart(c) as never;
    const { note, dates } = c.req.valid('json');
    const outcome = changePartAct(
      c.get('around').store,
      actingIn(c.get('visit')),
      { part: here.part, car: here.found.facts },
      { note, claims: dates },
    );
    return outcome.ok ? answer(c, here.part.id, 200) : (faultsProblem(c, outcome.faults) as never);
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
    return outcome.ok ? answer(c, outcome.value, 201) : (faultsProblem(c, outcome.faults) as never);
  });
};

const answer = (c: Ctx, partId: string, status: 200 | 201): never => {
  const part = findPart(c.get('around').store, c.get('visit').collection.id, partId);
  return (part ? c.json(partOut(part), status) : noPart(c)) as never;
};

const noPart = (c: Ctx) => problem(c, { status: 404, title: 'There is no such part in this collection' });
