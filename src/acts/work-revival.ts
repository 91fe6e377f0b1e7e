/** Working a return: answering looks, ticking steps, passing gates, deciding stops, driving tests, mapping leaks. */
import { type CivilDate, isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { Run, Said, Seen, Survey } from '../revival/journal.ts';
import { isLook, type LookKey, lookOf } from '../revival/looks.ts';
import type { RevivalStep } from '../revival/plan.ts';
import type { StageKey } from '../revival/stages.ts';
import { isSettled } from '../revival/step-state.ts';
import type { StopKey } from '../revival/stops.ts';
import type { Store } from '../store/open.ts';
import { withdrawEntry, writeEntries } from '../store/revivals.ts';
import type { Acting } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { overFault } from './begin-revival.ts';
import { carryOut, type EffectsGiven, readCost, readWith } from './effects.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { recordReadingAct } from './odometer.ts';
import type { ReadingGiven } from './record-reading.ts';
import type { RevivalHere } from './revivals.ts';
import { readPlainNumber } from './typed-number.ts';

/** Day, who and note, as typed; who is empty where it is whoever writes. */
export interface SaidGiven {
  day: string;
  by: string;
  note: string;
}

/** Answers by look: the name of an answer, or a number where a number answers. */
export type LooksGiven = Readonly<Partial<Record<LookKey, string>>>;

/** Writes what was seen; looks left empty are not answered. */
export const answerLooks = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  looks: LooksGiven,
  given: SaidGiven,
): Outcome<null> => {
  const day = readDay(acting, here, given);
  const seen = readLooks(looks);
  if (!day.ok || !seen.ok)
    return { ok: false, faults: [...(day.ok ? [] : day.faults), ...(seen.ok ? [] : seen.faults)] };
  if (seen.value.length === 0) return refused({ field: 'looks', message: 'Nothing was answered yet.' });
  write(store, acting, here, day.value, given, seen.value);
  return done(null);
};

const readLooks = (looks: LooksGiven): Outcome<Seen[]> => {
  const faults: Fault[] = [];
  const seen = Object.entries(looks).flatMap(([key, typed]): Seen[] => {
    if (!isLook(key) || typed.trim() === '') return [];
    const { answers, number } = lookOf(key);
    if (Object.hasOwn(answers, typed)) return [{ what: 'seen', look: key, answer: typed, value: null }];
    const value = number ? readPlainNumber(typed) : null;
    const band = number?.bands.find(({ under }) => value !== null && value < under);
    if (number && value !== null && band && value >= number.range[0] && value <= number.range[1])
      return [{ what: 'seen', look: key, answer: band.answer, value }];
    faults.push({
      field: key,
      message: number
        ? `“${typed}” is no number from ${number.range[0]} to ${number.range[1]} ${number.unit}.`
        : 'Choose one of the answers.',
    });
    return [];
  });
  return faults.length > 0 ? { ok: false, faults } : done(seen);
};

export interface RevivalTickGiven extends SaidGiven, EffectsGiven {
  looks: LooksGiven;
  cost: string;
  hours: string;
  /** Why it was done although something was still to come before it; empty: nothing was. */
  despite: string;
}

