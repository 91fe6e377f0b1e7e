/** What a dollar’s worth of parts and a workshop’s hour cost in other money; from memory of common practice. */
import type { Span } from '../ageing/span.ts';

export interface Currency {
  perDollar: number;
  labor: Span;
}

/** Others have to be told. */
export const CURRENCIES: Readonly<Record<string, Currency>> = {
  USD: { perDollar: 1, labor: { low: 90, high: 150 } },
  EUR: { perDollar: 0.92, labor: { low: 70, high: 140 } },
  GBP: { perDollar: 0.8, labor: { low: 50, high: 110 } },
};
