/** An amount for this car, and how it is told. */
import type { Span } from '../../ageing/span.ts';
import { spanInWords } from '../../ageing/words.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import { convert } from '../../catalogue/units.ts';
import type { Finding } from '../../findings/assess.ts';
import type { Situation } from '../situation.ts';

export interface Figure {
  what: string;
  /** Null: something has to be told first, or put right. */
  amount: Span | null;
  /** Why there is none, where that is not that it was not told. */
  missing?: string;
  unit: string;
  decimals: number;
  /** Where the amount lies for any car: what is outside would be a fault of ours. */
  limits: Span;
  /** How it comes about, what was assumed, what is missing. */
  says: readonly string[];
  sources: readonly SourceKey[];
}

/** “Stabilizer: 140 to 180 mL”; pressures in both units. */
export const figureInWords = ({ what, amount, unit, decimals, missing = 'not told yet' }: Figure): string => {
  if (amount === null) return `${what}: ${missing}`;
  const words = spanInWords(amount, unit, decimals).trim();
  const psi = { low: convert(amount.low, 'bar', 'psi'), high: convert(amount.high, 'bar', 'psi') };
  return `${what}: ${words}${unit === 'bar' ? ` (${spanInWords(psi, 'psi', 0)})` : ''}`;
};

export const find = ({ atParking }: Situation, ...kinds: readonly string[]): Finding | undefined =>
  atParking.find(({ kind }) => kinds.includes(kind.key));

export const numberIn = (finding: Finding | undefined, key: string): number | null => {
  const told = finding?.part.details[key];
  return typeof told === 'number' ? told : null;
};

export const exactly = (value: number): Span => ({ low: value, high: value });
export const each = (span: Span, change: (value: number) => number): Span => ({
  low: change(span.low),
  high: change(span.high),
});
