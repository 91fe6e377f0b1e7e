import { todayIn } from '../src/clock.ts';
import { nightlyBackup, pruneBackups } from '../src/store/backup.ts';
import { recordRun } from '../src/store/runs.ts';
import { runOnce } from './job.ts';

/** Makes the night's copy of the database now, in place of one of the same day; --dry-run only says where. */
await runOnce(async ({ config, store, now }, { on, dryRun }) => {
  const day = on ?? todayIn(config.timeZone, now());
  if (dryRun) return { job: 'backup', dryRun, day };
  const made = await nightlyBackup(config.dataDir, day);
  pruneBackups(config.dataDir);
  recordRun(store, 'backup', now().toISOString(), null);
  return { job: 'backup', dryRun, ...made };
});
