/**
 * A battery left alone: self-discharge takes a share of what is left, the car's drain the same amount every day.
 * Charge in percent of full, days at one temperature.
 */
import type { SourceKey } from '../../catalogue/sources.ts';
import { type CivilDate, daysBetween } from '../../dates/civil.ts';
import { interpolate, type Row } from '../table.ts';
import { doublingRate } from '../temperature.ts';

export const DISCHARGE_SOURCES: readonly SourceKey[] = ['army-battery-manual', 'stationary-agm-manual', 'memory'];

const DAYS_A_MONTH = 30.4;

/** Self-discharge as a share a day, from percent a month at 25 °C. Doubles every 10 °C; the Army measured every 9. */
export const selfDischargeRate = (perMonthAt25: number, temperature: number): number =>
  (perMonthAt25 / 100 / DAYS_A_MONTH) * doublingRate(temperature, 25);

/** Percent of the capacity that a steady drain takes in a day. Capacity in Ah, above 0. */
export const drainRate = (mA: number, Ah: number): number => (2.4 * mA) / Ah;

/** Charge after some days, never below 0. */
export const chargeAfter = (start: number, self: number, drain: number, days: number): number =>
  // expm1 keeps its digits where self-discharge is next to nothing.
  Math.max(0, start * Math.exp(-self * days) - drain * (self === 0 ? days : -Math.expm1(-self * days) / self));

/** Days from one charge down to a target of 0 to 100: 0 if already there, Infinity if it never gets there. */
export const daysUntil = (start: number, target: number, self: number, drain: number): number => {
  if (start <= target) return 0;
  const atTarget = self * target + drain;
  return self === 0 ? (start - target) / drain : Math.log1p((self * (start - target)) / atTarget) / self;
};

interface Known {
  percent: number;
  day: CivilDate;
}

/**
 * The steady drain, mA, that explains two readings of charge; 0 where self-discharge alone takes more. Null if the
 * second is not of a later day. A second reading of 0 % says only that it was at least this much.
 */
export const observedDrain = (before: Known, after: Known, self: number, capacity: number): number | null => {
  const days = daysBetween(before.day, after.day);
  if (days <= 0) return null;
  const lost = before.percent * Math.exp(-self * days) - after.percent;
  const perDay = self === 0 ? lost / days : (lost * self) / -Math.expm1(-self * days);
  return Math.max(0, (perDay * capacity) / 2.4);
};

/** Density a full flooded battery loses in a day, over its first ten days, by temperature: Army battery manual. */
const MEASURED: readonly Row[] = [
  [10, 0.0003],
  [26.7, 0.001],
  [37.8, 0.0025],
];

/** Density between full and empty, as the manual's figures are turned into percent. */
const DENSITY_SPAN = 0.15;

/** What the Army measured of full flooded batteries, 10 to 37.8 °C: density a day, and percent in 30 days. */
export const measuredLoss = (temperature: number): { densityPerDay: number; percentPer30Days: number } => {
  const densityPerDay = interpolate(MEASURED, temperature);
  return { densityPerDay, percentPer30Days: ((densityPerDay * 30) / DENSITY_SPAN) * 100 };
};
