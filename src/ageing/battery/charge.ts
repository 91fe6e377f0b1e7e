/** Charge from what a meter or hydrometer shows, and back. Charge in percent of full. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { clamp, type Span } from '../span.ts';
import { interpolate, inverse, type Row } from '../table.ts';
import { BATTERY, CHEMISTRIES, type Chemistry } from './chemistry.ts';

export const CHARGE_SOURCES: readonly SourceKey[] = [
  'battery-charge-table',
  'army-battery-tables',
  'powersports-battery-charts',
  'engineering-mailing-list',
  'memory',
];

export type Nominal = 6 | 12;

/** What a meter 0.05 V out, or rest cut short, makes of the charge, percent points either way. */
const METER = 5;

/**
 * Charge by rest voltage, after 8 hours or more without charge or load; null where voltage tells nothing (lithium).
 * Not corrected for temperature: the correction printed beside many tables is that of density and runs the wrong way;
 * what the cold takes off in truth, 0.04 to 0.07 V at 0 to −20 °C, is no more than the ±5 points already given.
 */
export const chargeByVoltage = (
  chemistry: Chemistry,
  volts: number,
  nominal: Nominal,
): { percent: number; span: Span; surface: boolean } | null => {
  const { rest, settled } = BATTERY[chemistry];
  if (rest === null || settled === null) return null;
  const shown = (volts * 12) / nominal;
  const percent = interpolate(rest, shown);
  // The same meter on half the cells: twice the doubt.
  const doubt = (METER * 12) / nominal;
  const span = { low: clamp(percent - doubt, 0, 100), high: clamp(percent + doubt, 0, 100) };
  return { percent, span, surface: shown > settled };
};

const VOLTAGE_BY_CHARGE = Object.fromEntries(
  CHEMISTRIES.map((chemistry) => {
    const { rest } = BATTERY[chemistry];
    return [chemistry, rest && inverse(rest)];
  }),
) as Record<Chemistry, Row[] | null>;

/** Rest voltage of a battery so charged, near 25 °C; null for lithium. */
export const voltageByCharge = (chemistry: Chemistry, percent: number, nominal: Nominal = 12): number | null => {
  const rows = VOLTAGE_BY_CHARGE[chemistry];
  return rows && (interpolate(rows, percent) * nominal) / 12;
};

/** Rest voltage by density, 6 cells of density + 0.845 V; up to 0.10 V low near empty. Rule of thumb, from memory. */
export const voltageByDensity = (density: number, nominal: Nominal = 12): number => (density + 0.845) * (nominal / 2);

/** Density of a full battery's acid as filled: usual, and for cold climates. */
export const FILLS = ['1.265', '1.280'] as const;
export type Fill = (typeof FILLS)[number];

/** Charge to density at 26.7 °C: the trade council's table, and the Army's. */
const DENSITY: Readonly<Record<Fill, readonly Row[]>> = {
  '1.265': [
    [0, 1.12],
    [25, 1.155],
    [50, 1.19],
    [75, 1.225],
    [100, 1.265],
  ],
  '1.280': [
    [0, 1.13],
    [25, 1.19],
    [50, 1.22],
    [75, 1.25],
    [100, 1.28],
  ],
};

const CHARGE: Readonly<Record<Fill, readonly Row[]>> = {
  '1.265': inverse(DENSITY['1.265']),
  '1.280': inverse(DENSITY['1.280']),
};

/** What the hydrometer would show at 26.7 °C (80 °F), of a reading at an acid temperature in °C. Army table IV. */
export const densityAtReference = (reading: number, temperature: number): number =>
  reading + 0.00072 * (temperature - 26.7);

/** Charge by density at 26.7 °C. Beyond the table's ends 0 or 100. */
export const chargeByDensity = (density: number, fill: Fill): number => interpolate(CHARGE[fill], density);

/** Density at 26.7 °C of a battery so charged. */
export const densityByCharge = (percent: number, fill: Fill): number => interpolate(DENSITY[fill], percent);
