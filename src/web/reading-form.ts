/** Readings as a form sends them: any number in one form, each with its own unit and temperature. */
import type { Fault } from '../acts/fault.ts';
import type { ReadingGiven } from '../acts/record-reading.ts';
import type { ReadingsForm } from './forms.ts';
import { choiceOf } from './layout.tsx';
import { fieldOf } from './pages/reading-field.tsx';

const FIELD = /^([^.]+)\.([^.]+)\.typed$/;

/** The numbers that were typed; a field left empty is no reading. */
export const readingsIn = (given: ReadingsForm, on: string): ReadingGiven[] =>
  Object.entries(given).flatMap(([name, typed]) => {
    const [, partId, gauge] = FIELD.exec(name) ?? [];
    if (!partId || !gauge || typed === '') return [];
    const own = (what: string): string => given[`${fieldOf(partId, gauge)}${what}`] ?? '';
    return [
      {
        partId,
        gauge,
        typed,
        unit: own('unit'),
        day: given.day || on,
        // Where the form asks for it once, it has no field of its own.
        warmth: given[`${fieldOf(partId, gauge)}warmth`] ?? given.warmth,
        warmthUnit: given[`${fieldOf(partId, gauge)}warmthUnit`] ?? given.warmthUnit,
        instrument: given.instrument,
        note: given.note,
        sure: choiceOf(typed, own('typedAsked'), own('typedChoice')) === 'sure',
      },
    ];
  });

/** What was asked once for all readings is wrong once, beside its one field. */
export const besideFields = (faults: readonly Fault[], given: ReadingsForm): Fault[] => {
  const placed = faults.map((fault) =>
    fault.field in given ? fault : { ...fault, field: fault.field.split('.').at(-1) ?? '' },
  );
  return placed.filter(({ field }, index) => placed.findIndex((one) => one.field === field) === index);
};
