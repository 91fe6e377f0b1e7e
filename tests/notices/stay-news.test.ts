import { describe, expect, it } from 'vitest';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import { newsOf, type StayNews, type ToldMatter, unheard } from '../../src/notices/stay-news.ts';
import { viewOf } from '../../src/plans/standing.ts';
import { aged, PARKED, roundMade, type StayGiven, stayOf, tick, undated } from '../support/stays.ts';

const news = (given: StayGiven, on: CivilDate): StayNews[] => newsOf(viewOf(stayOf(given), on));
const of = (given: StayGiven, on: CivilDate, sort: StayNews['sort']): StayNews[] =>
  news(given, on).filter((one) => one.sort === sort);
const matters = (given: StayGiven, on: CivilDate, sort: StayNews['sort']): string[] =>
  of(given, on, sort).map(({ matter }) => matter);

describe('steps', () => {
  it('are told three days ahead, and not before', () => {
    expect(matters({}, '2026-09-16', 'step')).toEqual([]);
    expect(matters({}, '2026-09-17', 'step')).toEqual([
      'step:settle-place',
      'step:settle-running',
      'step:measure-humidity',
      'step:book-lift',
    ]);
  });

  it('are told with their figures, what they list and where to tick them', () => {
    const fill = of({}, '2026-10-29', 'step').find(({ matter }) => matter === 'step:fuel-fill');
    expect(fill).toMatchObject({ began: '2026-10-26', page: 'steps/fuel-fill', forVisitor: false });
    expect(fill?.lines).toEqual(['Fill the tank to: 90 to 95 %', expect.stringMatching(/^Stabilizer/)]);
    const insurer = of({}, '2026-10-29', 'step').find(({ matter }) => matter === 'step:insurer');
    expect(insurer?.lines.join()).toContain('not told yet');
  });

  it('are no news once ticked, skipped ones too', () => {
    const ticks = [
      tick('lay-up', 'settle-place', '2026-09-18'),
      tick('lay-up', 'settle-running', '2026-09-18'),
      tick('lay-up', 'book-lift', '2026-09-18', { state: 'skipped' }),
    ];
    expect(matters({ ticks }, '2026-09-18', 'step')).toEqual(['step:measure-humidity']);
  });

  it('of a plan 14 days past are told, of one 15 days past are not', () => {
    expect(matters({}, '2026-11-15', 'step').length).toBeGreaterThan(10);
    expect(matters({}, '2026-11-16', 'step')).toEqual([]);
    expect(matters({}, '2027-04-15', 'wake').length).toBeGreaterThan(10);
    expect(matters({}, '2027-04-16', 'wake')).toEqual([]);
  });

  it('of the wake-up are told from a month before it comes back', () => {
    expect(matters({}, '2027-02-28', 'wake')).toEqual([]);
    expect(matters({}, '2027-03-01', 'wake')).toEqual(['wake:order-due']);
    expect(of({}, '2027-03-01', 'wake')[0]).toMatchObject({
      page: 'wake-up/order-due',
      // A month before it comes back, never earlier.
      began: '2027-03-01',
    });
  });

  it('with much to list are cut, and say so', () => {
    const traits = { start: 'sedan-drums-all-round' } as const;
    const supplies = of(traits, '2026-09-27', 'step').find(({ matter }) => matter === 'step:order-supplies');
    expect(supplies?.lines).toHaveLength(7);
    expect(supplies?.lines.at(-1)).toMatch(/^and \d+ more on its page$/);
  });
});

describe('on the parking day', () => {
  const STILL = 'still-open';
  const still = (given: StayGiven, on: CivilDate): StayNews[] => news(given, on).filter((one) => one.matter === STILL);

  it('what should have come before it and is still open is told once more, in one line', () => {
    expect(still({}, '2026-10-31')).toEqual([]);
    const open = viewOf(stayOf(), PARKED).layUp.steps.filter(({ day }) => day < PARKED);
    const [told, ...others] = still({}, PARKED);
    expect(others).toEqual([]);
    expect(told).toMatchObject({
      began: PARKED,
      sort: 'step',
      title: `Still open before it stands: ${open.length} steps`,
      forVisitor: false,
    });
    expect(told?.lines).toEqual([
      ...open.slice(0, 6).map(({ title }) => title),
      `and ${open.length - 6} more on its page`,
    ]);
  });

  it('walked on day by day is heard once, for a fortnight', () => {
    const told: ToldMatter[] = [];
    for (const on of Array.from({ length: 40 }, (_, n) => addDays('2026-10-20', n)))
      for (const { matter } of unheard(news({}, on), told)) told.push({ matter, saidOn: on });
    expect(told.filter(({ matter }) => matter === STILL)).toEqual([{ matter: STILL, saidOn: PARKED }]);
    expect(still({}, '2026-11-15')).toHaveLength(1);
    expect(still({}, '2026-11-16')).toEqual([]);
  });

  it('is nothing where all was ticked or left out, nor of a plan made after that day', () => {
    const ticks = viewOf(stayOf(), PARKED)
      .layUp.steps.filter(({ day }) => day < PARKED)
      .map(({ key }, n) => tick('lay-up', key, '2026-10-31', { state: n === 0 ? 'skipped' : 'done' }));
    expect(still({ ticks: ticks.slice(1) }, PARKED)[0]?.title).toBe('Still open before it stands: 1 step');
    expect(still({ ticks }, PARKED)).toEqual([]);
    expect(still({ ahead: -3 }, '2026-11-05')).toEqual([]);
  });
});

