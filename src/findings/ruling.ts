/** Which interval rules a kind on a car: handbook, own for the car, own for the collection, or the trade's practice. */
import type { Interval, Kind } from '../catalogue/kind.ts';
import type { Override } from './facts.ts';

type Authority = 'handbook' | 'own' | 'practice';

export interface Ruling {
  by: Authority;
  lookFrom: number | null;
  lookEvery: number;
  replaceBy: number | null;
  replaceByKm: number | null;
  /** Months before the replace-by day from which the part is `due`: time to order and to find an appointment. */
  lead: number;
  note: string | null;
}

/** Lead times by length of life; common practice, from memory: the longer a part lasts, the longer it takes to get. */
const LEADS = [
  { lifeFrom: 36, lead: 3 },
  { lifeFrom: 12, lead: 2 },
  { lifeFrom: 3, lead: 1 },
] as const;

export const leadFor = (replaceBy: number | null): number =>
  LEADS.find(({ lifeFrom }) => (replaceBy ?? 0) >= lifeFrom)?.lead ?? 0;

/** The override that rules a kind on a car, if any. The car's own comes before the collection's. */
export const overrideFor = (overrides: readonly Override[], kind: string, carId: string): Override | undefined => {
  const candidates = overrides.filter((override) => override.kind === kind);
  return (
    candidates.find((override) => override.carId === carId && override.authority === 'handbook') ??
    candidates.find((override) => override.carId === carId) ??
    candidates.find((override) => override.carId === null)
  );
};

export const practiceOf = (kind: Kind): Ruling => rulingFrom('practice', kind.interval, null);

export const rulingOf = (kind: Kind, overrides: readonly Override[], carId: string): Ruling => {
  const override = overrides.length === 0 ? undefined : overrideFor(overrides, kind.key, carId);
  if (!override) return practiceOf(kind);
  const { authority, lookFrom, replaceBy, replaceByKm, note } = override;
  return rulingFrom(authority, { lookFrom, replaceBy, replaceByKm, lookEvery: kind.interval.lookEvery }, note);
};

type Figures = Pick<Interval, 'lookFrom' | 'lookEvery' | 'replaceBy'> & { replaceByKm?: number | null };

const rulingFrom = (by: Authority, figures: Figures, note: string | null): Ruling => ({
  by,
  lookFrom: figures.lookFrom,
  lookEvery: figures.lookEvery,
  replaceBy: figures.replaceBy,
  replaceByKm: figures.replaceByKm ?? null,
  lead: leadFor(figures.replaceBy),
  note,
});
