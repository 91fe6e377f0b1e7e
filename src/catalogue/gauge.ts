/** Gauges: the home tests that answer with a number, and how that number is judged. */
import type { Unit } from './units.ts';

/** A stretch of values. `from` and `to` belong to it, `under` is its first value that does not. */
export interface Zone {
  from?: number;
  to?: number;
  under?: number;
}

/** What is in `good` is good, else what is in `watch` wants watching, else it asks for action. */
export interface Bands {
  good: Zone;
  watch?: Zone;
}

/** From the lowest to the highest value. */
export type Stretch = readonly [low: number, high: number];

export interface Gauge {
  /** Own within the kind, and kept with every reading: never renamed once released. */
  key: string;
  /** The unit of the bands, in which readings are kept. */
  unit: Unit;
  /** Others of the same quantity it may be typed in. */
  also?: readonly Unit[];
  decimals: number;
  /** What can be at all: beyond it a reading is refused. */
  range: Stretch;
  /** What is seen in practice: beyond it a reading is asked back. By the same answer as the bands, where that shifts it. */
  usual: Stretch | { of: Readonly<Record<string, Stretch>> };
  /**
   * Bands of the reading; or, with `by`, those for the answer to one of the part's details. `unknown` are those for no
   * answer: never kinder than the rest, unless a rule of the trade says which to take, as it does for brake fluid.
   */
  bands: Bands | { by: string; of: Readonly<Record<string, Bands>> };
  /** The bands are of the reading less this, or of the reading in percent of it. Without it a reading is not judged. */
  against?: { what: 'coldest night' } | { what: 'detail'; key: string; as: 'difference' | 'percent' };
  /** The value that is judged asks for action above this, whatever it is against. */
  ceiling?: number;
  /** How the number on the instrument becomes the value that is judged. */
  reads?: 'acid density' | 'coolant density' | 'coolant sugar scale' | 'coolant strength' | 'tire pressure';
  /** The temperature at the reading shifts it: asked for beside it. */
  warmth?: { of: string };
  /** Samples of one day may differ: the gravest counts, where elsewhere the last one does. */
  sampled?: true;
  /** Minutes it takes, tools at hand. */
  minutes: number;
  /** Read on the monthly round. */
  round?: true;
}

/** A question about what a part is or holds that the models and gauges ask. */
export type Detail = {
  key: string;
  name: string;
  /** Where the answer is found. */
  hint?: string;
  /** True of the car rather than of what is in it: the answer outlasts a renewal. */
  stays?: true;
} & (
  | { choices: Readonly<Record<string, string>> }
  | { unit: Unit; also?: readonly Unit[]; range: Stretch; decimals: number }
);
