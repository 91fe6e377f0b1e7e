/** A demo as plain data: a collection told the way its people would have entered it, day by day. */
import type { QUICK_STARTS } from '../catalogue/quick-starts.ts';
import type { StatedTrait } from '../catalogue/traits.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { Evidence } from '../findings/facts.ts';
import type { NewCollection, NewMember } from '../store/people.ts';
import type { IntakeGiven } from './begin-revival.ts';
import type { AnswerGiven } from './details.ts';
import type { LayUpGiven } from './lay-up.ts';
import type { OverrideGiven } from './override.ts';
import type { PlaceGiven } from './places.ts';
import type { ClaimGiven } from './read-claim.ts';
import type { ReadingGiven } from './record-reading.ts';
import type { LooksGiven } from './work-revival.ts';

/** One date as a person typed it. */
export interface DemoClaim extends Pick<ClaimGiven, 'clock' | 'typed' | 'choice' | 'evidence' | 'ninetiesMark'> {
  km?: number;
  note?: string;
  /** Day it was written down; absent: the day its part was opened. */
  on?: CivilDate;
  /** Id of the person; absent: whoever added the car. */
  by?: string;
}

/** One number read off a gauge, as it was typed. */
export interface DemoReading extends Pick<ReadingGiven, 'gauge' | 'typed'> {
  day: CivilDate;
  warmth?: string;
  instrument?: string;
  note?: string;
  by?: string;
}

/** One part from the day it was fitted, or the car was added, to its renewal. */
interface DemoLife {
  note?: string;
  claims: readonly DemoClaim[];
  /** Oldest first. */
  readings?: readonly DemoReading[];
  details?: Readonly<Record<string, AnswerGiven>>;
}

export interface DemoEnded extends DemoLife {
  closedOn: CivilDate;
  closedWhy: string;
}

/** A place on the car: the part that is there, and those that were there before, oldest first. */
export interface DemoPart extends DemoLife {
  kind: string;
  position?: string;
  before?: readonly DemoEnded[];
  /** True for a part the list of the car's traits does not hold. */
  byHand?: true;
}

export interface DemoCar {
  id: string;
  name: string;
  note: string;
  built: string;
  start: (typeof QUICK_STARTS)[number]['key'];
  /** Where the car differs from its quick start. */
  without: readonly StatedTrait[];
  having: readonly StatedTrait[];
  addedOn: CivilDate;
  addedBy: string;
  /** Id of the place it stands in; absent: nobody has said. */
  place?: string;
  /** Odometer readings in km. */
  odometer: readonly { day: CivilDate; km: number }[];
  /** Only parts with something to tell; the others wait. */
  parts: readonly DemoPart[];
}

export interface DemoOverride extends OverrideGiven {
  kind: string;
  setOn: CivilDate;
  setBy: string;
}

export interface DemoPlace extends PlaceGiven {
  id: string;
}

/** A step ticked off, or left out with a reason. */
export interface DemoTick {
  step: string;
  day: CivilDate;
  by: string;
  note?: string;
  cost?: string;
  skipped?: true;
}

export interface DemoRound {
  day: CivilDate;
  by: string;
  answers: Readonly<Record<string, string>>;
  note?: string;
}

/** A stay of a car as its people told it. */
export interface DemoLayUp extends Partial<Omit<LayUpGiven, 'parkedOn' | 'numbers' | 'papers'>> {
  id: string;
  carId: string;
  parkedOn: CivilDate;
  numbers?: Partial<LayUpGiven['numbers']>;
  papers?: Partial<LayUpGiven['papers']>;
  madeOn: CivilDate;
  madeBy: string;
  ticks: readonly DemoTick[];
  rounds: readonly DemoRound[];
  /** Day it came back, kept as a pattern. */
  back?: CivilDate;
}

/** Something said of a return on a day: looks, a step done or left out, a gate passed. */
export interface DemoSaid {
  day: CivilDate;
  by: string;
  note?: string;
  looks?: LooksGiven;
  step?: string;
  leftOut?: true;
  cost?: string;
  hours?: string;
  pass?: string;
}

/** A return to the road as its people told it. */
export interface DemoRevival extends Partial<Omit<IntakeGiven, 'car'>> {
  id: string;
  car: IntakeGiven['car'];
  begunOn: CivilDate;
  begunBy: string;
  /** Codes and dates told at the first look, by kind. */
  dates?: readonly { kind: string; typed: string; evidence: Evidence }[];
  said: readonly DemoSaid[];
}

export interface Demo {
  collection: NewCollection & { id: string };
  places: readonly DemoPlace[];
  /** The first one owns the collection and gets its letters. */
  people: readonly [NewMember & { id: string }, ...(NewMember & { id: string })[]];
  cars: readonly DemoCar[];
  overrides: readonly DemoOverride[];
  layUps: readonly DemoLayUp[];
  revivals: readonly DemoRevival[];
}
