import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../src/catalogue/cautions.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { SOURCES } from '../../src/catalogue/sources.ts';
import { allTraits, FACETS, IMPLIED } from '../../src/catalogue/traits.ts';
import type { When } from '../../src/plans/conditions.ts';
import { LAY_UP_STEPS } from '../../src/plans/lay-up.ts';
import { LOOKS } from '../../src/plans/looks.ts';
import { CIRCUMSTANCES } from '../../src/plans/stay.ts';
import { PHASES, type Step, WAKE_UP_PHASES } from '../../src/plans/step.ts';
import { TOPICS, type Topic } from '../../src/plans/topics.ts';
import { WAKE_UP_STEPS } from '../../src/plans/wake-up.ts';

const LAY_UP_KEYS = LAY_UP_STEPS.map(({ key }) => key);
const PLANS: readonly (readonly [string, readonly Step[], readonly string[]])[] = [
  ['lay-up', LAY_UP_STEPS, Object.keys(PHASES)],
  ['wake-up', WAKE_UP_STEPS, Object.keys(WAKE_UP_PHASES)],
];
const EVERY = PLANS.flatMap(([plan, rows]) => rows.map((row) => [`${plan}: ${row.key}`, row] as const));
const TRAITS: readonly string[] = [...FACETS.flatMap(({ traits }) => Object.keys(traits)), ...Object.keys(IMPLIED)];
const kind = (key: string) => {
  const found = KINDS.get(key);
  if (!found) throw new Error(`no kind ${key}`);
  return found;
};

describe.each(PLANS)('the steps of the %s', (_, rows, phases) => {
  it('have keys of their own and phases that exist, from the first to the last', () => {
    expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
    expect([...new Set(rows.map(({ phase }) => phase))].toSorted()).toEqual(phases.toSorted());
  });

  it('come after steps of the same plan that stand earlier in the rows, on the same day or before', () => {
    rows.forEach(({ key, days, after = [] }, n) => {
      for (const name of after) {
        const at = rows.findIndex((row) => row.key === name);
        expect(at, `${key} after ${name}`).toBeGreaterThanOrEqual(0);
        expect(at, `${key} after ${name}`).toBeLessThan(n);
        expect(rows[at]?.days ?? 0, `${key} after ${name}`).toBeGreaterThanOrEqual(days);
      }
    });
  });
});

it('steps that leave nothing of another to do are in the same plan', () => {
  for (const [plan, rows] of PLANS)
    for (const { key, moot = [] } of rows)
      for (const one of moot)
        expect(
          rows.map((row) => row.key),
          `${plan}: ${key}`,
        ).toContain(one);
});

describe.each(EVERY)('%s', (_, step) => {
  it('says what, why and how long, and names cautions and sources that exist', () => {
    expect(step.title).not.toMatch(/\.$/);
    expect(step.why).toMatch(/[.!]$/);
    expect(step.minutes).toBeGreaterThanOrEqual(0);
    expect(Number.isInteger(step.days) && step.days >= 0 && step.days <= 60).toBe(true);
    for (const caution of step.cautions) expect(CAUTIONS).toHaveProperty(caution);
    expect(step.sources.length).toBeGreaterThan(0);
    for (const source of step.sources) expect(SOURCES).toHaveProperty(source);
    expect(new Set(step.sources).size).toBe(step.sources.length);
  });

  it('writes into records that exist', () => {
    const { renews = [], services = [], uses = [], reads = [], answers = [] } = step.records ?? {};
    for (const key of [...renews, ...services, ...uses]) kind(key);
    for (const [of, gauge] of reads)
      expect(
        kind(of).tests.flatMap((test) => test.gauge?.key ?? []),
        `${of} ${gauge}`,
      ).toContain(gauge);
    for (const { kinds, key, value } of answers)
      for (const of of kinds) {
        const detail = kind(of).details?.find((one) => one.key === key);
        if (!detail) throw new Error(`${of} is not asked for ${key}`);
        if ('choices' in detail) expect(Object.keys(detail.choices), `${of} ${key}`).toContain(value);
        else {
          expect(value, `${of} ${key}`).toBeGreaterThanOrEqual(detail.range[0]);
          expect(value, `${of} ${key}`).toBeLessThanOrEqual(detail.range[1]);
        }
      }
  });

  it('renews what is filled or fitted, uses what goes by use, and does neither twice', () => {
    const { renews = [], services = [], uses = [] } = step.records ?? {};
    for (const key of renews) expect(['filled', 'fitted']).toContain(kind(key).clock);
    for (const key of uses) expect(kind(key).clock).toBe('used');
    const all = [...renews, ...services, ...uses];
    expect(new Set(all).size).toBe(all.length);
    if (step.topic) expect(TOPICS).toHaveProperty(step.topic);
  });
});

/** Conditions of steps, looks and defaults, with who has them. */
const CONDITIONS: readonly (readonly [string, When])[] = [
  ...EVERY.flatMap(([name, { when }]) => when.map((one) => [name, one] as const)),
  ...LOOKS.flatMap(({ key, when }) => when.map((one) => [`look: ${key}`, one] as const)),
  ...Object.entries(TOPICS as Record<string, Topic>).flatMap(([key, { defaults }]) =>
    defaults.flatMap(({ when }) => when.map((one) => [`topic: ${key}`, one] as const)),
  ),
];

