import type { CautionKey } from './cautions.ts';
import type { Clock } from './clock.ts';
import type { Detail, Gauge } from './gauge.ts';
import type { SourceKey } from './sources.ts';
import type { System } from './systems.ts';
import type { Trait } from './traits.ts';

/** What a failure does, gravest first. Safety items are judged by their oldest possible age. */
export const SEVERITIES = ['safety', 'strands', 'engine', 'damage', 'nuisance', 'cosmetic'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** The ways dates are written on parts. */
export const MARKS = [
  'tire code',
  'hose label',
  'battery code',
  'month clock',
  'period print',
  'harness label',
] as const;
export type Mark = (typeof MARKS)[number];

/** Calendar and distance limits on the kind's clock. Months are whole calendar months, distance is in km. */
export interface Interval {
  /** Age from which it wants a look, repeated every `lookEvery`; null: no look is asked for. */
  lookFrom: number | null;
  /** Months between looks once past `lookFrom`. */
  lookEvery: number;
  /** Age at which practice replaces or renews it; null: on condition only. */
  replaceBy: number | null;
  /** Distance at which practice replaces or renews it, whichever comes first. */
  replaceByKm?: number;
  /**
   * A good reading of one of these gauges puts the replace-by off: to so many months after the reading, and never past
   * the most. Absent: no reading can.
   */
  stretch?: { gauges: readonly string[]; months: number; most: number };
  /** Where the figures above come from; `memory` and `common-practice` are said plainly. */
  sources: readonly SourceKey[];
}

/** One way to tell its condition at home, with the reading that is good, wants watching, or wants action. */
export interface Test {
  name: string;
  /** Where it answers with a number: readings of it are kept and judged. */
  gauge?: Gauge;
  how: string;
  good: string;
  watch?: string;
  act: string;
  sources: readonly SourceKey[];
}

/** What ages on a car: one row a kind of part or fluid. */
export interface Kind {
  key: string;
  name: string;
  system: System;
  /** Every trait listed must be true of the car; an empty list is every car. */
  applies: readonly Trait[];
  /** Places on the car, each its own part; absent: one for the car. */
  positions?: readonly string[];
  clock: Clock;
  /** The clock that counts where the first one can't be read: many hoses and belts carry no date. */
  fallback?: Clock;
  /** How its date is written on it, where that needs reading. */
  mark?: Mark;
  interval: Interval;
  severity: Severity;
  /** What wears it while the car stands, in a few words. */
  agesBy: readonly string[];
  /** Where its date is read. */
  findDate: string;
  tests: readonly Test[];
  /** What its models and gauges ask about this one, such as the grade of a fluid. */
  details?: readonly Detail[];
  /** What is done with it when it is due, where that is not ordering and booking. */
  whenDue?: string;
  /** What happens if it is ignored. */
  ignored: string;
  /** What shifts the figures: use, place, material, and what the trade disagrees about. */
  varies: string;
  cautions: readonly CautionKey[];
}

/**
 * Whether a look is a record of its own. Where the clock is the last service and that runs out, a look must not pass for
 * one: it would put off the renewal.
 */
export const takesLooks = ({ clock, interval }: Kind): boolean => clock !== 'serviced' || interval.replaceBy === null;
