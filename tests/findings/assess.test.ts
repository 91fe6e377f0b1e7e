import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import type { Answers, Claim, Reading } from '../../src/findings/facts.ts';
import { asksOf, outlookOf } from '../../src/findings/outlook.ts';
import { graver, rankOf, STANDING_MEANS, STANDINGS } from '../../src/findings/standing.ts';
import { carOf, dated, finding, override, said } from '../support/parts.ts';
import { HOT, reading } from '../support/readings.ts';

const UNBUILT = carOf({ built: { from: null, to: null } });

describe('standings', () => {
  it('grow graver in one order, and each is explained', () => {
    expect(STANDINGS).toEqual(['in date', 'look', 'due', 'unproven', 'past']);
    for (const [index, standing] of STANDINGS.entries()) {
      expect(rankOf(standing)).toBe(index);
      expect(STANDING_MEANS[standing]).toMatch(/\.$/);
      for (const other of STANDINGS) expect(graver(standing, other)).toBe(STANDINGS[Math.max(index, rankOf(other))]);
    }
  });
});

/** Brake hose, safety: made 31 March 2020, look from 48, replace by 72, due 3 months before. */
describe('one known day, day by day', () => {
  const made = [dated('made', '2020-03-31')];

  it.each<[CivilDate, string, CivilDate | null, string]>([
    ['2020-03-31', 'in date', null, 'the day it was made'],
    ['2024-03-30', 'in date', null, 'the day before the look-from day'],
    ['2024-03-31', 'look', '2024-03-31', 'the look-from day itself'],
    ['2025-12-30', 'look', '2024-03-31', 'the day before the lead begins'],
    ['2025-12-31', 'due', '2025-12-31', 'three months before the limit'],
    ['2026-03-31', 'due', '2025-12-31', 'the limit’s own day'],
    ['2026-04-01', 'past', '2026-04-01', 'the day after the limit'],
    ['2060-01-01', 'past', '2026-04-01', 'long after'],
  ])('on %s it is %s since %s: %s', (on, standing, began) => {
    expect(finding('brake-hoses', made, on)).toMatchObject({ standing, began });
  });

  it('tells the days on which it turns', () => {
    expect(finding('brake-hoses', made, '2022-01-01')).toMatchObject({
      clock: 'made',
      look: { worst: '2024-03-31', best: '2024-03-31' },
      due: { worst: '2025-12-31', best: '2025-12-31' },
      past: { worst: '2026-04-01', best: '2026-04-01' },
      label: null,
      distance: null,
      lastLook: null,
    });
  });

  it.each([
    ['wipers', 'fitted', 12, 2],
    ['desiccant', 'used', 3, 1],
    ['grease-points', 'serviced', 12, 2],
    ['tires-road', 'made', 120, 3],
  ] as const)('%s: due from %s + %i months less %i', (kind, clock, life, lead) => {
    const limit = addMonths('2020-03-31', life);
    const from = addMonths(limit, -lead);
    const on = (day: CivilDate) => finding(kind, [dated(clock, '2020-03-31')], day).standing;
    expect([addDays(from, -1), from, limit, addDays(limit, 1)].map(on)).toEqual([
      kind === 'grease-points' ? 'in date' : 'look',
      'due',
      'due',
      'past',
    ]);
  });

  it('a kind without a limit only ever wants a look', () => {
    const drums = (on: CivilDate) => finding('drums-discs', [dated('serviced', '2020-03-31')], on);
    expect(drums('2020-09-29')).toMatchObject({ standing: 'in date', due: null, past: null });
    expect(drums('2020-09-30')).toMatchObject({ standing: 'look', began: '2020-09-30' });
    expect(drums('2050-01-01')).toMatchObject({ standing: 'look', began: '2020-09-30' });
  });

  it('an interval without a look-from age goes from in date to due', () => {
    const overrides = [override('brake-hoses', { replaceBy: 72 })];
    const at = (on: CivilDate) => finding('brake-hoses', made, on, { overrides });
    expect(at('2025-12-30')).toMatchObject({ standing: 'in date', look: null });
    expect(at('2025-12-31').standing).toBe('due');
  });

  it('an interval of a month or two has no lead: it is due on its last day alone', () => {
    const overrides = [override('brake-hoses', { replaceBy: 2 })];
    const at = (on: CivilDate) => finding('brake-hoses', made, on, { overrides }).standing;
    expect(['2020-05-30', '2020-05-31', '2020-06-01'].map((on) => at(on as CivilDate))).toEqual([
      'in date',
      'due',
      'past',
    ]);
  });
});

