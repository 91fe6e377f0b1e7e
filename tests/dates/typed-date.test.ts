import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import { edtfOf, readEdtf } from '../../src/dates/partial-date.ts';
import { readTypedDate, type TypedDate, type TypedDateRules } from '../../src/dates/typed-date.ts';
import type { DateOrder } from '../../src/dates/typed-point.ts';
import { MONTHS } from '../../src/dates/words.ts';

const TODAY: CivilDate = '2026-11-25';

const read = (typed: string, rules: Partial<TypedDateRules> = {}): TypedDate =>
  readTypedDate(typed, { today: TODAY, order: 'ask', ...rules });

/** EDTF, first and last day; or what was said; or why not. */
const brief = (typed: string, rules?: Partial<TypedDateRules>) => {
  const answer = read(typed, rules);
  if (!answer.ok) return answer.reason;
  return answer.said === 'date' ? [answer.date.edtf, answer.date.from, answer.date.to] : answer.said;
};

const choices = (typed: string, rules?: Partial<TypedDateRules>): string[] => {
  const answer = read(typed, rules);
  return !answer.ok && answer.reason === 'ambiguous' ? answer.choices.map(({ value }) => value) : [];
};

type Row = [string, string, CivilDate | null, CivilDate | null];
const readsAs = (rows: Row[]): void => {
  it.each(rows)('%j is %s, %s to %s', (typed, ...wanted) => expect(brief(typed)).toEqual(wanted));
};

describe('a day', () => {
  readsAs(
    [
      '2015-06-03',
      '2015-6-3',
      '3 June 2015',
      '3. June 2015',
      '03 june 2015',
      '3 JUN 2015',
      '3 Jun. 2015',
      '3rd June 2015',
      '3rd of June, 2015',
      'June 3, 2015',
      'June 3rd, 2015',
      'Jun 3 2015',
      '3-Jun-2015',
      '3/Jun/2015',
      '  3   June\t2015 ',
      '3\u00a0June 2015',
    ].map((typed): Row => [typed, '2015-06-03', '2015-06-03', '2015-06-03']),
  );
  readsAs([
    ['13/4/2015', '2015-04-13', '2015-04-13', '2015-04-13'],
    ['4/13/2015', '2015-04-13', '2015-04-13', '2015-04-13'],
    ['13.4.2015', '2015-04-13', '2015-04-13', '2015-04-13'],
    ['4/4/2015', '2015-04-04', '2015-04-04', '2015-04-04'],
    ['29 February 2016', '2016-02-29', '2016-02-29', '2016-02-29'],
    ['25 November 2026', '2026-11-25', '2026-11-25', '2026-11-25'],
  ]);
});

describe('a month', () => {
  readsAs(
    [
      'June 2015',
      'june2015',
      'Jun 2015',
      'Jun. 2015',
      'June, 2015',
      'Jun-2015',
      'jun/2015',
      '2015 June',
      '2015-06',
    ].map((typed): Row => [typed, '2015-06', '2015-06-01', '2015-06-30']),
  );
  readsAs(
    ['2015-6', '2015/06', '2015.06', '6/2015', '06/2015', '6.2015', '06-2015'].map(
      (typed): Row => [typed, '2015-06', '2015-06-01', '2015-06-30'],
    ),
  );
  readsAs([
    ['Sept 2015', '2015-09', '2015-09-01', '2015-09-30'],
    ['1/2015', '2015-01', '2015-01-01', '2015-01-31'],
    ['12/2015', '2015-12', '2015-12-01', '2015-12-31'],
    ['feb 2016', '2016-02', '2016-02-01', '2016-02-29'],
    ['November 2026', '2026-11', '2026-11-01', '2026-11-25'],
  ]);

  it.each(MONTHS.map((name, index) => [name, index + 1] as const))(
    '%s is month %i, by its whole name and by its first three letters',
    (name, month) => {
      for (const typed of [`${name} 2015`, `${name.slice(0, 3)} 2015`, `${month}/2015`])
        expect(brief(typed)).toContain(`2015-${String(month).padStart(2, '0')}-01`);
    },
  );
});

