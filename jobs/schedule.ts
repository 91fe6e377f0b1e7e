import { subDays } from 'date-fns/subDays';
import { subHours } from 'date-fns/subHours';
import { type ScheduledTask, schedule } from 'node-cron';
import { sweepCollection } from '../src/acts/sweep.ts';
import { hourIn, todayIn } from '../src/clock.ts';
import type { House } from '../src/house.ts';
import { fault } from '../src/log.ts';
import { ask } from '../src/mail/post.ts';
import { checkDatabase, nightlyBackup, nightlyBackups, pruneBackups } from '../src/store/backup.ts';
import { sweptAt } from '../src/store/outbox.ts';
import { allCollections, type Collection, membersOf } from '../src/store/people.ts';
import { isBad, type Job, recordRun, runsOf } from '../src/store/runs.ts';

/** Hour of the server's own zone from which the night's copy is made. */
const NIGHT = 3;

/** Wakes every five minutes; the database decides what is due, so a missed hour or a restart loses nothing. */
export const startSchedule = (house: House): ScheduledTask => {
  const task = schedule('*/5 * * * *', () => wake(house), { noOverlap: true });
  void wake(house);
  return task;
};

/** Writes the letters of each person whose hour has come, sends what waits, makes the night's copy. Never throws. */
export const wake = async (house: House): Promise<void> => {
  const ends = [
    await keeping(house, 'sweep', () => sweepDue(house)),
    await keeping(house, 'deliver', () => delivered(house)),
    await keeping(house, 'backup', () => copyDue(house)),
    await keeping(house, 'integrity', () => checkDue(house)),
  ];
  if (ends.every((good) => good)) await beat(house);
};

/** What went wrong, null where nothing did, or undefined where nothing was to be done. */
type Ended = string | null | undefined;

/** Runs a job and keeps how it ended; one that fails keeps none of the others from running. Answers false for a bad run. */
const keeping = async (house: House, job: Job, work: () => Ended | Promise<Ended>): Promise<boolean> => {
  const { log, store, now } = house;
  let trouble: Ended;
  try {
    trouble = await work();
    if (trouble) log.error(`${job} had trouble`, { trouble });
  } catch (error) {
    log.error(`${job} failed`, fault(error));
    trouble = fault(error).error;
  }
  try {
    if (trouble !== undefined) recordRun(store, job, now().toISOString(), trouble);
  } catch (error) {
    // A full disk, say: then this is in the log alone.
    log.error('run not recorded', { job, ...fault(error) });
    return false;
  }
  return !trouble;
};

const sweepDue = (house: House): Ended => {
  const { store } = house;
  const troubles: string[] = [];
  let swept = false;
  for (const collection of allCollections(store))
    try {
      const found = sweepIfDue(house, collection, house.now());
      swept ||= found !== null;
      troubles.push(...(found ?? []));
    } catch (error) {
      // One collection that fails keeps the others from nothing.
      house.log.error('sweep failed', { collection: collection.id, ...fault(error) });
      troubles.push(`${collection.name}: ${fault(error).error}`);
    }
  return troubles.length > 0 ? troubles.join('; ') : swept ? null : undefined;
};

/** The troubles of the sweep, or null where nobody's hour has come. */
const sweepIfDue = (house: House, collection: Collection, at: Date): string[] | null => {
  const { store, site, log } = house;
  const today = todayIn(collection.timeZone, at);
  const people = peopleDue(house, collection, at);
  if (people.length === 0) return null;
  const { letters, withoutAddress, refused, troubles } = sweepCollection(store, collection, {
    today,
    now: at.toISOString(),
    href: site.href,
    dryRun: false,
    people,
  });
  log.info('swept', {
    collection: collection.id,
    people: people.length,
    letters: letters.length,
    withoutAddress: withoutAddress.length,
    refused: refused.length,
  });
  return troubles;
};

/** Whose hour has come and whose morning was not swept yet, by the collection's clock. */
const peopleDue = ({ store, config }: House, { id, timeZone }: Collection, at: Date): string[] => {
  const today = todayIn(timeZone, at);
  const hourOf = (instant: Date): number => hourIn(timeZone, instant);
  return membersOf(store, id)
    .filter((member) => {
      const hour = member.hour ?? config.letterHour;
      if (hourOf(at) < hour) return false;
      const swept = sweptAt(store, id, member.id, today);
      // A sweep by hand before the hour is no morning's sweep: what is recorded in between still goes out today.
      return swept === null || hourOf(new Date(swept)) < hour;
    })
    .map((member) => member.id);
};

const delivered = async ({ deliver }: House): Promise<Ended> => {
  await deliver();
  return null;
};

/** Not again within the hour: what stopped it is seldom gone in five minutes. */
const isResting = ({ store, now }: House, job: Job): boolean => {
  const run = runsOf(store)[job];
  return isBad(run) && run.badAt !== null && run.badAt > subHours(now(), 1).toISOString();
};

const copyDue = async (house: House): Promise<Ended> => {
  const { config, now, log } = house;
  const today = todayIn(config.timeZone, now());
  const [last] = nightlyBackups(config.dataDir);
  if (hourIn(config.timeZone, now()) < NIGHT || (last && last.day >= today) || isResting(house, 'backup'))
    return undefined;
  const { bytes, rows } = await nightlyBackup(config.dataDir, today);
  pruneBackups(config.dataDir);
  log.info('backed up', { day: today, bytes, rows });
  return null;
};

const checkDue = (house: House): Ended => {
  const { store, now, config } = house;
  const { goodAt } = runsOf(store).integrity;
  const fresh = goodAt !== null && goodAt > subDays(now(), 7).toISOString();
  if (hourIn(config.timeZone, now()) < NIGHT || fresh || isResting(house, 'integrity')) return undefined;
  return checkDatabase(store);
};

/** Tells a watcher that all went well. It is only told, never asked for anything. */
const beat = async ({ config, log }: House): Promise<void> => {
  if (!config.heartbeatUrl) return;
  try {
    const { status } = await ask(config.heartbeatUrl, { method: 'GET', allowPrivate: true });
    if (status >= 400) log.warn('heartbeat not taken', { status });
  } catch (error) {
    log.warn('heartbeat not heard', { error: fault(error).error });
  }
};
