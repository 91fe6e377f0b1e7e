import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Span } from '../../src/ageing/span.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import { EVIDENCE } from '../../src/findings/facts.ts';
import { costOf } from '../../src/money/cost.ts';
import { JOBS, type JobKey } from '../../src/money/jobs.ts';
import type { Said } from '../../src/revival/journal.ts';
import {
  CYCLES,
  LEAK_CLASSES,
  LEAK_FLUIDS,
  LEAK_PLACES,
  type LeakClass,
  type LeakFluid,
  type LeakPlace,
  MOMENTS,
  type Moment,
} from '../../src/revival/leaks.ts';
import { LOOKS, type LookKey, lookOf } from '../../src/revival/looks.ts';
import { type RevivalFacts, type RevivalPlan, revivalPlan, stepsIn } from '../../src/revival/plan.ts';
import { RUNS, type RunKey } from '../../src/revival/runs.ts';
import {
  PUT_AWAY,
  type PutAway,
  type Sleep,
  STOOD,
  type Stood,
  WHY_PARKED,
  type WhyParked,
} from '../../src/revival/sleep.ts';
import { STAGE_KEYS, STAGES, type Stage } from '../../src/revival/stages.ts';
import { ACTS } from '../../src/revival/step.ts';
import { isSettled } from '../../src/revival/step-state.ts';
import { STEPS } from '../../src/revival/steps.ts';
import { dayBetween } from '../support/arbitraries.ts';
import { dated } from '../support/parts.ts';
import { DOLLARS, journal, sleeper, undated } from '../support/sleepers.ts';

const BEGUN: CivilDate = '2026-05-01';
const ON: CivilDate = '2026-08-01';
const RUNS_EACH = { numRuns: 80 };

const keysOf = <K extends string>(of: Readonly<Record<K, unknown>>): K[] => Object.keys(of) as K[];
const oneOf = <K extends string>(of: Readonly<Record<K, unknown>>): fc.Arbitrary<K> => fc.constantFrom(...keysOf(of));

const anySleep: fc.Arbitrary<Sleep> = fc.record({
  lastRan: fc.oneof(
    fc.constant({ from: null, to: null }),
    dayBetween('1990-01-01', BEGUN).map((day) => ({ from: day, to: day })),
    dayBetween('1990-01-01', BEGUN).map((to) => ({ from: null, to })),
  ),
  lastRanBy: fc.constantFrom(...EVIDENCE),
  why: oneOf<WhyParked>(WHY_PARKED),
  stood: fc.subarray(keysOf<Stood>(STOOD)),
  putAway: oneOf<PutAway>(PUT_AWAY),
  putAwayBy: fc.constantFrom(...EVIDENCE),
});

const anySeen = oneOf<LookKey>(LOOKS).chain((look) =>
  oneOf(lookOf(look).answers).map((answer): Said => ({ what: 'seen', look, answer, value: null })),
);
const anyTick = fc
  .constantFrom(...STEPS)
  .chain(({ key, ways }) =>
    fc
      .tuple(
        fc.constantFrom(...ways.map(({ act }) => act)),
        fc.constantFrom('done' as const, 'done' as const, 'left out' as const),
        fc.option(fc.nat(2000), { nil: null }),
        fc.option(fc.nat(40), { nil: null }),
      )
      .map(([act, state, cost, hours]): Said => ({ what: 'tick', step: key, act, state, cost, hours })),
  );
const anyPass = fc
  .constantFrom(...STAGE_KEYS)
  .chain((stage) =>
    fc
      .subarray([
        ...STEPS.map(({ key }) => `step:${key}`),
        ...keysOf(LOOKS).map((look) => `look:${look}`),
        ...STAGE_KEYS.map((key) => `gate:${key}`),
      ])
      .map((despite): Said => ({ what: 'pass', stage, despite })),
  );
const anyRun = fc
  .tuple(oneOf<RunKey>(RUNS), fc.boolean())
  .map(
    ([run, well]): Said => ({ what: 'run', run, ended: well ? 'as planned' : 'stopped', km: 5, notes: [], hubs: null }),
  );
