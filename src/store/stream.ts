import type { Statement } from 'better-sqlite3';
import type { CivilDate } from '../dates/civil.ts';
import type { CarFacts, Claim, PartFacts } from '../findings/facts.ts';
import type { Store } from './open.ts';

export interface CarStreamed {
  name: string;
  traits: readonly string[];
  facts: CarFacts;
  parts: PartFacts[];
}

export const CARS = `
  select id, name, traits, built_from as builtFrom, built_to as builtTo from cars
  where collection_id = ? order by id`;

/** The plus keeps SQLite from walking the collection's whole index of claims for each car to be spared sorting a few. */
export const PARTS = `
  select parts.id, kind, position, clock, said, from_day as "from", to_day as "to", evidence, km
  from parts
  left join claims on claims.collection_id = parts.collection_id and claims.part_id = parts.id and withdrawn_on is null
  where parts.collection_id = ? and car_id = ? and closed_on is null
  order by parts.id, +claims.id`;

export const ODOMETER = 'select day, km from odometer where collection_id = ? and car_id = ? order by day';

interface CarLine {
  id: string;
  name: string;
  traits: string;
  builtFrom: CivilDate | null;
  builtTo: CivilDate | null;
}

type PartLine = Omit<PartFacts, 'claims'> & { [K in keyof Claim]: Claim[K] | null };

/** Walks a collection car by car; what it holds in memory is one car, however many there are. */
export function* eachCar(store: Store, collectionId: string): Generator<CarStreamed> {
  const sqlite = store.$client;
  const parts = sqlite.prepare(PARTS) as Statement<[string, string], PartLine>;
  const readings = sqlite.prepare(ODOMETER) as Statement<[string, string], { day: CivilDate; km: number }>;
  for (const car of (sqlite.prepare(CARS) as Statement<[string], CarLine>).iterate(collectionId))
    yield {
      name: car.name,
      traits: JSON.parse(car.traits) as string[],
      facts: {
        id: car.id,
        built: { from: car.builtFrom, to: car.builtTo },
        odometer: readings.all(collectionId, car.id),
      },
      parts: gather(parts.all(collectionId, car.id)),
    };
}

/** One line a claim becomes one entry a part. */
const gather = (lines: readonly PartLine[]): PartFacts[] => {
  const parts: (PartFacts & { claims: Claim[] })[] = [];
  for (const { id, kind, position, clock, said, from, to, evidence, km } of lines) {
    let part = parts.at(-1);
    if (part?.id !== id) {
      part = { id, kind, position, claims: [] };
      parts.push(part);
    }
    if (clock && said && evidence) part.claims.push({ clock, said, from, to, evidence, km });
  }
  return parts;
};
