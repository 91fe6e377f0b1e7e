/** The conditions that bring a step into the plan of a return, or make more of it, as data. */
import type { Trait } from '../catalogue/traits.ts';
import type { LeakPlace } from './leaks.ts';
import type { LookKey } from './looks.ts';
import type { PutAway, Stood, WhyParked, Years } from './sleep.ts';

/** All that is named must hold; of the lists for place, story and answers one entry is enough. */
export interface When {
  traits?: readonly Trait[];
  without?: readonly Trait[];
  /** By the row the plan is made by: from so many years, and under so many. */
  asleep?: { from?: Years; under?: Years };
  stood?: readonly Stood[];
  putAway?: readonly PutAway[];
  why?: readonly WhyParked[];
  /** One of these kinds is on the car and that old at its oldest, or undated; or due, past or unproven by its own row. */
  part?: { kinds: readonly string[]; months: number } | { kinds: readonly string[]; asks: true };
  /** The last answer to this look is one of these. */
  seen?: { look: LookKey; is: readonly string[] };
  /** Nobody has answered this look. */
  unseen?: LookKey;
  /** Drops form or fall at one of these places, by the last survey of it. */
  leak?: readonly LeakPlace[];
}
