import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { MarkAnswer } from '../../src/dates/marks/answer.ts';
import { readBatteryCode } from '../../src/dates/marks/battery-code.ts';
import { readExtinguisherStamp } from '../../src/dates/marks/extinguisher-stamp.ts';
import { readHarnessLabel } from '../../src/dates/marks/harness-label.ts';
import { readHoseLabel } from '../../src/dates/marks/hose-label.ts';
import { readMonthClock } from '../../src/dates/marks/month-clock.ts';
import { readPeriodPrint } from '../../src/dates/marks/period-print.ts';
import { readPrintedExpiry } from '../../src/dates/marks/printed-expiry.ts';

const TODAY: CivilDate = '2026-11-25';

/** "from to" of each candidate, or the reason for the refusal. */
const spans = (answer: MarkAnswer): string[] =>
  answer.ok ? answer.candidates.map(({ from, to }) => `${from} ${to}`) : [answer.reason];
const through = (answer: MarkAnswer): (string | undefined)[] =>
  answer.ok ? answer.candidates.map(({ validThrough }) => validThrough) : [answer.reason];
const doubts = (answer: MarkAnswer): string => (answer.ok ? answer.doubts.join(' ') : '');
const message = (answer: MarkAnswer): string => (answer.ok ? '' : answer.message);

describe('hose label', () => {
  it.each([
    ['DOT 3/15/09', '2009-03-15 2009-03-15'],
    ['11/26', '2026-11-01 2026-11-30'],
    ['11/25/26', '2026-11-25 2026-11-25'],
    ['11/26/26', 'future-date'],
    ['12/73', 'before-labeling-rule'],
    ['1/74', '1974-01-01 1974-01-31'],
    ['5/35', 'before-labeling-rule'],
    ['25/12/09', 'month-out-of-range'],
    ['3/2190', 'future-date'],
    ['3/9999', 'year-out-of-range'],
    ['HR', 'not-this-mark'],
    ['', 'empty'],
  ])('%s: %s', (typed, wanted) => expect(spans(readHoseLabel(typed, TODAY))).toEqual([wanted]));

  it('asks about day-first order', () => {
    expect(message(readHoseLabel('25/12/09', TODAY))).toContain('day first');
    expect(doubts(readHoseLabel('3/4/09', TODAY))).toContain('day first');
    expect(doubts(readHoseLabel('3/15/09', TODAY))).not.toContain('day first');
  });
});

describe('battery code', () => {
  it('gives one month a decade, about twenty years back', () => {
    expect(spans(readBatteryCode('C7', TODAY))).toEqual(['2007-03-01 2007-03-31', '2017-03-01 2017-03-31']);
    expect(spans(readBatteryCode('L6', TODAY))).toEqual(['2006-12-01 2006-12-31', '2016-12-01 2016-12-31']);
    expect(spans(readBatteryCode('k-6', TODAY))).toHaveLength(3);
  });

  it('narrows by what is known', () => {
    expect(spans(readBatteryCode('C7', TODAY, { notBefore: '2010-01-01' }))).toEqual(['2017-03-01 2017-03-31']);
    expect(spans(readBatteryCode('C7', TODAY, { fittedBy: '2010-01-01' }))).toEqual([
      '1997-03-01 1997-03-31',
      '2007-03-01 2007-03-31',
    ]);
    expect(spans(readBatteryCode('C7', TODAY, { notBefore: '2020-01-01' }))).toEqual(['no-candidate-left']);
  });

  it.each([
    ['3/17', '2017-03-01 2017-03-31'],
    ['03/2017', '2017-03-01 2017-03-31'],
    ['C17', '2017-03-01 2017-03-31'],
    ['17/3', 'month-out-of-range'],
    ['12/26', 'future-date'],
    ['M7', 'letter-out-of-range'],
    ['N7', 'not-this-mark'],
    ['3/35', 'year-out-of-range'],
  ])('%s: %s', (typed, wanted) => expect(spans(readBatteryCode(typed, TODAY))).toEqual([wanted]));

  it('puts the doubts that go with letters', () => {
    expect(spans(readBatteryCode('7C', TODAY))).toEqual(spans(readBatteryCode('C7', TODAY)));
    expect(doubts(readBatteryCode('7C', TODAY))).toContain('year, then month');
    expect(doubts(readBatteryCode('J7', TODAY))).toContain('leave out the letter I');
    expect(doubts(readBatteryCode('C7', TODAY))).not.toContain('leave out the letter I');
    expect(doubts(readBatteryCode('3/17', TODAY))).toBe('');
  });
});

