/** The first look at a sleeper: what is seen, the codes on its tires, what is said to have been done since. */
import type { Evidence } from '../findings/facts.ts';
import { carWithParts, type PartOnRecord } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import type { Acting } from './add-car.ts';
import { allOrNothing } from './all-or-nothing.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { beginsOn, datePart, kindOf } from './parts.ts';
import type { RevivalHere } from './revivals.ts';
import { answerLooks, type LooksGiven, type SaidGiven } from './work-revival.ts';

/** Kinds whose date is read off the car itself: all five tires. */
const CODED = ['tires-road', 'tire-spare', 'tire-compact-spare'];

/** Kinds people say were renewed since it was parked. */
const SAID_DONE = [
  'battery-flooded',
  'battery-agm',
  'battery-lithium',
  'engine-oil',
  'coolant-iat',
  'coolant-oat',
  'brake-fluid-glycol',
  'brake-fluid-silicone',
  'central-hydraulics',
  'brake-hoses',
  'fuel-gasoline',
  'fuel-diesel',
  'fuel-hose-low',
  'timing-belt',
  'spark-plugs',
];

export const codedParts = (parts: readonly PartOnRecord[]): PartOnRecord[] =>
  parts.filter(({ kind }) => CODED.includes(kind));
export const saidDoneParts = (parts: readonly PartOnRecord[]): PartOnRecord[] =>
  SAID_DONE.flatMap((kind) => parts.filter((part) => part.kind === kind));

export interface DateGiven {
  partId: string;
  typed: string;
  choice?: string | undefined;
  evidence: Evidence;
}

/** Writes all of a first look or nothing; faults of dates name their field as date.<part>. */
export const surveySleeper = (
  store: Store,
  acting: Acting,
  here: RevivalHere,
  { looks, dates, ...given }: SaidGiven & { looks: LooksGiven; dates: readonly DateGiven[] },
): Outcome<null> => {
  const answered = Object.values(looks).some((answer) => answer.trim() !== '');
  if (!answered && dates.length === 0) return refused({ field: 'looks', message: 'Nothing was answered yet.' });
  return allOrNothing(store, (tx) => {
    const faults: Fault[] = [];
    for (const { partId, typed, choice, evidence } of dates) {
      const part = here.found.parts.find(({ id }) => id === partId);
      if (!part) continue;
      const car = carWithParts(tx, acting.collectionId, here.found.car.id)?.facts ?? here.found.facts;
      const clock = CODED.includes(part.kind) ? 'made' : beginsOn(kindOf(part));
      const read = datePart(tx, acting, { part, car }, { clock, typed, choice, evidence, km: null, note: '' });
      if (!read.ok) faults.push(...read.faults.map((fault) => ({ ...fault, field: `date.${partId}` })));
    }
    if (answered) {
      const seen = answerLooks(tx, acting, here, looks, given);
      if (!seen.ok) faults.push(...seen.faults);
    }
    return faults.length > 0 ? { ok: false, faults } : done(null);
  });
};
