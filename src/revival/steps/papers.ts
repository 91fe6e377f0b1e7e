import type { Step } from '../step.ts';

export const PAPERS = [] as const satisfies readonly Step[];
