/** Starting a lay-up, changing it, closing it: what a person gives is read here, and the plan is made anew. */
import { addMonths, type CivilDate, isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import { outlineOf } from '../plans/changes.ts';
import { CIRCUMSTANCES, type Circumstance, NUMBERS, type NumberKey, type Papers } from '../plans/stay.ts';
import { isTopic, TOPICS } from '../plans/topics.ts';
import { type CarWithParts, carWithParts } from '../store/cars.ts';
import {
  addLayUp,
  addOwnStep,
  changeLayUp,
  findLayUp,
  type LayUpOnRecord,
  type LayUpRow,
  layUpsOf,
  type NewTick,
  seePlan,
} from '../store/lay-ups.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { membersOf } from '../store/people.ts';
import { findPlace, putCar } from '../store/places.ts';
import type { Acting } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { recordReadingAct } from './odometer.ts';
import { type StayHere, withView } from './stays.ts';
import { readPlainNumber } from './typed-number.ts';

/** A lay-up as a person describes it; days and numbers as typed, empty where nothing is known. */
export interface LayUpGiven {
  parkedOn: string;
  returnOn: string;
  place: string;
  visitor: string;
  phone: string;
  circumstances: readonly string[];
  numbers: Readonly<Record<NumberKey, string>>;
  papers: Readonly<Record<Exclude<keyof Papers, 'rules'>, string>> & { rules: string };
  note: string;
}

/** Nothing said yet. */
export const NOTHING_SAID: LayUpGiven = {
  parkedOn: '',
  returnOn: '',
  place: '',
  visitor: '',
  phone: '',
  circumstances: [],
  numbers: { dose: '', engine: '', cylinders: '' },
  papers: { storageFrom: '', roadUntil: '', noticeFrom: '', renewsOn: '', rules: '' },
  note: '',
};

/** How far back and ahead a parking day can lie, in months: a sleeper of decades has its own plan. */
const REACH = { back: 60, ahead: 24 } as const;
/** The longest stay planned for, in months. */
const LONGEST = 120;

/** Starts a lay-up of a car, like an earlier one if named; answers its id. */
export const startLayUp = (
  store: Store,
  acting: Acting,
  found: CarWithParts,
  given: LayUpGiven,
  like: string,
  id?: string,
): Outcome<string> => {
  const read = readLayUp(store, acting, given, null);
  if (!read.ok) return read;
  const { collectionId, personId, today } = acting;
  const { parkedOn } = read.value;
  // Closed as on a day ahead, it is still open on the days before.
  const open = layUpsOf(store, collectionId, found.car.id).find(
    ({ closedOn }) => closedOn === null || closedOn > parkedOn,
  );
  if (open)
    return refused({
      field: 'car',
      message: `${found.car.name} has a lay-up from ${dayInWords(open.parkedOn)} on that is not closed by then. Change that one, or close it first.`,
    });
  const before = like === '' ? undefined : findLayUp(store, collectionId, like);
  if (like !== '' && !before) return refused({ field: 'like', message: 'That lay-up is not there any more.' });
  return inTransaction(store, (tx) => {
    const layUp = addLayUp(
      tx,
      {
        ...read.value,
        collectionId,
        carId: found.car.id,
        choices: before?.row.choices ?? {},
        isTemplate: false,
        madeOn: today,
        madeBy: personId,
      },
      broughtFrom(before, acting),
      id,
    );
    settle(tx, acting, layUp);
    return done(layUp);
  });
};

/** Own steps and skipped ones are taken along; what was done is not. */
const broughtFrom = (before: LayUpOnRecord | undefined, { today, personId }: Acting) => ({
  own: before?.own ?? [],
  skipped: (before?.ticks ?? [])
    .filter(({ state, step }) => state === 'skipped' && !before?.own.some(({ id }) => id === step))
    .map(
      ({ plan, step, note }): NewTick => ({
        plan,
        step,
        state: 'skipped',
        day: today,
        note: note.startsWith(AS_BEFORE) ? note : `${AS_BEFORE}${note}`,
        cost: null,
        recordedOn: today,
        recordedBy: personId,
      }),
    ),
});
const AS_BEFORE = 'As last time: ';

/** The plan counts as looked at as it is; a car that is parked already stands where it is said to. */
const settle = (store: Store, acting: Acting, id: string): void => {
  const { collectionId, today } = acting;
  const record = findLayUp(store, collectionId, id) as LayUpOnRecord;
  const { row } = record;
  if (row.placeId && row.parkedOn <= today) putCar(store, collectionId, row.carId, row.placeId, row.parkedOn);
  const found = carWithParts(store, collectionId, row.carId) as CarWithParts;
  seePlan(store, collectionId, id, outlineOf(withView(store, collectionId, record, found, today).view.layUp));
};

/** Changes what is known of a stay; its plan is made anew, and what that changed is told until it was looked at. */
export const changeLayUpAct = (
  store: Store,
  acting: Acting,
  { record }: StayHere,
  given: LayUpGiven,
): Outcome<null> => {
  const closed = closedFault(record, acting.today);
  if (closed) return closed;
  const read = readLayUp(store, acting, given, record.row);
  if (!read.ok) return read;
  const { collectionId, today } = acting;
  const { placeId, parkedOn } = read.value;
  // Where it was moved meanwhile is not undone by a new note.
  const moved = placeId !== record.row.placeId || parkedOn !== record.row.parkedOn;
  inTransaction(store, (tx) => {
    changeLayUp(tx, collectionId, record.row.id, read.value);
    if (placeId && moved && parkedOn <= today) putCar(tx, collectionId, record.row.carId, placeId, today);
  });
  return done(null);
};

/** Takes the plan as it is now for looked at. */
export const understand = (store: Store, { collectionId }: Acting, { record, view }: StayHere): void =>
  seePlan(store, collectionId, record.row.id, outlineOf(view.layUp));

/** Takes a side where the trade disagrees; empty: the usual one again. */
export const chooseSide = (
  store: Store,
  { collectionId, today }: Acting,
  { record }: StayHere,
  topic: string,
  side: string,
): Outcome<null> => {
  const closed = closedFault(record, today);
  if (closed) return closed;
  if (!isTopic(topic) || (side !== '' && !Object.hasOwn(TOPICS[topic].sides, side)))
    return refused({ field: 'side', message: 'There is no such side to take.' });
  const { [topic]: _, ...others } = record.row.choices;
  changeLayUp(store, collectionId, record.row.id, { choices: side === '' ? others : { ...others, [topic]: side } });
  return done(null);
};

export const addOwnStepAct = (
  store: Store,
  { collectionId, today }: Acting,
  { record }: StayHere,
  given: { plan: 'lay-up' | 'wake-up'; title: string; days: string; note: string },
): Outcome<string> => {
  const closed = closedFault(record, today);
  if (closed) return closed;
  const days = given.days.trim() === '' ? 0 : Number(given.days);
  const faults: Fault[] = [
    ...(given.title === '' ? [{ field: 'title', message: 'Say in a few words what is to be done.' }] : []),
    ...(Number.isInteger(days) && days >= 0 && days <= 365
      ? []
      : [{ field: 'days', message: `“${given.days}” is no number of days: 0 is the day itself, 365 the most.` }]),
  ];
  if (faults.length > 0) return { ok: false, faults };
  return done(addOwnStep(store, collectionId, record.row.id, { ...given, days }));
};

/** A stay that has ended by a day is history: nothing of it is changed any more. */
export const closedFault = ({ row }: LayUpOnRecord, today: CivilDate): Extract<Outcome<never>, { ok: false }> | null =>
  row.closedOn !== null && row.closedOn <= today
    ? {
        ok: false,
        faults: [
          {
            field: 'day',
            message: `This lay-up was closed on ${dayInWords(row.closedOn)}; its record stays as it is.`,
          },
        ],
      }
    : null;

export interface ClosingGiven {
  day: string;
  how: 'back' | 'called off';
  /** Odometer, km; null: not read. */
  km: number | null;
  /** The next lay-up can begin like this one. */
  pattern: boolean;
}

/** Ends a stay: the car is back, or was never parked. Ordinary notices begin again with that day. */
export const closeLayUp = (
  store: Store,
  acting: Acting,
  { record: { row }, found }: StayHere,
  { day, how, km, pattern }: ClosingGiven,
): Outcome<null> => {
  const { collectionId, personId, today } = acting;
  if (row.closedOn) return refused({ field: 'day', message: `This lay-up was closed on ${dayInWords(row.closedOn)}.` });
  if (!isCivilDate(day)) return refused({ field: 'day', message: `“${day}” is no day.` });
  if (day > today) return refused({ field: 'day', message: 'That day lies ahead.' });
  const first = how === 'back' ? row.parkedOn : row.madeOn;
  if (day < first)
    return refused({
      field: 'day',
      message: `It can’t be ${how === 'back' ? 'back' : 'called off'} before ${dayInWords(first)}.`,
    });
  return allOrNothing(store, (tx) => {
    changeLayUp(tx, collectionId, row.id, {
      closedOn: day,
      closedHow: how,
      closedBy: personId,
      isTemplate: how === 'back' && pattern,
    });
    return km === null ? done(null) : recordReadingAct(tx, acting, found.facts, { day, km });
  });
};

/** Takes a closing back that was a slip, unless the car has been put away again since. */
export const reopenLayUp = (store: Store, { collectionId }: Acting, { record: { row } }: StayHere): Outcome<null> => {
  const later = layUpsOf(store, collectionId, row.carId).some(
    ({ id, parkedOn }) => id !== row.id && parkedOn >= row.parkedOn,
  );
  if (later) return refused({ field: 'day', message: 'The car was put away again since: this stay is over.' });
  changeLayUp(store, collectionId, row.id, { closedOn: null, closedHow: null, closedBy: null, isTemplate: false });
  return done(null);
};

type Read = Pick<
  LayUpRow,
  'parkedOn' | 'returnOn' | 'placeId' | 'visitorId' | 'phone' | 'circumstances' | 'numbers' | 'papers' | 'note'
>;

/** `known`: the stay as it is, whose parking day may lie out of reach by now. */
const readLayUp = (store: Store, acting: Acting, given: LayUpGiven, known: LayUpRow | null): Outcome<Read> => {
  const faults: Fault[] = [];
  const { collectionId, today } = acting;
  const dayIn = (field: string, typed: string): CivilDate | null => {
    if (typed === '') return null;
    if (isCivilDate(typed)) return typed;
    faults.push({ field, message: `“${typed}” is no day.` });
    return null;
  };
  const parkedOn = dayIn('parkedOn', given.parkedOn);
  const returnOn = dayIn('returnOn', given.returnOn);
  if (given.parkedOn === '') faults.push({ field: 'parkedOn', message: 'Say the day it is parked, or was.' });
  if (
    parkedOn &&
    parkedOn !== known?.parkedOn &&
    (parkedOn < addMonths(today, -REACH.back) || parkedOn > addMonths(today, REACH.ahead))
  )
    faults.push({
      field: 'parkedOn',
      message: 'That day is out of reach: five years back and two years ahead can be planned.',
    });
  if (parkedOn && returnOn && returnOn <= parkedOn)
    faults.push({ field: 'returnOn', message: 'It comes back after the day it is parked; leave it empty for open.' });
  if (parkedOn && returnOn && returnOn > addMonths(parkedOn, LONGEST))
    faults.push({ field: 'returnOn', message: 'Ten years are the most; leave it empty for open.' });
  if (given.place !== '' && !findPlace(store, collectionId, given.place))
    faults.push({ field: 'place', message: 'There is no such place any more. Choose another.' });
  if (given.visitor !== '' && !membersOf(store, collectionId).some(({ id }) => id === given.visitor))
    faults.push({ field: 'visitor', message: 'That person is not in this collection any more.' });
  const papers: Papers = {
    storageFrom: dayIn('storageFrom', given.papers.storageFrom),
    roadUntil: dayIn('roadUntil', given.papers.roadUntil),
    noticeFrom: dayIn('noticeFrom', given.papers.noticeFrom),
    renewsOn: dayIn('renewsOn', given.papers.renewsOn),
    rules: given.papers.rules,
  };
  const numbers = readNumbers(given.numbers, faults);
  if (faults.length > 0 || parkedOn === null) return { ok: false, faults };
  return done({
    parkedOn,
    returnOn,
    placeId: given.place || null,
    visitorId: given.visitor || null,
    phone: given.phone,
    circumstances: (Object.keys(CIRCUMSTANCES) as Circumstance[]).filter((one) => given.circumstances.includes(one)),
    numbers,
    papers,
    note: given.note,
  });
};

const readNumbers = (typed: LayUpGiven['numbers'], faults: Fault[]): LayUpRow['numbers'] =>
  Object.fromEntries(
    (Object.keys(NUMBERS) as NumberKey[]).flatMap((key) => {
      const { name, unit, range } = NUMBERS[key];
      const value = typed[key] === '' ? null : readPlainNumber(typed[key]);
      if (typed[key] === '') return [];
      if (value !== null && value >= range[0] && value <= range[1] && (key !== 'cylinders' || Number.isInteger(value)))
        return [[key, value]];
      faults.push({
        field: key,
        message: `${name}: a number from ${range[0]} to ${range[1]} ${unit}`.trim().concat('.'),
      });
      return [];
    }),
  );
