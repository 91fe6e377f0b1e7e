import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate, daysBetween, latest } from '../../src/dates/civil.ts';
import { dayInWords } from '../../src/dates/words.ts';
import { changesBetween, type Outline, outlineOf } from '../../src/plans/changes.ts';
import { LAY_UP_STEPS, layUpPlan } from '../../src/plans/lay-up.ts';
import type { Plan, Tick } from '../../src/plans/plan.ts';
import type { Situation } from '../../src/plans/situation.ts';
import { type StayFacts, situationOf, viewOf } from '../../src/plans/standing.ts';
import { endOf, type Stay } from '../../src/plans/stay.ts';
import type { Step } from '../../src/plans/step.ts';
import { TOPICS, type TopicKey } from '../../src/plans/topics.ts';
import { WAKE_UP_STEPS } from '../../src/plans/wake-up.ts';
import { sideOf } from '../../src/plans/when.ts';
import { anyStay, made, type StayRecipe } from '../support/any-stay.ts';
import { anyPlace } from '../support/arbitraries.ts';
import { dated } from '../support/parts.ts';
import { keysOf, placeOf, tick } from '../support/stays.ts';

const RUNS = { numRuns: 60 };
/** Each looks at both plans of a whole car on three days. */
const VIEWS = { numRuns: 30 };
const ROWS: Readonly<Record<string, readonly Step[]>> = { 'lay-up': LAY_UP_STEPS, 'wake-up': WAKE_UP_STEPS };

/** Some steps of the lay-up, done or skipped on the day the plan was made. */
const anyTicks = fc.array(
  fc.tuple(
    fc.constantFrom(...LAY_UP_STEPS.map(({ key }) => key)),
    fc.constantFrom('done' as const, 'skipped' as const),
  ),
  { maxLength: 20 },
);
const ticked = ({ stay }: StayFacts, list: readonly (readonly [string, Tick['state']])[]): Tick[] => [
  ...new Map(list.map(([key, state]) => [key, tick('lay-up', key, stay.madeOn, { state })])).values(),
];

/** Both plans as seen on a day before, on and after the parking day. */
const plansOf = (facts: StayFacts): { plan: Plan; first: CivilDate; anchor: CivilDate }[] => {
  const { parkedOn, returnOn, madeOn } = facts.stay;
  return [addDays(parkedOn, -20), parkedOn, addDays(parkedOn, 200)].flatMap((on) => {
    const { layUp, wakeUp } = viewOf(facts, on);
    return [
      { plan: layUp, first: madeOn, anchor: parkedOn },
      { plan: wakeUp, first: parkedOn, anchor: returnOn ?? latest(on, parkedOn) },
    ];
  });
};

const layUpOf = (recipe: StayRecipe, more: Partial<Stay> = {}): Plan => layUpPlan(situationOf(made(recipe, more)));

/** The same stay to its end, and to a later one. */
const shortAndLong = (recipe: StayRecipe, days: number): [Situation, Situation] => {
  const end = endOf(made(recipe).stay);
  return [situationOf(made(recipe, { returnOn: end })), situationOf(made(recipe, { returnOn: addDays(end, days) }))];
};

describe('any plan', () => {
  it('puts no step before one it comes after, neither by day nor on the list, and names each once', () => {
    fc.assert(
      fc.property(anyStay, anyTicks, (recipe, list) => {
        const facts = made(recipe);
        for (const { plan } of plansOf({ ...facts, ticks: ticked(facts, list) })) {
          const at = new Map(plan.steps.map((step, n) => [step.key, { n, day: step.day }]));
          expect(at.size).toBe(plan.steps.length);
          for (const { key, after = [] } of ROWS[plan.name] ?? []) {
            const step = at.get(key);
            for (const before of after.map((one) => at.get(one))) {
              if (!step || !before) continue;
              expect(before.n, key).toBeLessThan(step.n);
              expect(before.day <= step.day, key).toBe(true);
            }
          }
        }
      }),
      VIEWS,
    );
  });

  it('has every step between its first day and the day it counts back from', () => {
    fc.assert(
      fc.property(anyStay, (recipe) => {
        for (const { plan, first, anchor } of plansOf(made(recipe)))
          for (const { key, day } of plan.steps) {
            expect(day <= anchor, key).toBe(true);
            // Made after the fact it keeps its days.
            if (first <= anchor) expect(day >= first, key).toBe(true);
          }
      }),
      VIEWS,
    );
  });

  it('has figures that are finite, the right way round, and within their limits', () => {
    let seen = 0;
    fc.assert(
      fc.property(anyStay, (recipe) => {
        for (const { plan } of plansOf(made(recipe)))
          for (const { key, figures } of plan.steps)
            for (const { what, amount, limits } of figures) {
              if (amount === null) continue;
              seen++;
              const { low, high } = amount;
              expect([low, high].every(Number.isFinite), `${key}: ${what}`).toBe(true);
              expect(low, `${key}: ${what}`).toBeLessThanOrEqual(high);
              expect(low, `${key}: ${what}`).toBeGreaterThanOrEqual(limits.low);
              expect(high, `${key}: ${what}`).toBeLessThanOrEqual(limits.high);
            }
      }),
      VIEWS,
    );
    expect(seen).toBeGreaterThan(VIEWS.numRuns);
  });

  it('to wake a car ends with the road check, on the day it comes back', () => {
    fc.assert(
      fc.property(anyStay, (recipe) => {
        for (const { plan, anchor } of plansOf(made(recipe)).filter((one) => one.plan.name === 'wake-up'))
          expect(plan.steps.at(-1)).toMatchObject({ key: 'road-check', day: anchor });
      }),
      VIEWS,
    );
  });
});

