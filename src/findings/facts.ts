import type { Place } from '../ageing/place.ts';
import type { Clock } from '../catalogue/clock.ts';
import type { Unit } from '../catalogue/units.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { DateRange } from '../dates/partial-date.ts';

/** How a date is known, surest first. Only the first two are metal or paper. */
export const EVIDENCE = [
  'read on the part',
  'receipt',
  'dated photo',
  'workshop statement',
  'own memory',
  'seller’s word',
  'assumed',
] as const;
export type Evidence = (typeof EVIDENCE)[number];

/** One statement about one clock of a part. Two that disagree are both kept. */
export interface Claim {
  clock: Clock;
  said: 'date' | 'original' | 'unknown' | 'not looked';
  /** Range of a `date`; both null for the others. */
  from: CivilDate | null;
  to: CivilDate | null;
  evidence: Evidence;
  /** Odometer at that moment in km, where known. */
  km: number | null;
}

/** One number read off a part, in the unit of its gauge. */
export interface Reading {
  gauge: string;
  day: CivilDate;
  value: number;
  /** The unit it was typed in. */
  unit: Unit;
  /** Temperature of what was read, °C; null: not taken. */
  warmth: number | null;
  /** Day it was written down: news counts from there, however old the reading. */
  recordedOn: CivilDate;
}

/** Answers to a kind's details, by key: a choice, or a number in the detail's unit. */
export type Answers = Readonly<Record<string, string | number>>;

export interface PartFacts {
  id: string;
  kind: string;
  position: string | null;
  claims: readonly Claim[];
  /** Oldest first; two of one day in the order they were recorded. */
  readings: readonly Reading[];
  details: Answers;
}

export interface CarFacts {
  id: string;
  built: DateRange;
  /** Odometer readings in km, oldest first. */
  odometer: readonly { day: CivilDate; km: number }[];
  /** Where it stands; null: nobody has said. */
  place: Place | null;
  /** Day it was put there, as far as it was written down. */
  placedOn: CivilDate | null;
  /** What it draws while it stands, mA, as last measured at its wiring; absent: nobody measured it. */
  drain?: number;
}

/** An interval set by the owner in place of the trade's, for one car or a whole collection. */
export interface Override {
  carId: string | null;
  kind: string;
  authority: 'handbook' | 'own';
  lookFrom: number | null;
  replaceBy: number | null;
  replaceByKm: number | null;
  note: string;
}
