/** Boiling point of glycol brake fluid by its water, °C and percent by weight, and what the road asks of it. */
import type { BrakeFluidGrade } from '../../catalogue/brake-fluid-grades.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import type { Span } from '../span.ts';
import { interpolate, inverse, type Row } from '../table.ts';

/** Water at which the standard’s humidification ends; the curve ends with it. */
export const WET_WATER = 3.7;

/** Share of the way from the wet to the dry boiling point: a typical DOT 3 fluid of 205, 187.2, 160, 145 and 140 °C. */
const SHAPE: readonly Row[] = (
  [
    [0, 205],
    [1, 187.2],
    [2, 160],
    [3, 145],
    [WET_WATER, 140],
  ] as const
).map(([water, boiling]) => [water, (boiling - 140) / (205 - 140)]);

const WATER_BY_SHARE = inverse(SHAPE);

/** The ends of a curve: the least dry and wet boiling points of a grade, or those of one fluid. */
export type Curve = Pick<BrakeFluidGrade, 'dryMinC' | 'wetMinC'>;

export const BOILING_SOURCES: readonly SourceKey[] = [
  'dot-3-and-water',
  '49-cfr-571-116',
  'iso-4925',
  'trrl-lr903',
  'memory',
];

export const boilingOn = ({ dryMinC, wetMinC }: Curve, water: number): number =>
  wetMinC + interpolate(SHAPE, water) * (dryMinC - wetMinC);

export const waterOn = ({ dryMinC, wetMinC }: Curve, boiling: number): number =>
  interpolate(WATER_BY_SHARE, (boiling - wetMinC) / (dryMinC - wetMinC));

/**
 * Least boiling point of a grade with so much water: published for DOT 3 from 0 to 3.7 percent, the same shape taken for
 * the others. Beyond 3.7 percent it boils at the wet minimum at most. Null for silicone: it has no such curve.
 */
export const boilingAt = (grade: BrakeFluidGrade, water: number): number | null =>
  grade.base === 'glycol' ? boilingOn(grade, water) : null;

/**
 * Water at which a fluid no better than its grade boils there, 0 to 3.7 percent: at least so much where it began better,
 * and at the end of the curve. Null for silicone.
 */
export const waterAtBoiling = (grade: BrakeFluidGrade, boiling: number): number | null =>
  grade.base === 'glycol' ? waterOn(grade, boiling) : null;

/** Vapor lock of the fluids of the 1970s, °C by percent of water: it comes a little before boiling. */
export const VAPOR_LOCK: { rows: readonly Row[]; sources: readonly SourceKey[] } = {
  rows: [
    [0, 250],
    [1, 180],
    [3, 145],
  ],
  sources: ['trrl-lr903'],
};

/** How hot fluid got in tests on the road, °C: ordinary driving, one binding brake, a long descent with a laden car. */
export const ROAD_HEAT = {
  normal: { low: 50, high: 60 },
  bindingBrake: 143,
  ladenDescent: { low: 150, high: 160 },
} as const;

export interface Boiling extends Span {
  /** The water may lie beyond the curve: the low end is then the most it can be. */
  atMost: boolean;
}

const IN_WORDS: readonly { to: number; says: string }[] = [
  {
    to: ROAD_HEAT.normal.high,
    says: 'At its low end it could boil on any road: ordinary driving brought the fluid to 50 to 60 °C.',
  },
  {
    to: ROAD_HEAT.bindingBrake,
    says: 'At its low end one binding brake could boil it: that brought the fluid to 143 °C in tests on the road.',
  },
  {
    to: ROAD_HEAT.ladenDescent.high,
    says: 'At its low end a long descent with a laden car could boil it: in tests on the road that brought the fluid to 150 to 160 °C.',
  },
  {
    to: Number.POSITIVE_INFINITY,
    says: 'Its low end lies above the 150 to 160 °C of a laden descent in tests on the road; a brake in trouble can get hotter.',
  },
];

const BEYOND =
  'It may hold more water than any published curve covers, and boil lower than told here: do not count on it for a long descent.';

/** What a boiling point means on the road, by its low end; never more than the tests bear out. */
export const roadWords = ({ low, atMost }: Boiling): string => {
  const { says } = IN_WORDS.find(({ to }) => low <= to) as (typeof IN_WORDS)[number];
  return atMost && low > ROAD_HEAT.bindingBrake ? BEYOND : says;
};
