import { describe, expect, it } from 'vitest';
import { daysInWords, inUnit, spanInWords } from '../../src/ageing/words.ts';
import type { CivilDate } from '../../src/dates/civil.ts';

describe('a figure in words', () => {
  it.each([
    [12.345, 'V', 2, '12.35 V'],
    [12, 'V', 2, '12.00 V'],
    [-24, '°C', 0, '−24 °C'],
    [-0.2, '°C', 0, '0 °C'],
    [-0.26, 'bar', 1, '−0.3 bar'],
    [9, '/32 in', 0, '9/32 in'],
  ])('%d %s with %i decimals is “%s”', (value, unit, decimals, words) =>
    expect(inUnit(value, unit, decimals)).toBe(words),
  );

  it('tells both ends of a span, or one where both read alike', () => {
    expect(spanInWords({ low: 1.84, high: 3.61 }, '%', 1)).toBe('1.8 to 3.6 %');
    expect(spanInWords({ low: 1.84, high: 1.79 }, '%', 1)).toBe('1.8 %');
    expect(spanInWords({ low: -37, high: -34 }, '°C', 0)).toBe('−37 to −34 °C');
    expect(spanInWords({ low: -0.4, high: 0.4 }, '°C', 0)).toBe('0 °C');
  });
});

describe('days of an estimate', () => {
  const ON: CivilDate = '2026-01-01';
  const NEVER = 'not within a year';
  it.each<[CivilDate | null, CivilDate | null, string]>([
    [null, null, NEVER],
    ['2026-05-10', null, 'from early May 2026 at the earliest'],
    [null, '2026-05-11', 'by mid May 2026 at the latest'],
    ['2026-05-20', '2026-07-21', 'between mid May 2026 and late July 2026'],
    ['2026-05-01', '2026-05-10', 'in early May 2026'],
    ['2026-05-01', '2026-05-31', 'between early and late May 2026'],
    ['2026-12-31', '2027-01-01', 'between late December 2026 and early January 2027'],
  ])('%s and %s: “%s”', (earliest, latest, words) => expect(daysInWords({ earliest, latest }, NEVER, ON)).toBe(words));

  it('that lie behind are told as such, the day itself among them', () => {
    expect(daysInWords({ earliest: '2025-05-01', latest: ON }, NEVER, ON)).toBe('already');
    expect(daysInWords({ earliest: ON, latest: '2026-02-25' }, NEVER, ON)).toBe(
      'perhaps already, by late February 2026 at the latest',
    );
    expect(daysInWords({ earliest: '2025-05-01', latest: null }, NEVER, ON)).toBe('perhaps already');
  });
});
