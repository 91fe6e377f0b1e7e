import type { Step } from '../step.ts';

export const DRAINS = [] as const satisfies readonly Step[];
