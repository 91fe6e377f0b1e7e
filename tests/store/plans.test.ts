/** The queries that pages and the sweep ask for every car: none may walk the whole collection. */
import { expect, test } from 'vitest';
import { openMemoryStore } from '../../src/store/open.ts';
import { PARTS } from '../../src/store/stream.ts';

test('the parts of one car are found by index, with their claims', () => {
  const plan = openMemoryStore().$client.prepare(`explain query plan ${PARTS}`).all('a', 'b') as { detail: string }[];
  const details = plan.map(({ detail }) => detail).join('\n');
  expect(details).toContain('parts_of_car');
  expect(details).toContain('claims_of_part');
  expect(details).not.toMatch(/SCAN (parts|claims)/);
});
