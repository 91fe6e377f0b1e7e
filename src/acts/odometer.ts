/** The odometer only goes up: the one place that says so, for readings of a car and for figures given with a part's date. */
import type { CivilDate } from '../dates/civil.ts';
import type { DateRange } from '../dates/partial-date.ts';
import { dayInWords } from '../dates/words.ts';
import type { CarFacts } from '../findings/facts.ts';
import { recordOdometer } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import type { Acting } from './add-car.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';

/** What is wrong with a figure of some day beside the car's readings, or null; a reading of that same day takes no part. */
export const odometerFault = (km: number, { from, to }: DateRange, { odometer }: CarFacts): Fault | null => {
  const clash = odometer.find(
    (reading) =>
      (to !== null && reading.day > to && reading.km < km) || (from !== null && reading.day < from && reading.km > km),
  );
  if (!clash) return null;
  const [then, now] = [clash.km, km].map((figure) => figure.toLocaleString('en-US'));
  return {
    field: 'distance',
    message: `That would be ${now} km, but it was ${then} km on ${dayInWords(clash.day)}: an odometer only goes up. Check both figures and their unit.`,
  };
};

/** Records a reading of a car; a second one of the same day takes the first one's place. */
export const recordReadingAct = (
  store: Store,
  acting: Acting,
  car: CarFacts,
  { day, km }: { day: CivilDate; km: number },
): Outcome<null> => {
  if (day > acting.today) return refused({ field: 'day', message: 'That day lies ahead.' });
  const fault = odometerFault(km, { from: day, to: day }, car);
  if (fault) return refused(fault);
  recordOdometer(store, acting.collectionId, car.id, { day, km });
  return done(null);
};
