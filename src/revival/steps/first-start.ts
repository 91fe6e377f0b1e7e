import type { Step } from '../step.ts';

export const FIRST_START = [] as const satisfies readonly Step[];
