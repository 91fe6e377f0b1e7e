import type { Step } from '../step.ts';

export const LEAKS = [] as const satisfies readonly Step[];