describe('a range of days', () => {
  const years = (from: CivilDate | null, to: CivilDate | null): Claim => dated('made', from, to);

  it('a safety item is judged by its oldest possible age', () => {
    const hose = (on: CivilDate) => finding('brake-hoses', [years('2015-01-01', '2018-12-31')], on);
    expect(hose('2018-12-31')).toMatchObject({ standing: 'in date' });
    expect(hose('2019-01-01')).toMatchObject({ standing: 'look', began: '2019-01-01' });
    expect(hose('2020-10-01')).toMatchObject({ standing: 'due', began: '2020-10-01' });
    expect(hose('2021-01-01').standing).toBe('due');
    expect(hose('2021-01-02')).toMatchObject({ standing: 'past', began: '2021-01-02' });
    expect(hose('2024-12-31')).toMatchObject({ standing: 'past', began: '2021-01-02' });
    expect(hose('2030-01-01')).toMatchObject({ standing: 'past', began: '2021-01-02' });
    expect(hose('2021-01-02')).toMatchObject({
      look: { worst: '2019-01-01', best: '2022-12-31' },
      due: { worst: '2020-10-01', best: '2024-09-30' },
      past: { worst: '2021-01-02', best: '2025-01-01' },
    });
  });

  it('another item that straddles its limit is unproven until it is past at its youngest', () => {
    const belt = (on: CivilDate) => finding('v-belt', [years('2015-01-01', '2018-12-31')], on);
    expect(belt('2020-01-01')).toMatchObject({ standing: 'due', began: '2019-10-01' });
    expect(belt('2020-01-02')).toMatchObject({ standing: 'unproven', began: null });
    expect(belt('2023-12-31')).toMatchObject({ standing: 'unproven', began: null });
    expect(belt('2024-01-01')).toMatchObject({ standing: 'past', began: '2024-01-01' });
  });

  it('without any date nothing is proven, whatever the kind', () => {
    for (const kind of ['brake-hoses', 'v-belt', 'drums-discs', 'engine-oil'])
      for (const claims of [[], [said('made', 'unknown')], [said('serviced', 'not looked'), said('filled', 'unknown')]])
        expect(finding(kind, claims, '2026-11-25')).toMatchObject({
          standing: 'unproven',
          began: null,
          since: null,
          look: null,
          due: null,
          past: null,
        });
  });

  it('a bound by another clock is not the part’s own date, but it counts', () => {
    expect(finding('tires-road', [dated('fitted', '2010-06-03')], '2020-06-03', { car: UNBUILT })).toMatchObject({
      standing: 'unproven',
      since: { from: null, to: '2010-06-03', evidence: null },
    });
    expect(finding('tires-road', [dated('fitted', '2010-06-03')], '2020-06-04', { car: UNBUILT })).toMatchObject({
      standing: 'past',
      began: '2020-06-04',
    });
  });

  it('with an open start it is unproven until its youngest age is past', () => {
    for (const kind of ['tires-road', 'v-belt']) {
      const open = [years(null, '1997-12-31')];
      const life = kind === 'tires-road' ? 120 : 60;
      const last = addMonths('1997-12-31', life);
      expect(finding(kind, open, last, { car: UNBUILT })).toMatchObject({ standing: 'unproven', began: null });
      expect(finding(kind, open, addDays(last, 1), { car: UNBUILT })).toMatchObject({
        standing: 'past',
        began: addDays(last, 1),
      });
    }
  });

  it('an open start on a car of known age begins with the car', () => {
    const tire = finding('tires-road', [years(null, '1997-12-31')], '1990-01-01');
    expect(tire).toMatchObject({ standing: 'past', began: '1982-01-02', since: { from: '1972-01-01' } });
  });

  it('with an open start and no limit a look is owed at once', () => {
    const drums = finding('drums-discs', [dated('serviced', null, '2020-05-05')], '2020-06-01', { car: UNBUILT });
    expect(drums).toMatchObject({ standing: 'look', began: '2020-05-05' });
    expect(drums.look).toEqual({ worst: null, best: '2020-11-05' });
  });

  it('with an open end it can be as old as its start', () => {
    expect(finding('brake-hoses', [years('2015-01-01', null)], '2021-01-02').standing).toBe('past');
    expect(finding('v-belt', [years('2015-01-01', null)], '2060-01-01').standing).toBe('unproven');
  });
});

