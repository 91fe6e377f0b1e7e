import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Clock } from '../../src/catalogue/clock.ts';
import type { Kind } from '../../src/catalogue/kind.ts';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import { assess, type Finding } from '../../src/findings/assess.ts';
import { byNeed, byUrgency, summaryOf } from '../../src/findings/car.ts';
import { explain } from '../../src/findings/explain.ts';
import type { CarFacts, Claim, Override, PartFacts } from '../../src/findings/facts.ts';
import { rulingOf } from '../../src/findings/ruling.ts';
import { labelOf, sinceOf, sinceOnce } from '../../src/findings/since.ts';
import { rankOf } from '../../src/findings/standing.ts';
import { tireSet } from '../../src/findings/tire-set.ts';
import { digestOf } from '../../src/notices/digest.ts';
import { owed, type Said, STAGES } from '../../src/notices/owed.ts';
import {
  anyCar,
  anyClaim,
  anyDay,
  anyKind,
  anyOverride,
  anyPart,
  anyPlacedCar,
  anyRange,
  anyReadPart,
} from '../support/arbitraries.ts';
import { CAR_ID, carOf, dated, finding, kindOf, partOf } from '../support/parts.ts';

interface Facts {
  part: PartFacts;
  car: CarFacts;
  overrides: Override[];
}

/** A part of any kind with any claims, on any car, under the trade's interval or any of the owner's. */
const anyFacts: fc.Arbitrary<Facts> = anyPart.chain((part) =>
  fc.record({
    part: fc.constant(part),
    car: anyCar,
    overrides: fc.array(anyOverride(part.kind), { maxLength: 1 }),
  }),
);

const assessed = ({ part, car, overrides }: Facts, on: CivilDate): Finding =>
  assess(part, kindOf(part.kind), car, rulingOf(kindOf(part.kind), overrides, CAR_ID), on);

/** The same with readings, answers and a place. */
const anyReadFacts: fc.Arbitrary<Facts> = anyReadPart.chain((part) =>
  fc.record({
    part: fc.constant(part),
    car: anyPlacedCar,
    overrides: fc.array(anyOverride(part.kind), { maxLength: 1 }),
  }),
);

const anyFinding = fc.tuple(fc.oneof(anyFacts, anyReadFacts), anyDay).map(([facts, on]) => assessed(facts, on));

/** The clock that rules a kind that has one exact date. */
const clockOf = ({ clock }: Kind): Clock => (clock === 'printed' ? 'made' : clock);
const earliest = (...days: CivilDate[]): CivilDate => days.toSorted()[0] as CivilDate;
const latest = (...days: CivilDate[]): CivilDate => days.toSorted().at(-1) as CivilDate;
const limited = anyKind.filter(({ interval }) => interval.replaceBy !== null);
const onDay = (kind: Kind, start: CivilDate, on: CivilDate): Finding =>
  finding(kind.key, [dated(clockOf(kind), start)], on);

