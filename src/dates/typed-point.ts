/** Reads one day, month, year or decade as people write it, with every meaning it can have. */
import { type CivilDate, civilDate, firstOfMonth, lastOfMonth, yearOf } from './civil.ts';
import type { PartialDate } from './partial-date.ts';
import { MONTHS } from './words.ts';

/** Which number of 3/4/2015 is the day, by the person's own setting; `ask` where they set none. */
export const DATE_ORDERS = ['day first', 'month first', 'ask'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

export interface Reading {
  date: PartialDate;
  /** Against the person's own day-month order: offered, never taken. */
  unlikely: boolean;
}

interface PointRules {
  today: CivilDate;
  order: DateOrder;
}

/** Whole names and the usual short forms only: "maybe 2015" is not May. */
const MONTH_NAME =
  '(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?';
const YEAR = "['’]?(\\d{4}|\\d{2})";
const DAY = '(\\d{1,2})(?:st|nd|rd|th)?\\.?';
const GAP = '[ ,/-]+(?:of )?';

const form = (pattern: string): RegExp => new RegExp(`^${pattern}$`);
const FORMS: readonly [RegExp, (found: string[], rules: PointRules) => Reading[]][] = [
  [/^(\d{4})-(\d{1,2})-(\d{1,2})$/, ([y, m, d]) => day(Number(y), Number(m), Number(d))],
  [/^(\d{4})[-/.](\d{1,2})$/, ([y, m]) => month(Number(y), Number(m))],
  [/^(\d{1,2})[-/.](\d{4})$/, ([m, y]) => month(Number(y), Number(m))],
  [/^(\d{4})$/, ([y]) => span(`${y}`, 1, Number(y), 12)],
  [/^['’](\d{2})$/, ([y], rules) => years(`${y}`, rules).flatMap((year) => span(`${year}`, 1, year, 12))],
  [/^(?:the )?(\d{3})(?:0s|0['’]s|x)$/, ([decade]) => tenYears(Number(decade))],
  [/^(early|mid|late)[ -](\d{4})$/, ([part, y]) => third(part as keyof typeof THIRDS, Number(y))],
  [
    /^(early|mid|late)[ -](?:the )?(\d{3})(?:0s|0['’]s)$/,
    ([part, decade]) => partOfDecade(part as keyof typeof PARTS, Number(decade)),
  ],
  [
    form(`${MONTH_NAME}[ ,'’/-]*${YEAR}`),
    ([m, y], rules) => years(`${y}`, rules).flatMap((year) => month(year, named(m))),
  ],
  [form(`(\\d{4})[ /-]+${MONTH_NAME}`), ([y, m]) => month(Number(y), named(m))],
  [
    form(`${DAY}${GAP}${MONTH_NAME}[ ,/-]+${YEAR}`),
    ([d, m, y], rules) => years(`${y}`, rules).flatMap((year) => day(year, named(m), Number(d))),
  ],
  [
    form(`${MONTH_NAME} ?${DAY}[ ,]+${YEAR}`),
    ([m, d, y], rules) => years(`${y}`, rules).flatMap((year) => day(year, named(m), Number(d))),
  ],
  [/^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})$/, ([a, b, y], rules) => numeric(Number(a), Number(b), `${y}`, rules)],
];

/** Every meaning the text can have as one day, month, year or decade; none where it is something else. */
export const readPoint = (text: string, rules: PointRules): Reading[] => {
  for (const [pattern, meanings] of FORMS) {
    const found = pattern.exec(text);
    if (found) return meanings(found.slice(1) as string[], rules);
  }
  return [];
};

const numeric = (a: number, b: number, y: string, rules: PointRules): Reading[] =>
  years(y, rules).flatMap((year) => {
    const dayFirst = day(year, b, a);
    const monthFirst = day(year, a, b);
    if (rules.order === 'ask') return a === b ? dayFirst : [...dayFirst, ...monthFirst];
    const [own, other] = rules.order === 'day first' ? [dayFirst, monthFirst] : [monthFirst, dayFirst];
    return own.length > 0 ? own : other.map((reading) => ({ ...reading, unlikely: true }));
  });

/** A year as written; two digits can mean either century, as long as the year has begun. */
const years = (written: string, { today }: PointRules): number[] => {
  if (written.length === 4) return [Number(written)];
  return [1900 + Number(written), 2000 + Number(written)].filter((year) => year <= yearOf(today) + 30);
};

const named = (name: string | undefined): number =>
  MONTHS.findIndex((full) => full.toLowerCase().startsWith(`${name}`)) + 1;

const day = (year: number, monthOfYear: number, dayOfMonth: number): Reading[] => {
  const date = civilDate(year, monthOfYear, dayOfMonth);
  return date ? [{ date: { edtf: date, from: date, to: date }, unlikely: false }] : [];
};

const month = (year: number, monthOfYear: number): Reading[] =>
  monthOfYear >= 1 && monthOfYear <= 12
    ? span(`${year}-${String(monthOfYear).padStart(2, '0')}`, monthOfYear, year, monthOfYear)
    : [];

const THIRDS = { early: [1, 4], mid: [5, 8], late: [9, 12] } as const;

const third = (part: keyof typeof THIRDS, year: number): Reading[] => {
  const [first, last] = THIRDS[part];
  return span(`${firstOfMonth(year, first).slice(0, 7)}/${firstOfMonth(year, last).slice(0, 7)}`, first, year, last);
};

/** EDTF writes a decade as three digits and X; years before 1000 are slips of the finger. */
/** Years of a decade, first and last. */
const PARTS = { early: [0, 3], mid: [4, 6], late: [7, 9] } as const;

const partOfDecade = (part: keyof typeof PARTS, decade: number): Reading[] => {
  const [first, last] = PARTS[part].map((year) => decade * 10 + year) as [number, number];
  const date = { edtf: `${first}/${last}`, from: firstOfMonth(first, 1), to: lastOfMonth(last, 12) };
  return [{ date, unlikely: false }];
};

const tenYears = (decade: number): Reading[] => {
  const [from, to] = [firstOfMonth(decade * 10, 1), lastOfMonth(decade * 10 + 9, 12)];
  return decade < 100 ? [] : [{ date: { edtf: `${decade}X`, from, to }, unlikely: false }];
};

const span = (edtf: string, first: number, year: number, last: number): Reading[] =>
  year === 0 ? [] : [{ date: { edtf, from: firstOfMonth(year, first), to: lastOfMonth(year, last) }, unlikely: false }];
