/** The yearly letter: every car of the collection with its standings, what comes in the year ahead, and what is unproven. */
import { addMonths, type CivilDate } from '../dates/civil.ts';
import { count, dayInWords } from '../dates/words.ts';
import type { Finding } from '../findings/assess.ts';
import { summaryOf } from '../findings/car.ts';
import { STANDINGS } from '../findings/standing.ts';

export interface YearCar {
  carId: string;
  name: string;
  /** "2 past, 1 due, 5 unproven". */
  standings: string;
  /** Where it is kept standing or on its way back, in words; null otherwise. */
  state: string | null;
  /** What the calendar brings within twelve months, by its day. */
  ahead: string[];
}

export interface YearPart {
  on: CivilDate;
  cars: YearCar[];
}

const MOST_AHEAD = 8;

export const yearCarOf = (
  car: { id: string; name: string },
  findings: readonly Finding[],
  state: string | null,
  on: CivilDate,
): YearCar => {
  const { counts } = summaryOf(findings);
  const ahead = comingOf(findings, on);
  return {
    carId: car.id,
    name: car.name,
    standings: STANDINGS.toReversed()
      .filter((standing) => counts[standing] > 0)
      .map((standing) => `${counts[standing]} ${standing}`)
      .join(', '),
    state,
    ahead: [
      ...ahead.slice(0, MOST_AHEAD).map(({ day, title }) => `${dayInWords(day)}: ${title}`),
      ...(ahead.length > MOST_AHEAD ? [`and ${ahead.length - MOST_AHEAD} more in the year ahead`] : []),
    ],
  };
};

/** Days from which parts are due that lie within a year. */
const comingOf = (findings: readonly Finding[], on: CivilDate): { day: CivilDate; title: string }[] =>
  findings
    .flatMap((finding) => {
      const day = finding.due?.worst ?? null;
      return day !== null && day > on && day <= addMonths(on, 12) ? [{ day, title: `${nameOf(finding)} is due` }] : [];
    })
    .toSorted((a, b) => a.day.localeCompare(b.day));

const nameOf = ({ kind, part: { position } }: Finding): string => (position ? `${kind.name}, ${position}` : kind.name);

/** "The whole collection, 7 cars". */
export const yearInWords = ({ cars }: YearPart): string => `The whole collection, ${count(cars.length, 'car')}`;
