import { describe, expect, it } from 'vitest';
import { document, pointers, problemOf } from '../support/api.ts';
import { openSite } from '../support/site.ts';

interface Span {
  low: number;
  high: number;
}
interface DaySpan {
  earliest: string | null;
  latest: string | null;
}

const ask = (desk: string, query: Record<string, string>) =>
  openSite().get(`/api/v1/desks/${desk}?${new URLSearchParams(query)}`);
const reckon = async <T>(desk: string, query: Record<string, string>) => document<T>(await ask(desk, query));

describe('GET /desks/brake-fluid', () => {
  interface Answer {
    grade: string;
    gradeTold: boolean;
    water: Span | null;
    boiling: (Span & { atMost: boolean }) | null;
    wet: DaySpan | null;
    limit: DaySpan | null;
    measured: boolean;
    verdicts: { gauge: string; value: number; unit: string; verdict: string; says: string }[];
    mayMix: boolean | null;
  }
  const fluid = (query: Record<string, string>) => reckon<Answer>('brake-fluid', query);

  it('answers water, boiling point and days by grade and age', async () => {
    const answer = await fluid({ grade: 'dot-4', filled: 'November 2025', limit: '401', 'limit-unit': '°F' });
    expect(answer).toMatchObject({ grade: 'DOT 4', gradeTold: true, wetMinimum: 155, measured: false, mayMix: null });
    expect(answer.water?.low).toBeGreaterThan(0.5);
    expect(answer.water?.high).toBeLessThan(3);
    expect((answer.wet?.earliest ?? '') < (answer.wet?.latest ?? '')).toBe(true);
    expect((answer.limit?.earliest ?? '') < (answer.wet?.earliest ?? '')).toBe(true);
  });

  it('goes by what was measured', async () => {
    const answer = await fluid({ grade: 'dot-4', filled: 'November 2025', boiling: '160', copper: '200' });
    expect(answer.measured).toBe(true);
    expect(answer.verdicts).toMatchObject([
      { gauge: 'boiling-point', value: 160, unit: '°C', verdict: 'watch' },
      { gauge: 'copper', value: 200, unit: 'ppm', verdict: 'act' },
    ]);
    expect(answer.verdicts[1]?.says).toMatch(/^Copper 200 ppm: act\. 200 or more/);
    expect((await fluid({ grade: 'dot-5-silicone', boiling: '160', copper: '200' })).verdicts).toEqual([]);
    expect(answer.boiling?.low).toBeLessThanOrEqual(160);
    expect(answer.boiling?.high).toBeGreaterThanOrEqual(160);
  });

  it('tells nothing of a fluid nobody dated, and never clears it', async () => {
    expect(await fluid({})).toMatchObject({ grade: 'DOT 3', gradeTold: false, water: null, boiling: null, wet: null });
  });

  it('says what may be mixed', async () => {
    expect((await fluid({ grade: 'dot-4', added: 'dot-3' })).mayMix).toBe(true);
    expect((await fluid({ grade: 'dot-4', added: 'dot-5-silicone' })).mayMix).toBe(false);
  });

  it('points at a date that is none', async () => {
    expect(pointers(await problemOf(await ask('brake-fluid', { filled: 'long ago' }), 422))).toEqual(['#/filled']);
  });
});

