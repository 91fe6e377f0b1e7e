/**
 * What a person has to be told: parts that newly became `look`, `due` or `past` by age or distance, readings that newly ask
 * (`watch`, `act`), estimates that newly do. Each is told by itself: none is hidden by what was said of another.
 */
import { VERDICTS } from '../ageing/verdict.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { STANDINGS } from '../findings/standing.ts';

export const STAGES = ['look', 'due', 'past', 'watch', 'act', 'estimate'] as const;
export type Stage = (typeof STAGES)[number];

export interface Said {
  partId: string;
  stage: Stage;
  saidOn: CivilDate;
}

/** A finding with what is new about it: its standing, its reading, its estimate. */
export type Owed = Finding & { told: readonly [Stage, ...Stage[]] };

/**
 * The findings to announce, given what was said by part. A stage counts as said if it, or a graver one of its sort, was
 * said on or after the day it began: corrections that move that day back say nothing new, a stage that begins again after
 * a look, a renewal or a good reading does. A stage that is owed already though it begins only later (nothing tells its
 * start) is said once.
 */
export const owed = (findings: readonly Finding[], said: ReadonlyMap<string, readonly Said[]>): Owed[] =>
  findings.flatMap((finding) => {
    const [first, ...more] = newsOf(finding, said.get(finding.part.id) ?? []);
    return first ? [{ ...finding, told: [first, ...more] }] : [];
  });

const newsOf = ({ news: { calendar, reading, estimate }, on }: Finding, said: readonly Said[]): Stage[] => {
  const isNew = (stage: string, begins: CivilDate | null, sort: readonly string[]): Stage[] => {
    if (!isStage(stage) || begins === null) return [];
    const gravity = sort.indexOf(stage);
    return said.some((one) => sort.indexOf(one.stage) >= gravity && (one.saidOn >= begins || begins > on))
      ? []
      : [stage];
  };
  return [
    ...isNew(calendar.standing, calendar.began, STANDINGS),
    ...isNew(reading.verdict ?? '', reading.began, VERDICTS),
    ...isNew('estimate', estimate, ['estimate']),
  ];
};

const isStage = (text: string): text is Stage => (STAGES as readonly string[]).includes(text);