describe('a year, a part of one, a decade', () => {
  readsAs([
    ['2015', '2015', '2015-01-01', '2015-12-31'],
    ['2026', '2026', '2026-01-01', '2026-11-25'],
    ['early 2015', '2015-01/2015-04', '2015-01-01', '2015-04-30'],
    ['mid 2015', '2015-05/2015-08', '2015-05-01', '2015-08-31'],
    ['late-2015', '2015-09/2015-12', '2015-09-01', '2015-12-31'],
    ['1960s', '196X', '1960-01-01', '1969-12-31'],
    ['1000s', '100X', '1000-01-01', '1009-12-31'],
    ['1960’s', '196X', '1960-01-01', '1969-12-31'],
    ['the 1960s', '196X', '1960-01-01', '1969-12-31'],
    ['196x', '196X', '1960-01-01', '1969-12-31'],
    ['2020s', '202X', '2020-01-01', '2026-11-25'],
  ]);
});

describe('about', () => {
  readsAs(
    ['about 2015', 'around 2015', 'circa 2015', 'c. 2015', 'c 2015', 'ca 2015', 'approx. 2015', '~2015', '2015~'].map(
      (typed): Row => [typed, '2015~', '2014-01-01', '2016-12-31'],
    ),
  );
  readsAs([
    ['roughly 2015', '2015~', '2014-01-01', '2016-12-31'],
    ['2015ish', '2015~', '2014-01-01', '2016-12-31'],
    ['about June 2015', '2015-06~', '2015-03-01', '2015-09-30'],
    ['about April 2015', '2015-04~', '2015-01-01', '2015-07-31'],
    ['about February 2016', '2016-02~', '2015-11-01', '2016-05-31'],
    ['about 2026', '2026~', '2025-01-01', '2026-11-25'],
    ['about 3 June 2015', '2015-06-03~', '2015-05-19', '2015-06-18'],
  ]);

  it('of what is already a span is not understood rather than widened by a guess', () => {
    for (const typed of [
      'about early 2015',
      'about the 1960s',
      'about between 2009 and 2013',
      'about unknown',
      'about',
    ])
      expect(brief(typed)).toBe('not understood');
  });
});

describe('between, before, after', () => {
  readsAs(
    [
      'between 2009 and 2013',
      'from 2009 to 2013',
      'from 2009 until 2013',
      '2009 to 2013',
      '2009-2013',
      '2009 – 2013',
    ].map((typed): Row => [typed, '2009/2013', '2009-01-01', '2013-12-31']),
  );
  readsAs([
    ['between June 2009 and 3 May 2013', '2009-06/2013-05-03', '2009-06-01', '2013-05-03'],
    ['between the 1960s and 1972', '196X/1972', '1960-01-01', '1972-12-31'],
    ['between 2020 and 2030', '2020/2030', '2020-01-01', '2026-11-25'],
  ]);
  readsAs(
    ['before 1998', 'earlier than 1998', 'older than 1998', 'pre-1998', 'pre 1998', 'pre1998'].map(
      (typed): Row => [typed, '../1997-12-31', null, '1997-12-31'],
    ),
  );
  readsAs(
    ['until 1998', 'till 1998', 'by 1998', 'up to 1998', 'not after 1998', 'no later than 1998', '1998 or before'].map(
      (typed): Row => [typed, '../1998-12-31', null, '1998-12-31'],
    ),
  );
  readsAs(
    ['after 2011', 'later than 2011', 'newer than 2011', 'post-2011', 'post 2011'].map(
      (typed): Row => [typed, '2012-01-01/..', '2012-01-01', TODAY],
    ),
  );
  readsAs(
    ['since 2011', 'from 2011', 'from 2011 on', 'from 2011 onwards', 'not before 2011', '2011 or later'].map(
      (typed): Row => [typed, '2011-01-01/..', '2011-01-01', TODAY],
    ),
  );
  readsAs([
    ['before June 1998', '../1998-05-31', null, '1998-05-31'],
    ['before 3 June 1998', '../1998-06-02', null, '1998-06-02'],
    ['before the 1980s', '../1979-12-31', null, '1979-12-31'],
    ['up to June 1998', '../1998-06-30', null, '1998-06-30'],
    ['by 2030', '../2030-12-31', null, TODAY],
    ['after June 2011', '2011-07-01/..', '2011-07-01', TODAY],
    ['after 31 December 2011', '2012-01-01/..', '2012-01-01', TODAY],
  ]);
});

