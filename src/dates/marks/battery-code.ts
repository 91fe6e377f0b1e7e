import { type CivilDate, yearOf } from '../civil.ts';
import { dayInWords, MONTHS } from '../words.ts';
import { type MarkAnswer, type MarkCandidate, madeAnswer, refuse } from './answer.ts';
import {
  fullYear,
  isMonth,
  isPlausibleYear,
  monthInWords,
  monthSpan,
  OLDEST_YEAR,
  tidyMark,
  unreadable,
  yearOutOfRange,
} from './typed.ts';

/** What is known of the battery beside its code. */
export interface KnownAboutBattery {
  /** Earliest day it can have been made. */
  notBefore?: CivilDate | undefined;
  /** Latest day it was fitted. */
  fittedBy?: CivilDate | undefined;
}

/** Older batteries are no longer in use, so a repeating year digit is looked for this far back. */
const YEARS_BACK = 20;
/** From the ninth letter on, makers that leave out I are one month behind. */
const LETTER_I = 9;
const EXPECTED =
  'Look on the case edge, the lid or a small sticker for a letter A to L (the month) with a digit (the year), such as C7, or for month/year, such as 3/17.';

type Code = { month: number; year: string; kind: 'letter first' | 'digit first' | 'numbers' };

const codeOf = (text: string): Code | null => {
  const letterFirst = /^([A-M])[-/. ]?(\d{4}|\d{1,2})$/.exec(text);
  if (letterFirst) return { month: letter(letterFirst[1]), year: letterFirst[2] as string, kind: 'letter first' };
  const digitFirst = /^(\d)[-/. ]?([A-M])$/.exec(text);
  if (digitFirst) return { month: letter(digitFirst[2]), year: digitFirst[1] as string, kind: 'digit first' };
  const numbers = /^(\d{1,2})[-/. ](\d{4}|\d{1,2})$/.exec(text);
  return numbers && { month: Number(numbers[1]), year: numbers[2] as string, kind: 'numbers' };
};

const letter = (symbol: string | undefined): number => (symbol ?? '').charCodeAt(0) - 64;

/** Month a battery was made, by its code; a single year digit gives one candidate a decade. Maker practice, no standard. */
export const readBatteryCode = (typed: string, today: CivilDate, known: KnownAboutBattery = {}): MarkAnswer => {
  const code = codeOf(tidyMark(typed));
  if (!code) return unreadable(typed, EXPECTED);
  const { month, kind } = code;
  if (month === 13 && kind !== 'numbers')
    return refuse(
      'letter-out-of-range',
      'The letters run from A to L. M is December where a maker leaves out the letter I; if so, type it in numbers, such as 12/17.',
    );
  if (!isMonth(month))
    return refuse(
      'month-out-of-range',
      `There is no month ${month}. Is the year first on this sticker? Then type the month first.`,
    );

  const years = code.year.length === 1 ? yearsEndingIn(Number(code.year), known, today) : [fullYear(code.year, today)];
  const misread = years.find((year) => !isPlausibleYear(year));
  if (misread !== undefined) return yearOutOfRange(misread);
  const all: MarkCandidate[] = years.map((year) => ({ ...monthSpan(year, month), note: monthInWords(month, year) }));
  const begun = all.filter(({ from }) => from <= today);
  const kept = begun.filter(
    ({ from, to }) => (!known.notBefore || to >= known.notBefore) && (!known.fittedBy || from <= known.fittedBy),
  );
  if (begun.length > 0 && kept.length === 0)
    return refuse(
      'no-candidate-left',
      `No year this code could mean goes with what is known${factsInWords(known)}. Check the code and those dates.`,
    );
  return madeAnswer(kept, today, {
    working: [...working(code), ...struckOut(begun, kept)],
    doubts: doubts(code, kept.length),
    ahead: `${MONTHS[month - 1]} of that year is after today. Read the code again; the order may be another one.`,
  });
};

const yearsEndingIn = (digit: number, known: KnownAboutBattery, today: CivilDate): number[] => {
  const last = yearOf(today);
  const oldest = Math.max(OLDEST_YEAR, yearOf(known.fittedBy ?? today) - YEARS_BACK);
  return Array.from({ length: Math.max(0, last - oldest + 1) }, (_, index) => oldest + index).filter(
    (year) => year % 10 === digit,
  );
};

const factsInWords = ({ notBefore, fittedBy }: KnownAboutBattery): string =>
  [notBefore && ` (not made before ${dayInWords(notBefore)})`, fittedBy && ` (fitted by ${dayInWords(fittedBy)})`]
    .filter((fact) => fact !== undefined && fact !== '')
    .join('');

const struckOut = (all: MarkCandidate[], kept: MarkCandidate[]): string[] =>
  all
    .filter((candidate) => !kept.includes(candidate))
    .map(({ note }) => `${note} is struck out by what is known of the battery.`);

const working = ({ month, year, kind }: Code): string[] => [
  kind === 'numbers'
    ? `Month ${month} is ${MONTHS[month - 1]}.`
    : `The letter stands for the month: ${MONTHS[month - 1]}.`,
  year.length === 1 ? `The year ends in ${year}; the digit comes round every ten years.` : `The year is ${year}.`,
];

const doubts = ({ month, kind }: Code, candidates: number): string[] => [
  ...(candidates > 1 ? ['The decade is not in the code: the day it was bought or fitted can settle it.'] : []),
  ...(kind === 'digit first'
    ? ['Read as year, then month. Most makers put the letter first: check which this is.']
    : []),
  ...(kind === 'numbers' ? [] : ['Letter codes are each maker’s own; some run them in another order.']),
  ...(kind !== 'numbers' && month >= LETTER_I
    ? ['Some makers leave out the letter I, so that J is September: the month could be one earlier.']
    : []),
];
