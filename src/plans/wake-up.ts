/** The plan by which a car comes back: by how long and how it stood, and by what was done before. */
import { type CivilDate, latest } from '../dates/civil.ts';
import { type Days, type Plan, planOf, type Told } from './plan.ts';
import type { Situation } from './situation.ts';
import type { Stay } from './stay.ts';
import type { Step } from './step.ts';
import { LOOKING } from './steps/looking.ts';
import { PUTTING_RIGHT } from './steps/putting-right.ts';
import { TO_THE_ROAD } from './steps/to-the-road.ts';

export const WAKE_UP_STEPS: readonly Step[] = [...LOOKING, ...PUTTING_RIGHT, ...TO_THE_ROAD];

/** `situation` is that of the stay as it ends. Its days count back from the day it was to come back. */
export const wakeUpPlan = (situation: Situation, days: Days, told: Told = { ticks: [], own: [] }): Plan =>
  planOf('wake-up', WAKE_UP_STEPS, situation, days, told);

/** With an open end, as if it came back on the day it is seen on: then nothing lies before that day. */
export const wakeUpDays = ({ parkedOn, returnOn }: Stay, on: CivilDate): Days => {
  const anchor = returnOn ?? latest(on, parkedOn);
  return { anchor, first: returnOn === null ? anchor : parkedOn };
};
