/** How fast rubber ages where it stands. Information beside the calendar: it moves no date, and least of all a later one. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { monthsOf, type Place } from '../place.ts';
import type { Span } from '../span.ts';
import { arrheniusRate, doublingRate } from '../temperature.ts';

export const HEAT_SOURCES: readonly SourceKey[] = ['rubber-activation', 'hose-heat'];

/** °C at which a year counts as one. */
const REFERENCE = 20;

/** Natural rubber aged in air, kJ/mol. */
const ACTIVATION: Span = { low: 86, high: 94 };

/**
 * Years at 20 °C that age natural rubber as much as these years do at the place’s monthly means, shade assumed: by its
 * activation energy, 90 ± 4 kJ/mol, and by the rule of ten (doubling every 10 °C). Ozone, sun and damp are left out.
 */
export const heatAge = (years: number, place: Place): { byArrhenius: Span; byRuleOfTen: number } => {
  const means = monthsOf(place).map(({ mean }) => mean);
  const ages = (rate: (temperature: number) => number): number =>
    (years * means.reduce((sum, mean) => sum + rate(mean), 0)) / means.length;
  // In a cold place the higher energy gives the younger age, in a hot one the older.
  const ends = [ACTIVATION.low, ACTIVATION.high].map((energy) => ages((t) => arrheniusRate(t, REFERENCE, energy)));
  return {
    byArrhenius: { low: Math.min(...ends), high: Math.max(...ends) },
    byRuleOfTen: ages((t) => doublingRate(t, REFERENCE)),
  };
};
