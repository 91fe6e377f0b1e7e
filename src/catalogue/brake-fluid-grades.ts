import type { SourceKey } from './sources.ts';

/** A grade of brake fluid: least boiling points in °C, viscosity in mm²/s, color when new. */
export interface BrakeFluidGrade {
  name: string;
  base: 'glycol' | 'silicone';
  /** Least boiling point as bought, and after the standard's humidification. */
  dryMinC: number;
  wetMinC: number;
  viscosityMaxAtMinus40C: number;
  viscosityMinAt100C: number;
  color: string;
  sources: readonly SourceKey[];
}

const GLYCOL = { base: 'glycol', color: 'colorless to amber', viscosityMinAt100C: 1.5 } as const;
const FMVSS: { sources: SourceKey[] } = { sources: ['49-cfr-571-116'] };
const ISO: { sources: SourceKey[] } = { sources: ['iso-4925'] };

export const BRAKE_FLUID_GRADES: readonly BrakeFluidGrade[] = [
  { name: 'DOT 3', ...GLYCOL, dryMinC: 205, wetMinC: 140, viscosityMaxAtMinus40C: 1500, ...FMVSS },
  { name: 'DOT 4', ...GLYCOL, dryMinC: 230, wetMinC: 155, viscosityMaxAtMinus40C: 1800, ...FMVSS },
  { name: 'DOT 5.1', ...GLYCOL, dryMinC: 260, wetMinC: 180, viscosityMaxAtMinus40C: 900, ...FMVSS },
  {
    name: 'DOT 5 silicone',
    base: 'silicone',
    color: 'purple',
    dryMinC: 260,
    wetMinC: 180,
    viscosityMaxAtMinus40C: 900,
    viscosityMinAt100C: 1.5,
    ...FMVSS,
  },
  { name: 'ISO class 3', ...GLYCOL, dryMinC: 205, wetMinC: 140, viscosityMaxAtMinus40C: 1500, ...ISO },
  { name: 'ISO class 4', ...GLYCOL, dryMinC: 230, wetMinC: 155, viscosityMaxAtMinus40C: 1500, ...ISO },
  { name: 'ISO class 5-1', ...GLYCOL, dryMinC: 260, wetMinC: 180, viscosityMaxAtMinus40C: 900, ...ISO },
  { name: 'ISO class 6', ...GLYCOL, dryMinC: 250, wetMinC: 165, viscosityMaxAtMinus40C: 750, ...ISO },
  { name: 'ISO class 7', ...GLYCOL, dryMinC: 260, wetMinC: 180, viscosityMaxAtMinus40C: 750, ...ISO },
];
