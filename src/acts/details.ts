/** Answering what a part is or holds: grade, capacity, handbook figures. */
import type { Detail } from '../catalogue/gauge.ts';
import { KINDS } from '../catalogue/kinds.ts';
import { convert } from '../catalogue/units.ts';
import type { Answers } from '../findings/facts.ts';
import type { PartOnRecord } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import { setDetails } from '../store/readings.ts';
import type { Acting } from './add-car.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { asTyped, isUnit, limitIn, readNumber } from './typed-number.ts';

/** One answer as typed; the unit is the one chosen beside a number. */
export interface AnswerGiven {
  typed: string;
  unit: string;
}

/** Sets all of a part's details; an empty answer is none. */
export const setDetailsAct = (
  store: Store,
  acting: Acting,
  part: PartOnRecord,
  given: Readonly<Record<string, AnswerGiven>>,
): Outcome<Answers> => {
  if (part.closedOn) return refused({ field: 'details', message: `This part was closed on ${part.closedOn}.` });
  const read = readAnswers(KINDS.get(part.kind)?.details ?? [], given);
  if (read.ok) setDetails(store, acting.collectionId, part.id, read.value);
  return read;
};

/** Reads answers to some details; a question nobody asks is a fault, one left open is none. */
export const readAnswers = (
  details: readonly Detail[],
  given: Readonly<Record<string, AnswerGiven>>,
): Outcome<Answers> => {
  const faults: Fault[] = [];
  const answers: Record<string, string | number> = {};
  for (const detail of details) {
    const answer = given[detail.key];
    if (!answer || answer.typed.trim() === '') continue;
    const read = readAnswer(detail, answer);
    if (read.ok) answers[detail.key] = read.value;
    else faults.push(...read.faults);
  }
  for (const key of Object.keys(given))
    if (!details.some((detail) => detail.key === key))
      faults.push({ field: key, message: `Nothing here asks for “${key}”.` });
  return faults.length > 0 ? { ok: false, faults } : done(answers);
};

const readAnswer = (detail: Detail, { typed, unit }: AnswerGiven): Outcome<string | number> => {
  const field = detail.key;
  if ('choices' in detail)
    return Object.hasOwn(detail.choices, typed)
      ? done(typed)
      : refused({ field, message: `${detail.name}: choose ${Object.values(detail.choices).join(', ')}.` });
  const { range, also = [], decimals } = detail;
  const units = [detail.unit, ...also];
  const picked = isUnit(unit) && units.includes(unit) ? unit : detail.unit;
  const read = readNumber(typed, picked, units, decimals);
  if (!read.ok) return refused({ field, message: read.message });
  const value = convert(read.value, read.unit, detail.unit);
  const limits = range.map((limit) => limitIn(limit, detail.unit, read.unit, decimals)).join(' to ');
  return value >= range[0] && value <= range[1]
    ? done(value)
    : refused({
        field,
        message: `${asTyped(read.value, read.unit)} can’t be: from ${limits} is meant here.`,
      });
};
