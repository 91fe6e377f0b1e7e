import { describe, expect, it } from 'vitest';
import type { Acting } from '../../src/acts/add-car.ts';
import { type ClaimGiven, readClaim } from '../../src/acts/read-claim.ts';
import { KINDS } from '../../src/catalogue/kinds.ts';
import type { DateRange } from '../../src/dates/partial-date.ts';
import type { Claim } from '../../src/findings/facts.ts';
import { claim, TODAY } from '../support/cars.ts';

interface Known {
  built?: DateRange;
  claims?: readonly Claim[];
  order?: Acting['order'];
  more?: Partial<ClaimGiven>;
}

const BUILT_1967: DateRange = { from: '1967-01-01', to: '1967-12-31' };
const NOT_KNOWN: DateRange = { from: null, to: null };

const read = (
  kindKey: string,
  clock: ClaimGiven['clock'],
  typed: string,
  { built = BUILT_1967, claims = [], order = 'day first', more = { evidence: 'read on the part' } }: Known = {},
) => {
  const kind = KINDS.get(kindKey);
  if (!kind) throw new Error(`No kind ${kindKey}`);
  const car = { id: 'car', built, odometer: [], place: null, placedOn: null };
  return readClaim(claim(clock, typed, { evidence: 'read on the part', ...more }), { kind, claims }, car, {
    collectionId: 'barn',
    personId: 'ada',
    order,
    today: TODAY,
  });
};

type Outcome = ReturnType<typeof read>;

/** "from to" of what was understood, or what was asked or refused. */
const span = (outcome: Outcome): string =>
  outcome.ok ? `${outcome.value.claim.from} ${outcome.value.claim.to}` : `refused: ${outcome.faults[0]?.message}`;
const message = (outcome: Outcome): string =>
  outcome.ok ? '' : outcome.faults.map((fault) => fault.message).join(' ');
const labels = (outcome: Outcome): string[] =>
  outcome.ok ? [] : (outcome.faults[0]?.choices ?? []).map(({ label }) => label);
const values = (outcome: Outcome): string[] =>
  outcome.ok ? [] : (outcome.faults[0]?.choices ?? []).map(({ value }) => value);

const known = (
  clock: Claim['clock'],
  from: Claim['from'],
  to: Claim['to'],
  evidence: Claim['evidence'] = 'receipt',
): Claim => ({
  clock,
  said: 'date',
  from,
  to,
  evidence,
  km: null,
});

const KEEP_ALL = 'Not known: keep all of them, and count from the oldest';

