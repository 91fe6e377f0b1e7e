/** What ticking a step off writes into the records: parts renewed, looked at or used, the odometer, readings. */
import type { Clock } from '../catalogue/clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { Evidence } from '../findings/facts.ts';
import { type CarWithParts, carWithParts, findPart, type PartOnRecord } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import { setDetails } from '../store/readings.ts';
import type { Acting } from './add-car.ts';
import { type AnswerGiven, readAnswers } from './details.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { recordReadingAct } from './odometer.ts';
import { beginsOn, datePart, kindOf, renewPart } from './parts.ts';
import { type ReadingGiven, recordReadingsAct } from './record-reading.ts';
import { readPlainNumber } from './typed-number.ts';

/** Kinds a step stands for, by what becomes of them. */
export type Effects = Partial<Readonly<Record<'renews' | 'services' | 'uses', readonly string[]>>>;

/** A change to the records that a step stands for; each can be left out by whoever ticks. */
export interface Effect {
  key: string;
  sort: keyof Effects;
  part: PartOnRecord;
}

export const effectsOf = (effects: Effects, parts: readonly PartOnRecord[]): Effect[] =>
  (['renews', 'services', 'uses'] as const).flatMap((sort) =>
    parts
      .filter(({ kind }) => effects[sort]?.includes(kind))
      .map((part) => ({ key: `${sort}:${part.id}`, sort, part })),
  );

export interface EffectsGiven {
  evidence: Evidence;
  km: number | null;
  /** Keys of the effects wanted. */
  effects: readonly string[];
  /** Answers about what was renewed, by part. */
  answers: Readonly<Record<string, Readonly<Record<string, AnswerGiven>>>>;
  readings: readonly ReadingGiven[];
}

/** Writes the effects that are wanted, with that day; `why` is told of a record that closes. */
export const carryOut = (
  store: Store,
  acting: Acting,
  found: CarWithParts,
  effects: Effects,
  on: CivilDate,
  given: EffectsGiven,
  why: string,
): Outcome<null> => {
  for (const effect of effectsOf(effects, found.parts)) {
    if (!given.effects.includes(effect.key)) continue;
    const outcome = write(store, acting, found, effect, on, given, why);
    if (!outcome.ok) return { ok: false, faults: outcome.faults.map(besideDay) };
  }
  return done(null);
};

/** The odometer and the readings told with it; faults of readings name their field with `at` before it. */
export const readWith = (
  store: Store,
  acting: Acting,
  found: CarWithParts,
  on: CivilDate,
  { km, readings }: EffectsGiven,
  at: (reading: ReadingGiven) => string,
): Outcome<unknown> => {
  if (km !== null) {
    const read = recordReadingAct(store, acting, found.facts, { day: on, km });
    if (!read.ok) return read;
  }
  if (readings.length === 0) return done(null);
  const now = carWithParts(store, acting.collectionId, found.car.id) ?? found;
  const typed = new Map(readings.map((one) => [followed(one, found.parts, now.parts), one]));
  return recordReadingsAct(store, acting, now, [...typed.keys()], (one) => at(typed.get(one) ?? one));
};

/** An amount in the collection’s currency; empty is none. */
export const readCost = (typed: string): Outcome<number | null> => {
  if (typed.trim() === '') return done(null);
  const cost = readPlainNumber(typed);
  return cost === null
    ? refused({ field: 'cost', message: `“${typed}” is no amount. Write it as 45 or 45.50, without its currency.` })
    : done(cost);
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

const write = (
  store: Store,
  acting: Acting,
  found: CarWithParts,
  { sort, part }: Effect,
  on: CivilDate,
  { evidence, km, answers }: EffectsGiven,
  why: string,
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
    : renewPart(store, acting, there, { why, note: '', claims: [claim] });
  if (!renewed.ok) return renewed;
  const id = typeof renewed.value === 'string' ? renewed.value : part.id;
  const kept = findPart(store, acting.collectionId, id)?.details ?? {};
  setDetails(store, acting.collectionId, id, { ...kept, ...read.value });
  return renewed;
};
