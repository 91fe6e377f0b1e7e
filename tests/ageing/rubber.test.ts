import { describe, expect, it } from 'vitest';
import { ASSUMED, type Place } from '../../src/ageing/place.ts';
import { shelfLife } from '../../src/ageing/rubber/families.ts';
import { lookFrom, PLACE_SOURCES } from '../../src/ageing/rubber/place.ts';
import { SOURCES } from '../../src/catalogue/sources.ts';

const steady = (mean: number, shelter: Place['shelter'] = 'heated'): Place => ({
  ...ASSUMED,
  shelter,
  months: Array<number>(12).fill(mean),
});

describe('a rubber part on the shelf', () => {
  it('made within a span is due from its first day to its last', () =>
    expect(shelfLife('NBR', { from: '2018-06-01', to: '2018-06-30' })).toEqual({
      inspect: { earliest: '2025-06-01', latest: '2025-06-30' },
      end: { earliest: '2028-06-01', latest: '2028-06-30' },
    }));

  it('made by a day may be past it already', () =>
    expect(shelfLife('SBR', { from: null, to: '2020-02-29' })).toEqual({
      inspect: { earliest: null, latest: '2025-02-28' },
      end: { earliest: null, latest: '2027-02-28' },
    }));

  it('made nobody knows when has no dates at all', () =>
    expect(shelfLife('EPDM', { from: null, to: null })).toBeNull());
});

describe('the first look at rubber where it stands', () => {
  it.each([
    ['as it is at 15 °C in a dry room', 60, 120, steady(15), false, 60],
    ['sooner where it is warm, twice at most', 60, 120, steady(35), false, 30],
    ['sooner in the open, rounded down', 60, 120, steady(15, 'open'), false, 37],
    ['later where it is cool', 60, 120, steady(10), false, 84],
    ['no later than the replace-by', 60, 72, steady(0), false, 72],
    ['no later than one and a half times without one', 60, null, steady(0), false, 90],
    ['no later at all for a part that safety rests on', 60, 120, steady(0), true, 60],
    ['sooner for that one too', 60, 120, steady(25), true, 30],
  ] as const)('comes %s', (_, months, replaceBy, place, safety, wanted) =>
    expect(lookFrom(months, replaceBy, place, safety)).toBe(wanted),
  );

  it('says that its roofs are judgement', () => {
    expect(PLACE_SOURCES).toContain('memory');
    for (const key of PLACE_SOURCES) expect(SOURCES[key]).toBeDefined();
  });
});
