import type { Step } from '../step.ts';

export const SORTING = [] as const satisfies readonly Step[];
