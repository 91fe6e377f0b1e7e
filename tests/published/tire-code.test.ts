import { UTCDateMini } from '@date-fns/utc/date/mini';
import { getISOWeek } from 'date-fns/getISOWeek';
import { setISOWeek } from 'date-fns/setISOWeek';
import { startOfISOWeek } from 'date-fns/startOfISOWeek';
import { describe, expect, it } from 'vitest';
import { addDays, addMonths, type CivilDate, daysBetween, monthsBetween, weekday } from '../../src/dates/civil.ts';
import { isoWeek } from '../../src/dates/iso-week.ts';
import { readTireCode } from '../../src/dates/tire-code/read.ts';
import { tireWeek, tireWeekOf, weeksInTireYear } from '../../src/dates/tire-week.ts';
import published from './tin-vectors.json' with { type: 'json' };

/** Cases worked out from 49 CFR 574.5 apart from this code; each says its rule and on what it rests. */
interface Vector {
  id: string;
  kind: string;
  rule: string;
  basis: string;
}
interface Span {
  week: number;
  year: number;
  from: CivilDate;
  to: CivilDate;
}
interface Decode extends Vector {
  input: string;
  asOf: CivilDate;
  expect:
    | ({ status: 'ok'; form: string; dateCode: string; warnings: string[] } & Span)
    | { status: 'ambiguous'; form: string; dateCode: string; warnings: string[]; candidates: Span[] }
    | { status: 'no-date' }
    | { status: 'error'; error: string; suggest?: string; swapped?: Span & { dateCode: string } };
  lenient?: { status: 'ok'; from: CivilDate; to: CivilDate; warning: string; isoWeek: object };
}
interface Encode extends Vector {
  date: CivilDate;
  expect: { week: number; year: number; code4: string; code3: string };
}
interface WeeksInYear extends Vector {
  year: number;
  firstSunday: CivilDate;
  expect: { weeks: number; lastWeekEnds: CivilDate };
}
interface TinVsIso extends Vector {
  code: string;
  expect: Record<'tinFrom' | 'tinTo' | 'isoFrom' | 'isoTo', CivilDate> & { startOffsetDays: number };
}
interface Age extends Vector {
  code: string;
  asOf: CivilDate;
  expect: Record<'from' | 'to' | 'fiveYears' | 'sixYears' | 'tenYears', CivilDate> & {
    age: { years: number; months: number };
    sixReached: boolean;
    tenReached: boolean;
  };
}
interface AgeBasis extends Vector {
  code: string;
  asOf: CivilDate;
  expect: { madeFrom: CivilDate; latestCandidateFrom: CivilDate; tenReachedForAllCandidates: boolean };
}

const ofKind = <T extends Vector>(kind: string): T[] =>
  (published as Vector[]).filter((vector) => vector.kind === kind) as T[];

const accepted = (input: string, asOf: CivilDate) => {
  const answer = readTireCode(input, asOf);
  if (!answer.ok) throw new Error(`${input} was refused: ${answer.reason}`);
  return answer;
};
const settled = (input: string, asOf: CivilDate): Span => {
  const [only, ...others] = accepted(input, asOf).candidates;
  if (!only || others.length > 0) throw new Error(`${input} is not settled`);
  return only;
};
const twoDigits = (n: number): string => String(n % 100).padStart(2, '0');

describe('reading a tire code', () => {
  it.each(ofKind<Decode>('decode'))(
    '$id $input on $asOf: $rule ($basis)',
    ({ input, asOf, expect: wanted, lenient }) => {
      const answer = readTireCode(input, asOf);
      if (wanted.status === 'ok' || wanted.status === 'ambiguous') {
        const { status, form, dateCode, warnings } = wanted;
        const candidates =
          status === 'ambiguous'
            ? wanted.candidates
            : [{ week: wanted.week, year: wanted.year, from: wanted.from, to: wanted.to }];
        expect(answer).toMatchObject({ ok: true, form, dateCode, warnings, candidates });
        return;
      }
      expect(answer).toMatchObject({ ok: false, reason: wanted.status === 'error' ? wanted.error : wanted.status });
      if (answer.ok || wanted.status !== 'error') return;
      if (wanted.error === 'bad-date-symbol') expect(answer.suggest).toBe(wanted.suggest);
      expect(answer.swapped).toEqual(wanted.swapped);
      if (lenient) {
        const { status: _, ...meant } = lenient;
        expect(answer.lenient).toEqual(meant);
      }
    },
  );
});

describe('the tire week a day belongs to', () => {
  it.each(ofKind<Encode>('encode'))('$id $date: $rule ($basis)', ({ date, expect: wanted }) => {
    const { week, year } = tireWeekOf(date);
    const code4 = twoDigits(week) + twoDigits(year);
    expect({ week, year, code4, code3: code4.slice(0, 2) + code4.slice(3) }).toEqual(wanted);
  });
});

describe('weeks in a year', () => {
  it.each(ofKind<WeeksInYear>('weeks-in-year'))(
    '$id $year: $rule ($basis)',
    ({ year, firstSunday, expect: wanted }) => {
      const weeks = weeksInTireYear(year);
      expect({ weeks, lastWeekEnds: tireWeek(weeks, year)?.to }).toEqual(wanted);
      expect(tireWeek(1, year)?.from).toBe(firstSunday);
    },
  );

  it('49 CFR 574.5(b)(3): only years with 53 Sundays have a week 53', () => {
    const years = Array.from({ length: 91 }, (_, index) => 1970 + index).filter((year) => tireWeek(53, year));
    expect(years).toEqual([
      1972, 1978, 1984, 1989, 1995, 2000, 2006, 2012, 2017, 2023, 2028, 2034, 2040, 2045, 2051, 2056,
    ]);
  });
});

