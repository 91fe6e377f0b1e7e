/** What a person has to be told: parts that newly became `look`, `due` or `past`, and readings that newly ask for action. */
import { VERDICTS } from '../ageing/judge.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { STANDINGS } from '../findings/standing.ts';

/** Stages of a part’s standing, and those of its readings: a reading is told whatever its calendar says. */
export const STAGES = ['look', 'due', 'past', 'watch', 'act'] as const;
export type Stage = (typeof STAGES)[number];

export interface Said {
  partId: string;
  stage: Stage;
  saidOn: CivilDate;
}

/** A finding with what is new about it, its standing before its reading. */
export type Owed = Finding & { news: readonly [Stage, ...Stage[]] };

/**
 * The findings to announce, given what was said by part. A stage counts as said if it, or a graver one of its sort, was
 * said on or after the day it began: corrections that move that day back say nothing new, a stage that begins again after
 * a look, a renewal or a good reading does. A stage that is owed already though it begins only later (nothing tells its
 * start) is said once.
 */
export const owed = (findings: readonly Finding[], said: ReadonlyMap<string, readonly Said[]>): Owed[] =>
  findings.flatMap((finding) => {
    const [first, ...more] = newsOf(finding, said.get(finding.part.id) ?? []);
    return first ? [{ ...finding, news: [first, ...more] }] : [];
  });

const newsOf = ({ standing, began, gravest, on }: Finding, said: readonly Said[]): Stage[] => {
  const news: Stage[] = [];
  const tell = (stage: string, begins: CivilDate | null, gravity: (stage: Stage) => number): void => {
    if (!isStage(stage) || begins === null) return;
    const told = said.some((one) => gravity(one.stage) >= gravity(stage) && (one.saidOn >= begins || begins > on));
    if (!told) news.push(stage);
  };
  tell(standing, began, byStanding);
  tell(gravest?.verdict ?? '', gravest?.began ?? null, byVerdict);
  return news;
};

/** Gravity among the stages of one sort; those of the other come before all of them. */
const byStanding = (stage: Stage): number => (STANDINGS as readonly string[]).indexOf(stage);
const byVerdict = (stage: Stage): number => (VERDICTS as readonly string[]).indexOf(stage);

const isStage = (text: string): text is Stage => (STAGES as readonly string[]).includes(text);
