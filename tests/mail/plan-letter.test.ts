import { describe, expect, it } from 'vitest';
import { CAUTIONS, DEFERS } from '../../src/catalogue/cautions.ts';
import { planHtml, planText } from '../../src/mail/plan-letter.tsx';
import { planLetterOf } from '../../src/notices/plan-letter.ts';
import { viewOf } from '../../src/plans/standing.ts';
import { inside, tags, text } from '../support/html.ts';
import { PARKED, type StayGiven, stayOf, tick } from '../support/stays.ts';

const FRAME = {
  person: 'Ada <b>',
  collection: 'The “barn” & shed',
  day: '10 September 2026',
  href: (path: string) => `https://barn.example.org/cars-here${path}`,
  answer: (partId: string) => `https://barn.example.org/cars-here/answers/letter/${partId}/signed`,
  seen: 'https://barn.example.org/cars-here/seen/letter/signed',
  stop: 'https://barn.example.org/cars-here/stop/barn/ada/signed',
  wishes: 'https://barn.example.org/cars-here/members/ada/letters',
};
const letterOf = (given: StayGiven = {}, car = 'Merle <Tourer>', place: string | null = 'Garage <north>') =>
  planLetterOf(viewOf(stayOf(given), '2026-09-10'), car, place);

describe('the letter with a plan', () => {
  it('says in its subject which car, from when, and how many steps are open', () => {
    const all = letterOf().days.flatMap(({ steps }) => steps).length;
    expect(letterOf().subject).toBe(`Lay-up of Merle <Tourer> from 1 November 2026: ${all} steps`);
    const ticks = [
      tick('lay-up', 'photographs', '2026-09-09'),
      tick('lay-up', 'wax', '2026-09-09', { state: 'skipped' }),
    ];
    expect(letterOf({ ticks }).subject).toContain(`: ${all - 2} steps`);
  });

  it.each<[string, StayGiven, string | null, string]>([
    ['with a return', {}, 'Garage', 'Parked on 1 November 2026, until 1 April 2027; it stands in “Garage”.'],
    [
      'open',
      { months: null },
      'Garage',
      'Parked on 1 November 2026, with an open end, planned for a year; it stands in “Garage”.',
    ],
    [
      'nowhere known',
      { place: null },
      null,
      'Parked on 1 November 2026, until 1 April 2027; nobody has said where it stands: frost is taken for possible.',
    ],
  ])('opens with the stay: %s', (_, given, place, opening) =>
    expect(letterOf(given, 'Merle Tourer', place).opening).toBe(opening),
  );

  it('has every open step under its day, in the order of the days, with its reason and its figures', () => {
    const letter = letterOf();
    const [first, last] = [letter.days[0], letter.days.at(-1)];
    expect([first?.day, last?.day]).toEqual(['20 September 2026', '1 November 2026']);
    const view = viewOf(stayOf(), '2026-09-10');
    expect(letter.days.flatMap(({ steps }) => steps.map(({ title }) => title))).toEqual(
      view.layUp.steps.map(({ title }) => title),
    );
    const fill = letter.days.flatMap(({ steps }) => steps).find(({ title }) => title.startsWith('Fill up'));
    expect(fill?.lines).toEqual(['Fill the tank to: 90 to 95 %', 'Stabilizer for each 10 L: 25 to 35 mL']);
    expect(fill?.why).toContain('keeps fresh fuel');
  });

  it('names each caution of the work once, and what comes before all of it', () => {
    const { cautions } = letterOf();
    expect(cautions).toEqual([...new Set(cautions)]);
    for (const key of ['fuel-vapor', 'lifting', 'battery-gas'] as const) expect(cautions).toContain(CAUTIONS[key]);
    expect(cautions.at(-1)).toBe(DEFERS);
  });

  it('is plain text first: days as headings, steps below, the way to the page', () => {
    const plain = planText(letterOf(), FRAME);
    expect(plain).toContain('https://barn.example.org/cars-here/lay-ups/stay');
    expect(plain).toContain(
      [
        '29 OCTOBER 2026',
        '- Fill up with fresh fuel and put the stabilizer in',
        '  It keeps fresh fuel and restores none; in a full tank there is little air to lose to or draw water from.',
        '  · Fill the tank to: 90 to 95 %',
        '  · Stabilizer for each 10 L: 25 to 35 mL',
      ].join('\n'),
    );
    expect(plain).toContain('the bottle’s label and the law of the place come first');
    expect(plain).not.toMatch(/undefined|null|\[object/);
    expect(plain).toContain('“Merle <Tourer>”');
  });

  it('says the same in its HTML, with names escaped', () => {
    const letter = letterOf();
    const html = planHtml(letter, FRAME);
    expect(html).toMatch(/^<!DOCTYPE html><html lang="en">/);
    for (const raw of ['<Tourer>', '<north>', 'Ada <b>']) expect(html).not.toContain(raw);
    expect(text(html)).toContain('Ada <b>, this is the plan for putting away “Merle <Tourer>” (The “barn” & shed).');
    expect(inside(html, 'h2')).toEqual(letter.days.map(({ day }) => day));
    expect(inside(html, 'strong')).toEqual(letter.days.flatMap(({ steps }) => steps.map(({ title }) => title)));
    expect(tags(html, 'a').map((one) => one['href'])).toEqual([
      'https://barn.example.org/cars-here/lay-ups/stay',
      'https://barn.example.org/cars-here/members/ada/letters',
      FRAME.stop,
    ]);
    for (const { why, lines } of letter.days.flatMap(({ steps }) => steps))
      for (const words of [why, ...lines]) expect(text(html)).toContain(words);
    expect(html).not.toMatch(/<script|<img|src=/);
  });

  it('of a plan with nothing left has no day, and still says what it is about', () => {
    const all = viewOf(stayOf(), PARKED).layUp.steps.map(({ key }) => tick('lay-up', key, '2026-09-10'));
    const letter = letterOf({ ticks: all });
    expect(letter.days).toEqual([]);
    expect(letter.subject).toContain(': 0 steps');
    expect(letter.cautions).toEqual([DEFERS]);
  });
});
