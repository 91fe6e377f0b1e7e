/** Starts everything: store, web pages, and the schedule that writes and sends letters. The only wiring. */
import type { Server } from 'node:http';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { serve } from '@hono/node-server';
import { startSchedule } from '../jobs/schedule.ts';
import { demoCollection } from '../seeds/demo.ts';
import { loadDemo } from './acts/load-demo.ts';
import { todayIn } from './clock.ts';
import { ConfigError } from './config.ts';
import { type House, OWNER_ONLY, openHouse } from './house.ts';
import { siteAt } from './links.ts';
import { SchemaError } from './store/migrate.ts';
import { createApp } from './web/app.tsx';

/** How long open requests may take to finish after SIGTERM, in milliseconds. */
const GRACE = 5_000;
/** How long a letter on its way may take, in milliseconds. */
const LETTER_GRACE = 20_000;

const demo = process.argv.includes('--demo');

const open = (): House => {
  if (!demo) return openHouse(process.env);
  // The demo lives in a folder of its own: nobody's own cars are mixed with invented ones.
  const house = openHouse(
    { ...process.env, DATA_DIR: join(process.env['DATA_DIR'] || 'data', 'demo') },
    { empty: false },
  );
  const { timeZone } = house.config;
  const today = todayIn(timeZone, house.now());
  const told = demoCollection(today);
  // In the visitor's own time zone, so that its days begin and its letters come when theirs do.
  loadDemo(house.store, { ...told, collection: { ...told.collection, timeZone } }, today);
  return house;
};

const start = (house: House): void => {
  const { config, log } = house;
  let schedule: ReturnType<typeof startSchedule> | undefined;
  const server = serve(
    { fetch: (request) => app.fetch(request), port: config.port, hostname: config.host },
    ({ port }) => {
      house.site = siteAt(config.baseUrl, port);
      app = createApp(house);
      schedule = startSchedule(house);
      log.info('listening', { address: house.site.href('/'), port, dataDir: config.dataDir });
      console.error(`Standstill is at ${house.site.href('/')}  (stop it with Ctrl-C)`);
    },
  ) as Server;
  server.on('error', (error: NodeJS.ErrnoException) => {
    console.error(
      error.code === 'EADDRINUSE'
        ? `Port ${config.port} is taken. Set PORT to another, or stop what uses it.`
        : `The server could not start: ${error.message}`,
    );
    process.exit(1);
  });

  let stopping = false;
  const stop = (signal: string): void => {
    // A terminal's Ctrl-C arrives twice, once by way of npm: the second must not cut the first short.
    if (stopping) return;
    stopping = true;
    log.info('stopping', { signal });
    house.stopping = true;
    void schedule?.stop();
    const requests = new Promise<void>((resolve) => server.close(() => resolve()));
    server.closeIdleConnections();
    setTimeout(() => server.closeAllConnections(), GRACE).unref();
    // A letter under way is finished: cut off, it might be taken by the mail server and yet go out again.
    void Promise.all([requests, Promise.race([house.idle(), wait(LETTER_GRACE)])]).then(() => {
      house.close();
      log.info('stopped');
      process.exit(0);
    });
  };
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, stop);
};

process.umask(OWNER_ONLY);
let app: ReturnType<typeof createApp>;
try {
  start(open());
} catch (error) {
  if (!(error instanceof ConfigError || error instanceof SchemaError)) throw error;
  console.error(error.message);
  process.exit(1);
}
