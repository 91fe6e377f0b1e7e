import type { Step } from '../step.ts';

export const EVIDENCE = [] as const satisfies readonly Step[];
