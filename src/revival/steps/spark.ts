import type { Step } from '../step.ts';

export const SPARK = [] as const satisfies readonly Step[];
