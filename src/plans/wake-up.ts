/** The plan by which a car comes back: by how long and how it stood, and by what was done before. */
import { type CivilDate, latest } from '../dates/civil.ts';
import { type Plan, planOf, type Told } from './plan.ts';
import type { Situation } from './situation.ts';
import type { Step } from './step.ts';
import { LOOKING } from './steps/looking.ts';
import { PUTTING_RIGHT } from './steps/putting-right.ts';
import { TO_THE_ROAD } from './steps/to-the-road.ts';

export const WAKE_UP_STEPS: readonly Step[] = [...LOOKING, ...PUTTING_RIGHT, ...TO_THE_ROAD];

/** `situation` is that of the stay as it ends; with an `open` end, as if it ended on the day it is seen on. */
export const wakeUpPlan = (
  situation: Situation,
  on: CivilDate,
  told: Told = { ticks: [], own: [] },
  open: boolean = situation.stay.returnOn === null,
): Plan => {
  const { returnOn, parkedOn } = situation.stay;
  const anchor = returnOn ?? latest(on, parkedOn);
  const first = open ? anchor : parkedOn;
  return planOf('wake-up', WAKE_UP_STEPS, situation, { anchor, first }, told);
};
