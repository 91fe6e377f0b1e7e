import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import { nextVisit, type Round, type RoundMade, roundsOf } from '../../src/plans/rounds.ts';
import { dayBetween } from '../support/arbitraries.ts';
import { roundMade } from '../support/stays.ts';

interface Facts {
  stay: { parkedOn: CivilDate; returnOn: CivilDate | null };
  made: readonly RoundMade[];
}

/** No day at all to four years, or open; rounds on any days, oldest first. */
const anyFacts: fc.Arbitrary<Facts> = fc
  .tuple(
    dayBetween('2018-01-01', '2030-12-31'),
    fc.option(fc.nat(1460), { nil: null }),
    fc.array(fc.nat(1500), { maxLength: 30 }),
  )
  .map(([parkedOn, length, days]) => ({
    stay: { parkedOn, returnOn: length === null ? null : addDays(parkedOn, length) },
    made: [...new Set(days)].sort((a, b) => a - b).map((n) => roundMade(addDays(parkedOn, n))),
  }));

const anyDays = fc.nat(1400);
const STATES: readonly Round['state'][] = ['done', 'missed', 'due', 'ahead'];
const RUNS = { numRuns: 500 };

describe('rounds', () => {
  it('fall one a month, each after the parking day and before the day it comes back', () => {
    fc.assert(
      fc.property(anyFacts, anyDays, ({ stay, made }, days) => {
        const on = addDays(stay.parkedOn, days);
        const rounds = roundsOf(stay, made, on);
        rounds.forEach(({ month, due, state }, n) => {
          expect(month).toBe(n + 1);
          expect(due).toBe(addMonths(stay.parkedOn, month));
          expect(stay.returnOn === null || due < stay.returnOn).toBe(true);
          expect(STATES).toContain(state);
        });
        // None is left out: the next month’s is past the end.
        const next = addMonths(stay.parkedOn, rounds.length + 1);
        if (stay.returnOn !== null) expect(next >= stay.returnOn || rounds.length === 48).toBe(true);
        else expect((rounds.at(-1)?.due ?? '') > on).toBe(true);
      }),
      RUNS,
    );
  });

  it('are done only by a round that was made by then, missed only when their time is over, due only from their day', () => {
    fc.assert(
      fc.property(anyFacts, anyDays, ({ stay, made }, days) => {
        const on = addDays(stay.parkedOn, days);
        for (const { state, due, month, made: own } of roundsOf(stay, made, on)) {
          const closes = addDays(addMonths(stay.parkedOn, month + 1), -10);
          expect(state === 'done').toBe(own !== null);
          if (own) expect(own.day <= on && own.day >= addDays(due, -10) && own.day < closes).toBe(true);
          else if (state === 'missed') expect(closes <= on).toBe(true);
          else if (state === 'due') expect(due <= on && on < closes).toBe(true);
          else expect(due > on).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('count no round twice', () => {
    fc.assert(
      fc.property(anyFacts, anyDays, ({ stay, made }, days) => {
        const used = roundsOf(stay, made, addDays(stay.parkedOn, days)).flatMap(({ made: own }) =>
          own ? [own.id] : [],
        );
        expect(new Set(used).size).toBe(used.length);
      }),
      RUNS,
    );
  });

  it('once missed stay shown as missed, however many days go on', () => {
    let missed = 0;
    fc.assert(
      fc.property(anyFacts, anyDays, fc.nat(800), ({ stay, made }, days, later) => {
        const on = addDays(stay.parkedOn, days);
        const then = new Map(roundsOf(stay, made, addDays(on, later)).map((round) => [round.month, round.state]));
        for (const { month, state } of roundsOf(stay, made, on)) {
          if (state !== 'missed' && state !== 'done') continue;
          if (state === 'missed') missed++;
          expect(then.get(month)).toBe(state);
        }
      }),
      RUNS,
    );
    expect(missed).toBeGreaterThan(RUNS.numRuns);
  });

  it('have a next visit that is later than today, at most about a month on, until the car is back', () => {
    fc.assert(
      fc.property(anyFacts, fc.nat(1300), ({ stay }, days) => {
        const on = addDays(stay.parkedOn, days);
        const next = nextVisit(stay, on);
        if (stay.returnOn !== null && stay.returnOn <= on) {
          expect(next).toBeNull();
          return;
        }
        expect(next !== null && next > on && next <= addDays(on, 31)).toBe(true);
      }),
      RUNS,
    );
  });
});
