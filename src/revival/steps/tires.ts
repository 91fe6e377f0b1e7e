import type { Step } from '../step.ts';

export const TIRES = [] as const satisfies readonly Step[];
