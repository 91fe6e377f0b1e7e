/** Money and hours in words: always from low to high, and no finer than the tables they come from. */
import type { Span } from '../ageing/span.ts';

/** Two significant figures: the tables know no more. */
const rounded = (value: number): number => {
  if (value < 10) return Math.round(value);
  const unit = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.round(value / unit) * unit;
};

/** “$120 to $540”; an estimate is never a single figure. */
export const spanInWords = ({ low, high }: Span, currency: string): string =>
  high === 0 ? 'no cost' : `${amount(rounded(low), currency)} to ${amount(rounded(high), currency)}`;

/** What was really paid, as it was told. */
export const paidInWords = (value: number, currency: string): string => amount(Math.round(value), currency);

const amount = (value: number, currency: string): string =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency, maximumFractionDigits: 0 }).format(value);

/** “3 to 6 hours”. */
export const hoursInWords = ({ low, high }: Span): string =>
  high === 0
    ? 'no hours'
    : high < 0.5
      ? 'minutes'
      : `${hours(low)} to ${hours(high)} ${hours(high) === '1' ? 'hour' : 'hours'}`;

const hours = (value: number): string => (value < 10 ? String(Math.round(value * 2) / 2) : String(rounded(value)));
