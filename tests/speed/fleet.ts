/** A made-up fleet that is the same on every run: cars of every quick start, dated the way people date them. */

import { ASSUMED } from '../../src/ageing/place.ts';
import type { Clock } from '../../src/catalogue/clock.ts';
import { KINDS, partsFor } from '../../src/catalogue/kinds.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import type { Unit } from '../../src/catalogue/units.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { type Answers, type Claim, EVIDENCE } from '../../src/findings/facts.ts';
import type { Store } from '../../src/store/open.ts';
import { addCollection } from '../../src/store/people.ts';
import { addPlace } from '../../src/store/places.ts';

export interface Fleet {
  collectionId: string;
  /** Adds whole cars until there are at least so many parts or cars. */
  growTo(least: { parts?: number; cars?: number }): void;
  cars(): number;
  parts(): number;
}

const ADDED_ON: CivilDate = '2026-01-01';
/** The newest year a claim states. */
const LAST_YEAR = 2025;

export const createFleet = (store: Store): Fleet => {
  const { collectionId } = addCollection(
    store,
    { name: 'Speed', timeZone: 'UTC' },
    { name: 'Ada', email: null, dateOrder: 'ask' },
  );
  const insert = statements(store, collectionId);
  const dice = createDice(1);
  let cars = 0;
  let parts = 0;
  let claims = 0;
  let readings = 0;
  const placeId = addPlace(store, collectionId, { ...ASSUMED, name: 'Barn', note: '' });

  const addCar = (): void => {
    const { name, traits } = dice.of<(typeof QUICK_STARTS)[number]>(QUICK_STARTS);
    const id = idOf(++cars);
    const built = dice.whole(1930, 2005);
    insert.car.run(id, `${name} ${cars}`, built, `${built}-01-01`, `${built}-12-31`, JSON.stringify(traits));
    insert.place.run(id, placeId);
    for (let year = 2015, km = 50_000; year <= LAST_YEAR; year += dice.whole(1, 4), km += 1_500)
      insert.reading.run(id, `${year}-06-01`, km);
    for (const { kind, position } of partsFor(traits)) {
      const partId = idOf(++parts);
      const read = READ[kind];
      insert.part.run(partId, id, kind, position, JSON.stringify(read?.details ?? {}));
      for (let month = 1; read && month <= read.months; month++)
        insert.measured.run(
          idOf(++readings),
          partId,
          read.gauge,
          `2026-${two(month)}-15`,
          read.from - month * read.falls,
          read.unit,
          `2026-${two(month)}-15`,
        );
      for (const { clock, said, from, to, evidence, km } of claimsOn(dice, kind, built))
        insert.claim.run(idOf(++claims), partId, clock, said, from, to, evidence, km);
    }
  };

  return {
    collectionId,
    growTo: (least) => {
      store.$client.transaction(() => {
        while (parts < (least.parts ?? 0) || cars < (least.cars ?? 0)) addCar();
      })();
      // A collection grows over years, not in one transaction: none of it would still be read from the log.
      store.$client.pragma('wal_checkpoint(TRUNCATE)');
    },
    cars: () => cars,
    parts: () => parts,
  };
};

/** What the monthly round reads, month by month, and what is told of those parts. */
const READ: Readonly<
  Record<string, { gauge: string; unit: Unit; from: number; falls: number; months: number; details: Answers }>
> = {
  'battery-flooded': {
    gauge: 'rest-voltage',
    unit: 'V',
    from: 12.7,
    falls: 0.02,
    months: 10,
    details: { chemistry: 'calcium', capacity: 60, connection: 'connected', drain: 20 },
  },
  'tires-road': {
    gauge: 'cold-pressure',
    unit: 'bar',
    from: 2.4,
    falls: 0.05,
    months: 10,
    details: { placard: 2.3 },
  },
  'brake-fluid-glycol': {
    gauge: 'boiling-point',
    unit: '°C',
    from: 220,
    falls: 5,
    months: 1,
    details: { grade: 'dot-4' },
  },
  'fuel-gasoline': { gauge: '', unit: '%', from: 0, falls: 0, months: 0, details: { blend: 'e10', stabilized: 'no' } },
};

