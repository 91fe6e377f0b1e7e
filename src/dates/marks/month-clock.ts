import type { CivilDate } from '../civil.ts';
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

const EXPECTED =
  'On molded plastic look for a small dial with 1 to 12 round it: type the number the arrow points to, then the year in the center, such as 5/98.';
const SHAPE = /^(?:ARROW )?(\d{1,2})[-/., ]{1,2}(\d{4}|\d{2})$/;

/** Month a plastic part was molded, by its dial: the arrow’s month and the year in the center. Trade practice. */
export const readMonthClock = (typed: string, today: CivilDate): MarkAnswer => {
  const parts = SHAPE.exec(tidyMark(typed));
  if (!parts) return unreadable(typed, EXPECTED);
  const month = Number(parts[1]);
  if (!isMonth(month))
    return refuse(
      'month-out-of-range',
      `The dial has the months 1 to 12, and ${month} is none. Look where the arrow points.`,
    );
  const year = fullYear(parts[2] as string, today);
  if (!isPlausibleYear(year)) return yearOutOfRange(year);
  return madeAnswer([monthSpan(year, month)], today, {
    working: [`The arrow points to ${month}, the center says ${year}: ${monthInWords(month, year)}.`],
    doubts: [
      'The dial dates the molding. The part was assembled, and the car built, perhaps months later.',
      'A dial whose insert was not turned in time shows too early a month.',
    ],
    ahead: `This would be ${monthInWords(month, year)}, after today. Look again where the arrow points, and at the year.`,
  });
};
