import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  addDays,
  addMonths,
  type CivilDate,
  civilDate,
  daysBetween,
  isCivilDate,
  lastOfMonth,
  monthsBetween,
  weekday,
  yearOf,
} from '../../src/dates/civil.ts';
import { isoWeek } from '../../src/dates/iso-week.ts';
import { limitOn } from '../../src/dates/limit.ts';
import { type DateRange, edtfOf, readEdtf } from '../../src/dates/partial-date.ts';
import { tireWeek, tireWeekOf } from '../../src/dates/tire-week.ts';
import { readTypedDate, type TypedDateRules } from '../../src/dates/typed-date.ts';
import { DATE_ORDERS } from '../../src/dates/typed-point.ts';
import { ageInWords, ageOf, dayInWords, MONTHS, rangeInWords } from '../../src/dates/words.ts';
import { anyDay, anyRange, dayBetween } from '../support/arbitraries.ts';
import { probe } from '../support/zone-probe.ts';

const TODAY: CivilDate = '2026-11-25';
const everyDay = dayBetween('0001-01-01', '9990-12-31');
const order = fc.constantFrom(...DATE_ORDERS);
const read = (typed: string, rules: Partial<TypedDateRules> = {}) =>
  readTypedDate(typed, { today: TODAY, order: 'ask', ...rules });

describe('days and months', () => {
  it('a limit falls on the day that addMonths gives, for every day and length', () => {
    fc.assert(
      fc.property(everyDay, fc.integer({ min: -1200, max: 1200 }), (day, months) => {
        fc.pre(yearOf(day) * 12 + months > 24 && yearOf(day) * 12 + months < 9990 * 12);
        expect(limitOn(day, months)).toBe(addMonths(day, months));
      }),
      { numRuns: 5000 },
    );
  });

  it('a limit lies in the month it names, on the same day or on the month’s last', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 0, max: 600 }), (day, months) => {
        const limit = limitOn(day, months);
        const [year, month] = limit.split('-').map(Number) as [number, number];
        expect(year * 12 + month).toBe(yearOf(day) * 12 + Number(day.slice(5, 7)) + months);
        expect(limit.slice(8) === day.slice(8) || limit === lastOfMonth(year, month)).toBe(true);
        expect(limit.slice(8) <= day.slice(8)).toBe(true);
      }),
    );
  });

  it('a later start never ends sooner, nor a longer life', () => {
    fc.assert(
      fc.property(anyDay, fc.nat(2000), fc.nat(600), fc.nat(60), (day, later, months, longer) => {
        expect(limitOn(day, months) <= limitOn(addDays(day, later), months)).toBe(true);
        expect(limitOn(day, months) <= limitOn(day, months + longer)).toBe(true);
      }),
    );
  });

  it('steps of days are undone by the steps back, and counted by the days between', () => {
    fc.assert(
      fc.property(everyDay, fc.integer({ min: -3000, max: 3000 }), (day, days) => {
        const other = addDays(day, days);
        fc.pre(other >= '0001-01-01' && !other.startsWith('-') && isCivilDate(other));
        expect(addDays(other, -days)).toBe(day);
        expect(daysBetween(day, other)).toBe(days);
        expect(days === 0 ? other === day : other > day === days > 0).toBe(true);
        expect((weekday(day) + (((days % 7) + 7) % 7)) % 7).toBe(weekday(other));
      }),
    );
  });

  it('whole months between are the most that fit', () => {
    fc.assert(
      fc.property(anyDay, fc.nat(20_000), (from, days) => {
        const to = addDays(from, days);
        const months = monthsBetween(from, to);
        expect(addMonths(from, months) <= to).toBe(true);
        expect(addMonths(from, months + 1) > to).toBe(true);
      }),
    );
  });

  it('a day is the day of its year, month and number, and of no other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), fc.nat(14), fc.nat(33), (year, month, day) => {
        const made = civilDate(year, month, day);
        const exists = month >= 1 && month <= 12 && day >= 1 && day <= Number(lastOfMonth(year, month).slice(8));
        expect(made !== null).toBe(exists);
        if (made) expect(made.split('-').map(Number)).toEqual([year, month, day]);
      }),
    );
  });

  it('every day lies in one ISO week of seven days and in one tire week', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const { week, year } = tireWeekOf(day);
        const tire = tireWeek(week, year);
        expect(tire && tire.from <= day && day <= tire.to).toBe(true);
        const iso = [-1, 0, 1].flatMap((shift) =>
          Array.from({ length: 53 }, (_, index) => isoWeek(index + 1, yearOf(day) + shift) ?? []).flat(),
        );
        expect(iso.filter(({ from, to }) => from <= day && day <= to)).toHaveLength(1);
      }),
      { numRuns: 50 },
    );
  });
});

