/** Short ways to tell what is known of a part. */
import type { DemoClaim, DemoEnded, DemoPart } from '../../src/acts/demo.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import { dayInWords } from '../../src/dates/words.ts';

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

export const WHEELS = ['front left', 'front right', 'rear left', 'rear right'] as const;
