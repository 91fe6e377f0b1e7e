import type { Step } from '../step.ts';

export const WIRING = [] as const satisfies readonly Step[];
