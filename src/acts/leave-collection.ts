/** A car that was sold, given away or scrapped: its history stays, letters and plans fall silent. */
import { isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import { type CarRow, changeLeft } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import type { LeftHow } from '../store/schema.ts';
import type { Acting } from './add-car.ts';
import { done, type Outcome, refused } from './fault.ts';

export const leaveCollection = (
  store: Store,
  { collectionId, today }: Acting,
  car: CarRow,
  { how, day }: { how: LeftHow; day: string },
): Outcome<null> => {
  if (!isCivilDate(day) || day < car.addedOn || day > today)
    return refused({
      field: 'left',
      message: `Say on which day it left: from ${dayInWords(car.addedOn)}, when it was added, to today.`,
    });
  changeLeft(store, collectionId, car.id, { leftOn: day, leftHow: how });
  return done(null);
};

export const comeBack = (store: Store, { collectionId }: Acting, { id }: CarRow): void =>
  changeLeft(store, collectionId, id, { leftOn: null, leftHow: null });