describe('GET /desks/coolant', () => {
  interface Answer {
    strength: Span | null;
    freezes: Span | null;
    mixing: string | null;
    margin: Span | null;
    verdict: string | null;
    exchange: number | null;
  }
  const coolant = (query: Record<string, string>) => reckon<Answer>('coolant', query);

  it('answers first ice, its margin and what to exchange', async () => {
    const mix = { glycol: 'ethylene', strength: '50', volume: '8', wanted: '60', night: '-10' };
    const answer = await coolant(mix);
    expect(answer).toMatchObject({ strength: { low: 50, high: 50 }, exchange: 1.6, verdict: 'good' });
    const freezes = answer.freezes ?? { low: Number.NaN, high: Number.NaN };
    expect(freezes.low).toBeLessThanOrEqual(freezes.high);
    expect(answer.margin?.low).toBeCloseTo(-10 - freezes.high, 1);
    expect(await coolant({ ...mix, night: '14', 'night-unit': '°F' })).toEqual(answer);
    expect((await coolant({ ...mix, night: '-45' })).verdict).toBe('act');
  });

  it('judges nothing by a night nobody told', async () => {
    expect(await coolant({ strength: '50' })).toMatchObject({ verdict: null, margin: null, night: null });
  });

  it('answers what mixing does without a strength', async () => {
    const answer = await coolant({ there: 'iat', added: 'oat' });
    expect(answer).toMatchObject({ strength: null, freezes: null, margin: null, verdict: null });
    expect(answer.mixing).toContain('meets');
  });

  it('points at what can’t be, and at what it can’t do without', async () => {
    expect(pointers(await problemOf(await ask('coolant', { strength: '50', brix: '33' }), 422))).toEqual(['#/brix']);
    const stronger = { strength: '50', volume: '8', wanted: '60', concentrate: '55' };
    expect(pointers(await problemOf(await ask('coolant', stronger), 422))).toEqual(['#/wanted']);
    expect(pointers(await problemOf(await ask('coolant', {}), 422))).toEqual(['#/strength']);
  });
});

describe('GET /desks/battery', () => {
  interface Answer {
    from: string;
    until: string;
    charge: Span;
    points: ({ day: string } & Span)[];
    recharge: DaySpan;
    noCrank: DaySpan;
    frost: string;
    freezes: DaySpan | null;
    place: { told: boolean; assumed: string | null };
    says: string[];
  }
  const battery = (query: Record<string, string>) =>
    reckon<Answer>('battery', { capacity: '60', charge: '100', drain: '30', ...query });

  it('answers the charge along the days, and the days that matter', async () => {
    const answer = await battery({ low: '-25', until: '2027-03-01' });
    expect(answer).toMatchObject({ from: '2026-11-25', until: '2027-03-01', charge: { low: 100, high: 100 } });
    expect([answer.points[0]?.day, answer.points.at(-1)?.day]).toEqual(['2026-11-25', '2027-03-01']);
    const lows = answer.points.map(({ low }) => low);
    expect(lows.toSorted((a, b) => b - a)).toEqual(lows);
    expect((answer.recharge.earliest ?? '') < (answer.noCrank.earliest ?? '')).toBe(true);
    expect(answer).toMatchObject({ frost: 'judged', freezes: { earliest: expect.any(String) as string } });
  });

  it('judges no frost in an assumed place, and finds none in lithium', async () => {
    expect(await battery({})).toMatchObject({ frost: 'not judged', freezes: null, place: { told: false } });
    expect(await battery({ low: ' ' })).toMatchObject({ frost: 'not judged', freezes: null, place: { told: false } });
    expect(await battery({ low: '-25', chemistry: 'lithium' })).toMatchObject({
      frost: 'does not freeze',
      freezes: null,
    });
  });

  it('names what of the place is assumed', async () => {
    const told = { shelter: 'open', low: '-10', high: '30', winter: 'july', air: 'coast' };
    expect((await battery(told)).place.assumed).toBeNull();
    const { place, says } = await battery({ ...told, air: '' });
    expect(place.assumed).toBe('Not told and assumed: air inland.');
    expect(says).toContain(place.assumed);
  });

  it('begins on the day asked for', async () => {
    const answer = await battery({ on: '2027-04-01' });
    expect([answer.from, answer.until]).toEqual(['2027-04-01', '2027-10-01']);
  });

  it.each<[Record<string, string>, string[]]>([
    [{}, ['#/capacity']],
    [{ capacity: '60' }, ['#/charge']],
    [{ capacity: '60', density: '1.25' }, ['#/warmth']],
    [{ capacity: '60', charge: '90', until: '2026-11-25' }, ['#/until']],
    [{ capacity: '60', charge: '90', from: 'now' }, ['#/from']],
    [{ capacity: '60', charge: '90', volts: '12.6' }, ['#/volts']],
    [{ capacity: '60', volts: '6.3' }, ['#/nominal']],
    [{ capacity: '60', charge: '90', low: '20', high: '10' }, ['#/high']],
  ])('of %j is a problem', async (query, where) => {
    expect(pointers(await problemOf(await ask('battery', query), 422))).toEqual(where);
  });
});

