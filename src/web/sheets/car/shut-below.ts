import type { RevivalPlan, StagePlan } from '../../../revival/plan.ts';
import { STAGE_KEYS, type StageKey } from '../../../revival/stages.ts';

/** Stages before this one whose gates are not passed. */
export const shutBelow = ({ stages }: RevivalPlan, key: StageKey): StagePlan[] =>
  stages.slice(0, STAGE_KEYS.indexOf(key)).filter(({ gate: { state } }) => state === 'shut' || state === 'ready');
