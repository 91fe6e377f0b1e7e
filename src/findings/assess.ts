/** One part, its claims and a day become a finding: its standing, the range of its age, and the days that change it. */

import type { Verdict } from '../ageing/verdict.ts';
import type { Clock } from '../catalogue/clock.ts';
import type { Kind } from '../catalogue/kind.ts';
import type { CivilDate } from '../dates/civil.ts';
import { limitOn, nextDay } from '../dates/limit.ts';
import type { DateRange } from '../dates/partial-date.ts';
import type { CarFacts, Claim, PartFacts } from './facts.ts';
import { gaugesOf, gravestOf, type Measured, measuredOf, newsOfGravest, standingByReading } from './measured.ts';
import type { Known } from './outlook/outlook.ts';
import { asksOf, holdsUntil } from './outlook.ts';
import type { Ruling } from './ruling.ts';
import { isDated, labelOf, type Since, sinceLast, sinceOf, sinceOnce } from './since.ts';
import { graver, type Standing } from './standing.ts';

/** The day a standing begins if the part is as old as it can be (`worst`) or as young (`best`); null: not known. */
export interface Turn {
  worst: CivilDate | null;
  best: CivilDate | null;
}

interface Distance {
  km: number;
  standing: Standing;
  /** Day of the reading that told it. */
  readOn: CivilDate;
}

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

/** Share of a distance limit from which the part is `due`; from memory. */
const DUE_AT = 0.9;

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
  const asks = asksOf(known).filter((day) => day <= on && !answeredByLook(day, kind, lastLook, ruling, on));
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

/** Where nothing can be measured, a look answers the estimate until the next one is owed. */
const answeredByLook = (
  asks: CivilDate,
  kind: Kind,
  lastLook: Since | null,
  { lookEvery }: Ruling,
  on: CivilDate,
): boolean =>
  gaugesOf(kind).length === 0 &&
  lastLook?.from != null &&
  lastLook.from >= asks &&
  limitOn(lastLook.from, lookEvery) > on;

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

type Turns = Pick<Finding, 'look' | 'due' | 'past'>;

/** To which day a good reading puts the replace-by off, and the months past which it never does. */
interface Stretched {
  to: CivilDate;
  most: number;
}

/** Practice alone is put off, by a good reading and no longer than the estimate bears, while no reading speaks against it. */
const stretchOf = (known: Known, ruling: Ruling, measured: readonly Measured[]): Stretched | null => {
  const { stretch } = known.kind.interval;
  if (!stretch || ruling.by !== 'practice' || measured.some(({ verdict }) => verdict !== 'good')) return null;
  const day = measured
    .filter(({ test }) => stretch.gauges.includes(test.gauge.key))
    .map(({ reading }) => reading.day)
    .sort()
    .at(-1);
  const holds = day ? holdsUntil(known) : null;
  if (!day || holds === null) return null;
  const to = limitOn(day, stretch.months);
  return { to: holds < to ? holds : to, most: stretch.most };
};

const turnsOfAge = (
  since: Since | null,
  ruling: Ruling,
  lastLook: Since | null,
  stretched: Stretched | null,
): Turns => {
  if (since === null) return { look: null, due: null, past: null };
  const { lookFrom, replaceBy, lead } = ruling;
  const looked = lookFrom === null ? null : later(turnAt(since, lookFrom), lastLook, ruling);
  if (replaceBy === null) return { look: looked, due: null, past: null };
  const limit = stretched ? putOff(turnAt(since, replaceBy), since, stretched) : turnAt(since, replaceBy);
  return {
    look: looked,
    due: { worst: at(limit.worst, -lead), best: at(limit.best, -lead) },
    // The limit's own day is still "due"; past is the day after.
    past: { worst: limit.worst && nextDay(limit.worst), best: limit.best && nextDay(limit.best) },
  };
};

/** A label's last valid day takes the place of the replace-by day; its look comes as long before as the ruling's would. */
const turnsOfLabel = (label: CivilDate, ruling: Ruling, lastLook: Since | null): Turns => {
  const { lookFrom, replaceBy, lead } = ruling;
  const look = lookFrom === null || replaceBy === null ? null : limitOn(label, lookFrom - replaceBy);
  const due = limitOn(label, -lead);
  const past = nextDay(label);
  return {
    look: look && later({ worst: look, best: look }, lastLook, ruling),
    due: { worst: due, best: due },
    past: { worst: past, best: past },
  };
};

const putOff = (limit: Turn, since: Since, { to, most }: Stretched): Turn => {
  const end = (day: CivilDate | null, start: CivilDate | null): CivilDate | null => {
    const last = at(start, most);
    const later = last !== null && to > last ? last : to;
    return day !== null && later > day ? later : day;
  };
  return { worst: end(limit.worst, since.from), best: end(limit.best, since.to) };
};

/** So many months after a range; that of a single day is counted once. */
const turnAt = ({ from, to }: DateRange, months: number): Turn => {
  const worst = at(from, months);
  return { worst, best: from === to ? worst : at(to, months) };
};

const at = (start: CivilDate | null, months: number): CivilDate | null => start && limitOn(start, months);

/** A look that was made puts the next one off by `lookEvery`; it never moves the replace-by day. */
const later = (turn: Turn, lastLook: Since | null, { lookEvery }: Ruling): Turn => {
  if (lastLook === null) return turn;
  const next = turnAt(lastLook, lookEvery);
  return { worst: latest(turn.worst, next.worst), best: latest(turn.best, next.best) };
};

const latest = (a: CivilDate | null, b: CivilDate | null): CivilDate | null =>
  a === null || (b !== null && b > a) ? b : a;

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

/** Odometer when the clock last started: a reading of an earlier start says nothing about a later one. */
const startKm = (claims: readonly Claim[], clock: Clock): number | null => {
  const own = claims.filter((claim) => claim.clock === clock);
  const last = own.reduce((newest, { from }) => (from !== null && from > newest ? from : newest), '');
  return own.findLast(({ km, to }) => km !== null && (to === null || to >= last))?.km ?? null;
};

/** True where the distance can be told from the readings, on whatever day: without it a limit of distance clears nothing. */
const isMetered = (claims: readonly Claim[], clock: Clock, { odometer }: CarFacts): boolean => {
  const start = startKm(claims, clock);
  return start !== null && (odometer.at(-1)?.km ?? -1) >= start;
};

const distanceOf = (
  claims: readonly Claim[],
  clock: Clock,
  car: CarFacts,
  { replaceByKm }: Ruling,
  on: CivilDate,
): Distance | null => {
  if (replaceByKm === null || car.odometer.length === 0) return null;
  const start = startKm(claims, clock);
  if (start === null) return null;
  const seen = car.odometer.filter((reading) => reading.day <= on);
  const last = seen.at(-1);
  if (!last || last.km < start) return null;
  const used = last.km - start;
  const standing: Standing = used > replaceByKm ? 'past' : used >= DUE_AT * replaceByKm ? 'due' : 'in date';
  const limit = standing === 'past' ? replaceByKm : DUE_AT * replaceByKm;
  const crossed = seen.find((reading) =>
    standing === 'past' ? reading.km - start > limit : reading.km - start >= limit,
  );
  return { km: used, standing, readOn: crossed?.day ?? last.day };
};
