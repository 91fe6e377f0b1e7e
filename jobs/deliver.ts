import { TZDate } from '@date-fns/tz/date';
import { endOfDay } from 'date-fns/endOfDay';
import { due } from '../src/mail/deliver.ts';
import { waitingLetters } from '../src/store/outbox.ts';
import { runOnce } from './job.ts';

/** Sends what waits in the outbox, with --on also what waits until the end of a later day; --dry-run only counts it. */
await runOnce(async ({ config, deliver, now, store }, { on, dryRun }) => {
  const dueBy = on ? new Date(endOfDay(new TZDate(`${on}T12:00:00`, config.timeZone)).getTime()) : now();
  if (dryRun) return { job: 'deliver', dryRun, wouldTry: waitingLetters(store, due(now(), dueBy)) };
  return { job: 'deliver', dryRun, ...(await deliver(dueBy)) };
});
