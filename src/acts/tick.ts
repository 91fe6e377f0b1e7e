/** Ticking a step off: what was done, and in the same stroke the new dates, answers and readings it stands for. */
import { addMonths, type CivilDate, isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { PlanName, PlanStep } from '../plans/plan.ts';
import type { StayView } from '../plans/standing.ts';
import { carWithParts } from '../store/cars.ts';
import { type LayUpRow, tickStep, untickStep } from '../store/lay-ups.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { putCar } from '../store/places.ts';
import { setDetails } from '../store/readings.ts';
import type { Acting } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { carryOut, type EffectsGiven, readCost, readWith } from './effects.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { closedFault } from './lay-up.ts';
import type { ReadingGiven } from './record-reading.ts';
import type { StayHere } from './stays.ts';

export const stepIn = (view: StayView, plan: PlanName, key: string): PlanStep | undefined =>
  (plan === 'lay-up' ? view.layUp : view.wakeUp).steps.find((step) => step.key === key);

export interface TickGiven extends EffectsGiven {
  day: string;
  note: string;
  /** Who did it; empty: who ticks it. */
  by?: string;
  cost: string;
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
  const cost = readCost(given.cost);
  const faults: Fault[] = [...day, ...(cost.ok ? [] : cost.faults)];
  if (!cost.ok || faults.length > 0) return { ok: false, faults };
  const on = given.day as CivilDate;
  return allOrNothing(store, (tx) => {
    const renewed = carryOut(tx, acting, found, step.records, on, given, 'Renewed in its lay-up.');
    if (!renewed.ok) return renewed;
    answerFor(tx, acting, here, step, on);
    if (step.records.parks && record.row.placeId) putCar(tx, acting.collectionId, found.car.id, record.row.placeId, on);
    const read = readWith(tx, acting, found, on, given, at);
    if (!read.ok) return read;
    tickStep(tx, acting.collectionId, record.row.id, {
      plan,
      step: step.key,
      state: 'done',
      day: on,
      note: given.note,
      doneBy: given.by ?? '',
      cost: cost.value,
      recordedOn: acting.today,
      recordedBy: acting.personId,
    });
    return done(null);
  });
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
