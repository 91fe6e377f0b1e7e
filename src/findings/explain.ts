/** A finding in words: what is known, which interval ruled, what that means today, what to do, and the doubts. */
import { CAUTIONS, DEFERS } from '../catalogue/cautions.ts';
import type { Clock } from '../catalogue/clock.ts';
import type { SourceKey } from '../catalogue/sources.ts';
import { addDays, type CivilDate } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';
import { ageInWords, ageOf, dayInWords, lengthInWords, rangeInWords } from '../dates/words.ts';
import type { Finding } from './assess.ts';
import type { Evidence } from './facts.ts';
import type { Outlook } from './outlook/outlook.ts';
import { outlookOf } from './outlook.ts';
import { readingLine } from './reading-words.ts';
import type { Ruling } from './ruling.ts';
import { comeByAge, surerOf, todoOf } from './todo.ts';
import type { Turn } from './turns.ts';

export interface Reason {
  text: string;
  sources: readonly SourceKey[];
}

export interface Explanation {
  /** "Made 2009 to 2013: at least 12 years, could be 17 years", or what is missing. */
  age: string;
  reasons: Reason[];
  doubts: string[];
  todo: string;
  /** Estimated condition, where a model can tell any. */
  outlook: Outlook | null;
  /** What would make it surer: a measurement, how long it takes and how it goes. Null: no gauge, or just read. */
  surer: string | null;
  cautions: string[];
}

export const CLOCK_WORDS: Readonly<Record<Clock, string>> = {
  made: 'Made',
  fitted: 'Fitted',
  filled: 'Filled',
  serviced: 'Last serviced or looked at',
  used: 'Last used',
  printed: 'Label valid through',
};

export const explain = (finding: Finding): Explanation => ({
  age: ageLine(finding),
  reasons: [
    {
      text: rulingLine(finding.ruling, finding.label),
      sources: finding.label || finding.ruling.by !== 'practice' ? [] : finding.kind.interval.sources,
    },
    { text: standingLine(finding), sources: [] },
    ...distanceLine(finding),
    ...lookLine(finding),
    ...putOffLine(finding),
    ...finding.measured.map((measured) => ({
      text: readingLine(measured, finding.kind),
      sources: measured.test.sources,
    })),
  ],
  doubts: doubtsOf(finding),
  todo: todoOf(finding),
  outlook: outlookOf(finding),
  surer: surerOf(finding),
  cautions: finding.kind.cautions.length > 0 ? [...finding.kind.cautions.map((key) => CAUTIONS[key]), DEFERS] : [],
});

const ageLine = (finding: Finding): string => {
  const { distance } = finding;
  // Where the distance has come further than the calendar, it belongs to the age.
  const driven = distance && distance.standing !== 'in date' ? `, and ${kmInWords(distance.km)}` : '';
  return `${calendarAge(finding)}${driven}`;
};

const kmInWords = (km: number): string => `${km.toLocaleString('en-US')} km`;

const calendarAge = ({ label, since, clock, on }: Finding): string => {
  if (label) return `Label valid through ${dayInWords(label)}`;
  if (since === null) return 'No date known';
  const words = CLOCK_WORDS[clock];
  if (since.evidence === null)
    return `${words}: no date of its own; ${bounds(since.from, since.to)}: ${ageInWords(ageOf(since, on))}`;
  return `${words} ${rangeInWords(since)}: ${ageInWords(ageOf(since, on))}`;
};

const bounds = (from: CivilDate | null, to: CivilDate | null): string => {
  if (from && to) return `between ${dayInWords(from)} and ${dayInWords(to)}`;
  return from ? `not before ${dayInWords(from)}` : `not after ${to ? dayInWords(to) : 'today'}`;
};

const AUTHORITY: Readonly<Record<Ruling['by'], string>> = {
  handbook: 'Handbook',
  own: 'Your own interval',
  practice: 'Practice of the trade',
};

/** "Practice of the trade: look from 5 years, replace by 10 years." */
export const rulingLine = (ruling: Ruling, label: CivilDate | null = null): string => {
  if (label) return 'The label on the part rules, before any interval.';
  const parts = [
    ruling.lookFrom === null ? null : `look from ${lengthInWords(ruling.lookFrom)}`,
    ruling.replaceBy === null ? 'replace on condition only' : `replace by ${lengthInWords(ruling.replaceBy)}`,
    ruling.replaceByKm === null ? null : `or ${kmInWords(ruling.replaceByKm)}, whichever comes first`,
  ].filter(Boolean);
  return `${AUTHORITY[ruling.by]}: ${parts.join(', ')}.${ruling.note ? ` Note: ${ruling.note}` : ''}`;
};

