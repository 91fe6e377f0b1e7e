import { type CivilDate, civilDate } from '../civil.ts';
import { dayInWords } from '../words.ts';
import { type MarkAnswer, madeAnswer, refuse } from './answer.ts';
import {
  fullYear,
  isMonth,
  isPlausibleYear,
  monthInWords,
  monthSpan,
  tidyMark,
  unreadable,
  yearOutOfRange,
} from './typed.ts';

/** Labels of this kind began in 1974; an earlier year is not from one. 49 CFR 571.106 (FMVSS 106). */
const FIRST_LABELS = 1974;
const EXPECTED =
  'On one of the two stripes along the hose stands DOT, then month/day/year or month/year in numerals, such as 10/1/74 or 3/09.';
const SHAPE = /^(?:DOT )?(\d{1,2})[-/. ](?:(\d{1,2})[-/. ])?(\d{4}|\d{2})$/;

/**
 * Day or month a brake hose was made, by its label in US order: month first. 49 CFR 571.106 S5.2.2(c).
 * Two-digit years up to this year’s are 20xx; later ones are 19xx, which leaves 74 to 99 as years of labels.
 */
export const readHoseLabel = (typed: string, today: CivilDate): MarkAnswer => {
  const parts = SHAPE.exec(tidyMark(typed));
  if (!parts) return unreadable(typed, EXPECTED);
  const month = Number(parts[1]);
  const day = parts[2] === undefined ? null : Number(parts[2]);
  const year = fullYear(parts[3] as string, today);
  if (!isMonth(month)) return refuse('month-out-of-range', monthMessage(month, day));
  if (year < FIRST_LABELS)
    return refuse(
      'before-labeling-rule',
      `Dated brake hose labels began in 1974, and this would be ${year}. Read the year again; it may be worn, or the print is something else.`,
    );
  if (!isPlausibleYear(year)) return yearOutOfRange(year);
  const exact = day === null ? null : civilDate(year, month, day);
  if (day !== null && exact === null)
    return refuse(
      'no-such-day',
      `${monthInWords(month, year)} has no day ${day}. Read the label again; US order is month, day, year.`,
    );
  const span = exact ? { from: exact, to: exact } : monthSpan(year, month);
  return madeAnswer([span], today, {
    working: [
      exact
        ? `Month, day, year: made on ${dayInWords(exact)}.`
        : `Month and year: made in ${monthInWords(month, year)}; the age counts from the 1st.`,
    ],
    doubts: [
      ...(day !== null && day !== month && isMonth(day)
        ? ['US labels put the month first. A hose never meant for the US may put the day first.']
        : []),
      'The label dates the hose, not the day it was fitted.',
    ],
    ahead: `This would be ${exact ? dayInWords(exact) : monthInWords(month, year)}, after today. Read the label again; the order may be another one.`,
  });
};

const monthMessage = (month: number, day: number | null): string =>
  day !== null && isMonth(day) && month > 12
    ? `US labels put the month first, and there is no month ${month}. Does this label put the day first? If so, type ${day} first.`
    : `US labels put the month first, and there is no month ${month}. Read the label again; the first number may be a day or a week.`;