describe('49 CFR 574.5(b)(3), day by day from 1971 to 2060', () => {
  const weeks: Span[] = [];
  for (let year = 1970; year <= 2060; year++) {
    for (let week = 1; week <= 53; week++) {
      const span = tireWeek(week, year);
      if (span) weeks.push({ week, year, ...span });
    }
  }

  it('every week runs from Sunday through Saturday', () => {
    for (const { from, to } of weeks) expect([weekday(from), weekday(to), daysBetween(from, to)]).toEqual([0, 6, 6]);
  });

  it('every day lies in exactly one week, the one a tire made that day carries', () => {
    let index = 0;
    for (let day: CivilDate = '1971-01-01'; day <= '2060-12-31'; day = addDays(day, 1)) {
      while ((weeks[index]?.to ?? '9999') < day) index++;
      const span = weeks[index];
      const next = weeks[index + 1];
      if (!span || span.from > day || (next && next.from <= day)) throw new Error(`${day} is in no week or in two`);
      if (tireWeekOf(day).week !== span.week || tireWeekOf(day).year !== span.year)
        throw new Error(`${day} is misread`);
    }
  });

  it('week 01 is the first full week: it starts on one of the first seven days', () => {
    for (const { from, year } of weeks.filter(({ week }) => week === 1))
      expect(from >= `${year}-01-01` && from <= `${year}-01-07`).toBe(true);
  });

  it('the last week of a year holds at most six days of the next', () => {
    const ahead = weeks.map(({ to, year }) => Math.max(0, daysBetween(`${year}-12-31` as CivilDate, to)));
    expect(Math.max(...ahead)).toBe(6);
  });
});

describe('tire weeks are not ISO 8601 weeks', () => {
  const isoByLibrary = (week: number, year: number) => {
    const monday = startOfISOWeek(setISOWeek(new UTCDateMini(year, 5, 15), week));
    const from = monday.toISOString().slice(0, 10) as CivilDate;
    return { from, to: addDays(from, 6), week: getISOWeek(monday) };
  };

  it.each(ofKind<TinVsIso>('tin-vs-iso'))('$id $code: $rule ($basis)', ({ code, expect: wanted }) => {
    const own = settled(code, '2026-11-25');
    const iso = isoByLibrary(own.week, own.year);
    expect({
      tinFrom: own.from,
      tinTo: own.to,
      isoFrom: iso.from,
      isoTo: iso.to,
      startOffsetDays: daysBetween(iso.from, own.from),
    }).toEqual(wanted);
    expect(iso.week).toBe(own.week);
    expect(isoWeek(own.week, own.year)).toEqual({ from: iso.from, to: iso.to });
  });

  it('ISO 8601: our own ISO weeks are the library’s, 1971 to 2060', () => {
    for (let year = 1971; year <= 2060; year++) {
      for (let week = 1; week <= 53; week++) {
        const { from, to, week: existing } = isoByLibrary(week, year);
        expect(isoWeek(week, year)).toEqual(existing === week ? { from, to } : null);
      }
    }
  });

  it('a tire week starts 6 days after or 1 day before the ISO week of its number', () => {
    for (let year = 1971; year <= 2060; year++) {
      const offset = daysBetween(isoByLibrary(20, year).from, tireWeek(20, year)?.from as CivilDate);
      const thursdayOrEarlier = [1, 2, 3, 4].includes(weekday(`${year}-01-01` as CivilDate));
      expect(offset).toBe(thursdayOrEarlier ? 6 : -1);
    }
  });
});

describe('age of a tire', () => {
  it.each(ofKind<Age>('age'))('$id $code on $asOf: $rule ($basis)', ({ code, asOf, expect: wanted }) => {
    const { from, to } = settled(code, asOf);
    const months = monthsBetween(from, asOf);
    const [fiveYears, sixYears, tenYears] = [addMonths(from, 60), addMonths(from, 72), addMonths(from, 120)];
    expect({
      from,
      to,
      age: { years: Math.floor(months / 12), months: months % 12 },
      fiveYears,
      sixYears,
      tenYears,
      sixReached: asOf >= sixYears,
      tenReached: asOf >= tenYears,
    }).toEqual(wanted);
  });

  it.each(ofKind<AgeBasis>('age-basis'))('$id $code on $asOf: $rule ($basis)', ({ code, asOf, expect: wanted }) => {
    const { candidates } = accepted(code, asOf);
    expect({
      madeFrom: candidates[0]?.from,
      latestCandidateFrom: candidates.at(-1)?.from,
      tenReachedForAllCandidates: candidates.every(({ from }) => addMonths(from, 120) <= asOf),
    }).toEqual(wanted);
  });
});

describe('three digits, 22 May 1971 to 1 July 2000', () => {
  const years = (code: string) => accepted(code, '2026-11-25').candidates.map(({ year }) => year);

  it.each([
    ['532', [1972]],
    ['534', [1984]],
    ['535', [1995]],
    ['538', [1978]],
    ['539', [1989]],
  ])('49 CFR 574.5(b)(3): %s is settled by its week 53', (code, wanted) => expect(years(code)).toEqual(wanted));

  it.each(['530', '531', '533', '536', '537'])('49 CFR 574.5(b)(3): no year of %s has a week 53', (code) =>
    expect(readTireCode(code, '2026-11-25')).toMatchObject({ ok: false, reason: 'week-53-absent' }),
  );

  it.each([
    ['201', [1981, 1991]],
    ['211', [1971, 1981, 1991]],
    ['260', [1980, 1990, 2000]],
    ['270', [1980, 1990]],
  ])('64 FR 36807 and the start of numbering bound %s', (code, wanted) => expect(years(code)).toEqual(wanted));
});
