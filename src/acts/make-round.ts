/** A round made at the car: what was seen, what was read, kept together or not at all. */
import { type CivilDate, isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import { LOOKS } from '../plans/looks.ts';
import { type LayUpRow, recordRound } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import type { Acting } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { done, type Fault, type Outcome } from './fault.ts';
import { closedFault } from './lay-up.ts';
import { moveTires } from './move-tires.ts';
import { type ReadingGiven, recordReadingsAct } from './record-reading.ts';
import type { StayHere } from './stays.ts';

export interface RoundGiven {
  day: string;
  note: string;
  /** Answers by look; what is left open was not looked at. */
  answers: Readonly<Record<string, string>>;
  readings: readonly ReadingGiven[];
}

export const makeRound = (
  store: Store,
  acting: Acting,
  here: StayHere,
  given: RoundGiven,
  at: (reading: ReadingGiven) => string,
): Outcome<null> => {
  const { record, found } = here;
  const closed = closedFault(record, acting.today);
  if (closed) return closed;
  const faults: Fault[] = dayFaults(given.day, acting.today, record.row);
  const answers = Object.fromEntries(Object.entries(given.answers).filter(([, answer]) => answer !== ''));
  for (const [key, answer] of Object.entries(answers)) {
    const look = LOOKS.find((one) => one.key === key);
    if (!look || !Object.hasOwn(look.answers, answer))
      faults.push({ field: `look.${key}`, message: 'Choose one of the answers shown.' });
  }
  if (Object.keys(answers).length === 0 && given.readings.length === 0 && given.note === '')
    faults.push({ field: 'looks', message: 'Nothing was answered yet: one look or one number makes a round.' });
  if (faults.length > 0) return { ok: false, faults };
  const day = given.day as CivilDate;
  return allOrNothing(store, (tx) => {
    if (given.readings.length > 0) {
      const read = recordReadingsAct(tx, acting, found, given.readings, at);
      if (!read.ok) return read;
    }
    if (answers['rolled'] === 'done') moveTires(tx, acting, found, day);
    recordRound(tx, acting.collectionId, record.row.id, {
      day,
      answers,
      note: given.note,
      recordedOn: acting.today,
      recordedBy: acting.personId,
    });
    return done(null);
  });
};

const dayFaults = (day: string, today: CivilDate, { parkedOn, closedOn }: LayUpRow): Fault[] => {
  if (!isCivilDate(day)) return [{ field: 'day', message: `“${day}” is no day.` }];
  if (day > today) return [{ field: 'day', message: 'That day lies ahead.' }];
  if (closedOn && day > closedOn)
    return [{ field: 'day', message: `The lay-up was closed on ${dayInWords(closedOn)}.` }];
  return day < parkedOn ? [{ field: 'day', message: `It stands since ${dayInWords(parkedOn)} only.` }] : [];
};