describe('standings', () => {
  it('only move forward as the day advances and the facts stay', () => {
    fc.assert(
      fc.property(anyFacts, anyDay, fc.array(fc.nat(900), { minLength: 1, maxLength: 8 }), (facts, start, steps) => {
        let [day, last] = [start, assessed(facts, start)];
        for (const step of steps) {
          day = addDays(day, step);
          const next = assessed(facts, day);
          expect(
            rankOf(next.standing),
            `${last.standing} on ${last.on}, ${next.standing} on ${day}`,
          ).toBeGreaterThanOrEqual(rankOf(last.standing));
          last = next;
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('begin on one day and keep it: as long as a standing lasts, its first day stays', () => {
    fc.assert(
      fc.property(anyFacts, anyDay, fc.nat(4000), (facts, day, later) => {
        const [now, then] = [assessed(facts, day), assessed(facts, addDays(day, later))];
        if (now.standing === then.standing) expect(then.began).toBe(now.began);
      }),
      { numRuns: 2000 },
    );
  });

  it('begin on the day they say, and on no day before it', () => {
    fc.assert(
      fc.property(anyFacts, anyDay, (facts, day) => {
        const { standing, began } = assessed(facts, day);
        if (began === null) {
          expect(['in date', 'unproven']).toContain(standing);
          return;
        }
        // With an open start a look is owed at once, even on a day before those the facts tell of.
        if (began > day) return;
        expect(assessed(facts, began).standing).toBe(standing);
        const before = assessed(facts, addDays(began, -1)).standing;
        if (standing !== 'look') expect(rankOf(before)).toBeLessThan(rankOf(standing));
      }),
      { numRuns: 2000 },
    );
  });

  it('are due on the limit’s own day and past on the day after, for every kind with a limit', () => {
    fc.assert(
      fc.property(limited, anyDay, (kind, start) => {
        const limit = addMonths(start, kind.interval.replaceBy ?? 0);
        expect(onDay(kind, start, limit).standing).toBe('due');
        expect(onDay(kind, start, addDays(limit, 1))).toMatchObject({ standing: 'past', began: addDays(limit, 1) });
        expect(rankOf(onDay(kind, start, addMonths(limit, -4)).standing)).toBeLessThan(rankOf('due'));
      }),
      { numRuns: 500 },
    );
  });

  it('are look on the look-from day and not the day before, for every kind', () => {
    fc.assert(
      fc.property(anyKind, anyDay, (kind, start) => {
        const { lookFrom } = kind.interval;
        fc.pre(lookFrom !== null);
        const look = addMonths(start, lookFrom ?? 0);
        const eve = onDay(kind, start, addDays(look, -1));
        const day = onDay(kind, start, look);
        expect(day.look).toEqual({ worst: look, best: look });
        expect(rankOf(day.standing)).toBeGreaterThanOrEqual(rankOf('look'));
        expect(eve.standing).not.toBe('look');
      }),
      { numRuns: 500 },
    );
  });

  it('without any date are unproven: nothing is cleared by saying nothing', () => {
    const silent = anyClaim.map((claim): Claim => ({ ...claim, said: 'unknown', from: null, to: null, km: null }));
    fc.assert(
      fc.property(anyKind, fc.array(silent, { maxLength: 3 }), anyCar, anyDay, (kind, claims, car, on) => {
        const part = partOf(kind.key, claims);
        expect(assess(part, kind, car, rulingOf(kind, [], CAR_ID), on)).toMatchObject({
          standing: 'unproven',
          began: null,
        });
      }),
    );
  });
});

describe('what is less well known', () => {
  const wider = (claim: Claim, days: number): Claim => ({
    ...claim,
    from: claim.from && addDays(claim.from, -days),
    to: claim.to && addDays(claim.to, days),
  });

  it('never stands better: a wider span of a safety item is never milder', () => {
    fc.assert(
      fc.property(limited, anyDay, fc.nat(3000), anyDay, (kind, start, days, on) => {
        fc.pre(kind.severity === 'safety');
        const exact = dated(clockOf(kind), start);
        expect(rankOf(finding(kind.key, [wider(exact, days)], on).standing)).toBeGreaterThanOrEqual(
          rankOf(finding(kind.key, [exact], on).standing),
        );
      }),
    );
  });

  it('clears nothing that its oldest age does not: in date means in date at every age it can have', () => {
    fc.assert(
      fc.property(anyKind, anyRange, anyDay, (kind, range, on) => {
        const car = carOf({ built: { from: null, to: null } });
        const { standing } = finding(kind.key, [dated(clockOf(kind), range.from, range.to)], on, { car });
        if (standing !== 'in date') return;
        expect(range.from).not.toBeNull();
        if (range.from) expect(onDay(kind, range.from, on).standing).toBe('in date');
      }),
      { numRuns: 1000 },
    );
  });

  it('a second, equally good and different date never makes a safety item younger', () => {
    fc.assert(
      fc.property(limited, anyDay, anyDay, anyDay, (kind, one, other, on) => {
        fc.pre(kind.severity === 'safety');
        const clock = clockOf(kind);
        fc.pre(clock !== 'serviced' && clock !== 'used');
        const both = finding(kind.key, [dated(clock, one), dated(clock, other)], on);
        expect(both.standing).toBe(onDay(kind, earliest(one, other), on).standing);
      }),
    );
  });

  it('a label that disagrees with another never lengthens it', () => {
    fc.assert(
      fc.property(fc.array(anyDay, { minLength: 1, maxLength: 4 }), fc.boolean(), (days, cautious) => {
        const claims = days.map((day) => dated('printed', day));
        expect(labelOf(claims, { from: null, to: null }, cautious)).toBe(days.toSorted()[0]);
      }),
    );
  });

  it('the order in which claims were recorded changes nothing', () => {
    fc.assert(
      fc.property(fc.array(anyClaim, { maxLength: 4 }), anyRange, fc.boolean(), (claims, built, cautious) => {
        for (const clock of ['made', 'fitted', 'filled', 'printed'] as const)
          expect(sinceOnce(claims.toReversed(), clock, built, cautious)).toEqual(
            sinceOnce(claims, clock, built, cautious),
          );
      }),
    );
  });

  it('bounds only narrow: a clock’s range never grows by what other clocks say', () => {
    fc.assert(
      fc.property(fc.array(anyClaim, { minLength: 1, maxLength: 4 }), anyRange, (claims, built) => {
        for (const clock of ['made', 'fitted', 'filled'] as const) {
          const [own, bounded] = [sinceOnce(claims, clock, built, true), sinceOf(claims, clock, built, true)];
          if (!own) continue;
          expect(bounded).not.toBeNull();
          if (own.from) expect((bounded?.from ?? '') >= own.from).toBe(true);
          if (own.to) expect((bounded?.to ?? '9999') <= own.to).toBe(true);
          if (own.from && own.to) expect((bounded?.from ?? '') <= (bounded?.to ?? '')).toBe(true);
        }
      }),
    );
  });
});

describe('a look', () => {
  it('never moves the day a part is due or past', () => {
    fc.assert(
      fc.property(anyKind, anyDay, anyDay, anyDay, (kind, start, look, on) => {
        const clock = clockOf(kind);
        fc.pre(clock !== 'serviced' && look >= start);
        const [without, looked] = [
          finding(kind.key, [dated(clock, start)], on),
          finding(kind.key, [dated(clock, start), dated('serviced', look)], on),
        ];
        expect([looked.due, looked.past]).toEqual([without.due, without.past]);
        expect(rankOf(looked.standing)).toBeLessThanOrEqual(rankOf(without.standing));
        if (rankOf(without.standing) > rankOf('look')) expect(looked.standing).toBe(without.standing);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('words', () => {
  const wordsOf = (of: Finding): string[] => {
    const { age, reasons, doubts, todo, cautions } = explain(of);
    return [age, ...reasons.map(({ text }) => text), ...doubts, todo, ...cautions];
  };

  it('never call a part safe, fine or OK', () => {
    fc.assert(
      fc.property(anyFinding, (of) => {
        for (const text of wordsOf(of))
          expect(text).not.toMatch(/\b(safe|safely|fine|ok|okay|good to go|all clear)\b/i);
      }),
      { numRuns: 3000 },
    );
  });

  it('have no hole in them, and end as sentences do', () => {
    fc.assert(
      fc.property(anyFinding, (of) => {
        for (const text of wordsOf(of)) {
          expect(text).not.toMatch(/undefined|null|NaN|Infinity|\[object|\d{4}-\d\d-\d\d/);
          expect(text).not.toMatch(/ {2}|\.\.| \.| ,/);
        }
        const { reasons, todo } = explain(of);
        for (const text of [...reasons.map((reason) => reason.text), todo]) expect(text).toMatch(/[.”]$/);
      }),
      { numRuns: 2000 },
    );
  });

  it('name no day as come that still lies ahead', () => {
    const dayOf = (text: string): CivilDate => {
      const date = new Date(`${text} UTC`);
      return date.toISOString().slice(0, 10) as CivilDate;
    };
    fc.assert(
      fc.property(anyFinding, (of) => {
        const line = explain(of).reasons[1]?.text ?? '';
        const since = /^(?:Past|Due) since (\d+ [A-Z][a-z]+ \d{4})/.exec(line)?.[1];
        if (since) expect(dayOf(since) <= of.on, line).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('give an unproven part a task, after what a reading or an estimate asks', () => {
    fc.assert(
      fc.property(anyFinding, (of) => {
        const { todo } = explain(of);
        if (of.standing === 'unproven') {
          const first = /^(Find its date|Date it better)/;
          if (of.gravest || of.news.estimate) expect(todo).toMatch(/\. (Find its date|Date it better)/);
          else expect(todo).toMatch(first);
        }
        if (of.standing !== 'in date') expect(todo).not.toBe('Nothing now.');
      }),
      { numRuns: 1000 },
    );
  });

  it('put what a reading asks before the rest', () => {
    fc.assert(
      fc.property(anyFinding, (of) => {
        const { gravest } = of;
        if (!gravest || gravest.verdict === null) return;
        const { todo } = explain(of);
        const { name } = gravest.test;
        expect(todo.startsWith(gravest.verdict === 'act' ? `${name}: ` : `${name} wants watching (`), todo).toBe(true);
        expect(todo.includes('read it again within a month.')).toBe(gravest.verdict === 'watch');
        if (of.by === 'reading') expect(todo).not.toMatch(/Find its date|Date it better|Look and test/);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('cars and letters', () => {
  const anyFindings = fc.array(
    fc.tuple(anyFinding, fc.uuid()).map(([of, id]): Finding => ({ ...of, part: { ...of.part, id } })),
    { maxLength: 8 },
  );

  it('every finding is counted once, and the first is one that needs a hand most', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const { counts, first } = summaryOf(findings);
        expect(Object.values(counts).reduce((sum, n) => sum + n, 0)).toBe(findings.length);
        expect(first === null).toBe(counts['in date'] === findings.length);
        if (first) for (const other of findings) expect(byNeed(first, other)).toBeLessThanOrEqual(0);
        const summary = summaryOf(findings);
        expect(byUrgency(summary, summary)).toBe(0);
      }),
    );
  });

  it('a tire set speaks of any findings without a hole in its words', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        for (const note of tireSet(findings).notes) expect(note).toMatch(/^(?!.*(undefined|null|NaN)).+\.$/);
      }),
    );
  });

  it('a letter holds every stage owed and no other, safety before the rest', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const news = owed(findings, new Map());
        const digest = digestOf([{ carId: 'car', name: 'Car', owed: news, stay: [], unproven: 3, unjudged: 0 }]);
        const lines = digest?.cars.flatMap((car) => car.lines) ?? [];
        expect(lines.map(({ partId }) => partId).toSorted()).toEqual(news.map(({ part }) => part.id).toSorted());
        expect(lines.map(({ safety }) => safety)).toEqual(
          lines
            .map(({ safety }) => safety)
            .toSorted()
            .toReversed(),
        );
        expect(digest === null).toBe(news.length === 0);
      }),
    );
  });

  it('nothing is told twice, however often it is asked and whatever was told in between', () => {
    fc.assert(
      fc.property(anyFacts, anyDay, fc.array(fc.nat(700), { maxLength: 12 }), (facts, start, steps) => {
        const said: Said[] = [];
        // Nothing is recorded of days ahead, so letters come after every day that is.
        const known = [facts.car.built, ...facts.part.claims].flatMap(({ to }) => to ?? []);
        let day = latest(start, ...known);
        for (const step of [0, ...steps]) {
          day = addDays(day, step);
          for (const { part, told } of owed([assessed(facts, day)], new Map([[facts.part.id, said]])))
            for (const stage of told) said.push({ partId: part.id, stage, saidOn: day });
        }
        const stages = said.map(({ stage }) => stage);
        expect(new Set(stages).size).toBe(stages.length);
        const ranks = stages.map((stage) => STAGES.indexOf(stage));
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
      }),
      { numRuns: 2000 },
    );
  });
});
