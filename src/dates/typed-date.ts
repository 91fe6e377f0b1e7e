/**
 * Reads what people type for a date: a day, a month, a year, "about 2015", "between 2009 and 2013", "before 1998",
 * "after 2011", "original", "unknown", "not looked yet", or EDTF itself. Nothing is guessed: where the text can mean
 * more than one thing, the answer is a question.
 */
import { addDays, type CivilDate } from './civil.ts';
import { type DateRange, edtfOf, type PartialDate, readEdtf } from './partial-date.ts';
import { type DateOrder, type Reading, readPoint } from './typed-point.ts';
import { dayInWords, rangeInWords } from './words.ts';

export interface TypedDateRules {
  today: CivilDate;
  order: DateOrder;
  /** Days before this one are refused, or struck out where the text is ambiguous. */
  notBefore?: { day: CivilDate; why: string } | undefined;
  /** True for a printed expiry, which may lie ahead. */
  mayBeAhead?: boolean;
}

export type TypedDate =
  | { ok: true; said: 'date'; date: PartialDate; understood: string }
  | { ok: true; said: 'original' | 'unknown' | 'not looked' }
  | { ok: false; reason: 'ambiguous'; message: string; choices: { value: string; label: string }[] }
  | { ok: false; reason: 'empty' | 'not understood' | 'future' | 'too early' | 'backwards'; message: string };

/** No date is longer; what is would only keep the readers busy. */
const LONGEST = 200;

