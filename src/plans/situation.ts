import type { Finding } from '../findings/assess.ts';
import type { Stay } from './stay.ts';

/** All that a plan is made from. Findings are of the place it stands in, on the parking day and on the last day planned. */
export interface Situation extends Outcome {
  stay: Stay;
  traits: ReadonlySet<string>;
  atParking: readonly Finding[];
  atReturn: readonly Finding[];
  /** The usual sides as they were when it was planned: a stay that grows longer does not change what was done. */
  planned: Readonly<Partial<Record<string, string>>>;
  /** What rounds found and nobody has seen put right, in words. */
  found: readonly string[];
}

/** What became of the steps of the lay-up, as the wake-up asks; all empty while the lay-up itself is planned. */
export interface Outcome {
  done: ReadonlySet<string>;
  /** Left out, or not ticked. */
  undone: ReadonlySet<string>;
  /** Not ticked either way: it may have been done all the same. */
  untold: ReadonlySet<string>;
  /** Kinds that the lay-up is still to renew: what their old dates say of the return does not hold. */
  renewed: ReadonlySet<string>;
}

export const NOTHING_TICKED: Outcome = {
  done: new Set(),
  undone: new Set(),
  untold: new Set(),
  renewed: new Set(),
};
