import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import { findingsOf } from '../../src/findings/car.ts';
import type { PartFacts } from '../../src/findings/facts.ts';
import { type RoadFacts, roadToday } from '../../src/plans/road-answer.ts';
import { WALK_KEYS, type Walkround } from '../../src/plans/walkround.ts';
import { carOf, dated } from '../support/parts.ts';
import { undated } from '../support/sleepers.ts';

const ON: CivilDate = '2026-11-26';
const RANK = ['no', 'local only', 'go'];
const CAR = carOf({ built: { from: '1961-01-01', to: '1961-12-31' } });

const anyParts = fc
  .record({
    traits: fc.constantFrom(...QUICK_STARTS).map(({ traits }) => traits),
    ages: fc.array(fc.option(fc.nat(5000), { nil: null, freq: 6 }), { minLength: 5, maxLength: 9 }),
  })
  .map(({ traits, ages }) =>
    undated(traits).map((part, index): PartFacts => {
      const age = ages[index % ages.length];
      if (age == null) return part;
      const day = addDays(ON, -age);
      return {
        ...part,
        claims: (['made', 'fitted', 'filled', 'serviced', 'used'] as const).map((clock) => dated(clock, day)),
      };
    }),
  );
const anyWalk: fc.Arbitrary<Walkround> = fc
  .tuple(...WALK_KEYS.map(() => fc.constantFrom('well', 'well', 'well', 'badly', '')))
  .map((answers) => ({
    answers: Object.fromEntries(WALK_KEYS.map((key, index) => [key, answers[index]])),
    by: 'Nell',
  }));

const check = (parts: readonly PartFacts[], walk: Walkround | null, more: Partial<RoadFacts> = {}): number =>
  RANK.indexOf(
    roadToday({
      on: ON,
      car: CAR,
      findings: findingsOf(CAR, parts, [], ON),
      sleep: null,
      walk,
      gates: [],
      testing: false,
      found: [],
      ...more,
    }).answer,
  );

describe('missing data never clears', () => {
  it('a part that loses its dates never opens the road', () => {
    fc.assert(
      fc.property(anyParts, anyWalk, fc.nat(), (parts, walk, pick) => {
        const lost = pick % parts.length;
        const without = parts.map((part, index) => (index === lost ? { ...part, claims: [] } : part));
        // What is known to be fresh work or too old is no worse for being unknown; it can only stay or get worse.
        expect(check(without, walk)).toBeLessThanOrEqual(Math.max(check(parts, walk), 1));
        if (check(without, walk) === 2) expect(check(parts, walk)).toBe(2);
      }),
      { numRuns: 150 },
    );
  });

  it('a look that is not made never opens the road', () => {
    fc.assert(
      fc.property(anyParts, anyWalk, fc.constantFrom(...WALK_KEYS), (parts, walk, key) => {
        const { [key]: answer, ...answers } = walk.answers;
        if (answer === 'badly') return;
        expect(check(parts, { ...walk, answers })).toBeLessThanOrEqual(check(parts, walk));
      }),
      { numRuns: 150 },
    );
  });

  it('without a walk round of today it is always no', () => {
    fc.assert(
      fc.property(anyParts, (parts) => {
        expect(check(parts, null)).toBe(0);
      }),
      { numRuns: 60 },
    );
  });

  it('nor does a gate, a stay or a find ever help', () => {
    fc.assert(
      fc.property(anyParts, anyWalk, fc.integer({ min: 0, max: 300 }), (parts, walk, months) => {
        const plain = check(parts, walk);
        expect(check(parts, walk, { gates: [{ name: 'Fuel', inWriting: true }] })).toBe(0);
        expect(check(parts, walk, { sleep: { since: '2020-01-01', months, km: null } })).toBeLessThanOrEqual(plain);
        expect(check(parts, walk, { testing: true })).toBeLessThanOrEqual(plain);
      }),
      { numRuns: 60 },
    );
  });
});
