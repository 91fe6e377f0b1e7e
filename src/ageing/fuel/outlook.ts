/** What becomes of the fuel in a tank or can, and what to do with it. */
import type { CivilDate } from '../../dates/civil.ts';
import { coldestNight, type Place } from '../place.ts';
import type { DaySpan, Span } from '../span.ts';
import { inUnit } from '../words.ts';
import { FUELS } from './fuels.ts';
import { type FuelFacts, goodUntil } from './life.ts';
import { breathingYear, daysToSeparate, expansion, tolerance } from './water.ts';

interface FuelWater {
  /** Vol % the blend holds on the coldest night; null: it does not separate. */
  held: number | null;
  /** Grams a year from the air; null: the size of the tank is not known. */
  perYear: Span | null;
  /** Days until air alone makes it separate; null: never, or it holds none from the start. */
  days: Span | null;
}

export interface FuelOutlook {
  watch: DaySpan;
  stop: DaySpan;
  /** Null for diesel: it holds next to none, and what gets in is drained. */
  water: FuelWater | null;
  says: string[];
}

/** Full, with room to grow, %. */
const FULL = { from: 90, to: 95 };
/** From a cool fill to a tank in the sun, °C. */
const SUN = 30;
/** Wet air alone is worth a word within so many days. */
const SOON = 730;
/** Summer diesel waxes from there, °C. */
const WAXES = 0;

/** Tank size in liters, null where nobody said. The oldest day it can have been bought decides what is to be done. */
export const fuelOutlook = (facts: FuelFacts & { tank: number | null }, place: Place, on: CivilDate): FuelOutlook => {
  const until = goodUntil(facts, place);
  const water = waterOf(facts, place);
  return {
    ...until,
    water,
    says: [...saysOfAge(facts, until, on), ...saysOfFill(facts), ...saysOfWater(facts, water, place)],
  };
};

const waterOf = (facts: FuelFacts & { tank: number | null }, place: Place): FuelWater | null => {
  const { ethanol } = FUELS[facts.fuel];
  if (ethanol === null) return null;
  const held = tolerance(ethanol, coldestNight(place));
  if (facts.container === 'closed can') return { held, perYear: { low: 0, high: 0 }, days: null };
  return {
    held,
    perYear: facts.tank === null ? null : breathingYear(facts.tank, facts.fullness, place),
    // Any size gives the same days: fuel and air above it grow alike.
    days: daysToSeparate(facts.tank ?? 1, facts.fullness, ethanol, place).days,
  };
};

/** An earliest day that is open may lie anywhere back. */
const mayBePast = ({ earliest }: DaySpan, on: CivilDate): boolean => earliest === null || earliest <= on;
const isPast = ({ latest }: DaySpan, on: CivilDate): boolean => latest !== null && latest <= on;

const saysOfAge = (
  { filled }: FuelFacts,
  { watch, stop }: { watch: DaySpan; stop: DaySpan },
  on: CivilDate,
): string[] => {
  const undated = filled.from === null && filled.to === null;
  const unsaid = undated ? ['Nobody has said when it was bought: it counts as too old until somebody does.'] : [];
  if (mayBePast(stop, on))
    return [
      ...unsaid,
      `${isPast(stop, on) ? 'It is past use' : 'It may be past use'}: drain it before the engine is started.`,
    ];
  if (mayBePast(watch, on))
    return ['Use it soon, mixed with fresh fuel. Do not put stabilizer in now: it slows aging and restores nothing.'];
  return [];
};

const saysOfFill = ({ container, fuel, fullness }: FuelFacts): string[] => {
  if (container === 'closed can') return ['Keep the can closed, cool and dark.'];
  const grows = expansion(SUN);
  if (!FUELS[fuel].diesel && fullness * (1 + grows / 100) > 100)
    return [
      `Too full: it grows ${grows.toFixed(1)} % as it warms by ${SUN} °C. Leave ${100 - FULL.to} % of the tank empty.`,
    ];
  return fullness < FULL.from
    ? [`Keep it ${FULL.from} to ${FULL.to} % full and the cap tight: less air, less loss and less water.`]
    : ['Keep it full and the cap tight.'];
};

const saysOfWater = ({ fuel, container }: FuelFacts, water: FuelWater | null, place: Place): string[] => {
  if (water === null) return saysOfDiesel(place);
  if (FUELS[fuel].ethanol === 0) return ['It holds no water: what gets in lies at the bottom and rusts the tank.'];
  if (water.held === null) return [];
  const soon = water.days !== null && water.days.low < SOON;
  const air = soon
    ? `Air alone may bring in enough water to separate it within ${Math.floor(water.days?.low ?? 0)} days: fill it up.`
    : 'Air alone takes years to separate it: rain, a bad cap or wet fuel do it at once.';
  return [
    ...(container === 'closed can' ? [] : [air]),
    'Two layers in a glass jar: it has separated. Drain all of it, nothing mixes it again.',
  ];
};

const saysOfDiesel = (place: Place): string[] => [
  'Drain the water first, from the separator and the lowest point of the tank: slime grows where fuel meets water. A biocide comes after that.',
  ...(coldestNight(place) < WAXES
    ? [`Fill up with winter grade before the frost: summer diesel waxes from about ${inUnit(WAXES, '°C', 0)} down.`]
    : []),
];
