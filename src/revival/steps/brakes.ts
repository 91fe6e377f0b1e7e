import type { Step } from '../step.ts';

export const BRAKES = [] as const satisfies readonly Step[];
