/** Families of rubber and how long unfitted parts keep on a shelf, in years. Says nothing of a part that is fitted. */
import type { SourceKey } from '../../catalogue/sources.ts';
import { addMonths, type CivilDate } from '../../dates/civil.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import type { DaySpan } from '../span.ts';

export type RubberGroup = 'A' | 'B' | 'C';

/** Seal-trade lists of the standard name most of them; BR, SBR and IIR are placed from memory. */
export const RUBBERS = {
  NR: 'A',
  IR: 'A',
  BR: 'A',
  SBR: 'A',
  AU: 'A',
  EU: 'A',
  NBR: 'B',
  HNBR: 'B',
  CR: 'B',
  IIR: 'B',
  ACM: 'B',
  ECO: 'B',
  EPDM: 'C',
  FKM: 'C',
  FFKM: 'C',
  VMQ: 'C',
  FVMQ: 'C',
  CSM: 'C',
} as const satisfies Readonly<Record<string, RubberGroup>>;
export type Rubber = keyof typeof RUBBERS;

/** Years until it is looked at, and years more if it passes: once. */
export const RUBBER_GROUPS: Readonly<Record<RubberGroup, { initial: number; extension: number }>> = {
  A: { initial: 5, extension: 2 },
  B: { initial: 7, extension: 3 },
  C: { initial: 10, extension: 5 },
};

/** What the shelf life supposes: °C and % relative humidity; no condensation, light, ozone or stress. */
export const RUBBER_STORAGE = { most: 25, warmBelow: 15, warmTo: 30, humidity: 70, polyurethaneHumidity: 65 } as const;

export const RUBBER_SOURCES: readonly SourceKey[] = ['iso-2230', 'memory'];

/**
 * When the first period of an unfitted part ends, and when the one extension after a passed look does; by the earliest
 * and the latest day it can have been made. Null: nothing is known of that.
 */
export const shelfLife = (rubber: Rubber, made: DateRange): { inspect: DaySpan; end: DaySpan } | null => {
  if (made.from === null && made.to === null) return null;
  const { initial, extension } = RUBBER_GROUPS[RUBBERS[rubber]];
  const after = (years: number): DaySpan => {
    const day = (end: CivilDate | null): CivilDate | null => end && addMonths(end, years * 12);
    return { earliest: day(made.from), latest: day(made.to) };
  };
  return { inspect: after(initial), end: after(initial + extension) };
};
