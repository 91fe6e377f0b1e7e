/** Assessing a collection beside merely reading its rows, and the memory either needs, as the collection grows. */
import type { CivilDate } from '../../src/dates/civil.ts';
import { findingsOf, summaryOf } from '../../src/findings/car.ts';
import { STANDINGS, type Standing } from '../../src/findings/standing.ts';
import type { Store } from '../../src/store/open.ts';
import { CARS, eachCar, ODOMETER, PARTS, READINGS } from '../../src/store/stream.ts';
import type { Fleet } from './fleet.ts';
import { heapInMb, inTurns, printTable, residentInMb, tenths, times, whole } from './measure.ts';

export const ON: CivilDate = '2026-11-25';
/** Cars at which memory is looked at during one walk. */
const SAMPLES = 20;

export const timeAssessing = async (store: Store, fleet: Fleet, sizes: readonly number[]): Promise<void> => {
  const speed = [['Parts', 'cars', 'claims', 'assessed/s', 'assess ms', 'gather ms', 'read ms', 'assess : read']];
  const memory = [['Parts', 'heap MB, most', 'resident MB, most']];
  let counts: Readonly<Record<Standing, number>> | undefined;
  for (const size of sizes) {
    fleet.growTo({ parts: size });
    const { collectionId } = fleet;
    const claims = store.$client.prepare('select count(*) from claims').pluck().get() as number;
    const most = walkForMemory(store, fleet);
    const { assess, gather, read } = await inTurns(size > 100_000 ? 3 : 15, {
      read: () => readRows(store, collectionId),
      gather: () => gatherParts(store, collectionId),
      assess: () => {
        counts = assessAll(store, collectionId);
      },
    });
    speed.push([
      whole(fleet.parts()),
      whole(fleet.cars()),
      whole(claims),
      whole((fleet.parts() / assess) * 1000),
      tenths(assess),
      tenths(gather),
      tenths(read),
      times(assess / read),
    ]);
    memory.push([whole(fleet.parts()), tenths(most.heap), tenths(most.resident)]);
  }
  printTable('Assessing beside reading the same rows (gather: rows into parts and claims, not assessed)', speed);
  printTable('Memory during the walk', memory);
  // Two runs with the same mix assessed the same: a faster core that finds something else is no faster core.
  if (counts)
    console.log(`\nFound: ${STANDINGS.map((standing) => `${standing} ${whole(counts?.[standing] ?? 0)}`).join(', ')}`);
};

/** The same statements as the walk, and nothing made of what they answer. */
const readRows = (store: Store, collectionId: string): number => {
  const [cars, parts, odometer, readings] = [CARS, PARTS, ODOMETER, READINGS].map((sql) => store.$client.prepare(sql));
  let rows = 0;
  for (const car of cars?.iterate(collectionId) ?? []) {
    const { id } = car as { id: string };
    rows += [odometer, parts, readings].reduce((sum, all) => sum + (all?.all(collectionId, id).length ?? 0), 0);
  }
  return rows;
};

const gatherParts = (store: Store, collectionId: string): number => {
  let parts = 0;
  for (const car of eachCar(store, collectionId)) parts += car.parts.length;
  return parts;
};

/** Standings of the whole collection, as the line-up and the sweep come to them. */
export const assessAll = (store: Store, collectionId: string): Record<Standing, number> => {
  const counts = Object.fromEntries(STANDINGS.map((standing) => [standing, 0])) as Record<Standing, number>;
  for (const { facts, parts } of eachCar(store, collectionId)) {
    const summary = summaryOf(findingsOf(facts, parts, [], ON));
    for (const standing of STANDINGS) counts[standing] += summary.counts[standing];
  }
  return counts;
};

/** The most memory seen at points spread over one walk; flat as the cars grow, because a walk holds one car. */
const walkForMemory = (store: Store, fleet: Fleet): { heap: number; resident: number } => {
  const every = Math.ceil(fleet.cars() / SAMPLES);
  const most = { heap: 0, resident: 0 };
  let car = 0;
  for (const { facts, parts } of eachCar(store, fleet.collectionId)) {
    summaryOf(findingsOf(facts, parts, [], ON));
    if (car++ % every !== 0) continue;
    most.resident = Math.max(most.resident, residentInMb());
    most.heap = Math.max(most.heap, heapInMb());
  }
  return most;
};