describe('which clock is read', () => {
  it('“original” follows the car’s build date, and corrects itself with it', () => {
    const tires = [said('made', 'original')];
    const at = (from: CivilDate, to: CivilDate) =>
      finding('tires-road', tires, '2026-11-25', { car: carOf({ built: { from, to } }) });
    expect(at('1972-01-01', '1972-12-31')).toMatchObject({ standing: 'past', began: '1982-01-02' });
    expect(at('2020-05-01', '2020-05-31')).toMatchObject({ standing: 'look', began: '2025-05-01' });
    expect(finding('tires-road', tires, '2026-11-25', { car: UNBUILT })).toMatchObject({
      standing: 'unproven',
      since: null,
    });
  });

  it('a hose without a making date counts from the day it was fitted', () => {
    const hose = finding('brake-hoses', [dated('fitted', '2021-06-03')], '2026-11-25');
    expect(hose).toMatchObject({ clock: 'fitted', standing: 'look', began: '2025-06-03' });
  });

  it('also where the making date was looked for and not found', () => {
    const claims = [said('made', 'unknown'), dated('fitted', '2021-06-03')];
    expect(finding('brake-hoses', claims, '2026-11-25').clock).toBe('fitted');
  });

  it('also where “original” tells nothing', () => {
    const claims = [said('made', 'original'), dated('fitted', '2021-06-03')];
    expect(finding('brake-hoses', claims, '2026-11-25', { car: UNBUILT }).clock).toBe('fitted');
  });

  it('but from its making where that is known, however badly', () => {
    const claims = [dated('made', '2010-01-01', '2019-12-31', { evidence: 'assumed' }), dated('fitted', '2021-06-03')];
    expect(finding('brake-hoses', claims, '2026-11-25')).toMatchObject({ clock: 'made', standing: 'past' });
  });

  it('a tire has no such stand-in: the day of fitting never makes it younger', () => {
    expect(finding('tires-road', [dated('fitted', '2024-06-03')], '2026-11-25')).toMatchObject({
      clock: 'made',
      standing: 'unproven',
    });
  });

  it('the making date bounds the fitting, and the fitting the making', () => {
    const claims = [dated('made', '2012-03-01', '2012-03-31'), dated('fitted', '2010-01-01', '2014-12-31')];
    expect(finding('brake-master', claims, '2026-11-25').since).toMatchObject({ from: '2012-03-01', to: '2014-12-31' });
    const other = [dated('made', '2009-01-01', '2013-12-31'), dated('fitted', '2011-05-05')];
    expect(finding('tires-road', other, '2026-11-25').since).toMatchObject({ from: '2009-01-01', to: '2011-05-05' });
  });

  it('a kind that goes by its label goes by its making where the label is missing', () => {
    expect(finding('harness-fia', [dated('made', '2021-12-20')], '2026-12-20')).toMatchObject({
      clock: 'made',
      standing: 'due',
      label: null,
    });
  });
});

describe('a label on the part', () => {
  const label = dated('printed', '2026-01-01', '2026-12-31');

  it('rules over every interval, the owner’s own too', () => {
    const overrides = [override('child-seat', { authority: 'handbook', replaceBy: 24 })];
    const seat = (on: CivilDate) =>
      finding('child-seat', [dated('made', '2017-01-01'), label], on, { overrides, car: UNBUILT });
    expect(seat('2026-12-31')).toMatchObject({ standing: 'due', label: '2026-12-31' });
    expect(seat('2027-01-01')).toMatchObject({ standing: 'past', began: '2027-01-01' });
  });

  it('is due for the lead before its last day, and wants its look as long before as the interval would', () => {
    const harness = (on: CivilDate) => finding('harness-fia', [label], on);
    expect(harness('2022-01-01')).toMatchObject({
      clock: 'printed',
      look: { worst: '2025-12-31', best: '2025-12-31' },
      due: { worst: '2026-09-30', best: '2026-09-30' },
      past: { worst: '2027-01-01', best: '2027-01-01' },
    });
    expect(harness('2025-12-30').standing).toBe('in date');
    expect(harness('2025-12-31').standing).toBe('look');
    expect(harness('2026-09-29').standing).toBe('look');
    expect(harness('2026-09-30').standing).toBe('due');
    expect(harness('2026-12-31').standing).toBe('due');
    expect(harness('2027-01-01').standing).toBe('past');
  });

  it('needs no other date', () => {
    expect(finding('child-seat', [dated('printed', '2032-12-31')], '2026-11-25')).toMatchObject({
      standing: 'in date',
      since: null,
      label: '2032-12-31',
    });
  });

  it('of several straps the one that runs out first counts', () => {
    const straps = [label, dated('printed', '2024-01-01', '2024-12-31')];
    expect(finding('harness-fia', straps, '2025-01-01')).toMatchObject({ standing: 'past', label: '2024-12-31' });
  });

  it('open at its end never counts as the day an interval starts', () => {
    expect(finding('harness-fia', [dated('printed', '2024-01-01', null)], '2024-01-02')).toMatchObject({
      standing: 'past',
      label: '2024-01-01',
    });
  });

  it('under an interval without a limit asks for no look, and is due on its last day', () => {
    const overrides = [override('harness-fia', { lookFrom: 12 })];
    const harness = (on: CivilDate) => finding('harness-fia', [label], on, { overrides });
    expect(harness('2026-12-30')).toMatchObject({ standing: 'in date', look: null });
    expect(harness('2026-12-31').standing).toBe('due');
    expect(harness('2027-01-01').standing).toBe('past');
  });
});

