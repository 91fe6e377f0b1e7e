import type { Step } from '../step.ts';

export const FUEL = [] as const satisfies readonly Step[];
