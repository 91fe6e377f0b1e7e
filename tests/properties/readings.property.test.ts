/**
 * What readings, answers and a place can do to a standing. Knowing more can make it graver or, for brake fluid alone, put
 * it off; not knowing can spare it a word, and never clears anything.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge, VERDICTS, type Verdict } from '../../src/ageing/judge.ts';
import { coldestNight, type Place } from '../../src/ageing/place.ts';
import type { Kind } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import { limitOn } from '../../src/dates/limit.ts';
import { assess, type Finding } from '../../src/findings/assess.ts';
import { findingsOf } from '../../src/findings/car.ts';
import { explain } from '../../src/findings/explain.ts';
import type { CarFacts, PartFacts, Reading } from '../../src/findings/facts.ts';
import { gaugesOf } from '../../src/findings/measured.ts';
import { rulingOf } from '../../src/findings/ruling.ts';
import { rankOf, STANDINGS } from '../../src/findings/standing.ts';
import { owed, type Said, type Stage } from '../../src/notices/owed.ts';
import {
  anyAnswers,
  anyCar,
  anyDay,
  anyPlace,
  anyPlacedCar,
  anyReadings,
  anyReadPart,
  dayBetween,
  knownOn,
} from '../support/arbitraries.ts';
import { CAR_ID, carOf, dated, kindOf, partOf } from '../support/parts.ts';

/** Under the trade’s interval as it stands: what a place or a blend does to that is another matter. */
const found = (part: PartFacts, car: CarFacts, on: CivilDate): Finding =>
  assess(part, kindOf(part.kind), car, rulingOf(kindOf(part.kind), [], CAR_ID), on);

const bare = (part: PartFacts): PartFacts => ({ ...part, readings: [], details: {} });
/** Readings begin in 2015, so that is when they can matter. */
const anyLateDay = dayBetween('2014-06-01', '2032-12-31');
const stretches = ({ kind }: PartFacts): boolean => kindOf(kind).interval.stretch !== undefined;