describe('a look that was made', () => {
  const made = dated('made', '2016-01-15');

  it('puts the next look off, and never moves the replace-by day', () => {
    const tire = (on: CivilDate, ...looks: Claim[]) => finding('tires-road', [made, ...looks], on);
    const look = dated('serviced', '2024-05-05');
    expect(tire('2024-06-01')).toMatchObject({ standing: 'look', began: '2021-01-15' });
    expect(tire('2024-06-01', look)).toMatchObject({ standing: 'in date', began: null });
    expect(tire('2025-05-04', look).standing).toBe('in date');
    expect(tire('2025-05-05', look)).toMatchObject({ standing: 'look', began: '2025-05-05' });
    expect(tire('2025-10-15', look).standing).toBe('due');
    expect(tire('2026-01-16', look)).toMatchObject({ standing: 'past', began: '2026-01-16' });
    for (const day of ['2024-06-01', '2025-12-01'] as CivilDate[]) {
      expect(tire(day, look).due).toEqual(tire(day).due);
      expect(tire(day, look).past).toEqual(tire(day).past);
    }
  });

  it('before the look-from age brings no look forward', () => {
    const tire = finding('tires-road', [made, dated('serviced', '2016-06-01')], '2020-01-01');
    expect(tire.look).toEqual({ worst: '2021-01-15', best: '2021-01-15' });
  });

  it('counts from its earliest possible day', () => {
    const tire = finding('tires-road', [made, dated('serviced', '2024-01-01', '2024-12-31')], '2025-01-01');
    expect(tire).toMatchObject({ standing: 'look', look: { worst: '2025-01-01', best: '2025-12-31' } });
  });

  it('of unknown day moves nothing', () => {
    const tire = finding('tires-road', [made, dated('serviced', null, '2024-12-31')], '2025-01-01', { car: UNBUILT });
    expect(tire).toMatchObject({ standing: 'look', began: '2021-01-15' });
  });

  it('puts off the look before a label’s last day too', () => {
    const claims = [dated('printed', '2026-12-31'), dated('serviced', '2026-01-10')];
    expect(finding('harness-fia', claims, '2026-02-01')).toMatchObject({
      standing: 'in date',
      look: { worst: '2027-01-10', best: '2027-01-10' },
    });
    expect(finding('harness-fia', claims, '2026-10-01').standing).toBe('due');
  });

  it('is the clock itself where a kind goes by its service', () => {
    const drums = finding('drums-discs', [dated('serviced', '2026-05-25')], '2026-11-25');
    expect(drums).toMatchObject({ clock: 'serviced', lastLook: null, standing: 'look', began: '2026-11-25' });
  });
});