describe('the engine of any car', () => {
  const TURNS = ['expel-oil', 'turn-by-hand', 'turn-diesel', 'battery', 'oil-first', 'first-start'];

  it('is turned by hand or starter only once it is out of gear, wherever it was left in gear', () => {
    let geared = 0;
    fc.assert(
      fc.property(anyStay, anyTicks, (recipe, list) => {
        const facts = made(recipe);
        const all = plansOf({ ...facts, ticks: ticked(facts, list) }).map(({ plan }) => plan);
        const leftIn = keysOf(layUpOf(recipe)).some((key) => key === 'in-gear' || key === 'in-park');
        for (const plan of all.filter(({ name }) => name === 'wake-up')) {
          const keys = keysOf(plan);
          const at = keys.indexOf('out-of-gear');
          expect(at >= 0).toBe(leftIn);
          if (!leftIn) continue;
          geared++;
          for (const key of TURNS) if (keys.includes(key)) expect(keys.indexOf(key), key).toBeGreaterThan(at);
        }
      }),
      VIEWS,
    );
    expect(geared).toBeGreaterThan(0);
  });
});

describe('fuel that is over by the return day', () => {
  /** Filled up and treated three days before the parking day, and ticked so. */
  const filled = (facts: StayFacts): StayFacts => {
    const day = addDays(facts.stay.parkedOn, -3);
    const fresh = { claims: [dated('filled', day)] };
    return {
      ...facts,
      ticks: ['fuel-fill', 'diesel-fill'].map((key) => tick('lay-up', key, day)),
      parts: facts.parts.map((part) =>
        part.kind === 'fuel-gasoline' || part.kind === 'fuel-diesel'
          ? { ...part, ...fresh, details: { ...part.details, stabilized: 'yes', fullness: 95 } }
          : part,
      ),
    };
  };

  it.each([
    ['nobody saw to', (facts: StayFacts) => facts, 0, 1826],
    ['was filled fresh and treated', filled, 0, 1826],
  ] as const)('and warned of is drained before it is started: %s', (_, told, low, high) => {
    let warned = 0;
    fc.assert(
      fc.property(anyStay, fc.integer({ min: low, max: high }), (recipe, length) => {
        const facts = told(made({ ...recipe, length }));
        const { warnings, wakeUp } = viewOf(facts, endOf(facts.stay));
        if (!warnings.some(({ key }) => key === 'fuel-stop')) return;
        warned++;
        expect(keysOf(wakeUp)).toContain('fuel-drain');
      }),
      RUNS,
    );
    expect(warned).toBeGreaterThan(10);
  });
});

describe('a parking day that is moved', () => {
  it('moves days and loses no tick, whatever else the new days ask for', () => {
    fc.assert(
      fc.property(anyStay, anyTicks, fc.integer({ min: -400, max: 400 }), (recipe, list, by) => {
        const ticks = ticked(made(recipe), list);
        const parkedOn = addDays(recipe.parkedOn, by);
        const returnOn = recipe.length === null ? null : addDays(parkedOn, recipe.length);
        const { steps } = layUpPlan(situationOf(made(recipe, { parkedOn, returnOn })), { ticks, own: [] });
        expect(steps.flatMap(({ tick: one }) => (one ? [one] : []))).toHaveLength(ticks.length);
        expect(steps.flatMap(({ tick: one }) => (one ? [one] : []))).toEqual(expect.arrayContaining(ticks));
      }),
      RUNS,
    );
  });

  it('leaves every step as many days before it as it was, where there is time for them', () => {
    fc.assert(
      fc.property(anyStay, fc.integer({ min: -400, max: 400 }), (recipe, by) => {
        const daysAhead = (parkedOn: CivilDate): Map<string, number> => {
          const stay = { parkedOn, madeOn: addDays(parkedOn, -60), returnOn: addMonths(parkedOn, 4) };
          return new Map(layUpOf(recipe, stay).steps.map(({ key, day }) => [key, daysBetween(day, parkedOn)]));
        };
        const [was, is] = [daysAhead(recipe.parkedOn), daysAhead(addDays(recipe.parkedOn, by))];
        const both = [...is].filter(([key]) => was.has(key));
        expect(both.length).toBeGreaterThan(10);
        for (const [key, days] of both) expect(was.get(key), key).toBe(days);
      }),
      RUNS,
    );
  });
});

