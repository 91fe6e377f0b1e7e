/** Setting another interval than the trade's, for one car or the whole collection, with the reason. */
import type { Kind } from '../catalogue/kind.ts';
import type { Store } from '../store/open.ts';
import { endOverride, setOverride } from '../store/overrides.ts';
import type { Acting } from './add-car.ts';
import { done, type Fault, type Outcome } from './fault.ts';

export interface OverrideGiven {
  carId: string | null;
  authority: 'handbook' | 'own';
  lookFrom: number | null;
  replaceBy: number | null;
  replaceByKm: number | null;
  note: string;
}

export const setInterval = (store: Store, acting: Acting, kind: Kind, given: OverrideGiven): Outcome<null> => {
  const faults = faultsOf(given);
  if (faults.length > 0) return { ok: false, faults };
  setOverride(store, { collectionId: acting.collectionId, kind: kind.key, setOn: acting.today, ...given });
  return done(null);
};

/** Lets the next authority rule again. */
export const clearInterval = (
  store: Store,
  acting: Acting,
  kind: Kind,
  { carId, authority }: Pick<OverrideGiven, 'carId' | 'authority'>,
): void => endOverride(store, acting.collectionId, kind.key, carId, authority, acting.today);

const faultsOf = ({ carId, authority, lookFrom, replaceBy, replaceByKm, note }: OverrideGiven): Fault[] => {
  const faults: Fault[] = [];
  if (lookFrom === null && replaceBy === null && replaceByKm === null)
    faults.push({
      field: 'replaceBy',
      message: 'Give at least one figure, or go back to practice with the button below.',
    });
  if (lookFrom !== null && replaceBy !== null && lookFrom > replaceBy)
    faults.push({
      field: 'lookFrom',
      message: 'The look comes before the replacement: give it fewer months, or leave it empty.',
    });
  if (note === '')
    faults.push({
      field: 'note',
      message: 'Say why, or where in the handbook it stands: it is shown beside the figure.',
    });
  if (authority === 'handbook' && carId === null)
    faults.push({
      field: 'authority',
      message: 'A handbook is one car’s: choose the car, or call the interval your own.',
    });
  return faults;
};
