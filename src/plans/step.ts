/** A step of a plan as the trade has it: what, when, why, and the conditions that bring it in. */
import type { CautionKey } from '../catalogue/cautions.ts';
import type { SourceKey } from '../catalogue/sources.ts';
import type { When } from './conditions.ts';
import type { FigureKey } from './figures.ts';
import type { ListKey } from './lists.ts';
import type { TopicKey } from './topics.ts';

export const PHASES = {
  settle: 'Settle',
  order: 'Order',
  book: 'Book',
  do: 'Do beforehand',
  day: 'On the day, in this order',
} as const;
export type LayUpPhase = keyof typeof PHASES;

export const WAKE_UP_PHASES = {
  ahead: 'Weeks ahead',
  look: 'Look before anything is touched',
  undo: 'Undo the lay-up',
  make: 'Put right',
  brakes: 'Brakes, tires, lights',
  start: 'First start and walking pace',
  papers: 'Papers, in this order',
  gate: 'Before the road',
} as const;
export type WakeUpPhase = keyof typeof WAKE_UP_PHASES;

/** What ticking it off writes into the car’s records, beside the tick itself. */
export interface Records {
  /** Kinds renewed: the record closes, its successor opens with this day. */
  renews?: readonly string[];
  /** Kinds looked at or serviced, and used, that day. */
  services?: readonly string[];
  uses?: readonly string[];
  /** Gauges to read, as kind and gauge. */
  reads?: readonly (readonly [kind: string, gauge: string])[];
  /** Answers that become true of these kinds. */
  answers?: readonly { kinds: readonly string[]; key: string; value: string | number }[];
  /** The car now stands where the stay has it. */
  parks?: true;
  odometer?: true;
}

export interface Step<Phase extends string = LayUpPhase | WakeUpPhase> {
  /** Own within its plan, and kept with every tick: never renamed once released. */
  key: string;
  phase: Phase;
  title: string;
  /** Days before the parking day, or before the day it comes back. */
  days: number;
  why: string;
  /** Hands on, once what it needs is there. */
  minutes: number;
  needs?: readonly string[];
  /** Any one of these lists brings it in; none: always. */
  when: readonly When[];
  /** Steps that come before it wherever they are in the plan. */
  after?: readonly string[];
  /** Steps that, once done, leave nothing of it to do. */
  moot?: readonly string[];
  topic?: TopicKey;
  figures?: readonly FigureKey[];
  /** Lines about this car: what falls due, what is to be bought. */
  lists?: readonly ListKey[];
  records?: Records;
  cautions: readonly CautionKey[];
  sources: readonly SourceKey[];
}