/** Ticks a step done, with what it answers and writes into the records, or nothing of it. */
export const tickRevivalStep = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  step: RevivalStep,
  given: RevivalTickGiven,
  at: (reading: ReadingGiven) => string,
): Outcome<null> => {
  if (step.run || step.survey)
    return refused({ field: 'step', message: 'This step is settled by its own form, not by a tick.' });
  if (isSettled(step))
    return refused({
      field: 'step',
      message: 'This step was settled already: take that back first, if it was a slip.',
    });
  const day = readDay(acting, here, given);
  const seen = readLooks(given.looks);
  const cost = readCost(given.cost);
  const hours = readHours(given.hours);
  const silent = (step.asks ?? []).filter((look) => (given.looks[look] ?? '').trim() === '');
  const waiting = step.waits.length > 0 && given.despite === '';
  const faults: Fault[] = [day, seen, cost, hours].flatMap((read) => (read.ok ? [] : read.faults));
  for (const look of silent)
    faults.push({ field: look, message: `Say what was found: ${lookOf(look).name.toLowerCase()}.` });
  if (waiting)
    faults.push({
      field: 'despite',
      message: `First: ${step.waits.map(({ words }) => words).join('; ')}. Or write why it was done all the same.`,
    });
  if (!day.ok || !seen.ok || !cost.ok || !hours.ok || faults.length > 0) return { ok: false, faults };
  const { way } = step;
  return allOrNothing(store, (tx) => {
    const renewed = carryOut(tx, acting, here.found, way, day.value, given, 'Renewed on its return to the road.');
    if (!renewed.ok) return renewed;
    const read = readWith(tx, acting, here.found, day.value, given, at);
    if (!read.ok) return read;
    const despite = step.waits.map(({ key }) => key);
    write(tx, acting, here, day.value, { ...given, note: [given.note, given.despite].filter(Boolean).join(' — ') }, [
      {
        what: 'tick',
        step: step.key,
        act: way.act,
        state: 'done',
        cost: cost.value,
        hours: hours.value,
        ...(despite.length > 0 ? { despite } : {}),
      },
      ...seen.value,
    ]);
    return done(null);
  });
};

const readHours = (typed: string): Outcome<number | null> => {
  if (typed.trim() === '') return done(null);
  const hours = readPlainNumber(typed);
  return hours === null || hours < 0 || hours > 1000
    ? refused({ field: 'hours', message: `“${typed}” is no number of hours. Write it as 3 or 2.5.` })
    : done(hours);
};

/** Leaves a step out, and says why; one of safety keeps its gate shut all the same. */
export const leaveOut = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  step: RevivalStep,
  given: SaidGiven,
): Outcome<null> => {
  const day = readDay(acting, here, given);
  if (!day.ok) return day;
  if (isSettled(step))
    return refused({
      field: 'step',
      message: 'This step was settled already: take that back first, if it was a slip.',
    });
  if (given.note === '') return refused({ field: 'reason', message: 'Say why it is left out: somebody will ask.' });
  write(store, acting, here, day.value, given, [
    { what: 'tick', step: step.key, act: step.way.act, state: 'left out', cost: null, hours: null },
  ]);
  return done(null);
};

/** Takes back the last word on a step. What was answered with it stays until it is answered anew; what it renewed is taken back there. */
export const takeBackStep = (store: Store, acting: Acting, here: RevivalHere, step: RevivalStep): Outcome<null> => {
  const over = overFault(here.record.row, acting.today);
  if (over) return over;
  if (!step.settled) return refused({ field: 'step', message: 'Nothing was said of this step yet.' });
  withdrawEntry(store, acting.collectionId, here.record.row.id, step.settled.id, acting.today);
  return done(null);
};

/** Passes a gate: on its evidence, or in writing, with a name and a reason, despite what lacks. */
export const passGate = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  stage: StageKey,
  given: SaidGiven & { inWriting: boolean },
): Outcome<null> => {
  const day = readDay(acting, here, given);
  if (!day.ok) return day;
  const gate = here.plan.stages.find(({ key }) => key === stage)?.gate;
  if (!gate) return refused({ field: 'gate', message: 'There is no such gate.' });
  if (gate.state === 'passed' || gate.state === 'in writing')
    return refused({ field: 'gate', message: 'This gate was passed already.' });
  if (gate.lacks.length > 0) {
    if (!given.inWriting)
      return refused({ field: 'gate', message: `Not yet: ${gate.lacks.map(({ words }) => words).join(' ')}` });
    const faults: Fault[] = [
      ...(given.by === '' ? [{ field: 'by', message: 'Sign it with a name.' }] : []),
      ...(given.note.length < LEAST_REASON
        ? [{ field: 'note', message: 'Write the reason, in a sentence somebody else understands.' }]
        : []),
    ];
    if (faults.length > 0) return { ok: false, faults };
  }
  write(store, acting, here, day.value, given, [{ what: 'pass', stage, despite: gate.lacks.map(({ key }) => key) }]);
  return done(null);
};