describe('what is no date and still an answer', () => {
  it.each([
    ['original', ['original', 'Orig.', 'as built', 'from new', 'since new', 'FACTORY']],
    ['unknown', ['unknown', 'not known', 'don’t know', "don't know", 'dont know', 'no idea', '?', '???']],
    ['not looked', ['not looked yet', 'not looked', 'Not yet looked', 'not yet', 'not seen yet', 'have not looked']],
  ])('%s', (said, typed) => {
    for (const text of typed) expect(brief(text)).toBe(said);
  });
});

describe('EDTF itself', () => {
  readsAs([
    ['2004-06-XX', '2004-06-XX', '2004-06-01', '2004-06-30'],
    ['2004-XX', '2004-XX', '2004-01-01', '2004-12-31'],
    ['2015?', '2015?', '2014-01-01', '2016-12-31'],
    ['2015-06%', '2015-06%', '2015-03-01', '2015-09-30'],
    ['2009/2013', '2009/2013', '2009-01-01', '2013-12-31'],
    ['2009-06/2013-05-03', '2009-06/2013-05-03', '2009-06-01', '2013-05-03'],
    ['2009~/2013', '2009~/2013', '2008-01-01', '2013-12-31'],
    ['../1998', '../1998', null, '1998-12-31'],
    ['/1998', '/1998', null, '1998-12-31'],
    ['1998/..', '1998/..', '1998-01-01', TODAY],
    ['1998/', '1998/', '1998-01-01', TODAY],
    ['[1987-05,1997-05]', '[1987-05,1997-05]', '1987-05-01', '1997-05-31'],
    ['[1997-05,1987-05]', '[1997-05,1987-05]', '1987-05-01', '1997-05-31'],
    ['{1960,1961-12}', '{1960,1961-12}', '1960-01-01', '1961-12-31'],
    ['[1967,1970..1972]', '[1967,1970..1972]', '1967-01-01', '1972-12-31'],
    ['[..1984]', '[..1984]', null, '1984-12-31'],
    ['[1984..]', '[1984..]', '1984-01-01', TODAY],
  ]);

  it.each([
    ['2001-21', 'a season: it depends on the hemisphere'],
    ['{2001-21,2003}', 'a season among dates'],
    ['2013/2009', 'an interval that ends before it begins'],
    ['0985', 'a year before 1000'],
    ['../0985', 'an end before 1000'],
    ['0099~', 'a year of two digits'],
    ['-0050', 'a year before the common era'],
    ['Y17000', 'a year of five digits'],
    ['/9999~', 'an end after 9999'],
    ['20150603', 'eight digits, which the package takes for milliseconds since 1970'],
    ['1433289600000', 'a true number of milliseconds'],
    ['99991985020042004', 'digits beyond every calendar'],
    ['..', 'nothing but dots'],
    ['/', 'nothing but a stroke'],
    ['2015-06-03T23:30:00', 'a time of day, which the package reads in the machine’s own zone'],
    ['2015-06-03T23:30:00Z', 'a time of day in any zone'],
    ['2015-02-29', 'a leap day of another year, which the package takes for 1 March'],
    ['2014/2015-02-29', 'an interval that ends on one'],
    ['1900-02-29~', 'one of a century, and about'],
    ['', 'nothing'],
    ['XXXX', 'no digit at all'],
    ['June 2015', 'words'],
    ['[2015', 'a bracket left open'],
  ])('%j is none of ours: %s', (text) => expect(readEdtf(text)).toBeNull());

  it('is written for a range, and reads back as it', () => {
    expect(edtfOf({ from: '2015-06-03', to: '2015-06-03' })).toBe('2015-06-03');
    expect(edtfOf({ from: '2015-06-03', to: null })).toBe('2015-06-03/..');
    expect(edtfOf({ from: null, to: '2015-06-03' })).toBe('../2015-06-03');
    expect(readEdtf(edtfOf({ from: '2015-06-03', to: '2016-01-01' }))).toEqual({
      edtf: '2015-06-03/2016-01-01',
      from: '2015-06-03',
      to: '2016-01-01',
    });
  });
});

