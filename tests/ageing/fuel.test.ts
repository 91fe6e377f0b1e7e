import { describe, expect, it } from 'vitest';
import { FUELS } from '../../src/ageing/fuel/fuels.ts';
import { type FuelFacts, goodUntil, lifeAt } from '../../src/ageing/fuel/life.ts';
import { fuelOutlook } from '../../src/ageing/fuel/outlook.ts';
import { daysToSeparate, separates, tolerance } from '../../src/ageing/fuel/water.ts';
import { ASSUMED, type Place } from '../../src/ageing/place.ts';
import type { CivilDate } from '../../src/dates/civil.ts';

/** Heated, so that the place adds nothing of its own, with the months as given. */
const months = (...means: number[]): Place => ({
  ...ASSUMED,
  shelter: 'heated',
  months: Array.from({ length: 12 }, (_, month) => means[month % means.length] ?? null),
});

const facts = (more: Partial<FuelFacts> = {}): FuelFacts & { tank: number | null } => ({
  fuel: 'e10',
  stabilized: false,
  filled: { from: '2026-01-01', to: '2026-01-01' },
  fullness: 95,
  container: 'vehicle tank',
  tank: 60,
  ...more,
});
const watchFrom = (place: Place, more: Partial<FuelFacts> = {}) => goodUntil(facts(more), place).watch.earliest;

describe('the days of fuel', () => {
  it('three months at 20 °C are 91.3 days: the 92nd is the first of doubt', () => {
    expect(watchFrom(months(20))).toBe('2026-04-03');
    expect(goodUntil(facts(), months(20)).stop.latest).toBe('2026-07-03');
  });

  it('heat takes of them: at 30 °C they are half as many', () => {
    expect(watchFrom(months(30))).toBe('2026-02-16');
  });

  it.each([10, 0, -20])(
    'cold adds none: at %d °C they are those of 20 °C, whatever lasts longer there by itself',
    (at) => {
      expect(watchFrom(months(at))).toBe('2026-04-03');
      expect(goodUntil(facts(), months(at)).stop.latest).toBe('2026-07-03');
      expect(lifeAt('e10', false, at).low).toBeGreaterThan(3);
    },
  );

  it('are spent month by month: 31 in January at 20 °C, the last 29.9 of 60.9 in February at 30 °C, two a day', () => {
    expect(watchFrom(months(20, 30), { fuel: 'e85' })).toBe('2026-02-16');
  });

  it('a cold month takes as many as one at 20 °C', () => {
    expect(watchFrom(months(20, -10), { fuel: 'e85' })).toBe('2026-03-03');
  });

  it('begin in the middle of a month as well', () => {
    // 16 days of January at 30 °C take 32, and 28.9 of the 60.9 are left: past February’s 28.
    expect(watchFrom(months(30, 20), { fuel: 'e85', filled: { from: '2026-01-16', to: null } })).toBe('2026-03-02');
    // And 29 days are 28.9 at 20 °C, were they all in one month.
    expect(watchFrom(months(20), { fuel: 'e85', filled: { from: '2026-01-16', to: null } })).toBe('2026-03-18');
  });

  it('no roof adds to them; the open takes a quarter, nearly empty more still', () => {
    const under = (shelter: Place['shelter'], more: Partial<FuelFacts> = {}) =>
      watchFrom({ ...months(20), shelter }, more);
    // 91.3125 days by 1, 1.1, 1.3 and 1.6.
    expect(under('unheated')).toBe('2026-04-03');
    expect(under('damp')).toBe('2026-04-03');
    expect(under('covered')).toBe('2026-03-26');
    expect(under('open')).toBe('2026-03-13');
    expect(under('open', { fullness: 24.9 })).toBe('2026-02-28');
    expect(under('heated', { fullness: 24.9 })).toBe('2026-02-28');
    expect(under('heated', { fullness: 25 })).toBe('2026-04-03');
    expect(under('heated', { fullness: 10, container: 'closed can' })).toBe('2026-04-03');
  });

  it('run from the oldest end of the fill to its youngest', () => {
    const filled = { from: '2026-01-01', to: '2026-01-11' } as const;
    expect(goodUntil(facts({ filled }), months(20)).watch).toEqual({ earliest: '2026-04-03', latest: '2026-04-13' });
    expect(goodUntil(facts({ filled: { from: null, to: '2026-01-11' } }), months(20)).watch).toEqual({
      earliest: null,
      latest: '2026-04-13',
    });
  });

  it('stabilizer without figures of its own adds nothing', () => {
    expect(lifeAt('b100', true, 20)).toEqual(lifeAt('b100', false, 20));
    expect(lifeAt('e10', true, 20)).toEqual({ low: 12, high: 12 });
  });
});

describe('blends', () => {
  it('without figures of their own keep no longer than their neighbors', () => {
    expect(FUELS.e5.plain).toEqual(FUELS.e10.plain);
    expect(FUELS.e15.plain).toEqual(FUELS.e85.plain);
  });

  it('are gasoline by ethanol or diesel by bio content, never both', () => {
    for (const { ethanol, bio, diesel } of Object.values(FUELS)) {
      expect(ethanol === null).toBe(diesel);
      if (!diesel) expect(bio).toBe(0);
    }
  });
});

