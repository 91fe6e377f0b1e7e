/** How long fuel keeps where it is. */
import { addDays, addMonths, type CivilDate, daysBetween, firstOfMonth, yearOf } from '../../dates/civil.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import { type Month, monthOn, monthsOf, type Place, type Shelter } from '../place.ts';
import type { DaySpan, Span } from '../span.ts';
import { doublingRate } from '../temperature.ts';
import { FUELS, type FuelKey, type Life } from './fuels.ts';

export interface FuelFacts {
  fuel: FuelKey;
  /** Stabilizer went in while it was fresh. */
  stabilized: boolean;
  /** When it was bought; an end nobody knows is null. */
  filled: DateRange;
  /** How full, %. */
  fullness: number;
  container: 'vehicle tank' | 'closed can';
}

/** °C of the shelf lives. */
const REFERENCE = 20;
/** Frost slows it further, but nothing published says by how much: colder counts as this, °C. */
const COLDEST_TOLD = 0;
const DAYS_A_MONTH = 365.25 / 12;

/** How much faster than by its temperature alone; common practice. */
const BY_SHELTER: Readonly<Record<Shelter, number>> = { heated: 1, unheated: 1, damp: 1, covered: 1.1, open: 1.3 };
/** A vented tank less full than this breathes out its light ends: nowhere slower than so much. */
const NEAR_EMPTY = { under: 25, factor: 1.6 };

const bandOf = (fuel: FuelKey, stabilized: boolean): Life =>
  (stabilized ? FUELS[fuel].stabilized : null) ?? FUELS[fuel].plain;

/** Speed of ageing beside 20 °C: doubles every 10 °C, by the lives of gasoline at 20 and 30 °C. Below 0 °C as at 0. */
const speedAt = (temperature: number): number => doublingRate(Math.max(temperature, COLDEST_TOLD), REFERENCE);

/** Months it keeps at a steady temperature, from the first doubt to the last use. Source: by fuel; from 0 to about 40 °C. */
export const lifeAt = (fuel: FuelKey, stabilized: boolean, temperature: number): Span => {
  const { watch, stop } = bandOf(fuel, stabilized);
  return { low: watch / speedAt(temperature), high: stop / speedAt(temperature) };
};

/**
 * First day of doubt and of no more use, through the months of the place. Each runs from the oldest to the youngest day the
 * fuel can have been bought; an end that is open stays null: for the earliest it means “at any time”, not “never”.
 */
export const goodUntil = (facts: FuelFacts, place: Place): { watch: DaySpan; stop: DaySpan } => {
  const { watch, stop } = bandOf(facts.fuel, facts.stabilized);
  const months = monthsOf(place);
  const factor = placeFactor(facts, place);
  const spanOf = (life: number): DaySpan => {
    const end = (filled: CivilDate | null): CivilDate | null =>
      filled && endOf(filled, (life * DAYS_A_MONTH) / factor, months);
    return { earliest: end(facts.filled.from), latest: end(facts.filled.to) };
  };
  return { watch: spanOf(watch), stop: spanOf(stop) };
};

const placeFactor = ({ container, fullness }: FuelFacts, { shelter }: Place): number => {
  const nearEmpty = container === 'vehicle tank' && fullness < NEAR_EMPTY.under;
  return Math.max(1, nearEmpty ? NEAR_EMPTY.factor : 1, BY_SHELTER[shelter]);
};

/** Heat is counted and cold is not: what a cool place may add is no more than the texts differ by. Judgement. */
const SLOWEST = 1;

/** The day on which so many days at 20 °C are used up. Every day uses at least one, so that day comes. */
const endOf = (from: CivilDate, left: number, months: readonly Month[]): CivilDate => {
  const next = addMonths(firstOfMonth(yearOf(from), Number(from.slice(5, 7))), 1);
  const speed = Math.max(speedAt(monthOn(months, from).mean), SLOWEST);
  const used = daysBetween(from, next) * speed;
  return used < left ? endOf(next, left - used, months) : addDays(from, Math.ceil(left / speed));
};
