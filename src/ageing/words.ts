/** Estimates in words: no more digits than they bear, always both ends. */
import { type CivilDate, yearOf } from '../dates/civil.ts';
import { MONTHS } from '../dates/words.ts';
import type { DaySpan, Span } from './span.ts';

/** “12.45 V”, “−24 °C”. */
export const inUnit = (value: number, unit: string, decimals: number): string =>
  `${plain(value, decimals)}${behind(unit)}`;

/** A unit behind its number: “9/32 in” takes no space. */
const behind = (unit: string): string => (unit.startsWith('/') ? unit : ` ${unit}`);

/** “1.8 to 3.6 %”; one number where both ends read alike. */
export const spanInWords = ({ low, high }: Span, unit: string, decimals: number): string => {
  const [from, to] = [plain(low, decimals), plain(high, decimals)];
  return from === to ? `${from} ${unit}` : `${from} to ${to} ${unit}`;
};

/**
 * “between early May and late July 2026”: an estimate bears thirds of a month and no days. `never` where not even the
 * earliest falls within the time looked at; what lies before the day it is seen on is told as such.
 */
export const daysInWords = ({ earliest, latest }: DaySpan, never: string, on: CivilDate): string => {
  if (latest !== null && latest <= on) return 'already';
  if (earliest !== null && earliest <= on)
    return latest === null ? 'perhaps already' : `perhaps already, by ${third(latest)} at the latest`;
  if (earliest === null) return latest === null ? never : `by ${third(latest)} at the latest`;
  if (latest === null) return `from ${third(earliest)} at the earliest`;
  const [from, to] = [third(earliest), third(latest)];
  if (from === to) return `in ${from}`;
  return earliest.slice(0, 7) === latest.slice(0, 7)
    ? `between ${partOf(earliest)} and ${to}`
    : `between ${from} and ${to}`;
};

/** “early May 2026”. */
const third = (day: CivilDate): string => `${partOf(day)} ${MONTHS[Number(day.slice(5, 7)) - 1]} ${yearOf(day)}`;

const partOf = (day: CivilDate): string => {
  const date = Number(day.slice(8));
  return date <= 10 ? 'early' : date <= 20 ? 'mid' : 'late';
};

/** A figure with a true minus and no “−0”. */
const plain = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
};