/** Engine oil: filled, look from 6, replace by 12 months or 5,000 km, due from 4,500. */
describe('distance, whichever comes first', () => {
  const oil = (km: number | null, readings: [CivilDate, number][], on: CivilDate = '2026-03-01') =>
    finding('engine-oil', [dated('filled', '2026-01-01', '2026-01-01', { km })], on, {
      car: carOf({ odometer: readings.map(([day, reading]) => ({ day, km: reading })) }),
    });

  it.each<[number, string, string]>([
    [10_000, 'in date', 'nothing driven'],
    [14_499, 'in date', 'just under nine tenths'],
    [14_500, 'due', 'nine tenths'],
    [15_000, 'due', 'the limit itself'],
    [15_001, 'past', 'a kilometer over'],
  ])('from 10,000 km, a reading of %i is %s: %s', (reading, standing) => {
    expect(oil(10_000, [['2026-02-01', reading]])).toMatchObject({
      standing,
      distance: { km: reading - 10_000, standing },
    });
  });

  it('begins on the day of the reading that told it, not of the last one', () => {
    const readings: [CivilDate, number][] = [
      ['2026-01-01', 10_000],
      ['2026-01-20', 14_600],
      ['2026-02-01', 14_900],
      ['2026-02-20', 15_100],
      ['2026-02-25', 15_500],
    ];
    expect(oil(10_000, readings, '2026-02-10')).toMatchObject({ standing: 'due', began: '2026-01-20' });
    expect(oil(10_000, readings, '2026-02-26')).toMatchObject({ standing: 'past', began: '2026-02-20' });
  });

  it('is past from the first reading over the limit, and due from the first at nine tenths', () => {
    const readings: [CivilDate, number][] = [
      ['2026-01-20', 14_500],
      ['2026-02-10', 15_000],
      ['2026-02-20', 15_001],
    ];
    expect(oil(10_000, readings, '2026-02-15')).toMatchObject({ standing: 'due', began: '2026-01-20' });
    expect(oil(10_000, readings, '2026-02-21')).toMatchObject({ standing: 'past', began: '2026-02-20' });
  });

  it('knows only the readings up to the day asked for', () => {
    expect(oil(10_000, [['2026-02-01', 20_000]], '2026-01-31')).toMatchObject({ standing: 'in date', distance: null });
  });

  it('says nothing without an odometer, without a start, or after the odometer was changed', () => {
    expect(oil(10_000, []).distance).toBeNull();
    expect(oil(null, [['2026-02-01', 99_000]]).distance).toBeNull();
    expect(oil(10_000, [['2026-02-01', 40]]).distance).toBeNull();
  });

  it('does not excuse age, and age does not excuse distance', () => {
    const readings: [CivilDate, number][] = [['2026-02-01', 15_001]];
    expect(oil(10_000, [['2026-02-01', 10_500]], '2027-01-02').standing).toBe('past');
    expect(oil(10_000, readings, '2026-03-01').standing).toBe('past');
  });

  it('keeps its first day once age says the same, so that nothing begins twice', () => {
    const readings: [CivilDate, number][] = [['2026-02-01', 15_001]];
    expect(oil(10_000, readings, '2027-01-01')).toMatchObject({ standing: 'past', began: '2026-02-01' });
    expect(oil(10_000, readings, '2027-01-02')).toMatchObject({ standing: 'past', began: '2026-02-01' });
    const nearly: [CivilDate, number][] = [['2026-02-01', 14_800]];
    expect(oil(10_000, nearly, '2026-11-01')).toMatchObject({ standing: 'due', began: '2026-02-01' });
  });

  it('keeps age’s first day where age came first', () => {
    expect(oil(10_000, [['2027-02-01', 15_001]], '2027-03-01')).toMatchObject({
      standing: 'past',
      began: '2027-01-02',
    });
  });

  it('tells of a part without a date too', () => {
    const unknown = said('filled', 'unknown', { km: 10_000 });
    const car = carOf({ odometer: [{ day: '2026-02-01', km: 15_001 }] });
    expect(finding('engine-oil', [unknown], '2026-03-01', { car })).toMatchObject({
      standing: 'past',
      began: '2026-02-01',
      since: null,
    });
  });

  it('is left out where the owner’s interval has none', () => {
    const car = carOf({ odometer: [{ day: '2026-02-01', km: 99_000 }] });
    const overrides = [override('engine-oil', { replaceBy: 24 })];
    const claims = [dated('filled', '2026-01-01', '2026-01-01', { km: 10_000 })];
    expect(finding('engine-oil', claims, '2026-03-01', { car, overrides }).distance).toBeNull();
  });

  it('is not told from an older start than the last one', () => {
    const claims = [
      dated('filled', '2025-06-01', '2025-06-01', { km: 5_000 }),
      dated('filled', '2026-01-01', '2026-01-01', { km: null }),
    ];
    const car = carOf({ odometer: [{ day: '2026-02-01', km: 11_000 }] });
    expect(finding('engine-oil', claims, '2026-03-01', { car }).distance).toBeNull();
  });

  it('counts from the last claim that has a reading', () => {
    const claims = [
      dated('filled', '2025-06-01', '2025-06-01', { km: 5_000 }),
      dated('filled', '2026-01-01', '2026-01-01', { km: 10_000 }),
      dated('filled', '2026-01-01', '2026-01-01', { km: null }),
    ];
    const car = carOf({ odometer: [{ day: '2026-02-01', km: 11_000 }] });
    expect(finding('engine-oil', claims, '2026-03-01', { car }).distance).toMatchObject({ km: 1_000 });
  });
});

