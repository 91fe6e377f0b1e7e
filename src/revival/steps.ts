/** Every step of a return, stage after stage, in the order of the work. */
import type { Step } from './step.ts';
import { BRAKES } from './steps/brakes.ts';
import { COOLING } from './steps/cooling.ts';
import { DRAINS } from './steps/drains.ts';
import { DRIVELINE } from './steps/driveline.ts';
import { EVIDENCE } from './steps/evidence.ts';
import { FIRST_START } from './steps/first-start.ts';
import { FREE } from './steps/free.ts';
import { FUEL } from './steps/fuel.ts';
import { LEAKS } from './steps/leaks.ts';
import { LEGAL } from './steps/legal.ts';
import { MAKE_SAFE } from './steps/make-safe.ts';
import { PAPERS } from './steps/papers.ts';
import { PRE_OIL } from './steps/pre-oil.ts';
import { ROAD } from './steps/road.ts';
import { SORTING } from './steps/sorting.ts';
import { SPARK } from './steps/spark.ts';
import { STEERING } from './steps/steering.ts';
import { STRUCTURE } from './steps/structure.ts';
import { TIRES } from './steps/tires.ts';
import { WIRING } from './steps/wiring.ts';
import { YARD } from './steps/yard.ts';

export const STEPS: readonly Step[] = [
  ...PAPERS,
  ...EVIDENCE,
  ...STRUCTURE,
  ...MAKE_SAFE,
  ...WIRING,
  ...DRAINS,
  ...FREE,
  ...PRE_OIL,
  ...FUEL,
  ...SPARK,
  ...COOLING,
  ...FIRST_START,
  ...LEAKS,
  ...BRAKES,
  ...DRIVELINE,
  ...STEERING,
  ...TIRES,
  ...LEGAL,
  ...YARD,
  ...ROAD,
  ...SORTING,
];

const BY_KEY: ReadonlyMap<string, Step> = new Map(STEPS.map((step) => [step.key, step]));
export const stepWith = (key: string): Step | undefined => BY_KEY.get(key);
