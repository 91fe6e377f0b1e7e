/** What the models of ageing say about a part: its estimated condition, and the days it is expected to change. */
import type { Place } from '../../ageing/place.ts';
import { ASSUMED } from '../../ageing/place.ts';
import type { DaySpan } from '../../ageing/span.ts';
import type { Kind } from '../../catalogue/kind.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { CarFacts, PartFacts, Reading } from '../facts.ts';
import { measuredOf } from '../measured.ts';
import type { Since } from '../since.ts';

export interface Outlook {
  /** Day it is told for. */
  on: CivilDate;
  /** One line: the estimate with both its ends. */
  now: string;
  /** True where a reading stands behind it; otherwise it is told from dates and place alone. */
  measured: boolean;
  days: { what: string; when: DaySpan; never: string }[];
  says: string[];
  /** Where the estimate ends, and whose word counts from there. */
  ends: string;
  /** The desk that computes the same, with the numbers of this part. */
  desk: string | null;
  sources: readonly SourceKey[];
}

/** What a model may look at: a finding is one of these. */
export interface Known {
  part: PartFacts;
  kind: Kind;
  car: CarFacts;
  since: Since | null;
  on: CivilDate;
}

export interface Model {
  tell(known: Known): Outlook | null;
  /** What the estimate asks to be done, and the days from which it does, in order. It never does more than ask. */
  asks?: { what: string; since(known: Known): CivilDate[] };
  /** Day until which, at the worst, it bears what was measured; null: nothing was, or it bears none of it. */
  holdsUntil?(known: Known): CivilDate | null;
  /** Gauges that would make it surer, the best first; none where no gauge can. */
  surest?: readonly string[];
}

/** Days after a reading during which an estimate does not ask for another: the monthly round would come by itself. */
export const ASKS_AFTER = 30;

export const placeOf = ({ car }: Known): Place => car.place ?? ASSUMED;

/** Said where a place was assumed. */
export const PLACE_ASSUMED =
  'Nobody has said where the car stands: an unheated garage in a temperate place is assumed, and frost is not judged.';

/** The readings of some gauges that count on that day, newest first: of a day the one that counts, and none of before the fill. */
export const readingsOf = (known: Known, ...gauges: readonly string[]): Reading[] =>
  measuredOf(known, known.on, known.kind.clock === 'filled' ? (known.since?.from ?? null) : null)
    .map(({ reading }) => reading)
    .filter(({ gauge }) => gauges.includes(gauge))
    .sort((a, b) => b.day.localeCompare(a.day));

export const lastOf = (known: Known, ...gauges: readonly string[]): Reading | undefined =>
  readingsOf(known, ...gauges)[0];

export const choiceIn = ({ part }: Known, key: string): string | undefined => {
  const told = part.details[key];
  return typeof told === 'string' ? told : undefined;
};

export const numberIn = ({ part }: Known, key: string): number | undefined => {
  const told = part.details[key];
  return typeof told === 'number' ? told : undefined;
};
