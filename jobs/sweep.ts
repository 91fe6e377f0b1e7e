import { sweepCollection } from '../src/acts/sweep.ts';
import { todayIn } from '../src/clock.ts';
import { allCollections } from '../src/store/people.ts';
import { runOnce } from './job.ts';

/** Writes the letters owed in every collection into the outbox. */
await runOnce(({ store, site, now }, { on, dryRun }) => {
  const at = now();
  const collections = allCollections(store).map((collection) => ({
    collection: collection.name,
    ...sweepCollection(store, collection, {
      today: on ?? todayIn(collection.timeZone, at),
      now: at.toISOString(),
      href: site.href,
      dryRun,
    }),
  }));
  // Whoever runs it by hand, or a timer does, must hear that not everything could be reckoned.
  if (collections.some(({ troubles }) => troubles.length > 0)) process.exitCode = 1;
  return { job: 'sweep', dryRun, collections };
});