const standingLine = (finding: Finding): string => {
  const { standing, since, kind, past, due, look, label, by } = finding;
  if (by === 'reading') return `Not its age but its reading asks for this${began(finding)}.`;
  if (by === 'estimate') return `By estimate it asks for a look${began(finding)}; what is measured or seen settles it.`;
  if (label)
    return label < finding.on
      ? `The label ran out on ${dayInWords(label)}.`
      : `The label runs until ${dayInWords(label)}.`;
  if (since === null) return 'Without a date nothing clears it.';
  const cautious = kind.severity === 'safety' && since.from !== since.to ? ' Judged by the oldest possible age.' : '';
  const turn = comeByAge(finding);
  switch (standing) {
    case 'past':
      if (turn?.worst && turn.best && turn.best > finding.on)
        return `At its oldest it is past since ${dayInWords(turn.worst)}; at its youngest it would be from ${dayInWords(turn.best)}.${cautious}`;
      return turn ? `Past since ${turnInWords(turn)}.${cautious}` : 'Past by distance.';
    case 'unproven':
      return past?.worst
        ? `It may be past since ${dayInWords(past.worst)}; at its youngest it turns past on ${past.best ? dayInWords(past.best) : 'an unknown day'}.`
        : past || look
          ? 'How old it can be at most is not known, so the calendar can’t clear it.'
          : 'Only a distance limits it, and that can’t be told yet.';
    case 'due':
      return turn
        ? `Due since ${turnInWords(turn)}; past from ${past ? turnInWords(past) : 'then on'}.${cautious}`
        : 'Due by distance.';
    case 'look':
      return `Wants a look since ${look ? turnInWords(look) : 'now'}${due ? `; due from ${turnInWords(due)}` : ''}.${cautious}`;
    case 'in date': {
      const next =
        look?.worst && look.worst > finding.on
          ? ` Next: look from ${turnInWords(look)}.`
          : due
            ? ` Next: due from ${turnInWords(due)}.`
            : '';
      return `Nothing is owed by the calendar; that is not a word about its condition.${next}${cautious}`;
    }
  }
};

const began = ({ began: day }: Finding): string => (day ? `, since ${dayInWords(day)}` : '');

/** A day, or the two days between which it falls. */
export const turnInWords = ({ worst, best }: Turn): string => {
  if (worst === null) return best ? `${dayInWords(best)} at the latest` : 'an unknown day';
  return best === null || best === worst
    ? dayInWords(worst)
    : `${dayInWords(worst)} at the earliest (${dayInWords(best)} at the latest)`;
};

const distanceLine = ({ distance, ruling }: Finding): Reason[] =>
  distance && ruling.replaceByKm !== null
    ? [
        {
          text: `${distance.km.toLocaleString('en-US')} of ${kmInWords(ruling.replaceByKm)} used, by the reading of ${dayInWords(distance.readOn)}.`,
          sources: [],
        },
      ]
    : [];

const lookLine = ({ lastLook }: Finding): Reason[] =>
  lastLook
    ? [
        {
          text: `Last looked at ${rangeInWords(lastLook)}: that moves the next look, never the replace-by day.`,
          sources: [],
        },
      ]
    : [];

/** A good reading that stands in for a younger fluid is said, with how far it goes. */
const putOffLine = ({ kind, ruling, since, past }: Finding): Reason[] => {
  const usual = since?.from && ruling.replaceBy !== null ? limitOn(since.from, ruling.replaceBy) : null;
  const limit = past?.worst ? addDays(past.worst, -1) : null;
  if (!kind.interval.stretch || usual === null || limit === null || limit <= usual) return [];
  return [
    {
      text: `A good reading puts the replace-by off, to ${dayInWords(limit)} at the oldest: no longer than a year after it, than ${lengthInWords(kind.interval.stretch.most)} in all, or than the estimate bears.`,
      sources: kind.interval.sources,
    },
  ];
};

/** Evidence that a mark or a paper would better; a look or a drive leaves neither. */
const WEAK: readonly Evidence[] = ['own memory', 'seller’s word', 'assumed'];

/** An owner may stretch a safety interval; every page and letter then says so. */
const longerThanPractice = ({ kind, ruling, label }: Finding): string | null => {
  const practice = kind.interval.replaceBy;
  if (label || ruling.by === 'practice' || kind.severity !== 'safety' || practice === null) return null;
  if (ruling.replaceBy !== null && ruling.replaceBy <= practice) return null;
  return `This is a safety part, and the interval set for it is longer than practice, which replaces by ${lengthInWords(practice)}.`;
};

const doubtsOf = (finding: Finding): string[] => {
  const { since, clock, kind } = finding;
  const longer = longerThanPractice(finding);
  if (since === null) return longer ? [longer] : [];
  return [
    longer,
    finding.ruling.replaceByKm !== null && finding.distance === null
      ? 'It has a limit of distance, too, and how far it has been driven is not known: give the odometer of that day, and one of now.'
      : null,
    since.disagree ? 'Two equally good sources disagree: the whole span counts.' : null,
    since.contradicted ? 'A weaker source says something else; both are kept.' : null,
    since.evidence && WEAK.includes(since.evidence) && clock !== 'serviced' && clock !== 'used'
      ? `Known only from: ${since.evidence}. A mark on the part or a receipt would make it surer.`
      : null,
    clock === kind.fallback
      ? 'Its making date could not be read: counted from the day it was fitted, and it may have lain on a shelf before.'
      : null,
    since.evidence === null
      ? `Its own ${clock === 'made' ? 'making' : clock} date is missing; the other dates only bound it.`
      : null,
  ].filter((doubt): doubt is string => doubt !== null);
};
