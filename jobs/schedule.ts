import { type ScheduledTask, schedule } from 'node-cron';
import { sweepCollection } from '../src/acts/sweep.ts';
import { hourIn, todayIn } from '../src/clock.ts';
import type { House } from '../src/house.ts';
import { fault } from '../src/log.ts';
import { sweptOn } from '../src/store/letters.ts';
import { allCollections } from '../src/store/people.ts';

/** Wakes every five minutes; the database decides what is due, so a missed hour or a restart loses nothing. */
export const startSchedule = (house: House): ScheduledTask => {
  const task = schedule('*/5 * * * *', () => wake(house), { noOverlap: true });
  void wake(house);
  return task;
};

/** Sweeps each collection whose letter hour has come and that was not swept today, then delivers. Never throws. */
export const wake = async ({ store, site, config, log, now, deliver }: House): Promise<void> => {
  try {
    const at = now();
    for (const collection of allCollections(store)) {
      const today = todayIn(collection.timeZone, at);
      if (hourIn(collection.timeZone, at) < config.letterHour || sweptOn(store, collection.id, today)) continue;
      const { letters, withoutAddress } = sweepCollection(store, collection, {
        today,
        now: at.toISOString(),
        href: site.href,
        dryRun: false,
      });
      log.info('swept', { collection: collection.id, letters: letters.length, withoutAddress: withoutAddress.length });
    }
    await deliver();
  } catch (error) {
    log.error('wake failed', fault(error));
  }
};
