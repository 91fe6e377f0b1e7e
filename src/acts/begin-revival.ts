/** The intake of a sleeper in ten minutes, changing what is known of it, and ending its return. */
import { QUICK_STARTS } from '../catalogue/quick-starts.ts';
import type { CivilDate } from '../dates/civil.ts';
import { readTypedDate } from '../dates/typed-date.ts';
import { dayInWords } from '../dates/words.ts';
import type { Evidence } from '../findings/facts.ts';
import type { Hands } from '../revival/revival.ts';
import type { PutAway, Stood, WhyParked } from '../revival/sleep.ts';
import { type CarWithParts, carWithParts } from '../store/cars.ts';
import { changeLayUp, openLayUps } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import { addRevival, changeRevival, type RevivalRow, revivalsOf, setOurs } from '../store/revivals.ts';
import { type Acting, addCarAct } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { FIRST_CARS } from './build-date.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { recordReadingAct } from './odometer.ts';
import type { RevivalHere } from './revivals.ts';
import { readPlainNumber } from './typed-number.ts';

/** What is told of how it slept; empty where nothing is known. */
export interface SleepGiven {
  lastRan: string;
  /** The meaning picked where the text had several. */
  lastRanChoice?: string | undefined;
  lastRanBy: Evidence;
  why: WhyParked;
  whyWords: string;
  whyBy: Evidence;
  stood: readonly Stood[];
  putAway: PutAway;
  putAwayBy: Evidence;
  ceiling: string;
  hands: Hands;
  note: string;
}

/** A car of the collection by its id, or one that is described here. */
type CarGivenFor =
  | { carId: string }
  | { id?: string; name: string; built: string; builtChoice?: string | undefined; start: string; ours: boolean };

export interface IntakeGiven extends SleepGiven {
  car: CarGivenFor;
  /** Odometer, km; null: not read. */
  km: number | null;
}

/** Begins the return of a car; a stay it was laid up for ends with it. Answers the id. */
export const beginRevival = (store: Store, acting: Acting, given: IntakeGiven, id?: string): Outcome<string> => {
  const sleep = readSleep(acting, given);
  const { collectionId, personId, today } = acting;
  return allOrNothing(store, (tx) => {
    const car = carFor(tx, acting, given.car);
    if (!car.ok || !sleep.ok)
      return { ok: false, faults: [...(car.ok ? [] : car.faults), ...(sleep.ok ? [] : sleep.faults)] };
    const found = carWithParts(tx, collectionId, car.value) as CarWithParts;
    const open = revivalsOf(tx, collectionId, car.value).find(({ closedOn }) => closedOn === null || closedOn > today);
    if (open)
      return refused({
        field: 'car',
        message: `${found.car.name} is on its way back already, since ${dayInWords(open.begunOn)}. Go on with that, or end it first.`,
      });
    const stay = openLayUps(tx, collectionId, today).get(car.value);
    if (stay && stay.parkedOn <= today)
      changeLayUp(tx, collectionId, stay.id, { closedOn: today, closedHow: 'back', closedBy: personId });
    if (given.km !== null) {
      const read = recordReadingAct(tx, acting, found.facts, { day: today, km: given.km });
      if (!read.ok) return read;
    }
    return done(
      addRevival(tx, { ...sleep.value, collectionId, carId: car.value, begunOn: today, begunBy: personId }, id),
    );
  });
};

const carFor = (store: Store, acting: Acting, given: CarGivenFor): Outcome<string> => {
  if ('carId' in given)
    return carWithParts(store, acting.collectionId, given.carId)
      ? done(given.carId)
      : refused({
          field: 'car',
          message: 'That car is not in this collection. Choose another, or describe a new one.',
        });
  const start = QUICK_STARTS.find(({ key }) => key === given.start);
  const faults: Fault[] = [
    ...(given.name === '' ? [{ field: 'name', message: 'Give the car a name you know it by.' }] : []),
    ...(start ? [] : [{ field: 'start', message: 'Choose the one that comes closest; details can follow.' }]),
  ];
  const { name, builtChoice, ours } = given;
  const built = given.built.trim() === '' ? 'unknown' : given.built;
  const added = addCarAct(
    store,
    acting,
    {
      name: name || '?',
      built,
      builtChoice,
      traits: start?.traits ?? QUICK_STARTS[0]?.traits ?? [],
      note: '',
      km: null,
      ours,
    },
    given.id,
  );
  return faults.length > 0 || !added.ok ? { ok: false, faults: [...faults, ...(added.ok ? [] : added.faults)] } : added;
};

type SleepRead = Omit<
  RevivalRow,
  'collectionId' | 'id' | 'carId' | 'begunOn' | 'begunBy' | 'closedOn' | 'closedHow' | 'closedBy'
