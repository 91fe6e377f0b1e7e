import { todayIn } from '../src/clock.ts';
import { BackupError, nightlyBackup, pruneBackups } from '../src/store/backup.ts';
import { recordRun } from '../src/store/runs.ts';
import { runOnce } from './job.ts';

/** Whoever runs it by hand, or a timer does, must hear that there is no copy. */
const failed = (day: string, trouble: string): object => {
  process.exitCode = 1;
  return { job: 'backup', day, trouble };
};

/** Makes the night's copy of the database now, in place of one of the same day; --dry-run only says which day's. */
await runOnce(async ({ config, store, now }, { on, dryRun }) => {
  const at = now();
  const day = todayIn(config.timeZone, at);
  if (on && on !== day) return failed(day, `A copy is of this moment and bears its day, ${day}. Leave --on out.`);
  if (dryRun) return { job: 'backup', dryRun, day };
  try {
    const made = await nightlyBackup(config.dataDir, day);
    pruneBackups(config.dataDir);
    recordRun(store, 'backup', at.toISOString(), null);
    return { job: 'backup', dryRun, ...made };
  } catch (error) {
    if (!(error instanceof BackupError)) throw error;
    recordRun(store, 'backup', at.toISOString(), error.message);
    return failed(day, error.message);
  }
});
