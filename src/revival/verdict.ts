/** One page for somebody who stands before the car: what must be, what is likely, what nobody knows, and the money. */
import type { Finding } from '../findings/assess.ts';
import { SURVEY } from './looks/survey.ts';
import { type LookKey, lookOf } from './looks.ts';
import { type RevivalPlan, type RevivalStep, stepsIn } from './plan.ts';
import { ODDS, type Odds } from './step.ts';
import { isFor, isSettled } from './step-state.ts';

export interface Verdict {
  /** Seen, and grave: each by itself can end it. */
  grave: readonly { name: string; words: string }[];
  /** Renewed or taken apart for its age or its sleep, whatever the odometer says. */
  must: readonly RevivalStep[];
  /** Found more often than not on such a car and worth money or work, each with the step that finds it. */
  likely: readonly { finding: string; odds: Odds; step: RevivalStep }[];
  /** Looks nobody has answered, and safety parts without a date. */
  unseen: readonly { look: LookKey; name: string }[];
  undated: readonly Finding[];
  doubts: readonly string[];
}

const LIKELY = ODDS.indexOf('often');

export const verdictOf = (plan: RevivalPlan, traits: ReadonlySet<string>): Verdict => {
  const open = stepsIn(plan).filter((step) => !isSettled(step));
  const must = open.filter(({ way, because }) => (way.act === 'renew' || way.act === 'strip') && because.length > 0);
  const asked = (Object.keys(SURVEY) as (keyof typeof SURVEY)[]).filter((key) => isFor(lookOf(key), traits));
  return {
    grave: [...plan.picture.answers].flatMap(([look, { answer }]) => {
      const { name, answers } = lookOf(look);
      const said = answers[answer];
      return said?.verdict === 'act' ? [{ name, words: said.words }] : [];
    }),
    must,
    likely: likelyIn(open.filter((step) => !must.includes(step))),
    unseen: asked.filter((look) => !plan.picture.answers.has(look)).map((look) => ({ look, name: lookOf(look).name })),
    undated: plan.findings.filter(({ kind, standing }) => kind.severity === 'safety' && standing === 'unproven'),
    doubts: plan.row.doubts,
  };
};

/** What would bring more work with it, the likeliest first, each once. */
const likelyIn = (steps: readonly RevivalStep[]): Verdict['likely'] => {
  const found = new Map<string, Verdict['likely'][number]>();
  for (const step of steps.filter(({ ways, way }) => ways.length > 1 || (way.jobs ?? []).length > 0))
    for (const { finding, odds } of step.expects)
      if (ODDS.indexOf(odds) >= LIKELY && !found.has(finding)) found.set(finding, { finding, odds, step });
  return [...found.values()].toSorted((a, b) => ODDS.indexOf(b.odds) - ODDS.indexOf(a.odds));
};
