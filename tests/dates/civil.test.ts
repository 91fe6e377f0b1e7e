import { describe, expect, it } from 'vitest';
import {
  addDays,
  addMonths,
  type CivilDate,
  civilDate,
  daysBetween,
  firstOfMonth,
  isCivilDate,
  lastOfMonth,
  monthsBetween,
  weekday,
  yearOf,
} from '../../src/dates/civil.ts';
import { isoWeek } from '../../src/dates/iso-week.ts';
import { tireWeek, tireWeekOf, weeksInTireYear } from '../../src/dates/tire-week.ts';

describe('a civil date', () => {
  it.each([
    ['2024-02-29', 'the leap day of a leap year'],
    ['2000-02-29', 'the leap day of a century that 400 divides'],
    ['0001-01-01', 'the first day there is'],
    ['0099-12-31', 'a year of two digits is not one of the 1900s'],
    ['9999-12-31', 'the last day of four digits'],
    ['1582-10-10', 'a day the old calendar left out: the calendar here has no gap'],
  ])('%s is one: %s', (text) => expect(isCivilDate(text)).toBe(true));

  it.each([
    ['2023-02-29', 'no leap year'],
    ['1900-02-29', 'a century that 400 does not divide'],
    ['2023-00-10', 'no month 0'],
    ['2023-13-01', 'no month 13'],
    ['2023-04-31', 'April has 30 days'],
    ['2023-01-00', 'no day 0'],
    ['0000-01-01', 'no year 0'],
    ['2023-1-1', 'digits missing'],
    ['12023-01-01', 'a digit too many'],
    ['2023-01-01T00:00', 'a time'],
    [' 2023-01-01', 'a blank'],
    ['٢٠٢٣-٠١-٠١', 'other digits'],
    ['', 'nothing'],
  ])('%j is none: %s', (text) => expect(isCivilDate(text)).toBe(false));

  it('is made of a year, a month and a day, or of none that do not exist', () => {
    expect(civilDate(2024, 2, 29)).toBe('2024-02-29');
    expect(civilDate(985, 7, 4)).toBe('0985-07-04');
    for (const [y, m, d] of [
      [2023, 2, 29],
      [2023, 0, 1],
      [2023, 13, 1],
      [2023, 1, 32],
      [2023, 1.5, 1],
      [Number.NaN, 1, 1],
      [-1, 1, 1],
      [10_000, 1, 1],
    ] as const)
      expect(civilDate(y, m, d)).toBeNull();
  });

  it('compares as text in calendar order', () => {
    const days: CivilDate[] = ['2024-01-01', '1999-12-31', '0985-06-15', '2023-11-05', '2023-02-28'];
    expect(days.toSorted()).toEqual(['0985-06-15', '1999-12-31', '2023-02-28', '2023-11-05', '2024-01-01']);
  });
});

describe('steps', () => {
  it.each<[CivilDate, number, CivilDate]>([
    ['2023-12-31', 1, '2024-01-01'],
    ['2024-02-28', 1, '2024-02-29'],
    ['2023-02-28', 1, '2023-03-01'],
    ['2024-03-01', -1, '2024-02-29'],
    ['2024-01-01', 366, '2025-01-01'],
    ['0050-12-31', 1, '0051-01-01'],
  ])('%s and %i days is %s', (day, days, wanted) => {
    expect(addDays(day, days)).toBe(wanted);
    expect(daysBetween(day, wanted)).toBe(days);
  });

  it('a day is a day over every change to and from summer time', () => {
    for (const day of ['2024-03-10', '2024-03-31', '2024-10-27', '2024-11-03', '2011-12-30'] as CivilDate[])
      expect(daysBetween(day, addDays(day, 1))).toBe(1);
  });

  it('months keep the day in years of two digits too', () => {
    expect(addMonths('0050-01-31', 1)).toBe('0050-02-28');
    expect(lastOfMonth(50, 12)).toBe('0050-12-31');
  });

  it.each<[CivilDate, CivilDate, number, string]>([
    ['2023-01-15', '2023-02-14', 0, 'a day short of a month'],
    ['2023-01-15', '2023-02-15', 1, 'a month to the day'],
    ['2023-01-31', '2023-02-27', 0, 'a day short of the clamped month'],
    ['2023-01-31', '2023-02-28', 1, 'a month from the 31st ends with February'],
    ['2023-01-31', '2023-04-29', 2, 'a day short of three'],
    ['2023-01-31', '2023-04-30', 3, 'three months from the 31st end with April'],
    ['2020-02-29', '2021-02-28', 12, 'a year from the leap day'],
    ['2020-02-29', '2024-02-28', 47, 'a day short of four years'],
    ['2020-02-29', '2024-02-29', 48, 'four years'],
    ['2023-02-28', '2023-03-28', 1, 'a short month counts whole'],
    ['2023-05-05', '2023-05-05', 0, 'the same day'],
  ])('from %s to %s are %i whole months: %s', (from, to, months) => expect(monthsBetween(from, to)).toBe(months));

  it('knows the year, and the first and last day of a month', () => {
    expect(yearOf('0985-07-04')).toBe(985);
    expect(firstOfMonth(2024, 2)).toBe('2024-02-01');
    expect([lastOfMonth(2024, 2), lastOfMonth(2023, 2), lastOfMonth(2023, 12)]).toEqual([
      '2024-02-29',
      '2023-02-28',
      '2023-12-31',
    ]);
  });

  it.each<[CivilDate, number]>([
    ['2026-11-22', 0],
    ['2026-11-25', 3],
    ['2000-01-01', 6],
    ['1970-01-01', 4],
  ])('%s is day %i of the week, Sunday 0', (day, wanted) => expect(weekday(day)).toBe(wanted));
});

describe('weeks', () => {
  it.each([
    [1, 2026, '2025-12-29', '2026-01-04'],
    [53, 2026, '2026-12-28', '2027-01-03'],
    [1, 2023, '2023-01-02', '2023-01-08'],
    [52, 2023, '2023-12-25', '2023-12-31'],
    [1, 2025, '2024-12-30', '2025-01-05'],
  ])('ISO 8601 week %i of %i runs from %s to %s', (week, year, from, to) =>
    expect(isoWeek(week, year)).toEqual({ from, to }),
  );

  it.each([
    [53, 2023],
    [0, 2023],
    [54, 2026],
    [1.5, 2023],
  ])('ISO 8601 has no week %d of %i', (week, year) => expect(isoWeek(week, year)).toBeNull());

  it('the tire’s weeks begin on Sundays and are numbered otherwise', () => {
    expect(tireWeek(1, 2026)).toEqual({ from: '2026-01-04', to: '2026-01-10' });
    expect(tireWeekOf('2026-01-03')).toEqual({ week: 52, year: 2025 });
    expect(weeksInTireYear(2023)).toBe(53);
    expect(tireWeek(53, 2024)).toBeNull();
  });
});