describe('rounds', () => {
  it('are told from their day on, to who looks in as well', () => {
    expect(matters({}, '2026-11-30', 'round')).toEqual([]);
    expect(of({}, '2026-12-01', 'round')).toMatchObject([
      { matter: 'round:1', began: '2026-12-01', forVisitor: true, page: 'round' },
    ]);
    expect(matters({ rounds: [roundMade('2026-11-28')] }, '2026-12-01', 'round')).toEqual([]);
  });

  it('are told only as the last that came due, the missed ones by their days', () => {
    const told = of({}, '2027-02-03', 'round');
    expect(told.map(({ matter }) => matter)).toEqual(['round:3']);
    const looks = expect.stringMatching(
      /^Look at: smell, .*; under the hood.*\. Take a voltmeter, a tire gauge and a lamp\.$/,
    );
    expect(told[0]?.lines).toEqual([looks, 'Missed so far: 1 December 2026; 1 January 2027.']);
    expect(of({ rounds: [roundMade('2026-12-01'), roundMade('2027-01-01')] }, '2027-02-03', 'round')[0]?.lines).toEqual(
      [looks],
    );
  });

  it('say what to look at in that month, and no more', () => {
    expect(of({}, '2026-12-01', 'round')[0]?.lines.join()).not.toContain('under the hood');
  });

  it('that nobody can make any more are told to the owner, the last of them, and to nobody who looks in', () => {
    expect(matters({}, '2027-02-18', 'round')).toEqual(['round:3']);
    expect(matters({}, '2027-02-19', 'round')).toEqual([]);
    const missed = (on: CivilDate): StayNews[] => news({}, on).filter(({ matter }) => matter.startsWith('missed:'));
    expect(missed('2027-02-18').map(({ matter }) => matter)).toEqual(['missed:2']);
    expect(missed('2027-02-19').map(({ matter }) => matter)).toEqual(['missed:3']);
    expect(missed('2027-02-19')[0]).toMatchObject({
      forVisitor: false,
      title: expect.stringContaining('1 February 2027'),
    });
    expect(missed('2026-12-21')).toEqual([]);
  });
});

describe('who looks in', () => {
  it('hears rounds, the battery and the coolant, and nothing else', () => {
    const given: StayGiven = {
      rounds: [roundMade('2026-12-01', { smell: 'fuel', mice: 'traces' })],
      papers: { renewsOn: '2027-03-20' },
      car: { drain: 200 },
      parts: {
        'battery-flooded': {
          readings: [{ gauge: 'rest-voltage', day: PARKED, value: 12.5, unit: 'V', warmth: null, recordedOn: PARKED }],
        },
      },
    };
    const all = news(given, '2027-03-02');
    expect(new Set(all.map(({ sort }) => sort))).toEqual(new Set(['round', 'warning', 'found', 'return', 'wake']));
    const heard = all.filter(({ forVisitor }) => forVisitor).map(({ matter }) => matter);
    expect(heard).toEqual(
      expect.arrayContaining(['round:4', 'warning:battery-recharge', 'warning:coolant-unmeasured']),
    );
    for (const matter of heard) expect(matter).toMatch(/^(round:|warning:(battery|coolant))/);
    for (const { matter, forVisitor } of all)
      if (/^(round:|warning:(battery|coolant))/.test(matter)) expect(forVisitor).toBe(true);
  });
});

describe('what a round found', () => {
  it('is told with what to do, from the day of the round', () => {
    const rounds = [roundMade('2026-12-01', { smell: 'fuel' })];
    expect(of({ rounds }, '2026-12-03', 'found')).toMatchObject([
      { matter: 'found:smell', began: '2026-12-01', lines: [expect.stringContaining('Switch nothing on')] },
    ]);
  });
});

