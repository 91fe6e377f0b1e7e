import type { Step } from '../step.ts';

export const COOLING = [] as const satisfies readonly Step[];