describe('readings', () => {
  const TODAY: CivilDate = '2026-11-25';
  const creep = (mm: number, day: CivilDate = '2026-06-01'): Reading => reading('pedal-creep', day, mm);
  const volts = (value: number, day: CivilDate = '2026-06-01'): Reading => reading('rest-voltage', day, value);
  const master = (readings: Reading[], claims = [dated('fitted', '2025-01-15')], on = TODAY) =>
    finding('brake-master', claims, on, { part: { readings } });
  const battery = (readings: Reading[], claims = [dated('made', '2025-01-15')], on = TODAY) =>
    finding('battery-flooded', claims, on, { part: { readings } });

  it('of “act” make a safety part past and another due, of “watch” a look, of good nothing', () => {
    expect(master([creep(5)])).toMatchObject({ standing: 'past', by: 'reading', began: '2026-06-01' });
    expect(master([creep(2)])).toMatchObject({ standing: 'look', by: 'reading', began: '2026-06-01' });
    expect(master([creep(0)])).toMatchObject({ standing: 'in date', by: 'age', began: null, gravest: null });
    expect(battery([volts(12.2)])).toMatchObject({ standing: 'due', by: 'reading', began: '2026-06-01' });
    expect(battery([volts(12.45)])).toMatchObject({ standing: 'look', by: 'reading', began: '2026-06-01' });
    expect(battery([volts(12.65)], undefined, '2026-06-01')).toMatchObject({ standing: 'in date', gravest: null });
  });

  it('of “good” keep what an estimate asks months later from being a reading’s', () => {
    expect(battery([volts(12.65)])).toMatchObject({ standing: 'look', by: 'estimate', gravest: null });
  });

  it('and age and estimates tell their own news, none of another', () => {
    const { news } = battery([volts(12.2)], [dated('made', '2021-01-15')], '2026-12-01');
    expect(news.calendar).toEqual({ standing: 'due', began: '2026-10-15' });
    expect(news.reading).toEqual({ verdict: 'act', began: '2026-06-01' });
    expect(news.estimate !== null && news.estimate > '2026-06-01' && news.estimate <= '2026-12-01').toBe(true);
    expect(battery([volts(12.65)], undefined, '2026-06-01').news).toEqual({
      calendar: { standing: 'in date', began: null },
      reading: { verdict: null, began: null },
      estimate: null,
    });
  });

  it('are news from the day they were written down, and stand from the day they were taken', () => {
    const late = { ...volts(12.2), recordedOn: '2026-07-01' as const };
    expect(battery([late])).toMatchObject({ began: '2026-06-01', news: { reading: { began: '2026-07-01' } } });
    const ahead = { ...volts(12.2), recordedOn: '2026-05-01' as const };
    expect(battery([ahead])).toMatchObject({ began: '2026-06-01', news: { reading: { began: '2026-06-01' } } });
  });

  it('of a second gauge as bad are news by themselves, though the standing began before', () => {
    const acid = reading('density', '2026-08-01', 1.1, 27);
    expect(battery([volts(12.2), acid])).toMatchObject({
      began: '2026-06-01',
      gravest: { reading: { gauge: 'rest-voltage' } },
      news: { reading: { verdict: 'act', began: '2026-08-01' } },
    });
  });

  it('begin on the day of the first bad one, and end with a good one', () => {
    const readings = [creep(5, '2026-03-01'), creep(6, '2026-05-01'), creep(0, '2026-07-01'), creep(5, '2026-09-01')];
    const on = (day: CivilDate) => master(readings, undefined, day);
    expect(on('2026-02-28').standing).toBe('in date');
    expect(on('2026-03-01')).toMatchObject({ standing: 'past', began: '2026-03-01' });
    expect(on('2026-06-30')).toMatchObject({ standing: 'past', began: '2026-03-01' });
    expect(on('2026-07-01')).toMatchObject({ standing: 'in date', began: null });
    expect(on('2026-09-01')).toMatchObject({ standing: 'past', began: '2026-09-01' });
  });

  it('leave the days of age as they are', () => {
    const [bad, none] = [master([creep(5)]), master([])];
    expect([bad.look, bad.due, bad.past]).toEqual([none.look, none.due, none.past]);
  });

  it('stand beside age: the graver counts, of two as grave age is named, and the earlier day', () => {
    const old = [dated('fitted', '2010-01-15')];
    expect(master([creep(5, '2024-06-01')], old)).toMatchObject({ standing: 'past', by: 'age', began: '2024-06-01' });
    expect(master([creep(5)], old)).toMatchObject({ standing: 'past', by: 'age', began: '2025-01-16' });
    const looked = [dated('made', '2023-01-15')];
    expect(battery([volts(12.45)], looked)).toMatchObject({ standing: 'look', by: 'age', began: '2026-01-15' });
    expect(battery([volts(12.2)], looked)).toMatchObject({ standing: 'due', by: 'reading', began: '2026-06-01' });
  });

  it('clear nothing: what is past, due, to look at or unproven by age stays so', () => {
    const good = { readings: [reading('tread', '2026-11-01', 8), reading('hardness', '2026-11-01', 60, 20)] };
    for (const [made, standing] of [
      ['2012-01-15', 'past'],
      ['2017-01-15', 'due'],
      ['2020-01-15', 'look'],
    ] as const) {
      const tire = finding('tires-road', [dated('made', made)], TODAY, { part: good });
      expect(tire.measured.map(({ verdict }) => verdict)).toEqual(['good', 'good']);
      expect(tire).toMatchObject({ standing, by: 'age' });
      expect(tire).toEqual({
        ...finding('tires-road', [dated('made', made)], TODAY),
        part: tire.part,
        measured: tire.measured,
      });
    }
    expect(finding('tires-road', [], TODAY, { part: good }).standing).toBe('unproven');
  });

  it('of a part without a date leave it unproven, unless it is condemned for safety', () => {
    expect(battery([volts(12.2)], [])).toMatchObject({
      standing: 'unproven',
      by: 'age',
      began: null,
      gravest: { verdict: 'act', began: '2026-06-01' },
    });
    expect(master([creep(5)], [])).toMatchObject({ standing: 'past', by: 'reading', began: '2026-06-01' });
  });

  it('that can’t be judged ask for nothing and clear nothing', () => {
    const part = { readings: [reading('cold-pressure', '2026-06-01', 0.4, 15)] };
    const tire = (made: CivilDate) => finding('tires-road', [dated('made', made)], TODAY, { part });
    expect(tire('2025-01-15')).toMatchObject({ standing: 'in date', gravest: null, measured: [{ verdict: null }] });
    expect(tire('2012-01-15').standing).toBe('past');
  });
});

