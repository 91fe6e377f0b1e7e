import type { Step } from '../step.ts';
import { FLUIDS } from './brakes/fluids.ts';
import { PARTS } from './brakes/parts.ts';
import { PROOF } from './brakes/proof.ts';

export const BRAKES: readonly Step[] = [...PARTS, ...FLUIDS, ...PROOF];
