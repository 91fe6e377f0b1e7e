import { TZDate } from '@date-fns/tz/date';
import { format } from 'date-fns/format';
import { todayIn } from '../src/clock.ts';
import { BackupError, nightlyBackup, nightlyBackups, pruneBackups } from '../src/store/backup.ts';
import { recordRun } from '../src/store/runs.ts';
import { runOnce } from './job.ts';

/** A copy made by hand must not take the place of the night's, which may be the one that is needed. */
const instantName = (at: Date, timeZone: string): string => format(new TZDate(at, timeZone), "yyyy-MM-dd'T'HHmmss");

/** Whoever runs it by hand, or a timer does, must hear that there is no copy. */
const failed = (day: string, trouble: string): object => {
  process.exitCode = 1;
  return { job: 'backup', day, trouble };
};

/** Copies the database now: as the day's copy, or beside it where there is one; --dry-run only says which day's. */
await runOnce(async ({ config, store, now }, { on, dryRun }) => {
  const at = now();
  const day = todayIn(config.timeZone, at);
  if (on && on !== day) return failed(day, `A copy is of this moment and bears its day, ${day}. Leave --on out.`);
  if (dryRun) return { job: 'backup', dryRun, day };
  try {
    const isMade = nightlyBackups(config.dataDir).some((copy) => copy.day === day);
    const made = await nightlyBackup(config.dataDir, day, isMade ? instantName(at, config.timeZone) : day);
    pruneBackups(config.dataDir);
    recordRun(store, 'backup', at.toISOString(), null);
    return { job: 'backup', dryRun, ...made };
  } catch (error) {
    if (!(error instanceof BackupError)) throw error;
    recordRun(store, 'backup', at.toISOString(), error.message);
    return failed(day, error.message);
  }
});