/** Smell and look are no gauges: a look is all that can answer its estimate. Gasoline wants one every month. */
describe('a look at fuel', () => {
  const HOT_TANK = carOf({ place: HOT });
  const fuel = (on: CivilDate, ...looks: Claim[]) =>
    finding('fuel-gasoline', [dated('filled', '2026-05-01'), ...looks], on, {
      car: HOT_TANK,
      part: { details: { blend: 'e10' } },
    });
  const look = (day: CivilDate): Claim => dated('serviced', day);
  /** To be used soon, then to be drained: both before the calendar’s own look on 1 August. */
  const [soon, drain] = asksOf(fuel('2026-07-31')) as [CivilDate, CivilDate];

  it('answers the estimate for as long as a look lasts, and no longer', () => {
    expect('2026-05-01' < soon && soon < drain && drain < '2026-07-01').toBe(true);
    expect(fuel(drain)).toMatchObject({ standing: 'look', by: 'estimate', began: soon, news: { estimate: drain } });
    const looked = addDays(drain, 2);
    expect(fuel(looked, look(looked))).toMatchObject({ standing: 'in date', news: { estimate: null } });
    expect(fuel(addDays(addMonths(looked, 1), -1), look(looked))).toMatchObject({ standing: 'in date' });
    expect(fuel(addMonths(looked, 1), look(looked))).toMatchObject({ standing: 'look', by: 'estimate' });
  });

  it('answers no day that comes only after it', () => {
    expect(fuel(soon, look(addDays(soon, -1)))).toMatchObject({ news: { estimate: soon } });
    expect(fuel(addDays(drain, -1), look(soon))).toMatchObject({ standing: 'in date', news: { estimate: null } });
    expect(fuel(drain, look(soon))).toMatchObject({ began: drain, news: { estimate: drain } });
  });

  it('lets it ask anew from the day the look has lapsed, which is told again', () => {
    const looked = addDays(drain, 2);
    const lapsed = addMonths(looked, 1);
    expect(fuel(addDays(lapsed, 1), look(looked))).toMatchObject({ began: lapsed, news: { estimate: lapsed } });
  });

  it('that lapses after the next day has come leaves the standing the day it began', () => {
    const lapsed = addMonths(soon, 1);
    expect(drain < lapsed).toBe(true);
    expect(fuel(addDays(lapsed, 1), look(soon))).toMatchObject({ began: drain, news: { estimate: lapsed } });
  });

  it('answers no estimate of what can be measured', () => {
    const battery = (claims: Claim[]) =>
      finding('battery-flooded', [dated('made', '2026-01-15'), ...claims], '2026-11-25', {
        part: { readings: [reading('rest-voltage', '2026-06-01', 12.65)] },
      });
    expect(battery([look('2026-11-24')]).news.estimate).toBe(battery([]).news.estimate);
    expect(battery([]).news.estimate).not.toBeNull();
  });
});

