/** Hoses, belts, seals and mounts: how fast rubber ages where the car stands. */
import { PLACE_SOURCES, placeFactor } from '../../ageing/rubber/place.ts';
import { inUnit } from '../../ageing/words.ts';
import type { Model } from './outlook.ts';

export const rubber: Model = {
  tell({ since, kind, car: { place }, on }) {
    if (since === null || place === null) return null;
    const factor = placeFactor(place);
    // A cool place says nothing for a part that safety rests on.
    if (kind.severity === 'safety' && factor < 1) return null;
    return {
      on,
      now: `its rubber ages there about ${inUnit(factor, 'times', 1)} as fast as in a dry room of 15 °C.`,
      measured: false,
      days: [],
      says: [
        'Warmth doubles the pace every 10 °C; sun, ozone, damp and moving air add to it by the roof over the car. The place shifts the first look, never the replace-by.',
      ],
      ends: 'A pace is no condition: rubber is judged by hand and eye, and on brakes, fuel and steering by someone licensed for that work.',
      desk: '/desks/rubber',
      sources: PLACE_SOURCES,
    };
  },
};
