import { type CivilDate, weekday } from '../civil.ts';
import type { TireWeek } from '../tire-week.ts';
import { ageInWords, ageOf, dayInWords, monthsInWords } from '../words.ts';
import type { TireCodeAnswer, TireCodeRead, TireCodeWords } from './answer.ts';
import { explainTireRefusal } from './refusal-words.ts';

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
/** The longest limit anyone has published for road tires, ten years from manufacture, in months. */
const LONGEST_LIMIT = 120;

const withWeekday = (day: CivilDate): string => `${DAYS[weekday(day)]} ${dayInWords(day)}`;

const listed = (items: (string | number)[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} or ${items.at(-1)}`;

const weekInWords = ({ week, year, from, to }: TireWeek): string =>
  `Week ${week} of ${year}: first day ${withWeekday(from)}, last day ${withWeekday(to)}.`;

const digitsInWords = ({ dateCode, candidates }: TireCodeRead): string => {
  const [week, year] = [dateCode.slice(0, 2), dateCode.slice(2)];
  if (dateCode.length === 3)
    return `The date is the three digits ${dateCode}: week ${week} of a year that ends in ${year}. The decade is not in the code.`;
  const full = candidates[0] ? `, that is ${candidates[0].year}` : '';
  return `The date is the four digits ${dateCode}: week ${week} of year ${year}${full}.`;
};

/** Why a 53rd week settles the decade or nearly does; nothing for other weeks. */
const rareWeek = ({ dateCode, candidates, dropped }: TireCodeRead): string[] => {
  if (dateCode.length !== 3 || !dateCode.startsWith('53')) return [];
  const years = [...candidates, ...dropped.map(({ candidate }) => candidate)].map(({ year }) => year);
  return [
    `Of the years that end in ${dateCode.slice(2)} when three digits were in use, only ${listed(years)} had a week 53.`,
  ];
};

const SYMBOL = 'symbol-not-permitted:';
const DOUBTS: Record<string, string> = {
  'retread-date-only':
    'The date is the day of retreading; the casing under it is older, and its age is not in the number. On a European retread the code can stand for the three weeks after as well.',
  'early-four-digit':
    'Four digits became mandatory in July 2000. Some makers began in 1999, so the year is read as the only one possible.',
  'legacy-length-after-2025-04-13':
    'The number has the old, shorter layout, which ended on 13 April 2025. Count the symbols again; one may be missing, or the date misread.',
  '13-symbols-before-2015-04-13':
    'The number has 13 symbols, a layout that came on 13 April 2015, but its date is earlier. Read the date again.',
};

const doubtInWords = (warning: string): string => {
  if (!warning.startsWith(SYMBOL)) return DOUBTS[warning] ?? warning;
  const symbol = warning.slice(SYMBOL.length);
  return `${symbol} is not used in these numbers and was probably read for another symbol. The date does not depend on it.`;
};

const doubtsOf = (answer: TireCodeRead, youngest: number): string[] => {
  const doubts = answer.warnings.map(doubtInWords);
  if (answer.otherReading) doubts.push(answer.otherReading.why);
  if (answer.form === 'date-only-3')
    doubts.push('Three digits mean before July 2000. If a fourth stands there, perhaps a 0 in front, type all four.');
  if (answer.candidates.length > 1 && youngest >= LONGEST_LIMIT)
    doubts.push(
      `Whichever of these years it is, the tire is at least ${monthsInWords(youngest)} old, past every limit published for road tires.`,
    );
  return doubts;
};

const nextOf = ({ asks, candidates }: TireCodeRead): string[] => {
  const next: string[] = [];
  if (asks)
    next.push(
      'Is there a small triangle right after the three digits? It stands for the 1990s. If there is none, that proves nothing: not every tire of the 1990s has it.',
    );
  if (candidates.length > 1)
    next.push('If you know when the tire was fitted, or when the car was built and the tire can’t be older, say so.');
  return next;
};

/** Title, working, doubts and next steps for any answer of `readTireCode`. Ages count from the first day of the week. */
export const explainTireCode = (answer: TireCodeAnswer, today: CivilDate): TireCodeWords => {
  if (!answer.ok) return explainTireRefusal(answer);
  const { candidates, dropped } = answer;
  const first = candidates[0];
  const last = candidates.at(-1);
  const age = ageOf({ from: first?.from ?? null, to: last?.to ?? null }, today);
  return {
    title: `Week ${first?.week} of ${listed(candidates.map(({ year }) => year))}`,
    working: [
      digitsInWords(answer),
      'Week 1 begins on the first Sunday of the year; every week runs from Sunday to Saturday.',
      ...rareWeek(answer),
      ...candidates.map(weekInWords),
      ...dropped.map(({ why }) => why),
      `Age on ${dayInWords(today)}: ${ageInWords(age)}.`,
    ],
    doubts: doubtsOf(answer, age.youngest),
    next: nextOf(answer),
  };
};
