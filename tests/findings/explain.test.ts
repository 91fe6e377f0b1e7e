import { describe, expect, it } from 'vitest';
import { CAUTIONS, DEFERS } from '../../src/catalogue/cautions.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { CLOCK_WORDS, explain, rulingLine, turnInWords } from '../../src/findings/explain.ts';
import type { Claim, Reading } from '../../src/findings/facts.ts';
import { practiceOf, rulingOf } from '../../src/findings/ruling.ts';
import { CAR_ID, carOf, dated, finding, kindOf, override, said } from '../support/parts.ts';
import { HOT, reading } from '../support/readings.ts';

const UNBUILT = carOf({ built: { from: null, to: null } });
const TODAY: CivilDate = '2026-11-25';
const told = (...given: Parameters<typeof finding>) => explain(finding(...given));
const why = (...given: Parameters<typeof finding>): string[] => told(...given).reasons.map(({ text }) => text);

describe('the line of its age', () => {
  it.each<[string, string, Claim[], string]>([
    ['one day', 'brake-hoses', [dated('made', '2014-11-25')], 'Made 25 November 2014: 12 years'],
    [
      'a range',
      'brake-hoses',
      [dated('made', '2004-01-01', '2014-12-31')],
      'Made 2004 to 2014: at least 11 years, could be 22 years',
    ],
    ['fitted', 'brake-hoses', [dated('fitted', '2024-06-01')], 'Fitted 1 June 2024: 2 years 5 months'],
    ['filled', 'engine-oil', [dated('filled', '2026-05-25')], 'Filled 25 May 2026: 6 months'],
    [
      'serviced',
      'drums-discs',
      [dated('serviced', '2026-11-01')],
      'Last serviced or looked at 1 November 2026: less than a month',
    ],
    ['used', 'clutch-plate', [dated('used', '2025-11-25')], 'Last used 25 November 2025: 1 year'],
    ['a label', 'harness-fia', [dated('printed', '2027-12-31')], 'Label valid through 31 December 2027'],
    ['nothing', 'brake-hoses', [], 'No date known'],
    ['an answer that is no date', 'brake-hoses', [said('made', 'unknown')], 'No date known'],
    ['original', 'tires-road', [said('made', 'original')], 'Made 1972: at least 53 years, could be 54 years'],
  ])('%s', (_, kind, claims, wanted) => expect(told(kind, claims, TODAY).age).toBe(wanted));

  it('says which dates only bound it', () => {
    expect(told('tires-road', [dated('fitted', '2010-06-03')], TODAY, { car: UNBUILT }).age).toBe(
      'Made: no date of its own; not after 3 June 2010: at least 16 years, how much more is not known',
    );
    expect(told('brake-master', [dated('made', '2012-03-01')], TODAY).age).toBe(
      'Fitted: no date of its own; not before 1 March 2012: could be 14 years',
    );
    const both = [dated('made', '2012-03-01'), dated('used', '2020-01-01')];
    expect(told('brake-master', both, TODAY).age).toBe(
      'Fitted: no date of its own; between 1 March 2012 and 1 January 2020: at least 6 years, could be 14 years',
    );
  });

  it('has a word for every clock', () => {
    expect(Object.values(CLOCK_WORDS).every((words) => /^[A-Z]/.test(words))).toBe(true);
  });
});

