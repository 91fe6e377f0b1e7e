import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import { type Row, rowOf, type Sleep } from '../../src/revival/sleep.ts';
import { since, UNKNOWN } from '../support/sleepers.ts';

const ON: CivilDate = '2026-11-26';
const BUILT = { from: '1971-01-01', to: '1971-12-31' } as const;
const row = (sleep: Sleep, built: Parameters<typeof rowOf>[1] = BUILT): Row => rowOf(sleep, built, ON);

describe('the row a sleep falls into', () => {
  it.each<[CivilDate, number]>([
    ['2026-11-26', 0],
    ['2026-05-27', 0],
    ['2026-05-26', 0.5],
    ['2024-11-27', 0.5],
    ['2024-11-26', 2],
    ['2021-11-26', 5],
    ['2016-11-27', 5],
    ['2016-11-26', 10],
    ['2006-11-26', 20],
    ['1980-01-01', 20],
  ])('asleep since %s counts from %s years', (day, years) => {
    expect(row(since(day)).years).toBe(years);
  });

  it('is judged by the longest it can be', () => {
    expect(row(since('2024-01-01', { lastRan: { from: '2010-01-01', to: '2024-01-01' } })).years).toBe(10);
    expect(row(since('2024-01-01', { lastRan: { from: null, to: '2024-01-01' } })).years).toBe(20);
  });

  it('of a young car is no longer than the car', () => {
    const young = { from: '2020-03-01', to: '2020-03-31' } as const;
    expect(row(UNKNOWN, young)).toMatchObject({ years: 5, byYears: 5 });
    expect(row(UNKNOWN, young).doubts[0]).toContain('from the day it was built');
  });

  it('nobody knows anything of is the last row, and says so', () => {
    const nothing = row(UNKNOWN, { from: null, to: null });
    expect(nothing.years).toBe(20);
    expect(nothing.doubts.join(' ')).toMatch(/twenty years and more.*how it was put away.*where it stood/);
  });
});

describe('what moves it a row', () => {
  it('good preparation moves it up, where that is more than hearsay', () => {
    expect(row(since('2019-01-01', { putAway: 'prepared', putAwayBy: 'receipt' })).years).toBe(2);
    const hearsay = row(since('2019-01-01', { putAway: 'prepared', putAwayBy: 'seller’s word' }));
    expect(hearsay.years).toBe(5);
    expect(hearsay.doubts.join(' ')).toContain('does not count');
  });

  it('driven in and shut off moves it down', () => {
    expect(row(since('2019-01-01', { putAway: 'shut off' })).years).toBe(10);
  });

  it.each(['open', 'flooded'] as const)('%s moves it down, and counts as wet', (stood) => {
    expect(row(since('2019-01-01', { stood: [stood] }))).toMatchObject({ years: 10, byYears: 5, wet: true });
  });

  it.each(['heated', 'dry', 'damp', 'covered', 'coast', 'desert'] as const)('%s alone moves nothing', (stood) => {
    expect(row(since('2019-01-01', { stood: [stood] }))).toMatchObject({ years: 5, wet: false, shifts: [] });
  });

  it('never beyond the ends of the table', () => {
    expect(row(since('2026-11-01', { putAway: 'prepared', putAwayBy: 'own memory' })).years).toBe(0);
    expect(row(since('1990-01-01', { putAway: 'shut off', stood: ['open', 'flooded'] })).years).toBe(20);
  });
});
