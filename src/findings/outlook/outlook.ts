/** What the models of ageing say about a part: its estimated condition, and the days it is expected to change. */
import type { Place } from '../../ageing/place.ts';
import { ASSUMED } from '../../ageing/place.ts';
import type { DaySpan } from '../../ageing/span.ts';
import type { Kind } from '../../catalogue/kind.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { CarFacts, PartFacts, Reading } from '../facts.ts';
import type { Since } from '../since.ts';

export interface Outlook {
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
  /** First day from which the estimate asks for a look; null: it does not ask. It never does more than ask. */
  asksFrom?(known: Known): CivilDate | null;
}

export const placeOf = ({ car }: Known): Place => car.place ?? ASSUMED;

/** Said where a place was assumed. */
export const PLACE_ASSUMED =
  'Nobody has said where the car stands: an unheated garage in a temperate place is assumed, and frost is not judged.';

export const lastOf = ({ part, on }: Known, ...gauges: readonly string[]): Reading | undefined =>
  part.readings.findLast(({ gauge, day }) => gauges.includes(gauge) && day <= on);

export const choiceIn = ({ part }: Known, key: string): string | undefined => {
  const told = part.details[key];
  return typeof told === 'string' ? told : undefined;
};

export const numberIn = ({ part }: Known, key: string): number | undefined => {
  const told = part.details[key];
  return typeof told === 'number' ? told : undefined;
};