describe('the line of the interval', () => {
  it('tells practice, with its sources', () => {
    const [ruling] = told('tires-road', [dated('made', '2020-01-15')], TODAY).reasons;
    expect(ruling?.text).toBe('Practice of the trade: look from 5 years, replace by 10 years.');
    expect(ruling?.sources).toEqual(kindOf('tires-road').interval.sources);
  });

  it('tells lengths to the month', () => {
    expect(rulingLine(practiceOf(kindOf('flares')))).toBe(
      'Practice of the trade: look from 2 years, replace by 3 years 6 months.',
    );
    const ruling = rulingOf(kindOf('tires-road'), [override('tires-road', { lookFrom: 42, replaceBy: 66 })], CAR_ID);
    expect(rulingLine(ruling)).toBe('Your own interval: look from 3 years 6 months, replace by 5 years 6 months.');
  });

  it('tells distance, and a kind replaced on condition only', () => {
    expect(rulingLine(practiceOf(kindOf('engine-oil')))).toBe(
      'Practice of the trade: look from 6 months, replace by 1 year, or 5,000 km, whichever comes first.',
    );
    expect(rulingLine(practiceOf(kindOf('drums-discs')))).toBe(
      'Practice of the trade: look from 6 months, replace on condition only.',
    );
  });

  it('names the handbook or the owner, with the note and without the trade’s sources', () => {
    const overrides = [override('tires-road', { authority: 'handbook', replaceBy: 72, note: 'page 212' })];
    const [ruling] = told('tires-road', [dated('made', '2022-01-15')], TODAY, { overrides }).reasons;
    expect(ruling).toEqual({ text: 'Handbook: replace by 6 years. Note: page 212', sources: [] });
  });

  it('gives way to a label', () => {
    const [ruling] = told('harness-fia', [dated('printed', '2027-12-31')], TODAY).reasons;
    expect(ruling).toEqual({ text: 'The label on the part rules, before any interval.', sources: [] });
  });
});

describe('the line of the standing', () => {
  const line = (...given: Parameters<typeof finding>): string => why(...given)[1] ?? '';
  const made = (from: CivilDate, to: CivilDate = from) => [dated('made', from, to)];

  it('in date: what comes next, and that it is no word about condition', () => {
    expect(line('tires-road', made('2024-01-15'), TODAY)).toBe(
      'Nothing is owed by the calendar; that is not a word about its condition. Next: look from 15 January 2029.',
    );
    const overrides = [override('tires-road', { replaceBy: 72 })];
    expect(line('tires-road', made('2024-01-15'), TODAY, { overrides })).toBe(
      'Nothing is owed by the calendar; that is not a word about its condition. Next: due from 15 October 2029.',
    );
  });

  it('look: since when, and when it is due', () => {
    expect(line('tires-road', made('2020-01-15'), TODAY)).toBe(
      'Wants a look since 15 January 2025; due from 15 October 2029.',
    );
    expect(line('drums-discs', [dated('serviced', '2026-01-15')], TODAY)).toBe('Wants a look since 15 July 2026.');
    expect(line('drums-discs', [dated('serviced', null, '2026-01-15')], TODAY, { car: UNBUILT })).toBe(
      'Wants a look since 15 July 2026 at the latest. Judged by the oldest possible age.',
    );
  });

  it('due: since when, and from when past', () => {
    expect(line('tires-road', made('2017-01-15'), TODAY)).toBe('Due since 15 October 2026; past from 16 January 2027.');
  });

  it('past: since when; both days of a range, and that safety counts from the oldest', () => {
    expect(line('tires-road', made('2012-01-15'), TODAY)).toBe('Past since 16 January 2022.');
    expect(line('tires-road', made('2012-01-01', '2013-12-31'), TODAY)).toBe(
      'Past since 2 January 2022 at the earliest (1 January 2024 at the latest). Judged by the oldest possible age.',
    );
    expect(line('v-belt', made('2012-01-01', '2013-12-31'), TODAY)).toBe(
      'Past since 2 January 2017 at the earliest (1 January 2019 at the latest).',
    );
    expect(line('tires-road', [dated('made', null, '1997-12-31')], TODAY, { car: UNBUILT })).toBe(
      'Past since 1 January 2008 at the latest. Judged by the oldest possible age.',
    );
  });

  it('unproven: what can’t be cleared, and when that ends', () => {
    expect(line('v-belt', [], TODAY)).toBe('Without a date nothing clears it.');
    expect(line('v-belt', made('2015-01-01', '2023-12-31'), TODAY)).toBe(
      'It may be past since 2 January 2020; at its youngest it turns past on 1 January 2029.',
    );
    expect(line('v-belt', [dated('made', '2015-01-01', null)], TODAY)).toBe(
      'It may be past since 2 January 2020; at its youngest it turns past on an unknown day.',
    );
    expect(line('tires-road', [dated('fitted', '2020-06-03')], TODAY, { car: UNBUILT })).toBe(
      'How old it can be at most is not known, so the calendar can’t clear it.',
    );
  });

  it('a label: until when, or since when no more', () => {
    expect(line('harness-fia', [dated('printed', '2027-12-31')], TODAY)).toBe('The label runs until 31 December 2027.');
    expect(line('harness-fia', [dated('printed', '2025-12-31')], TODAY)).toBe('The label ran out on 31 December 2025.');
  });

  it('by distance: no day of the calendar is named as passed that still lies ahead', () => {
    const oil = (km: number, on: CivilDate = '2026-03-01') =>
      why('engine-oil', [dated('filled', '2026-01-01', '2026-01-01', { km: 10_000 })], on, {
        car: carOf({ odometer: [{ day: '2026-02-01', km }] }),
      });
    expect(oil(15_001)[1]).toBe('Past by distance.');
    expect(oil(14_700)[1]).toBe('Due by distance.');
    expect(oil(15_001)[2]).toBe('5,001 of 5,000 km used, by the reading of 1 February 2026.');
    expect(oil(15_001, '2027-01-02')[1]).toBe('Past since 2 January 2027.');
    expect(oil(14_700, '2026-11-01')[1]).toBe('Due since 1 November 2026; past from 2 January 2027.');
    expect(oil(12_000)).toHaveLength(3);
  });

  it('by distance while age is still unproven', () => {
    const claims = [dated('filled', '2025-01-01', '2026-01-31', { km: 10_000 })];
    const car = carOf({ odometer: [{ day: '2026-02-01', km: 15_001 }] });
    expect(why('engine-oil', claims, '2026-03-01', { car })[1]).toBe('Past by distance.');
  });
});

