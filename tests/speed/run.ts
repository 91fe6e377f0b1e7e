/**
 * Benchmarks: `npm run speed`, or `npm run speed -- 100000` for no more than so many parts.
 * Seconds differ between machines; compare the ratios. Nothing here passes or fails.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore, type Store } from '../../src/store/open.ts';
import { timeAssessing } from './assessing.ts';
import { timeDelivering } from './delivering.ts';
import { createFleet, type Fleet } from './fleet.ts';
import { timeLineUp } from './line-up.ts';
import { timeStartUp } from './start-up.ts';

const SIZES = [10_000, 100_000, 1_000_000];

const largest = Number(process.argv[2] ?? 1_000_000);
if (!Number.isInteger(largest) || largest < 1) {
  console.error('Name the largest number of parts: npm run speed -- 100000');
  process.exit(1);
}

/** A store of its own in a temporary folder: the line-up shows its first collection. */
const withFleet = async (work: (store: Store, fleet: Fleet) => Promise<void>): Promise<void> => {
  const folder = mkdtempSync(join(tmpdir(), 'standstill-speed-'));
  const store = openStore(folder);
  try {
    await work(store, createFleet(store));
  } finally {
    store.$client.close();
    rmSync(folder, { recursive: true });
  }
};

console.log(`Node ${process.versions.node} on ${availableParallelism()} cores`);
await withFleet((store, fleet) => timeAssessing(store, fleet, [...SIZES.filter((size) => size < largest), largest]));
await withFleet(timeLineUp);
await withFleet(timeDelivering);
await timeStartUp();
