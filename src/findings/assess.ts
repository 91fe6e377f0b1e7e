/** One part, its claims and a day become a finding: its standing, the range of its age, and the days that change it. */

import type { Verdict } from '../ageing/verdict.ts';
import type { Clock } from '../catalogue/clock.ts';
import type { Kind } from '../catalogue/kind.ts';
import type { CivilDate } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';
import type { DateRange } from '../dates/partial-date.ts';
import { type Distance, distanceOf, isMetered } from './distance.ts';
import type { CarFacts, Claim, PartFacts } from './facts.ts';
import { gaugesOf, gravestOf, type Measured, measuredOf, newsOfGravest, standingByReading } from './measured.ts';
import { asksOf } from './outlook.ts';
import type { Ruling } from './ruling.ts';
import { isDated, labelOf, type Since, sinceLast, sinceOf, sinceOnce } from './since.ts';
import { graver, type Standing } from './standing.ts';
import { stretchOf, type Turn, type Turns, turnsOfAge, turnsOfLabel } from './turns.ts';

export interface Finding {
  part: PartFacts;
  kind: Kind;
  car: CarFacts;
  ruling: Ruling;
  on: CivilDate;
  standing: Standing;
  /** What brought it: of several the one named first. */
  by: (typeof CAUSES)[number];
  /** First day of this standing, as far as the facts tell; null while unproven or in date. */
  began: CivilDate | null;
  /** The clock that was read, and its range; null where no date is known at all. */
  clock: Clock;
  since: Since | null;
  lastLook: Since | null;
  /** Last valid day stated on the part itself: it rules over every interval. */
  label: CivilDate | null;
  look: Turn | null;
  due: Turn | null;
  past: Turn | null;
  distance: Distance | null;
  /** The last reading of each gauge, and the one that weighs most. */
  measured: readonly Measured[];
  gravest: Measured | null;
  /** What there is to tell, each by itself, so that none hides another: since when, as far as that could be known. */
  news: {
    calendar: Reached;
    reading: { verdict: Verdict | null; began: CivilDate | null };
    /** The last day that has come from which an estimate asks. */
    estimate: CivilDate | null;
  };
}

/** What can bring a standing. An estimate only ever asks for a look: to decide is for a reading. */
export const CAUSES = ['age', 'distance', 'reading', 'estimate'] as const;

export const assess = (part: PartFacts, kind: Kind, car: CarFacts, ruling: Ruling, on: CivilDate): Finding => {
  const cautious = kind.severity === 'safety';
  const printed = sinceOnce(part.claims, 'printed', car.built, cautious);
  const clock = clockOf(part.claims, kind, car.built, printed !== null);
  const since = clock === 'printed' ? printed : sinceOf(part.claims, clock, car.built, cautious);
  const lastLook = clock === 'serviced' ? null : sinceLast(part.claims, 'serviced', car.built);
  const label = printed && labelOf(part.claims, car.built, cautious);
  const known = { part, kind, car, since, on };
  const measured = measuredOf(known, on, kind.clock === 'filled' ? (since?.from ?? null) : null);
  const gravest = gravestOf(measured);
  const turns = label
    ? turnsOfLabel(label, ruling, lastLook)
    : turnsOfAge(since, ruling, lastLook, stretchOf(known, ruling, measured));
  const distance = distanceOf(part.claims, clock, car, ruling, on);
  const judged =
    (label || since) && (turns.look || turns.past || ruling.replaceByKm === null || isMetered(part.claims, clock, car));
  const asks = asksOf(known)
    .map((day) => afterLook(day, kind, lastLook, ruling))
    .filter((day) => day <= on)
    .sort();
  const reached: Reached[] = [
    judged ? standingByAge(turns, since, on, cautious) : UNPROVEN,
    { standing: distance?.standing ?? 'in date', began: distance?.readOn ?? null },
    { standing: standingByReading(gravest, cautious), began: gravest?.began ?? null },
    { standing: asks.length > 0 ? 'look' : 'in date', began: asks[0] ?? null },
  ];
  const calendar = reached.slice(0, 2);
  const { standing, began: sinceWhen } = worstOf(reached);
  return {
    part,
    kind,
    car,
    ruling,
    on,
    standing,
    by: CAUSES[reached.findIndex((one) => one.standing === standing)] ?? 'age',
    began: sinceWhen,
    clock,
    since,
    lastLook,
    label,
    ...turns,
    distance,
    measured,
    gravest,
    news: {
      calendar: worstOf(calendar),
      reading: { verdict: gravest?.verdict ?? null, began: newsOfGravest(measured, gravest) },
      estimate: asks.at(-1) ?? null,
    },
  };
};

/** The gravest standing of several, and since when. */
const worstOf = (reached: readonly Reached[]): Reached => {
  const standing = reached.reduce<Standing>((worst, one) => graver(worst, one.standing), 'in date');
  return { standing, began: standing === 'in date' ? null : began(reached.filter((one) => one.standing === standing)) };
};

/** Where nothing can be measured, a look answers the estimate until the next one is owed: it then asks anew. */
const afterLook = (asks: CivilDate, kind: Kind, lastLook: Since | null, { lookEvery }: Ruling): CivilDate =>
  gaugesOf(kind).length === 0 && lastLook?.from != null && lastLook.from >= asks
    ? limitOn(lastLook.from, lookEvery)
    : asks;

/** A standing by age, by distance, by a reading or by an estimate alone. */
interface Reached {
  standing: Standing;
  began: CivilDate | null;
}

const UNPROVEN: Reached = { standing: 'unproven', began: null };

/** Where several agree, the standing began with the first of them, and the others change nothing. */
const began = (reached: readonly Reached[]): CivilDate | null =>
  reached.reduce<CivilDate | null>(
    (first, { began: day }) => (first === null || (day !== null && day < first) ? day : first),
    null,
  );

/** The kind's own clock; without a date on it, the one that stands in for it. */
const clockOf = (claims: readonly Claim[], { clock, fallback }: Kind, built: DateRange, labeled: boolean): Clock => {
  const own = clock === 'printed' && !labeled ? 'made' : clock;
  const has = (of: Clock): boolean => claims.some((claim) => claim.clock === of && isDated(claim, built));
  return fallback && !has(own) && has(fallback) ? fallback : own;
};

const standingByAge = ({ look, due, past }: Turns, since: Since | null, on: CivilDate, cautious: boolean): Reached => {
  if (past) {
    // Past at its youngest is past whatever the rest; past at its oldest alone is proof enough against a safety item.
    if (past.best && past.best <= on)
      return { standing: 'past', began: cautious && past.worst ? past.worst : past.best };
    if (past.worst === null) return { standing: 'unproven', began: null };
    if (past.worst <= on)
      return cautious ? { standing: 'past', began: past.worst } : { standing: 'unproven', began: null };
    if (due?.worst && due.worst <= on) return { standing: 'due', began: due.worst };
  }
  if (look) {
    // With no oldest age at all, the look is owed at once: it is what would settle it.
    if (look.worst === null) return since?.to ? { standing: 'look', began: since.to } : UNPROVEN;
    if (look.worst <= on) return { standing: 'look', began: look.worst };
  }
  return { standing: 'in date', began: null };
};
