/** Water in gasoline: how much a blend holds, how much a tank breathes in, when a lower layer falls out. °C, vol %. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { absoluteHumidity } from '../humid-air.ts';
import { coldestNight, dailySwing, humidityOf, monthsOf, type Place } from '../place.ts';
import type { Span } from '../span.ts';
import { interpolate, type Row } from '../table.ts';
import { kelvin } from '../temperature.ts';

export const WATER_SOURCES: readonly SourceKey[] = [
  'epa-phase-separation',
  'nebraska-ethanol',
  'magnus',
  'common-practice',
  'memory',
];

/** Vol % of water that 10 % ethanol holds at 60 °F, and its rise per °C: the line through 0.5 at 60 °F and 0.3 at 10 °F. */
const HELD = { at: 15.6, there: 0.5, slope: 0.0072, warmest: 30 };
/** Other blends beside that, by vol % of ethanol. */
const BESIDE_E10: readonly Row[] = [
  [0, 0],
  [5, 0.4],
  [10, 1],
  [15, 2.1],
];
/** Vol % of ethanol from which the alcohol carries the water: no second layer in practice. */
const MOSTLY_ETHANOL = 70;
/** Grams in a milliliter of water. */
const WATER_DENSITY = 0.998;
/** Moist air alone, and an upper bound for what gasoline vapor pumps besides. */
const PUMPING: Span = { low: 1, high: 3 };
const DAYS_A_YEAR = 365.25;

/**
 * Vol % of water a blend of so much ethanol holds; null: it does not separate. Known from −12 to 30 °C: warmer counts as 30,
 * and colder follows the line down to nothing. Blends between 15 and 70 % count as 15.
 */
export const tolerance = (ethanol: number, temperature: number): number | null => {
  if (ethanol >= MOSTLY_ETHANOL) return null;
  const ofE10 = HELD.there + HELD.slope * (Math.min(temperature, HELD.warmest) - HELD.at);
  return Math.max(ofE10, 0) * interpolate(BESIDE_E10, ethanol);
};

/** Whether fuel with so many vol % of water in it lets a lower layer fall out. */
export const separates = (water: number, ethanol: number, temperature: number): boolean => {
  const held = tolerance(ethanol, temperature);
  return held !== null && water > held;
};

/** Vol % of water that falls out of saturated fuel as it cools; 0 where it does not separate. */
export const shedOnCooling = (ethanol: number, from: number, to: number): number =>
  Math.max((tolerance(ethanol, from) ?? 0) - (tolerance(ethanol, to) ?? 0), 0);

/** Grams of water that so many liters of a blend hold; null: it does not separate. */
export const heldIn = (liters: number, ethanol: number, temperature: number): number | null => {
  const held = tolerance(ethanol, temperature);
  return held === null ? null : liters * 10 * held * WATER_DENSITY;
};

/**
 * Grams of water a day that a vented tank of so many liters breathes in, as the swing of temperature (K) moves the air above
 * the fuel. From the moist air alone to a bound with vapor pumping (a judgement). Humidity in %.
 */
export const breathing = (
  tank: number,
  fullness: number,
  swing: number,
  temperature: number,
  humidity: number,
): Span => {
  const air = tank * (1 - fullness / 100) * (swing / kelvin(temperature));
  const grams = (air * absoluteHumidity(temperature, humidity)) / 1000;
  return { low: grams * PUMPING.low, high: grams * PUMPING.high };
};

/** The same in a year at a place, by its mean temperature, humidity and daily swing, grams. */
export const breathingYear = (tank: number, fullness: number, place: Place): Span => {
  const mean = monthsOf(place).reduce((sum, month) => sum + month.mean, 0) / 12;
  const { low, high } = breathing(tank, fullness, dailySwing(place), mean, humidityOf(place));
  return { low: low * DAYS_A_YEAR, high: high * DAYS_A_YEAR };
};

/**
 * Days until a tank that was filled dry has breathed in what its fuel no longer holds on the coldest night, at `at` °C. Null:
 * it never does, or holds none from the start (no ethanol) and keeps every drop at its bottom. Air alone: no rain, no leak.
 */
export const daysToSeparate = (
  tank: number,
  fullness: number,
  ethanol: number,
  place: Place,
): { at: number; days: Span | null } => {
  const at = coldestNight(place);
  const held = heldIn((tank * fullness) / 100, ethanol, at);
  const { low, high } = breathingYear(tank, fullness, place);
  if (held === null || ethanol === 0 || low === 0) return { at, days: null };
  return { at, days: { low: (held / high) * DAYS_A_YEAR, high: (held / low) * DAYS_A_YEAR } };
};

/** How much gasoline grows as it warms by so many degrees, %; 0.095 % per °C, from memory. */
export const expansion = (rise: number): number => 0.095 * rise;
