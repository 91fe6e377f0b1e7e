/** From which day a clock of a part has been running, as far as its claims tell. */
import { CLOCKS, type Clock } from '../catalogue/clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { DateRange } from '../dates/partial-date.ts';
import { type Claim, EVIDENCE, type Evidence } from './facts.ts';

export interface Since extends DateRange {
  /** How the ruling claim is known; null where the clock itself carries no date and others bound it. */
  evidence: Evidence | null;
  /** Two equally good claims exclude each other: both are kept and the whole span counts. */
  disagree: boolean;
  /** A weaker claim says something else. */
  contradicted: boolean;
}

const rank = (claim: Claim): number => EVIDENCE.indexOf(claim.evidence);
const RECEIPT = EVIDENCE.indexOf('receipt');

const rangeOf = (claim: Claim, built: DateRange): DateRange =>
  // "Before 1998" on a car of 1972: no older than the car.
  claim.said === 'original'
    ? built
    : { from: claim.from ?? (claim.to && built.from && built.from <= claim.to ? built.from : null), to: claim.to };

/** True for a claim that tells something: a date, or "original" on a car whose build date is known. */
export const isDated = ({ said }: Claim, built: DateRange): boolean =>
  said === 'date' || (said === 'original' && (built.from !== null || built.to !== null));

const hull = (ranges: readonly DateRange[]): DateRange => ({
  from: ranges.some((range) => range.from === null) ? null : (ranges.map((range) => range.from).sort()[0] ?? null),
  to: ranges.some((range) => range.to === null)
    ? null
    : (ranges
        .map((range) => range.to)
        .sort()
        .at(-1) ?? null),
});

const overlap = (ranges: readonly DateRange[]): DateRange | null => {
  let from: CivilDate | null = null;
  let to: CivilDate | null = null;
  for (const range of ranges) {
    if (range.from !== null && (from === null || range.from > from)) from = range.from;
    if (range.to !== null && (to === null || range.to < to)) to = range.to;
  }
  return from !== null && to !== null && from > to ? null : { from, to };
};

/**
 * The range of a clock that is set once (made, fitted, filled, printed). The surest claims rule; equals that disagree
 * count with their whole span. For a `cautious` part (safety) without a receipt, an older weaker word counts too.
 */
export const sinceOnce = (
  claims: readonly Claim[],
  clock: Clock,
  built: DateRange,
  cautious: boolean,
): Since | null => {
  const dated = claims.filter((claim) => claim.clock === clock && isDated(claim, built));
  if (dated.length === 0) return null;
  const [only] = dated;
  if (only && dated.length === 1)
    return { ...rangeOf(only, built), evidence: only.evidence, disagree: false, contradicted: false };
  const best = Math.min(...dated.map(rank));
  const ruling = dated.filter((claim) => rank(claim) === best).map((claim) => rangeOf(claim, built));
  const shared = overlap(ruling);
  const range = shared ?? hull(ruling);
  const weaker = dated.filter((claim) => rank(claim) > best).map((claim) => rangeOf(claim, built));
  const contradicted = weaker.some((other) => overlap([range, other]) === null);
  const counted =
    contradicted && cautious && best > RECEIPT ? { ...range, from: hull([range, ...weaker]).from } : range;
  return { ...counted, evidence: EVIDENCE[best] ?? null, disagree: shared === null, contradicted };
};

/**
 * The last valid day stated on the part itself. Where labels disagree the earliest rules, as among the straps of a
 * harness; for a `cautious` part without a receipt, an earlier weaker word counts too.
 */
export const labelOf = (claims: readonly Claim[], built: DateRange, cautious: boolean): CivilDate | null => {
  const labels = claims.filter((claim) => claim.clock === 'printed' && isDated(claim, built));
  const best = Math.min(...labels.map(rank));
  return (
    labels
      .filter((claim) => rank(claim) === best || (cautious && best > RECEIPT))
      .map((claim) => rangeOf(claim, built))
      .flatMap(({ from, to }) => to ?? from ?? [])
      .sort()[0] ?? null
  );
};

/** The last of the events on a clock that can tick again (serviced, used): the newest claim. */
export const sinceLast = (claims: readonly Claim[], clock: Clock, built: DateRange): Since | null => {
  let last: Since | null = null;
  for (const claim of claims) {
    if (claim.clock !== clock || !isDated(claim, built)) continue;
    const range = rangeOf(claim, built);
    if (last === null || (range.from ?? '') > (last.from ?? ''))
      last = { ...range, evidence: claim.evidence, disagree: false, contradicted: false };
  }
  return last;
};

/** What must have happened before a clock can start. */
export const BEFORE: Readonly<Record<Clock, readonly Clock[]>> = {
  made: [],
  printed: [],
  fitted: ['made'],
  filled: ['made', 'fitted'],
  serviced: ['filled', 'fitted', 'made'],
  used: ['filled', 'fitted', 'made'],
};

/** What can only happen once a clock has started: `BEFORE` the other way round. */
const AFTER = Object.fromEntries(
  CLOCKS.map((clock) => [clock, CLOCKS.filter((later) => BEFORE[later].includes(clock))]),
) as Record<Clock, Clock[]>;

/**
 * The range of a clock: its own claims, narrowed by the part's other clocks (nothing is fitted before it is made).
 * Without a claim of its own it is bounded by the others alone; null where nothing at all is known.
 */
export const sinceOf = (claims: readonly Claim[], clock: Clock, built: DateRange, cautious: boolean): Since | null => {
  const find = (of: Clock): Since | null =>
    of === 'serviced' || of === 'used' ? sinceLast(claims, of, built) : sinceOnce(claims, of, built, cautious);
  const own = find(clock);
  // Most parts have claims on one clock alone: nothing else bounds it.
  if (claims.every((claim) => claim.clock === clock)) return own;
  let from: CivilDate | null = own?.from ?? null;
  let to: CivilDate | null = own?.to ?? null;
  for (const earlier of BEFORE[clock]) {
    const start = find(earlier)?.from ?? null;
    if (start !== null && (from === null || start > from) && (own === null || own.to === null || start <= own.to))
      from = start;
  }
  for (const later of AFTER[clock]) {
    const end = find(later)?.to ?? null;
    if (end !== null && (to === null || end < to) && (from === null || end >= from)) to = end;
  }
  if (own) return { ...own, from, to };
  return from === null && to === null ? null : { from, to, evidence: null, disagree: false, contradicted: false };
};
