/** What work and parts cost in a collection, as it was told. */
import type { Rates } from '../money/cost.ts';
import { CURRENCIES } from '../money/currencies.ts';
import type { Store } from '../store/open.ts';
import { type Collection, changeCollection } from '../store/people.ts';
import { done, type Fault, type Outcome } from './fault.ts';
import { readPlainNumber } from './typed-number.ts';

export const ratesOf = ({ currency, perDollar, laborLow, laborHigh }: Collection): Rates => ({
  currency,
  perDollar,
  labor: { low: laborLow, high: laborHigh },
});

/** As typed; an empty figure takes the one that is usual for the currency, where one is known. */
export interface RatesGiven {
  currency: string;
  perDollar: string;
  laborLow: string;
  laborHigh: string;
}

const KNOWN = new Set(Intl.supportedValuesOf('currency'));
/** Beyond it a figure is a slip. */
const MOST = 1_000_000;

export const setRates = (store: Store, collectionId: string, given: RatesGiven): Outcome<null> => {
  const currency = given.currency.trim().toUpperCase();
  const usual = CURRENCIES[currency];
  const faults: Fault[] = KNOWN.has(currency)
    ? []
    : [{ field: 'currency', message: `“${given.currency}” is no currency. Write its three letters: USD, EUR, SEK.` }];
  const read = (field: keyof RatesGiven, what: string, known: number | undefined): number => {
    const typed = given[field].trim();
    const value = typed === '' ? (known ?? null) : readPlainNumber(typed);
    if (value !== null && value > 0 && value < MOST) return value;
    faults.push({
      field,
      message:
        typed === ''
          ? `${what}: no usual figure is known for ${currency}. Write one.`
          : `${what}: “${typed}” is no figure.`,
    });
    return 0;
  };
  const perDollar = read('perDollar', 'What a dollar’s worth of parts costs', usual?.perDollar);
  const laborLow = read('laborLow', 'A workshop’s hour at the least', usual?.labor.low);
  const laborHigh = read('laborHigh', 'A workshop’s hour at the most', usual?.labor.high);
  if (faults.length === 0 && laborHigh < laborLow)
    faults.push({ field: 'laborHigh', message: 'The most is less than the least.' });
  if (faults.length > 0) return { ok: false, faults };
  changeCollection(store, collectionId, { currency, perDollar, laborLow, laborHigh });
  return done(null);
};
