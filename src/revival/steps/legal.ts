import type { Step } from '../step.ts';

export const LEGAL = [] as const satisfies readonly Step[];