describe('turns in words', () => {
  it.each<[CivilDate | null, CivilDate | null, string]>([
    ['2026-01-01', '2026-01-01', '1 January 2026'],
    ['2026-01-01', null, '1 January 2026'],
    ['2026-01-01', '2027-01-01', '1 January 2026 at the earliest (1 January 2027 at the latest)'],
    [null, '2027-01-01', '1 January 2027 at the latest'],
    [null, null, 'an unknown day'],
  ])('%s and %s: %s', (worst, best, wanted) => expect(turnInWords({ worst, best })).toBe(wanted));
});

describe('the last look', () => {
  it('is told, with what it moves and what not', () => {
    const claims = [dated('made', '2016-01-15'), dated('serviced', '2026-05-05')];
    expect(why('tires-road', claims, TODAY).at(-1)).toBe(
      'Last looked at 5 May 2026: that moves the next look, never the replace-by day.',
    );
  });
});

describe('doubts', () => {
  const doubts = (...given: Parameters<typeof finding>): string[] => told(...given).doubts;

  it('there are none about a receipt', () => {
    expect(doubts('tires-road', [dated('made', '2020-01-15')], TODAY)).toEqual([]);
    expect(doubts('tires-road', [], TODAY)).toEqual([]);
  });

  it.each(['own memory', 'seller’s word', 'assumed'] as const)('%s could be surer', (evidence) => {
    expect(doubts('tires-road', [dated('made', '2020-01-15', '2020-01-15', { evidence })], TODAY)).toEqual([
      `Known only from: ${evidence}. A mark on the part or a receipt would make it surer.`,
    ]);
  });

  it.each(['read on the part', 'receipt', 'dated photo', 'workshop statement'] as const)(
    '%s needs no doubt',
    (evidence) => {
      expect(doubts('tires-road', [dated('made', '2020-01-15', '2020-01-15', { evidence })], TODAY)).toEqual([]);
    },
  );

  it('equals that disagree, and weaker ones that contradict, are named', () => {
    expect(doubts('tires-road', [dated('made', '2015-01-15'), dated('made', '2020-01-15')], TODAY)).toEqual([
      'Two equally good sources disagree: the whole span counts.',
    ]);
    const weaker = dated('made', '2015-01-15', '2015-01-15', { evidence: 'assumed' });
    expect(doubts('tires-road', [weaker, dated('made', '2020-01-15')], TODAY)).toEqual([
      'A weaker source says something else; both are kept.',
    ]);
  });

  it('a clock that stands in for another is named', () => {
    expect(doubts('brake-hoses', [dated('fitted', '2024-06-01')], TODAY)).toEqual([
      'Its making date could not be read: counted from the day it was fitted, and it may have lain on a shelf before.',
    ]);
  });

  it('a clock known by its bounds alone is named', () => {
    expect(doubts('tires-road', [dated('fitted', '2010-06-03')], TODAY)).toEqual([
      'Its own making date is missing; the other dates only bound it.',
    ]);
    expect(doubts('brake-master', [dated('made', '2012-03-01')], TODAY)).toEqual([
      'Its own fitted date is missing; the other dates only bound it.',
    ]);
  });
});

