/** What the place does to rubber, trim and vented fluids, and so to the time of the first look. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { monthsOf, type Place, type Shelter } from '../place.ts';
import { clamp } from '../span.ts';
import { doublingRate, effectiveTemperature } from '../temperature.ts';

/** Sun, ozone, moving air and damp by the roof over it: judgement on what an Army tire manual names. */
const OF_SHELTER: Readonly<Record<Shelter, number>> = { heated: 1, unheated: 1, damp: 1.1, covered: 1.3, open: 1.6 };

export const PLACE_SOURCES: readonly SourceKey[] = ['hose-heat', 'army-tire-manual', 'memory'];

/** °C at which ages in service count as they are, and how far warmth or cold is let change them: judgement. */
const IN_SERVICE = { at: 15, least: 0.5, most: 2 };

/** Without a replace-by a look goes no further out than so many times its months. */
const MOST_STRETCH = 1.5;

const TOLD = new WeakMap<Place, number>();

/** Speed of ageing beside a dry room with an effective temperature of 15 °C, 0.5 to 3.2. Told once a place. */
export const placeFactor = (place: Place): number => {
  const told = TOLD.get(place) ?? reckon(place);
  TOLD.set(place, told);
  return told;
};

const reckon = (place: Place): number => {
  const effective = effectiveTemperature(monthsOf(place).map(({ mean }) => mean));
  const { at, least, most } = IN_SERVICE;
  return OF_SHELTER[place.shelter] * clamp(doublingRate(effective, at), least, most);
};

/**
 * First look as the place shifts it, in whole months, rounded down; never past the replace-by, which no place moves. A
 * part that safety rests on is never looked at later than without the place.
 */
export const lookFrom = (months: number, replaceBy: number | null, place: Place, safety: boolean): number => {
  const factor = safety ? Math.max(1, placeFactor(place)) : placeFactor(place);
  return Math.min(Math.floor(months / factor), replaceBy ?? Math.floor(months * MOST_STRETCH));
};
