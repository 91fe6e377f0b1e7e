import { createRoute } from '@hono/zod-openapi';
import type { Fault } from '../../acts/fault.ts';
import { recordReadingsAct } from '../../acts/record-reading.ts';
import { withdrawReading } from '../../store/readings.ts';
import { partInPath } from '../find-part.ts';
import { closedMessage } from '../pages/closed-part.tsx';
import { actingIn, type Ctx } from '../visit.ts';
import { partOut } from './documents.ts';
import { noPart } from './in-path.ts';
import { faultsProblem, problem } from './problem.ts';
import { type Api, body, json, refusal } from './route.ts';
import { OnQuery, PartPath, ReadingPath } from './schemas/base.ts';
import { PartOut, ReadingIn, WithdrawalIn } from './schemas/parts.ts';

const read = createRoute({
  method: 'post',
  path: '/parts/{partId}/readings',
  summary: 'Record what a gauge showed; what is seldom seen is asked back, with “sure” to choose',
  request: { params: PartPath, query: OnQuery, body: body(ReadingIn) },
  responses: {
    201: json(PartOut, 'The part with the reading, judged'),
    404: refusal('No such part'),
    422: refusal('What was wrong'),
  },
});
const takeBack = createRoute({
  method: 'post',
  path: '/parts/{partId}/readings/{readingId}/withdrawal',
  summary: 'Take back a reading that was a slip; send an empty document',
  request: { params: ReadingPath, query: OnQuery, body: body(WithdrawalIn) },
  responses: {
    200: json(PartOut, 'The part without it'),
    404: refusal('No such part, or no such reading of it'),
    422: refusal('What was wrong'),
  },
});

export const readingRoutes = (app: Api): void => {
  app.openapi(read, (c) => {
    const here = partInPath(c);
    if (!here) return noPart(c) as never;
    const { on } = c.get('visit');
    const { value, unit, day = on, warmth = '', ...rest } = c.req.valid('json');
    const given = {
      ...rest,
      partId: here.part.id,
      typed: withUnit(String(value), unit),
      unit: '',
      day,
      warmth: String(warmth),
    };
    const outcome = recordReadingsAct(c.get('around').store, actingIn(c.get('visit')), here.found, [given], () => '');
    return outcome.ok ? partNow(c, 201) : (faultsProblem(c, outcome.faults.map(asField)) as never);
  });

  app.openapi(takeBack, (c) => {
    const here = partInPath(c);
    if (!here) return noPart(c) as never;
    const { readingId } = c.req.valid('param');
    if (!here.part.readings.some(({ id }) => id === readingId))
      return problem(c, { status: 404, title: 'There is no such reading of this part' }) as never;
    if (here.part.closedOn) return problem(c, { status: 422, title: closedMessage(here.part) }) as never;
    const { collection, on } = c.get('visit');
    withdrawReading(c.get('around').store, collection.id, here.part.id, readingId, on);
    return partNow(c, 200);
  });
};

/** A unit joins the number, unless one is written behind it: so one that its gauge has no use for is never passed over. */
const withUnit = (typed: string, unit = ''): string => (/\d$/.test(typed) ? `${typed} ${unit}`.trim() : typed);

/** The number typed is the document’s value. */
const asField = (fault: Fault): Fault => (fault.field === 'typed' ? { ...fault, field: 'value' } : fault);

const partNow = (c: Ctx, status: 200 | 201): never => {
  const here = partInPath(c);
  return (here ? c.json(partOut(here.part, here.found.place), status) : noPart(c)) as never;
};