describe('the return', () => {
  it('is told a month before', () => {
    expect(of({}, '2027-02-28', 'return')).toEqual([]);
    expect(of({}, '2027-03-01', 'return')).toMatchObject([
      { matter: 'return', began: '2027-03-01', title: 'It comes back on 1 April 2027', page: 'wake-up' },
    ]);
  });

  it('of a stay of days begins on the parking day', () =>
    expect(of({ months: 0, days: 10 }, PARKED, 'return')[0]?.began).toBe(PARKED));

  it('of an open end is never told', () => expect(of({ months: null }, '2029-01-01', 'return')).toEqual([]));

  it('counts what is past or due, and apart from that the safety parts no date clears', () => {
    const given: StayGiven = { parts: { 'oil-filter': aged('oil-filter', 40), 'tires-road': undated('tires-road') } };
    const waits = viewOf(stayOf(given), '2027-03-01').findings.filter(({ standing }) => /^(past|due)$/.test(standing));
    expect(waits.map(({ kind }) => kind.key)).toContain('oil-filter');
    expect(waits.map(({ kind }) => kind.key)).not.toContain('tires-road');
    const undatedNow = viewOf(stayOf(given), '2027-03-01').findings.filter(
      ({ standing, kind }) => standing === 'unproven' && kind.severity === 'safety',
    );
    expect(undatedNow.length).toBeGreaterThanOrEqual(4);
    expect(waits.length).toBeGreaterThan(1);
    expect(of(given, '2027-03-01', 'return')[0]?.lines.slice(1)).toEqual([
      `${waits.length} parts past or due by their dates.`,
      `${undatedNow.length} safety parts that no date clears.`,
    ]);
  });
});

describe('a matter', () => {
  const found: StayNews = {
    ...(of({}, '2026-12-01', 'round')[0] as StayNews),
    matter: 'found:smell',
    began: '2026-12-01',
  };
  const heard = (began: CivilDate, ...told: ToldMatter[]): boolean => unheard([{ ...found, began }], told).length === 0;

  it('is told until it was, and again when it begins anew', () => {
    expect(heard('2026-12-01')).toBe(false);
    expect(heard('2026-12-01', { matter: 'found:smell', saidOn: '2026-11-30' })).toBe(false);
    expect(heard('2026-12-01', { matter: 'found:smell', saidOn: '2026-12-01' })).toBe(true);
    expect(heard('2026-12-01', { matter: 'found:mice', saidOn: '2026-12-01' })).toBe(false);
    expect(heard('2027-01-02', { matter: 'found:smell', saidOn: '2026-12-01' })).toBe(false);
    expect(
      heard(
        '2027-01-02',
        { matter: 'found:smell', saidOn: '2026-12-01' },
        { matter: 'found:smell', saidOn: '2027-01-02' },
      ),
    ).toBe(true);
  });

  it('walked day by day through a whole stay is told once, on the day it begins', () => {
    const told: (ToldMatter & { began: CivilDate })[] = [];
    const rounds = [roundMade('2027-01-01', { wet: 'damp' })];
    const given: StayGiven = { months: 2, days: 15, ahead: 15, rounds, papers: { renewsOn: '2026-12-20' } };
    const [first, last] = ['2026-10-12', '2027-01-31'] as const;
    for (let day = 0; day <= daysBetween(first, last); day++) {
      const on = addDays(first, day);
      for (const { matter, began } of unheard(news(given, on), told)) told.push({ matter, saidOn: on, began });
    }
    const names = told.map(({ matter }) => matter);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(
      expect.arrayContaining([
        'step:order-supplies',
        'round:1',
        'found:wet',
        'warning:policy',
        'return',
        'warning:overdue',
      ]),
    );
    expect(names).toContain('wake:first-start');
    // It was made on its day, before anybody could be asked for it.
    expect(names).not.toContain('round:2');
    for (const { matter, saidOn, began } of told)
      if (matter === 'wake:found-on-rounds')
        expect(saidOn).toBe('2027-01-01'); // The day it was found.
      else if (!/^(wake|missed):/.test(matter) || began >= '2026-12-16') expect(saidOn, matter).toBe(began);
  });

  it('that begins anew in a later round is told a second time', () => {
    const rounds = [
      roundMade('2026-12-01', { smell: 'must' }),
      roundMade('2027-01-01', { smell: 'none' }),
      roundMade('2027-02-01', { smell: 'must' }),
    ];
    const told: ToldMatter[] = [];
    const days: CivilDate[] = [];
    for (const on of ['2026-12-02', '2026-12-20', '2027-01-02', '2027-02-02', '2027-02-20'] as const)
      for (const { matter } of unheard(of({ rounds }, on, 'found'), told)) {
        told.push({ matter, saidOn: on });
        days.push(on);
      }
    expect(days).toEqual(['2026-12-02', '2027-02-02']);
  });
});
