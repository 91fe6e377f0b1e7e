import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import { nextDay } from '../../src/dates/limit.ts';

const FIRST: CivilDate = '0001-01-01';
const LAST: CivilDate = '9999-12-30';

const anyDay = fc.integer({ min: 0, max: daysBetween(FIRST, LAST) }).map((days) => addDays(FIRST, days));
/** Days at which a month or a year ends or begins: where counting goes wrong first. */
const edge = fc
  .tuple(
    fc.integer({ min: 1, max: 9999 }),
    fc.constantFrom('01-01', '01-31', '02-27', '02-28', '03-01', '04-30', '12-30', '12-31'),
  )
  .map(([year, rest]) => `${String(year).padStart(4, '0')}-${rest}` as CivilDate)
  .filter((day) => day <= LAST);
const day = fc.oneof(anyDay, edge);

describe('the next day', () => {
  it('is the one date-fns counts', () => {
    fc.assert(
      fc.property(day, (from) => {
        expect(nextDay(from)).toBe(addDays(from, 1));
      }),
      { numRuns: 2000 },
    );
  });

  it.each<[CivilDate, CivilDate]>([
    ['2023-02-28', '2023-03-01'],
    ['2024-02-28', '2024-02-29'],
    ['2024-02-29', '2024-03-01'],
    ['2000-02-28', '2000-02-29'],
    ['2100-02-28', '2100-03-01'],
    ['2026-04-30', '2026-05-01'],
    ['2026-12-31', '2027-01-01'],
    ['2026-09-09', '2026-09-10'],
    ['0999-12-31', '1000-01-01'],
  ])('after %s is %s', (from, wanted) => {
    expect(nextDay(from)).toBe(wanted);
    expect(addDays(from, 1)).toBe(wanted);
  });
});