const anySpot = fc.record({
  place: oneOf<LeakPlace>(LEAK_PLACES),
  fluid: oneOf<LeakFluid>(LEAK_FLUIDS),
  how: oneOf<LeakClass>(LEAK_CLASSES),
});
const anySurvey = fc
  .tuple(fc.constantFrom(...CYCLES), oneOf<Moment>(MOMENTS), fc.array(anySpot, { maxLength: 3 }))
  .map(([cycle, moment, spots]): Said => ({ what: 'survey', cycle, moment, spots }));
const anySaid = fc.oneof(
  { weight: 4, arbitrary: anySeen },
  { weight: 5, arbitrary: anyTick },
  { weight: 3, arbitrary: anyPass },
  { weight: 1, arbitrary: anyRun },
  { weight: 1, arbitrary: anySurvey },
);

/** Any car of a starting point, asleep in any way, its parts dated or not, with anything said in any order. */
const anySleeper: fc.Arbitrary<RevivalFacts> = fc
  .record({
    traits: fc.constantFrom(...QUICK_STARTS).map(({ traits }) => traits),
    sleep: anySleep,
    said: fc.array(anySaid, { maxLength: 60 }),
    ages: fc.array(fc.option(fc.nat(9000), { nil: null, freq: 3 }), { minLength: 5, maxLength: 9 }),
    ceiling: fc.option(fc.integer({ min: 100, max: 40_000 }), { nil: null }),
    hands: fc.constantFrom('own' as const, 'workshop' as const, 'both' as const),
  })
  .map(({ traits, sleep, said, ages, ceiling, hands }) =>
    sleeper({
      traits,
      sleep,
      begunOn: BEGUN,
      parts: undated(traits).map((part, index) => {
        const age = ages[index % ages.length];
        return age == null
          ? part
          : {
              ...part,
              claims: [
                dated('made', addDays(BEGUN, -age)),
                dated('filled', addDays(BEGUN, -age)),
                dated('fitted', addDays(BEGUN, -age)),
              ],
            };
      }),
      entries: journal(BEGUN, ...said),
      revival: { ceiling, hands },
    }),
  );

/** Everything done and answered well, so that gates open; then some of it is spoiled. */
const doneWell = (facts: RevivalFacts, despiteSome: readonly string[]): RevivalFacts => {
  const said: Said[] = [];
  for (const { opens } of STAGE_KEYS.map((key): Stage => STAGES[key]))
    for (const { look, is } of opens) said.push({ what: 'seen', look, answer: is[0] ?? '', value: null });
  for (const cycle of CYCLES)
    for (const moment of keysOf<Moment>(MOMENTS)) said.push({ what: 'survey', cycle, moment, spots: [] });
  for (const run of keysOf<RunKey>(RUNS))
    said.push({ what: 'run', run, ended: 'as planned', km: 5, notes: [], hubs: null });
  for (const { key, run, survey } of STEPS)
    if (!run && !survey && !despiteSome.includes(key))
      said.push({ what: 'tick', step: key, act: ACTS.at(-1) ?? 'renew', state: 'done', cost: null, hours: null });
  for (const stage of STAGE_KEYS) said.push({ what: 'pass', stage, despite: [] });
  const parts = facts.parts.map((part) =>
    part.kind === 'tires-road' ? { ...part, claims: [dated('made', BEGUN)] } : part,
  );
  return { ...facts, parts, entries: journal(BEGUN, ...said) };
};

const upTo = (plan: RevivalPlan, index: number) => plan.stages.slice(0, index + 1).flatMap(({ steps }) => steps);