describe('a tire’s date', () => {
  it.each(['2318', 'DOT 4B7 C2DE1F 2318', '4b7c2de1f2318', 'DOT AB CD EFGH 2318', '23 18'])(
    'is read from %s',
    (typed) => {
      const outcome = read('tires-road', 'made', typed);
      expect(span(outcome)).toBe('2018-06-10 2018-06-16');
      expect(outcome).toMatchObject({ value: { claim: { typed, edtf: '2018-06-10/2018-06-16', said: 'date' } } });
    },
  );

  it.each([
    ['June 2015', '2015-06-01 2015-06-30'],
    ['3 June 2015', '2015-06-03 2015-06-03'],
    ['about 2015', '2014-01-01 2016-12-31'],
    ['before 2015', 'null 2014-12-31'],
    ['2009/2013', '2009-01-01 2013-12-31'],
    ['between 2009 and 2013', '2009-01-01 2013-12-31'],
  ])('may be given in words instead: %s', (typed, wanted) => {
    expect(span(read('tires-road', 'made', typed))).toBe(wanted);
  });

  it('typed as 2015 is asked back: week 20 of 2015, or the year', () => {
    const outcome = read('tires-road', 'made', '2015');
    expect(message(outcome)).toContain('“2015” can mean more than one date. Which is it?');
    expect(labels(outcome)).toEqual(['17 to 23 May 2015', '2015']);
    const [week, year] = values(outcome);
    expect([week, year]).toEqual(['2015-05-17/2015-05-23', '2015']);
    const chosen = (choice: string | undefined) => span(read('tires-road', 'made', '2015', { more: { choice } }));
    expect(chosen(week)).toBe('2015-05-17 2015-05-23');
    expect(chosen(year)).toBe('2015-01-01 2015-12-31');
  });

  it('typed as 1998 is the year: as a code it would lie ahead', () => {
    expect(span(read('tires-road', 'made', '1998'))).toBe('1998-01-01 1998-12-31');
  });

  it('of three digits offers each decade, and to keep them all', () => {
    const outcome = read('tires-road', 'made', '417', { built: NOT_KNOWN });
    expect(labels(outcome)).toEqual([
      '9 to 15 October 1977',
      '11 to 17 October 1987',
      '12 to 18 October 1997',
      KEEP_ALL,
    ]);
    expect(message(outcome)).toContain('small triangle');
    const all = values(outcome).at(-1);
    expect(span(read('tires-road', 'made', '417', { built: NOT_KNOWN, more: { choice: all } }))).toBe(
      '1977-10-09 1997-10-18',
    );
  });

  it('of three digits loses the decades before the car, one year aside: its tires may be a little older', () => {
    const built = (year: number): DateRange => ({ from: `${year}-01-01`, to: `${year}-12-31` }) as DateRange;
    expect(labels(read('tires-road', 'made', '417', { built: built(1979) })).slice(0, -1)).toEqual([
      '11 to 17 October 1987',
      '12 to 18 October 1997',
    ]);
    expect(labels(read('tires-road', 'made', '417', { built: built(1978) }))).toHaveLength(4);
    expect(span(read('tires-road', 'made', '417', { built: built(1990) }))).toBe('1997-10-12 1997-10-18');
  });

  it('of three digits loses the decades after it was fitted', () => {
    const fitted = known('fitted', '1990-01-01', '1990-12-31');
    expect(labels(read('tires-road', 'made', '417', { claims: [fitted] })).slice(0, -1)).toEqual([
      '9 to 15 October 1977',
      '11 to 17 October 1987',
    ]);
    const early = known('fitted', '1980-01-01', '1980-12-31');
    expect(span(read('tires-road', 'made', '417', { claims: [early] }))).toBe('1977-10-09 1977-10-15');
  });

  it('of three digits with the small triangle is of the 1990s', () => {
    expect(span(read('tires-road', 'made', '417', { more: { ninetiesMark: 'seen' } }))).toBe('1997-10-12 1997-10-18');
    expect(labels(read('tires-road', 'made', '417', { more: { ninetiesMark: 'not seen' } }))).toHaveLength(4);
  });

  it.each([
    ['5417', 'No year has that many weeks'],
    ['2O17', 'Was 2017 meant?'],
    ['4B7 C2DE1F', 'Look at the inner sidewall'],
    ['2330', 'That week has not begun'],
  ])('is not read from %s, and the reason is given', (typed, why) => {
    expect(message(read('tires-road', 'made', typed))).toContain(why);
  });

  it('that has begun but not ended ends today', () => {
    expect(span(read('tires-road', 'made', '4726'))).toBe('2026-11-22 2026-11-25');
  });

  it('is not looked for in the day it was fitted', () => {
    expect(span(read('tires-road', 'fitted', '2015'))).toBe('2015-01-01 2015-12-31');
  });
});

describe('a brake hose’s label', () => {
  it('is not what a receipt says: that is a date in the person’s own order', () => {
    const more = { evidence: 'receipt' } as const;
    expect(span(read('brake-hoses', 'made', '3/4/2015', { order: 'day first', more }))).toBe('2015-04-03 2015-04-03');
  });

  it('is read month first; against a person’s own order it is asked', () => {
    expect(span(read('brake-hoses', 'made', '3/4/2015', { order: 'month first' }))).toBe('2015-03-04 2015-03-04');
    const outcome = read('brake-hoses', 'made', '3/4/2015', { order: 'day first' });
    expect(labels(outcome)).toEqual(['4 March 2015', '3 April 2015']);
    const second = values(outcome)[1];
    expect(span(read('brake-hoses', 'made', '3/4/2015', { order: 'day first', more: { choice: second } }))).toBe(
      '2015-04-03 2015-04-03',
    );
  });

  it('for a person who wants to be asked offers each order once', () => {
    const outcome = read('brake-hoses', 'made', '3/4/2015', { order: 'ask' });
    expect(labels(outcome)).toEqual(['4 March 2015', '3 April 2015']);
  });

  it('is no matter to a receipt: its date is in the person’s own order', () => {
    const more = { evidence: 'receipt' } as const;
    expect(span(read('brake-hoses', 'made', '3/4/2015', { more }))).toBe('2015-04-03 2015-04-03');
  });

  it('with only one possible order is not asked', () => {
    expect(span(read('brake-hoses', 'made', '3/15/2009', { order: 'month first' }))).toBe('2009-03-15 2009-03-15');
  });
});