describe('what to do', () => {
  const todo = (...given: Parameters<typeof finding>): string => told(...given).todo;
  const tire = kindOf('tires-road');

  it('in date: nothing now', () =>
    expect(todo('tires-road', [dated('made', '2024-01-15')], TODAY)).toBe('Nothing now.'));

  it('look: the first test of the kind, or where to find its date', () => {
    expect(todo('tires-road', [dated('made', '2020-01-15')], TODAY)).toBe(
      `Look and test. Tread depth: ${tire.tests[0]?.how}`,
    );
    expect(kindOf('fuel-stabilizer').tests).toEqual([]);
    expect(todo('fuel-stabilizer', [dated('made', '2024-06-15')], TODAY)).toBe(
      `Look and test. ${kindOf('fuel-stabilizer').findDate}`,
    );
  });

  it('due: by its last day, which is the day before it turns past', () => {
    expect(todo('tires-road', [dated('made', '2017-01-15')], TODAY)).toBe(
      'Order and book it now, to be done by 15 January 2027.',
    );
    expect(todo('harness-fia', [dated('printed', '2026-12-31')], TODAY)).toBe(
      'Order and book it now, to be done by 31 December 2026.',
    );
  });

  it('due within a range: by the last day of the oldest it can be', () => {
    expect(todo('tires-road', [dated('made', '2017-01-01', '2017-12-31')], TODAY)).toBe(
      'Order and book it now, to be done by 1 January 2027.',
    );
  });

  it('due: fuel is used up or drained, and not ordered', () => {
    expect(todo('fuel-gasoline', [dated('filled', '2026-06-15')], TODAY)).toBe(
      'Use it up mixed with fresh fuel, or drain it, to be done by 15 December 2026.',
    );
    expect(todo('fuel-diesel', [dated('filled', '2025-12-15')], TODAY)).toBe(
      'Use it up, or drain it, to be done by 15 December 2026.',
    );
  });

  it('due by distance: no day is named, the next drive decides', () => {
    const claims = [dated('filled', '2026-10-01', '2026-10-01', { km: 10_000 })];
    const car = carOf({ odometer: [{ day: '2026-11-01', km: 14_700 }] });
    expect(todo('engine-oil', claims, TODAY, { car })).toBe('Order and book it now.');
  });

  it('past: renew it, or bear what neglect does', () => {
    expect(todo('tires-road', [dated('made', '2012-01-15')], TODAY)).toBe(`Renew it. If ignored: ${tire.ignored}`);
  });

  it('past by the owner’s own limit: renew it, though the trade goes by condition', () => {
    const overrides = [override('brake-lines', { replaceBy: 240 })];
    const lines = kindOf('brake-lines');
    expect(lines.interval.replaceBy).toBeNull();
    expect(todo('brake-lines', [dated('fitted', '2000-01-15')], TODAY, { overrides })).toBe(
      `Renew it. If ignored: ${lines.ignored}`,
    );
  });

  it('unproven: find its date, or date it better', () => {
    expect(todo('tires-road', [], TODAY)).toBe(`Find its date. ${tire.findDate}`);
    expect(todo('tires-road', [dated('fitted', '2020-06-03')], TODAY, { car: UNBUILT })).toBe(
      `Find its date. ${tire.findDate}`,
    );
    expect(todo('v-belt', [dated('made', '2015-01-01', '2023-12-31')], TODAY)).toBe(
      `Date it better, or treat it as past. ${kindOf('v-belt').findDate}`,
    );
  });
});

