/** Ticking a step off: what was done, and in the same stroke the new dates, answers and readings it stands for. */
import type { Clock } from '../catalogue/clock.ts';
import { addMonths, type CivilDate, isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { Evidence } from '../findings/facts.ts';
import type { PlanName, PlanStep } from '../plans/plan.ts';
import type { StayView } from '../plans/standing.ts';
import { carWithParts, findPart, type PartOnRecord } from '../store/cars.ts';
import { type LayUpRow, tickStep, untickStep } from '../store/lay-ups.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { putCar } from '../store/places.ts';
import { setDetails } from '../store/readings.ts';
import type { Acting } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { type AnswerGiven, readAnswers } from './details.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { closedFault } from './lay-up.ts';
import { recordReadingAct } from './odometer.ts';
import { beginsOn, datePart, kindOf, renewPart } from './parts.ts';
import { type ReadingGiven, recordReadingsAct } from './record-reading.ts';
import type { StayHere } from './stays.ts';
import { readPlainNumber } from './typed-number.ts';

/** A change to the records that a step stands for; each can be left out by whoever ticks. */
export interface Effect {
  key: string;
  sort: 'renews' | 'services' | 'uses';
  part: PartOnRecord;
}

export const effectsOf = ({ records }: PlanStep, parts: readonly PartOnRecord[]): Effect[] =>
  (['renews', 'services', 'uses'] as const).flatMap((sort) =>
    parts
      .filter(({ kind }) => records[sort]?.includes(kind))
      .map((part) => ({ key: `${sort}:${part.id}`, sort, part })),
  );

export const stepIn = (view: StayView, plan: PlanName, key: string): PlanStep | undefined =>
  (plan === 'lay-up' ? view.layUp : view.wakeUp).steps.find((step) => step.key === key);

export interface TickGiven {
  day: string;
  note: string;
  /** Who did it; empty: who ticks it. */
  by?: string;
  cost: string;
  evidence: Evidence;
  km: number | null;
  /** Keys of the effects wanted. */
  effects: readonly string[];
  /** Answers about what was renewed, by part. */
  answers: Readonly<Record<string, Readonly<Record<string, AnswerGiven>>>>;
  readings: readonly ReadingGiven[];
}

/** Ticks a step done, with all it stands for or nothing; faults of readings name their field with `at` before it. */
export const tickDone = (
  store: Store,
  acting: Acting,
  here: StayHere,
  step: PlanStep,
  plan: PlanName,
  given: TickGiven,
  at: (reading: ReadingGiven) => string,
): Outcome<null> => {
  const { record, found } = here;
  const closed = closedFault(record, acting.today);
  if (closed) return closed;
  if (step.tick)
    return refused({ field: 'step', message: 'This step was ticked already: take that back first, if it was a slip.' });
  const day = dayFault(given.day, acting.today, record.row, plan);
  const cost = given.cost.trim() === '' ? null : readPlainNumber(given.cost);
  const faults: Fault[] = [
    ...day,
    ...(given.cost.trim() !== '' && cost === null
      ? [{ field: 'cost', message: `“${given.cost}” is no amount. Write it as 45 or 45.50, without its currency.` }]
      : []),
  ];
  if (faults.length > 0) return { ok: false, faults };
  const on = given.day as CivilDate;
  return allOrNothing(store, (tx) => {
    for (const effect of effectsOf(step, found.parts)) {
      if (!given.effects.includes(effect.key)) continue;
      const outcome = carryOut(tx, acting, here, effect, on, given);
      if (!outcome.ok) return { ok: false, faults: outcome.faults.map(besideDay) };
    }
    answerFor(tx, acting, here, step, on);
    if (step.records.parks && record.row.placeId) putCar(tx, acting.collectionId, found.car.id, record.row.placeId, on);
    if (given.km !== null) {
      const read = recordReadingAct(tx, acting, found.facts, { day: on, km: given.km });
      if (!read.ok) return read;
    }
    if (given.readings.length > 0) {
      const now = carWithParts(tx, acting.collectionId, found.car.id) ?? found;
      const typed = new Map(given.readings.map((one) => [followed(one, found.parts, now.parts), one]));
      const read = recordReadingsAct(tx, acting, now, [...typed.keys()], (one) => at(typed.get(one) ?? one));
      if (!read.ok) return read;
    }
    tickStep(tx, acting.collectionId, record.row.id, {
      plan,
      step: step.key,
      state: 'done',
      day: on,
      note: given.note,
      doneBy: given.by ?? '',
      cost,
      recordedOn: acting.today,
      recordedBy: acting.personId,
    });
    return done(null);
  });
};

/** What was read of a part that this very tick renewed was read of its successor. */
const followed = (
  reading: ReadingGiven,
  before: readonly PartOnRecord[],
  now: readonly PartOnRecord[],
): ReadingGiven => {
  const old = before.find(({ id }) => id === reading.partId);
  const part = now.find(({ id }) => id === old?.id) ?? now.find(({ replaces }) => replaces === old?.id);
  return part ? { ...reading, partId: part.id } : { ...reading };
};

/** The date of a record is the day of the tick: what is wrong with it stands beside that. */
const besideDay = (fault: Fault): Fault => {
  const [, field] = /^(?:dates\/\d+\/)?(typed|distance)$/.exec(fault.field) ?? [];
  return field ? { ...fault, field: field === 'typed' ? 'day' : field } : fault;
};

const carryOut = (
  store: Store,
  acting: Acting,
  { found }: StayHere,
  { sort, part }: Effect,
  on: CivilDate,
  { evidence, km, answers }: TickGiven,
): Outcome<unknown> => {
  const kind = kindOf(part);
  const clock: Clock = sort === 'renews' ? beginsOn(kind) : sort === 'services' ? 'serviced' : 'used';
  const claim = { clock, typed: dayInWords(on), evidence, km: sort === 'uses' ? null : km, note: '' };
  const there = { part, car: found.facts };
  if (sort !== 'renews') return datePart(store, acting, there, claim);
  const read = readAnswers(kind.details ?? [], answers[part.id] ?? {});
  if (!read.ok) return { ok: false, faults: read.faults.map((one) => ({ ...one, field: `${part.id}.${one.field}` })) };
  // A part nobody had dated yet is that part, and now has its date.
  const fresh = part.claims.length === 0 && part.readings.length === 0;
  const renewed = fresh
    ? datePart(store, acting, there, claim)
    : renewPart(store, acting, there, { why: 'Renewed in its lay-up.', note: '', claims: [claim] });
  if (!renewed.ok) return renewed;
  const id = typeof renewed.value === 'string' ? renewed.value : part.id;
  const kept = findPart(store, acting.collectionId, id)?.details ?? {};
  setDetails(store, acting.collectionId, id, { ...kept, ...read.value });
  return renewed;
};

/**
 * Answers that became true by the step, such as how the battery is left; of what it renews the form asks. What a step of
 * a later day has said meanwhile stays.
 */
const answerFor = (
  store: Store,
  { collectionId }: Acting,
  { found, view }: StayHere,
  step: PlanStep,
  on: CivilDate,
) => {
  const later = [...view.layUp.steps, ...view.wakeUp.steps].filter(
    ({ tick }) => tick?.state === 'done' && tick.day > on,
  );
  const now = carWithParts(store, collectionId, found.car.id)?.parts ?? [];
  for (const { kinds, key, value } of step.records.answers ?? []) {
    if (later.some(({ records }) => records.answers?.some((one) => one.key === key))) continue;
    for (const part of now)
      if (kinds.includes(part.kind) && !step.records.renews?.includes(part.kind))
        setDetails(store, collectionId, part.id, { ...part.details, [key]: value });
  }
};

/** Takes a tick back, and with it what it answered; what it renewed stays in the records, and is taken back there. */
export const takeBackTick = (
  store: Store,
  { collectionId, today }: Acting,
  { record, found }: StayHere,
  step: PlanStep,
  plan: PlanName,
): Outcome<null> => {
  const closed = closedFault(record, today);
  if (closed) return closed;
  inTransaction(store, (tx) => {
    untickStep(tx, collectionId, record.row.id, { plan, step: step.key }, today);
    if (step.tick?.state !== 'done') return;
    for (const { kinds, key, value } of step.records.answers ?? [])
      for (const part of found.parts.filter(({ kind, details }) => kinds.includes(kind) && details[key] === value)) {
        const { [key]: _, ...others } = part.details;
        setDetails(tx, collectionId, part.id, others);
      }
  });
  return done(null);
};

/** Leaves a step out, and says why. */
export const skipStep = (
  store: Store,
  { collectionId, personId, today }: Acting,
  { record }: StayHere,
  step: PlanStep,
  plan: PlanName,
  reason: string,
): Outcome<null> => {
  const closed = closedFault(record, today);
  if (closed) return closed;
  if (step.tick?.state === 'done')
    return refused({ field: 'step', message: 'This step was ticked already: take that back first, if it was a slip.' });
  if (reason === '')
    return refused({ field: 'reason', message: 'Say why it is left out: in spring somebody will ask.' });
  tickStep(store, collectionId, record.row.id, {
    plan,
    step: step.key,
    state: 'skipped',
    day: today,
    note: reason,
    cost: null,
    recordedOn: today,
    recordedBy: personId,
  });
  return done(null);
};

/** How long before the parking day a step of it can have been done, in months. */
const EARLIEST = 12;

const dayFault = (day: string, today: CivilDate, { closedOn, parkedOn }: LayUpRow, plan: PlanName): Fault[] => {
  if (!isCivilDate(day)) return [{ field: 'day', message: `“${day}” is no day.` }];
  if (day > today) return [{ field: 'day', message: 'That day lies ahead.' }];
  if (day < addMonths(parkedOn, -EARLIEST))
    return [{ field: 'day', message: `That is more than a year before it was parked, on ${dayInWords(parkedOn)}.` }];
  if (plan === 'wake-up' && day < parkedOn)
    return [{ field: 'day', message: `That is before it was parked, on ${dayInWords(parkedOn)}.` }];
  return closedOn && day > closedOn
    ? [{ field: 'day', message: `The lay-up was closed on ${dayInWords(closedOn)}.` }]
    : [];
};
