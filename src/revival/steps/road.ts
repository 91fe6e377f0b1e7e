import type { Step } from '../step.ts';

export const ROAD = [] as const satisfies readonly Step[];