/** Letters; shorter is no reason. */
const LEAST_REASON = 10;

/** Decides a stop: to go on, with a name and a reason; the ceiling with a new one. */
export const decideStop = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  stop: StopKey,
  given: SaidGiven & { ceiling: string },
): Outcome<null> => {
  const day = readDay(acting, here, given);
  if (!day.ok) return day;
  if (!here.plan.stops.some(({ key, decided }) => key === stop && decided === null))
    return refused({ field: 'stop', message: 'Nothing stops there, or it was decided already.' });
  const ceiling = given.ceiling.trim() === '' ? null : readPlainNumber(given.ceiling);
  const { low } = here.plan.money.total;
  const faults: Fault[] = [
    ...(given.by === '' ? [{ field: 'by', message: 'Sign it with a name.' }] : []),
    ...(given.note.length < LEAST_REASON
      ? [{ field: 'note', message: 'Write the reason, in a sentence somebody else understands.' }]
      : []),
    ...(stop === 'ceiling' && (ceiling === null || ceiling < low)
      ? [
          {
            field: 'ceiling',
            message: `Name the new ceiling: at least ${Math.ceil(low)}, or the work stops again at once.`,
          },
        ]
      : []),
  ];
  if (faults.length > 0) return { ok: false, faults };
  write(store, acting, here, day.value, given, [
    { what: 'decision', stop, ceiling: stop === 'ceiling' ? ceiling : null },
  ]);
  return done(null);
};

/** Writes a road test down; it was not to be driven before everything below it was passed. */
export const recordRun = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  step: RevivalStep,
  run: Run,
  given: SaidGiven & { odometer: number | null; despite: string },
): Outcome<null> => {
  const day = readDay(acting, here, given);
  if (!day.ok) return day;
  if (step.waits.length > 0 && given.despite === '')
    return refused({
      field: 'despite',
      message: `Before this run: ${step.waits.map(({ words }) => words).join('; ')}. Or write why it was driven all the same.`,
    });
  return allOrNothing(store, (tx) => {
    if (given.odometer !== null) {
      const read = recordReadingAct(tx, acting, here.found.facts, { day: day.value, km: given.odometer });
      if (!read.ok) return read;
    }
    write(tx, acting, here, day.value, { ...given, note: [given.note, given.despite].filter(Boolean).join(' — ') }, [
      run,
    ]);
    return done(null);
  });
};

/** Writes one survey of the leak map down; surveyed again, the last one counts. */
export const recordSurvey = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  survey: Survey,
  given: SaidGiven,
): Outcome<null> => {
  const day = readDay(acting, here, given);
  if (!day.ok) return day;
  write(store, acting, here, day.value, given, [survey]);
  return done(null);
};

const readDay = (acting: Acting, { record }: RevivalHere, { day }: SaidGiven): Outcome<CivilDate> => {
  const over = overFault(record.row, acting.today);
  if (over) return over;
  if (!isCivilDate(day)) return refused({ field: 'day', message: `“${day}” is no day.` });
  if (day > acting.today) return refused({ field: 'day', message: 'That day lies ahead.' });
  if (day < record.row.begunOn)
    return refused({
      field: 'day',
      message: `Its return began on ${dayInWords(record.row.begunOn)}: what was done before goes to the part itself.`,
    });
  return done(day);
};

const write = (
  store: Store,
  { collectionId, personId, today }: Acting,
  { record }: RevivalHere,
  day: CivilDate,
  { by, note }: Pick<SaidGiven, 'by' | 'note'>,
  said: readonly Said[],
): void =>
  writeEntries(
    store,
    collectionId,
    record.row.id,
    said.map((one, index) => ({
      day,
      said: one,
      doneBy: by,
      // What was noted stands once, beside the first of what was said with it.
      note: index === 0 ? note : '',
      recordedOn: today,
      recordedBy: personId,
    })),
  );
