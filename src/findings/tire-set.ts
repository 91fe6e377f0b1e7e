/** The tires of a car as a set: the oldest rules, ages that differ on an axle are said, the spare is not forgotten. */
import { type CivilDate, monthsBetween } from '../dates/civil.ts';
import { ageInWords, ageOf, monthsInWords } from '../dates/words.ts';
import type { Finding } from './assess.ts';

export interface TireSet {
  oldest: Finding | null;
  notes: string[];
}

export const ROAD_TIRE = 'tires-road';
export const SPARE_TIRES: readonly string[] = ['tire-spare', 'tire-compact-spare'];

/** Ages on one axle further apart than this are said; from memory. */
const AXLE_GAP = 12;
/** Front and rear further apart than this is a handling caution; from memory. */
const FRONT_REAR_GAP = 48;

export const tireSet = (findings: readonly Finding[]): TireSet => {
  const road = findings.filter((finding) => finding.kind.key === ROAD_TIRE);
  const spares = findings.filter((finding) => SPARE_TIRES.includes(finding.kind.key));
  const dated = [...road, ...spares].filter((finding) => finding.since?.from);
  const oldest = dated.reduce<Finding | null>(
    (first, next) => (first === null || start(next) < start(first) ? next : first),
    null,
  );
  const undated = road.filter((finding) => !finding.since?.from);
  const notes = [
    oldest &&
      `The oldest rules the set: ${place(oldest)}, ${oldest.since ? ageInWords(ageOf(oldest.since, oldest.on)) : ''}.`,
    ...['front', 'rear'].map((axle) => axleNote(axle, road)),
    frontRearNote(road),
    undated.length > 0 &&
      `No making date yet: ${undated.map(place).join(', ')}. Their age counts as unknown, not as new.`,
    ...spares.map((spare) => !spare.since?.from && `The spare’s date is missing: look at both its sidewalls.`),
  ];
  return { oldest, notes: notes.filter((note): note is string => typeof note === 'string' && note !== '') };
};

const start = (finding: Finding): CivilDate => finding.since?.from as CivilDate;

const place = (finding: Finding): string => finding.part.position ?? finding.kind.name.toLowerCase();

const axleNote = (axle: string, road: readonly Finding[]): string | null => {
  const [one, other] = road.filter((finding) => finding.part.position?.startsWith(axle) && finding.since?.from);
  if (!one || !other) return null;
  const gap = apart(one, other);
  return gap > AXLE_GAP
    ? `Mixed ages on the ${axle} axle: made ${monthsInWords(gap)} apart. Tires of one axle are renewed together.`
    : null;
};

const frontRearNote = (road: readonly Finding[]): string | null => {
  const eldest = (axle: string): Finding | undefined =>
    road
      .filter((finding) => finding.part.position?.startsWith(axle) && finding.since?.from)
      .sort((a, b) => (start(a) < start(b) ? -1 : 1))[0];
  const [front, rear] = [eldest('front'), eldest('rear')];
  if (!front || !rear) return null;
  const gap = apart(front, rear);
  return gap > FRONT_REAR_GAP
    ? `Front and rear are ${monthsInWords(gap)} apart: the car may handle unevenly, above all in the wet.`
    : null;
};

/** Months between the making of two tires, at the oldest each can be. */
const apart = (a: Finding, b: Finding): number => {
  const [first, second] = [start(a), start(b)].sort() as [CivilDate, CivilDate];
  return monthsBetween(first, second);
};
