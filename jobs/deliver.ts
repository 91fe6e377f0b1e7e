import { waitingLetters } from '../src/store/outbox.ts';
import { runOnce } from './job.ts';

/** Sends what waits in the outbox, with --on also what waits until the end of a later day; --dry-run only counts it. */
await runOnce(async ({ deliver, now, store }, { on, dryRun }) => {
  const dueBy = on ? new Date(`${on}T23:59:59.999Z`) : now();
  if (dryRun)
    return { job: 'deliver', dryRun, wouldTry: waitingLetters(store, now().toISOString(), dueBy.toISOString()) };
  return { job: 'deliver', dryRun, ...(await deliver(dueBy)) };
});