/** As long as a real id, and rising like one. */
const idOf = (n: number): string => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`;

const statements = (store: Store, collectionId: string) => {
  const prepare = (table: string, columns: string, values: string) =>
    store.$client.prepare(`insert into ${table} (collection_id, ${columns}) values ('${collectionId}', ${values})`);
  return {
    car: prepare(
      'cars',
      'id, name, built_typed, built_from, built_to, traits, note, added_on',
      `?, ?, ?, ?, ?, ?, '', '${ADDED_ON}'`,
    ),
    reading: prepare('odometer', 'car_id, day, km', '?, ?, ?'),
    place: prepare('car_places', 'car_id, place_id, since', `?, ?, '${ADDED_ON}'`),
    part: prepare('parts', 'id, car_id, kind, position, details, note, opened_on', `?, ?, ?, ?, ?, '', '${ADDED_ON}'`),
    measured: prepare(
      'readings',
      'id, part_id, gauge, day, value, unit, recorded_on, typed, instrument, note',
      "?, ?, ?, ?, ?, ?, ?, '', '', ''",
    ),
    claim: prepare(
      'claims',
      'id, part_id, clock, said, from_day, to_day, evidence, km, typed, note, recorded_on',
      `?, ?, ?, ?, ?, ?, ?, ?, '', '', '${ADDED_ON}'`,
    ),
  };
};

/** One claim on the kind's clock or the one that stands in for it; for half of the parts a second one, on any clock. */
const claimsOn = (dice: Dice, key: string, built: number): Claim[] => {
  const kind = KINDS.get(key);
  if (!kind) return [];
  const clock = kind.fallback && dice.chance(0.4) ? kind.fallback : kind.clock;
  const first = claimOn(dice, clock, built);
  if (dice.chance(0.5)) return [first];
  return [first, claimOn(dice, dice.of<Clock>(['made', 'fitted', 'filled', 'serviced', clock]), built)];
};

const claimOn = (dice: Dice, clock: Clock, built: number): Claim => {
  const chance = dice.next();
  const said = chance < 0.06 ? 'unknown' : chance < 0.1 ? 'not looked' : chance < 0.18 ? 'original' : 'date';
  return {
    clock,
    said,
    ...(said === 'date' ? rangeIn(dice, clock, built) : { from: null, to: null }),
    evidence: dice.of(EVIDENCE),
    km: dice.chance(0.3) ? 40_000 + dice.whole(0, 20_000) : null,
  };
};

/** A day, a month or a year; months end on the 28th, so that none is too long. */
const rangeIn = (dice: Dice, clock: Clock, built: number): { from: CivilDate; to: CivilDate } => {
  const year = clock === 'printed' ? dice.whole(2022, 2034) : dice.whole(Math.max(built, 1995), LAST_YEAR);
  const month = `${year}-${two(dice.whole(1, 12))}`;
  const [from, to] = dice.of([
    [`${month}-15`, `${month}-15`],
    [`${month}-01`, `${month}-28`],
    [`${year}-01-01`, `${year}-12-31`],
  ] as const);
  return { from: from as CivilDate, to: to as CivilDate };
};

const two = (n: number): string => String(n).padStart(2, '0');

interface Dice {
  /** From 0 up to but not 1. */
  next(): number;
  chance(share: number): boolean;
  of<T>(list: readonly T[]): T;
  whole(from: number, to: number): number;
}

/** Mulberry32: chance that repeats itself. */
const createDice = (seed: number): Dice => {
  let state = seed;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    next,
    chance: (share) => next() < share,
    of: <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T,
    whole: (from, to) => from + Math.floor(next() * (to - from + 1)),
  };
};