describe('water', () => {
  it('below what was measured the line goes on down, above it stops', () => {
    expect(tolerance(10, -20) ?? Number.NaN).toBeCloseTo(0.2437, 4);
    expect(tolerance(10, -60)).toBe(0);
    expect(tolerance(10, 45)).toBe(tolerance(10, 30));
  });

  it('E85 carries its water; gasoline without ethanol keeps none', () => {
    expect(tolerance(85, -10)).toBeNull();
    expect(separates(5, 85, -10)).toBe(false);
    expect(separates(0.01, 0, 20)).toBe(true);
    expect(daysToSeparate(60, 50, 85, ASSUMED).days).toBeNull();
    expect(daysToSeparate(60, 50, 0, ASSUMED).days).toBeNull();
  });

  it('counts with the coldest night of the place', () => {
    // An unheated garage follows a long cold spell all the way to the −10 outdoors; one told to be heated to 12 stays there.
    expect(daysToSeparate(60, 50, 10, ASSUMED).at).toBeCloseTo(-10, 9);
    expect(daysToSeparate(60, 50, 10, { ...ASSUMED, shelter: 'heated', heatedTo: 12 }).at).toBe(12);
    expect(daysToSeparate(60, 100, 10, ASSUMED).days).toBeNull();
  });
});

describe('the outlook', () => {
  const at = (on: CivilDate, more: Partial<ReturnType<typeof facts>> = {}, place = months(20)) =>
    fuelOutlook(facts(more), place, on);
  const said = (...given: Parameters<typeof at>) => at(...given).says.join(' ');

  it('goes from keeping it full, to using it soon, to draining it', () => {
    expect(said('2026-04-02')).not.toContain('Use it soon');
    expect(said('2026-04-02')).toContain('Keep it full and the cap tight.');
    expect(said('2026-04-03')).toContain('Do not put stabilizer in now');
    expect(said('2026-07-02')).toContain('Use it soon');
    expect(said('2026-07-03')).toContain('It is past use: drain it before the engine is started.');
  });

  it('is not sure between the ends of a fill, and counts an unknown one as too old', () => {
    const filled = { from: '2025-01-01', to: '2026-01-01' } as const;
    expect(said('2026-02-01', { filled })).toContain('It may be past use: drain it');
    expect(said('2026-02-01', { filled: { from: null, to: '2026-01-01' } })).toContain('It may be past use');
    expect(said('2026-02-01', { filled: { from: null, to: null } })).toContain('Nobody has said when it was bought');
  });

  it('asks to fill up, but not to the brim', () => {
    expect(said('2026-01-02', { fullness: 50 })).toContain('Keep it 90 to 95 % full');
    expect(said('2026-01-02', { fullness: 97 })).toContain('Keep it full');
    expect(said('2026-01-02', { fullness: 98 })).toContain('it grows 2.9 % as it warms by 30 °C');
    expect(said('2026-01-02', { fullness: 98, fuel: 'diesel' })).not.toContain('it grows');
    expect(said('2026-01-02', { container: 'closed can', fullness: 50 })).toContain('Keep the can closed');
  });

  it('tells of water what the tank takes in, and when that becomes too much', () => {
    const humid: Place = { ...ASSUMED, winterLow: 8, summerHigh: 36, air: 'inland', shelter: 'open', humidity: 90 };
    const { water, says } = at('2026-01-02', { fullness: 5 }, humid);
    expect(water?.perYear?.high).toBeGreaterThan(20);
    expect(water?.days?.low).toBeLessThan(365);
    expect(says.join(' ')).toContain(`within ${Math.floor(water?.days?.low ?? 0)} days: fill it up`);
    expect(said('2026-01-02')).toContain('Air alone takes years');
    expect(said('2026-01-02')).toContain('nothing mixes it again');
  });

  it('a tank of unknown size separates as soon as any, but its grams are not known', () => {
    const known = at('2026-01-02', { fullness: 40 }).water;
    const unknown = at('2026-01-02', { fullness: 40, tank: null }).water;
    expect(unknown?.perYear).toBeNull();
    expect(unknown?.days?.low).toBeCloseTo(known?.days?.low ?? Number.NaN, 6);
  });

  it('a closed can breathes nothing in', () => {
    expect(at('2026-01-02', { container: 'closed can' }).water).toMatchObject({
      perYear: { low: 0, high: 0 },
      days: null,
    });
  });

  it('gasoline without ethanol leaves its water at the bottom, E85 says nothing of layers', () => {
    expect(said('2026-01-02', { fuel: 'e0' })).toContain('rusts the tank');
    expect(said('2026-01-02', { fuel: 'e85' })).not.toContain('layers');
  });

  it('diesel: water first, and winter grade where it freezes', () => {
    expect(at('2026-01-02', { fuel: 'b7' }).water).toBeNull();
    expect(said('2026-01-02', { fuel: 'b7' })).toContain('Drain the water first');
    expect(said('2026-01-02', { fuel: 'b7' })).not.toContain('winter grade');
    expect(said('2026-01-02', { fuel: 'b7' }, ASSUMED)).toContain('winter grade');
  });
});
