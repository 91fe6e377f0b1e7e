/** Where coolant starts to freeze. Strengths in vol % of glycol in water, temperatures in °C. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { clamp, type Span } from '../span.ts';
import { interpolate, inverse, type Row } from '../table.ts';

export const GLYCOLS = ['ethylene', 'propylene'] as const;
export type Glycol = (typeof GLYCOLS)[number];

export const FREEZING_SOURCES: readonly SourceKey[] = [
  'ashrae-glycol',
  'secondary-fluids-2010',
  'army-coolant-table',
  'memory',
];

interface Fluid {
  /** Of the pure glycol at 20 °C, kg/m³ (from memory of a handbook of chemistry). */
  density: number;
  /** Handbook, inhibited fluid: first ice crystals by vol %. */
  rows: readonly Row[];
  /** Past the strongest mixture more glycol protects less again. */
  beyond: readonly Row[];
  /** Pure glycol: kelvin by mass fraction, a polynomial about `about`, for fractions up to 0.60. */
  fit: { about: number; terms: readonly number[] };
}

const FLUIDS: Readonly<Record<Glycol, Fluid>> = {
  ethylene: {
    density: 1113.5,
    rows: [
      [0, 0],
      [4.4, -1.4],
      [8.9, -3.2],
      [13.6, -5.4],
      [18.1, -7.8],
      [22.9, -10.7],
      [27.7, -14.1],
      [32.6, -17.9],
      [37.5, -22.3],
      [42.5, -27.5],
      [47.6, -33.8],
      [52.7, -41.1],
      [57.8, -48.3],
      // The table ends with the row above; this one is the handbook's own polynomial at 60 vol %.
      [60, -52.02],
    ],
    // Pure ethylene glycol freezes at −12.9 °C (from memory); the straight line to it lies above what is measured.
    beyond: [
      [67, -52.02],
      [100, -12.9],
    ],
    fit: { about: 0.308462, terms: [257.9, -80.8, -133.4, -72.93, 100.6, 11.4] },
  },
  propylene: {
    density: 1036.1,
    rows: [
      [0, 0],
      [4.8, -1.6],
      [9.6, -3.3],
      [14.5, -5.1],
      [19.4, -7.1],
      [24.4, -9.6],
      [29.4, -12.7],
      [34.4, -16.4],
      [39.6, -21.1],
      [44.7, -26.7],
      [49.9, -33.5],
      [55.0, -41.6],
      [60.0, -51.1],
    ],
    // Does not crystallize at these strengths, only thickens (from memory): no better than at 60.
    beyond: [],
    fit: { about: 0.307031, terms: [259.9, -66.31, -109.4, -228.3, -340.9, 146.5] },
  },
};

const WATER_DENSITY = 998.2;
const STRONGEST = 60;

/** Mass % of glycol in a mixture of so many vol % (0 to 100), measured apart at 20 °C. */
export const massFromVolume = (glycol: Glycol, strength: number): number => {
  const heavy = strength * FLUIDS[glycol].density;
  return (100 * heavy) / (heavy + (100 - strength) * WATER_DENSITY);
};

/**
 * First ice crystals in inhibited coolant: the handbook's table up to 60 vol %. To 67 no better than at 60; beyond, ethylene
 * glycol rises to the −12.9 °C of the pure fluid (cautious straight line, from memory) and propylene holds.
 */
export const freezingPoint = (glycol: Glycol, strength: number): number =>
  interpolate([...FLUIDS[glycol].rows, ...FLUIDS[glycol].beyond], strength);

/**
 * The same between the two published sets of data, inhibited fluid by volume and pure glycol by mass: they differ by 2 to
 * 4 K at 50 vol %. The second ends at 60 mass %; the little beyond it is borne out by the Army's −54 °C at 60 vol %.
 */
export const freezingSpan = (glycol: Glycol, strength: number): Span => {
  const ends = [freezingPoint(glycol, strength), ofPure(glycol, clamp(strength, 0, STRONGEST))];
  return { low: Math.min(...ends), high: Math.max(...ends) };
};

const ofPure = (glycol: Glycol, strength: number): number => {
  const { about, terms } = FLUIDS[glycol].fit;
  const offset = massFromVolume(glycol, strength) / 100 - about;
  return terms.reduce((sum, term, power) => sum + term * offset ** power, 0) - 273.15;
};

/** The weakest mixture that freezes only there, 0 to 60 vol %; null where none does. By the handbook's table. */
export const strengthFor = (glycol: Glycol, freezing: number): number | null =>
  freezing < freezingPoint(glycol, STRONGEST) ? null : interpolate(inverse(FLUIDS[glycol].rows), freezing);
