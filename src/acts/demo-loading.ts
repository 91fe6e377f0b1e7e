/** What loading a demo needs everywhere: who did it on which day, and an end with words where a door refuses. */
import type { CivilDate } from '../dates/civil.ts';
import type { Store } from '../store/open.ts';
import type { Acting } from './add-car.ts';
import type { Demo } from './demo.ts';
import type { Outcome } from './fault.ts';

export interface Loading {
  store: Store;
  demo: Demo;
  today: CivilDate;
}

/** A person of the demo on a day of its past; claims are judged as on that day. */
export const actingOn = ({ demo, today }: Loading, day: CivilDate, personId: string, where: string): Acting => {
  const person = demo.people.find(({ id }) => id === personId);
  if (!person) fail(where, 'Nobody of the demo did that.');
  if (day > today) fail(where, `${day} lies ahead.`);
  return { collectionId: demo.collection.id, personId, order: person.dateOrder, today: day };
};

export const must = <T>(outcome: Outcome<T>, where: string): T =>
  outcome.ok
    ? outcome.value
    : fail(
        where,
        ...outcome.faults.map(({ message }) => message),
        ...outcome.faults.flatMap(({ choices = [] }) =>
          choices.map(({ value, label }) => `Choice ${value}: ${label}.`),
        ),
      );

export const fail: (where: string, ...why: string[]) => never = (where, ...why) => {
  throw new Error(`Demo: ${where}: ${why.join(' ')}`);
};
