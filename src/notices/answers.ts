/** What people answer to a letter, and how long that holds a repeat back. */
import type { CivilDate } from '../dates/civil.ts';

export const ANSWER_WORDS = ['seen', 'waiting', 'done', 'not here'] as const;
export type AnswerWord = (typeof ANSWER_WORDS)[number];

export interface Answer {
  partId: string;
  personId: string;
  word: AnswerWord;
  /** The last day of waiting for parts; null for every other answer. */
  until: CivilDate | null;
  answeredOn: CivilDate;
}
