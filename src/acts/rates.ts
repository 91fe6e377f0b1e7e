import type { Rates } from '../money/cost.ts';
import type { Collection } from '../store/people.ts';

/** What work and parts cost in a collection, as it was told. */
export const ratesOf = ({ currency, perDollar, laborLow, laborHigh }: Collection): Rates => ({
  currency,
  perDollar,
  labor: { low: laborLow, high: laborHigh },
});
