import type { Statement } from 'better-sqlite3';
import { type CivilDate, isCivilDate } from '../dates/civil.ts';
import type { CarFacts, Claim, PartFacts, Reading } from '../findings/facts.ts';
import type { Store } from './open.ts';
import { findPlace, type PlaceRow } from './places.ts';

export interface CarStreamed {
  name: string;
  traits: readonly string[];
  facts: CarFacts;
  /** Where it is known to stand. */
  place: PlaceRow | null;
  parts: PartFacts[];
  /** What of its record can’t be read: kinds of parts, “traits”, “place” and so on. */
  unreadable: string[];
}

export const CARS = `
  select id, name, traits, built_from as builtFrom, built_to as builtTo, place_id as placeId, since as placedOn
  from cars
  left join car_places on car_places.collection_id = cars.collection_id and car_id = id
  where cars.collection_id = ? and ours and left_on is null order by id`;

/** The plus keeps SQLite from walking the collection's whole index of claims for each car to be spared sorting a few. */
export const PARTS = `
  select parts.id, kind, position, details, clock, said, from_day as "from", to_day as "to", evidence, km
  from parts
  left join claims on claims.collection_id = parts.collection_id and claims.part_id = parts.id and withdrawn_on is null
  where parts.collection_id = ? and car_id = ? and closed_on is null
  order by parts.id, +claims.id`;

export const READINGS = `
  select part_id as partId, gauge, readings.day, value, unit, warmth, recorded_on as recordedOn
  from parts
  join readings on readings.collection_id = parts.collection_id and part_id = parts.id and withdrawn_on is null
  where parts.collection_id = ? and car_id = ? and closed_on is null
  order by readings.day, +readings.id`;

export const ODOMETER = 'select day, km from odometer where collection_id = ? and car_id = ? order by day';

interface CarLine {
  id: string;
  name: string;
  traits: string;
  builtFrom: CivilDate | null;
  builtTo: CivilDate | null;
  placeId: string | null;
  placedOn: CivilDate | null;
}

type PartLine = Pick<PartFacts, 'id' | 'kind' | 'position'> & { details: string } & {
  [K in keyof Claim]: Claim[K] | null;
};
type ReadingLine = Reading & { partId: string };

/** Walks a collection car by car; what it holds in memory is one car and the places, however many there are. */
export function* eachCar(store: Store, collectionId: string): Generator<CarStreamed> {
  const sqlite = store.$client;
  const parts = sqlite.prepare(PARTS) as Statement<[string, string], PartLine>;
  const readings = sqlite.prepare(READINGS) as Statement<[string, string], ReadingLine>;
  const odometer = sqlite.prepare(ODOMETER) as Statement<[string, string], { day: CivilDate; km: number }>;
  const places = new Map<string, PlaceRow | null>();
  const placeBehind = (id: string): PlaceRow | null => {
    if (!places.has(id))
      places.set(
        id,
        orNull(() => findPlace(store, collectionId, id) ?? null),
      );
    return places.get(id) ?? null;
  };
  for (const car of (sqlite.prepare(CARS) as Statement<[string], CarLine>).iterate(collectionId)) {
    const traits = read<string[]>(car.traits);
    const place = car.placeId ? placeBehind(car.placeId) : null;
    const isDated = [car.builtFrom, car.builtTo, car.placedOn].every(isDay);
    const kms = odometer.all(collectionId, car.id);
    const sound = kms.filter(({ day, km }) => isDay(day) && isNumber(km));
    const gathered = gather(parts.all(collectionId, car.id), readings.all(collectionId, car.id));
    yield {
      name: car.name,
      traits: traits ?? [],
      place,
      facts: {
        id: car.id,
        built: isDated ? { from: car.builtFrom, to: car.builtTo } : { from: null, to: null },
        odometer: sound,
        place,
        placedOn: isDated ? car.placedOn : null,
      },
      parts: gathered.parts,
      unreadable: [
        ...(traits ? [] : ['traits']),
        ...(isDated ? [] : ['build date or day in its place']),
        ...(sound.length === kms.length ? [] : ['odometer']),
        ...(car.placeId && !place ? ['place'] : []),
        ...gathered.unreadable,
      ],
    };
  }
}

const NONE = {};

/** Most parts have no answers: those cost no parsing. Null where they are damaged: one part must not stop the walk. */
const answersIn = (json: string): PartFacts['details'] | null => (json === '{}' ? NONE : read(json));

const read = <T>(json: string): T | null => orNull(() => JSON.parse(json));

const orNull = <T>(read: () => T): T | null => {
  try {
    return read();
  } catch {
    return null;
  }
};

/** A day that is none would be compared as text or roll over, and could clear the part; so could a number that is none. */
const isSound = ({ from, to, km }: Pick<PartLine, 'from' | 'to' | 'km'>): boolean =>
  isDay(from) && isDay(to) && isNumber(km ?? 0);

const isSoundReading = ({ day, value, warmth }: ReadingLine): boolean =>
  isCivilDate(day) && isNumber(value) && isNumber(warmth ?? 0);

const isDay = (day: string | null): boolean => day === null || isCivilDate(day);
const isNumber = (value: unknown): boolean => typeof value === 'number';

/** One line a claim becomes one entry a part. */
const gather = (
  lines: readonly PartLine[],
  readings: readonly ReadingLine[],
): Pick<CarStreamed, 'parts' | 'unreadable'> => {
  const parts: (PartFacts & { claims: Claim[] })[] = [];
  const unreadable = new Map<string, string>();
  const byPart = Map.groupBy(readings, ({ partId }) => partId);
  const damaged = new Set(readings.filter((reading) => !isSoundReading(reading)).map(({ partId }) => partId));
  for (const { id, kind, position, details, clock, said, from, to, evidence, km } of lines) {
    let part = parts.at(-1);
    if (unreadable.has(id)) continue;
    if (damaged.has(id) || !isSound({ from, to, km })) {
      unreadable.set(id, kind);
      if (part?.id === id) parts.pop();
      continue;
    }
    if (part?.id !== id) {
      const answers = answersIn(details);
      if (!answers) {
        unreadable.set(id, kind);
        continue;
      }
      part = { id, kind, position, claims: [], readings: byPart.get(id) ?? [], details: answers };
      parts.push(part);
    }
    if (clock && said && evidence) part.claims.push({ clock, said, from, to, evidence, km });
  }
  return { parts, unreadable: [...unreadable.values()] };
};
