/** What was said of a return, in the order it was said; the plan is a function of it. */
import type { CivilDate } from '../dates/civil.ts';
import type { Cycle, Moment, Spot } from './leaks.ts';
import type { LookKey } from './looks.ts';
import type { RunKey, RunNote } from './runs.ts';
import type { StageKey } from './stages.ts';
import type { Act } from './step.ts';

/** An answer to a look; where a number answered, the number. */
export interface Seen {
  what: 'seen';
  look: LookKey;
  answer: string;
  value: number | null;
}

/** What became of a step; `act` is the way it was done. Cost in the collection’s currency, own hours. */
export interface Tick {
  what: 'tick';
  step: string;
  act: Act;
  state: 'done' | 'left out';
  cost: number | null;
  hours: number | null;
  /** Done although these were still to come before it; told with the reason in the note. */
  despite?: readonly string[];
}

/** A gate that was passed: on its evidence, or in writing despite what is named, with the reason in the note. */
export interface Pass {
  what: 'pass';
  stage: StageKey;
  despite: readonly string[];
}

/** A stop that was decided: to go on, for the reason in the note, perhaps under a new ceiling. */
interface Decision {
  what: 'decision';
  stop: string;
  ceiling: number | null;
}

/** A road test: how it ended, how far it went, what was noted. */
export interface Run {
  what: 'run';
  run: RunKey;
  ended: 'as planned' | 'stopped';
  km: number | null;
  notes: readonly RunNote[];
  /** Hottest hub against the coolest, °C. */
  hubs: number | null;
}

/** One survey of the leak map. */
export interface Survey {
  what: 'survey';
  cycle: Cycle;
  moment: Moment;
  spots: readonly Spot[];
}

export type Said = Seen | Tick | Pass | Decision | Run | Survey;

export type Entry<T extends Said = Said> = T & { id: string; day: CivilDate; by: string; note: string };

export const those = <W extends Said['what']>(
  entries: readonly Entry[],
  what: W,
): Entry<Extract<Said, { what: W }>>[] =>
  entries.filter((entry): entry is Entry<Extract<Said, { what: W }>> => entry.what === what);
