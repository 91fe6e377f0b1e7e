/** The plan before a car is parked. */
import { isDone, type Plan, type PlanStep, planOf, type Told } from './plan.ts';
import { NOTHING_TICKED, type Outcome, type Situation } from './situation.ts';
import type { Step } from './step.ts';
import { BEFOREHAND } from './steps/beforehand.ts';
import { PARKING_DAY } from './steps/parking-day.ts';

export const LAY_UP_STEPS: readonly Step[] = [...BEFOREHAND, ...PARKING_DAY];

export const layUpPlan = (situation: Situation, told: Told = { ticks: [], own: [] }): Plan => {
  const { parkedOn, madeOn } = situation.stay;
  return planOf('lay-up', LAY_UP_STEPS, situation, { anchor: parkedOn, first: madeOn }, told);
};

/** What became of its steps; before the parking day each still can be done, and counts as if it were. */
export const outcomeOf = ({ steps }: Plan, parked: boolean): Outcome => {
  const keys = (list: readonly PlanStep[]): ReadonlySet<string> => new Set(list.map(({ key }) => key));
  const skipped = steps.filter(({ tick }) => tick?.state === 'skipped');
  if (!parked) {
    const meant = steps.filter((step) => !skipped.includes(step));
    return {
      ...NOTHING_TICKED,
      done: keys(meant),
      undone: keys(skipped),
      renewed: new Set(meant.flatMap(({ records }) => records.renews ?? [])),
    };
  }
  return {
    ...NOTHING_TICKED,
    done: keys(steps.filter(isDone)),
    undone: keys(steps.filter((step) => step.applies && !isDone(step))),
    untold: keys(steps.filter(({ applies, tick }) => applies && tick === null)),
  };
};
