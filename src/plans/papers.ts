/** The days on the papers, and the gaps between them. What the law of the place asks is never guessed. */
import { addDays, type CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { Stay } from './stay.ts';

/** What is told, and what does not fit together. */
export const papersInWords = ({ papers, parkedOn }: Pick<Stay, 'papers' | 'parkedOn'>): string[] => {
  const { storageFrom, roadUntil, noticeFrom, renewsOn, rules } = papers;
  const told = (
    [
      ['Cover while it stands begins', storageFrom],
      ['Cover for the road ends', roadUntil],
      ['Off-road notice takes effect', noticeFrom],
      ['The policy renews or runs out', renewsOn],
    ] as const
  ).map(([what, day]) => `${what}: ${day ? dayInWords(day) : 'not told yet'}`);
  return [
    ...told,
    `Rules of the place: ${rules || 'not told yet; ask insurer and registry'}`,
    ...gapsIn(papers, parkedOn).map(({ says }) => says),
  ];
};

export interface Gap {
  key: string;
  /** The day it opens; null: it is a matter of order, and nothing lapses. */
  from: CivilDate | null;
  says: string;
}

/** What does not fit together. */
export const gapsIn = ({ storageFrom, roadUntil, noticeFrom }: Stay['papers'], parkedOn: CivilDate): Gap[] => [
  ...(roadUntil && noticeFrom && noticeFrom > roadUntil
    ? [
        {
          key: 'notice-late',
          from: roadUntil,
          says: `Cover for the road ends on ${dayInWords(roadUntil)} and the notice takes effect on ${dayInWords(noticeFrom)} only: such a gap draws letters and fines. Ask for an earlier day, or for cover until then.`,
        },
      ]
    : []),
  ...(roadUntil && storageFrom && storageFrom > addDays(roadUntil, 1)
    ? [
        {
          key: 'uncovered',
          from: roadUntil,
          says: `From ${dayInWords(addDays(roadUntil, 1))} until ${dayInWords(storageFrom)} it has no cover at all: a gap between the cover for the road and the one while it stands.`,
        },
      ]
    : []),
  ...(roadUntil && roadUntil < parkedOn
    ? [
        {
          key: 'road-cover-early',
          from: roadUntil,
          says: 'Cover for the road ends before the parking day: it must not be driven in between.',
        },
      ]
    : []),
  ...(noticeFrom && noticeFrom < parkedOn
    ? [
        {
          key: 'notice-early',
          from: null,
          says: 'The notice takes effect before the parking day: where it forbids the road, it must be parked by then.',
        },
      ]
    : []),
];
