/** A sample of coolant: its strength, where it freezes, and what the bands of its gauge say; of each glycol it can be. */
import { type Glycol, strengthFor } from '../ageing/coolant/freezing.ts';
import { type CoolantOutlook, coolantOutlook } from '../ageing/coolant/outlook.ts';
import { glycolsIn, judge, strengthOf } from '../ageing/judge.ts';
import { hull, type Span } from '../ageing/span.ts';
import type { Gauge } from '../catalogue/gauge.ts';
import type { Answers, Reading } from './facts.ts';

export interface CoolantSample {
  /** Vol % of glycol. */
  strength: Span;
  outlook: CoolantOutlook;
}

type Read = Pick<Reading, 'value' | 'warmth'>;

/** By one of the gauges of coolant; null where that gauge tells no strength. Coldest night in °C, null: not told. */
export const coolantSample = (
  gauge: Gauge,
  read: Read,
  details: Answers,
  coldest: number | null,
): CoolantSample | null => {
  // Each glycol it can be by its own strength: that of one is not the other's.
  const each = glycolsIn(details).flatMap((glycol) => {
    const strength = strengthBy(gauge, read, details, glycol);
    return strength ? [{ strength, ...coolantOutlook({ glycol, strength }, coldest) }] : [];
  });
  if (each.length === 0) return null;
  const margins = each.flatMap(({ margin }) => margin ?? []);
  return {
    strength: hull(each.map(({ strength }) => strength)),
    outlook: {
      freezes: hull(each.map(({ freezes }) => freezes)),
      margin: margins.length > 0 ? hull(margins) : null,
      verdict: judge(gauge, read, { details, coldest }).verdict,
      says: [...new Set(each.flatMap(({ says }) => says)), ...(each.length > 1 ? [NOT_TOLD] : [])],
    },
  };
};

const NOT_TOLD = 'The glycol is not told: both are reckoned with, and the warmer freezing point decides.';

const strengthBy = (gauge: Gauge, read: Read, details: Answers, glycol: Glycol): Span | null =>
  gauge.reads ? strengthOf(gauge, read, { ...details, glycol }) : byFreezing(glycol, read.value);

/** A refractometer reads a freezing point to 1 °C (ASTM D3321). */
const byFreezing = (glycol: Glycol, freezing: number): Span => ({
  low: strengthFor(glycol, Math.min(freezing + 1, 0)) ?? 60,
  high: strengthFor(glycol, freezing - 1) ?? 60,
});
