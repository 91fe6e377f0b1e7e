import type { Step } from '../step.ts';

export const MAKE_SAFE = [] as const satisfies readonly Step[];