describe('molded month clock', () => {
  it.each([
    ['5/98', '1998-05-01 1998-05-31'],
    ['5 2003', '2003-05-01 2003-05-31'],
    ['arrow 5, 98', '1998-05-01 1998-05-31'],
    ['13/98', 'month-out-of-range'],
    ['12/26', 'future-date'],
    ['5/27', 'year-out-of-range'],
    ['98', 'not-this-mark'],
  ])('%s: %s', (typed, wanted) => expect(spans(readMonthClock(typed, TODAY))).toEqual([wanted]));

  it('dates the molding, not the car', () => expect(doubts(readMonthClock('5/98', TODAY))).toContain('molding'));
});

describe('printed period', () => {
  it.each([
    ['3Q09', '2009-07-01 2009-09-30'],
    ['Q3 2009', '2009-07-01 2009-09-30'],
    ['24/07', '2007-06-11 2007-06-17'],
    ['W24 07', '2007-06-11 2007-06-17'],
    ['KW 24/2007', '2007-06-11 2007-06-17'],
    ['24W07', '2007-06-11 2007-06-17'],
    ['2007-W24', '2007-06-11 2007-06-17'],
    ['5/09', '2009-05-01 2009-05-31'],
    ['54/09', 'no-such-period'],
    ['53/07', 'no-such-period'],
    ['4Q27', 'year-out-of-range'],
    ['W50 26', 'future-date'],
    ['hose', 'not-this-mark'],
  ])('%s: %s', (typed, wanted) => expect(spans(readPeriodPrint(typed, TODAY))).toEqual([wanted]));

  it('gives every reading where the print does not say which', () => {
    expect(spans(readPeriodPrint('3/09', TODAY))).toEqual(['2009-03-01 2009-03-31', '2009-07-01 2009-09-30']);
    expect(spans(readPeriodPrint('03/09', TODAY))).toEqual(['2009-01-12 2009-01-18', '2009-03-01 2009-03-31']);
    expect(spans(readPeriodPrint('2009', TODAY))).toEqual(['2009-01-01 2009-12-31', '2009-05-11 2009-05-17']);
    expect(spans(readPeriodPrint('12/26', TODAY))).toEqual(['2026-03-16 2026-03-22']);
    expect(doubts(readPeriodPrint('3/09', TODAY))).toContain('Which of these');
  });
});

describe('harness label', () => {
  it.each([
    ['not valid after 2026', '2026-12-31'],
    ['NOT VALID AFTER 31/12/2028', '2028-12-31'],
    ['not valid after 2040', 'future-date'],
    ['SFI 16.1 3/24', '2026-03-01'],
    ['FIA 8853/98 made 2021', undefined],
    ['3/24', 'which-standard'],
    ['', 'empty'],
  ])('%s: through %s', (typed, wanted) => {
    if (wanted) expect(through(readHarnessLabel(typed, TODAY))).toEqual([wanted]);
    // A year alone on an international label is the last valid one or the year of make.
    else expect(through(readHarnessLabel(typed, TODAY))).toEqual(['2021-12-31', '2026-12-31']);
  });

  it('takes the standard from the person where the label does not say', () => {
    expect(through(readHarnessLabel('3/24', TODAY, 'us'))).toEqual(['2026-03-01']);
    expect(through(readHarnessLabel('3/24', TODAY, 'international'))).toEqual(['2029-12-31']);
    expect(through(readHarnessLabel('2028', TODAY, 'international'))).toEqual(['2028-12-31']);
  });
});

describe('extinguisher stamp', () => {
  it('ends a disposable one twelve years on, from the first day it can have been made', () => {
    expect(through(readExtinguisherStamp('2014', TODAY, 'disposable'))).toEqual(['2025-12-31']);
    expect(through(readExtinguisherStamp('14', TODAY, 'disposable'))).toEqual(['2025-12-31']);
    expect(through(readExtinguisherStamp('5/2014', TODAY, 'rechargeable'))).toEqual([undefined]);
    expect(through(readExtinguisherStamp('2030', TODAY, 'disposable'))).toEqual(['future-date']);
    expect(through(readExtinguisherStamp('full', TODAY, 'disposable'))).toEqual(['not-this-mark']);
  });
});

describe('printed expiry', () => {
  it.each([
    ['2027-05-31', ['2027-05-31']],
    ['05/2027', ['2027-05-31']],
    ['2027-02', ['2027-02-28']],
    ['2028/02', ['2028-02-29']],
    ['2027', ['2027-12-31']],
    ['EXP 05/27', ['2027-05-31']],
    ['use by end of 2019', ['2019-12-31']],
    ['31.05.2027', ['2027-05-31']],
    ['05/06/2027', ['2027-05-06', '2027-06-05']],
    ['2027-02-30', ['no-such-day']],
    ['13/2027', ['no-such-day']],
    ['32/32/2027', ['no-such-day']],
    ['9999', ['year-out-of-range']],
    ['soon', ['not-this-mark']],
    ['', ['empty']],
  ])('%s: through %j', (typed, wanted) => expect(through(readPrintedExpiry(typed, TODAY))).toEqual(wanted));
});
