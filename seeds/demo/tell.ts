/** Short ways to tell what is known of a part. */
import type { DemoClaim, DemoEnded, DemoPart, DemoReading } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { dayInWords } from '../../src/dates/words.ts';
import type { Ago } from './typed.ts';

type More = Partial<Omit<DemoClaim, 'clock' | 'evidence'>>;
type Told = (typed: string, evidence: DemoClaim['evidence'], more?: More) => DemoClaim;

const telling =
  (clock: DemoClaim['clock']): Told =>
  (typed, evidence, more = {}) => ({ clock, typed, evidence, ...more });

export const made = telling('made');
export const fitted = telling('fitted');
export const filled = telling('filled');
export const serviced = telling('serviced');
export const used = telling('used');
export const printed = telling('printed');

/** Looked at, or used, and noted the same day. */
export const looked = (day: CivilDate, note = ''): DemoClaim =>
  serviced(dayInWords(day), 'own memory', { on: day, note });
export const moved = (day: CivilDate, note = ''): DemoClaim => used(dayInWords(day), 'own memory', { on: day, note });

/** A part that was there before, with the day and the reason it was renewed. */
export const until = (closedOn: CivilDate, closedWhy: string, ...claims: DemoClaim[]): DemoEnded => ({
  claims,
  closedOn,
  closedWhy,
});

export const part = (kind: string, ...claims: DemoClaim[]): DemoPart => ({ kind, claims });

/** The same part at several places. */
export const each = (positions: readonly string[], place: Omit<DemoPart, 'position'>): DemoPart[] =>
  positions.map((position) => ({ ...place, position }));

type Beside = Omit<DemoReading, 'gauge' | 'typed' | 'day'>;

/** A number read off a gauge, typed with its unit where that is not the gauge’s own. */
export const gauged = (gauge: string, typed: string, day: CivilDate, beside: Beside = {}): DemoReading => ({
  gauge,
  typed,
  day,
  ...beside,
});

/** One gauge read month after month, oldest first; the last time a month ago. */
export const monthly = (ago: Ago, gauge: string, typed: readonly string[], beside: Beside = {}): DemoReading[] =>
  typed.map((one, index) => gauged(gauge, one, ago(0, typed.length - index), beside));

/** Answers about a part, each with its unit written behind it where it is not the question’s own. */
export const answered = (answers: Readonly<Record<string, string>>): NonNullable<DemoPart['details']> =>
  Object.fromEntries(Object.entries(answers).map(([key, typed]) => [key, { typed, unit: '' }]));

export const WHEELS = ['front left', 'front right', 'rear left', 'rear right'] as const;
