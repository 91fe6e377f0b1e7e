/**
 * Partial dates: what is known of a day, kept as an EDTF expression (ISO 8601-2) and read as a range of days.
 * EDTF says only that a date is approximate; how far that reaches is ours (`ABOUT`, common practice).
 */
import { isValid } from 'date-fns/isValid';
import edtf from 'edtf';
import { addDays, addMonths, type CivilDate, isCivilDate } from './civil.ts';

/** First and last possible day, both inclusive; null where that end is open. */
export interface DateRange {
  from: CivilDate | null;
  to: CivilDate | null;
}

export interface PartialDate extends DateRange {
  edtf: string;
}

/** Nothing this program dates is older; a smaller year is a slip of the finger. */
const FIRST_DAY = '1000-01-01';

/** The package takes five digits and more for milliseconds since 1970, and a time of day for the machine's own zone. */
const NO_DATE = /^\d{5,}$|T/;

/** The package takes 29 February of any year, and answers 1 March. */
const WHOLE_DAY = /\d{4}-\d{2}-\d{2}/g;

/** How far "about" reaches on either side, by the precision stated. */
const ABOUT: Readonly<Record<number, (day: CivilDate, sign: 1 | -1) => CivilDate>> = {
  1: (day, sign) => addMonths(day, 12 * sign),
  // From first of month to first of month, so that three months on from June end on 30 September.
  2: (day, sign) => (sign < 0 ? addMonths(day, -3) : addDays(addMonths(addDays(day, 1), 3), -1)),
  3: (day, sign) => addDays(day, 15 * sign),
};

/** What we use of the package's values: a date, or an interval, set or list of dates. */
interface Edtf {
  type: string;
  min: number | null;
  max: number | null;
  precision?: number;
  approximate?: { value: number };
  uncertain?: { value: number };
  values?: unknown[];
}

/** The range of an EDTF expression, or null where the text is none. Seasons are none: they differ by hemisphere. */
export const readEdtf = (text: string): PartialDate | null => {
  if (NO_DATE.test(text) || !(text.match(WHOLE_DAY) ?? []).every(isCivilDate)) return null;
  let value: Edtf;
  try {
    value = edtf(text) as Edtf;
  } catch {
    return null;
  }
  const range = rangeOf(value);
  if (range === null || (range.from === null && range.to === null)) return null;
  if (range.from !== null && range.to !== null && range.from > range.to) return null;
  return { edtf: text, ...range };
};

const rangeOf = (value: Edtf): DateRange | null => {
  if (value.type === 'Date') return dateRange(value);
  if (!['Interval', 'Set', 'List'].includes(value.type)) return null;
  // The package's own minimum and maximum of a set forget ranges within it, and approximate ends: take each date's.
  const dates = (value.values ?? []).flat(3).filter(isValue).map(dateRange);
  if (!dates.every((date) => date !== null)) return null;
  const open = {
    from: value.min === null || value.min === -Infinity,
    to: value.max === null || value.max === Infinity,
  };
  const froms = dates.map((date) => date.from).sort();
  const tos = dates.map((date) => date.to).sort();
  return { from: open.from ? null : (froms[0] ?? null), to: open.to ? null : (tos.at(-1) ?? null) };
};

/** A member of a set or an end of an interval; an open end is none. */
const isValue = (value: unknown): value is Edtf => typeof value === 'object' && value !== null;

const dateRange = (value: Edtf): { from: CivilDate; to: CivilDate } | null => {
  if (value.type !== 'Date') return null;
  const [min, max] = [toCivil(value.min), toCivil(value.max)];
  if (min === null || max === null) return null;
  const vague = Boolean(value.approximate?.value || value.uncertain?.value);
  const reach = (vague && ABOUT[value.precision ?? 1]) || ((day: CivilDate) => day);
  const [from, to] = [reach(min, -1), reach(max, 1)];
  return isCivilDate(from) && isCivilDate(to) ? { from, to } : null;
};

/** The day of an instant in UTC, or null where it lies outside the years this program dates. */
const toCivil = (instant: number | null): CivilDate | null => {
  const date = new Date(instant ?? Number.NaN);
  const day = isValid(date) ? date.toISOString().slice(0, 10) : '';
  return isCivilDate(day) && day >= FIRST_DAY ? day : null;
};

/** The expression for a range of days: one day, an interval, or one open at an end. */
export const edtfOf = ({ from, to }: DateRange): string =>
  from !== null && from === to ? from : `${from ?? '..'}/${to ?? '..'}`;
