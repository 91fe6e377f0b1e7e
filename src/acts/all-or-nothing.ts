import { inTransaction, type Store } from '../store/open.ts';
import type { Outcome } from './fault.ts';

class Refused extends Error {
  readonly outcome: Extract<Outcome<never>, { ok: false }>;
  constructor(outcome: Extract<Outcome<never>, { ok: false }>) {
    super('refused');
    this.outcome = outcome;
  }
}

/** Several acts in one transaction: where one is refused, nothing of the others stays. */
export const allOrNothing = <T>(store: Store, work: (tx: Store) => Outcome<T>): Outcome<T> => {
  try {
    return inTransaction(store, (tx) => {
      const outcome = work(tx);
      if (!outcome.ok) throw new Refused(outcome);
      return outcome;
    });
  } catch (error) {
    if (error instanceof Refused) return error.outcome;
    throw error;
  }
};
