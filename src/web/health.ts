import { Hono } from 'hono';
import { lastFinishedSweep } from '../store/letters.ts';
import { allCollections } from '../store/people.ts';
import type { Surroundings } from './visit.ts';

/** /healthz: the process answers. /readyz: the database answers too, and when it was last swept. */
export const health = ({ store }: Surroundings): Hono =>
  new Hono()
    .get('/healthz', (c) => c.json({ status: 'up' }))
    .get('/readyz', (c) => {
      try {
        return c.json({
          status: 'ready',
          collections: allCollections(store).length,
          lastSweep: lastFinishedSweep(store),
        });
      } catch {
        return c.json({ status: 'the database does not answer' }, 503);
      }
    });
