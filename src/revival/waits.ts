/** What still comes before a step: the steps it rests on, and, where the engine runs or the car moves, every gate below. */
import type { Gate } from './gates.ts';
import { STAGE_KEYS, STAGES, type Stage } from './stages.ts';
import type { PlannedStep } from './step-state.ts';

export interface Wait {
  key: string;
  words: string;
}

export const waitsOf = (step: PlannedStep, steps: readonly PlannedStep[], gates: readonly Gate[]): Wait[] => {
  const own = STAGE_KEYS.indexOf(step.stage);
  const rests = (step.after ?? []).flatMap((key): Wait[] => {
    const before = steps.find((one) => one.key === key);
    if (!before || before.state === 'done' || (before.state === 'left out' && !before.safety)) return [];
    return [{ key: `step:${key}`, words: before.way.title }];
  });
  const shut = (STAGES[step.stage] as Stage).power
    ? gates
        .filter(({ stage, state }) => STAGE_KEYS.indexOf(stage) < own && (state === 'shut' || state === 'ready'))
        .map(({ stage }): Wait => ({ key: `gate:${stage}`, words: `the gate of ${STAGES[stage].name}` }))
    : [];
  return [...rests, ...shut];
};
