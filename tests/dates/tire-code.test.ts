import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import { explainTireCode } from '../../src/dates/tire-code/explain.ts';
import type { KnownAboutTire } from '../../src/dates/tire-code/narrow.ts';
import { readTireCode } from '../../src/dates/tire-code/read.ts';

const TODAY: CivilDate = '2026-11-25';

const years = (typed: string, known?: KnownAboutTire, today = TODAY): number[] => {
  const answer = readTireCode(typed, today, known);
  return answer.ok ? answer.candidates.map(({ year }) => year) : [];
};
const reason = (typed: string, today = TODAY): string | null => {
  const answer = readTireCode(typed, today);
  return answer.ok ? null : answer.reason;
};
const words = (typed: string, known?: KnownAboutTire) => explainTireCode(readTireCode(typed, TODAY, known), TODAY);

describe('known facts narrow three digits', () => {
  it.each<[string, KnownAboutTire, number[]]>([
    ['the mark of the 1990s was seen', { ninetiesMark: 'seen' }, [1999]],
    ['the mark was not seen, which proves nothing', { ninetiesMark: 'not seen' }, [1979, 1989, 1999]],
    ['no older than the car', { notBefore: '1985-03-01' }, [1989, 1999]],
    ['the car was built in that very week', { notBefore: '1979-06-16' }, [1979, 1989, 1999]],
    ['fitted by then', { fittedBy: '1995-05-05' }, [1979, 1989]],
    ['fitted on the first day of the week', { fittedBy: '1999-06-06' }, [1979, 1989, 1999]],
    ['both ends', { notBefore: '1985-03-01', fittedBy: '1995-05-05' }, [1989]],
  ])('%s', (_, known, wanted) => expect(years('239', known)).toEqual(wanted));

  it('says why each year was struck out', () => {
    const answer = readTireCode('239', TODAY, { notBefore: '1985-03-01', fittedBy: '1995-05-05' });
    if (!answer.ok) throw new Error(answer.reason);
    expect(answer.dropped.map(({ candidate }) => candidate.year)).toEqual([1979, 1999]);
    expect(answer.dropped[0]?.why).toContain('before 1 March 1985');
    expect(answer.dropped[1]?.why).toContain('fitted (by 5 May 1995)');
  });

  it('refuses with the reasons when nothing is left', () => {
    const answer = readTireCode('239', TODAY, { notBefore: '2001-01-01' });
    expect(answer).toMatchObject({ ok: false, reason: 'no-candidate-left', dateCode: '239' });
    expect(!answer.ok && answer.dropped).toHaveLength(3);
  });

  it('holds four digits against the facts too, but not against the mark', () => {
    expect(readTireCode('2318', TODAY, { fittedBy: '2017-01-01' })).toMatchObject({ reason: 'no-candidate-left' });
    expect(years('2318', { ninetiesMark: 'seen' })).toEqual([2018]);
  });

  it('a mark typed along is as good as one told', () => {
    expect(years('DOT AB C2 DEF 239△')).toEqual([1999]);
    expect(years('239 triangle')).toEqual([1999]);
    expect(years('239 <', { ninetiesMark: 'not seen' })).toEqual([1999]);
    expect(reason('538▲')).toBe('no-candidate-left');
  });
});

describe('today narrows', () => {
  it('leaves out decades still ahead', () => {
    expect(years('239', {}, '1992-01-01')).toEqual([1979, 1989]);
    expect(years('239', {}, '1989-06-04')).toEqual([1979, 1989]);
    expect(years('239', {}, '1989-06-03')).toEqual([1979]);
    expect(reason('239', '1975-01-01')).toBe('future-date');
  });
});

describe('the question about the mark', () => {
  const asks = (typed: string, known?: KnownAboutTire) => {
    const answer = readTireCode(typed, TODAY, known);
    return answer.ok && answer.asks;
  };

  it('is asked only where the answer would narrow', () => {
    expect(asks('239')).toBe(true);
    expect(asks('239▲')).toBe(false);
    expect(asks('239', { ninetiesMark: 'not seen' })).toBe(false);
    expect(asks('239', { fittedBy: '1990-01-01' })).toBe(false);
    expect(asks('239', { notBefore: '1990-01-01' })).toBe(false);
    expect(asks('535')).toBe(false);
    expect(asks('2318')).toBe(false);
  });
});

describe('how it was typed', () => {
  it.each([
    ['DOT AB C2 DEF 23 9', 'legacy-3', '239'],
    ['1AB C2D3E4 23 18', 'new-13', '2318'],
    ['(dot) ab-c2-defh_2318', 'legacy-4', '2318'],
    ['DOT R 1AB 2318', 'retread-7', '2318'],
    ['DOT-R1AB2318', 'retread-7', '2318'],
    ['DOT-R1A C2D3E4 2318', 'new-13', '2318'],
    ['ABC2DEF239', 'legacy-3', '239'],
    ['２３１８', 'date-only', '2318'],
    ['TIN: DOT 2318', 'date-only', '2318'],
  ])('%s is %s with date %s', (typed, form, dateCode) => {
    expect(readTireCode(typed, TODAY)).toMatchObject({ ok: true, form, dateCode });
  });

  it('typed together, falls back to three digits where four can’t be a week, and says so', () => {
    expect(readTireCode('ABC2DEF2452', TODAY)).toMatchObject({ form: 'legacy-3', dateCode: '452' });
    expect(words('ABC2DEF2452').doubts.join(' ')).toContain('2452');
  });

  it('reads seven symbols before 2015 as the shortest old number, and names the other reading', () => {
    expect(readTireCode('ABC2310', TODAY)).toMatchObject({ form: 'legacy-3', dateCode: '310' });
    expect(words('ABC2310').doubts.join(' ')).toContain('week 23 of 2010');
    expect(readTireCode('ABC 2310', TODAY)).toMatchObject({ form: 'retread-7', dateCode: '2310' });
    expect(readTireCode('ABC0910', TODAY)).toMatchObject({ form: 'retread-7', dateCode: '0910' });
  });
});

