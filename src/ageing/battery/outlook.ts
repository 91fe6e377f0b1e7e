/** What becomes of a battery left in a car: month by month at the place's own temperatures, between two bounds. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { addDays, type CivilDate, daysBetween, firstOfMonth, yearOf } from '../../dates/civil.ts';
import { type Month, monthOn, monthsOf, type Place } from '../place.ts';
import type { DaySpan, Span } from '../span.ts';
import { BATTERY, type Chemistry } from './chemistry.ts';
import { chargeAfter, daysUntil, drainRate, selfDischargeRate } from './discharge.ts';
import { frostLimit } from './freezing.ts';

/** Charge, %, at which to recharge (density 1.225), and days between looks. */
export const RECHARGE_AT = 75;
export const LOOK_EVERY = 30;
/** Charge, %, above which it can be counted on to crank: about 40 percent of the capacity gone means no start. */
export const CRANKS_ABOVE = 60;

export const OUTLOOK_SOURCES: readonly SourceKey[] = ['army-recharge-rule', 'standing-drain-bulletin', 'memory'];

export interface BatteryFacts {
  chemistry: Chemistry;
  /** Ah, above 0: as it has now, not as printed. */
  capacity: number;
  /** What the car draws, mA; electronics inside the battery come on top. */
  drain: Span;
  /** On a maintainer. */
  maintained: boolean;
  /** %, on `from`. */
  charge: Span;
  from: CivilDate;
}

export interface Milestones {
  /** Down to RECHARGE_AT, down to CRANKS_ABOVE. */
  recharge: DaySpan;
  noCrank: DaySpan;
  /** May freeze in an ordinary night of its month; null: it cannot freeze. */
  freezes: DaySpan | null;
}

export interface BatteryOutlook extends Milestones {
  points: { day: CivilDate; charge: Span }[];
}

/**
 * The outlook from the facts' day until another. A maintained battery is held at its charge and has no days; `until`
 * before the facts' day is taken as that day. Charge 0 to 100 %.
 */
export const projectBattery = (facts: BatteryFacts, place: Place, until: CivilDate): BatteryOutlook => {
  const end = until < facts.from ? facts.from : until;
  const bounds = boundsOf(facts, place, end);
  const points = pointDays(facts.from, end).map((day) => ({
    day,
    charge: between(facts, bounds.worst, bounds.best, day),
  }));
  return { points, ...milestonesOf(facts, bounds) };
};

/** Its days alone: what is asked of every battery each night. */
export const milestones = (facts: BatteryFacts, place: Place, until: CivilDate): Milestones =>
  milestonesOf(facts, boundsOf(facts, place, until < facts.from ? facts.from : until));

const milestonesOf = (facts: BatteryFacts, { worst, best }: Bounds): Milestones => {
  const when = (target: Target): DaySpan =>
    facts.maintained
      ? { earliest: null, latest: null }
      : { earliest: firstDay(worst, target), latest: firstDay(best, target) };
  return {
    recharge: when(() => RECHARGE_AT),
    noCrank: when(() => CRANKS_ABOVE),
    freezes: BATTERY[facts.chemistry].acid ? when(({ low }) => frostLimit(facts.chemistry, low)) : null,
  };
};

/** Charge on one day, %; on the facts' day or before it, as it was then. */
export const chargeOn = (facts: BatteryFacts, place: Place, on: CivilDate): Span => {
  if (facts.maintained || on <= facts.from) return { ...facts.charge };
  const { worst, best } = boundsOf(facts, place, on);
  return between(facts, worst, best, on);
};

/** Days within one month, at whose temperature the charge falls; the next stretch begins after `days`. */
interface Stretch {
  from: CivilDate;
  days: number;
  month: Month;
}

interface Leg extends Stretch {
  start: number;
  self: number;
  drain: number;
}

const stretchesOf = (place: Place, from: CivilDate, end: CivilDate): Stretch[] => {
  const months = monthsOf(place);
  const stretches: Stretch[] = [];
  for (let day = from; day <= end; ) {
    const month = Number(day.slice(5, 7));
    const next = month === 12 ? firstOfMonth(yearOf(day) + 1, 1) : firstOfMonth(yearOf(day), month + 1);
    stretches.push({ from: day, days: daysBetween(day, next <= end ? next : end), month: monthOn(months, day) });
    day = next;
  }
  return stretches;
};

interface Bounds {
  worst: Leg[];
  best: Leg[];
}

const boundsOf = (facts: BatteryFacts, place: Place, end: CivilDate): Bounds => {
  const { selfDischarge, electronics } = BATTERY[facts.chemistry];
  const stretches = stretchesOf(place, facts.from, end);
  const bound = (charge: number, perMonth: number, mA: number): Leg[] => {
    let start = charge;
    const drain = drainRate(mA, facts.capacity);
    return stretches.map((stretch) => {
      const leg = { ...stretch, start, self: selfDischargeRate(perMonth, stretch.month.mean), drain };
      start = chargeAfter(start, leg.self, drain, leg.days);
      return leg;
    });
  };
  return {
    worst: bound(facts.charge.low, selfDischarge.high, facts.drain.high + electronics.high),
    best: bound(facts.charge.high, selfDischarge.low, facts.drain.low + electronics.low),
  };
};

const between = (facts: BatteryFacts, worst: readonly Leg[], best: readonly Leg[], day: CivilDate): Span =>
  facts.maintained ? { ...facts.charge } : { low: chargeIn(worst, day), high: chargeIn(best, day) };

const chargeIn = (legs: readonly Leg[], day: CivilDate): number => {
  const { from, start, self, drain } = legs.findLast((leg) => leg.from <= day) as Leg;
  return chargeAfter(start, self, drain, daysBetween(from, day));
};

/** Charge to be reached in a month, %; null: none would do. */
type Target = (month: Month) => number | null;

/** A crossing within this share of a day counts for the day: rounding must not cost a day. */
const ROUNDING = 1e-9;

/** First day whose charge is at or below the target of its month. */
const firstDay = (legs: readonly Leg[], target: Target): CivilDate | null => {
  for (const [index, { from, days, month, start, self, drain }] of legs.entries()) {
    const down = target(month);
    if (down === null) continue;
    const reached = Math.ceil(daysUntil(start, down, self, drain) - ROUNDING);
    // The day after the stretch has the next month's target.
    if (reached < days || (reached === days && index === legs.length - 1)) return addDays(from, Math.max(0, reached));
  }
  return null;
};

const POINT_EVERY = 7;

const pointDays = (from: CivilDate, end: CivilDate): CivilDate[] => {
  const days = daysBetween(from, end);
  const weekly = Array.from({ length: Math.ceil(days / POINT_EVERY) }, (_, week) => addDays(from, week * POINT_EVERY));
  return [...weekly, end];
};
