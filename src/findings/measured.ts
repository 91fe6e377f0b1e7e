/** What was measured of a part: the last reading of each gauge, judged, and what it means for its standing. */
import { type Judged, judge, VERDICTS, type Verdict } from '../ageing/judge.ts';
import { coldestNight } from '../ageing/place.ts';
import type { Gauge } from '../catalogue/gauge.ts';
import type { Kind, Test } from '../catalogue/kind.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { CarFacts, PartFacts, Reading } from './facts.ts';
import type { Standing } from './standing.ts';

export type Gauged = Test & { gauge: Gauge };

export interface Measured extends Judged {
  test: Gauged;
  reading: Reading;
  /** First day of the unbroken run of readings that are as grave as this one, or graver. */
  began: CivilDate;
}

const NONE: readonly Measured[] = [];

/** The tests of a kind that answer with a number. */
export const gaugesOf = (kind: Kind): Gauged[] => kind.tests.filter((test): test is Gauged => test.gauge !== undefined);

/**
 * The last judged reading of each gauge up to a day, and the last of all where that one is not judged: what can't be
 * judged takes no alarm back. In the order of the kind's tests.
 */
export const measuredOf = (part: PartFacts, kind: Kind, car: CarFacts, on: CivilDate): readonly Measured[] => {
  if (part.readings.length === 0) return NONE;
  const known = { details: part.details, coldest: car.place && coldestNight(car.place) };
  return gaugesOf(kind).flatMap((test) => {
    const all = part.readings
      .filter(({ gauge, day }) => gauge === test.gauge.key && day <= on)
      .map((reading) => ({ ...judge(test.gauge, reading, known), test, reading, began: reading.day }));
    const judged = all.filter(({ verdict }) => verdict !== null);
    const [last, unjudged] = [judged.at(-1), all.at(-1)];
    return [
      ...(last ? [{ ...last, began: runOf(judged, last) }] : []),
      ...(unjudged && unjudged.verdict === null ? [unjudged] : []),
    ];
  });
};

/** First day of the unbroken run of judged readings, as grave as the last one or graver, that ends with it. */
const runOf = (judged: readonly Measured[], last: Measured): CivilDate => {
  const milder = judged.findLastIndex(({ verdict }) => graveness(verdict) < graveness(last.verdict));
  return (judged[milder + 1] ?? last).began;
};

/** What is not judged asks for no more than what is good. */
const graveness = (verdict: Verdict | null): number => (verdict === null ? 0 : VERDICTS.indexOf(verdict));

/** The reading that weighs most: the gravest, of two as grave the one whose run began first; null where none asks. */
export const gravestOf = (measured: readonly Measured[]): Measured | null => {
  let gravest: Measured | null = null;
  for (const one of measured)
    if (
      graveness(one.verdict) > graveness(gravest?.verdict ?? null) ||
      (gravest && one.verdict === gravest.verdict && one.began < gravest.began)
    )
      gravest = one;
  return gravest;
};

/** Readings can condemn and never clear: a bad one stands as past on a safety item and as due on others. */
export const standingByReading = (gravest: Measured | null, cautious: boolean): Standing => {
  switch (gravest?.verdict) {
    case 'act':
      return cautious ? 'past' : 'due';
    case 'watch':
      return 'look';
    default:
      return 'in date';
  }
};
