import type { Step } from '../step.ts';

export const YARD = [] as const satisfies readonly Step[];
