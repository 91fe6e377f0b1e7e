/** What is heard of a car that stands: what was read, and what ages or fails by standing. The rest waits until it is back. */
import type { Owed, Stage } from './owed.ts';

/** Kinds whose day or estimate can’t wait for the return. */
const WATCHED: ReadonlySet<string> = new Set([
  'battery-flooded',
  'battery-agm',
  'battery-lithium',
  'maintainer',
  'desiccant',
  'trim-care',
  'coolant-iat',
  'coolant-oat',
  'lpg-tank',
  'cng-tank',
  'extinguisher',
]);

/** Calendar news of these comes with the rounds anyway: only what a reading or an estimate says is heard. */
const BY_ROUND: ReadonlySet<string> = new Set([
  'battery-flooded',
  'battery-agm',
  'battery-lithium',
  'maintainer',
  'desiccant',
  'trim-care',
]);

const isCalendar = (stage: Stage): boolean => stage === 'look' || stage === 'due' || stage === 'past';
const isRead = (stage: Stage): boolean => stage === 'watch' || stage === 'act';

/** The news of a standing car that matters now; each stage by itself, so that what waits is told in full later. */
export const heardWhileStanding = (owed: readonly Owed[]): Owed[] =>
  owed.flatMap((finding) => {
    const key = finding.kind.key;
    const [first, ...more] = finding.told.filter(
      (stage) => isRead(stage) || (WATCHED.has(key) && !(isCalendar(stage) && BY_ROUND.has(key))),
    );
    return first ? [{ ...finding, told: [first, ...more] }] : [];
  });
