import { dayInWords } from '../words.ts';
import type { LenientWeek, OtherMark, TireCodeReason, TireCodeRefusal, TireCodeWords } from './answer.ts';

const LOOK_AT_ONE_SIDE =
  'Look at the inner sidewall: the full number is required on one side only. On the other side the date may be left out.';
const LOOK_FOR_DOT =
  'Look for a number that begins with DOT; its last four digits (three before July 2000) are the date.';

const TITLES: Record<TireCodeReason, string> = {
  empty: 'No number typed',
  'not-a-tin': 'Not a tire identification number',
  'no-date': 'No date in this number',
  'bad-length': 'The number of symbols does not fit',
  'bad-date-symbol': 'A letter stands in the date',
  'week-zero': 'There is no week 00',
  'week-too-high': 'No year has that many weeks',
  'week-53-absent': 'That year has no week 53',
  'future-date': 'That week has not begun',
  'no-candidate-left': 'What is known rules every year out',
};

const OTHER_MARKS: Record<OtherMark, string> = {
  'tire-size': 'This is a tire size, perhaps with load and speed marks.',
  'approval-mark': 'This is an approval mark (E and a number). Its digits are no date.',
  'calendar-date': 'This is a calendar date. A tire carries a week and a year instead.',
  'sidewall-words': 'These are other words from the sidewall.',
  'too-long': 'This is far longer than a tire identification number.',
};

const WORKING: Record<TireCodeReason, (refusal: TireCodeRefusal) => string> = {
  empty: () => 'There is nothing to read yet.',
  'not-a-tin': ({ looksLike }) => (looksLike ? OTHER_MARKS[looksLike] : 'This is no tire identification number.'),
  'no-date': () => 'The number does not end in three or four digits, so it says nothing about the age.',
  'bad-length': () =>
    'A whole number has 13 symbols after DOT, an older one 7 to 12, a retread’s 7. The date alone is four digits, or three before July 2000.',
  'bad-date-symbol': () => 'The date is made of numerals only; O, I, S and B are easily read for 0, 1, 5 and 8.',
  'week-zero': ({ dateCode }) => `The first two digits of ${dateCode} are the week, and weeks begin with 01.`,
  'week-too-high': ({ dateCode }) => `The first two digits of ${dateCode} are the week, and weeks end with 52 or 53.`,
  'week-53-absent': ({ dateCode }) =>
    dateCode?.length === 3
      ? `None of the years that ${dateCode} could mean has a 53rd Sunday.`
      : `The year in ${dateCode} has 52 Sundays, so its last week is 52.`,
  'future-date': ({ dateCode }) => `Read as week, then year, ${dateCode} is after today.`,
  'no-candidate-left': ({ dateCode }) => `${dateCode} can’t be brought together with what is known about this tire.`,
};

const lenientWords = ({ warning, from, to, isoWeek }: LenientWeek): string => {
  const span = `${dayInWords(from)} to ${dayInWords(to)}`;
  const iso = isoWeek && `${dayInWords(isoWeek.from)} to ${dayInWords(isoWeek.to)}`;
  if (warning === 'week-begun-in-ISO-calendar-only')
    return `A factory that counts weeks from Monday (ISO 8601) would mark ${iso} this way. If the number is printed so, take that week.`;
  return iso
    ? `A factory that counts weeks from Monday (ISO 8601) would mark ${iso} this way; counted on from week 52 it would be ${span}.`
    : `Counted on from week 52 it would be ${span}, week 1 of the next year. Read the week again.`;
};

const READ_AGAIN = 'Read the digits again in a slanting light, and on the other sidewall too.';

const nextFor = ({ reason, suggest, swapped, lenient }: TireCodeRefusal): string[] => {
  const next: string[] = [];
  if (suggest)
    next.push(
      reason === 'bad-date-symbol'
        ? `Was ${suggest} meant? Confirm it on the tire.`
        : `If ${suggest} stands at the end of the number, type only that.`,
    );
  if (swapped)
    next.push(
      `Were the pairs typed year first? ${swapped.dateCode} would be week ${swapped.week} of ${swapped.year}: ${dayInWords(swapped.from)} to ${dayInWords(swapped.to)}. Confirm it on the tire.`,
    );
  if (lenient) next.push(lenientWords(lenient));
  if (reason === 'no-date') next.push(LOOK_AT_ONE_SIDE);
  else if (reason === 'empty' || reason === 'not-a-tin') next.push(LOOK_FOR_DOT);
  else if (reason === 'no-candidate-left')
    next.push(
      'Check the number and the dates you gave. A spare or a stock tire can be older than the car, and a tire can have been changed since.',
    );
  else next.push(READ_AGAIN);
  return next;
};

/** What was wrong with a refused number and what to look at next. */
export const explainTireRefusal = (refusal: TireCodeRefusal): TireCodeWords => ({
  title: TITLES[refusal.reason],
  working: [WORKING[refusal.reason](refusal), ...(refusal.dropped ?? []).map(({ why }) => why)],
  doubts: [],
  next: nextFor(refusal),
});