describe('the order of day and month', () => {
  it.each<[DateOrder, string]>([
    ['day first', '2015-04-03'],
    ['month first', '2015-03-04'],
  ])('%s: 3/4/2015 is %s', (order, wanted) => {
    for (const typed of ['3/4/2015', '03.04.2015', '3-4-2015']) expect(brief(typed, { order })).toContain(wanted);
  });

  it('is asked for where no setting tells it', () => {
    expect(choices('3/4/2015')).toEqual(['2015-04-03', '2015-03-04']);
    const answer = read('3/4/2015');
    expect(answer).toMatchObject({ ok: false, reason: 'ambiguous' });
    expect(!answer.ok && answer.reason === 'ambiguous' && answer.choices.map(({ label }) => label)).toEqual([
      '3 April 2015',
      '4 March 2015',
    ]);
  });

  it('needs no question where only one order is a day', () => {
    expect(brief('13/4/2015')).toContain('2015-04-13');
    expect(brief('13/4/2015', { order: 'day first' })).toContain('2015-04-13');
    expect(brief('4/13/2015', { order: 'month first' })).toContain('2015-04-13');
  });

  it('against the setting is offered, never taken', () => {
    expect(choices('4/13/2015', { order: 'day first' })).toEqual(['2015-04-13']);
    expect(choices('13/4/2015', { order: 'month first' })).toEqual(['2015-04-13']);
  });

  it('of two dates is asked with every pairing that can be', () => {
    expect(choices('between 1/2/2015 and 3/4/2015')).toEqual([
      '2015-02-01/2015-04-03',
      '2015-02-01/2015-03-04',
      '2015-01-02/2015-04-03',
      '2015-01-02/2015-03-04',
    ]);
    expect(choices('between 3/4/2015 and 4/3/2015')).toEqual([
      '2015-04-03/2015-04-03',
      '2015-03-04/2015-03-04',
      '2015-03-04/2015-04-03',
    ]);
  });

  it('is clear where the other one lies ahead or too early', () => {
    expect(brief('1/12/2026')).toContain('2026-01-12');
    expect(brief('1/12/2026', { order: 'day first' })).toBe('future');
    expect(brief('3/4/2015', { notBefore: { day: '2015-04-01', why: 'the car was not built before' } })).toContain(
      '2015-04-03',
    );
  });

  it('a choice is read as the date it names', () => {
    for (const value of [...choices('3/4/2015'), ...choices('3/4/15'), ...choices('between 1/2/2015 and 3/4/2015')])
      expect(brief(value)).toContain(value);
  });
});

describe('years of two digits', () => {
  it.each([
    ['3 June 15', ['1915-06-03', '2015-06-03']],
    ["June '15", ['1915-06', '2015-06']],
    ['June 15', ['1915-06', '2015-06']],
    ['’05', ['1905', '2005']],
    ['3/4/15', ['1915-04-03', '1915-03-04', '2015-04-03', '2015-03-04']],
  ])('%j is asked back', (typed, wanted) => expect(choices(typed)).toEqual(wanted));

  it('are clear where one century is out: ahead of today, or before the car', () => {
    expect(brief('’85')).toEqual(['1985', '1985-01-01', '1985-12-31']);
    expect(brief('3 June 98')).toContain('1998-06-03');
    expect(brief('3 June 15', { notBefore: { day: '1972-01-01', why: 'the car was not built before' } })).toContain(
      '2015-06-03',
    );
  });

  it('may lie ahead where a label’s last day does', () => {
    expect(choices('June 27', { mayBeAhead: true })).toEqual(['1927-06', '2027-06']);
    expect(brief('June 27', { mayBeAhead: true, notBefore: { day: '1972-01-01', why: 'x' } })).toContain('2027-06');
  });
});

