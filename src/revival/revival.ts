/** One return of a car to the road, as its owner described it. */
import type { CivilDate } from '../dates/civil.ts';
import type { Sleep } from './sleep.ts';

export const HANDS = {
  own: 'Mostly own hands',
  workshop: 'Mostly a workshop',
  both: 'Some of both, or not decided',
} as const;
export type Hands = keyof typeof HANDS;

export interface Revival {
  id: string;
  carId: string;
  begunOn: CivilDate;
  sleep: Sleep;
  /** What may be spent in all, in the collection’s currency; null: nothing agreed. */
  ceiling: number | null;
  hands: Hands;
}