describe('ages', () => {
  const range: fc.Arbitrary<DateRange> = anyRange;

  it('never fall as the day advances', () => {
    fc.assert(
      fc.property(range, anyDay, fc.nat(4000), (since, day, later) => {
        const [now, then] = [ageOf(since, day), ageOf(since, addDays(day, later))];
        expect(then.youngest).toBeGreaterThanOrEqual(now.youngest);
        expect(then.oldest ?? Infinity).toBeGreaterThanOrEqual(now.oldest ?? Infinity);
      }),
      { numRuns: 1000 },
    );
  });

  it('are never negative, and the youngest is never older than the oldest', () => {
    fc.assert(
      fc.property(range, anyDay, (since, day) => {
        const { youngest, oldest } = ageOf(since, day);
        expect(youngest).toBeGreaterThanOrEqual(0);
        expect(oldest ?? Infinity).toBeGreaterThanOrEqual(youngest);
        expect(ageInWords({ youngest, oldest })).not.toMatch(/undefined|null|NaN|-/);
      }),
    );
  });

  it('reach n months on the very day a limit of n months falls', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 400 }), (day, months) => {
        const limit = limitOn(day, months);
        expect(ageOf({ from: day, to: day }, limit)).toEqual({ youngest: months, oldest: months });
        expect(ageOf({ from: day, to: day }, addDays(limit, -1)).oldest).toBe(months - 1);
      }),
    );
  });

  it('and ranges have words without a hole in them', () => {
    fc.assert(
      fc.property(range, (since) => {
        expect(rangeInWords(since)).toMatch(/^(?:up to |from )?[\dA-Z].*\d(?: on)?$/);
        expect(rangeInWords(since)).not.toMatch(/undefined|null|NaN/);
      }),
    );
  });
});

