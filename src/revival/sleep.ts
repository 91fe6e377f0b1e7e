/** How a car slept, as far as anybody knows, and which row of the trade’s table it falls into. */

import type { CivilDate } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';
import type { DateRange } from '../dates/partial-date.ts';
import { EVIDENCE, type Evidence } from '../findings/facts.ts';

/** Where it stood; several can be true, and none means that nobody has said. */
export const STOOD = {
  heated: 'Heated and dry',
  dry: 'Walls and roof, dry, not heated',
  damp: 'Damp: barn, earth floor, wet garage',
  covered: 'Outdoors, under a roof or a cover',
  open: 'In the open: field, yard, street',
  coast: 'Salt air',
  desert: 'Desert heat and sun',
  flooded: 'Water has stood in it or around it',
} as const;
export type Stood = keyof typeof STOOD;

export const PUT_AWAY = {
  prepared: 'Prepared: fuel, fluids, battery, tires seen to',
  'shut off': 'Driven in and shut off',
  unknown: 'Nobody knows',
} as const;
export type PutAway = keyof typeof PUT_AWAY;

/** Why it was parked: a car parked for a fault still has it. */
export const WHY_PARKED = {
  'put away': 'Put away while it ran',
  fault: 'A fault stopped it',
  apart: 'Taken apart, work begun',
  papers: 'Inspection, tax or papers ran out',
  owner: 'Its owner died, moved, or lost interest',
  unknown: 'Nobody knows',
} as const;
export type WhyParked = keyof typeof WHY_PARKED;

export interface Sleep {
  /** When it last ran; both open: nobody knows. */
  lastRan: DateRange;
  lastRanBy: Evidence;
  why: WhyParked;
  stood: readonly Stood[];
  putAway: PutAway;
  putAwayBy: Evidence;
}

/** Years from which each row of the table counts; common practice. */
export const ROWS = [0, 0.5, 2, 5, 10, 20] as const;
export type Years = (typeof ROWS)[number];

export interface Row {
  /** First year of the row the plan is made by, and of the one its years alone would give. */
  years: Years;
  byYears: Years;
  /** Earliest and latest day it can have been put to sleep; null: nothing bounds it. */
  since: DateRange;
  /** Rows it was moved by, with why. */
  shifts: readonly { by: -1 | 1; why: string }[];
  /** Water stood there, or nothing was over it: brakes and wiring count as asleep for twenty years. */
  wet: boolean;
  /** What nobody can tell, and how it was taken. */
  doubts: readonly string[];
}

const WET: readonly Stood[] = ['flooded', 'open'];
const isFirstHand = (evidence: Evidence): boolean => EVIDENCE.indexOf(evidence) <= EVIDENCE.indexOf('own memory');

/** Judged by the longest it can have slept; unknown is the last row. `built` bounds it. */
export const rowOf = (sleep: Sleep, built: DateRange, on: CivilDate): Row => {
  const { lastRan, lastRanBy, stood, putAway, putAwayBy } = sleep;
  const from = lastRan.from ?? built.from;
  const byYears = from === null ? 20 : yearsSince(from, on);
  const wet = stood.some((one) => WET.includes(one));
  const shifts: { by: -1 | 1; why: string }[] = [];
  if (putAway === 'prepared' && isFirstHand(putAwayBy)) shifts.push({ by: -1, why: 'it was prepared before it stood' });
  if (putAway === 'shut off') shifts.push({ by: 1, why: 'it was driven in and shut off' });
  if (wet) shifts.push({ by: 1, why: stood.includes('flooded') ? 'water has stood there' : 'nothing was over it' });
  const row = ROWS.indexOf(byYears) + shifts.reduce((sum, { by }) => sum + by, 0);
  const doubts = [
    ...(from === null ? ['Nobody knows since when it stands: it counts as twenty years and more.'] : []),
    ...(lastRan.from === null && from !== null
      ? ['Nobody knows since when it stands: it counts from the day it was built.']
      : []),
    ...(from !== null && lastRan.from !== null && !isFirstHand(lastRanBy)
      ? [`When it last ran is ${lastRanBy}: it can be longer ago.`]
      : []),
    ...(putAway === 'prepared' && !isFirstHand(putAwayBy)
      ? [`That it was prepared is ${putAwayBy}, and does not count.`]
      : []),
    ...(putAway === 'unknown' ? ['Nobody knows how it was put away.'] : []),
    ...(stood.length === 0 ? ['Nobody has said where it stood.'] : []),
  ];
  return {
    years: ROWS[Math.min(Math.max(row, 0), ROWS.length - 1)] ?? 20,
    byYears,
    since: { from, to: lastRan.to },
    shifts,
    wet,
    doubts,
  };
};

const yearsSince = (from: CivilDate, on: CivilDate): Years =>
  ROWS.findLast((years) => limitOn(from, years * 12) <= on) ?? 0;
