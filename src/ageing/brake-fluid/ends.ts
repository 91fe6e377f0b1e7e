/** The two ends between which brake fluid lies: the worst wets fast from the wetter start, the best slowly from the drier. */
import type { BrakeFluidGrade } from '../../catalogue/brake-fluid-grades.ts';
import { addDays, type CivilDate, daysBetween } from '../../dates/civil.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import type { DaySpan, Span } from '../span.ts';
import { type Boiling, boilingOn, type Curve, WET_WATER, waterOn } from './boiling.ts';
import { MOST_WATER, monthsUntil, type WaterPace, waterAt } from './water.ts';

/** Water that grows at a pace from a start, percent, and the curve that it lowers. */
interface End {
  /** Null: longer ago than anybody knows. */
  from: CivilDate | null;
  start: number;
  pace: number;
  curve: Curve;
}

export interface Ends {
  worst: End;
  best: End;
}

export interface Fluid {
  grade: BrakeFluidGrade;
  pace: WaterPace;
}

export interface FluidReading {
  value: number;
  day: CivilDate;
}

/** What a meter or tester in a workshop may be off by, percent and °C: judgement. */
export const DOUBT = { water: 0.5, boiling: 5 } as const;

/** How far above its least dry boiling point a fluid may have begun, °C: from memory. It then holds more water today. */
const BEGAN_ABOVE = 50;

const DAYS_A_MONTH = 365.25 / 12;

/** From the fill alone, dry; null where no end of it is known. */
export const endsOfFill = ({ grade, pace }: Fluid, { from, to }: DateRange, on: CivilDate): Ends | null => {
  if (from === null && to === null) return null;
  const noLater = (day: CivilDate): CivilDate => (day < on ? day : on);
  return {
    worst: { from: from && noLater(from), start: 0, pace: pace.fast, curve: grade },
    best: { from: noLater(to ?? on), start: 0, pace: pace.slow, curve: grade },
  };
};

/** From a measured water content, percent. */
export const endsOfWater = ({ grade, pace }: Fluid, { value, day }: FluidReading): Ends => ({
  worst: { from: day, start: value + DOUBT.water, pace: pace.fast, curve: grade },
  best: { from: day, start: Math.max(0, value - DOUBT.water), pace: pace.slow, curve: grade },
});

/** From a measured boiling point, °C. */
export const endsOfBoiling = ({ grade, pace }: Fluid, { value, day }: FluidReading): Ends => {
  const end = (boiling: number, dryMinC: number, perYear: number): End => {
    // Measured outside the curve of its grade, the fluid has a curve of its own.
    const curve = { dryMinC: Math.max(dryMinC, boiling), wetMinC: Math.min(grade.wetMinC, boiling) };
    return { from: day, start: waterOn(curve, boiling), pace: perYear, curve };
  };
  return {
    worst: end(value - DOUBT.boiling, grade.dryMinC + BEGAN_ABOVE, pace.fast),
    best: end(value + DOUBT.boiling, grade.dryMinC, pace.slow),
  };
};

export const waterIn = ({ worst, best }: Ends, on: CivilDate): Span => ({
  low: waterThen(best, on),
  high: waterThen(worst, on),
});

const waterThen = ({ from, start, pace }: End, on: CivilDate): number =>
  from === null ? MOST_WATER : waterAt(daysBetween(from, on) / DAYS_A_MONTH, pace, start);

export const boilingIn = (ends: Ends, on: CivilDate): Boiling => {
  const water = waterIn(ends, on);
  return {
    low: boilingOn(ends.worst.curve, water.high),
    high: boilingOn(ends.best.curve, water.low),
    atMost: water.high > WET_WATER,
  };
};

export const wetDays = (ends: Ends): DaySpan => daysOf(ends, () => WET_WATER);

/** Days down to a boiling point, °C; one beyond an end of the curve counts as that end. */
export const daysDownTo = (ends: Ends, boiling: number): DaySpan =>
  daysOf(ends, ({ curve }) => waterOn(curve, boiling));

const daysOf = ({ worst, best }: Ends, water: (end: End) => number): DaySpan => {
  const when = (end: End): CivilDate | null =>
    end.from && addDays(end.from, Math.floor(monthsUntil(water(end), end.pace, end.start) * DAYS_A_MONTH));
  return { earliest: when(worst), latest: when(best) };
};
