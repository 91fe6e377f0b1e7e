/**
 * The climate of the place where a car stands, from the few numbers its owner knows. Temperatures in °C.
 * A yearly wave between the coldest night and the hottest day, damped by the roof over the car; months that are known
 * better take the wave's place. Months told so come within 6 °C of published normals in most cities and 9 °C in the rest,
 * which is why they can be corrected. How much a roof damps is common practice, from memory.
 */
import type { CivilDate } from '../dates/civil.ts';

export const SHELTERS = ['heated', 'unheated', 'damp', 'covered', 'open'] as const;
export type Shelter = (typeof SHELTERS)[number];

export const AIRS = ['coast', 'inland', 'desert'] as const;
export type Air = (typeof AIRS)[number];

export interface Place {
  /** Coldest night of an ordinary winter and hottest day of an ordinary summer, outdoors. */
  winterLow: number;
  summerHigh: number;
  air: Air;
  shelter: Shelter;
  /** Mean relative humidity where the car stands, %; null: as usual for such air and shelter. */
  humidity: number | null;
  /** What the heating keeps; only for a heated place. */
  heatedTo: number | null;
  hemisphere: 'north' | 'south';
  /** Mean temperatures measured where the car stands, January first; null: the wave's. */
  months: readonly (number | null)[];
}

export interface Month {
  mean: number;
  /** Coldest night and hottest hour of that month, where the car stands. */
  low: number;
  high: number;
}

/** For a car whose place nobody has told: said wherever it is used, and never good enough to rule out frost. */
export const ASSUMED: Place = {
  winterLow: -10,
  summerHigh: 32,
  air: 'inland',
  shelter: 'unheated',
  humidity: null,
  heatedTo: null,
  hemisphere: 'north',
  months: Array<null>(12).fill(null),
};

/** What the heating keeps where nobody said. */
const HEATED_TO = 12;

/** Share of the span between coldest night and hottest day that the monthly means sweep, daily swing outdoors, humidity. */
const OF_AIR: Readonly<Record<Air, { sweep: number; swing: number; humidity: number }>> = {
  coast: { sweep: 0.35, swing: 7, humidity: 80 },
  inland: { sweep: 0.45, swing: 10, humidity: 70 },
  desert: { sweep: 0.47, swing: 15, humidity: 35 },
};

/**
 * Share of the outdoor swing that gets through by day, and of the frost of the coldest nights; what the shelter adds to the
 * humidity. An unheated room follows a long cold spell all the way: no walls are counted on against frost.
 */
const OF_SHELTER: Readonly<Record<Shelter, { through: number; frost: number; humidity: number }>> = {
  heated: { through: 0.2, frost: 0.2, humidity: -20 },
  unheated: { through: 0.5, frost: 1, humidity: 0 },
  damp: { through: 0.5, frost: 1, humidity: 12 },
  covered: { through: 0.9, frost: 1, humidity: 0 },
  open: { through: 1, frost: 1, humidity: 0 },
};

/** Told once a place: every part of every car that stands there asks for them. */
const TOLD = new WeakMap<Place, readonly Month[]>();

/** The twelve months where the car stands, January first. */
export const monthsOf = (place: Place): readonly Month[] => {
  const told = TOLD.get(place) ?? reckon(place);
  TOLD.set(place, told);
  return told;
};

const reckon = (place: Place): readonly Month[] => {
  const { winterLow, summerHigh, air, shelter, hemisphere } = place;
  const center = (winterLow + summerHigh) / 2;
  const reach = ((summerHigh - winterLow) * OF_AIR[air].sweep) / 2;
  const coldest = hemisphere === 'north' ? 0 : 6;
  const gap = center - reach - winterLow;
  const { through, frost } = OF_SHELTER[shelter];
  const heated = shelter === 'heated';
  const floor = heated ? (place.heatedTo ?? HEATED_TO) : Number.NEGATIVE_INFINITY;
  // Heating nobody put a number to warms the mean; against frost it is not counted on.
  const kept = heated && place.heatedTo !== null ? place.heatedTo : Number.NEGATIVE_INFINITY;
  return Array.from({ length: 12 }, (_, month) => {
    const wave = center - reach * Math.cos(((month - coldest) / 6) * Math.PI);
    const measured = place.months[month] ?? null;
    // A month that was measured colder than the heating keeps has its nights like any other.
    const mean = measured ?? Math.max(wave, floor);
    const low = heated && place.heatedTo === null && measured === null ? wave - gap : mean - gap * frost;
    return { mean, low: mean < kept ? low : Math.max(low, kept), high: mean + gap * through };
  });
};

export const monthOn = (months: readonly Month[], day: CivilDate): Month =>
  months[Number(day.slice(5, 7)) - 1] as Month;

/** Coldest night of an ordinary winter where the car stands. */
export const coldestNight = (place: Place): number => Math.min(...monthsOf(place).map(({ low }) => low));

/** Mean relative humidity where the car stands, %. */
export const humidityOf = ({ humidity, air, shelter }: Place): number =>
  humidity ?? Math.min(OF_AIR[air].humidity + OF_SHELTER[shelter].humidity, 95);

/** How far a day's temperature swings where the car stands, °C. */
export const dailySwing = ({ air, shelter }: Place): number => OF_AIR[air].swing * OF_SHELTER[shelter].through;
