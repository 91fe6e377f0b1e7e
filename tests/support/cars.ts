/** Cars to test with, added through the same door people use. */
import { type Acting, addCarAct, type CarGiven } from '../../src/acts/add-car.ts';
import type { Outcome } from '../../src/acts/fault.ts';
import { datePart } from '../../src/acts/parts.ts';
import type { ClaimGiven } from '../../src/acts/read-claim.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { type CarWithParts, carWithParts, type PartOnRecord } from '../../src/store/cars.ts';
import { openMemoryStore, type Store } from '../../src/store/open.ts';
import { addCollection } from '../../src/store/people.ts';

export const TODAY: CivilDate = '2026-11-25';

/** A house with one collection and its owner. */
export interface Barn {
  store: Store;
  acting: Acting;
}

export const openBarn = (store: Store = openMemoryStore(), name = 'The barn'): Barn => {
  const { collectionId, personId } = addCollection(
    store,
    { name, timeZone: 'Europe/Lisbon' },
    { name: 'Ada', email: 'ada@example.org', dateOrder: 'day first' },
  );
  return { store, acting: { collectionId, personId, order: 'day first', today: TODAY } };
};

/** The one collection of a site, to put cars into. */
export const barnOf = ({
  store,
  collectionId,
  personId,
}: {
  store: Store;
  collectionId: string;
  personId: string;
}): Barn => ({
  store,
  acting: { collectionId, personId, order: 'day first', today: TODAY },
});

export const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(outcome.faults.map(({ field, message }) => `${field}: ${message}`).join('\n'));
  return outcome.value;
};

export const traitsOf = (key: (typeof QUICK_STARTS)[number]['key']): string[] => [
  ...(QUICK_STARTS.find((start) => start.key === key)?.traits ?? []),
];

/** Disc and drum brakes, glycol fluid, carburetor, full spare, flooded battery. */
export const ROADSTER = traitsOf('roadster-disc-drum-overdrive');

export const newCar = (given: Partial<CarGiven> = {}): CarGiven => ({
  name: 'Merle Tourer',
  built: '1967',
  traits: ROADSTER,
  note: '',
  km: null,
  ...given,
});

export const carIn = ({ store, acting }: Barn, given: Partial<CarGiven> = {}): string =>
  must(addCarAct(store, acting, newCar(given)));

export const carOf = ({ store, acting }: Barn, carId: string): CarWithParts => {
  const found = carWithParts(store, acting.collectionId, carId);
  if (!found) throw new Error(`No car ${carId}`);
  return found;
};

export const partOf = (barn: Barn, carId: string, kind: string, position: string | null = null): PartOnRecord => {
  const part = carOf(barn, carId).parts.find((one) => one.kind === kind && one.position === position);
  if (!part) throw new Error(`The car has no ${kind} ${position ?? ''}`);
  return part;
};

export const claim = (clock: ClaimGiven['clock'], typed: string, more: Partial<ClaimGiven> = {}): ClaimGiven => ({
  clock,
  typed,
  evidence: 'receipt',
  km: null,
  note: '',
  ...more,
});

/** Dates the part of a kind, as somebody would on the barn's day. */
export const date = (
  barn: Barn,
  carId: string,
  kind: string,
  given: ClaimGiven,
  position: string | null = null,
): string => {
  const part = partOf(barn, carId, kind, position);
  must(datePart(barn.store, barn.acting, { part, car: carOf(barn, carId).facts }, given));
  return part.id;
};
