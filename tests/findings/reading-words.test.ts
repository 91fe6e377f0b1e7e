import { describe, expect, it } from 'vitest';
import { convert } from '../../src/catalogue/units.ts';
import type { Answers, CarFacts, Reading } from '../../src/findings/facts.ts';
import { type Measured, measuredOf } from '../../src/findings/measured.ts';
import { bandWords, readingLine } from '../../src/findings/reading-words.ts';
import { carOf, kindOf, partOf } from '../support/parts.ts';
import { FROSTY, reading } from '../support/readings.ts';

const one = (kind: string, read: Reading, details: Answers = {}, car: CarFacts = carOf()): Measured => {
  const [found] = measuredOf(
    { part: partOf(kind, [], { readings: [read], details }), kind: kindOf(kind), car },
    '2026-11-25',
    null,
  );
  if (!found) throw new Error('Not measured');
  return found;
};
const line = (kind: string, ...rest: [Reading, Answers?, CarFacts?]): string =>
  readingLine(one(kind, ...rest), kindOf(kind));

describe('a reading in words', () => {
  it('is its number in the unit of its gauge, with the digits the gauge has and a true minus', () => {
    expect(line('battery-flooded', reading('rest-voltage', '2026-11-24', 12.3))).toContain('12.30 V');
    const car = carOf({ place: FROSTY });
    expect(line('coolant-iat', reading('freeze-point', '2026-11-24', -24), {}, car)).toContain('−24 °C');
  });

  it('is told as it was typed where that was another unit, beside the gauge’s own', () => {
    const psi = (value: number) =>
      line('tires-road', reading('cold-pressure', '2026-11-24', value, null, { unit: 'psi' }), { placard: 2.2 });
    expect(psi(convert(33, 'psi', 'bar'))).toMatch(/^Cold pressure 33 psi \(2\.28 bar\) on 24 November 2026/);
    expect(psi(convert(32.5, 'psi', 'bar'))).toContain('32.5 psi (2.24 bar)');
    expect(psi(convert(33.3333, 'psi', 'bar'))).toContain('33.33 psi (2.30 bar)');
    expect(line('tires-road', reading('cold-pressure', '2026-11-24', 2.28), { placard: 2.2 })).toMatch(
      /^Cold pressure 2\.28 bar on/,
    );
    const tread = reading('tread', '2026-11-24', convert(7, '/32 in', 'mm'), null, { unit: '/32 in' });
    expect(line('tires-road', tread)).toMatch(/^Tread depth 7 \/32 in \(5\.6 mm\)|^Tread depth 7\/32 in \(5\.6 mm\)/);
    const night = reading('freeze-point', '2026-11-24', convert(-13, '°F', '°C'), null, { unit: '°F' });
    expect(line('coolant-iat', night)).toContain('−13 °F (−25 °C)');
  });

  it('says what was read, when, how it is judged, and the words of that band', () => {
    const { act } = kindOf('battery-flooded').tests[0] ?? { act: '' };
    expect(line('battery-flooded', reading('rest-voltage', '2026-11-24', 12.31))).toBe(
      `Rest voltage 12.31 V on 24 November 2026: act. U${act.slice(1)}.`,
    );
    expect(line('battery-flooded', reading('rest-voltage', '2026-11-24', 12.65))).toMatch(
      /^Rest voltage 12\.65 V on 24 November 2026: good\. Good: at least 12\.60\.$/,
    );
  });

  it.each([
    ['good', 12.7, /^good: at least 12\.60$/],
    ['watch', 12.5, /^12\.40 to 12\.59/],
    ['act', 12.1, /^under 12\.40/],
  ])('names the band it fell into: %s', (verdict, value, words) => {
    const found = one('battery-flooded', reading('rest-voltage', '2026-11-24', value));
    expect(found.verdict).toBe(verdict);
    expect(bandWords(found)).toMatch(words);
  });

  it('tells an acid density as it would read at 27 °C', () => {
    expect(line('battery-flooded', reading('density', '2026-11-24', 1.271, 4.4))).toContain(
      'Density 1.271 SG on 24 November 2026, 1.255 at 27 °C: good.',
    );
  });

  it('tells a coolant by where it freezes', () => {
    const car = carOf({ place: FROSTY });
    expect(line('coolant-iat', reading('strength', '2026-11-24', 50), { glycol: 'ethylene' }, car)).toMatch(
      /^Strength 50 % on 24 November 2026, which freezes at −3\d °C or below: good\./,
    );
  });
});

describe('what is missing to judge it', () => {
  it.each<[string, string, Reading, RegExp]>([
    ['its warmth', 'battery-flooded', reading('density', '2026-11-24', 1.27), /not judged; .*temperature/],
    ['the place', 'coolant-iat', reading('freeze-point', '2026-11-24', -30), /not judged; .*where the car stands/],
    [
      'an answer, by its name',
      'tires-road',
      reading('cold-pressure', '2026-11-24', 2),
      /not judged; .*“Placard pressure, cold”/,
    ],
  ])('is said: %s', (_, kind, read, words) => {
    expect(line(kind, read)).toMatch(words);
    expect(line(kind, read)).not.toMatch(/good/);
  });

  it('is not spoken of where it is judged', () => {
    expect(line('battery-flooded', reading('rest-voltage', '2026-11-24', 12.1))).not.toContain('not judged');
  });
});
