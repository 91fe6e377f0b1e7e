/** The conditions that bring a step into a plan, as data. */
import type { Trait } from '../catalogue/traits.ts';
import type { Circumstance } from './stay.ts';

/** All that is named must hold; of the lists for place and circumstances one entry is enough. */
export interface When {
  traits?: readonly Trait[];
  without?: readonly Trait[];
  /** It stands at least `from`, and not as long as `under` months. */
  months?: { from?: number; under?: number };
  place?: readonly PlaceTest[];
  /** Under a roof with walls, or nobody has said. */
  indoors?: true;
  circumstances?: readonly Circumstance[];
  /** None of these. */
  spared?: readonly Circumstance[];
  side?: { topic: string; is: readonly string[] };
  battery?: 'holds as it is' | 'holds by itself';
  part?: PartTest;
  /** Steps of the lay-up that were due and not done, or that were done. */
  undone?: readonly string[];
  done?: readonly string[];
  /** None of these was done. */
  lacking?: readonly string[];
  /** Steps nobody ticked either way: they may have been done all the same. */
  untold?: readonly string[];
  /** Rounds found something that is not put right. */
  found?: true;
}

/** One of these kinds is on the car and is that old at its oldest, or asked for by then; undated counts as both. */
export type PartTest = { kinds: readonly string[] } & (
  | { months: number }
  | { asks: 'at parking' | 'before the return' }
  /** Fuel: by its own life it is over, or nobody can date it. */
  | { over: 'by the return' }
);

export type PlaceTest = 'frost' | 'hard freeze' | 'damp' | 'coast' | 'heat' | 'outdoors' | 'open' | 'not heated';
