/** The year ahead and the shopping list of a whole collection, read in one walk. */
import { addMonths, type CivilDate } from '../dates/civil.ts';
import { findingsOf } from '../findings/car.ts';
import type { JobKey } from '../money/jobs.ts';
import { type Need, type Order, ordersOf } from '../money/shopping.ts';
import { SUPPLIES } from '../money/supplies.ts';
import { type AheadItem, itemsOf, type YearAhead, yearAhead } from '../money/year-ahead.ts';
import type { Plan } from '../plans/plan.ts';
import { isPreparing, isWaking } from '../plans/standing.ts';
import { revivalPlan, stepsIn } from '../revival/plan.ts';
import { isSettled } from '../revival/step-state.ts';
import { openLayUps } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import type { Collection } from '../store/people.ts';
import { placesOf } from '../store/places.ts';
import { openRevivals } from '../store/revivals.ts';
import { eachCar } from '../store/stream.ts';
import { ratesOf } from './rates.ts';
import { revivalFacts } from './revivals.ts';
import { viewBeside } from './stays.ts';

export interface Ahead {
  ahead: YearAhead;
  orders: Order[];
}

/** Lead times of what a lay-up needs, and of parts that fall due; from memory. */
const LEAD = { supplies: [3, 14], parts: [7, 35] } as const;
/** Months within which a part that falls due is on the list. */
const SOON = 3;

export const aheadOf = (store: Store, collection: Collection, on: CivilDate): Ahead => {
  const rates = ratesOf(collection);
  const overrides = overridesOf(store, collection.id);
  const layUps = openLayUps(store, collection.id, on);
  const revivals = openRevivals(store, collection.id, on);
  const places = new Map(placesOf(store, collection.id).map((place) => [place.id, place]));
  const items: AheadItem[] = [];
  const needs: Need[] = [];
  for (const car of eachCar(store, collection.id)) {
    const { name, facts, parts, traits } = car;
    const back = revivals.get(facts.id);
    const own = itemsOf(name, findingsOf(facts, parts, overrides, on), rates, on);
    if (back) {
      // What its return does anyway is counted there, by its steps, and not again by its dates.
      const plan = revivalPlan(revivalFacts(back, { car: facts, traits, parts, overrides, rates }), on);
      const open = stepsIn(plan).filter((step) => !isSettled(step));
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
    const layUp = layUps.get(facts.id);
    const view = layUp && viewBeside(layUp, car, { places, overrides }, on).view;
    if (layUp && view && isPreparing(view))
      needs.push(...suppliesIn(view.layUp, facts.id, name, `/lay-ups/${layUp.row.id}`));
    if (layUp && view && isWaking(view.stay, on))
      needs.push(...suppliesIn(view.wakeUp, facts.id, name, `/lay-ups/${layUp.row.id}/wake-up`));
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
  return { ahead: yearAhead(items, on), orders: ordersOf(needs, on) };
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
