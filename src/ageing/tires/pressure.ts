/** Pressure of a tire that stands, bar by gauge: temperature, loss through the rubber, the months of the place. In °C. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { convert } from '../../catalogue/units.ts';
import { type CivilDate, daysBetween } from '../../dates/civil.ts';
import { nextDay } from '../../dates/limit.ts';
import { monthOn, monthsOf, type Place } from '../place.ts';
import type { DaySpan, Span } from '../span.ts';
import { interpolate } from '../table.ts';
import { doublingRate, kelvin } from '../temperature.ts';

/** Pressure of the air outside, bar: the standard atmosphere. */
const ATMOSPHERE = 1.01325;

export const PRESSURE_SOURCES: readonly SourceKey[] = ['gas-law', 'tire-permeation', 'memory'];

/** Pressure of the same air in the same volume at another temperature. */
export const pressureAt = (pressure: number, from: number, to: number): number =>
  ((pressure + ATMOSPHERE) * kelvin(to)) / kelvin(from) - ATMOSPHERE;

/** Measured at two temperatures, psi a month. */
const MEASURED = { cool: 21, warm: 32, low: [0.5, 1.5], high: [1, 1.5] } as const;

/**
 * Loss through the rubber, bar a month: 0.5 to 1.0 psi at 21 °C, 1.5 at 32 °C, by equal ratios between. Below 21 °C those
 * of 21 °C hold, although less is likely; above 32 °C, where nothing was measured, the high end doubles every 10 °C.
 */
export const lossPerMonth = (temperature: number): Span => {
  const { cool, warm } = MEASURED;
  const between = ([atCool, atWarm]: readonly [number, number]): number => {
    const ratio = interpolate(
      [
        [cool, Math.log(atCool)],
        [warm, Math.log(atWarm)],
      ],
      temperature,
    );
    return convert(Math.exp(ratio), 'psi/month', 'bar/month');
  };
  return {
    low: between(MEASURED.low),
    high: between(MEASURED.high) * doublingRate(Math.max(temperature, warm), warm),
  };
};

/** Loss through the rubber in so many months at one temperature, bar. */
export const lossOver = (months: number, temperature: number): Span => {
  const { low, high } = lossPerMonth(temperature);
  return { low: months * low, high: months * high };
};

export interface PressureReading {
  /** Of a cold tire. */
  pressure: number;
  /** Of the tire when it was read; null: not noted. */
  temperature: number | null;
  /** What it was measured to lose, bar a month; absent: what rubber lets through. */
  loses?: number;
  day: CivilDate;
}

/** Two readings closer together tell the gauge and the weather, not the tire. */
export const LEAST_DAYS = 7;

const DAYS_A_MONTH = 365.25 / 12;

/**
 * Loss between two readings, bar a month, the second brought to the first’s temperature; taken as equally warm where
 * neither was noted. Below 0 air was added. Null: less than 7 days apart, or only one temperature noted.
 */
export const leakRate = (first: PressureReading, second: PressureReading): number | null => {
  const days = daysBetween(first.day, second.day);
  if (days < LEAST_DAYS || (first.temperature === null) !== (second.temperature === null)) return null;
  const then =
    first.temperature === null || second.temperature === null
      ? second.pressure
      : pressureAt(second.pressure, second.temperature, first.temperature);
  return ((first.pressure - then) / days) * DAYS_A_MONTH;
};

/** Pressure for a lay-up above the placard: trade texts from half a bar to the sidewall’s maximum. */
export const LAY_UP: { above: Span; says: readonly string[]; sources: readonly SourceKey[] } = {
  above: { low: 0.7, high: 1 },
  says: [
    'Never above the maximum on the sidewall; without reading that, leave it at the placard.',
    'Sources differ: half a bar more, 0.7 to 1 bar more, 40 psi, the sidewall’s maximum, or the placard as it is.',
    'Set it back to the placard before driving.',
  ],
  sources: ['tire-storage-guides', 'vehicle-storage-bulletin', 'classic-workshop-essay', 'memory'],
};

/** Pressure for a lay-up; the placard’s where nobody has read the sidewall. */
export const layUpPressure = (placard: number, sidewallMax: number | null): Span => {
  const most = sidewallMax ?? placard;
  return { low: Math.min(placard + LAY_UP.above.low, most), high: Math.min(placard + LAY_UP.above.high, most) };
};

export interface PressurePoint {
  day: CivilDate;
  pressure: Span;
}

/**
 * Pressure on the day of the reading, on the first of each month after it and on the last day, each at its month’s mean
 * temperature: a cold night reads about 0.01 bar less for every °C. Never below 0. `until` not before the reading.
 */
export const pressureOver = (start: PressureReading, until: CivilDate, place: Place): PressurePoint[] =>
  [...daily(start, until, place)].filter(({ day }) => day === start.day || day === until || day.endsWith('-01'));

/** A tenth below the placard: common practice. */
const DUE_BELOW = 0.9;

/** First day whose pressure is expected a tenth below the placard, until a day; of cold months as well as of loss. */
export const dueForAir = (start: PressureReading, until: CivilDate, place: Place, placard: number): DaySpan => ({
  earliest: firstBelow(start, until, place, placard, 'low'),
  latest: firstBelow(start, until, place, placard, 'high'),
});

/** The earliest of those days alone, which is all that a nightly walk over a collection asks. */
export const firstLow = (start: PressureReading, until: CivilDate, place: Place, placard: number): CivilDate | null =>
  firstBelow(start, until, place, placard, 'low');

const firstBelow = (
  start: PressureReading,
  until: CivilDate,
  place: Place,
  placard: number,
  end: keyof Span,
): CivilDate | null => {
  for (const { day, pressure } of daily(start, until, place)) if (pressure[end] < placard * DUE_BELOW) return day;
  return null;
};

/** At which the air in the tire is counted, °C. */
const COUNTED_AT = 20;

/** Day by day, as far as it is asked for. */
function* daily(start: PressureReading, until: CivilDate, place: Place): Generator<PressurePoint> {
  const months = monthsOf(place);
  const first = monthOn(months, start.day);
  // Not noted, it may have been anything that month had: the warmer it was, the less air was in.
  const counted = (temperature: number): number =>
    pressureAt(start.pressure, start.temperature ?? temperature, COUNTED_AT);
  const air: Span = { low: counted(first.high), high: counted(first.low) };
  for (let day = start.day; day <= until; day = nextDay(day)) {
    const { mean } = monthOn(months, day);
    const now = (end: number): number => Math.max(0, pressureAt(end, COUNTED_AT, mean));
    yield { day, pressure: { low: now(air.low), high: now(air.high) } };
    const loss = lossPerMonth(mean);
    air.low = Math.max(0, air.low - Math.max(loss.high, start.loses ?? 0) / DAYS_A_MONTH);
    air.high = Math.max(0, air.high - loss.low / DAYS_A_MONTH);
  }
}
