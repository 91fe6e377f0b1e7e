import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type CivilDate, daysBetween } from '../../src/dates/civil.ts';
import type { MarkAnswer } from '../../src/dates/marks/answer.ts';
import { readBatteryCode } from '../../src/dates/marks/battery-code.ts';
import { readExtinguisherStamp } from '../../src/dates/marks/extinguisher-stamp.ts';
import { readHarnessLabel } from '../../src/dates/marks/harness-label.ts';
import { readHoseLabel } from '../../src/dates/marks/hose-label.ts';
import { readMonthClock } from '../../src/dates/marks/month-clock.ts';
import { readPeriodPrint } from '../../src/dates/marks/period-print.ts';
import { readPrintedExpiry } from '../../src/dates/marks/printed-expiry.ts';
import type { TireCodeAnswer } from '../../src/dates/tire-code/answer.ts';
import { explainTireCode } from '../../src/dates/tire-code/explain.ts';
import { readTireCode } from '../../src/dates/tire-code/read.ts';
import { tireWeekOf } from '../../src/dates/tire-week.ts';

const TODAY: CivilDate = '2026-11-25';
const between = (from: CivilDate, to: CivilDate) =>
  fc.integer({ min: 0, max: daysBetween(from, to) }).map((days) => addDays(from, days));
const twoDigits = (n: number): string => String(n % 100).padStart(2, '0');
const codeOf = (day: CivilDate): string => {
  const { week, year } = tireWeekOf(day);
  return twoDigits(week) + twoDigits(year);
};

const SYMBOLS = [...'ABCDEFHJKLMNPRTUVWXY0123456789'];
const symbols = (length: number) =>
  fc.array(fc.constantFrom(...SYMBOLS), { minLength: length, maxLength: length }).map((list) => list.join(''));
/** A whole number in the groups a tire shows, of the new or the old layout, dated between 1971 and today. */
const fourDigitCode = between('2000-07-02', TODAY).map(codeOf);
const threeDigitCode = between('1971-05-23', '2000-07-01').map((day) => codeOf(day).replace(/.(?=.$)/, ''));
const grouped = fc.oneof(
  fc.tuple(symbols(3), symbols(6), fourDigitCode),
  fc.tuple(symbols(2), symbols(2), symbols(4), fourDigitCode),
  fc.tuple(symbols(2), symbols(2), symbols(3), threeDigitCode),
  fc.tuple(fc.oneof(fourDigitCode, threeDigitCode)),
);
/** Text near the real thing as well as any text at all. */
const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 120 }),
  fc.string({ unit: 'grapheme', maxLength: 30 }),
  fc.string({ unit: fc.constantFrom(...'DOTR-./: ▲<E0123456789BISOL'), maxLength: 24 }),
);
const facts = fc.record(
  {
    ninetiesMark: fc.constantFrom('seen' as const, 'not seen' as const),
    notBefore: between('1965-01-01', TODAY),
    fittedBy: between('1971-01-01', TODAY),
  },
  { requiredKeys: [] },
);

const candidates = (answer: TireCodeAnswer) => (answer.ok ? answer.candidates : []);

