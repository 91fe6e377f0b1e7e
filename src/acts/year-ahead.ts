/** The year ahead and the shopping list of a whole collection, read in one walk. */
import { addMonths, type CivilDate } from '../dates/civil.ts';
import type { JobKey } from '../money/jobs.ts';
import { type Need, type Order, ordersOf } from '../money/shopping.ts';
import { SUPPLIES } from '../money/supplies.ts';
import { type AheadItem, itemsOf, type YearAhead, yearAhead } from '../money/year-ahead.ts';
import type { Plan } from '../plans/plan.ts';
import { isPreparing, isWaking } from '../plans/standing.ts';
import { stepsIn } from '../revival/plan.ts';
import { isSettled } from '../revival/step-state.ts';
import type { Store } from '../store/open.ts';
import type { Collection } from '../store/people.ts';
import { ratesOf } from './rates.ts';
import { eachCarReckoned } from './reckon.ts';

export interface Ahead {
  ahead: YearAhead;
  orders: Order[];
  /** Records nothing could be reckoned of: they are in neither. */
  unjudged: number;
}

/** Lead times of what a lay-up needs, and of parts that fall due; from memory. */
const LEAD = { supplies: [3, 14], parts: [7, 35] } as const;
/** Months within which a part that falls due is on the list. */
const SOON = 3;

export const aheadOf = (store: Store, collection: Collection, on: CivilDate): Ahead => {
  const rates = ratesOf(collection);
  const items: AheadItem[] = [];
  const needs: Need[] = [];
  let unjudged = 0;
  for (const { name, facts, findings, stay, back, troubles } of eachCarReckoned(store, collection, on)) {
    unjudged += troubles.length;
    const own = itemsOf(name, findings, rates, on);
    if (back) {
      // What its return does anyway is counted there, by its steps, and not again by its dates.
      const open = stepsIn(back.plan).filter((step) => !isSettled(step));
      const page = `/revivals/${back.row.id}`;
      const renewed: ReadonlySet<JobKey> = new Set(open.flatMap(({ way }) => way.jobs ?? []));
      for (const { key, way, cost } of open) {
        if (cost.workshop.high > 0)
          items.push({
            carId: facts.id,
            car: name,
            title: way.title,
            day: null,
            job: null,
            cost,
            page: `${page}/steps/${key}`,
            undated: false,
          });
        for (const supply of way.supplies ?? []) {
          const { name: what, lead } = SUPPLIES[supply];
          needs.push({
            carId: facts.id,
            car: name,
            what,
            lead,
            neededOn: null,
            forWhat: way.title,
            page: `${page}/steps/${key}`,
          });
        }
      }
      items.push(...own.filter(({ day, job }) => day !== null || job === null || !renewed.has(job)));
    } else items.push(...own);
    if (stay && isPreparing(stay.view))
      needs.push(...suppliesIn(stay.view.layUp, facts.id, name, `/lay-ups/${stay.row.id}`));
    if (stay && isWaking(stay.view.stay, on))
      needs.push(...suppliesIn(stay.view.wakeUp, facts.id, name, `/lay-ups/${stay.row.id}/wake-up`));
    if (!back)
      for (const { title, day, page } of own)
        if (day !== null && day <= addMonths(on, SOON))
          needs.push({
            carId: facts.id,
            car: name,
            what: title,
            lead: LEAD.parts,
            neededOn: day,
            forWhat: 'it falls due',
            page,
          });
  }
  return { ahead: yearAhead(items, on), orders: ordersOf(needs, on), unjudged };
};

const suppliesIn = (plan: Plan, carId: string, car: string, page: string): Need[] =>
  plan.steps
    .filter(({ tick }) => tick === null)
    .flatMap(({ needs, day, title, key }) =>
      needs.map(
        (what): Need => ({
          carId,
          car,
          what,
          lead: LEAD.supplies,
          neededOn: day,
          forWhat: title,
          page: `${page}#${key}`,
        }),
      ),
    );
