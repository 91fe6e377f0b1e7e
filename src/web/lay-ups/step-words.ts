import type { CivilDate } from '../../dates/civil.ts';
import { daysBetween, weekday } from '../../dates/civil.ts';
import { count, dayInWords } from '../../dates/words.ts';
import type { PlanName, PlanStep } from '../../plans/plan.ts';
import { PHASES, WAKE_UP_PHASES } from '../../plans/step.ts';

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

/** “Sunday, 18 October 2026”. */
export const dayWithName = (day: CivilDate): string => `${WEEKDAYS[weekday(day)]}, ${dayInWords(day)}`;

/** “2 weeks before”, “the day itself”. */
export const before = (day: CivilDate, anchor: CivilDate): string => {
  const days = daysBetween(day, anchor);
  if (days <= 0) return 'the day itself';
  return days % 7 === 0 ? `${count(days / 7, 'week')} before` : `${count(days, 'day')} before`;
};

export const phaseName = ({ phase }: PlanStep): string =>
  phase === 'own' ? 'Your own' : phase === 'day' ? 'On the day' : { ...PHASES, ...WAKE_UP_PHASES }[phase];

/** A note within a sentence, which brings its own end. */
export const withoutEnd = (note: string): string => note.replace(/\.$/, '');

/** Where a step has its page, below the stay’s own. */
export const stepPath = (layUpId: string, plan: PlanName, key: string): string =>
  `/lay-ups/${layUpId}/${plan === 'lay-up' ? 'steps' : 'wake-up'}/${key}`;
