/** What falls due in the months and years ahead, with money and hours: from the dates of parts, and from open plans. */
import { addDays, addMonths, type CivilDate, firstOfMonth, yearOf } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';
import type { Finding } from '../findings/assess.ts';
import { type Cost, costOf, NO_COST, type Rates, sumOf } from './cost.ts';
import type { JobKey } from './jobs.ts';
import { KIND_JOBS } from './kind-jobs.ts';

/** Years looked ahead, and months told one by one. */
const AHEAD = { years: 5, months: 12 } as const;

/** One piece of work on one car; two parts that one job renews in the same month are one. */
export interface AheadItem {
  carId: string;
  car: string;
  title: string;
  /** Null: owed already, or no date tells when. */
  day: CivilDate | null;
  job: JobKey | null;
  /** Null: no figure can be given. */
  cost: Cost | null;
  /** Page of the part or the plan it comes from. */
  page: string;
  /** No date clears it: it counts as owed. */
  undated: boolean;
}

export interface Period {
  /** First day; null: owed already. */
  from: CivilDate | null;
  items: readonly AheadItem[];
  cost: Cost;
  /** Items without a figure. */
  unpriced: number;
}

export interface YearAhead {
  owed: Period;
  months: readonly Period[];
  /** The five years from today, each with what is owed already in the first. */
  years: readonly Period[];
}

/** What a car’s parts ask for, each renewal again after its interval. */
export const itemsOf = (car: string, findings: readonly Finding[], rates: Rates, on: CivilDate): AheadItem[] => {
  const end = addMonths(on, AHEAD.years * 12);
  const events = findings.flatMap((finding) => daysOf(finding, on, end).map((day) => ({ finding, day })));
  const byWork = Map.groupBy(
    events,
    ({ finding, day }) =>
      `${KIND_JOBS[finding.kind.key] ?? finding.kind.key} ${day === null ? 'owed' : day.slice(0, 7)}`,
  );
  return [...byWork.values()].map((group) => {
    const [first] = group as [(typeof group)[0]];
    const job = KIND_JOBS[first.finding.kind.key] ?? null;
    const days = group.flatMap(({ day }) => (day === null ? [] : [day])).sort();
    return {
      carId: first.finding.car.id,
      car,
      title: [...new Set(group.map(({ finding }) => finding.kind.name))].join(', '),
      day: days[0] ?? null,
      job,
      cost: job && costOf(job, rates),
      page: `/parts/${first.finding.part.id}`,
      undated: first.day === null && group.every(({ finding }) => finding.standing === 'unproven'),
    };
  });
};

/** Days on which a part is renewed: null first where it is owed already. */
const daysOf = (finding: Finding, on: CivilDate, end: CivilDate): (CivilDate | null)[] => {
  const { ruling, past, label, news } = finding;
  const owed = ['past', 'unproven'].includes(news.calendar.standing);
  const months = ruling.replaceBy;
  if (months === null && label === null) return [];
  const first = owed ? null : (past?.worst ?? null);
  if (!owed && first === null) return [];
  // The limit’s own day is the last on which it is due; past begins the day after.
  const limit = first && addDays(first, -1);
  const days: (CivilDate | null)[] = [limit === null ? null : limit < on ? on : limit];
  if (months === null) return days.filter((day) => day === null || day <= end);
  for (let next = limitOn(limit === null || limit < on ? on : limit, months); next <= end; next = limitOn(next, months))
    days.push(next);
  return days.filter((day) => day === null || day <= end);
};

/** Sorts everything into what is owed, the months of a year and the years; nothing is lost or counted twice. */
export const yearAhead = (items: readonly AheadItem[], on: CivilDate): YearAhead => {
  const owed = items.filter(({ day }) => day === null);
  const month = (n: number): CivilDate => addMonths(firstOfMonth(yearOf(on), Number(on.slice(5, 7))), n);
  const within = (from: CivilDate, to: CivilDate): AheadItem[] =>
    items.filter(({ day }) => day !== null && day >= from && day < to);
  return {
    owed: periodOf(null, owed),
    months: Array.from({ length: AHEAD.months }, (_, n) =>
      periodOf(month(n), within(n === 0 ? '0001-01-01' : month(n), month(n + 1))),
    ),
    years: Array.from({ length: AHEAD.years }, (_, n) => {
      const from = month(n * 12);
      const last = n === AHEAD.years - 1;
      const dated = within(n === 0 ? '0001-01-01' : from, last ? '9999-12-31' : month((n + 1) * 12));
      return periodOf(from, n === 0 ? [...owed, ...dated] : dated);
    }),
  };
};

const periodOf = (from: CivilDate | null, items: readonly AheadItem[]): Period => ({
  from,
  items: items.toSorted((a, b) => (a.day ?? '').localeCompare(b.day ?? '') || a.car.localeCompare(b.car)),
  cost: sumOf(items.map(({ cost }) => cost ?? NO_COST)),
  unpriced: items.filter(({ cost }) => cost === null).length,
});
