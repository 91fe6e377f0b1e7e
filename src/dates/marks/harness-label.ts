import { addMonths, type CivilDate, yearOf } from '../civil.ts';
import { dayInWords } from '../words.ts';
import { type MarkAnswer, type MarkCandidate, madeAnswer, oldestFirst, refuse } from './answer.ts';
import { readMadeDate } from './made-date.ts';
import { isPlausibleYear, tidyMark, unreadable, yearOutOfRange } from './typed.ts';

/** `international`: FIA 8853, last valid year on every strap. `us`: SFI 16.1 and 16.5, punched month and year of make. */
export type HarnessStandard = 'international' | 'us';

/** International labels end on 31 December of the year of make plus this. FIA 8853/98, by a technical bulletin. */
const INTERNATIONAL_YEARS = 5;
/** SFI 16.1 and 16.5: two years from make, by a trade bulletin. */
const US_MONTHS = 24;
const EXPECTED =
  'On every strap look for “not valid after” and a year (international), or for a label punched with month and year of make (US).';
const LAST_YEAR =
  /(?:NOT VALID AFTER|VALID (?:UNTIL|THROUGH|TO)|EXPIRES?(?: ON| IN)?|EXP\.?)[: ]*(?:31[/. ]12[/. ]|12[/. ])?(\d{4})$/;
const RULEBOOK = 'Clubs and events set rules of their own, some longer, some shorter: their rulebook decides.';

const endOf = (year: number): CivilDate => `${year}-12-31` as CivilDate;

const standardIn = (text: string): HarnessStandard | null => {
  if (/NOT VALID AFTER|8853|8854|\bFIA\b/.test(text)) return 'international';
  return /\bSFI\b|\b16\.[15]\b/.test(text) ? 'us' : null;
};

/** Made date and last valid day of a harness by its label; the standard is taken from the text where it names one. */
export const readHarnessLabel = (typed: string, today: CivilDate, standard?: HarnessStandard): MarkAnswer => {
  const text = tidyMark(typed);
  const lastYear = LAST_YEAR.exec(text);
  if (lastYear) return fromLastYear(Number(lastYear[1]), today);
  const kind = standardIn(text) ?? standard;
  const rest = text
    .replace(
      /\bFIA\b|\b885[34](?:[-/]\d{2,4})?\b|\bSFI\b|\b16\.[15]\b|\b(?:MADE|MFG|MFD|MANUFACTURED|DATE|OF|IN|ON)\b|[:,]/g,
      ' ',
    )
    .trim();
  if (rest === '') return unreadable(typed, EXPECTED);
  if (!kind)
    return refuse('which-standard', `The label’s standard decides how long it is valid. ${EXPECTED} Say which it is.`);
  if (kind === 'international' && /^\d{4}$/.test(rest)) return bareYear(Number(rest), today);
  const made = readMadeDate(rest, today);
  if (!made) return unreadable(typed, EXPECTED);
  if (!isPlausibleYear(made.year)) return yearOutOfRange(made.year);
  const validThrough =
    kind === 'international' ? endOf(made.year + INTERNATIONAL_YEARS) : addMonths(made.from, US_MONTHS);
  return madeAnswer([{ from: made.from, to: made.to, validThrough }], today, {
    working: [
      `Made ${made.words}.`,
      kind === 'international'
        ? `International: valid to 31 December of the fifth year after, so through ${dayInWords(validThrough)}.`
        : `US: two years from the first day it can have been made, so through ${dayInWords(validThrough)}.`,
    ],
    doubts: [RULEBOOK],
    ahead: `This would be made ${made.words}, after today. If the label says “not valid after”, type those words too.`,
  });
};

const lastValid = (year: number): MarkCandidate => ({
  ...madeIn(year - INTERNATIONAL_YEARS),
  validThrough: endOf(year),
  note: `not valid after ${year}; made in ${year - INTERNATIONAL_YEARS} by the five-year rule`,
});
const madeIn = (year: number) => ({ from: `${year}-01-01` as CivilDate, to: endOf(year) });

const fromLastYear = (year: number, today: CivilDate): MarkAnswer => {
  if (!isPlausibleYear(year - INTERNATIONAL_YEARS)) return yearOutOfRange(year);
  return madeAnswer([lastValid(year)], today, {
    working: [`The label names the last valid year: through ${dayInWords(endOf(year))}.`],
    doubts: [RULEBOOK],
    ahead: `A harness valid to ${year} would be made in ${year - INTERNATIONAL_YEARS}, after today. Read the year again.`,
  });
};

/** A year alone can be the last valid one or the year of make; a coming year can only be the last valid one. */
const bareYear = (year: number, today: CivilDate): MarkAnswer => {
  if (!isPlausibleYear(year - INTERNATIONAL_YEARS)) return yearOutOfRange(year);
  if (year > yearOf(today)) return fromLastYear(year, today);
  const made = { ...madeIn(year), validThrough: endOf(year + INTERNATIONAL_YEARS), note: `made in ${year}` };
  return madeAnswer(oldestFirst([lastValid(year), made]), today, {
    working: [`${year} alone is the last valid year or the year of make.`],
    doubts: ['Which words stand with the year: “not valid after”, or a date of make?', RULEBOOK],
    ahead: 'That year is after today. Read it again.',
  });
};
