/** What a desk was asked: read by the rules of its questions, refused with the fault beside the field. */
import { type AnswerGiven, readAnswers } from '../../acts/details.ts';
import { done, type Fault, type Outcome, refused } from '../../acts/fault.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { Answers } from '../../findings/facts.ts';

/** What a desk was asked, as typed: it stands in the fields again, whatever came of it. */
export type Asked = Readonly<Record<string, string>>;

export const fault = (field: string, message: string): Outcome<never> => refused({ field, message });

/** The faults of all that was read, in order. */
export const faultsIn = (...read: readonly Outcome<unknown>[]): Fault[] =>
  read.flatMap((one) => (one.ok ? [] : one.faults));

/** The unit beside a number comes as <key>-unit. */
const given = (details: readonly Detail[], asked: Asked): Record<string, AnswerGiven> =>
  Object.fromEntries(details.map(({ key }) => [key, { typed: asked[key] ?? '', unit: asked[`${key}-unit`] ?? '' }]));

/** Reads a desk’s questions; those named in `needed` can’t be left open. */
export const readDesk = (details: readonly Detail[], asked: Asked, needed: readonly string[]): Outcome<Answers> => {
  const read = readAnswers(details, given(details, asked));
  const open: Fault[] = details
    .filter(({ key }) => needed.includes(key) && (asked[key] ?? '').trim() === '')
    .map(({ key, name }) => ({ field: key, message: `${name}: this one is needed.` }));
  if (!read.ok) return { ok: false, faults: [...open, ...read.faults] };
  return open.length > 0 ? { ok: false, faults: open } : done(read.value);
};

/** Ways to tell one thing: two of them may disagree, and no desk guesses which was meant. */
export const onlyOneOf = (details: readonly Detail[], answers: Answers): Fault[] => {
  const [first, ...others] = details.filter(({ key }) => answers[key] !== undefined);
  return first
    ? others.slice(0, 1).map(({ key }) => ({
        field: key,
        message: `“${first.name}” is answered as well, and both tell the same: give one of them.`,
      }))
    : [];
};

/** What was asked, for the printed page, which has no fields. */
export const askedInWords = (details: readonly Detail[], asked: Asked): string[] =>
  details
    .filter(({ key }) => (asked[key] ?? '').trim() !== '')
    .map((detail) => {
      const typed = asked[detail.key] ?? '';
      const words =
        'choices' in detail
          ? (detail.choices[typed] ?? typed)
          : `${typed} ${asked[`${detail.key}-unit`] ?? detail.unit}`;
      return `${detail.name.toLowerCase()}: ${words}`;
    });
