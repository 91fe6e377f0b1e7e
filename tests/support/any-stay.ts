/** Any stay as a recipe: short to read where a property fails. */
import fc from 'fast-check';
import { partsFor } from '../../src/catalogue/kinds.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import { addDays } from '../../src/dates/civil.ts';
import type { PartFacts } from '../../src/findings/facts.ts';
import type { StayFacts } from '../../src/plans/standing.ts';
import { CIRCUMSTANCES, type Circumstance, NO_PAPERS, type Stay } from '../../src/plans/stay.ts';
import { TOPICS } from '../../src/plans/topics.ts';
import { anyAnswers, anyPlace, dayBetween } from './arbitraries.ts';
import { CAR_ID, carOf, dated, kindOf, said } from './parts.ts';

/** Some topics with one of their sides, now and then one that is none. */
const anyChoices = fc
  .tuple(
    ...Object.entries(TOPICS).map(([topic, { sides }]) =>
      fc.option(fc.tuple(fc.constant(topic), fc.constantFrom(...Object.keys(sides), 'no such side')), { freq: 2 }),
    ),
  )
  .map((chosen) => Object.fromEntries(chosen.filter((one) => one !== null)));

const anyNumbers = fc.record(
  {
    dose: fc.double({ min: 2, max: 200, noNaN: true }),
    engine: fc.double({ min: 0.2, max: 12, noNaN: true }),
    cylinders: fc.integer({ min: 1, max: 16 }),
  },
  { requiredKeys: [] },
);

/** Kinds whose answers a plan reckons with. */
const ANSWERED = [
  ...['fuel-gasoline', 'fuel-diesel', 'tires-road', 'coolant-iat', 'coolant-oat'],
  ...['battery-flooded', 'battery-agm', 'battery-lithium'],
];
const anyDetails = fc.record(
  Object.fromEntries(ANSWERED.map((kind) => [kind, anyAnswers(kindOf(kind))])) as Record<
    string,
    fc.Arbitrary<PartFacts['details']>
  >,
  { requiredKeys: [] },
);

const swap = (traits: readonly string[], family: RegExp, to: string | null): string[] =>
  to === null || !traits.some((trait) => family.test(trait))
    ? [...traits]
    : [...traits.filter((trait) => !family.test(trait)), to];

const anyTraits = fc
  .tuple(
    fc.constantFrom(...QUICK_STARTS),
    fc.constantFrom(null, 'battery-flooded', 'battery-agm', 'battery-lithium', 'no-battery'),
    fc.constantFrom(null, 'silicone-fluid'),
  )
  .map(([{ traits }, battery, fluid]) =>
    swap(swap(traits, /^(battery-(flooded|agm|lithium)|no-battery)$/, battery), /^glycol-fluid$/, fluid),
  );

/** Of any usual car, a few chosen otherwise; anywhere or nobody has said; no day at all to five years, or open. */
const anyRecipe = fc.record({
  traits: anyTraits,
  place: fc.option(anyPlace, { nil: null, freq: 4 }),
  parkedOn: dayBetween('2018-01-01', '2032-12-31'),
  length: fc.option(fc.oneof(fc.nat(100), fc.nat(400), fc.nat(1826)), { nil: null }),
  /** Days before the parking day that the plan was made. */
  ahead: fc.integer({ min: -30, max: 120 }),
  circumstances: fc.subarray(Object.keys(CIRCUMSTANCES) as Circumstance[]),
  choices: fc.oneof(fc.constant({}), anyChoices),
  numbers: anyNumbers,
  drain: fc.option(fc.nat(500), { nil: null }),
  /** Ages of the parts on the parking day in days, dealt out in turn; null: undated. */
  ages: fc.array(fc.option(fc.nat(7300), { nil: null, freq: 4 }), { minLength: 7, maxLength: 11 }),
  details: anyDetails,
});
export type StayRecipe = typeof anyRecipe extends fc.Arbitrary<infer T> ? T : never;
export const anyStay: fc.Arbitrary<StayRecipe> = anyRecipe;

/** The stay of a recipe, changed in some ways. */
export const made = (recipe: StayRecipe, more: Partial<Stay> = {}, beside: Partial<StayFacts> = {}): StayFacts => {
  const { traits, place, parkedOn, length, ahead, circumstances, choices, numbers, drain, ages, details } = recipe;
  return {
    stay: {
      id: 'stay',
      carId: CAR_ID,
      parkedOn,
      returnOn: length === null ? null : addDays(parkedOn, length),
      madeOn: addDays(parkedOn, -ahead),
      place,
      traits,
      circumstances,
      choices,
      numbers,
      papers: NO_PAPERS,
      ...more,
    },
    car: carOf(drain === null ? {} : { drain }),
    parts: partsFor(traits).map(({ kind, position }, n) => {
      const age = ages[n % ages.length] ?? null;
      const { clock } = kindOf(kind);
      return {
        id: `part-${n}`,
        kind,
        position,
        claims: [age === null ? said(clock, 'unknown') : dated(clock, addDays(parkedOn, -age))],
        readings: [],
        details: details[kind] ?? {},
      };
    }),
    overrides: [],
    ticks: [],
    own: [],
    rounds: [],
    ...beside,
  };
};
