import { createRoute, z } from '@hono/zod-openapi';
import { KINDS } from '../../catalogue/kinds.ts';
import { kindOut } from './kind-document.ts';
import { type Api, json } from './route.ts';
import { KindOut } from './schemas/kinds.ts';

const list = createRoute({
  method: 'get',
  path: '/kinds',
  summary: 'Every kind of part and fluid, with its interval, sources, gauges and what is asked about it',
  responses: { 200: json(z.object({ kinds: z.array(KindOut) }), 'In the order of the systems') },
});

export const kindRoutes = (app: Api): void => {
  app.openapi(list, (c) => c.json({ kinds: [...KINDS.values()].map(kindOut) }, 200));
};
