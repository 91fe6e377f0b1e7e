/** A step of a return as the trade has it: the ways it can be done, from the least to the most, and what speaks for each. */
import type { CautionKey } from '../catalogue/cautions.ts';
import type { SourceKey } from '../catalogue/sources.ts';
import type { Trait } from '../catalogue/traits.ts';
import type { JobKey } from '../money/jobs.ts';
import type { SupplyKey } from '../money/supplies.ts';
import type { When } from './conditions.ts';
import type { Cycle, Moment } from './leaks.ts';
import type { LookKey } from './looks.ts';
import type { RunKey } from './runs.ts';
import type { Stood, Years } from './sleep.ts';
import type { StageKey } from './stages.ts';

/** What is done to a part, mildest first; `do` is work that is no part’s. */
export const ACTS = ['do', 'look', 'test', 'flush', 'strip', 'renew'] as const;
export type Act = (typeof ACTS)[number];

/** How often it is found, in words; from memory. */
export const ODDS = ['seldom', 'sometimes', 'often', 'nearly always'] as const;
export type Odds = (typeof ODDS)[number];

interface Expectation {
  finding: string;
  /** From so many years on. */
  odds: Partial<Readonly<Record<Years, Odds>>>;
  /** One word more where it stood so. */
  worse?: readonly Stood[];
}

/** One way of doing a step; of several whose conditions hold the last named is taken. */
export interface Way {
  act: Act;
  title: string;
  why: string;
  /** Any one of these lists brings it in; none: always. */
  when: readonly When[];
  jobs?: readonly JobKey[];
  supplies?: readonly SupplyKey[];
  /** Kinds whose records close and open anew with that day; serviced or looked at; used. */
  renews?: readonly string[];
  services?: readonly string[];
  uses?: readonly string[];
  /** What is true of these looks once it is done. */
  leaves?: readonly { look: LookKey; answer: string }[];
}

export interface Step {
  /** Kept with everything that is said of it: never renamed once released. */
  key: string;
  stage: StageKey;
  /** Cars it is for, whatever the rest says. */
  traits?: readonly Trait[];
  without?: readonly Trait[];
  /** Mildest first. */
  ways: readonly [Way, ...Way[]];
  expects: readonly Expectation[];
  /** How it is told by numbers, and which are good; null: nothing is measured. */
  test: string | null;
  /** Looks that are answered when it is ticked. */
  asks?: readonly LookKey[];
  /** Gauges of parts read with it, as kind and gauge. */
  reads?: readonly (readonly [kind: string, gauge: string])[];
  tools: readonly string[];
  /** What a failure means, and what to do then. */
  fails: string;
  /** Its gate does not open while it is open. */
  safety?: true;
  /** Steps that come before it wherever they are in the plan. */
  after?: readonly string[];
  /** Wheels come off or their fasteners are touched: nuts are checked again after some distance. */
  wheels?: true;
  /** Settled by a record of its own and never by a tick: a road test, or one survey of the leak map. */
  run?: RunKey;
  survey?: { cycle: Cycle; moment: Moment };
  /** It falls due some time and distance after these: it is in the plan once one of them has happened. */
  falls?: {
    after: { steps?: readonly string[]; runs?: readonly RunKey[]; wheels?: true };
    km: readonly [number, number] | null;
    days: number;
  };
  cautions: readonly CautionKey[];
  sources: readonly SourceKey[];
}
