/** Any day, part, car and override, for property tests. */
import fc from 'fast-check';
import { AIRS, type Place, SHELTERS } from '../../src/ageing/place.ts';
import { CLOCKS } from '../../src/catalogue/clock.ts';
import type { Detail, Gauge } from '../../src/catalogue/gauge.ts';
import type { Kind } from '../../src/catalogue/kind.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import type { DateRange } from '../../src/dates/partial-date.ts';
import {
  type Answers,
  type CarFacts,
  type Claim,
  EVIDENCE,
  type Override,
  type PartFacts,
  type Reading,
} from '../../src/findings/facts.ts';
import { gaugesOf } from '../../src/findings/measured.ts';
import { CAR_ID, kindOf } from './parts.ts';

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

/** A place with any climate on earth, now and then with months somebody measured. */
export const anyPlace: fc.Arbitrary<Place> = fc
  .record({
    winterLow: fc.integer({ min: -45, max: 20 }),
    warmer: fc.integer({ min: 1, max: 35 }),
    air: fc.constantFrom(...AIRS),
    shelter: fc.constantFrom(...SHELTERS),
    humidity: fc.option(fc.integer({ min: 5, max: 100 }), { nil: null }),
    heatedTo: fc.option(fc.integer({ min: 0, max: 25 }), { nil: null }),
    hemisphere: fc.constantFrom('north' as const, 'south' as const),
    months: fc.array(fc.option(fc.integer({ min: -40, max: 40 }), { nil: null, freq: 1 }), {
      minLength: 12,
      maxLength: 12,
    }),
  })
  .map(({ warmer, ...place }) => ({ ...place, summerHigh: place.winterLow + warmer }));

/** A value an instrument can show: most often a usual one or on the edge of a band. */
const anyValue = ({ range: [low, high], usual, bands }: Gauge): fc.Arbitrary<number> => {
  const usuals = 'of' in usual ? Object.values(usual.of) : [usual];
  const zones = ('by' in bands ? Object.values(bands.of) : [bands]).flatMap(({ good, watch }) => [good, watch ?? {}]);
  const edges = zones
    .flatMap(({ from, to, under }) => [from, to, under])
    .filter((edge) => edge !== undefined)
    .filter((edge) => edge >= low && edge <= high);
  return fc.oneof(
    ...usuals.map(([from, to]) => fc.double({ min: from, max: to, noNaN: true })),
    fc.double({ min: low, max: high, noNaN: true }),
    ...(edges.length > 0 ? [fc.constantFrom(...edges)] : []),
  );
};

/** A reading of one of a kind’s gauges; its temperature is not always taken, and now and then it is written down later. */
const anyReading = (kind: Kind): fc.Arbitrary<Reading> =>
  fc.constantFrom(...gaugesOf(kind)).chain(({ gauge }) =>
    fc
      .record({
        gauge: fc.constant(gauge.key),
        day: dayBetween('2015-01-01', '2030-12-31'),
        value: anyValue(gauge),
        warmth: fc.option(fc.double({ min: -40, max: 60, noNaN: true }), { nil: null }),
        unit: fc.constant(gauge.unit),
        later: fc.oneof(fc.constant(0), fc.nat(120)),
      })
      .map(({ later, ...read }) => ({ ...read, recordedOn: addDays(read.day, later) })),
  );

/** Readings of a kind as the store gives them, oldest first. */
export const anyReadings = (kind: Kind): fc.Arbitrary<Reading[]> =>
  gaugesOf(kind).length === 0
    ? fc.constant([])
    : fc
        .array(anyReading(kind), { maxLength: 6 })
        .map((list) => list.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)));

const anyAnswer = (detail: Detail): fc.Arbitrary<string | number> =>
  'choices' in detail
    ? fc.constantFrom(...Object.keys(detail.choices))
    : fc.double({ min: detail.range[0], max: detail.range[1], noNaN: true });

/** Answers to some of a kind’s questions. */
export const anyAnswers = ({ details = [] }: Kind): fc.Arbitrary<Answers> =>
  fc
    .tuple(...details.map((detail) => fc.option(fc.tuple(fc.constant(detail.key), anyAnswer(detail)), { freq: 3 })))
    .map((answers) => Object.fromEntries(answers.filter((one) => one !== null)));

/** A part of any kind with any dates, readings and answers. */
export const anyReadPart: fc.Arbitrary<PartFacts> = anyPart.chain((part) =>
  fc
    .record({ readings: anyReadings(kindOf(part.kind)), details: anyAnswers(kindOf(part.kind)) })
    .map((read) => ({ ...part, ...read })),
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
    return {
      id: CAR_ID,
      built,
      odometer: days.map((day, index) => ({ day, km: km[index] ?? 0 })),
      place: null,
      placedOn: null,
    };
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

/** A car that stands anywhere, or nobody has said where, and draws what was measured, if it was. */
export const anyPlacedCar: fc.Arbitrary<CarFacts> = fc
  .tuple(
    anyCar,
    fc.option(fc.tuple(anyPlace, dayBetween('2014-01-01', '2031-12-31')), { nil: null }),
    fc.option(fc.integer({ min: 0, max: 500 }), { nil: undefined }),
  )
  .map(([car, stands, drain]) => ({
    ...car,
    place: stands?.[0] ?? null,
    placedOn: stands?.[1] ?? null,
    ...(drain === undefined ? {} : { drain }),
  }));

/** What is known of them on a day: no reading that is not written down yet, no place the car is not put to yet. */
export const knownOn = (part: PartFacts, car: CarFacts, on: CivilDate): { part: PartFacts; car: CarFacts } => {
  const isPlaced = car.placedOn !== null && car.placedOn <= on;
  return {
    part: { ...part, readings: part.readings.filter(({ recordedOn }) => recordedOn <= on) },
    car: isPlaced ? car : { ...car, place: null, placedOn: null },
  };
};
