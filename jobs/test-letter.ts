import { addressOf } from '../src/acts/letter-row.ts';
import { testLetter } from '../src/acts/test-letter.ts';
import { todayIn } from '../src/clock.ts';
import { findLetter } from '../src/store/letters.ts';
import { allCollections, membersOf } from '../src/store/people.ts';
import { runOnce } from './job.ts';

/** Sends a test to everybody who has an address and has not stopped the letters, and says what the mail server answered; exits 1 if one was not taken. */
await runOnce(async ({ store, site, now, deliver }, { dryRun }) => {
  const at = now();
  const tests = allCollections(store).flatMap((collection) => {
    const today = todayIn(collection.timeZone, at);
    const writing = { today, now: at.toISOString(), href: site.href };
    return membersOf(store, collection.id)
      .filter((member) => member.stoppedOn === null && addressOf(collection, member) !== null)
      .map((member) => ({
        collection,
        to: member.email ?? member.name,
        id: dryRun ? null : testLetter(store, collection, member, writing),
      }));
  });
  if (!dryRun) await deliver();
  const letters = tests.map(({ collection, id, to }) => {
    const found = id ? findLetter(store, collection.id, id) : undefined;
    return { to, state: found?.letter.state ?? null, answer: found?.attempts.at(-1)?.answer ?? null };
  });
  if (letters.some(({ state }) => state !== null && state !== 'sent')) process.exitCode = 1;
  return { job: 'test-letter', dryRun, letters };
});