describe('what is refused', () => {
  it.each([
    ['DOT', 'empty'],
    ['--', 'empty'],
    ['12', 'bad-length'],
    ['123456', 'bad-length'],
    ['DOT AB 2318', 'bad-length'],
    ['DOT 1AB C2D3E4 418', 'bad-length'],
    ['DOT 1AB C2D345', 'no-date'],
    ['DOT AB C2 B23', 'no-date'],
    ['1AB C2D3E4 23', 'no-date'],
    ['205/55 R 16', 'not-a-tin'],
    ['DOT 205/55R16', 'not-a-tin'],
    ['165 HR 15', 'not-a-tin'],
    ['165R13', 'not-a-tin'],
    ['6.00-16', 'not-a-tin'],
    ['31x10.50R15', 'not-a-tin'],
    ['91V', 'not-a-tin'],
    ['(E4) 30R-0212345', 'not-a-tin'],
    ['M+S', 'not-a-tin'],
    ['tubeless', 'not-a-tin'],
    ['2018-06-10', 'not-a-tin'],
    ['06/10/2018', 'not-a-tin'],
    ['2'.repeat(90), 'not-a-tin'],
    ['5330', 'week-53-absent'],
  ])('%s: %s', (typed, wanted) => expect(reason(typed)).toBe(wanted));

  it('an approval’s country code can open a number: then the whole number is read', () => {
    expect(years('E4 C2 DEF 2318')).toEqual([2018]);
  });

  it('offers the digits that letters look like', () => {
    expect(readTireCode('1ABC2D3E4O418', TODAY)).toMatchObject({ reason: 'bad-date-symbol', suggest: '0418' });
    expect(readTireCode('231B', TODAY)).toMatchObject({ reason: 'bad-date-symbol', suggest: '2318' });
    expect(readTireCode('52I8', TODAY)).toMatchObject({ reason: 'bad-date-symbol', suggest: '5218' });
    expect(readTireCode('O918', '2017-01-01')).not.toHaveProperty('suggest');
  });

  it('offers swapped pairs only for a year to come', () => {
    expect(readTireCode('1852', TODAY)).toMatchObject({ swapped: { dateCode: '5218' } });
    expect(readTireCode('5026', TODAY)).not.toHaveProperty('swapped');
  });

  it('offers the ISO week where only that has begun', () => {
    expect(readTireCode('4826', TODAY)).toMatchObject({
      reason: 'future-date',
      lenient: { isoWeek: { from: '2026-11-23', to: '2026-11-29' } },
    });
    expect(readTireCode('5326', '2027-01-01')).toMatchObject({
      reason: 'week-53-absent',
      lenient: { from: '2027-01-03', to: '2027-01-09', isoWeek: { from: '2026-12-28', to: '2027-01-03' } },
    });
    expect(readTireCode('5318', TODAY)).toMatchObject({ lenient: { from: '2019-01-06' } });
  });
});

describe('in words', () => {
  it('shows the working of a settled week', () => {
    expect(words('DOT AB C2 2407')).toEqual({
      title: 'Week 24 of 2007',
      working: [
        'The date is the four digits 2407: week 24 of year 07, that is 2007.',
        'Week 1 begins on the first Sunday of the year; every week runs from Sunday to Saturday.',
        'Week 24 of 2007: first day Sunday 17 June 2007, last day Saturday 23 June 2007.',
        'Age on 25 November 2026: 19 years.',
      ],
      doubts: [],
      next: [],
    });
  });

  it('gives an open decade as a range and asks for what can settle it', () => {
    const { title, working, next } = words('DOT AB C2 DEF 239');
    expect(title).toBe('Week 23 of 1979, 1989 or 1999');
    expect(working.at(-1)).toBe('Age on 25 November 2026: at least 27 years, could be 47 years.');
    expect(next[0]).toContain('small triangle');
  });

  it('tells why a week 53 settles the decade', () => {
    expect(words('535').working.join(' ')).toContain('only 1995 had a week 53');
  });

  it.each([
    ['DOT-R 1AB 2318', 'retreading'],
    ['DOT AB C2 DEFH 4099', 'Some makers began in 1999'],
    ['DOT AB C2 2125', 'shorter layout'],
    ['DOT 1AB C2D3E4 0810', '13 symbols'],
    ['DOT 1AG C2D3E4 2318', 'G is not used in these numbers'],
    ['239', 'type all four'],
  ])('puts the doubt about %s', (typed, wanted) => expect(words(typed).doubts.join(' ')).toContain(wanted));

  it.each([
    ['DOT 1AB', 'inner sidewall'],
    ['O418', 'Was 0418 meant?'],
    ['2452', '5224 would be week 52 of 2024'],
    ['5315', '28 December 2015 to 3 January 2016'],
    ['5318', 'week 1 of the next year'],
    ['4826', '23 November 2026 to 29 November 2026'],
    ['AB 2318', 'type only that'],
    ['P205/55R16 91V', 'begins with DOT'],
    ['', 'begins with DOT'],
    ['0018', 'Read the digits again'],
  ])('says what to look at after %s', (typed, wanted) => expect(words(typed).next.join(' ')).toContain(wanted));

  it('repeats the reasons when nothing is left', () => {
    expect(words('239', { notBefore: '2001-01-01' }).working).toHaveLength(4);
  });
});
