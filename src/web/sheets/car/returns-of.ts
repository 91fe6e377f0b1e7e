import { type RevivalHere, revivalHere } from '../../../acts/revivals.ts';
import type { CivilDate } from '../../../dates/civil.ts';
import type { Store } from '../../../store/open.ts';
import type { Collection } from '../../../store/people.ts';
import { revivalsOf } from '../../../store/revivals.ts';

/** Every return of a car begun by a day, the last one first. */
export const returnsOf = (store: Store, collection: Collection, carId: string, on: CivilDate): RevivalHere[] =>
  revivalsOf(store, collection.id, carId)
    .filter(({ begunOn }) => begunOn <= on)
    .flatMap(({ id }) => revivalHere(store, collection, id, on) ?? []);
