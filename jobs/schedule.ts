import { type ScheduledTask, schedule } from 'node-cron';
import { sweepCollection } from '../src/acts/sweep.ts';
import { hourIn, todayIn } from '../src/clock.ts';
import type { House } from '../src/house.ts';
import { fault } from '../src/log.ts';
import { sweptAt } from '../src/store/letters.ts';
import { allCollections, type Collection } from '../src/store/people.ts';

/** Wakes every five minutes; the database decides what is due, so a missed hour or a restart loses nothing. */
export const startSchedule = (house: House): ScheduledTask => {
  const task = schedule('*/5 * * * *', () => wake(house), { noOverlap: true });
  void wake(house);
  return task;
};

/** Sweeps each collection whose letter hour has come and that was not swept today, then delivers. Never throws. */
export const wake = async (house: House): Promise<void> => {
  const { store, log, now, deliver } = house;
  attempt(house, 'sweep failed', () => {
    for (const collection of allCollections(store))
      attempt(house, 'sweep failed', () => sweepIfDue(house, collection, now()));
  });
  try {
    await deliver();
  } catch (error) {
    log.error('delivery failed', fault(error));
  }
};

/** One collection that fails keeps neither the others nor the mail from going out. */
const attempt = ({ log }: House, event: string, work: () => void): void => {
  try {
    work();
  } catch (error) {
    log.error(event, fault(error));
  }
};

const sweepIfDue = ({ store, site, config, log }: House, collection: Collection, at: Date): void => {
  const today = todayIn(collection.timeZone, at);
  const swept = sweptAt(store, collection.id, today);
  const hourOf = (instant: Date): number => hourIn(collection.timeZone, instant);
  // A sweep by hand before the hour is no morning's sweep: what is recorded in between still goes out today.
  if (hourOf(at) < config.letterHour || (swept && hourOf(new Date(swept)) >= config.letterHour)) return;
  const { letters, withoutAddress } = sweepCollection(store, collection, {
    today,
    now: at.toISOString(),
    href: site.href,
    dryRun: false,
  });
  log.info('swept', { collection: collection.id, letters: letters.length, withoutAddress: withoutAddress.length });
};
