/** Where a return stops until somebody decides in writing: the structure, a stuck engine, papers, the ceiling. */
import { addDays, type CivilDate } from '../dates/civil.ts';
import { type Entry, those } from './journal.ts';
import type { LookKey } from './looks.ts';
import type { Money } from './money.ts';
import type { Revival } from './revival.ts';

export const STOPS = {
  title: 'The papers are missing or don’t match: no money goes in before that is clear.',
  structure: 'The structure fails: it can’t be lifted or driven as it is.',
  seized: 'The engine does not turn after ten days of soaking: it has to come apart, or be left.',
  ceiling: 'What was spent and what is still to come passes the ceiling, even at the lowest figures.',
} as const;
export type StopKey = keyof typeof STOPS;

export interface Stop {
  key: StopKey;
  words: string;
  /** How somebody decided to go on; null: nobody has yet, and no gate opens. */
  decided: { by: string; day: CivilDate; reason: string } | null;
}

/** Days a stuck engine is soaked before the question is put; from memory of common practice, three to ten. */
export const SOAK_DAYS = 10;

export const stopsOf = (entries: readonly Entry[], revival: Revival, money: Money, on: CivilDate): Stop[] => {
  const decisions = those(entries, 'decision');
  const ceiling = ceilingOf(entries, revival);
  const since: Readonly<Record<StopKey, number | null>> = {
    title: answered(entries, 'title', ['unclear']),
    structure: answered(entries, 'structure', ['fails']),
    seized: stuckSince(entries, on),
    ceiling: ceiling !== null && money.total.low > ceiling ? NEVER : null,
  };
  return (Object.keys(STOPS) as StopKey[]).flatMap((key): Stop[] => {
    const at = since[key];
    if (at === null) return [];
    // A ceiling that was raised too little stops it again: no older word counts.
    const decision = decisions.findLast((one) => one.stop === key && key !== 'ceiling' && entries.indexOf(one) > at);
    return [
      {
        key,
        words: STOPS[key],
        decided: decision ? { by: decision.by, day: decision.day, reason: decision.note } : null,
      },
    ];
  });
};

const NEVER = Number.MAX_SAFE_INTEGER;

/** The ceiling as it was agreed last. */
export const ceilingOf = (entries: readonly Entry[], { ceiling }: Revival): number | null =>
  those(entries, 'decision').findLast((one) => one.ceiling !== null)?.ceiling ?? ceiling;

/** Where in the journal the look was last answered so; null: it is not so. */
const answered = (entries: readonly Entry[], look: LookKey, grave: readonly string[]): number | null => {
  const at = entries.findLastIndex((entry) => entry.what === 'seen' && entry.look === look);
  const last = entries[at];
  return last?.what === 'seen' && grave.includes(last.answer) ? at : null;
};

const stuckSince = (entries: readonly Entry[], on: CivilDate): number | null => {
  const turns = entries.filter((entry) => entry.what === 'seen' && entry.look === 'turns');
  const free = turns.findLastIndex((entry) => entry.what === 'seen' && entry.answer !== 'stuck');
  const first = turns[free + 1];
  return first && on >= addDays(first.day, SOAK_DAYS) ? entries.indexOf(first) : null;
};