const SAID: readonly [RegExp, 'original' | 'unknown' | 'not looked'][] = [
  [/^(original|orig\.?|as built|from new|since new|factory)$/, 'original'],
  [/^(unknown|not known|don['’]?t know|no idea|\?+)$/, 'unknown'],
  [/^(not looked( yet)?|not yet looked|not yet|not seen( yet)?|have not looked)$/, 'not looked'],
];

export const readTypedDate = (typed: string, rules: TypedDateRules): TypedDate => {
  const text = typed.trim().toLowerCase().replace(/\s+/g, ' ');
  if (text === '')
    return {
      ok: false,
      reason: 'empty',
      message: 'Nothing was typed. Say “unknown” or “not looked yet” if there is no date.',
    };
  if (text.length > LONGEST)
    return { ok: false, reason: 'not understood', message: 'That is too long for a date. Put the rest into the note.' };
  for (const [pattern, said] of SAID) if (pattern.test(text)) return { ok: true, said };

  const near = text === 'today' ? rules.today : text === 'yesterday' ? addDays(rules.today, -1) : null;
  if (near) return judge(typed.trim(), { edtf: near, from: near, to: near }, rules);

  const readings = read(text, (part) => readPoint(part, rules));
  if (readings.length === 0)
    return {
      ok: false,
      reason: 'not understood',
      message: `“${typed.trim()}” was not understood as a date. Try 3 June 2015, June 2015, 2015, about 2015, between 2009 and 2013, before 1998, after 2011, original, unknown or not looked yet.`,
    };
  const judged = readings.map((reading) => ({ ...reading, answer: judge(typed.trim(), reading.date, rules) }));
  const possible = judged.filter((reading) => reading.answer.ok);
  const [first, ...others] = possible;
  if (first === undefined) return judged[0]?.answer as TypedDate;
  if (others.length === 0 && !first.unlikely) return first.answer;
  return {
    ok: false,
    reason: 'ambiguous',
    message: `“${typed.trim()}” can be read in more than one way. Which is meant?`,
    choices: possible.map(({ date }) => ({ value: date.edtf, label: rangeInWords(date) })),
  };
};

const ABOUT = /^(?:about|around|circa|approximately|approx\.?|roughly|ca?\. ?|ca? |~) ?(.+)$|^(.+?)(?:ish|~)$/;
const BETWEEN = [
  /^between (.+) and (.+)$/,
  /^from (.+) (?:to|until|till) (.+)$/,
  /^(.+) (?:to|until) (.+)$/,
  /^(\d{4}) ?[-–] ?(\d{4})$/,
];
const BEFORE = /^(?:before|older than|earlier than|pre[- ]?) ?(.+)$/;
const UNTIL = /^(?:until|till|by|up to|not after|no later than) (.+)$|^(.+) or (?:before|earlier|older)$/;
const AFTER = /^(?:after|newer than|later than|post[- ]?) ?(.+)$/;
const SINCE = /^(?:since|not before|no earlier than|from) (.+?)(?: on(?:wards?)?)?$|^(.+) or (?:after|later|newer)$/;

const read = (text: string, points: (text: string) => Reading[]): Reading[] => {
  const plain = points(text);
  if (plain.length > 0) return plain;
  for (const pattern of BETWEEN) {
    const found = pattern.exec(text);
    // "Up to 1998" has the shape of one of them, but no first date.
    const both = found ? pairs(points(found[1] ?? ''), points(found[2] ?? '')) : [];
    if (both.length > 0) return both;
  }
  const about = only(ABOUT, text);
  if (about) return each(points(about), ({ edtf }) => (/[/~?%[{]/.test(edtf) ? null : readEdtf(`${edtf}~`)));
  const before = only(BEFORE, text);
  if (before) return each(points(before), ({ from }) => from && range(null, addDays(from, -1)));
  const until = only(UNTIL, text);
  if (until) return each(points(until), ({ to }) => to && range(null, to));
  const after = only(AFTER, text);
  if (after) return each(points(after), ({ to }) => to && range(addDays(to, 1), null));
  const since = only(SINCE, text);
  if (since) return each(points(since), ({ from }) => from && range(from, null));
  const written = readEdtf(text.toUpperCase());
  return written ? [{ date: written, unlikely: false }] : [];
};

const range = (from: CivilDate | null, to: CivilDate | null): PartialDate => ({ edtf: edtfOf({ from, to }), from, to });

/** The first group of a pattern that caught something. */
const only = (pattern: RegExp, text: string): string | undefined => pattern.exec(text)?.slice(1).find(Boolean);

const each = (readings: Reading[], turn: (date: DateRange & { edtf: string }) => PartialDate | null): Reading[] =>
  readings.flatMap(({ date, unlikely }) => {
    const turned = turn(date);
    return turned ? [{ date: turned, unlikely }] : [];
  });

/** Every pairing of two ends, written as one interval; ends the wrong way round come back as they are, to be refused. */
const pairs = (starts: Reading[], ends: Reading[]): Reading[] =>
  starts.flatMap((start) =>
    ends.map((end) => ({
      date: { edtf: `${start.date.edtf}/${end.date.edtf}`, from: start.date.from, to: end.date.to },
      unlikely: start.unlikely || end.unlikely,
    })),
  );

const judge = (typed: string, date: PartialDate, { today, notBefore, mayBeAhead }: TypedDateRules): TypedDate => {
  const { from, to } = date;
  if (from && to && from > to)
    return { ok: false, reason: 'backwards', message: `“${typed}” ends before it begins. Put the earlier date first.` };
  if (!mayBeAhead && from && from > today)
    return {
      ok: false,
      reason: 'future',
      message: `“${typed}” is ${rangeInWords(date)}, and that lies ahead: today is ${dayInWords(today)}. Check the year.`,
    };
  if (notBefore && to && to < notBefore.day)
    return {
      ok: false,
      reason: 'too early',
      message: `“${typed}” is ${rangeInWords(date)}, too early: ${notBefore.why} (${dayInWords(notBefore.day)}).`,
    };
  // What is recorded today can't be newer than today.
  const last = mayBeAhead ? to : to === null || to > today ? today : to;
  const known = { edtf: date.edtf, from, to: last };
  return { ok: true, said: 'date', date: known, understood: rangeInWords(last === today ? { from, to } : known) };
};
