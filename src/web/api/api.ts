/** The JSON API under /api/v1: what the pages do, described by its own openapi.json. */
import { OpenAPIHono } from '@hono/zod-openapi';
import type { Env } from '../visit.ts';
import { carRoutes } from './cars.ts';
import { dateRoutes } from './dates.ts';
import { deskRoutes } from './desks.ts';
import { kindRoutes } from './kinds.ts';
import { layUpRoutes } from './lay-ups.ts';
import { partRoutes } from './parts.ts';
import { placeRoutes } from './places.ts';
import { issuesProblem, problem } from './problem.ts';
import { readingRoutes } from './readings.ts';
import { revivalRoutes } from './revivals.ts';
import type { Api } from './route.ts';

export const api = (): Api => {
  const app = new OpenAPIHono<Env>({
    defaultHook: (result, c) => (result.success ? undefined : issuesProblem(c, result.error)),
  });
  // Without a content type a request counts as one without a document, and every change here needs one.
  app.use(async (c, next) =>
    ['GET', 'HEAD', 'OPTIONS'].includes(c.req.method) || c.req.header('content-type')
      ? await next()
      : problem(c, { status: 415, title: 'Send a document, as application/json' }),
  );
  dateRoutes(app);
  carRoutes(app);
  partRoutes(app);
  readingRoutes(app);
  placeRoutes(app);
  layUpRoutes(app);
  revivalRoutes(app);
  deskRoutes(app);
  kindRoutes(app);
  app.get('/openapi.json', (c) =>
    c.json(
      app.getOpenAPI31Document({
        openapi: '3.1.0',
        info: {
          title: 'Standstill',
          version: '1',
          description:
            'Dates, ages, readings and standings of the parts of cars, and desks to reckon without one. Every request sees one collection: the first, or the one named by ?collection=. Every answer can be had as on another day with ?on=.',
        },
        servers: [{ url: `${c.get('visit').site.base}/api/v1` }],
      }),
    ),
  );
  return app;
};
