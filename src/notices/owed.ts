/**
 * What a person has to be told: parts that newly became `look`, `due` or `past` by age or distance, readings that newly ask
 * (`watch`, `act`), estimates that newly do. Each is told by itself: none is hidden by what was said of another.
 */
import { VERDICTS } from '../ageing/verdict.ts';
import { addDays, type CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { STANDINGS } from '../findings/standing.ts';
import type { Answer } from './answers.ts';

export const STAGES = ['look', 'due', 'past', 'watch', 'act', 'estimate'] as const;
export type Stage = (typeof STAGES)[number];

export interface Said {
  partId: string;
  stage: Stage;
  saidOn: CivilDate;
}

/** A finding with what there is to tell of it: its standing, its reading, its estimate. */
export type Owed = Finding & {
  told: readonly [Stage, ...Stage[]];
  /** Nothing of it is new: it was said on that day, it can hurt somebody, and nobody has answered. */
  lastSaid: CivilDate | null;
};

/** When safety items are told again to a person. */
export interface Repeats {
  /** Days between two tellings; 0: never again. */
  days: number;
  personId: string;
  /** By part, in the order they were given. */
  answers: ReadonlyMap<string, readonly Answer[]>;
}

const NO_REPEATS: Repeats = { days: 0, personId: '', answers: new Map() };

/**
 * The findings to announce, given what was said by part. A stage counts as said if it, or a graver one of its sort, was
 * said on or after the day it began: corrections that move that day back say nothing new, a stage that begins again after
 * a look, a renewal or a good reading does. A stage that is owed already though it begins only later (nothing tells its
 * start) is said once. A safety item that is due, past or condemned by a reading is said again until it is answered.
 * `since`: the day from which this person was told of things at all. What began after it is told, though by now the dates
 * can't tell any more how far it has gone: nobody was up to say it in time.
 */
export const owed = (
  findings: readonly Finding[],
  said: ReadonlyMap<string, readonly Said[]>,
  repeats: Repeats = NO_REPEATS,
  since: CivilDate | null = null,
): Owed[] =>
  findings.flatMap((finding) => {
    const own = said.get(finding.part.id) ?? [];
    const [first, ...more] = newsOf(finding, own, since);
    if (first) return [{ ...finding, told: [first, ...more], lastSaid: null }];
    const again = againOf(finding, own, repeats);
    return again ? [{ ...finding, ...again }] : [];
  });

const newsOf = (finding: Finding, said: readonly Said[], since: CivilDate | null): Stage[] => {
  const { news, on } = finding;
  const { reading, estimate } = news;
  const calendar = news.calendar.standing === 'unproven' ? reachedBefore(finding, since) : news.calendar;
  const isNew = (stage: string, begins: CivilDate | null, sort: readonly string[]): Stage[] =>
    !isStage(stage) || begins === null || tellings(said, stage, sort).some((day) => day >= begins || begins > on)
      ? []
      : [stage];
  return [
    ...isNew(calendar.standing, calendar.began, STANDINGS),
    ...isNew(reading.verdict ?? '', reading.began, VERDICTS),
    ...isNew('estimate', estimate, ['estimate']),
  ];
};

/** The last standing of an unproven part that its dates did tell, if it began while somebody was being told. */
const reachedBefore = ({ look, due, news, on }: Finding, since: CivilDate | null): Finding['news']['calendar'] => {
  const began = (turn: Finding['due']): CivilDate | null =>
    since !== null && turn?.worst && turn.worst >= since && turn.worst <= on ? turn.worst : null;
  const [dueOn, lookOn] = [began(due), began(look)];
  if (dueOn) return { standing: 'due', began: dueOn };
  return lookOn ? { standing: 'look', began: lookOn } : news.calendar;
};

/** Days on which a stage, or a graver one of its sort, was said. */
const tellings = (said: readonly Said[], stage: string, sort: readonly string[]): CivilDate[] =>
  said.filter((one) => sort.indexOf(one.stage) >= sort.indexOf(stage)).map(({ saidOn }) => saidOn);

/** What is told again: the stages that can hurt somebody, with the day they were last said. */
const againOf = (
  { kind, part, news: { calendar, reading }, on }: Finding,
  said: readonly Said[],
  { days, personId, answers }: Repeats,
): Pick<Owed, 'told' | 'lastSaid'> | null => {
  if (days === 0 || kind.severity !== 'safety') return null;
  const [first, ...more] = [
    ...(calendar.standing === 'due' || calendar.standing === 'past' ? [calendar.standing] : []),
    ...(reading.verdict === 'act' ? ['act' as const] : []),
  ];
  const lastSaid = first && latestOf([first, ...more].flatMap((stage) => tellings(said, stage, sortOf(stage))));
  if (!first || !lastSaid) return null;
  const next = nextTelling(lastSaid, days, personId, answers.get(part.id) ?? []);
  return next !== null && next <= on ? { told: [first, ...more], lastSaid } : null;
};

/** The day of the next telling; null once it is answered. Who waits for parts holds it back for everybody. */
const nextTelling = (
  lastSaid: CivilDate,
  days: number,
  personId: string,
  answers: readonly Answer[],
): CivilDate | null => {
  const since = answers.filter(({ answeredOn }) => answeredOn >= lastSaid);
  if (since.some(({ word, personId: who }) => word === 'done' || (word === 'seen' && who === personId))) return null;
  const until = since.findLast(({ word }) => word === 'waiting')?.until;
  return addDays(until ?? lastSaid, until ? 1 : days);
};

const sortOf = (stage: Stage): readonly string[] => (stage === 'act' ? VERDICTS : STANDINGS);

const latestOf = (days: readonly CivilDate[]): CivilDate | undefined => days.toSorted().at(-1);

const isStage = (text: string): text is Stage => (STAGES as readonly string[]).includes(text);