describe('readings, answers and a place', () => {
  it('never give a better standing than none of them, where no good reading puts practice off', () => {
    fc.assert(
      fc.property(anyReadPart, anyPlacedCar, anyLateDay, (part, car, on) => {
        fc.pre(!stretches(part));
        const [told, untold] = [found(part, car, on), found(bare(part), { ...car, place: null }, on)];
        expect(rankOf(told.standing)).toBeGreaterThanOrEqual(rankOf(untold.standing));
        expect([told.look, told.due, told.past]).toEqual([untold.look, untold.due, untold.past]);
      }),
      { numRuns: 3000 },
    );
  });

  it('of brake fluid put its last day off by a year after a reading at most, and by 36 months from its fill in all', () => {
    const kind = kindOf('brake-fluid-glycol');
    const filled = dayBetween('2014-01-01', '2030-12-31');
    fc.assert(
      fc.property(filled, anyReadings(kind), anyAnswers(kind), anyLateDay, (start, readings, details, on) => {
        const part = partOf(kind.key, [dated('filled', start)], { readings, details });
        const { past, standing, measured } = found(part, carOf(), on);
        const day = past?.worst ?? '';
        const plain = limitOn(start, 24);
        expect(day >= addDays(plain, 1)).toBe(true);
        expect(day <= addDays(limitOn(start, 36), 1)).toBe(true);
        if (on > limitOn(start, 36)) expect(standing).toBe('past');
        if (day === addDays(plain, 1)) return;
        expect(measured.every(({ verdict }) => verdict === 'good')).toBe(true);
        const last = measured
          .map((one) => one.reading.day)
          .toSorted()
          .at(-1) as CivilDate;
        expect(day <= addDays(addMonths(last, 12), 1)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('never take a part without a date off the list of the unproven', () => {
    const dateless = anyReadPart.map((part): PartFacts => ({ ...part, claims: [] }));
    fc.assert(
      fc.property(dateless, anyPlacedCar, anyLateDay, (part, car, on) => {
        const [told] = findingsOf(car, [part], [], on);
        expect(rankOf(told?.standing ?? 'in date')).toBeGreaterThanOrEqual(rankOf('unproven'));
      }),
      { numRuns: 1000 },
    );
  });

  it('by estimate ask for no more than a look', () => {
    fc.assert(
      fc.property(anyReadPart, anyPlacedCar, anyLateDay, (part, car, on) => {
        const [told] = findingsOf(car, [part], [], on);
        if (told?.by !== 'estimate') return;
        expect(told.standing).toBe('look');
        expect(told.began !== null && told.began <= on).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('by a reading ask for what its verdict says, since a day it was read', () => {
    fc.assert(
      fc.property(anyReadPart, anyPlacedCar, anyLateDay, (part, car, on) => {
        const { standing, by, began, gravest, kind } = found(part, car, on);
        const least = { act: kind.severity === 'safety' ? 'past' : 'due', watch: 'look', good: 'in date' } as const;
        if (gravest?.verdict) expect(rankOf(standing)).toBeGreaterThanOrEqual(rankOf(least[gravest.verdict]));
        if (gravest) expect(gravest.verdict).toMatch(/^(watch|act)$/);
        if (by !== 'reading') return;
        expect(standing).toBe(least[gravest?.verdict ?? 'good']);
        expect(part.readings.some(({ day }) => day === began)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('of days ahead change nothing', () => {
    fc.assert(
      fc.property(anyReadPart, anyPlacedCar, anyLateDay, (part, car, on) => {
        const known = { ...part, readings: part.readings.filter(({ day }) => day <= on) };
        expect({ ...found(part, car, on), part: null }).toEqual({ ...found(known, car, on), part: null });
      }),
      { numRuns: 1000 },
    );
  });
});

interface Judgement {
  kind: Kind;
  readings: Reading[];
  details: PartFacts['details'];
  place: Place;
}

/** Every gauge with a value it can show, a temperature, answers and a place. */
const anyJudgement: fc.Arbitrary<Judgement> = fc
  .constantFrom(...[...KINDS.values()].filter((kind) => gaugesOf(kind).length > 0))
  .chain((kind) =>
    fc.record({
      kind: fc.constant(kind),
      readings: anyReadings(kind).filter((readings) => readings.length > 0),
      details: anyAnswers(kind),
      place: anyPlace,
    }),
  );

describe('what is missing', () => {
  const graveness = (verdict: Verdict | null): number => (verdict === null ? -1 : VERDICTS.indexOf(verdict));

  /** Each reading with its gauge, and what is made of it with all that is known. */
  const judgements = ({ kind, readings, details, place }: Judgement) =>
    readings.map((read) => {
      const gauge = gaugesOf(kind).find((test) => test.gauge.key === read.gauge)?.gauge;
      if (!gauge) throw new Error(`No gauge ${read.gauge}`);
      const known = { details, coldest: coldestNight(place) };
      return { gauge, read, known, full: judge(gauge, read, known).verdict };
    });

  it('makes no reading good that was not: without the place it is judged the same or not at all', () => {
    fc.assert(
      fc.property(anyJudgement, (given) => {
        for (const { gauge, read, known, full } of judgements(given)) {
          const less = judge(gauge, read, { ...known, coldest: null });
          expect(less.verdict === null).toBe(less.wants !== null);
          if (less.verdict === null) continue;
          // Too weak or too strong a coolant is so wherever it stands; where it freezes as well it may be graver.
          if (gauge.reads?.startsWith('coolant')) {
            expect(less.verdict).not.toBe('good');
            expect(graveness(less.verdict)).toBeLessThanOrEqual(graveness(full));
          } else expect(less.verdict).toBe(full);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('nor without its temperature, but for a tire, which then counts as read cold', () => {
    fc.assert(
      fc.property(anyJudgement, (given) => {
        for (const { gauge, read, known, full } of judgements(given)) {
          const less = judge(gauge, { ...read, warmth: null }, known);
          expect(less.verdict === null).toBe(less.wants !== null);
          if (gauge.reads === 'tire pressure') expect(less).toEqual(judge(gauge, { ...read, warmth: 20 }, known));
          else if (less.verdict !== null) expect(less.verdict).toBe(full);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('a tire read warmer has no more air in it: it is never judged fuller', () => {
    const bar = fc.double({ min: 0, max: 6, noNaN: true });
    const warmth = fc.double({ min: -40, max: 60, noNaN: true });
    const kinds = fc.constantFrom('tires-road', 'tire-spare', 'tire-compact-spare');
    fc.assert(
      fc.property(kinds, bar, warmth, fc.nat(40), (kind, value, at, warmer) => {
        const gauge = gaugesOf(kindOf(kind)).find((test) => test.gauge.key === 'cold-pressure')?.gauge;
        if (!gauge) throw new Error(`${kind} is not gauged`);
        const judged = (degrees: number) => judge(gauge, { value, warmth: degrees }, { details: {}, coldest: null });
        expect(judged(at + warmer).value).toBeLessThanOrEqual(judged(at).value);
        expect(judged(Math.min(at, 20)).value).toBe(value);
      }),
    );
  });

  it('makes none milder by an answer left out, but for the grade of brake fluid, where a rule of the trade says which', () => {
    fc.assert(
      fc.property(anyJudgement, ({ kind, readings, details, place }) => {
        for (const read of readings) {
          const gauge = gaugesOf(kind).find((test) => test.gauge.key === read.gauge)?.gauge;
          if (!gauge || gauge.key === 'boiling-point') continue;
          const full = judge(gauge, read, { details, coldest: coldestNight(place) }).verdict;
          const less = judge(gauge, read, { details: {}, coldest: coldestNight(place) }).verdict;
          if (less !== null && full !== null && !('volts' in details && details.volts === '6'))
            expect(graveness(less), `${kind.key} ${gauge.key}`).toBeGreaterThanOrEqual(graveness(full));
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe('a place', () => {
  it('moves no limit, and brings no safety look later', () => {
    fc.assert(
      fc.property(anyReadPart, anyCar, anyPlace, anyLateDay, (part, car, place, on) => {
        const [here] = findingsOf({ ...car, place }, [{ ...part, readings: [] }], [], on);
        const [nowhere] = findingsOf(car, [{ ...part, readings: [] }], [], on);
        expect([here?.due, here?.past]).toEqual([nowhere?.due, nowhere?.past]);
        if (here?.kind.severity !== 'safety') return;
        if (here.look?.worst && nowhere?.look?.worst) expect(here.look.worst <= nowhere.look.worst).toBe(true);
        expect(rankOf(here.standing)).toBeGreaterThanOrEqual(rankOf(nowhere?.standing ?? 'in date'));
      }),
      { numRuns: 2000 },
    );
  });
});

describe('what is told of readings', () => {
  /** Of one sort: a graver one that was told says the milder one as well. */
  const covers = (told: Stage, stage: Stage): boolean => {
    const sorts: readonly (readonly string[])[] = [STANDINGS, VERDICTS];
    return sorts.some((sort) => sort.includes(stage) && sort.indexOf(told) >= sort.indexOf(stage));
  };

  it('is told twice only after something new was written down, or the car put somewhere, in between', () => {
    fc.assert(
      fc.property(
        anyReadPart,
        anyPlacedCar,
        anyLateDay,
        fc.array(fc.nat(400), { maxLength: 14 }),
        (part, car, start, steps) => {
          const said: Said[] = [];
          const known = [car.built, ...part.claims].flatMap(({ to }) => to ?? []);
          let day = [start, ...known].toSorted().at(-1) as CivilDate;
          for (const step of [0, ...steps]) {
            day = addDays(day, step);
            const facts = knownOn(part, car, day);
            const findings = findingsOf(facts.car, [facts.part], [], day);
            for (const { told } of owed(findings, new Map([[part.id, [...said]]])))
              for (const stage of told) said.push({ partId: part.id, stage, saidOn: day });
          }
          const newsBetween = (first: CivilDate, last: CivilDate) =>
            [...part.readings.map(({ recordedOn }) => recordedOn), car.placedOn ?? ''].filter(
              (one) => one > first && one <= last,
            );
          said.forEach(({ stage, saidOn }, index) => {
            const before = said.slice(0, index).findLast((one) => covers(one.stage, stage));
            if (!before) return;
            expect(newsBetween(before.saidOn, saidOn), `${before.stage}, ${stage} on ${saidOn}`).not.toEqual([]);
          });
          // Of the estimates of a battery, which has most, each is told once: to recharge, no longer to crank, to freeze.
          const estimates = said.filter(({ stage }) => stage === 'estimate');
          estimates.forEach(({ saidOn }, index) => {
            const fourth = estimates[index - 3];
            if (fourth) expect(newsBetween(fourth.saidOn, saidOn), `estimate on ${saidOn}`).not.toEqual([]);
          });
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('says at once what there is to say: nothing owed is left untold on the day after a reading', () => {
    fc.assert(
      fc.property(anyReadPart, anyPlacedCar, anyDay, (part, car, on) => {
        const [told] = findingsOf(car, [part], [], on);
        const [news] = owed(told ? [told] : [], new Map());
        expect(news?.told.includes('act') ?? false).toBe(told?.gravest?.verdict === 'act');
        expect(news?.told.includes('watch') ?? false).toBe(told?.gravest?.verdict === 'watch');
      }),
      { numRuns: 1000 },
    );
  });
});

describe('words', () => {
  it('are found for any finding with readings, each reading in one reason', () => {
    fc.assert(
      fc.property(anyReadPart, anyPlacedCar, anyLateDay, (part, car, on) => {
        const [told] = findingsOf(car, [part], [], on);
        if (!told) throw new Error('No finding');
        const { reasons, todo, outlook, surer } = explain(told);
        expect(reasons.length).toBeGreaterThanOrEqual(2 + told.measured.length);
        const texts = [
          ...reasons.map(({ text }) => text),
          todo,
          surer ?? '',
          outlook?.now ?? '',
          ...(outlook?.says ?? []),
        ];
        for (const text of texts) {
          expect(text).not.toMatch(/undefined|null|NaN|Infinity|\[object|\d{4}-\d\d-\d\d/);
          expect(text).not.toMatch(/\b(safe|safely|fine|ok|okay)\b/i);
        }
      }),
      { numRuns: 3000 },
    );
  });
});