describe('no gate is reached with an open safety step below it', () => {
  const holds = (plan: RevivalPlan): void => {
    plan.stages.forEach(({ gate }, index) => {
      if (gate.state === 'shut') return;
      const written = new Set(gate.written.map(({ key }) => key));
      const open = upTo(plan, index).filter(({ safety, state }) => safety && state !== 'done');
      for (const { key } of open) expect(written, `${gate.stage} despite ${key}`).toContain(`step:${key}`);
      if (gate.state === 'passed') expect(open.map(({ key }) => key)).toEqual([]);
      // What was taken on in writing was named by somebody who passed this gate or one below it.
      const named = plan.stages.slice(0, index + 1).flatMap((stage) => stage.gate.pass?.despite ?? []);
      for (const key of written) expect(named).toContain(key);
      expect(
        plan.stages
          .slice(0, index)
          .every(
            (below) =>
              (below.gate.state !== 'shut' && below.gate.state !== 'ready') || written.has(`gate:${below.key}`),
          ),
      ).toBe(true);
    });
  };

  it('whatever was said, in any order', () => {
    fc.assert(
      fc.property(anySleeper, (facts) => holds(revivalPlan(facts, ON))),
      RUNS_EACH,
    );
  });

  it('with everything done but a few steps', () => {
    fc.assert(
      fc.property(
        anySleeper,
        fc.subarray(
          STEPS.map(({ key }) => key),
          { maxLength: 4 },
        ),
        (facts, some) => {
          const plan = revivalPlan(doneWell(facts, some), ON);
          holds(plan);
          const missing = stepsIn(plan).find(
            ({ key, safety, run, survey }) => safety && !run && !survey && some.includes(key),
          );
          if (!missing) return;
          const from = STAGE_KEYS.indexOf(missing.stage);
          for (const { gate } of plan.stages.slice(from)) expect(gate.state).toBe('shut');
        },
      ),
      RUNS_EACH,
    );
  });

  it('and with everything done every gate is passed', () => {
    fc.assert(
      fc.property(anySleeper, (facts) => {
        const plan = revivalPlan({ ...doneWell(facts, []), revival: { ...facts.revival, ceiling: null } }, ON);
        expect(
          plan.stages.filter(({ gate }) => gate.state !== 'passed').map(({ key, gate }) => [key, gate.lacks]),
        ).toEqual([]);
      }),
      RUNS_EACH,
    );
  });

  it('nothing that runs or moves begins before each gate below it is passed', () => {
    fc.assert(
      fc.property(anySleeper, (facts) => {
        const plan = revivalPlan(facts, ON);
        plan.stages.forEach(({ stage, steps }, index) => {
          if (!stage.power) return;
          const shut = plan.stages
            .slice(0, index)
            .filter(({ gate }) => gate.state === 'shut' || gate.state === 'ready');
          for (const step of steps)
            for (const { key } of shut) expect(step.waits.map((wait) => wait.key)).toContain(`gate:${key}`);
        });
      }),
      RUNS_EACH,
    );
  });
});

describe('costs add up', () => {
  const near = (a: Span, b: Span): void => {
    expect(a.low).toBeCloseTo(b.low, 6);
    expect(a.high).toBeCloseTo(b.high, 6);
  };
  const sum = (spans: readonly Span[]): Span => ({
    low: spans.reduce((total, { low }) => total + low, 0),
    high: spans.reduce((total, { high }) => total + high, 0),
  });

  it('steps to stages, stages to the whole, spent and to come to the total', () => {
    fc.assert(
      fc.property(anySleeper, (facts) => {
        const plan = revivalPlan(facts, ON);
        const stages = plan.stages.map(({ money }) => money);
        for (const part of ['own', 'workshop', 'hours', 'ownHours'] as const) {
          near(sum(stages.map(({ open }) => open[part])), plan.money.open[part]);
          near(
            sum(
              stepsIn(plan)
                .filter((step) => !isSettled(step))
                .map(({ cost }) => cost[part]),
            ),
            plan.money.open[part],
          );
        }
        near(sum(stages.map(({ reserve }) => reserve.own)), plan.money.reserve.own);
        expect(stages.reduce((total, { spent }) => total + spent, 0)).toBeCloseTo(plan.money.spent, 6);
        near(sum([plan.money.estimate, { low: plan.money.spent, high: plan.money.spent }]), plan.money.total);
        expect(plan.money.total.low).toBeLessThanOrEqual(plan.money.total.high);
      }),
      RUNS_EACH,
    );
  });

  it('and no work is counted twice', () => {
    fc.assert(
      fc.property(anySleeper, (facts) => {
        const plan = revivalPlan(facts, ON);
        const jobs = new Set(
          stepsIn(plan)
            .filter((step) => !isSettled(step))
            .flatMap(({ way }) => way.jobs ?? []),
        );
        near(sum([...jobs].map((job: JobKey) => costOf(job, DOLLARS).workshop)), plan.money.open.workshop);
        expect(jobs.size).toBeLessThanOrEqual(Object.keys(JOBS).length);
      }),
      RUNS_EACH,
    );
  });
});

