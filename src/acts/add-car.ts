import { partsFor } from '../catalogue/kinds.ts';
import { FACETS } from '../catalogue/traits.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { DateOrder } from '../dates/typed-point.ts';
import {
  addCar,
  type CarRow,
  type CarWithParts,
  changeCar,
  closedParts,
  type PartOnRecord,
  type PartsChange,
} from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import { readBuildDate } from './build-date.ts';
import { done, type Fault, type Outcome } from './fault.ts';

/** A car as a person describes it. Distances in km. */
export interface CarGiven {
  name: string;
  built: string;
  builtChoice?: string | undefined;
  traits: readonly string[];
  note: string;
  km: number | null;
  /** False: only looked at so far. */
  ours?: boolean;
}

export interface Acting {
  collectionId: string;
  personId: string;
  order: DateOrder;
  today: CivilDate;
}

/** Adds a car with its whole list of parts, each waiting for its date; answers the car's id, a new one unless given. */
export const addCarAct = (store: Store, acting: Acting, given: CarGiven, id?: string): Outcome<string> => {
  const described = describe(acting, given);
  if (!described.ok) return described;
  const { collectionId, today } = acting;
  const car = { collectionId, addedOn: today, ours: given.ours ?? true, ...described.value };
  const reading = given.km === null ? null : { day: today, km: given.km };
  return done(addCar(store, car, partsFor(given.traits), reading, id));
};

/**
 * Changes a car. Traits added open their parts; traits taken away close those that carry a record and drop those that
 * never had one.
 */
export const changeCarAct = (
  store: Store,
  acting: Acting,
  known: CarWithParts,
  given: CarGiven,
): Outcome<PartsChange> => {
  const described = describe(acting, given);
  if (!described.ok) return described;
  const closed = closedParts(store, acting.collectionId, known.car.id);
  const change = partsChange(known, closed, given.traits);
  changeCar(store, { ...known.car, ...described.value }, change, acting.today);
  return done(change);
};

type Described = Omit<CarRow, 'collectionId' | 'id' | 'addedOn' | 'ours' | 'leftOn' | 'leftHow'>;

const describe = (acting: Acting, { name, built, builtChoice, traits, note }: CarGiven): Outcome<Described> => {
  const faults: Fault[] = traitFaults(traits);
  const read = readBuildDate(built, builtChoice, acting);
  if (!read.ok) faults.unshift(...read.faults);
  return faults.length > 0 || !read.ok
    ? { ok: false, faults }
    : done({ name, traits: [...traits], note, ...read.value });
};

/** A facet of one needs one trait, and no more. */
const traitFaults = (traits: readonly string[]): Fault[] =>
  FACETS.filter(({ choose }) => choose === 'one').flatMap(({ name, traits: options }) => {
    const chosen = Object.keys(options).filter((trait) => traits.includes(trait)).length;
    return chosen === 1 ? [] : [{ field: 'traits', message: `${name}: choose one, ${chosen} were given.` }];
  });

/** Whether anything would be lost with it. */
const hasRecord = ({ claims, readings, details }: PartOnRecord): boolean =>
  claims.length > 0 || readings.length > 0 || Object.keys(details).length > 0;

const partsChange = (
  { car, parts }: CarWithParts,
  closed: readonly PartOnRecord[],
  traits: readonly string[],
): PartsChange => {
  const place = (part: { kind: string; position: string | null }): string => `${part.kind} ${part.position ?? ''}`;
  const places = (list: readonly { kind: string; position: string | null }[]): Set<string> => new Set(list.map(place));
  const after = partsFor(traits);
  const [before, wanted, have, ended] = [places(partsFor(car.traits)), places(after), places(parts), places(closed)];
  // Listed by the old traits, yet ended and not there: a person took it off, and it stays off.
  const takenOff = (at: string): boolean => before.has(at) && ended.has(at);
  // Parts a person added by hand were never on the list of the old traits: they stay.
  const gone = parts.filter((part) => before.has(place(part)) && !wanted.has(place(part)));
  return {
    open: after.filter((part) => !have.has(place(part)) && !takenOff(place(part))),
    close: gone.filter(hasRecord).map(({ id }) => ({ id, why: 'Not on this car any more.' })),
    drop: gone.filter((part) => !hasRecord(part)).map(({ id }) => id),
  };
};
