import type { OtherMark } from './answer.ts';

/** Only a size has a slash between three and two digits and then a rim. */
const SIZE_WITH_SLASH = /^(?:P|LT|ST|T)?\s*\d{3}\s*\/\s*\d{2,3}\s*(?:Z?\s*[RDB]\s*F?|[-\s])\s*\d{2}(?!\d)/;
/** Shapes a number could share, so they count only without DOT, and only as the whole text. */
const SIZES = [
  /^(?:P|LT|ST|T)?\s*\d{3}\s*\/\s*\d{2,3}$/,
  /^\d{3}\s*-?\s*(?:[SHVZ]?\s*R\s*\d{2}|[-X]\s*\d{2,3})(?:\s*(?:C|XL))?(?:\s+\d{2,3}(?:\/\d{2,3})?\s*[A-Z])?$/,
  /^\d{1,2}\.\d{2}\s*[-X/\s]?\s*(?:[SHVZ]?\s*R)?\s*\d{2}(?:\s.*)?$/,
  /^\d{2}\s*X\s*\d{1,2}(?:\.\d{1,2})?\s*-?\s*[RDB]?\s*\d{2}(?:\s.*)?$/,
  /^(?:\d{2}|1[0-4]\d)(?:\/\d{2,3})?\s*[C-HJ-NP-WY]$/,
  /^\d{3}\s*\/\s*\d{2,3}\s*[SHVZ]?\s*R\s*\d{2}(?:\s.*)?$/,
  /^[A-HJ-N]R?\d{2}\s*-\s*\d{2}$/,
  /^\d(?:\.\d{1,2})?\s*[-X]\s*\d{2}$/,
];
/** Approval: E and a country number, then a number of digits, with regulation and noise or wet-grip letters about it. */
const APPROVAL = /^\(?E\s?\d{1,2}\)?[\s*-]*(?:\d{2,3}R[\s*-]*)?\d{5,8}(?:[\s*-]*[SWRBC]\d?)*$/;
/** A date in words: a month's name, or "week". */
const DATE_IN_WORDS =
  /\b(?:JAN(?:UARY)?|FEB(?:RUARY)?|MAR(?:CH)?|APR(?:IL)?|MAY|JUNE?|JULY?|AUG(?:UST)?|SEPT?(?:EMBER)?|OCT(?:OBER)?|NOV(?:EMBER)?|DEC(?:EMBER)?|WEEK)\s+\d/;
const CALENDAR_DATE = /^(?:(?:19|20)\d{2}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.](?:19|20)\d{2})$/;
const WORDS =
  /\b(?:M\s?[+&]\s?S|TUBELESS|TUBE\s?TYPE|RADIAL|3PMSF|TREADWEAR|TRACTION|TEMPERATURE|MAX(?:IMUM)?|LOAD|PSI|KPA|OUTSIDE|INSIDE|ROTATION|MADE\s+IN|REINFORCED|PLIES)\b/;

/** Which other mark of a sidewall the text is, or null. A text with DOT in front is only refused for a clear size. */
export const otherMark = (typed: string, dot: boolean): OtherMark | null => {
  const text = typed.normalize('NFKC').toUpperCase().trim();
  if (SIZE_WITH_SLASH.test(text.replace(/^D\.?O\.?T\.?[\s:]*/, ''))) return 'tire-size';
  if (dot) return null;
  if (SIZES.some((size) => size.test(text))) return 'tire-size';
  if (APPROVAL.test(text)) return 'approval-mark';
  if (CALENDAR_DATE.test(text) || DATE_IN_WORDS.test(text)) return 'calendar-date';
  // A number without any digit exists, but only of permitted letters: with an O or S it is a word.
  const word = /\p{L}/u.test(text) && !/\p{N}/u.test(text) && /[GIOQSZ]/.test(text);
  return word || WORDS.test(text) ? 'sidewall-words' : null;
};
