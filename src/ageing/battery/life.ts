/** What temperature does to a battery's power today and to its life. Temperatures in °C. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { interpolate, type Row } from '../table.ts';
import { celsius } from '../temperature.ts';

export const CRANKING_POWER: { rows: readonly Row[]; sources: readonly SourceKey[] } = {
  rows: [
    // Not measured: the last slope carried on, so that deeper cold never looks better than it is.
    [celsius(-48), 0],
    [celsius(0), 40],
    [celsius(30), 65],
    [celsius(80), 100],
  ],
  sources: ['army-battery-tables', 'memory'],
};

/** Percent of its cranking power at 26.7 °C that a full battery has left; measured from −17.8 °C up, guessed below. */
export const crankingPower = (temperature: number): number => interpolate(CRANKING_POWER.rows, temperature);

export const LIFE_SOURCES: readonly SourceKey[] = ['battery-age-guides', 'memory'];

/**
 * Share of its life at 25 °C that a sealed stationary battery has at a steady temperature: half for every 8 °C warmer,
 * no gain counted for colder. For information: starter batteries are not stationary ones.
 */
export const lifeInHeat = (temperature: number): number => 2 ** (-Math.max(0, temperature - 25) / 8);