describe('a battery’s code', () => {
  it('repeats every ten years: each month it can be, and to keep them all', () => {
    const outcome = read('battery-flooded', 'made', 'C7');
    expect(labels(outcome)).toEqual(['March 2007', 'March 2017', KEEP_ALL]);
    expect(span(read('battery-flooded', 'made', 'C7', { more: { choice: '2007-03-01/2017-03-31' } }))).toBe(
      '2007-03-01 2017-03-31',
    );
  });

  it('is settled by the day it was fitted', () => {
    const fitted = known('fitted', '2010-01-01', '2010-12-31');
    expect(labels(read('battery-flooded', 'made', 'C7', { claims: [fitted] }))).toEqual([
      'March 1997',
      'March 2007',
      KEEP_ALL,
    ]);
    const built: DateRange = { from: '2015-01-01', to: '2015-12-31' };
    expect(span(read('battery-flooded', 'made', 'C7', { built }))).toBe('2017-03-01 2017-03-31');
  });

  it('may be a sticker of month and year', () => {
    expect(span(read('battery-flooded', 'made', '3/17'))).toBe('2017-03-01 2017-03-31');
  });
});

describe('a date that cannot stand', () => {
  const made = known('made', '2020-06-01', '2020-06-07', 'read on the part');

  it('is one of fitting before it was made', () => {
    expect(message(read('tires-road', 'fitted', '2019', { claims: [made] }))).toBe(
      'That would be before it was made: made not before 1 June 2020. One of the two dates is wrong, or this is another part: then record it as renewed.',
    );
    expect(read('tires-road', 'fitted', '2020', { claims: [made] }).ok).toBe(true);
  });

  it('is one of making after it was fitted', () => {
    const fitted = known('fitted', '2019-01-01', '2019-12-31');
    expect(message(read('tires-road', 'made', '2320', { claims: [fitted] }))).toContain(
      'What is known rules every year out',
    );
    expect(message(read('dampers', 'made', '2020', { claims: [fitted] }))).toContain(
      'That would be after it was fitted: fitted not after 31 December 2019.',
    );
  });

  it('is one of filling before it was fitted', () => {
    const fitted = known('fitted', '2020-06-01', '2020-06-30');
    expect(message(read('brake-fluid-glycol', 'filled', '2019', { claims: [fitted] }))).toContain(
      'That would be before it was fitted: fitted not before 1 June 2020.',
    );
  });

  it('is one that lies ahead', () => {
    expect(message(read('dampers', 'fitted', '26 November 2026'))).toContain(
      'that lies ahead: today is 25 November 2026',
    );
    expect(span(read('dampers', 'fitted', '25 November 2026'))).toBe('2026-11-25 2026-11-25');
  });

  it('is one of fitting before the car was built', () => {
    expect(message(read('dampers', 'fitted', '1966'))).toContain(
      'too early: the car was not built before (1 January 1967)',
    );
    expect(read('dampers', 'fitted', '1967').ok).toBe(true);
  });

  it('is one of making ten years and more before the car', () => {
    expect(message(read('dampers', 'made', '1956'))).toContain('that is ten years before the car was built');
    expect(read('dampers', 'made', '1957').ok).toBe(true);
  });

  it('is one before there were cars, where the car’s own date is not known', () => {
    expect(message(read('dampers', 'fitted', '1884', { built: NOT_KNOWN }))).toContain('no motor cars before');
  });

  it('is “original” on a car without a build date', () => {
    expect(message(read('dampers', 'fitted', 'original', { built: NOT_KNOWN }))).toContain(
      'Give the car its build date first',
    );
    expect(read('dampers', 'fitted', 'original')).toMatchObject({
      value: { claim: { said: 'original', from: null, to: null, edtf: null } },
    });
  });

  it('is nothing at all', () => {
    expect(message(read('dampers', 'fitted', ' '))).toContain('Nothing was typed');
  });
});

describe('an answer without a date', () => {
  it.each([
    ['unknown', 'unknown'],
    ['not looked yet', 'not looked'],
  ])('is kept as an answer: %s', (typed, said) => {
    for (const kind of ['dampers', 'tires-road', 'battery-flooded'])
      expect(read(kind, 'made', typed)).toMatchObject({ value: { claim: { said, typed, from: null, to: null } } });
  });
});

describe('a printed last day', () => {
  it('may lie ahead', () => {
    expect(span(read('flares', 'printed', '06/2029'))).toBe('2029-06-01 2029-06-30');
    expect(span(read('harness-fia', 'printed', 'not valid after 2028'))).toBe('2028-12-31 2028-12-31');
  });

  it('stands beside any other date of the part', () => {
    const made = known('made', '2025-01-01', '2025-12-31');
    expect(span(read('flares', 'printed', '2024', { claims: [made] }))).toBe('2024-01-01 2024-12-31');
  });

  it('of a harness with a bare year is asked: the year it ends, or the year it was made', () => {
    expect(labels(read('harness-fia', 'printed', 'FIA 2024'))).toContain('31 December 2024');
    expect(labels(read('harness-fia', 'printed', 'FIA 2024'))).toContain('31 December 2029');
  });

  it('is not asked for by a harness dated by its make: the punched month is enough', () => {
    expect(span(read('harness-sfi', 'made', '3/24'))).toBe('2024-03-01 2024-03-31');
  });
});
