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

/** The last reading of each gauge up to a day, in the order of the kind's tests. */
export const measuredOf = (part: PartFacts, kind: Kind, car: CarFacts, on: CivilDate): readonly Measured[] => {
  if (part.readings.length === 0) return NONE;
  const known = { details: part.details, coldest: car.place && coldestNight(car.place) };
  return gaugesOf(kind).flatMap((test) => {
    const read = part.readings.filter(({ gauge, day }) => gauge === test.gauge.key && day <= on);
    const last = read.at(-1);
    if (!last) return [];
    const judged = judge(test.gauge, last, known);
    const run = read.findLastIndex(
      (reading) => graveness(judge(test.gauge, reading, known).verdict) < graveness(judged.verdict),
    );
    return [{ ...judged, test, reading: last, began: (read[run + 1] as Reading).day }];
  });
};

/** Unjudged and good alike ask for nothing. */
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