describe('cautions', () => {
  it('are those of the kind, and defer to handbook, law and licensed work', () => {
    expect(told('wipers', [], TODAY).cautions).toEqual([CAUTIONS['wiper-arms'], DEFERS]);
    expect(told('first-aid', [], TODAY).cautions).toEqual([]);
  });
});

describe('readings in words', () => {
  const battery = (readings: Reading[], claims: Claim[] = [dated('made', '2025-01-15')], details = {}) =>
    told('battery-flooded', claims, TODAY, { part: { readings, details } });
  const LOW = reading('rest-voltage', '2026-11-20', 12.2);

  it('are a reason each, with the sources of their test', () => {
    const { reasons } = battery([LOW, reading('charging', '2026-11-21', 14)]);
    const [voltage, charging] = reasons.slice(-2);
    expect(voltage?.text).toMatch(/^Rest voltage 12\.20 V on 20 November 2026: act\. Under 12\.40/);
    expect(voltage?.sources).toBe(kindOf('battery-flooded').tests[0]?.sources);
    expect(charging?.text).toMatch(/^Charging 14\.00 V on 21 November 2026: good\./);
  });

  it('that ask where age does not are named as what asks, and what they ask is what to do', () => {
    const { reasons, todo } = battery([LOW]);
    expect(reasons[1]?.text).toBe('Not its age but its reading asks for this, since 20 November 2026.');
    expect(todo).toMatch(/^Rest voltage: under 12\.40: charge it now.*\.$/);
  });

  it('that ask beside age are what to do first', () => {
    const first = /^Rest voltage: under 12\.40: charge it now; [^.]+\.\d\d [^.]+\.\d\d [^.]+\. /;
    const { reasons, todo } = battery([LOW], [dated('made', '2012-01-15')]);
    expect(reasons[1]?.text).toBe('Past since 16 January 2018.');
    expect(todo).toMatch(first);
    expect(todo.replace(first, '')).toBe(`Renew it. If ignored: ${kindOf('battery-flooded').ignored}`);
    const due = battery([LOW], [dated('made', '2021-01-15')]).todo;
    expect(due.replace(first, '')).toBe('Order and book it now, to be done by 15 January 2027.');
    expect(battery([LOW], []).todo.replace(first, '')).toMatch(/^Find its date\. /);
  });

  it('to watch ask for another within a month', () => {
    const watch = reading('rest-voltage', '2026-11-20', 12.45);
    const { todo } = battery([watch]);
    expect(todo).toMatch(/^Rest voltage wants watching \(12\.40 to 12\.59: .+\): read it again within a month\.$/);
    expect(battery([watch], [dated('made', '2021-01-15')]).todo).toMatch(
      /: read it again within a month\. Order and book it now, to be done by 15 January 2027\.$/,
    );
  });

  it('that are good or not judged ask for nothing', () => {
    expect(battery([reading('rest-voltage', '2026-11-20', 12.65)]).todo).toBe('Nothing now.');
    const { todo, reasons } = battery([reading('density', '2026-11-20', 1.1)]);
    expect(todo).toBe('Nothing now.');
    expect(reasons.at(-1)?.text).toContain('not judged');
  });

  it('an estimate is named as one, with the day it began', () => {
    const { reasons, todo } = battery([reading('rest-voltage', '2026-05-01', 12.65)], undefined, {
      connection: 'connected',
    });
    expect(reasons[1]?.text).toMatch(
      /^By estimate it asks for a look, since \d+ [A-Z][a-z]+ 2026; what is measured or seen settles it\.$/,
    );
    expect(todo).toMatch(/^Charge it, or put it on a maintainer/);
  });

  it('what an estimate asks is what would make it surer, by a test where there is no gauge', () => {
    const fuel = finding('fuel-gasoline', [dated('filled', '2026-05-01')], '2026-07-15', {
      car: carOf({ place: HOT }),
      part: { details: { blend: 'e10' } },
    });
    expect(fuel.by).toBe('estimate');
    expect(explain(fuel).todo).toBe('Use it up mixed with fresh fuel, or drain it.');
    expect(explain(fuel).surer).toBe(`Test it: smell. ${kindOf('fuel-gasoline').tests[0]?.how}`);
  });

  it('one that puts brake fluid off is told, with how far', () => {
    const fluid = (readings: Reading[], details = {}): string[] =>
      why('brake-fluid-glycol', [dated('filled', '2024-12-01')], TODAY, { part: { readings, details } });
    const told = fluid([reading('boiling-point', '2026-09-01', 230)], { grade: 'dot-4' });
    expect(told).toContain(
      'A good reading puts the replace-by off, to 1 September 2027 at the oldest: no longer than a year after it, than 3 years in all, or than the estimate bears.',
    );
    for (const none of [[], [reading('boiling-point', '2026-09-01', 165)], [reading('water', '2025-01-01', 0.5)]])
      expect(fluid(none, { grade: 'dot-4' }).join()).not.toContain('puts the replace-by off');
  });
});

