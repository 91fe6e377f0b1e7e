import type { CivilDate } from '../civil.ts';
import type { TireWeek } from '../tire-week.ts';

/** How the number is laid out; the symbols counted are those after DOT. */
export type TireForm = 'new-13' | 'legacy-4' | 'legacy-3' | 'retread-7' | 'date-only' | 'date-only-3';

export type TireCodeReason =
  | 'empty'
  | 'not-a-tin'
  | 'no-date'
  | 'bad-length'
  | 'bad-date-symbol'
  | 'week-zero'
  | 'week-too-high'
  | 'week-53-absent'
  | 'future-date'
  | 'no-candidate-left';

/** What else stands on a sidewall and gets typed instead of the number. */
export type OtherMark = 'tire-size' | 'approval-mark' | 'calendar-date' | 'sidewall-words' | 'too-long';

/** A week struck out by a known fact, with the reason as a sentence. */
export interface DroppedWeek {
  candidate: TireWeek;
  why: string;
}

/** How a week that the tire calendar refuses was probably meant; for the reader to confirm, never applied. */
export interface LenientWeek {
  warning: 'week-53-not-in-TIN-calendar' | 'week-begun-in-ISO-calendar-only';
  from: CivilDate;
  to: CivilDate;
  /** The ISO 8601 week of the same number, where there is one. */
  isoWeek?: { from: CivilDate; to: CivilDate };
}

export interface TireCodeRead {
  ok: true;
  form: TireForm;
  dateCode: string;
  /** Oldest first; one when settled. */
  candidates: TireWeek[];
  dropped: DroppedWeek[];
  /** Codes: `retread-date-only`, `early-four-digit`, `symbol-not-permitted:G`, ... */
  warnings: string[];
  /** True when knowing about the mark of the 1990s would narrow the candidates. */
  asks: boolean;
  /** Another way to read a number typed without spaces, and why it was passed over. */
  otherReading?: { dateCode: string; why: string };
}

export interface TireCodeRefusal {
  ok: false;
  reason: TireCodeReason;
  dateCode?: string;
  /** What was probably meant, to be confirmed by the reader. */
  suggest?: string;
  swapped?: TireWeek & { dateCode: string };
  lenient?: LenientWeek;
  dropped?: DroppedWeek[];
  looksLike?: OtherMark;
}

export type TireCodeAnswer = TireCodeRead | TireCodeRefusal;

/** What a tire code says and how that was found, for people. */
export interface TireCodeWords {
  title: string;
  /** How the answer follows from the symbols, one sentence each. */
  working: string[];
  doubts: string[];
  /** What to look at or tell next. */
  next: string[];
}
