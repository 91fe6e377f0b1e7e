/** What still comes before a step: the steps it rests on, and, where the engine runs or the car moves, every gate below. */
import type { Gate } from './gates.ts';
import { type Entry, those } from './journal.ts';
import { HUBS_APART, RUNS, type RunKey, SENSES } from './runs.ts';
import { STAGE_KEYS, STAGES, type Stage } from './stages.ts';
import type { PlannedStep } from './step-state.ts';

export interface Wait {
  key: string;
  words: string;
}

export const waitsOf = (
  step: PlannedStep,
  steps: readonly PlannedStep[],
  gates: readonly Gate[],
  entries: readonly Entry[],
): Wait[] => {
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
  return [...rests, ...shut, ...(step.run ? sinceLastRun(step.run, entries) : [])];
};

/** What the last run left: something that got worse, or hubs too far apart, is found before a longer one. */
const sinceLastRun = (run: RunKey, entries: readonly Entry[]): Wait[] => {
  const last = those(entries, 'run').at(-1);
  if (!last || last.run === run) return [];
  const worse = last.notes.filter(({ versus }) => versus === 'worse');
  return [
    ...worse.map(({ sense, kind }) => ({
      key: `worse:${sense}:${kind}`,
      words: `find what got worse on ${RUNS[last.run].name}: ${SENSES[sense].name.toLowerCase()}, ${kind}`,
    })),
    ...(last.hubs !== null && last.hubs > HUBS_APART
      ? [{ key: 'hubs', words: `find why one hub was ${last.hubs} °C hotter than another on ${RUNS[last.run].name}` }]
      : []),
  ];
};