describe('what would make it surer', () => {
  const surer = (kind: string, readings: Reading[] = []): string | null =>
    told(kind, [dated('made', '2025-01-15')], TODAY, { part: { readings } }).surer;

  it('is the quickest gauge, with its minutes and how it goes', () => {
    expect(surer('battery-flooded')).toBe(
      `Measure it: rest voltage, 2 minutes. ${kindOf('battery-flooded').tests[0]?.how}`,
    );
  });

  it('is nothing for thirty days after a reading', () => {
    expect(surer('battery-flooded', [reading('rest-voltage', '2026-10-26', 12.6)])).toBeNull();
    expect(surer('battery-flooded', [reading('rest-voltage', '2026-10-25', 12.6)])).not.toBeNull();
  });

  it('is first what the estimate itself is told from, though another gauge were quicker', () => {
    expect(surer('brake-fluid-glycol')).toMatch(/^Measure it: boiling point, 15 minutes\./);
    expect(surer('tires-road')).toMatch(/^Measure it: cold pressure, 2 minutes\./);
    expect(surer('coolant-iat')).toMatch(/^Measure it: freeze point, 5 minutes\./);
  });

  it('is not answered by a gauge that tells the estimate nothing, nor by one not judged', () => {
    expect(surer('battery-flooded', [reading('charging', '2026-11-20', 14)])).toMatch(/^Measure it: rest voltage/);
    expect(surer('battery-flooded', [reading('density', '2026-11-20', 1.265)])).toMatch(/^Measure it: rest voltage/);
    expect(surer('battery-flooded', [reading('density', '2026-11-20', 1.265, 20)])).toBeNull();
  });

  it('is no gauge of lithium, whose voltage hardly moves, nor of silicone fluid', () => {
    expect(surer('battery-lithium')).toBeNull();
    expect(surer('brake-fluid-silicone')).not.toContain('Measure it');
  });

  it('is its first test where the kind has no gauge', () => {
    for (const kind of ['fuel-gasoline', 'brake-hoses']) {
      const [test] = kindOf(kind).tests;
      expect(surer(kind), kind).toBe(`Test it: ${test?.name.toLowerCase()}. ${test?.how}`);
    }
    expect(kindOf('fuel-stabilizer').tests).toEqual([]);
    expect(surer('fuel-stabilizer')).toBeNull();
  });
});
