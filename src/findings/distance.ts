/** How far a part has been driven since its clock started, and what that makes of it. Distances in km. */
import type { Clock } from '../catalogue/clock.ts';
import type { CivilDate } from '../dates/civil.ts';
import type { CarFacts, Claim } from './facts.ts';
import type { Ruling } from './ruling.ts';
import type { Standing } from './standing.ts';

export interface Distance {
  km: number;
  standing: Standing;
  /** Day of the reading that told it. */
  readOn: CivilDate;
}

/** Share of a distance limit from which the part is `due`; from memory. */
const DUE_AT = 0.9;

/** Odometer when the clock last started: a reading of an earlier start says nothing about a later one. */
const startKm = (claims: readonly Claim[], clock: Clock): number | null => {
  const own = claims.filter((claim) => claim.clock === clock);
  const last = own.reduce((newest, { from }) => (from !== null && from > newest ? from : newest), '');
  return own.findLast(({ km, to }) => km !== null && (to === null || to >= last))?.km ?? null;
};

/** True where the distance can be told from the readings, on whatever day: without it a limit of distance clears nothing. */
export const isMetered = (claims: readonly Claim[], clock: Clock, { odometer }: CarFacts): boolean => {
  const start = startKm(claims, clock);
  return start !== null && (odometer.at(-1)?.km ?? -1) >= start;
};

export const distanceOf = (
  claims: readonly Claim[],
  clock: Clock,
  car: CarFacts,
  { replaceByKm }: Ruling,
  on: CivilDate,
): Distance | null => {
  if (replaceByKm === null || car.odometer.length === 0) return null;
  const start = startKm(claims, clock);
  if (start === null) return null;
  const seen = car.odometer.filter((reading) => reading.day <= on);
  const last = seen.at(-1);
  if (!last || last.km < start) return null;
  const used = last.km - start;
  const standing: Standing = used > replaceByKm ? 'past' : used >= DUE_AT * replaceByKm ? 'due' : 'in date';
  const limit = standing === 'past' ? replaceByKm : DUE_AT * replaceByKm;
  const crossed = seen.find((reading) =>
    standing === 'past' ? reading.km - start > limit : reading.km - start >= limit,
  );
  return { km: used, standing, readOn: crossed?.day ?? last.day };
};