>;

const readSleep = (acting: Acting, given: SleepGiven): Outcome<SleepRead> => {
  const { lastRan, lastRanChoice, ceiling, lastRanBy, why, whyWords, whyBy, stood, putAway, putAwayBy, hands, note } =
    given;
  const typed = lastRan.trim() === '' ? 'unknown' : lastRan.trim();
  const read = readTypedDate(lastRanChoice || typed, { ...acting, notBefore: FIRST_CARS });
  const money = ceiling.trim() === '' ? null : readPlainNumber(ceiling);
  const faults: Fault[] = [
    ...(read.ok
      ? []
      : [
          {
            field: 'lastRan',
            message: read.message,
            ...(read.reason === 'ambiguous' ? { choices: read.choices } : {}),
          },
        ]),
    ...(read.ok && read.said === 'original'
      ? [{ field: 'lastRan', message: 'Say the year it last ran, “before 1998”, or “unknown”.' }]
      : []),
    ...(ceiling.trim() !== '' && (money === null || money <= 0)
      ? [{ field: 'ceiling', message: `“${ceiling}” is no sum. Write it as 8000, without its currency.` }]
      : []),
  ];
  if (faults.length > 0 || !read.ok) return { ok: false, faults };
  const range = read.said === 'date' ? read.date : { from: null, to: null };
  return done({
    lastRanTyped: typed,
    lastRanFrom: range.from,
    lastRanTo: range.to,
    lastRanBy,
    why,
    whyWords,
    whyBy,
    stood: [...stood],
    putAway,
    putAwayBy,
    ceiling: money,
    hands,
    note,
  });
};

/** Changes what is known of its sleep; the plan is made anew, what was done stays. */
export const changeRevivalAct = (
  store: Store,
  acting: Acting,
  { record }: RevivalHere,
  given: SleepGiven,
): Outcome<null> => {
  const over = overFault(record.row, acting.today);
  if (over) return over;
  const read = readSleep(acting, given);
  if (!read.ok) return read;
  changeRevival(store, acting.collectionId, record.row.id, read.value);
  return done(null);
};

/** A return that has ended by a day is history: nothing of it is changed any more. */
export const overFault = ({ closedOn }: RevivalRow, today: CivilDate): Extract<Outcome<never>, { ok: false }> | null =>
  closedOn !== null && closedOn <= today
    ? {
        ok: false,
        faults: [{ field: 'day', message: `This return ended on ${dayInWords(closedOn)}; its record stays as it is.` }],
      }
    : null;

/** A car that was only looked at is bought: from now on it is one of the collection. */
export const takeOn = (store: Store, { collectionId }: Acting, { record, found }: RevivalHere): Outcome<null> => {
  if (record.row.closedOn) return refused({ field: 'car', message: 'It was let go already. Look at it anew.' });
  setOurs(store, collectionId, found.car.id, true);
  return done(null);
};

/** Ends it: the car is back on the road, the work is given up, or the car is let go. */
export const endRevival = (
  store: Store,
  { collectionId, personId, today }: Acting,
  { record, found, plan }: RevivalHere,
  how: NonNullable<RevivalRow['closedHow']>,
  despite: string,
): Outcome<null> => {
  const over = overFault(record.row, today);
  if (over) return over;
  if (how === 'not bought' && found.car.ours)
    return refused({ field: 'how', message: 'It is yours already: give the work up, or bring it to the road.' });
  const shut = plan.stages.filter(({ gate }) => gate.safety && gate.state !== 'passed');
  if (how === 'on the road' && shut.length > 0 && despite === '')
    return refused({
      field: 'despite',
      message: `Not passed on its evidence: ${shut.map(({ stage }) => stage.name).join(', ')}. Pass these first, or write why it goes on the road all the same.`,
    });
  changeRevival(store, collectionId, record.row.id, {
    closedOn: today,
    closedHow: how,
    closedBy: personId,
    note: [record.row.note, despite].filter((text) => text !== '').join('\n'),
  });
  return done(null);
};

/** Takes an ending back that was a slip, unless another return of the car was begun since. */
export const reopenRevival = (
  store: Store,
  { collectionId }: Acting,
  { record: { row } }: RevivalHere,
): Outcome<null> => {
  const later = revivalsOf(store, collectionId, row.carId).some(
    ({ id, begunOn }) => id !== row.id && begunOn >= row.begunOn,
  );
  if (later) return refused({ field: 'day', message: 'Another return of this car was begun since.' });
  changeRevival(store, collectionId, row.id, { closedOn: null, closedHow: null, closedBy: null });
  return done(null);
};
