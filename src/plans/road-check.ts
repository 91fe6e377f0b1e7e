/** Before the first drive after a stay, by what is recorded: reasons against, what was not checked, what is merely due. Never a plain yes. */
import type { Finding } from '../findings/assess.ts';
import type { Found } from './rounds.ts';
import { type Stay, standsFor } from './stay.ts';

export interface RoadCheck {
  answer: 'no' | 'local only';
  against: readonly Finding[];
  /** What a round found that speaks against it. */
  found: readonly Found[];
  unchecked: readonly Finding[];
  due: readonly Finding[];
}

export const TIRES = ['tires-road', 'inner-tubes'];
export const BRAKE_FLUIDS = ['brake-fluid-glycol', 'brake-fluid-silicone', 'central-hydraulics'];

/** Safety parts of an emergency, a spare or a competition: they do not keep a car off the road. */
export const ASIDE = ['tire-spare', 'tire-compact-spare', 'extinguisher', 'harness-fia', 'harness-sfi', 'child-seat'];

/**
 * Past safety parts, tires that can’t be dated, an overdue timing belt and what a round found to act on speak against any
 * drive; after two years so does brake fluid nobody can date. `stay` as it ended. Practice of the trade, from memory but
 * for the ages of tires.
 */
export const roadCheck = (stay: Stay, findings: readonly Finding[], found: readonly Found[]): RoadCheck => {
  const years = standsFor(stay, 24);
  const isAgainst = (finding: Finding): boolean => againstByRecord(finding, years);
  const against = findings.filter(isAgainst);
  const grave = found.filter(({ look, answer }) => look.gate && answer.verdict === 'act');
  const rest = findings.filter((finding) => !isAgainst(finding) && finding.kind.severity === 'safety');
  return {
    answer: against.length + grave.length > 0 ? 'no' : 'local only',
    against,
    found: grave,
    unchecked: rest.filter(({ standing }) => standing === 'unproven'),
    due: rest.filter(({ standing }) => standing !== 'unproven' && standing !== 'in date'),
  };
};

/** Whether its dates or its last reading speak against any drive; `years`: it slept more than two. */
export const againstByRecord = ({ kind, standing, gravest }: Finding, years: boolean): boolean => {
  const safety = kind.severity === 'safety';
  if (ASIDE.includes(kind.key)) return false;
  if (gravest?.verdict === 'act' && safety) return true;
  if (standing === 'past') return safety || kind.key === 'timing-belt';
  return standing === 'unproven' && (TIRES.includes(kind.key) || (years && BRAKE_FLUIDS.includes(kind.key)));
};
