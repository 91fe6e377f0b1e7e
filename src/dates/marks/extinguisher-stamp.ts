import { addDays, addMonths, type CivilDate } from '../civil.ts';
import { dayInWords } from '../words.ts';
import { type MarkAnswer, madeAnswer } from './answer.ts';
import { readMadeDate } from './made-date.ts';
import { fullYear, tidyMark, unreadable } from './typed.ts';

/** Whether it can be refilled; a disposable one ends with its age. */
export type ExtinguisherKind = 'disposable' | 'rechargeable';

/** Disposable: out of service 12 years from make. NFPA 10, as summarized by service firms. */
const DISPOSABLE_MONTHS = 144;
const EXPECTED =
  'Look for a year stamped in the base, or a month and year on the shell or label. The gauge is no date.';

/** Made date of an extinguisher by its stamp; a disposable one with its last day in service, the day before 12 years. */
export const readExtinguisherStamp = (typed: string, today: CivilDate, kind: ExtinguisherKind): MarkAnswer => {
  const text = tidyMark(typed);
  const stamp = /^\d{2}$/.test(text) ? String(fullYear(text, today)) : text;
  const made = readMadeDate(stamp, today);
  if (!made) return unreadable(typed, EXPECTED);
  const outOn = addMonths(made.from, DISPOSABLE_MONTHS);
  const disposable = kind === 'disposable';
  return madeAnswer(
    [{ from: made.from, to: made.to, ...(disposable ? { validThrough: addDays(outOn, -1) } : {}) }],
    today,
    {
      working: [
        `Made ${made.words}.`,
        disposable
          ? `Disposable: out of service twelve years from make, on ${dayInWords(outOn)}.`
          : 'Rechargeable: looked into after six years, pressure-tested after twelve, by a licensed service.',
      ],
      doubts: disposable ? [] : ['A service label with a later date counts for the service, not for the shell.'],
      ahead: `This would be made ${made.words}, after today. A date ahead is a printed expiry; enter it as one.`,
    },
  );
};