describe('a step that is done', () => {
  it('is done at once, whatever was said before', () => {
    fc.assert(
      fc.property(anySleeper, fc.nat(), (facts, pick) => {
        const open = stepsIn(revivalPlan(facts, ON)).filter((step) => !isSettled(step) && !step.run && !step.survey);
        const step = open[pick % Math.max(open.length, 1)];
        if (!step) return;
        const entries = [
          ...facts.entries,
          ...journal(BEGUN, {
            what: 'tick',
            step: step.key,
            act: step.way.act,
            state: 'done',
            cost: null,
            hours: null,
          }),
        ];
        expect(stepsIn(revivalPlan({ ...facts, entries }, ON)).find(({ key }) => key === step.key)?.state).toBe('done');
      }),
      RUNS_EACH,
    );
  });

  it('never returns unless its reason does', () => {
    fc.assert(
      fc.property(anySleeper, fc.array(anySaid, { maxLength: 12 }), (facts, more) => {
        const before = revivalPlan(facts, ON);
        const all = [...facts.entries, ...journal(BEGUN, ...more)];
        const after = revivalPlan({ ...facts, entries: all }, ON);
        for (const was of stepsIn(before).filter(({ state }) => state === 'done')) {
          const now = stepsIn(after).find(({ key }) => key === was.key);
          if (now?.state !== 'again') continue;
          // Something new was seen, surveyed, driven or worked on that brings it in, or brings in more of it.
          expect(now.because.length).toBeGreaterThan(0);
          expect(
            more.some(({ what }) => what === 'seen' || what === 'survey' || what === 'run' || what === 'tick'),
          ).toBe(true);
          const quiet = facts.entries.concat(
            journal(BEGUN, ...more.filter(({ what }) => what === 'pass' || what === 'decision')),
          );
          expect(stepsIn(revivalPlan({ ...facts, entries: quiet }, ON)).find(({ key }) => key === was.key)?.state).toBe(
            'done',
          );
        }
      }),
      RUNS_EACH,
    );
  });
});

describe('the longer it slept', () => {
  it('the more is asked: no step is milder for more years asleep', () => {
    fc.assert(
      fc.property(anySleeper, fc.integer({ min: 1, max: 20 }), (facts, years) => {
        const shorter: CivilDate = addDays(BEGUN, -400);
        const asleep = (day: CivilDate): RevivalFacts => ({
          ...facts,
          entries: [],
          // What was renewed meanwhile would be young again: nothing was.
          parts: undated(facts.traits),
          revival: { ...facts.revival, sleep: { ...facts.revival.sleep, lastRan: { from: day, to: day } } },
        });
        const few = revivalPlan(asleep(shorter), ON);
        const many = revivalPlan(asleep(addDays(shorter, -365 * years)), ON);
        for (const step of stepsIn(few)) {
          const later = stepsIn(many).find(({ key }) => key === step.key);
          expect(later?.way && ACTS.indexOf(later.way.act), step.key).toBeGreaterThanOrEqual(
            ACTS.indexOf(step.way.act),
          );
        }
      }),
      RUNS_EACH,
    );
  });
});
