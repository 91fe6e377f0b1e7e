/** All there is to know of a stay on a day: both plans, the rounds, what was found, what warns. */

import { allTraits } from '../catalogue/traits.ts';
import { addDays, addMonths, type CivilDate, latest } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { findingsOf } from '../findings/car.ts';
import type { CarFacts, Override, PartFacts } from '../findings/facts.ts';
import { layUpPlan, outcomeOf } from './lay-up.ts';
import type { OwnStep, Plan, Tick } from './plan.ts';
import { type RoadCheck, roadCheck } from './road-check.ts';
import { type Found, foundBy, foundInWords, type Round, type RoundMade, roundsOf } from './rounds.ts';
import { NOTHING_TICKED, type Situation } from './situation.ts';
import { endedOn, endOf, overdueFrom, type Stay } from './stay.ts';
import { TOPICS, type TopicKey } from './topics.ts';
import { wakeUpDays, wakeUpPlan } from './wake-up.ts';
import type { Warning } from './warnings/warning.ts';
import { warningsOf } from './warnings.ts';
import { usualSide } from './when.ts';

export interface StayFacts {
  stay: Stay;
  /** The day it ended; absent or null: it has not. */
  closedOn?: CivilDate | null;
  car: CarFacts;
  parts: readonly PartFacts[];
  overrides: readonly Override[];
  ticks: readonly Tick[];
  own: readonly OwnStep[];
  rounds: readonly RoundMade[];
}

type StayState = 'ahead' | 'standing';

export interface StayView {
  stay: Stay;
  on: CivilDate;
  /** Before the parking day, or on it and after. */
  state: StayState;
  situation: Situation;
  layUp: Plan;
  wakeUp: Plan;
  rounds: readonly Round[];
  found: readonly Found[];
  warnings: readonly Warning[];
  roadCheck: RoadCheck;
  /** Of the day it is seen on, where the car stands or will stand. */
  findings: readonly Finding[];
}

/** The situation a plan is made from: the car as it is on both ends of the stay, in the place it stands in meanwhile. */
export const situationOf = ({
  stay,
  car,
  parts,
  overrides,
}: Pick<StayFacts, 'stay' | 'car' | 'parts' | 'overrides'>): Situation => {
  const there = carThere(stay, car);
  return {
    stay,
    traits: allTraits(stay.traits),
    atParking: findingsOf(there, parts, overrides, stay.parkedOn),
    atReturn: findingsOf(there, parts, overrides, endOf(stay)),
    planned: {},
    found: [],
    ...NOTHING_TICKED,
  };
};

/** The car where the stay has it. */
const carThere = ({ place, parkedOn }: Stay, car: CarFacts): CarFacts =>
  place === car.place ? car : { ...car, place, placedOn: parkedOn };

/** How long before it comes back the wake-up begins, in months. */
export const WAKE_AHEAD = 1;

/** Plans are made when they are asked for: a walk over a collection asks for few of them. */
export const viewOf = (facts: StayFacts, day: CivilDate): StayView => {
  // What has ended is seen as on its last day, however late somebody looks.
  const on = facts.closedOn && facts.closedOn < day ? facts.closedOn : day;
  const { stay, car, parts, overrides, ticks, own, rounds: made } = facts;
  const told = { ticks: ticks.filter((tick) => tick.day <= day), own };
  const standing = on >= stay.parkedOn;
  const findings = findingsOf(carThere(stay, car), parts, overrides, on);
  const situation = once(() => situationOf(facts));
  const layUp = once(() => layUpPlan(situation(), told));
  const found = standing ? foundBy(made, on) : [];
  const ended = { ...stay, returnOn: endedOn(stay, on) };
  const asItEnds = once(() =>
    ended.returnOn === stay.returnOn ? situation() : situationOf({ ...facts, stay: ended }),
  );
  const wakeUp = once(() =>
    wakeUpPlan(
      {
        ...asItEnds(),
        ...outcomeOf(layUp(), standing),
        planned: usualSides(situation()),
        found: found.map(foundInWords),
      },
      wakeUpDays(stay, on),
      told,
    ),
  );
  return {
    stay,
    on,
    state: standing ? 'standing' : 'ahead',
    get situation() {
      return situation();
    },
    get layUp() {
      return layUp();
    },
    get wakeUp() {
      return wakeUp();
    },
    get roadCheck() {
      return roadCheck(ended, standing ? findings : asItEnds().atReturn, found);
    },
    rounds: standing ? roundsOf(stay, made, on) : [],
    found,
    warnings: warningsOf({ stay, on, findings, ticks: told.ticks, found }),
    findings,
  };
};

const usualSides = (situation: Situation): Situation['planned'] =>
  Object.fromEntries((Object.keys(TOPICS) as TopicKey[]).map((topic) => [topic, usualSide(topic, situation)]));

const once = <T>(make: () => T): (() => T) => {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
};

/** Whether its letters are still silent: not before it is parked, and not long after it was to be back. */
export const isSilent = ({ stay: { returnOn }, state, on }: StayView): boolean =>
  state === 'standing' && (returnOn === null || on < overdueFrom(returnOn));

/** Days after the parking day during which its plan is still the work at hand. */
const SETTLES = 14;

/** Whether the plan before it stands is still to be worked: until it is done, or a fortnight after the parking day. */
export const isPreparing = ({ stay, on, layUp }: StayView): boolean =>
  on <= addDays(latest(stay.parkedOn, stay.madeOn), SETTLES) && layUp.steps.some(({ tick }) => tick === null);

/** Whether the wake-up is under way by then. */
export const isWaking = ({ returnOn, parkedOn }: Stay, on: CivilDate): boolean =>
  returnOn !== null && on >= parkedOn && addMonths(returnOn, -WAKE_AHEAD) <= on;
