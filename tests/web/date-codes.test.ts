import { describe, expect, it } from 'vitest';
import { field, inside, text, ticked } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const ask = async (query: Record<string, string>) => {
  const answer = await openSite().get(`/date-codes?${new URLSearchParams(query)}`);
  expect(answer.status).toBe(200);
  return answer.text();
};
const said = async (query: Record<string, string>) => text(await ask(query));

describe('the date codes page', () => {
  it('reads five sidewalls at once, each under its place', async () => {
    const html = await ask({ fl: '2318', fr: 'DOT 4B7 C2DE1F 2318', rl: '417', rr: '5417', sp: '2O17' });
    expect(inside(html, 'h3')).toEqual([
      'Front left: 2318',
      'Front right: DOT 4B7 C2DE1F 2318',
      'Rear left: 417',
      'Rear right: 5417',
      'Spare: 2O17',
    ]);
    expect(inside(html, 'strong')).toEqual([
      'Week 23 of 2018',
      'Week 23 of 2018',
      'Week 41 of 1977, 1987 or 1997',
      'No year has that many weeks',
      'A letter stands in the date',
    ]);
  });

  it('shows the working, the age and what to look at next', async () => {
    const words = await said({ fl: '2318', rl: '417' });
    expect(words).toContain('Week 1 begins on the first Sunday of the year');
    expect(words).toContain('Week 23 of 2018: first day Sunday 10 June 2018, last day Saturday 16 June 2018.');
    expect(words).toContain('Age on 25 November 2026: 8 years.');
    expect(words).toContain('at least 29 years, could be 49 years');
    expect(words).toContain('Is there a small triangle right after the three digits?');
  });

  it.each([
    ['2O17', 'Was 2017 meant? Confirm it on the tire.'],
    ['0017', 'There is no week 00'],
    ['5320', 'The year in 5320 has 52 Sundays, so its last week is 52.'],
    ['2330', 'Read as week, then year, 2330 is after today.'],
    ['2452', 'Read as week, then year, 2452 is after today.'],
    ['4B7 C2DE1F', 'Look at the inner sidewall: the full number is required on one side only.'],
    ['185/65 R15', 'This is a tire size'],
    ['E4 0234567', 'This is an approval mark'],
    ['12', 'The number of symbols does not fit'],
    ['TUBELESS', 'These are other words from the sidewall.'],
    ['<b>', 'No date in this number'],
  ])('for %s says what is wrong: %s', async (fl, why) => {
    const html = await ask({ fl });
    if (fl !== '<b>') expect(text(html)).toContain(why);
    expect(field(html, 'fl')['value']).toBe(fl);
    expect(html).not.toContain('<b>');
    expect(html).toContain('<article class="code fault">');
  });

  it('narrows three digits by the car, the fitting and the triangle', async () => {
    expect(await said({ fl: '417', built: '1985' })).toContain('Week 41 of 1987 or 1997');
    expect(await said({ fl: '417', fitted: '1980' })).toContain('Week 41 of 1977 ·');
    expect(await said({ fl: '417', triangle: 'seen' })).toContain('Week 41 of 1997 ·');
    expect(await said({ fl: '417', built: '1999' })).toContain('What is known rules every year out');
  });

  it('says so where a narrowing date is none', async () => {
    expect(await said({ fl: '417', built: 'long ago' })).toContain('“long ago” was not understood as a date');
    expect(await said({ fl: '417', fitted: 'unknown' })).toContain('That is no date, so it narrows nothing.');
  });

  it('keeps what was typed', async () => {
    const html = await ask({
      fl: '2318',
      built: '1985',
      fitted: '1990',
      triangle: 'not seen',
      mark: 'battery',
      typed: 'C7',
    });
    expect(['fl', 'built', 'fitted', 'typed'].map((name) => field(html, name)['value'])).toEqual([
      '2318',
      '1985',
      '1990',
      'C7',
    ]);
    expect(ticked(html, 'triangle')).toEqual(['not seen']);
    expect(html).toContain('<option value="battery" selected="">');
  });

  it.each([
    ['hose', '3/15/09', '15 March 2009: 17 years'],
    ['battery', 'C7', 'March 2007: 19 years'],
    ['clock', '6/09', 'June 2009: 17 years'],
    ['print', '3Q09', '2009'],
    ['harness-international', 'not valid after 2025', 'Valid through 31 December 2025 – that day is past'],
    ['harness-us', '3/24', 'Valid through 1 March 2026'],
    ['expiry', '2027-06', 'Valid through 30 June 2027'],
    ['extinguisher-disposable', '2015', '2015'],
    ['extinguisher-rechargeable', '6/2015', 'June 2015'],
  ])('reads the mark of a %s: %s', async (mark, typed, wanted) => {
    const html = await ask({ mark, typed });
    expect(inside(html, 'li').concat(inside(html, 'strong')).join(' ')).toContain(wanted);
  });

  it.each([
    ['hose', '25/12/09', 'put the day first'],
    ['battery', 'M7', 'The letters run from A to L'],
    ['expiry', '<soon>', '<soon>'],
  ])('says why a mark of a %s is none: %s', async (mark, typed, why) => {
    const html = await ask({ mark, typed });
    expect(text(/<p class="fault" role="alert">(.*?)<\/p>/s.exec(html)?.[1] ?? '')).toContain(why);
    expect(html).not.toContain('<soon>');
  });

  it('shrugs off what no form of ours sends', async () => {
    expect(
      inside(await ask({ mark: 'no-such-mark', typed: 'x', triangle: 'maybe', fl: 'x'.repeat(5000) }), 'h1'),
    ).toEqual(['Date codes']);
  });
});