describe('tire codes, whatever is typed', () => {
  it('a tire of any day since July 2000 reads as the week that holds the day', () => {
    fc.assert(
      fc.property(between('2000-07-02', TODAY), (day) => {
        const [only, ...others] = candidates(readTireCode(`DOT AB C2 DEFH ${codeOf(day)}`, TODAY));
        expect(others).toEqual([]);
        expect(only && only.from <= day && day <= only.to).toBe(true);
      }),
    );
  });

  it('a tire of any day before has that day among its candidates', () => {
    fc.assert(
      fc.property(between('1971-05-23', '2000-07-01'), (day) => {
        const code = codeOf(day);
        const found = candidates(readTireCode(`${code.slice(0, 2)}${code.slice(3)}`, TODAY));
        expect(found.some(({ from, to }) => from <= day && day <= to)).toBe(true);
      }),
    );
  });

  it('answers any text, and the answer can be put in words', () => {
    fc.assert(
      fc.property(anyText, facts, between('1960-01-01', '2080-12-31'), (typed, known, today) => {
        const words = explainTireCode(readTireCode(typed, today, known), today);
        expect(words.title).not.toMatch(/undefined|null|NaN/);
        expect([...words.working, ...words.doubts, ...words.next].join(' ')).not.toMatch(/undefined|NaN/);
      }),
      { numRuns: 1000 },
    );
  });

  it('case, separators and the prefix change nothing', () => {
    const separator = fc.constantFrom(' ', '  ', '-', ' / ', '.', ': ');
    const prefix = fc.constantFrom('', 'DOT ', 'dot:', 'D.O.T. ', 'DOT-');
    fc.assert(
      fc.property(grouped, separator, prefix, fc.boolean(), (groups, between, before, lower) => {
        // "DOT-R12 ..." is the retread prefix or a plant code: the one text where the hyphen matters.
        fc.pre(!(before === 'DOT-' && groups[0]?.startsWith('R')));
        const plain = readTireCode(`DOT ${groups.join(' ')}`, TODAY);
        // Without DOT the text may as well be an approval or a size; it is then refused, never read otherwise.
        const typed = ` ${before}${groups.join(between)} `;
        const other = readTireCode(lower ? typed.toLowerCase() : typed, TODAY);
        if (other.ok || other.reason !== 'not-a-tin') expect(other).toEqual(plain);
        else expect(before).toBe('');
      }),
    );
  });

  it('candidates are oldest first and never begin after today', () => {
    fc.assert(
      fc.property(fc.oneof(anyText, threeDigitCode), facts, between('1960-01-01', TODAY), (typed, known, today) => {
        const found = candidates(readTireCode(typed, today, known)).map(({ from }) => from);
        expect(found).toEqual(found.toSorted());
        expect(found.every((from) => from <= today)).toBe(true);
      }),
    );
  });

  it('known facts only take candidates away, each with its reason', () => {
    fc.assert(
      fc.property(threeDigitCode, facts, (typed, known) => {
        const open = candidates(readTireCode(typed, TODAY));
        const answer = readTireCode(typed, TODAY, known);
        const kept = candidates(answer);
        const dropped = answer.dropped ?? [];
        expect([...kept, ...dropped.map(({ candidate }) => candidate)].toSorted((a, b) => a.year - b.year)).toEqual(
          open,
        );
        expect(dropped.every(({ why }) => why.length > 0)).toBe(true);
      }),
    );
  });
});

describe('other marks, whatever is typed', () => {
  const made: [string, (typed: string, today: CivilDate) => MarkAnswer][] = [
    ['hose label', readHoseLabel],
    ['battery code', readBatteryCode],
    ['month clock', readMonthClock],
    ['printed period', readPeriodPrint],
    ['US harness', (typed, today) => readHarnessLabel(typed, today, 'us')],
    ['international harness', (typed, today) => readHarnessLabel(typed, today, 'international')],
    ['extinguisher', (typed, today) => readExtinguisherStamp(typed, today, 'disposable')],
  ];
  const text = fc.oneof(
    anyText,
    fc.string({ unit: fc.constantFrom(...'0123456789/-. QWKCM'), maxLength: 10 }),
    fc
      .tuple(fc.integer({ min: 0, max: 60 }), fc.constantFrom('/', '-', '/1/', 'Q'), fc.integer({ min: 0, max: 9999 }))
      .map((parts) => parts.join('')),
  );

  it.each(made)('%s: answers any text, oldest first, nothing made after today', (_, read) => {
    fc.assert(
      fc.property(text, between('1960-01-01', '2080-12-31'), (typed, today) => {
        const answer = read(typed, today);
        if (!answer.ok) {
          expect(answer.message.length).toBeGreaterThan(20);
          return;
        }
        const from = answer.candidates.map((candidate) => candidate.from);
        expect(from).toEqual(from.toSorted());
        expect(answer.candidates.every((candidate) => candidate.from <= today && candidate.from <= candidate.to)).toBe(
          true,
        );
        expect([...answer.working, ...answer.doubts].join(' ')).not.toMatch(/undefined|NaN/);
      }),
      { numRuns: 500 },
    );
  });

  it('printed expiry: answers any text; the last valid day is the end of what is printed', () => {
    fc.assert(
      fc.property(text, (typed) => {
        const answer = readPrintedExpiry(typed, TODAY);
        if (answer.ok) for (const { to, validThrough } of answer.candidates) expect(validThrough).toBe(to);
      }),
    );
  });
});
