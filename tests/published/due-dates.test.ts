import { describe, expect, it } from 'vitest';
import { addMonths, type CivilDate } from '../../src/dates/civil.ts';
import { limitOn } from '../../src/dates/limit.ts';
import published from './due-date-vectors.json' with { type: 'json' };

interface DueDate {
  id: string;
  installed: CivilDate;
  intervalMonths: number;
  expect: { due: CivilDate };
  rule: string;
}

describe('due dates', () => {
  it.each(published as DueDate[])('$id $installed and $intervalMonths months: $rule', (vector) => {
    const { installed, intervalMonths, expect: wanted } = vector;
    expect(addMonths(installed, intervalMonths)).toBe(wanted.due);
    expect(limitOn(installed, intervalMonths)).toBe(wanted.due);
  });

  it.each<[CivilDate, number, CivilDate, string]>([
    ['2020-02-29', 48, '2024-02-29', '48 months from 29 February return to 29 February'],
    ['2020-02-29', 12, '2021-02-28', 'a year from 29 February ends on the 28th'],
    ['2096-02-29', 48, '2100-02-28', '2100 is no leap year'],
    ['1996-02-29', 48, '2000-02-29', '2000 is one'],
    ['2023-01-31', 1, '2023-02-28', 'a month from the 31st ends with February'],
    ['2023-01-31', 3, '2023-04-30', 'and with April'],
    ['2023-10-31', -8, '2023-02-28', 'backwards it is clamped too'],
    ['2024-01-15', -1, '2023-12-15', 'backwards over the new year'],
    ['2024-12-15', 1, '2025-01-15', 'forwards over the new year'],
    ['2024-05-05', 0, '2024-05-05', 'nothing added changes nothing'],
  ])('%s and %i months: %s (%s)', (start, months, wanted) => {
    expect(addMonths(start, months)).toBe(wanted);
    expect(limitOn(start, months)).toBe(wanted);
  });
});