describe('GET /desks/fuel', () => {
  interface Answer {
    fuel: string;
    watch: DaySpan;
    stop: DaySpan;
    water: { held: number | null; perYear: Span | null; days: Span | null } | null;
    parted: { now: boolean; coldestNight: boolean | null } | null;
  }
  const fuel = (query: Record<string, string>) => reckon<Answer>('fuel', query);

  it('answers how long it keeps, and what water does to it', async () => {
    const answer = await fuel({ blend: 'e10', bought: 'June 2026', tank: '50', fullness: '40' });
    expect((answer.watch.earliest ?? '') < (answer.stop.earliest ?? '')).toBe(true);
    expect(answer.water?.held).toBeGreaterThan(0);
    expect(answer.water?.perYear?.low).toBeGreaterThan(0);
    expect((await fuel({ blend: 'e10', bought: 'June 2026' })).water?.perYear).toBeNull();
    expect((await fuel({ blend: 'diesel' })).water).toBeNull();
    const open = await fuel({ blend: 'e10', bought: 'June 2026', shelter: 'open', low: '10', high: '45' });
    expect((open.stop.earliest ?? '') < (answer.stop.earliest ?? '')).toBe(true);
  });

  it('judges the water measured, and by no night that nobody told', async () => {
    expect((await fuel({ blend: 'e10', water: '0.6' })).parted).toEqual({ now: true, coldestNight: null });
    expect((await fuel({ blend: 'e10', water: '0.4', low: '-10' })).parted).toEqual({ now: false, coldestNight: true });
    expect((await fuel({ blend: 'e10' })).parted).toBeNull();
    expect((await fuel({ blend: 'e0', water: '0.4' })).parted).toBeNull();
  });

  it('points at a fuel not told and at a date that is none', async () => {
    expect(pointers(await problemOf(await ask('fuel', {}), 422))).toEqual(['#/blend']);
    const bought = { blend: 'e10', bought: 'unknown' };
    expect(pointers(await problemOf(await ask('fuel', bought), 422))).toEqual(['#/bought']);
  });
});

describe('GET /desks/rubber', () => {
  interface Answer {
    group: string;
    inspect: DaySpan;
    end: DaySpan;
    pace: number | null;
    says: string[];
  }
  const rubber = (query: Record<string, string>) =>
    reckon<Answer>('rubber', { rubber: 'NBR', made: 'May 2019', ...query });

  it('answers the shelf life, and judges no storage nobody told', async () => {
    const answer = await rubber({});
    expect(answer).toMatchObject({ made: { from: '2019-05-01', to: '2019-05-31' }, pace: null });
    expect((answer.inspect.earliest ?? '') < (answer.end.earliest ?? '')).toBe(true);
    expect(answer.says.join(' ')).toContain('not judged');
    const [cool, hot] = [
      await rubber({ low: '0', high: '20' }),
      await rubber({ low: '15', high: '45', shelter: 'open' }),
    ];
    expect(hot.pace).toBeGreaterThan(cool.pace ?? Number.NaN);
  });

  it('points at what it can’t do without', async () => {
    expect(pointers(await problemOf(await ask('rubber', {}), 422))).toEqual(['#/rubber', '#/made']);
    expect(pointers(await problemOf(await ask('rubber', { rubber: 'NBR', made: 'unknown' }), 422))).toEqual(['#/made']);
  });
});
