/** What a person has to be told: the parts that newly became `look`, `due` or `past` since it was last said. */
import type { CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { rankOf } from '../findings/standing.ts';

export const STAGES = ['look', 'due', 'past'] as const;
export type Stage = (typeof STAGES)[number];

export interface Said {
  partId: string;
  stage: Stage;
  saidOn: CivilDate;
}

export type Owed = Finding & { standing: Stage; began: CivilDate };

/**
 * The findings to announce, given what was said by part. A stage counts as said if it, or a graver one, was said on or
 * after the day it began: corrections that move that day back say nothing new, a stage that begins again after a look or
 * a renewal does. A stage that is owed already though it begins only later (nothing tells its start) is said once.
 */
export const owed = (findings: readonly Finding[], said: ReadonlyMap<string, readonly Said[]>): Owed[] =>
  findings.filter(
    (finding): finding is Owed =>
      isStage(finding.standing) &&
      finding.began !== null &&
      !(said.get(finding.part.id) ?? []).some(
        ({ stage, saidOn }) =>
          rankOf(stage) >= rankOf(finding.standing) && (saidOn >= begins(finding) || begins(finding) > finding.on),
      ),
  );

const begins = ({ began }: Finding): CivilDate => began as CivilDate;

const isStage = (standing: string): standing is Stage => (STAGES as readonly string[]).includes(standing);
