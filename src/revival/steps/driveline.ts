import type { Step } from '../step.ts';

export const DRIVELINE = [] as const satisfies readonly Step[];