describe('a longer stay', () => {
  const rowOf = new Map(LAY_UP_STEPS.map((row) => [row.key, row]));

  it('loses no step of the lay-up but those for short stays, and of a side that gave way to another by its length', () => {
    let lost = 0;
    fc.assert(
      fc.property(anyStay, fc.integer({ min: 1, max: 1200 }), (recipe, days) => {
        const [short, long] = shortAndLong(recipe, days);
        const kept = new Set(keysOf(layUpPlan(long)));
        for (const key of keysOf(layUpPlan(short)).filter((one) => !kept.has(one))) {
          lost++;
          const topics = (rowOf.get(key)?.when ?? []).flatMap(({ side }) => (side ? [side.topic as TopicKey] : []));
          const bounded = rowOf.get(key)?.when.some(({ months }) => months?.under !== undefined);
          expect(bounded || topics.some((topic) => sideOf(topic, short) !== sideOf(topic, long)), key).toBe(true);
        }
      }),
      { numRuns: 120 },
    );
    // The tank, the weight and the battery do give way.
    expect(lost).toBeGreaterThan(0);
  });

  it('gives way in nothing but the tank, the weight and the battery', () => {
    fc.assert(
      fc.property(anyStay, fc.integer({ min: 1, max: 1200 }), (recipe, days) => {
        const [short, long] = shortAndLong(recipe, days);
        const changed = (Object.keys(TOPICS) as TopicKey[]).filter((one) => sideOf(one, short) !== sideOf(one, long));
        expect(changed.filter((one) => !['tank', 'weight', 'battery'].includes(one))).toEqual([]);
      }),
      RUNS,
    );
  });
});

describe('a place nobody told', () => {
  const FROST = LAY_UP_STEPS.filter(({ when }) =>
    (when as Step['when']).some(({ place }) => place?.includes('frost') || place?.includes('not heated')),
  ).map(({ key }) => key);

  it('asks for every step against frost and damp air that any place told would', () => {
    expect(FROST).toEqual(expect.arrayContaining(['coolant-strength', 'washer', 'desiccant', 'traps', 'clutch-free']));
    fc.assert(
      fc.property(anyStay, anyPlace, (recipe, place) => {
        const asked = (where: Stay['place']): string[] =>
          keysOf(layUpOf(recipe, { place: where })).filter((key) => FROST.includes(key));
        expect(asked(null)).toEqual(expect.arrayContaining(asked(place)));
      }),
      RUNS,
    );
  });

  it('gets coolant for no milder a winter than any place down to −29 °C', () => {
    let compared = 0;
    fc.assert(
      fc.property(anyStay, fc.integer({ min: -29, max: 15 }), (recipe, winterLow) => {
        const strength = (place: Stay['place']): number | undefined =>
          layUpOf(recipe, { place })
            .steps.flatMap(({ figures }) => figures)
            .find(({ what }) => what === 'Coolant strength, glycol by volume')?.amount?.low;
        const told = strength(placeOf({ winterLow, summerHigh: winterLow + 30 }));
        if (told === undefined) return;
        compared++;
        expect(strength(null)).toBeGreaterThanOrEqual(told);
      }),
      RUNS,
    );
    expect(compared).toBeGreaterThan(20);
  });
});

describe('what changed', () => {
  const outline = (recipe: StayRecipe, more: Partial<Stay> = {}): Outline => outlineOf(layUpOf(recipe, more));

  it('is nothing between a plan and itself', () => {
    fc.assert(
      fc.property(anyStay, (recipe) => {
        expect(changesBetween(outline(recipe), outline(recipe))).toEqual([]);
      }),
      RUNS,
    );
  });

  it('names every step that came, went or moved, or how many moved', () => {
    fc.assert(
      fc.property(anyStay, anyStay, fc.integer({ min: -40, max: 40 }), (recipe, { circumstances }, by) => {
        const before = outline(recipe);
        const after = outline(recipe, { parkedOn: addDays(recipe.parkedOn, by), circumstances });
        const words = changesBetween(before, after);
        const was = new Map(before.map((step) => [step.key, step]));
        const is = new Map(after.map((step) => [step.key, step]));
        for (const { key, title } of before) if (!is.has(key)) expect(words).toContain(`No longer needed: ${title}.`);
        for (const { key, title, day } of after)
          if (!was.has(key)) expect(words).toContain(`New, on ${dayInWords(day)}: ${title}.`);
        const moved = after.filter(({ key, day }) => was.has(key) && was.get(key)?.day !== day);
        if (moved.length > 3) expect(words[0]).toMatch(new RegExp(`^${moved.length} steps moved: `));
        else for (const { title, day } of moved) expect(words.join('\n')).toContain(`to ${dayInWords(day)}: ${title}.`);
      }),
      RUNS,
    );
  });
});