describe('conditions', () => {
  it.each(CONDITIONS)('of %s name what exists', (_, when) => {
    for (const trait of [...(when.traits ?? []), ...(when.without ?? [])]) expect(TRAITS).toContain(trait);
    for (const one of [...(when.circumstances ?? []), ...(when.spared ?? [])])
      expect(CIRCUMSTANCES).toHaveProperty(one);
    for (const key of when.part?.kinds ?? []) kind(key);
    for (const key of [...(when.done ?? []), ...(when.undone ?? []), ...(when.untold ?? [])])
      expect(LAY_UP_KEYS).toContain(key);
    if (when.side) {
      const sides = (TOPICS as Record<string, Topic>)[when.side.topic]?.sides ?? {};
      expect(when.side.is.length).toBeGreaterThan(0);
      for (const side of when.side.is) expect(sides).toHaveProperty(side);
    }
    const { from, under } = when.months ?? {};
    if (from !== undefined && under !== undefined) expect(from).toBeLessThan(under);
  });

  it('never ask for two traits of which a car has one', () => {
    for (const [name, { traits = [] }] of CONDITIONS)
      for (const { choose, traits: facet } of FACETS)
        if (choose === 'one') expect(traits.filter((trait) => trait in facet).length, name).toBeLessThanOrEqual(1);
  });

  it('of a lay-up ask for nothing that only the wake-up knows', () => {
    for (const { key, when } of LAY_UP_STEPS)
      for (const { done, undone, untold, found } of when) expect({ done, undone, untold, found }, key).toEqual({});
  });

  it('go by parts that a car of these traits has', () => {
    for (const [name, { traits = [], part }] of CONDITIONS) {
      if (!part) continue;
      const has = allTraits(traits);
      const excluded = part.kinds.filter((key) =>
        kind(key).applies.some((trait) =>
          FACETS.some(
            ({ choose, traits: facet }) =>
              choose === 'one' && trait in facet && [...has].some((one) => one in facet && one !== trait),
          ),
        ),
      );
      expect(excluded.length, name).toBeLessThan(part.kinds.length);
    }
  });
});

describe('looks', () => {
  it.each(LOOKS.map((look) => [look.key, look] as const))(
    '%s has a good answer, says what to do on a bad one, and names sources that exist',
    (_, { answers, cautions, sources }) => {
      const told = Object.values(answers);
      expect(told.some(({ verdict }) => verdict === 'good')).toBe(true);
      for (const { verdict, todo } of told) if (verdict === 'act') expect(todo).toMatch(/\.$/);
      for (const { verdict, todo } of told) if (verdict === 'good') expect(todo).toBeUndefined();
      for (const caution of cautions) expect(CAUTIONS).toHaveProperty(caution);
      for (const source of sources) expect(SOURCES).toHaveProperty(source);
    },
  );

  it('have keys of their own', () => expect(new Set(LOOKS.map(({ key }) => key)).size).toBe(LOOKS.length));
});

describe('work that needs a caution', () => {
  const has = (rows: readonly Step[], keys: readonly string[], caution: string): void => {
    for (const key of keys) expect(rows.find((row) => row.key === key)?.cautions, key).toContain(caution);
  };

  it('under the car, with fuel, at the brakes, at the battery and with gas names it', () => {
    has(LAY_UP_STEPS, ['stands', 'wheels-off', 'sprung-by-gas', 'brake-fluid', 'oil-change', 'grease'], 'lifting');
    has(LAY_UP_STEPS, ['diesel-fill', 'drain-tank', 'carburetor-dry'], 'fuel-vapor');
    has(LAY_UP_STEPS, ['fuel-low', 'fuel-fill'], 'at-the-pump');
    has(LAY_UP_STEPS, ['brake-fluid', 'silicone-fluid', 'mineral-hydraulics'], 'brake-work');
    has(LAY_UP_STEPS, ['battery-maintainer', 'battery-off', 'battery-out', 'battery-left'], 'battery-gas');
    has(LAY_UP_STEPS, ['gas-valve'], 'gas-fuel');
    has(LAY_UP_STEPS, ['carburetor-dry', 'oil-change'], 'carbon-monoxide');
    has(LAY_UP_STEPS, ['cylinder-oil'], 'hydraulic-lock');
    has(LAY_UP_STEPS, ['close-holes', 'traps'], 'droppings');
    has(WAKE_UP_STEPS, ['first-start'], 'carbon-monoxide');
    has(WAKE_UP_STEPS, ['fuel-sample', 'fuel-drain', 'tank-refill', 'first-start', 'carburetor'], 'fuel-vapor');
    has(WAKE_UP_STEPS, ['expel-oil', 'turn-by-hand', 'turn-diesel'], 'hydraulic-lock');
    has(WAKE_UP_STEPS, ['out-of-gear'], 'rolling');
    has(WAKE_UP_STEPS, ['stands-out', 'wheels-on', 'oil', 'brake-fluid', 'brake-stuck'], 'lifting');
    has(WAKE_UP_STEPS, ['brake-stuck'], 'brake-dust');
  });
});
