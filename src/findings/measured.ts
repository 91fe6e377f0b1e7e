/** What was measured of a part: the last reading of each gauge, judged, and what it means for its standing. */
import { type Judged, judge } from '../ageing/judge.ts';
import { coldestNight } from '../ageing/place.ts';
import { VERDICTS, type Verdict } from '../ageing/verdict.ts';
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
  /** Day on which that could first be known: it was written down, and the car stood where it is judged by. */
  news: CivilDate;
}

const NONE: readonly Measured[] = [];

/** The tests of a kind that answer with a number. */
export const gaugesOf = (kind: Kind): Gauged[] => kind.tests.filter((test): test is Gauged => test.gauge !== undefined);

/**
 * The last judged reading of each gauge up to a day, of several samples on its day the gravest, and the last recorded where
 * that one is not judged: what can't be judged takes no alarm back. Readings from before `from` belong to the fluid before.
 */
export const measuredOf = (
  { part, kind, car }: { part: PartFacts; kind: Kind; car: CarFacts },
  on: CivilDate,
  from: CivilDate | null,
): readonly Measured[] => {
  if (part.readings.length === 0) return NONE;
  const known = { details: part.details, coldest: car.place && coldestNight(car.place) };
  return gaugesOf(kind).flatMap((test) => {
    const all = part.readings
      .filter(({ gauge, day }) => gauge === test.gauge.key && day <= on && (from === null || day >= from))
      .map((reading) => ({
        ...judge(test.gauge, reading, known),
        test,
        reading,
        began: reading.day,
        news: newsOf(reading, test, car, known),
      }));
    const judged = ofEachDay(
      all.filter(({ verdict }) => verdict !== null),
      test,
    );
    const [last, latest] = [judged.at(-1), all.at(-1)];
    return [
      ...(last ? [{ ...last, ...runOf(judged, last) }] : []),
      ...(latest && latest.verdict === null ? [latest] : []),
    ];
  });
};

/** Where it is the place that judges a reading, it is news on the day the car was put there, or the place told anew. */
const newsOf = (
  reading: Reading,
  { gauge }: Gauged,
  { placedOn }: CarFacts,
  known: Parameters<typeof judge>[2],
): CivilDate => {
  const { day, recordedOn } = reading;
  const written = [day, recordedOn].sort()[1] as CivilDate;
  if (placedOn === null || placedOn <= written) return written;
  const elsewhere = judge(gauge, reading, { ...known, coldest: null }).verdict;
  return elsewhere === judge(gauge, reading, known).verdict ? written : placedOn;
};

/** One for each day: of several samples the gravest, for the wheels may be wetter than the reservoir; else the last. */
const ofEachDay = (judged: readonly Measured[], { gauge }: Gauged): Measured[] =>
  [...Map.groupBy(judged, ({ reading }) => reading.day).values()].map((sameDay) =>
    sameDay.reduce((kept, one) => (gauge.sampled && graveness(one.verdict) < graveness(kept.verdict) ? kept : one)),
  );

/** The unbroken run of readings, as grave as the last one or graver, that ends with it: where it began, and as news. */
const runOf = (judged: readonly Measured[], last: Measured): Pick<Measured, 'began' | 'news'> => {
  const milder = judged.findLastIndex(({ verdict }) => graveness(verdict) < graveness(last.verdict));
  const run = judged.slice(milder + 1);
  // An older reading of the run, written down later, is no news of it.
  const news = run.map((one) => one.news).sort()[0] ?? last.news;
  return { began: (run[0] ?? last).began, news };
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

/** Day of the newest of the gravest runs: a second gauge that turns bad is told, too. */
export const newsOfGravest = (measured: readonly Measured[], gravest: Measured | null): CivilDate | null =>
  measured
    .filter(({ verdict }) => gravest !== null && verdict === gravest.verdict)
    .reduce<CivilDate | null>((newest, { news }) => (newest === null || news > newest ? news : newest), null);
