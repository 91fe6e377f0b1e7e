import { type RevivalHere, revivalHere } from '../../acts/revivals.ts';
import { type RevivalStep, stepIn } from '../../revival/plan.ts';
import type { Ctx } from '../visit.ts';

/** The return a path names, as on the day of the visit, or undefined where this collection has none. */
export const revivalInPath = (c: Ctx): RevivalHere | undefined => {
  const { collection, on } = c.get('visit');
  return revivalHere(c.get('around').store, collection, c.req.param('revivalId') ?? '', on);
};

export const stepInPath = (c: Ctx): StepShown | undefined => {
  const here = revivalInPath(c);
  const step = here && stepIn(here.plan, c.req.param('step') ?? '');
  return here && step ? { here, step } : undefined;
};

export const pathOf = ({ record }: RevivalHere, rest = ''): string => `/revivals/${record.row.id}${rest}`;

export interface StepShown {
  here: RevivalHere;
  step: RevivalStep;
}
/** What a form sent, to be shown again where it was refused. */
export type Given = Partial<Record<string, unknown>>;

/** Where a settled step leads: back to its stage. */
export const backTo = ({ here, step }: StepShown): string => pathOf(here, `/stages/${step.stage}#${step.key}`);
