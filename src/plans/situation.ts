import type { Finding } from '../findings/assess.ts';
import type { Stay } from './stay.ts';

/** All that a plan is made from. Findings are of the place it stands in, on the parking day and on the last day planned. */
export interface Situation {
  stay: Stay;
  traits: ReadonlySet<string>;
  atParking: readonly Finding[];
  atReturn: readonly Finding[];
  /** Lay-up steps by what became of them; empty while the lay-up itself is planned. */
  done: ReadonlySet<string>;
  undone: ReadonlySet<string>;
  /** Kinds that the lay-up is still to renew: what their old dates say of the return does not hold. */
  renewed: ReadonlySet<string>;
}
