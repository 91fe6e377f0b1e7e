/** A car rolled on: its tires stand on another spot since that day. A tire whose dates clash with it keeps its own. */
import type { CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { CarWithParts } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import type { Acting } from './add-car.ts';
import { datePart } from './parts.ts';

export const moveTires = (store: Store, acting: Acting, { parts, facts }: CarWithParts, day: CivilDate): void => {
  for (const part of parts.filter(({ kind }) => kind === 'tires-road'))
    datePart(
      store,
      acting,
      { part, car: facts },
      { clock: 'used', typed: dayInWords(day), evidence: 'own memory', km: null, note: '' },
    );
};
