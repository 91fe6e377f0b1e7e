/** Any day, part, car and override, for property tests. */
import fc from 'fast-check';
import { CLOCKS } from '../../src/catalogue/clock.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import type { DateRange } from '../../src/dates/partial-date.ts';
import { type CarFacts, type Claim, EVIDENCE, type Override, type PartFacts } from '../../src/findings/facts.ts';
import { CAR_ID } from './parts.ts';

export const dayBetween = (from: CivilDate, to: CivilDate): fc.Arbitrary<CivilDate> =>
  fc.integer({ min: 0, max: daysBetween(from, to) }).map((days) => addDays(from, days));

/** Days a car can be built, and its parts made, fitted and looked at. */
export const anyDay = dayBetween('1950-01-01', '2030-12-31');

/** A day, a span, or one open at either end; rarely both. */
export const anyRange: fc.Arbitrary<DateRange> = fc.oneof(
  { weight: 3, arbitrary: anyDay.map((day) => ({ from: day, to: day })) },
  {
    weight: 3,
    arbitrary: fc.tuple(anyDay, fc.integer({ min: 0, max: 9000 })).map(([from, days]) => ({
      from,
      to: addDays(from, days),
    })),
  },
  { weight: 1, arbitrary: anyDay.map((to) => ({ from: null, to })) },
  { weight: 1, arbitrary: anyDay.map((from) => ({ from, to: null })) },
);

export const anyKind = fc.constantFrom(...KINDS.values());
const anyKm = fc.option(fc.integer({ min: 0, max: 400_000 }), { nil: null });
const anyEvidence = fc.constantFrom(...EVIDENCE);

export const anyClaim: fc.Arbitrary<Claim> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc
      .tuple(fc.constantFrom(...CLOCKS), anyRange, anyEvidence, anyKm)
      .map(([clock, range, evidence, km]) => ({ clock, said: 'date' as const, ...range, evidence, km })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        fc.constantFrom(...CLOCKS),
        fc.constantFrom('original' as const, 'unknown' as const, 'not looked' as const),
        anyEvidence,
        anyKm,
      )
      .map(([clock, said, evidence, km]) => ({ clock, said, from: null, to: null, evidence, km })),
  },
);

/** A part of any kind; its claims are most often on the clocks the kind goes by. */
export const anyPart: fc.Arbitrary<PartFacts> = anyKind.chain((kind) =>
  fc
    .array(
      fc
        .tuple(anyClaim, fc.constantFrom(kind.clock, kind.clock, kind.fallback ?? 'serviced', null))
        .map(([claim, clock]) => (clock ? { ...claim, clock } : claim)),
      { maxLength: 4 },
    )
    .map((claims) => ({
      id: 'part',
      kind: kind.key,
      position: kind.positions?.[0] ?? null,
      claims,
      readings: [],
      details: {},
    })),
);

/** A car of any age, its odometer never running backwards. */
export const anyCar: fc.Arbitrary<CarFacts> = fc
  .tuple(
    fc.option(anyRange, { nil: { from: null, to: null } }),
    fc.array(fc.tuple(anyDay, fc.integer({ min: 0, max: 400_000 })), { maxLength: 5 }),
  )
  .map(([built, readings]) => {
    const days = [...new Set(readings.map(([day]) => day))].sort();
    const km = readings.map(([, reading]) => reading).sort((a, b) => a - b);
    return { id: CAR_ID, built, odometer: days.map((day, index) => ({ day, km: km[index] ?? 0 })), place: null };
  });

/** An interval of the owner's for a kind: any figures that can be. */
export const anyOverride = (kind: string): fc.Arbitrary<Override> =>
  fc
    .record({
      carId: fc.constantFrom(CAR_ID, null),
      authority: fc.constantFrom('handbook' as const, 'own' as const),
      look: fc.option(fc.integer({ min: 1, max: 400 }), { nil: null }),
      replace: fc.option(fc.integer({ min: 1, max: 400 }), { nil: null }),
      replaceByKm: fc.option(fc.integer({ min: 1000, max: 200_000 }), { nil: null }),
    })
    .map(({ carId, authority, look, replace, replaceByKm }) => ({
      carId,
      kind,
      authority,
      lookFrom: look !== null && replace !== null ? Math.min(look, replace) : look,
      replaceBy: replace,
      replaceByKm,
      note: '',
    }));
