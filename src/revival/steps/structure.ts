import type { Step } from '../step.ts';

export const STRUCTURE = [] as const satisfies readonly Step[];
