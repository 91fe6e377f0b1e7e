/** Fuel in the tank: how long it stays good there, by what it is and how the car stands. */
import { FUELS, type FuelKey } from '../../ageing/fuel/fuels.ts';
import { type FuelFacts, goodUntil } from '../../ageing/fuel/life.ts';
import { fuelOutlook } from '../../ageing/fuel/outlook.ts';
import { WATER_SOURCES } from '../../ageing/fuel/water.ts';
import type { Span } from '../../ageing/span.ts';
import { daysInWords, spanInWords } from '../../ageing/words.ts';
import { choiceIn, type Known, type Model, numberIn, PLACE_ASSUMED, placeOf } from './outlook.ts';

/** How full a tank is taken to be where nobody said, %: half, which is neither the best nor the worst. */
export const HALF_FULL = 50;

const UNKNOWN = 'on a day nobody knows';

const ENDS =
  'Reckoned life is no test: smell and look at a sample in a glass jar before every start after months. A sour smell, two layers or a brown color outweigh any date; cleaning a tank is work for a workshop.';

export const fuel: Model = {
  tell(known) {
    const facts = factsOf(known);
    if (!facts) return null;
    const { watch, stop, water, says } = fuelOutlook(facts, placeOf(known), known.on);
    const told = choiceIn(known, 'blend');
    return {
      on: known.on,
      now: `${FUELS[facts.fuel].name}${told ? '' : ' (assumed)'}, ${facts.stabilized ? 'stabilized while fresh' : 'not stabilized'}: to be used soon ${daysInWords(watch, UNKNOWN, known.on)}, to be drained ${daysInWords(stop, UNKNOWN, known.on)}.`,
      measured: false,
      days: [
        { what: 'Use it soon', when: watch, never: UNKNOWN },
        { what: 'Drain it before starting', when: stop, never: UNKNOWN },
      ],
      says: [
        ...says,
        'Where the calendar of the trade ends sooner, it rules.',
        ...(water?.perYear ? [`Breathed in from the air: ${waterInWords(water.perYear)} a year.`] : []),
        ...(known.car.place ? [] : [PLACE_ASSUMED]),
      ],
      ends: ENDS,
      desk: '/desks/fuel',
      sources: [...new Set([...FUELS[facts.fuel].sources, ...(water ? WATER_SOURCES : [])])],
    };
  },
  asks: {
    what: 'use it up mixed with fresh fuel, or drain it',
    since(known) {
      // Without the blend the calendar of the kind is all there is.
      const facts = choiceIn(known, 'blend') ? factsOf(known) : null;
      if (!facts) return [];
      const { watch, stop } = goodUntil(facts, placeOf(known));
      return [watch.earliest, stop.earliest].filter((day) => day !== null);
    },
  },
};

/** “1 to 3 g of water”. */
export const waterInWords = (grams: Span): string =>
  grams.high < 1 ? 'less than a gram of water' : `${spanInWords(grams, 'g', 0)} of water`;

/** The blend told, or the one that keeps shortest of those usually sold. */
export const blendOf = (known: Pick<Known, 'part' | 'kind'>): FuelKey => {
  const told = known.part.details.blend;
  if (typeof told === 'string' && told in FUELS) return told as FuelKey;
  return known.kind.key === 'fuel-diesel' ? 'b7' : 'e10';
};

export const factsOf = (known: Known): (FuelFacts & { tank: number | null }) | null =>
  known.since && {
    fuel: blendOf(known),
    stabilized: choiceIn(known, 'stabilized') === 'yes',
    filled: known.since,
    fullness: numberIn(known, 'fullness') ?? HALF_FULL,
    container: 'vehicle tank',
    tank: numberIn(known, 'tank') ?? null,
  };
