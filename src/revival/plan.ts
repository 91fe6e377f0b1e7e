/** The plan of a return: the steps that apply in their stages, what became of each, its gates, stops and money. */
import { allTraits } from '../catalogue/traits.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { findingsOf } from '../findings/car.ts';
import type { CarFacts, Override, PartFacts } from '../findings/facts.ts';
import type { Cost, Rates } from '../money/cost.ts';
import { type Gate, gatesOf } from './gates.ts';
import type { Entry } from './journal.ts';
import { type Money, moneyOf, stepCosts } from './money.ts';
import { type Picture, pictureOf } from './picture.ts';
import type { Revival } from './revival.ts';
import { type Row, rowOf } from './sleep.ts';
import { STAGE_KEYS, STAGES, type Stage, type StageKey } from './stages.ts';
import { type PlannedStep, stepsOf } from './step-state.ts';
import { type Stop, stopsOf } from './stops.ts';
import { waitsOf } from './waits.ts';
import type { Situation } from './when.ts';

export interface RevivalFacts {
  revival: Revival;
  car: CarFacts;
  traits: readonly string[];
  parts: readonly PartFacts[];
  overrides: readonly Override[];
  /** In the order they were said. */
  entries: readonly Entry[];
  rates: Rates;
}

/** A step with what it costs, and what is still to come before it. */
export interface RevivalStep extends PlannedStep {
  cost: Cost;
  /** Other steps and gates that come before it, in words. */
  waits: readonly { key: string; words: string }[];
}

export interface StagePlan {
  key: StageKey;
  stage: Stage;
  steps: readonly RevivalStep[];
  gate: Gate;
  money: Money;
}

export interface RevivalPlan {
  revival: Revival;
  on: CivilDate;
  row: Row;
  findings: readonly Finding[];
  picture: Picture;
  entries: readonly Entry[];
  stages: readonly StagePlan[];
  stops: readonly Stop[];
  money: Money;
}

/** As on a day: what was said later, and what was said of later days, is not in it. */
export const revivalPlan = (facts: RevivalFacts, on: CivilDate): RevivalPlan => {
  const { revival, car, parts, overrides, rates } = facts;
  const entries = facts.entries.filter(({ day }) => day <= on);
  const row = rowOf(revival.sleep, car.built, on);
  const picture = pictureOf(entries);
  const findings = findingsOf(car, parts, overrides, on);
  const situation: Situation = {
    on,
    traits: allTraits(facts.traits),
    sleep: revival.sleep,
    row,
    findings,
    picture,
    awakeFrom: row.since.to ?? revival.begunOn,
  };
  const steps = stepsOf(situation, entries, car.odometer);
  const costs = stepCosts(steps, rates);
  const money = (list: readonly PlannedStep[]): Money => moneyOf(list, costs, revival.hands);
  const total = money(steps);
  const stops = stopsOf(entries, revival, total, on);
  const gates = gatesOf(steps, findings, picture, entries, stops, situation.traits);
  const stages = STAGE_KEYS.map((key): StagePlan => {
    const own = steps.filter(({ stage }) => stage === key);
    return {
      key,
      stage: STAGES[key],
      steps: own.map((step) => ({
        ...step,
        cost: costs.get(step.key) as Cost,
        waits: waitsOf(step, steps, gates, entries),
      })),
      gate: gates.find(({ stage }) => stage === key) as Gate,
      money: money(own),
    };
  });
  return { revival, on, row, findings, picture, entries, stages, stops, money: total };
};

export const stepsIn = ({ stages }: RevivalPlan): RevivalStep[] => stages.flatMap(({ steps }) => steps);
export const stepIn = (plan: RevivalPlan, key: string): RevivalStep | undefined =>
  stepsIn(plan).find((step) => step.key === key);
