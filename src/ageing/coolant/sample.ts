/** Strength of a coolant sample by refractometer or hydrometer. Strengths in vol % of glycol. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { clamp, type Span } from '../span.ts';
import { interpolate, inverse, type Row } from '../table.ts';
import { type Glycol, massFromVolume } from './freezing.ts';

export const SAMPLE_SOURCES: readonly SourceKey[] = [
  'refractive-mixing',
  'astm-d3321',
  'ashrae-glycol',
  'army-coolant-table',
  'memory',
];

interface Optics {
  /** Refractive index of the pure glycol, sodium light, 20 °C (from memory). */
  index: number;
  /** Density against water at 20 °C: of the pure glycol in water, and of the handbook's inhibited fluid. */
  pure: readonly Row[];
  inhibited: readonly Row[];
}

const OPTICS: Readonly<Record<Glycol, Optics>> = {
  ethylene: {
    index: 1.4318,
    pure: [
      [0, 1],
      [10, 1.014],
      [20, 1.029],
      [30, 1.043],
      [40, 1.057],
      [50, 1.07],
      [60, 1.079],
      [100, 1.1155],
    ],
    inhibited: [
      [0, 1],
      [10, 1.015],
      [20, 1.032],
      [30, 1.047],
      [40, 1.062],
      [50, 1.075],
      [60, 1.088],
    ],
  },
  propylene: {
    index: 1.4325,
    pure: [
      [0, 1],
      [10, 1.008],
      [20, 1.017],
      [30, 1.026],
      [40, 1.034],
      [50, 1.041],
      [60, 1.045],
      [100, 1.038],
    ],
    inhibited: [
      [0, 1],
      [10, 1.01],
      [20, 1.021],
      [30, 1.03],
      [40, 1.038],
      [50, 1.045],
      [60, 1.05],
    ],
  },
};

const WATER_INDEX = 1.333;
/** How far density rises with strength: propylene glycol grows hardly denser beyond, and past 70 vol % lighter again. */
const TOLD_TO: Readonly<Record<Glycol, number>> = { ethylene: 100, propylene: 60 };
/** What the refractometer's own error and the mixing rule come to, vol %. */
const BY_LIGHT = 1.5;

/** Lorentz and Lorenz: what a fluid's index contributes, in proportion to its density. */
const refraction = (index: number): number => (index ** 2 - 1) / (index ** 2 + 2);

/** Refractive index at 20 °C by the Lorentz-Lorenz mixing rule, 0 to 100 vol %; good to 0.0015 up to 60. */
export const index = (glycol: Glycol, strength: number): number => {
  const { pure, index: ofGlycol } = OPTICS[glycol];
  const share = massFromVolume(glycol, strength) / 100;
  const parts = (share * refraction(ofGlycol)) / interpolate(pure, 100) + (1 - share) * refraction(WATER_INDEX);
  const mixed = interpolate(pure, strength) * parts;
  return Math.sqrt((1 + 2 * mixed) / (1 - mixed));
};

/** Degrees Brix of a refractive index at 20 °C: the sucrose scale, a polynomial good to 0.05 from 0 to 50 (from memory). */
export const brixOfIndex = (n: number): number =>
  11758.74 * n ** 5 - 88885.21 * n ** 4 + 270177.93 * n ** 3 - 413145.8 * n ** 2 + 318417.95 * n - 99127.4536;

const brixRows = (glycol: Glycol): Row[] =>
  Array.from({ length: 101 }, (_, strength): Row => [strength, brixOfIndex(index(glycol, strength))]);

const BY_BRIX: Readonly<Record<Glycol, Row[]>> = {
  ethylene: inverse(brixRows('ethylene')),
  propylene: inverse(brixRows('propylene')),
};

/** What a hydrometer would show at 20 °C: 0.0005 a degree, for mixtures near half and half; from memory. */
export const densityAt20 = (reading: number, temperature: number): number => reading + 0.0005 * (temperature - 20);

/** Strength by the sugar scale of a refractometer, ± 1.5 vol %. Above 60 vol % rougher; with both glycols mixed wrong. */
export const strengthByBrix = (glycol: Glycol, brix: number): Span => {
  const strength = interpolate(BY_BRIX[glycol], brix);
  return { low: clamp(strength - BY_LIGHT, 0, 100), high: clamp(strength + BY_LIGHT, 0, 100) };
};

/**
 * Strength by hydrometer at 20 °C against water: the weak end if inhibitors make it heavy, the strong end if it is plain
 * glycol. The weak end tells no more than 60 vol %; propylene glycol beyond 60 cannot be told, and is said as up to 100.
 */
export const strengthByDensity = (glycol: Glycol, density: number): Span => {
  const { pure, inhibited } = OPTICS[glycol];
  const rising = pure.filter(([strength]) => strength <= TOLD_TO[glycol]);
  const high = interpolate(inverse(rising), density);
  return { low: interpolate(inverse(inhibited), density), high: high < TOLD_TO[glycol] ? high : 100 };
};
