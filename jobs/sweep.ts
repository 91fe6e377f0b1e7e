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
  return { job: 'sweep', dryRun, collections };
});
