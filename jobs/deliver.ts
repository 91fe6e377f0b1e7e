import { waitingLetters } from '../src/store/letters.ts';
import { runOnce } from './job.ts';

/** Sends what waits in the outbox, as at the end of another day with --on; --dry-run only says how much would be tried. */
await runOnce(async ({ deliver, now, store }, { on, dryRun }) => {
  const at = on ? new Date(`${on}T23:59:59.999Z`) : now();
  if (dryRun) return { job: 'deliver', dryRun, wouldTry: waitingLetters(store, at.toISOString()) };
  return { job: 'deliver', dryRun, ...(await deliver(at)) };
});