describe('refusals, each with its reason', () => {
  const built = { day: '1972-03-01' as CivilDate, why: 'the car was not built before' };

  it.each<[string, string, Partial<TypedDateRules>]>([
    ['', 'empty', {}],
    [' \t\n\u00a0', 'empty', {}],
    ['2027', 'future', {}],
    ['26 November 2026', 'future', {}],
    ['December 2026', 'future', {}],
    ['after 2026', 'future', {}],
    ['between 2027 and 2030', 'future', {}],
    ['1971', 'too early', { notBefore: built }],
    ['29 February 1972', 'too early', { notBefore: built }],
    ['before March 1972', 'too early', { notBefore: built }],
    ['0050', 'too early', { notBefore: built }],
    ['between 2013 and 2009', 'backwards', {}],
    ['2013-2009', 'backwards', {}],
    ['from June 2015 to May 2015', 'backwards', {}],
    ['banana', 'not understood', {}],
    ['31 June 2015', 'not understood', {}],
    ['29 February 2015', 'not understood', {}],
    ['2015-02-29', 'not understood', {}],
    ['about 2015-02-29', 'not understood', {}],
    ['2015-13', 'not understood', {}],
    ['13/2015', 'not understood', {}],
    ['0/2015', 'not understood', {}],
    ['20150603', 'not understood', {}],
    ['10000', 'not understood', {}],
    ['0000', 'not understood', {}],
    ['0000s', 'not understood', {}],
    ['maybe 2015', 'not understood', {}],
    ['marked 2015', 'not understood', {}],
    ['decade 2015', 'not understood', {}],
    ['15', 'not understood', {}],
    ['6/15', 'not understood', {}],
    ['tomorrow', 'not understood', {}],
    ['2015-06-03T10:00', 'not understood', {}],
    ['between 2009', 'not understood', {}],
    ['between 2009 and', 'not understood', {}],
    ['before', 'not understood', {}],
    ['up to now', 'not understood', {}],
    ['2009 to unknown', 'not understood', {}],
    ['2015 original', 'not understood', {}],
  ])('%j is refused: %s', (typed, reason, rules) => expect(brief(typed, rules)).toBe(reason));

  it('name what was typed and what stands against it', () => {
    const message = (typed: string, rules?: Partial<TypedDateRules>): string => {
      const answer = read(typed, rules);
      return answer.ok ? '' : answer.message;
    };
    expect(message(' June 2027 ')).toBe(
      '“June 2027” is June 2027, and that lies ahead: today is 25 November 2026. Check the year.',
    );
    expect(message('1971', { notBefore: built })).toBe(
      '“1971” is 1971, too early: the car was not built before (1 March 1972).',
    );
    expect(message('between 2013 and 2009')).toContain('ends before it begins');
    expect(message('banana')).toContain('“banana” was not understood as a date. Try 3 June 2015');
    expect(message('')).toContain('Nothing was typed');
    expect(message('3/4/2015')).toContain('more than one way');
  });

  it('leave a range alone that only begins too early or only ends ahead', () => {
    expect(brief('1972', { notBefore: built })).toEqual(['1972', '1972-01-01', '1972-12-31']);
    expect(brief('between 1970 and 1975', { notBefore: built })).toEqual(['1970/1975', '1970-01-01', '1975-12-31']);
    expect(brief('2026')).toEqual(['2026', '2026-01-01', TODAY]);
  });
});

describe('a label’s last day', () => {
  const ahead = { mayBeAhead: true };
  it('may lie ahead, and is not cut off at today', () => {
    expect(brief('May 2027', ahead)).toEqual(['2027-05', '2027-05-01', '2027-05-31']);
    expect(brief('2026', ahead)).toEqual(['2026', '2026-01-01', '2026-12-31']);
    expect(brief('after 2027', ahead)).toEqual(['2028-01-01/..', '2028-01-01', null]);
  });
});

describe('how it was understood', () => {
  it.each([
    ['2015-06', 'June 2015'],
    ['about 2015', '2014 to 2016'],
    ['before 1998', 'up to 31 December 1997'],
    ['after 2011', 'from 1 January 2012 on'],
    ['2026', '2026'],
    ['2026-11-25', '25 November 2026'],
    ['early 2015', 'January 2015 to April 2015'],
  ])('%j is shown as %j', (typed, wanted) => {
    const answer = read(typed);
    expect(answer.ok && answer.said === 'date' ? answer.understood : '').toBe(wanted);
  });
});

describe('whatever is typed', () => {
  it.each([
    ['a long word', 'x'.repeat(20_000)],
    ['a long number', '2015'.repeat(5_000)],
    ['a long set left open', `[${Array(1_000).fill('2015').join(',')}`],
    ['many betweens', 'between '.repeat(2_000)],
    ['many ors', `${'2015 or '.repeat(2_000)}before`],
    ['many blanks', `2015${' '.repeat(20_000)}June${' '.repeat(20_000)}x`],
    ['other digits', '٢٠١٥-٠٦-٠٣'],
    ['wide digits', '２０１５'],
    ['right to left', '\u202e5102'],
    ['a lone surrogate', '2015\ud800'],
    ['combining marks', 'Ju\u0301ne 2015'],
    ['a dotted capital I', 'İ 2015'],
    ['a zero byte', '2015\0'],
    ['an emoji', '🚗 2015'],
    ['a pattern', '(.*)+$'],
    ['a property of every object', 'constructor'],
    ['a prototype', '__proto__'],
  ])('%s is refused without a crash', (_, typed) => expect(brief(typed)).toBe('not understood'));
});
