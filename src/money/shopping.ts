/** What to order, by when: what open steps need, and parts that fall due soon. */
import { addDays, type CivilDate } from '../dates/civil.ts';

export interface Need {
  carId: string;
  car: string;
  what: string;
  /** Days from order to hand, usual and at worst. */
  lead: readonly [usual: number, worst: number];
  /** Day the work is planned for; null: none is. */
  neededOn: CivilDate | null;
  forWhat: string;
  page: string;
}

export interface Order extends Need {
  /** Last day to order by its longest lead time; null where no day is planned. */
  orderBy: CivilDate | null;
  late: boolean;
}

/** Late ones first, then by the day to order, then without a day the longest lead first; the same thing for one car once. */
export const ordersOf = (needs: readonly Need[], on: CivilDate): Order[] => {
  const once = new Map<string, Order>();
  for (const need of needs) {
    const orderBy = need.neededOn && addDays(need.neededOn, -need.lead[1]);
    const order: Order = { ...need, orderBy, late: orderBy !== null && orderBy < on };
    const key = `${need.carId} ${need.what}`;
    const known = once.get(key);
    if (!known || byUrgency(order, known) < 0) once.set(key, order);
  }
  return [...once.values()].toSorted(byUrgency);
};

const NEVER = '9999-12-31';
const byUrgency = (a: Order, b: Order): number =>
  (a.orderBy ?? NEVER).localeCompare(b.orderBy ?? NEVER) ||
  b.lead[1] - a.lead[1] ||
  a.car.localeCompare(b.car) ||
  a.what.localeCompare(b.what);
