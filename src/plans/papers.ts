/** The days on the papers, and the gaps between them. What the law of the place asks is never guessed. */
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
    ...gapsIn(papers, parkedOn),
  ];
};

const gapsIn = ({ storageFrom, roadUntil, noticeFrom }: Stay['papers'], parkedOn: Stay['parkedOn']): string[] => [
  ...(roadUntil && noticeFrom && noticeFrom > roadUntil
    ? [
        'The notice takes effect after the cover for the road ends: such a gap draws letters and fines. Ask for an earlier day, or for cover until then.',
      ]
    : []),
  ...(roadUntil && storageFrom && storageFrom > roadUntil
    ? ['Between the cover for the road and the one while it stands there is a gap.']
    : []),
  ...(roadUntil && roadUntil < parkedOn
    ? ['Cover for the road ends before the parking day: it must not be driven in between.']
    : []),
  ...(noticeFrom && noticeFrom < parkedOn
    ? ['The notice takes effect before the parking day: where it forbids the road, it must be parked by then.']
    : []),
];
