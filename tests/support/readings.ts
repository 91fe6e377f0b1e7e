/** Short ways to say what was read off a part, and where its car stands. */
import type { Outcome } from '../../src/acts/fault.ts';
import { type ReadingGiven, recordReadingsAct } from '../../src/acts/record-reading.ts';
import { ASSUMED, type Place } from '../../src/ageing/place.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Reading } from '../../src/findings/facts.ts';
import { gaugesOf } from '../../src/findings/measured.ts';
import { type Barn, carOf, TODAY } from './cars.ts';

/** The unit of each gauge, by its key. */
const UNIT_OF = new Map([...KINDS.values()].flatMap(gaugesOf).map(({ gauge }) => [gauge.key, gauge.unit]));

/** Read and written down the same day, in the gauge’s own unit. */
export const reading = (
  gauge: string,
  day: CivilDate,
  value: number,
  warmth: number | null = null,
  more: Partial<Reading> = {},
): Reading => ({
  gauge,
  day,
  value,
  unit: UNIT_OF.get(gauge) ?? 'V',
  warmth,
  recordedOn: day,
  ...more,
});

/** Outdoors, with nights of −20 °C; in a desert; by a cool coast. */
export const FROSTY: Place = { ...ASSUMED, winterLow: -20, summerHigh: 30, shelter: 'open' };
export const HOT: Place = { ...ASSUMED, winterLow: 8, summerHigh: 46, air: 'desert', shelter: 'open' };
export const COOL: Place = { ...ASSUMED, winterLow: -12, summerHigh: 18, air: 'coast', shelter: 'unheated' };

/** A reading as a form hands it on. */
export const typed = (partId: string, gauge: string, text: string, more: Partial<ReadingGiven> = {}): ReadingGiven => ({
  partId,
  gauge,
  typed: text,
  unit: '',
  day: TODAY,
  warmth: '',
  warmthUnit: '',
  instrument: '',
  note: '',
  sure: false,
  ...more,
});

/** Records readings of a car on a day, faults named by the gauge. */
export const record = (
  { store, acting }: Barn,
  carId: string,
  given: readonly ReadingGiven[],
  today: CivilDate = TODAY,
): Outcome<number> =>
  recordReadingsAct(store, { ...acting, today }, carOf({ store, acting }, carId), given, ({ gauge }) => `${gauge} `);
