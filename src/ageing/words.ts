/** Estimates in words: no more digits than they bear, always both ends. */
import { dayInWords } from '../dates/words.ts';
import type { DaySpan, Span } from './span.ts';

/** “12.45 V”, “−24 °C”. */
export const inUnit = (value: number, unit: string, decimals: number): string => `${plain(value, decimals)} ${unit}`;

/** “1.8 to 3.6 %”; one number where both ends read alike. */
export const spanInWords = ({ low, high }: Span, unit: string, decimals: number): string => {
  const [from, to] = [plain(low, decimals), plain(high, decimals)];
  return from === to ? `${from} ${unit}` : `${from} to ${to} ${unit}`;
};

/** “from 3 May to 8 July 2026”; `never` where not even the earliest falls within the time looked at. */
export const daysInWords = ({ earliest, latest }: DaySpan, never: string): string => {
  if (earliest === null) return latest === null ? never : `by ${dayInWords(latest)} at the latest`;
  if (latest === null) return `from ${dayInWords(earliest)} at the earliest`;
  return earliest === latest
    ? `on ${dayInWords(earliest)}`
    : `between ${dayInWords(earliest)} and ${dayInWords(latest)}`;
};

/** A figure with a true minus and no “−0”. */
const plain = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
};
