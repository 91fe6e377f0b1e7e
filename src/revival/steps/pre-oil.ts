import type { Step } from '../step.ts';

export const PRE_OIL = [] as const satisfies readonly Step[];
