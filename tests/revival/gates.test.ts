import { describe, expect, it } from 'vitest';
import { revivalPlan } from '../../src/revival/plan.ts';
import { journal, since, sleeper, traitsOf } from '../support/sleepers.ts';

const TRAITS = traitsOf('roadster-disc-drum-overdrive');
const ON = '2026-11-25';

describe('a stop', () => {
  const planWith = (ceiling: number | null) => {
    const papers = journal(ON, {
      what: 'pass',
      stage: 'papers',
      despite: ['look:title', 'look:numbers', 'look:story'],
    });
    const lacks = revivalPlan(sleeper({ traits: TRAITS, sleep: since('2006-05-01'), begunOn: ON }), ON).stages[0]?.gate
      .lacks;
    const despite = (lacks ?? []).map(({ key }) => key);
    const entries = papers.map((entry) => ({ ...entry, despite }));
    return revivalPlan(
      sleeper({ traits: TRAITS, sleep: since('2006-05-01'), begunOn: ON, entries, revival: { ceiling } }),
      ON,
    );
  };
  const gate = (plan: ReturnType<typeof planWith>, index: number) => plan.stages[index]?.gate;

  it('leaves the gates passed before it as they were, and shuts the next', () => {
    const plan = planWith(500);
    expect(plan.stops.map(({ key, decided }) => [key, Boolean(decided)])).toEqual([['ceiling', false]]);
    expect(gate(plan, 0)?.state).toBe('in writing');
    expect(gate(plan, 0)?.written.map(({ key }) => key)).not.toContain('stop:ceiling');
    expect(gate(plan, 1)?.state).toBe('shut');
    for (const { gate: later } of plan.stages.slice(1))
      expect(later.lacks.map(({ key }) => key)).toContain('stop:ceiling');
  });

  it('that is none shuts nothing', () => {
    const plan = planWith(null);
    expect(plan.stages.flatMap(({ gate: one }) => one.lacks.map(({ key }) => key))).not.toContain('stop:ceiling');
  });
});
