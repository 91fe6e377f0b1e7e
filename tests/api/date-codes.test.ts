import { describe, expect, it } from 'vitest';
import { document, pointers, problemOf } from '../support/api.ts';
import { openSite } from '../support/site.ts';

interface TireCode {
  candidates: { week: number; year: number; from: string; to: string }[];
  warnings: string[];
  dateCode: string;
  form: string;
  dropped: { candidate: { year: number }; why: string }[];
  working: string[];
  doubts: string[];
  next: string[];
}

const ask = (query: Record<string, string>) => openSite().get(`/api/v1/date-codes/tire?${new URLSearchParams(query)}`);
const read = async (query: Record<string, string>) => document<TireCode>(await ask(query));
const years = async (query: Record<string, string>) => (await read(query)).candidates.map(({ year }) => year);

describe('GET /date-codes/tire', () => {
  it('answers the week a code stands for, with its days', async () => {
    expect(await read({ code: 'DOT 4B7 C2DE1F 2318' })).toMatchObject({
      candidates: [{ week: 23, year: 2018, from: '2018-06-10', to: '2018-06-16' }],
      warnings: [],
      dateCode: '2318',
      form: 'new-13',
      dropped: [],
    });
  });

  it('answers every decade three digits can mean, oldest first, and what would settle it', async () => {
    const answer = await read({ code: '417' });
    expect(answer.candidates.map(({ year }) => year)).toEqual([1977, 1987, 1997]);
    expect(answer.next.join(' ')).toContain('small triangle');
  });

  it('goes by what else is known, and says what that struck out', async () => {
    expect(await years({ code: '417', notBefore: '1985-01-01' })).toEqual([1987, 1997]);
    expect(await years({ code: '417', fittedBy: '1985-01-01' })).toEqual([1977]);
    expect(await years({ code: '417', ninetiesMark: 'seen' })).toEqual([1997]);
    const { dropped } = await read({ code: '417', ninetiesMark: 'seen' });
    expect(dropped.map(({ candidate }) => candidate.year)).toEqual([1977, 1987]);
  });

  it('answers as on another day', async () => {
    expect((await problemOf(await ask({ code: '1027' }), 422)).code).toBe('future-date');
    expect(await years({ code: '1027', on: '2027-04-01' })).toEqual([2027]);
    expect(await years({ code: '417', on: '1990-01-01' })).toEqual([1977, 1987]);
  });

  it('warns of what is odd', async () => {
    expect((await read({ code: '2399' })).warnings).toEqual(['early-four-digit']);
  });

  it.each([
    ['', 'empty'],
    ['4B7 C2DE1F', 'no-date'],
    ['185/65 R15', 'not-a-tin'],
    ['0018', 'week-zero'],
    ['5418', 'week-too-high'],
    ['5320', 'week-53-absent'],
    ['2O17', 'bad-date-symbol'],
    ['12', 'bad-length'],
    ['2330', 'future-date'],
  ])('answers no code of “%s” with the reason, %s', async (code, reason) => {
    const problem = await problemOf(await ask({ code }), 422);
    expect(problem.code).toBe(reason);
    expect(problem.detail).not.toBe('');
    expect(pointers(problem)).toEqual(['#/code']);
  });

  it('suggests what was probably meant', async () => {
    expect(await problemOf(await ask({ code: '2O17' }), 422)).toMatchObject({ suggest: '2017' });
  });

  it('says which facts ruled everything out', async () => {
    const problem = await problemOf(await ask({ code: '417', notBefore: '1999-01-01' }), 422);
    expect(problem.code).toBe('no-candidate-left');
    expect(problem.detail).toContain('Week 41 of 1997 ended on 18 October 1997, before 1 January 1999');
  });

  it.each<[Record<string, string>, string]>([
    [{}, '#/code'],
    [{ code: '2318', ninetiesMark: 'perhaps' }, '#/ninetiesMark'],
    [{ code: '2318', notBefore: '1985' }, '#/notBefore'],
    [{ code: '2318', fittedBy: '2026-02-30' }, '#/fittedBy'],
    [{ code: 'x'.repeat(201) }, '#/code'],
  ])('asked as %j is a problem at %s', async (query, pointer) => {
    expect(pointers(await problemOf(await ask(query), 422))).toEqual([pointer]);
  });

  it('asked as on a day that is none is a problem', async () => {
    const problem = await problemOf(await ask({ code: '2318', on: 'tomorrow' }), 400);
    expect(problem.detail).toContain('“tomorrow” is no day');
  });
});

describe('GET /dates/read', () => {
  const readDate = (query: Record<string, string>) =>
    openSite().get(`/api/v1/dates/read?${new URLSearchParams(query)}`);

  it('answers how a date is understood', async () => {
    expect(await document(await readDate({ text: 'about 2015' }))).toEqual({
      said: 'date',
      understood: '2014 to 2016',
      edtf: '2015~',
      from: '2014-01-01',
      to: '2016-12-31',
    });
    expect(await document(await readDate({ text: 'Not looked yet' }))).toEqual({
      said: 'not looked',
      understood: 'not looked',
      edtf: null,
      from: null,
      to: null,
    });
  });

  it('answers with choices where it can be read in more than one way', async () => {
    const problem = await problemOf(await readDate({ text: 'June ’15' }), 422);
    expect(problem.code).toBe('ambiguous');
    expect(problem.errors).toMatchObject([
      { pointer: '#/text', choices: [{ value: '1915-06' }, { value: '2015-06', label: 'June 2015' }] },
    ]);
  });

  it.each([
    ['long ago', {}, 'not-understood'],
    ['2027', {}, 'future'],
    ['', {}, 'empty'],
  ])('answers “%s” with the reason', async (text, more, code) => {
    expect(await problemOf(await readDate({ text, ...more }), 422)).toMatchObject({
      code,
      errors: [{ pointer: '#/text' }],
    });
  });

  it('takes a day that lies ahead where that is said, and goes by another today', async () => {
    expect(await document(await readDate({ text: '2027', ahead: '1' }))).toMatchObject({ from: '2027-01-01' });
    expect(await document(await readDate({ text: '2027', on: '2028-01-01' }))).toMatchObject({ to: '2027-12-31' });
  });
});
