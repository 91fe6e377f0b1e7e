import type { CautionKey } from '../../catalogue/cautions.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { Finding } from '../../findings/assess.ts';
import type { Tick } from '../plan.ts';
import type { Found } from '../rounds.ts';
import type { Stay } from '../stay.ts';

export interface Warning {
  /** Own among the warnings of a stay. */
  key: string;
  /** First day it is to be heard. */
  begins: CivilDate;
  title: string;
  todo: string;
  /** Whether who looks in can do it, and hears it too. */
  forVisitor?: true;
  cautions: readonly CautionKey[];
  sources: readonly SourceKey[];
}

/** What warnings are made from: the stay, the car as it is on a day, what was ticked and what rounds found. */
export interface Watched {
  stay: Stay;
  on: CivilDate;
  findings: readonly Finding[];
  ticks: readonly Tick[];
  found: readonly Found[];
}

export const isTicked = (ticks: readonly Tick[], step: string, plan: Tick['plan'] = 'lay-up'): boolean =>
  ticks.some((tick) => tick.plan === plan && tick.step === step && tick.state === 'done');
