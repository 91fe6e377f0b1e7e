import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import {
  ageInWords,
  ageOf,
  count,
  dayInWords,
  lengthInWords,
  monthsInWords,
  rangeInWords,
} from '../../src/dates/words.ts';

describe('days and ranges in words', () => {
  it('a day names its month, so that no order of numbers can turn it around', () => {
    expect(dayInWords('2015-06-03')).toBe('3 June 2015');
    expect(dayInWords('0985-12-31')).toBe('31 December 985');
  });

  it.each<[CivilDate | null, CivilDate | null, string, string]>([
    ['2015-06-03', '2015-06-03', '3 June 2015', 'one day'],
    ['2015-06-01', '2015-06-30', 'June 2015', 'one whole month'],
    ['2016-02-01', '2016-02-29', 'February 2016', 'a leap February'],
    ['2015-02-01', '2016-02-29', 'February 2015 to February 2016', 'whole months of two years'],
    ['2016-02-01', '2016-02-28', '1 to 28 February 2016', 'a month short of its last day'],
    ['2015-01-01', '2015-12-31', '2015', 'one whole year'],
    ['2009-01-01', '2013-12-31', '2009 to 2013', 'whole years'],
    ['2015-01-01', '2015-04-30', 'January 2015 to April 2015', 'whole months from January'],
    ['2015-09-01', '2015-12-31', 'September 2015 to December 2015', 'whole months to December'],
    ['2015-06-03', '2016-06-03', '3 June 2015 to 3 June 2016', 'days of two years'],
    ['2015-06-03', '2015-06-30', '3 to 30 June 2015', 'days of one month'],
    [null, '1997-12-31', 'up to 31 December 1997', 'open at the start'],
    ['2012-01-01', null, 'from 1 January 2012 on', 'open at the end'],
    [null, null, 'any time', 'open at both'],
  ])('%s to %s is “%s”: %s', (from, to, wanted) => expect(rangeInWords({ from, to })).toBe(wanted));
});

describe('lengths in words', () => {
  it.each([
    [1, '1 month'],
    [11, '11 months'],
    [12, '1 year'],
    [18, '18 months'],
    [23, '23 months'],
    [24, '2 years'],
    [27, '2 years 3 months'],
    [42, '3 years 6 months'],
    [120, '10 years'],
    [121, '10 years 1 month'],
  ])('an interval of %i months is told to the month: %s', (months, wanted) =>
    expect(lengthInWords(months)).toBe(wanted),
  );

  it.each([
    [0, 'less than a month'],
    [1, '1 month'],
    [12, '1 year'],
    [13, '13 months'],
    [35, '2 years 11 months'],
    [36, '3 years'],
    [47, '3 years'],
    [48, '4 years'],
    [263, '21 years'],
  ])('an age of %i months is told by whole years from three on, rounded down: %s', (months, wanted) =>
    expect(monthsInWords(months)).toBe(wanted),
  );

  it('counts one thing and several', () => {
    expect([count(0, 'car'), count(1, 'car'), count(2, 'car')]).toEqual(['0 cars', '1 car', '2 cars']);
  });
});

describe('ages', () => {
  const TODAY: CivilDate = '2026-11-25';

  it.each<[CivilDate | null, CivilDate | null, number, number | null, string]>([
    ['2014-11-25', '2014-11-25', 144, 144, 'twelve years today'],
    ['2014-11-26', '2014-11-26', 143, 143, 'twelve years tomorrow'],
    ['2004-01-01', '2014-11-25', 144, 274, 'the youngest by the end of the range, the oldest by its start'],
    ['2026-01-01', '2026-12-31', 0, 10, 'an end still ahead is no age yet'],
    [null, '2014-11-25', 144, null, 'an open start leaves the oldest open'],
    ['2014-11-25', null, 0, 144, 'an open end could be today'],
    ['2027-01-01', '2027-01-01', 0, 0, 'nothing is younger than new'],
    [null, null, 0, null, 'nothing known'],
  ])('%s to %s: youngest %i, oldest %s months (%s)', (from, to, youngest, oldest) =>
    expect(ageOf({ from, to }, TODAY)).toEqual({ youngest, oldest }),
  );

  it.each<[number, number | null, string]>([
    [144, 264, 'at least 12 years, could be 22 years'],
    [144, 144, '12 years'],
    [145, 155, '12 years'],
    [0, 0, 'less than a month'],
    [0, 10, 'could be 10 months'],
    [0, 264, 'could be 22 years'],
    [9, 15, 'at least 9 months, could be 15 months'],
    [144, null, 'at least 12 years, how much more is not known'],
    [0, null, 'age not known'],
  ])('youngest %i, oldest %s months is “%s”', (youngest, oldest, wanted) =>
    expect(ageInWords({ youngest, oldest })).toBe(wanted),
  );
});
