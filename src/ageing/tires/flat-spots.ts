/** Flat spots of a tire that stands on one patch. The grades are judgement on what tire makers’ storage guides warn of. */
import type { SourceKey } from '../../catalogue/sources.ts';

const RISKS = ['passing', 'may stay', 'likely to stay'] as const;
export type FlatSpotRisk = (typeof RISKS)[number];

export interface Standing {
  days: number;
  /** Share of the placard pressure that is in the tire; null: nobody looked. */
  share: number | null;
  /** Coldest it gets there, °C. */
  coldest: number;
  /** A nylon cap ply under the tread, as high-performance tires have; null: not told. */
  capPly: boolean | null;
}

export const FLAT_SPOT_SOURCES: readonly SourceKey[] = ['tire-storage-guides', 'army-tire-manual', 'memory'];

/** Days between moves of a car that stands on its tires; tires nobody has looked at count as those with a cap ply. */
const MOVE_EVERY = { capPly: 30, plain: 91 };

/** Military limits for tires on vehicles put away, in months: looks at them, and the longest. */
const DORMANT = { lookEvery: 6, most: 60 } as const;

const daysAllowed = (capPly: boolean | null): number => (capPly === false ? MOVE_EVERY.plain : MOVE_EVERY.capPly);

/** Days whose flat spots go with driving, whatever else. */
const SHORT = 7;

/** What speaks for a spot that stays; each one raises the grade by a step. */
const SIGNS: readonly { holds: (standing: Standing) => boolean; says: string }[] = [
  {
    holds: ({ days, capPly }) => days > daysAllowed(capPly),
    says: 'It stands longer than tire makers allow between moves.',
  },
  { holds: ({ days, capPly }) => days > 4 * daysAllowed(capPly), says: 'It stands more than four times as long.' },
  { holds: ({ share }) => share === null || share < 0.9, says: 'It is low on air, or nobody has looked.' },
  { holds: ({ share }) => share !== null && share < 0.7, says: 'It is very low on air: the cords are bent sharply.' },
  { holds: ({ coldest }) => coldest < -7, says: 'Hard frost stiffens it: roll it gently, and only when it is warmer.' },
];

const MEANS: Readonly<Record<FlatSpotRisk, string>> = {
  passing:
    'A short stand: flat spots usually go within some miles of driving. One that does not go is for a tire shop.',
  'may stay': 'Flat spots may stay. Drive slowly at first; a vibration that does not go is for a tire shop.',
  'likely to stay':
    'Flat spots are likely to stay, and the tire may be damaged inside: have it looked at before driving.',
};

/** Whether flat spots will stay, by the signs that speak for it, and the days between moves that prevent them. */
export const flatSpotRisk = (standing: Standing): { level: FlatSpotRisk; moveEvery: number; says: string[] } => {
  const signs = SIGNS.filter(({ holds }) => standing.days > SHORT && holds(standing));
  const level = RISKS[Math.min(signs.length, RISKS.length - 1)] as FlatSpotRisk;
  return {
    level,
    moveEvery: daysAllowed(standing.capPly),
    says: [
      MEANS[level],
      ...signs.map(({ says }) => says),
      `An Army manual has tires of stored vehicles looked at every ${DORMANT.lookEvery} months, and stored so for ${DORMANT.most} months at most.`,
    ],
  };
};
