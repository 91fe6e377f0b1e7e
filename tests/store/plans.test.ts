/** The queries that pages and the sweep ask for every car: none may walk the whole collection. */
import { expect, test } from 'vitest';
import { openMemoryStore } from '../../src/store/open.ts';
import { PARTS, READINGS } from '../../src/store/stream.ts';

const planOf = (query: string): string => {
  const plan = openMemoryStore().$client.prepare(`explain query plan ${query}`).all('a', 'b') as { detail: string }[];
  return plan.map(({ detail }) => detail).join('\n');
};

test.each([
  ['their claims', PARTS, 'claims_of_part'],
  ['their readings', READINGS, 'readings_of_part'],
])('the parts of one car are found by index, with %s', (_, query, index) => {
  const plan = planOf(query);
  expect(plan).toContain('parts_of_car');
  expect(plan).toContain(index);
  expect(plan).not.toMatch(/SCAN (parts|claims|readings)/);
});
