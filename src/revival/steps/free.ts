import type { Step } from '../step.ts';

export const FREE = [] as const satisfies readonly Step[];
