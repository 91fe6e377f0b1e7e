/** Water that glycol brake fluid takes up while it stands, percent by weight. Silicone fluid takes up none. */
import type { SourceKey } from '../../catalogue/sources.ts';
import type { Span } from '../span.ts';

export type FluidHoses = 'rubber' | 'braided' | 'unknown';

/** Percent of water a year. */
export interface WaterPace {
  slow: number;
  typical: number;
  fast: number;
}

/** The damp and braided shares are judgement: a workshop writer sees 2 to 3 percent a year, and PTFE lets less through. */
const PACE = {
  base: { slow: 1, typical: 1.5, fast: 2 },
  damp: 1.5,
  /** For the slow end alone: the reservoir’s seal lets water in whatever the hoses are made of. */
  braided: 0.7,
} as const;

export const WATER_SOURCES: readonly SourceKey[] = ['sae-j1707', 'common-practice', 'memory'];

/** Nothing higher is reported of fluid in use. */
export const MOST_WATER = 8;

/** 1 to 2 percent a year (SAE J1707 as quoted); a damp place half as much again, all braided hoses a lower slow end. */
export const waterPace = ({ damp, hoses }: { damp: boolean; hoses: FluidHoses }): WaterPace => {
  const { base } = PACE;
  const air = damp ? PACE.damp : 1;
  const through = hoses === 'braided' ? PACE.braided : 1;
  return { slow: base.slow * air * through, typical: base.typical * air, fast: base.fast * air };
};

/** Water after a time that began with some, at one pace; never beyond MOST_WATER unless it began there. */
export const waterAt = (months: number, perYear: number, start: number): number =>
  Math.min(start + (perYear * Math.max(0, months)) / 12, Math.max(start, MOST_WATER));

/** Months until a water content of 0 to MOST_WATER is reached at one pace; 0 where it began there. */
export const monthsUntil = (water: number, perYear: number, start: number): number =>
  (Math.max(0, water - start) / perYear) * 12;

/** Water in fluid filled dry so many months ago. */
export const waterAfter = (months: number, { slow, fast }: WaterPace): Span => ({
  low: waterAt(months, slow, 0),
  high: waterAt(months, fast, 0),
});

/** Months from a dry fill until a water content of 0 to MOST_WATER: the earliest is the low end. */
export const monthsTo = (water: number, { slow, fast }: WaterPace): Span => ({
  low: monthsUntil(water, fast, 0),
  high: monthsUntil(water, slow, 0),
});
