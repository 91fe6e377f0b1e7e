/**
 * Partial dates: what is known of a day, kept as an EDTF expression (ISO 8601-2) and read as a range of days.
 * EDTF says only that a date is approximate; how far that reaches is ours (`ABOUT`, common practice).
 */
import edtf from 'edtf';
import { addDays, addMonths, type CivilDate } from './civil.ts';

/** First and last possible day, both inclusive; null where that end is open. */
export interface DateRange {
  from: CivilDate | null;
  to: CivilDate | null;
}

export interface PartialDate extends DateRange {
  edtf: string;
}

/** Nothing this program dates is older; a smaller year is a slip of the finger. */
const FIRST_YEAR = '1000';

/** How far "about" reaches on either side, by the precision stated. */
const ABOUT: Readonly<Record<number, (day: CivilDate, sign: 1 | -1) => CivilDate>> = {
  1: (day, sign) => addMonths(day, 12 * sign),
  2: (day, sign) => addMonths(day, 3 * sign),
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
  let value: Edtf;
  try {
    value = edtf(text) as Edtf;
  } catch {
    return null;
  }
  const range = rangeOf(value);
  if (range === null || (range.from === null && range.to === null)) return null;
  if (range.from !== null && range.to !== null && range.from > range.to) return null;
  if ((range.from ?? range.to ?? '') < FIRST_YEAR) return null;
  return { edtf: text, ...range };
};

const rangeOf = (value: Edtf): DateRange | null => {
  if (value.type === 'Date') return dateRange(value);
  if (!['Interval', 'Set', 'List'].includes(value.type)) return null;
  // The package's own minimum and maximum of a set forget ranges within it, and approximate ends: take each date's.
  const dates = (value.values ?? []).flat(3).filter(isDate).map(dateRange);
  const open = {
    from: value.min === null || value.min === -Infinity,
    to: value.max === null || value.max === Infinity,
  };
  const froms = dates.map((date) => date.from).sort();
  const tos = dates.map((date) => date.to).sort();
  return { from: open.from ? null : (froms[0] ?? null), to: open.to ? null : (tos.at(-1) ?? null) };
};

const isDate = (value: unknown): value is Edtf =>
  typeof value === 'object' && value !== null && 'type' in value && value.type === 'Date';

const dateRange = (value: Edtf): { from: CivilDate; to: CivilDate } => {
  const vague = Boolean(value.approximate?.value || value.uncertain?.value);
  const reach = (vague && ABOUT[value.precision ?? 1]) || ((day: CivilDate) => day);
  return { from: reach(toCivil(value.min), -1), to: reach(toCivil(value.max), 1) };
};

const toCivil = (instant: number | null): CivilDate => new Date(instant ?? 0).toISOString().slice(0, 10) as CivilDate;

/** The expression for a range of days: one day, an interval, or one open at an end. */
export const edtfOf = ({ from, to }: DateRange): string =>
  from !== null && from === to ? from : `${from ?? '..'}/${to ?? '..'}`;
