/**
 * When the electrolyte freezes, °C. By the density curve of the Army and a battery maker, not by the column printed
 * beside most charge tables: that one is 10 to 13 °C too hopeful below full charge.
 */
import type { SourceKey } from '../../catalogue/sources.ts';
import { interpolate, inverse, type Row } from '../table.ts';
import { celsius } from '../temperature.ts';
import { chargeByDensity, densityByCharge } from './charge.ts';
import { BATTERY, type Chemistry } from './chemistry.ts';

/** °C kept between a night and the freezing point: what curves and thermometers differ by. */
export const FROST_MARGIN = 3;

/** Density at 26.7 °C to freezing point, published in °F; the warmer figure where the two differ by a degree. */
const CURVE: readonly Row[] = (
  [
    [1.0, 32],
    [1.05, 27],
    [1.1, 19],
    [1.15, 5],
    [1.2, -16],
    [1.225, -35],
    [1.25, -62],
    [1.265, -75],
    [1.28, -90],
  ] as const
).map(([density, fahrenheit]) => [density, celsius(fahrenheit)]);

const DENSITY_BY_FREEZING = inverse(CURVE);

export const FREEZING_SOURCES: readonly SourceKey[] = ['army-battery-tables', 'powersports-battery-charts', 'memory'];

/** Freezing point by density at 26.7 °C, 1.000 to 1.280; the ends’ beyond. */
export const freezingByDensity = (density: number): number => interpolate(CURVE, density);

/** Little acid, all of it spent near empty: from memory. A battery nobody has named may be one of these. */
const STARVED: readonly Chemistry[] = ['agm', 'gel', 'unknown'];
const STARVED_BELOW = 20;
const STARVED_FREEZES = -7;

/** Freezing point of one left flat for weeks, density 1.050: what a charge of 0 may stand for. */
export const FLAT_FREEZES = freezingByDensity(1.05);

/**
 * Freezing point by charge, 1.265 fill, just discharged: one left flat for weeks may freeze near −3 °C. Null: nothing
 * that freezes (lithium).
 */
export const freezingByCharge = (chemistry: Chemistry, percent: number): number | null => {
  if (!BATTERY[chemistry].acid) return null;
  if (STARVED.includes(chemistry) && percent < STARVED_BELOW) return STARVED_FREEZES;
  return freezingByDensity(densityByCharge(percent, '1.265'));
};

/**
 * Least charge, %, at which a flooded battery of the 1.265 fill still freezes only FROST_MARGIN below a night of that
 * temperature, °C. 100 also for nights below −56 °C, which not even a full one bears.
 */
export const leastCharge = (coldest: number): number =>
  chargeByDensity(interpolate(DENSITY_BY_FREEZING, coldest - FROST_MARGIN), '1.265');

/**
 * Charge, %, at or below which a battery may freeze in such a night; 0: only if flat, since a flat one goes on thinning.
 * Null: at no charge.
 */
export const frostLimit = (chemistry: Chemistry, night: number): number | null => {
  const bears = night - FROST_MARGIN;
  if (!BATTERY[chemistry].acid || bears >= FLAT_FREEZES) return null;
  const least = leastCharge(night);
  return STARVED.includes(chemistry) && bears < STARVED_FREEZES ? Math.max(least, STARVED_BELOW) : least;
};
