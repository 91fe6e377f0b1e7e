import type { Step } from '../step.ts';

export const STEERING = [] as const satisfies readonly Step[];
