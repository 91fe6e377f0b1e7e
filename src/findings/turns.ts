/** The days on which age changes a part’s standing: by its ruling, its label, its looks, and what was measured of it. */
import type { CivilDate } from '../dates/civil.ts';
import { limitOn, nextDay } from '../dates/limit.ts';
import type { DateRange } from '../dates/partial-date.ts';
import type { Measured } from './measured.ts';
import type { Known } from './outlook/outlook.ts';
import { holdsUntil } from './outlook.ts';
import type { Ruling } from './ruling.ts';
import type { Since } from './since.ts';

/** The day a standing begins if the part is as old as it can be (`worst`) or as young (`best`); null: not known. */
export interface Turn {
  worst: CivilDate | null;
  best: CivilDate | null;
}

/** The three turns of a part's life; null: it has none, or nothing tells it. */
export interface Turns {
  look: Turn | null;
  due: Turn | null;
  past: Turn | null;
}

/** To which day a good reading puts the replace-by off, and the months past which it never does. */
interface Stretched {
  to: CivilDate;
  most: number;
}

/** Practice alone is put off, by a good reading and no longer than the estimate bears, while no reading speaks against it. */
export const stretchOf = (known: Known, ruling: Ruling, measured: readonly Measured[]): Stretched | null => {
  const { stretch } = known.kind.interval;
  if (!stretch || ruling.by !== 'practice' || measured.some(({ verdict }) => verdict !== 'good')) return null;
  const day = measured
    .filter(({ test }) => stretch.gauges.includes(test.gauge.key))
    .map(({ reading }) => reading.day)
    .sort()
    .at(-1);
  const holds = day ? holdsUntil(known) : null;
  if (!day || holds === null) return null;
  const to = limitOn(day, stretch.months);
  return { to: [holds, to].sort()[0] as CivilDate, most: stretch.most };
};

export const turnsOfAge = (
  since: Since | null,
  ruling: Ruling,
  lastLook: Since | null,
  stretched: Stretched | null,
): Turns => {
  if (since === null) return { look: null, due: null, past: null };
  const { lookFrom, replaceBy, lead } = ruling;
  const looked = lookFrom === null ? null : later(turnAt(since, lookFrom), lastLook, ruling);
  if (replaceBy === null) return { look: looked, due: null, past: null };
  const limit = stretched ? putOff(turnAt(since, replaceBy), since, stretched) : turnAt(since, replaceBy);
  return {
    look: looked,
    due: { worst: at(limit.worst, -lead), best: at(limit.best, -lead) },
    // The limit's own day is still "due"; past is the day after.
    past: { worst: limit.worst && nextDay(limit.worst), best: limit.best && nextDay(limit.best) },
  };
};

/** A label's last valid day takes the place of the replace-by day; its look comes as long before as the ruling's would. */
export const turnsOfLabel = (label: CivilDate, ruling: Ruling, lastLook: Since | null): Turns => {
  const { lookFrom, replaceBy, lead } = ruling;
  const look = lookFrom === null || replaceBy === null ? null : limitOn(label, lookFrom - replaceBy);
  const due = limitOn(label, -lead);
  const past = nextDay(label);
  return {
    look: look && later({ worst: look, best: look }, lastLook, ruling),
    due: { worst: due, best: due },
    past: { worst: past, best: past },
  };
};

const putOff = (limit: Turn, since: Since, { to, most }: Stretched): Turn => {
  const end = (day: CivilDate | null, start: CivilDate | null): CivilDate | null => {
    const last = at(start, most);
    const later = last !== null && to > last ? last : to;
    return day !== null && later > day ? later : day;
  };
  return { worst: end(limit.worst, since.from), best: end(limit.best, since.to) };
};

/** So many months after a range; that of a single day is counted once. */
const turnAt = ({ from, to }: DateRange, months: number): Turn => {
  const worst = at(from, months);
  return { worst, best: from === to ? worst : at(to, months) };
};

const at = (start: CivilDate | null, months: number): CivilDate | null => start && limitOn(start, months);

/** A look that was made puts the next one off by `lookEvery`; it never moves the replace-by day. */
const later = (turn: Turn, lastLook: Since | null, { lookEvery }: Ruling): Turn => {
  if (lastLook === null) return turn;
  const next = turnAt(lastLook, lookEvery);
  return { worst: latest(turn.worst, next.worst), best: latest(turn.best, next.best) };
};

const latest = (a: CivilDate | null, b: CivilDate | null): CivilDate | null =>
  a === null || (b !== null && b > a) ? b : a;
