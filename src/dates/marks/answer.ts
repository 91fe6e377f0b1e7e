import type { CivilDate } from '../civil.ts';

/** One way to read a date off a part: first and last possible day. */
export interface MarkCandidate {
  from: CivilDate;
  to: CivilDate;
  /** Last valid day, for marks that state or imply one. */
  validThrough?: CivilDate;
  /** Which reading this is, where there are several. */
  note?: string;
}

export type MarkAnswer =
  | { ok: true; candidates: [MarkCandidate, ...MarkCandidate[]]; working: string[]; doubts: string[] }
  | { ok: false; reason: string; message: string };

/** A refusal: a code for programs, and for people what is wrong and what to look at. */
export const refuse = (reason: string, message: string): MarkAnswer => ({ ok: false, reason, message });

/**
 * Candidates that have begun by `today`, oldest first, as an answer; `ahead` says what to do where none has.
 * For dates of manufacture: a part is never newer than today.
 */
export const madeAnswer = (
  candidates: MarkCandidate[],
  today: CivilDate,
  words: { working: string[]; doubts: string[]; ahead: string },
): MarkAnswer => {
  const [first, ...others] = oldestFirst(candidates.filter(({ from }) => from <= today));
  if (!first) return refuse('future-date', words.ahead);
  return { ok: true, candidates: [first, ...others], working: words.working, doubts: words.doubts };
};

export const oldestFirst = (candidates: MarkCandidate[]): MarkCandidate[] =>
  candidates.toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.to < b.to ? -1 : 1));