describe('typed dates', () => {
  const typedDay = dayBetween('1000-01-01', TODAY);
  const parts = (day: CivilDate) => {
    const [year, month, date] = day.split('-') as [string, string, string];
    return { year, month, date, name: MONTHS[Number(month) - 1] as string, n: String(Number(date)) };
  };
  const ordinal = (n: string): string => {
    if (/^1[123]$/.test(n)) return `${n}th`;
    return `${n}${{ 1: 'st', 2: 'nd', 3: 'rd' }[n.at(-1) as string] ?? 'th'}`;
  };

  const FORMS: readonly [string, (day: CivilDate) => string][] = [
    ['2015-06-03', (day) => day],
    ['3 June 2015', dayInWords],
    ['03 JUNE 2015', (day) => `${parts(day).date} ${parts(day).name.toUpperCase()} ${parts(day).year}`],
    ['3. June 2015', (day) => `${parts(day).n}. ${parts(day).name} ${parts(day).year}`],
    ['3rd of June, 2015', (day) => `${ordinal(parts(day).n)} of ${parts(day).name}, ${parts(day).year}`],
    ['3 Jun 2015', (day) => `${parts(day).n} ${parts(day).name.slice(0, 3)} ${parts(day).year}`],
    ['3-Jun-2015', (day) => `${parts(day).n}-${parts(day).name.slice(0, 3)}-${parts(day).year}`],
    ['June 3, 2015', (day) => `${parts(day).name} ${parts(day).n}, ${parts(day).year}`],
    ['Jun. 3rd 2015', (day) => `${parts(day).name.slice(0, 3)}. ${ordinal(parts(day).n)} ${parts(day).year}`],
    ['between it and itself', (day) => `between ${dayInWords(day)} and ${day}`],
  ];

  it.each(FORMS)('any day written like %s reads back as that day, under every setting', (_, write) => {
    fc.assert(
      fc.property(typedDay, order, (day, setting) => {
        // Years of three digits are written without a zero and are no years here.
        fc.pre(day >= '1000-01-01');
        const answer = read(write(day), { order: setting });
        expect(answer).toMatchObject({ ok: true, said: 'date', date: { from: day, to: day } });
      }),
    );
  });

  it('any day in numbers reads back under its own setting, and is among the choices without one', () => {
    fc.assert(
      fc.property(typedDay, fc.constantFrom('/', '.', '-'), (day, stroke) => {
        const { year, month, date } = parts(day);
        const written = { 'day first': [date, month, year], 'month first': [month, date, year] } as const;
        for (const setting of ['day first', 'month first'] as const) {
          const typed = written[setting].join(stroke);
          expect(read(typed, { order: setting })).toMatchObject({ ok: true, date: { from: day, to: day } });
          const asked = read(typed);
          if (!asked.ok && asked.reason === 'ambiguous') {
            expect(asked.choices).toHaveLength(2);
            expect(asked.choices.map(({ value }) => value)).toContain(day);
          } else expect(asked).toMatchObject({ ok: true, date: { from: day, to: day } });
        }
      }),
    );
  });

  it('before, since, until and after a day meet without a gap', () => {
    fc.assert(
      fc.property(dayBetween('1900-01-01', '2026-11-24'), (day) => {
        expect(read(`before ${day}`)).toMatchObject({ date: { from: null, to: addDays(day, -1) } });
        expect(read(`until ${day}`)).toMatchObject({ date: { from: null, to: day } });
        expect(read(`since ${day}`)).toMatchObject({ date: { from: day, to: TODAY } });
        expect(read(`after ${day}`)).toMatchObject({ date: { from: addDays(day, 1), to: TODAY } });
      }),
    );
  });

  it('any range reads back from the EDTF it is written as', () => {
    fc.assert(
      fc.property(anyRange, (range) => {
        const { from, to } = readEdtf(edtfOf(range)) ?? {};
        expect({ from, to }).toEqual(range);
      }),
    );
  });

  const pieces = fc
    .array(
      fc.constantFrom(
        ...['X', '/', '..', '[', ']', '{', '}', ',', '-', '~', '?', '%', '2004', '-06', '-11', '1985', '-21', 'T10:00'],
        ...[
          'Y',
          'E5',
          '0',
          '9999',
          '0000',
          '20150603',
          'June',
          ' ',
          '3',
          '’15',
          'about ',
          'before ',
          'between ',
          ' and ',
        ],
        ...['after ', 'or later', 'early ', '1960s', 'st', 'of ', 'up to ', 'since ', ' on', 'original', 'may', 'be'],
      ),
      { maxLength: 7 },
    )
    .map((list) => list.join(''));
  const anyText = fc.oneof(
    pieces,
    fc.string({ unit: 'binary', maxLength: 80 }),
    fc.string({ unit: 'grapheme', maxLength: 30 }),
  );

  it('EDTF, whatever is given, is none or a range of days that runs forwards', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const date = readEdtf(text);
        if (!date) return;
        for (const end of [date.from, date.to]) if (end !== null) expect(isCivilDate(end), text).toBe(true);
        if (date.from !== null && date.to !== null) expect(date.from <= date.to).toBe(true);
        expect(date.from ?? date.to).not.toBeNull();
        expect(date.edtf).toBe(text);
      }),
      { numRuns: 3000 },
    );
  });

  it('EDTF of a day of the month up to 31 is that day where the calendar has it, and else none', () => {
    const digits = (min: number, max: number, width: number) =>
      fc.integer({ min, max }).map((n) => String(n).padStart(width, '0'));
    fc.assert(
      fc.property(digits(1000, 9999, 4), digits(1, 12, 2), digits(1, 31, 2), (...written) => {
        const day = written.join('-');
        expect(readEdtf(day)).toEqual(isCivilDate(day) ? { edtf: day, from: day, to: day } : null);
      }),
      { numRuns: 3000, examples: [['2015', '02', '29']] },
    );
  });

  it('any text has an answer, and a date among them lies in what is allowed', () => {
    const rules = fc.record({
      today: dayBetween('1960-01-01', '2080-12-31'),
      order,
      mayBeAhead: fc.boolean(),
      notBefore: fc.option(
        dayBetween('1885-01-01', '1959-12-31').map((day) => ({ day, why: 'too early' })),
        {
          nil: undefined,
        },
      ),
    });
    fc.assert(
      fc.property(anyText, rules, (typed, given) => {
        const answer = readTypedDate(typed, given);
        if (!answer.ok) {
          expect(answer.message.length).toBeGreaterThan(10);
          expect(answer.message).not.toMatch(/undefined|NaN/);
          if (answer.reason === 'ambiguous') {
            expect(answer.choices.length).toBeGreaterThan(0);
            for (const { value } of answer.choices)
              expect(readTypedDate(value, given), value).toMatchObject({ ok: true });
          }
        } else if (answer.said === 'date') {
          const { from, to } = answer.date;
          if (from && to) expect(from <= to, typed).toBe(true);
          if (!given.mayBeAhead) expect((to ?? '9999') <= given.today && (from ?? '') <= given.today).toBe(true);
          if (given.notBefore && to) expect(to >= given.notBefore.day).toBe(true);
          expect(answer.understood).not.toMatch(/undefined|null|NaN/);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

describe('the machine’s own time zone', () => {
  const HERE = ['UTC', 'America/New_York', 'Pacific/Apia', 'Asia/Kolkata'];
  let script = '';

  beforeAll(async () => {
    const bundle = await build({
      stdin: {
        contents: `import { probe } from './tests/support/zone-probe.ts'; console.log(new Date(2026, 0, 1).getTimezoneOffset()); console.log(probe());`,
        resolveDir: process.cwd(),
        loader: 'ts',
      },
      bundle: true,
      platform: 'node',
      format: 'esm',
      packages: 'external',
      write: false,
    });
    script = bundle.outputFiles[0]?.text ?? '';
  });

  const run = async (zone: string): Promise<string[]> => {
    const running = promisify(execFile)(process.execPath, ['--input-type=module', '-'], {
      env: { ...process.env, TZ: zone },
      maxBuffer: 16 * 1024 * 1024,
    });
    running.child.stdin?.end(script);
    const { stdout } = await running;
    return stdout.trim().split('\n');
  };

  it('changes nothing in dates, ages, findings, words or letters', async () => {
    const answers = await Promise.all(HERE.map(run));
    // The zones did differ: each process had its own.
    expect(new Set(answers.map(([offset]) => offset)).size).toBe(HERE.length);
    const here = JSON.parse(probe()) as unknown[];
    for (const [, answer] of answers) expect(JSON.parse(answer ?? '')).toEqual(here);
  });
});
