/** All findings of one car on a day, what needs a hand first, and the car's own standing in the line-up. */

import { SEVERITIES } from '../catalogue/kind.ts';
import { KINDS } from '../catalogue/kinds.ts';
import type { CivilDate } from '../dates/civil.ts';
import { assess, type Finding } from './assess.ts';
import type { CarFacts, Override, PartFacts } from './facts.ts';
import { rulingHere } from './here.ts';
import { rulingOf } from './ruling.ts';
import { rankOf, STANDINGS, type Standing } from './standing.ts';

export const findingsOf = (
  car: CarFacts,
  parts: readonly PartFacts[],
  overrides: readonly Override[],
  on: CivilDate,
): Finding[] => {
  const whole = withDrain(car, parts, on);
  return parts.flatMap((part) => {
    const kind = KINDS.get(part.kind);
    if (!kind) return [];
    const ruling = rulingHere(rulingOf(kind, overrides, car.id), kind, part, car);
    return [assess(part, kind, whole, ruling, on)];
  });
};

/** The standing drain is read at the wiring, and empties the battery. */
const withDrain = (car: CarFacts, parts: readonly PartFacts[], on: CivilDate): CarFacts => {
  const wiring = parts.find(({ kind }) => kind === 'wiring');
  const drain = wiring?.readings.findLast(({ gauge, day }) => gauge === 'standing-drain' && day <= on)?.value;
  return drain === undefined ? car : { ...car, drain };
};

/** Sorts findings by what needs a hand first: safety before comfort within each standing, gravest standing first. */
export const byNeed = (a: Finding, b: Finding): number =>
  rankOf(b.standing) - rankOf(a.standing) ||
  severityOf(a) - severityOf(b) ||
  (a.began ?? '').localeCompare(b.began ?? '');

/** Sorts parts to be dated: those whose failure is gravest first. */
export const byWeight = (a: Finding, b: Finding): number => severityOf(a) - severityOf(b);

const severityOf = (finding: Finding): number => SEVERITIES.indexOf(finding.kind.severity);

export interface CarSummary {
  counts: Readonly<Record<Standing, number>>;
  /** Safety items that are past or unproven. */
  safety: Readonly<Record<'past' | 'unproven', number>>;
  first: Finding | null;
}

export const summaryOf = (findings: readonly Finding[]): CarSummary => {
  const counts = Object.fromEntries(STANDINGS.map((standing) => [standing, 0])) as Record<Standing, number>;
  const safety = { past: 0, unproven: 0 };
  let first: Finding | null = null;
  for (const finding of findings) {
    counts[finding.standing]++;
    if (finding.kind.severity === 'safety' && (finding.standing === 'past' || finding.standing === 'unproven'))
      safety[finding.standing]++;
    if (finding.standing !== 'in date' && (first === null || byNeed(finding, first) < 0)) first = finding;
  }
  return { counts, safety, first };
};

/** Sorts cars by what needs a hand first: safety past, then safety unproven, then past, due, unproven and look. */
export const byUrgency = (a: CarSummary, b: CarSummary): number =>
  b.safety.past - a.safety.past ||
  b.safety.unproven - a.safety.unproven ||
  b.counts.past - a.counts.past ||
  b.counts.due - a.counts.due ||
  b.counts.unproven - a.counts.unproven ||
  b.counts.look - a.counts.look;
