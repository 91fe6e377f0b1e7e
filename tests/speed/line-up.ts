/** The Line-up page of a large collection through the real site, beside assessing the same cars alone. */
import { siteAt } from '../../src/links.ts';
import { createLog } from '../../src/log.ts';
import type { Store } from '../../src/store/open.ts';
import { createApp } from '../../src/web/app.tsx';
import { assessAll, ON } from './assessing.ts';
import type { Fleet } from './fleet.ts';
import { inTurns, printTable, tenths, times, whole } from './measure.ts';

const CARS = 500;

export const timeLineUp = async (store: Store, fleet: Fleet): Promise<void> => {
  fleet.growTo({ cars: CARS });
  const app = createApp({
    store,
    site: siteAt(null, 3000),
    log: createLog('error'),
    now: () => new Date(`${ON}T10:00:00Z`),
    dataDir: null,
    hasMailServer: true,
    metricsToken: null,
    deliver: async () => ({ sent: 0, waiting: 0, failed: 0, calledOff: 0 }),
  });
  let bytes = 0;
  const { page, assess } = await inTurns(9, {
    page: async () => {
      const answer = await app.request('http://localhost:3000/');
      if (answer.status !== 200) throw new Error(`The line-up answered ${answer.status}: ${await answer.text()}`);
      bytes = (await answer.arrayBuffer()).byteLength;
    },
    assess: () => assessAll(store, fleet.collectionId),
  });
  printTable(
    `Line-up of ${whole(fleet.cars())} cars, ${whole(fleet.parts())} parts, ${whole(bytes / 1000)} kB of HTML`,
    [
      ['', 'ms', ': assessing'],
      ['Page', tenths(page), times(page / assess)],
      ['Assessing alone', tenths(assess), times(1)],
      ['The rest: sorting, rendering', tenths(page - assess), times((page - assess) / assess)],
    ],
  );
};
