import { subDays } from 'date-fns/subDays';
import { subHours } from 'date-fns/subHours';
import { type ScheduledTask, schedule } from 'node-cron';
import { sweepCollection } from '../src/acts/sweep.ts';
import { hourIn, todayIn } from '../src/clock.ts';
import { addDays, type CivilDate } from '../src/dates/civil.ts';
import type { House } from '../src/house.ts';
import { fault } from '../src/log.ts';
import { ask } from '../src/mail/post.ts';
import { checkDatabase, nightlyBackup, nightlyBackups, pruneBackups } from '../src/store/backup.ts';
import { firstAddedOn } from '../src/store/cars.ts';
import { outboxCounts } from '../src/store/letters.ts';
import { firstSwept, sweptAt } from '../src/store/outbox.ts';
import { allCollections, type Collection, membersOf } from '../src/store/people.ts';
import { isBad, JOBS, type Job, recordRun, runsOf } from '../src/store/runs.ts';

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
  const kept = [
    await sweepDue(house),
    await keeping(house, 'deliver', () => delivered(house)),
    await keeping(house, 'backup', () => copyDue(house)),
    await keeping(house, 'integrity', () => checkDue(house)),
  ];
  if (kept.every((one) => one)) await beatIfWell(house);
};

/** What went wrong, null where nothing did, or undefined where nothing was to be done. */
type Ended = string | null | undefined;

/** Runs a job and keeps how it ended; one that fails keeps none of the others from running. False where that can't be kept. */
const keeping = async (
  { log, store, now }: House,
  job: Job,
  work: () => Ended | Promise<Ended>,
  collectionId: string | null = null,
): Promise<boolean> => {
  let trouble: Ended;
  try {
    trouble = await work();
    if (trouble) log.error(`${job} had trouble`, { trouble });
  } catch (error) {
    log.error(`${job} failed`, fault(error));
    trouble = fault(error).error;
  }
  try {
    if (trouble !== undefined) recordRun(store, job, now().toISOString(), trouble, collectionId);
    return true;
  } catch (error) {
    // A full disk, say: then this is in the log alone.
    log.error('run not recorded', { job, ...fault(error) });
    return false;
  }
};

/** One collection that fails keeps the others from nothing, and another's good sweep does not hide it. */
const sweepDue = async (house: House): Promise<boolean> => {
  let collections: Collection[];
  try {
    collections = allCollections(house.store);
  } catch (error) {
    house.log.error('sweep failed', fault(error));
    return false;
  }
  let kept = true;
  for (const collection of collections)
    kept = (await keeping(house, 'sweep', () => sweepIfDue(house, collection), collection.id)) && kept;
  return kept;
};

const sweepIfDue = (house: House, collection: Collection): Ended => {
  const { store, site, log, now } = house;
  const at = now();
  const people = peopleDue(house, collection, at);
  if (people.length === 0) return undefined;
  const { letters, withoutAddress, refused, troubles } = sweepCollection(store, collection, {
    today: todayIn(collection.timeZone, at),
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
  if (troubles.length > 0) log.error('sweep had trouble', { trouble: troubles.join('; ') });
  // The sweep has kept how it went with what it wrote.
  return undefined;
};

/** Whose hour has come and was not swept yet, by the collection's clock; before it, whose hour of yesterday went by without. */
const peopleDue = ({ store, config }: House, { id, timeZone }: Collection, at: Date): string[] => {
  const today = todayIn(timeZone, at);
  const yesterday = addDays(today, -1);
  const firstAdded = firstAddedOn(store, id);
  return membersOf(store, id)
    .filter((member) => {
      const hour = member.hour ?? config.letterHour;
      // A sweep before the hour is not that hour's: what is recorded in between still goes out.
      const isMissing = (day: CivilDate): boolean => {
        const swept = sweptAt(store, id, member.id, day);
        return swept === null || hourIn(timeZone, new Date(swept)) < hour;
      };
      if (hourIn(timeZone, at) >= hour) return isMissing(today);
      // A machine that sleeps at their hour is up at another.
      const since = firstSwept(store, id, member.id) ?? firstAdded;
      const missed = since !== null && since <= yesterday && isMissing(yesterday);
      return missed && sweptAt(store, id, member.id, today) === null;
    })
    .map((member) => member.id);
};

/** A letter that has waited for a day is trouble, long before it is given up. */
const delivered = async ({ deliver, store, now }: House): Promise<Ended> => {
  await deliver();
  const { oldest } = outboxCounts(store);
  return oldest !== null && oldest < subDays(now(), 1).toISOString()
    ? 'A letter has been waiting for more than a day; the Letters page has what was answered.'
    : null;
};

/** Not again within the hour: what stopped it is seldom gone in five minutes. */
const isResting = ({ store, now }: House, job: Job): boolean => {
  const run = runsOf(store)[job];
  return isBad(run) && isWithin(run.badAt, subHours(now(), 1), now());
};

const copyDue = async (house: House): Promise<Ended> => {
  const { config, now, log } = house;
  const today = todayIn(config.timeZone, now());
  const made = nightlyBackups(config.dataDir).some(({ day }) => day === today);
  if (hourIn(config.timeZone, now()) < NIGHT || made || isResting(house, 'backup')) return undefined;
  const { bytes, rows } = await nightlyBackup(config.dataDir, today);
  pruneBackups(config.dataDir);
  log.info('backed up', { day: today, bytes, rows });
  return null;
};

const checkDue = (house: House): Ended => {
  const { store, now, config } = house;
  const { goodAt } = runsOf(store).integrity;
  const fresh = isWithin(goodAt, subDays(now(), 7), now());
  if (hourIn(config.timeZone, now()) < NIGHT || fresh || isResting(house, 'integrity')) return undefined;
  return checkDatabase(store);
};

/** An instant ahead was written by a clock that was wrong: it holds nothing up. */
const isWithin = (instant: string | null, from: Date, to: Date): boolean =>
  instant !== null && instant > from.toISOString() && instant <= to.toISOString();

/** Tells a watcher that all is well. It is only told, never asked for anything. */
const beatIfWell = async ({ config, log, store }: House): Promise<void> => {
  const runs = runsOf(store);
  if (!config.heartbeatUrl || JOBS.some((job) => isBad(runs[job]))) return;
  try {
    const { status } = await ask(config.heartbeatUrl, { method: 'GET', allowPrivate: true });
    if (status >= 400) log.warn('heartbeat not taken', { status });
  } catch (error) {
    log.warn('heartbeat not heard', { error: fault(error).error });
  }
};