/** Filled 1 December 2024: by practice due from 1 October, past from 2 December 2026; 36 months end on 1 December 2027. */
describe('a good reading of brake fluid', () => {
  const FILLED = [dated('filled', '2024-12-01')];
  /** So good that its estimate bears more than a year. */
  const GOOD = reading('boiling-point', '2026-09-01', 230);
  const fluid = (
    readings: Reading[],
    {
      on = '2026-12-15',
      claims = FILLED,
      details = { grade: 'dot-4' },
      ...more
    }: { on?: CivilDate; claims?: Claim[]; details?: Answers; overrides?: ReturnType<typeof override>[] } = {},
  ) => finding('brake-fluid-glycol', claims, on, { ...more, part: { readings, details } });
  const pastOn = (...given: Parameters<typeof fluid>) => fluid(...given).past;

  it('puts practice off by twelve months after it', () => {
    expect(fluid([])).toMatchObject({ standing: 'past', past: { worst: '2026-12-02', best: '2026-12-02' } });
    for (const good of [GOOD, reading('water', '2026-09-01', 1)])
      expect(fluid([good])).toMatchObject({
        standing: 'look',
        due: { worst: '2027-07-01', best: '2027-07-01' },
        past: { worst: '2027-09-02', best: '2027-09-02' },
      });
    expect(fluid([GOOD], { on: '2027-09-01' }).standing).toBe('due');
    expect(fluid([GOOD], { on: '2027-09-02' })).toMatchObject({ standing: 'past', began: '2027-09-02' });
  });

  it.each<[string, Reading, Answers]>([
    ['of a boiling point not far above the wet minimum', reading('boiling-point', '2026-09-01', 190), {}],
    ['of a grade whose wet minimum is high', reading('boiling-point', '2026-09-01', 215), { grade: 'dot-5-1' }],
    ['of water', reading('water', '2026-09-01', 1.9), {}],
  ])('no longer than the day its worst end reaches the wet minimum: %s', (_, good, details) => {
    const put = fluid([good], { details: { grade: 'dot-4', ...details } });
    const wet = outlookOf(put)?.days[0]?.when.earliest ?? null;
    expect(put.measured[0]?.verdict).toBe('good');
    expect(wet !== null && wet > '2026-12-02' && wet < '2027-09-01').toBe(true);
    expect(put.past).toEqual({ worst: addDays(wet ?? '2026-09-01', 1), best: addDays(wet ?? '2026-09-01', 1) });
  });

  it('and by 36 months from its fill in all, however often it is good', () => {
    const readings = [GOOD, reading('boiling-point', '2027-08-01', 230), reading('water', '2027-11-30', 0.5)];
    expect(fluid(readings, { on: '2027-12-01' })).toMatchObject({ standing: 'due', past: { worst: '2027-12-02' } });
    expect(fluid(readings, { on: '2027-12-02' }).standing).toBe('past');
  });

  it('never brings the day nearer', () => {
    expect(pastOn([reading('boiling-point', '2025-01-01', 220)])).toEqual({ worst: '2026-12-02', best: '2026-12-02' });
  });

  it('counts each end of a range by its own 36 months', () => {
    const claims = [dated('filled', '2024-01-01', '2024-12-31')];
    expect(pastOn([GOOD], { claims })).toEqual({ worst: '2027-01-02', best: '2027-09-02' });
  });

  it.each<[string, Reading]>([
    ['water to watch', reading('water', '2026-09-01', 2.5)],
    ['a boiling point to watch', reading('boiling-point', '2026-10-01', 160)],
  ])('puts nothing off beside %s', (_, other) => {
    expect(fluid([GOOD, other])).toMatchObject({ standing: 'past', by: 'age', past: { worst: '2026-12-02' } });
  });

  it('puts nothing off beside a bad copper strip, which makes it past at once', () => {
    const copper = reading('copper', '2026-09-01', 200);
    expect(fluid([GOOD, copper], { on: '2026-09-01' })).toMatchObject({
      standing: 'past',
      by: 'reading',
      began: '2026-09-01',
      past: { worst: '2026-12-02' },
    });
    expect(fluid([GOOD, reading('copper', '2026-09-01', 100)])).toMatchObject({ past: { worst: '2027-09-02' } });
  });

  it('by a copper strip alone is none', () => {
    expect(fluid([reading('copper', '2026-09-01', 0)])).toMatchObject({
      standing: 'past',
      past: { worst: '2026-12-02' },
    });
  });

  it.each(['handbook', 'own'] as const)('moves no interval of the %s', (authority) => {
    const overrides = [override('brake-fluid-glycol', { authority, lookFrom: 18, replaceBy: 24 })];
    expect(fluid([GOOD], { overrides })).toEqual({
      ...fluid([], { overrides }),
      part: fluid([GOOD]).part,
      measured: fluid([GOOD]).measured,
    });
    expect(fluid([GOOD], { overrides })).toMatchObject({ standing: 'past', past: { worst: '2026-12-02' } });
  });

  it('clears no fluid whose fill nobody knows', () => {
    expect(fluid([GOOD], { claims: [] }).standing).toBe('unproven');
  });

  it('is outweighed by a bad one: past at once, in its first month as well', () => {
    const bad = reading('boiling-point', '2024-12-20', 150);
    expect(fluid([bad], { on: '2024-12-20' })).toMatchObject({ standing: 'past', by: 'reading', began: '2024-12-20' });
    expect(fluid([bad, reading('boiling-point', '2024-12-21', 230)], { on: '2024-12-21' }).standing).toBe('in date');
  });

  it('stretches no other fluid', () => {
    const details = { volume: 8 };
    const readings = [reading('ph', '2026-11-01', 8.5), reading('reserve-alkalinity', '2026-11-01', 9)];
    const coolant = (part: object) => finding('coolant-iat', [dated('filled', '2020-12-01')], '2026-11-25', { part });
    const { past, measured } = coolant({ details, readings });
    expect(measured.map(({ verdict }) => verdict)).toEqual(['good', 'good']);
    expect(past).toEqual(coolant({}).past);
  });
});
