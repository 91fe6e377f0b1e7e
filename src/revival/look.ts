import type { Verdict } from '../ageing/verdict.ts';
import type { Trait } from '../catalogue/traits.ts';

/** Something to be looked at or measured on a sleeper, with the answers it can have. */
export interface Look {
  name: string;
  how: string;
  /** Every answer with what it says; `act` is grave, `good` clears nothing but itself. */
  answers: Readonly<Record<string, { words: string; verdict: Verdict }>>;
  /** Where a number answers: the first band it lies under names the answer. */
  number?: {
    unit: string;
    range: readonly [low: number, high: number];
    bands: readonly { under: number; answer: string }[];
  };
  /** Asked at a first look at the car, without tools. */
  survey?: true;
  traits?: readonly Trait[];
  without?: readonly Trait[];
}
