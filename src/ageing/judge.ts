/** A reading judged by the bands of its gauge. What is missing leaves it unjudged: it never makes it good. */
import type { Bands, Gauge, Zone } from '../catalogue/gauge.ts';
import { densityAtReference } from './battery/charge.ts';
import { freezingPoint, GLYCOLS, type Glycol } from './coolant/freezing.ts';
import { coolantOutlook } from './coolant/outlook.ts';
import { densityAt20, strengthByBrix, strengthByDensity } from './coolant/sample.ts';
import { hull, type Span } from './span.ts';
import { pressureAt } from './tires/pressure.ts';
import type { Verdict } from './verdict.ts';

export { VERDICTS, type Verdict } from './verdict.ts';

export interface Judged {
  /** Null: not judged, for want of what `wants` names. */
  verdict: Verdict | null;
  wants: 'the coldest night where it stands' | 'its temperature' | { detail: string } | null;
  /** What the bands were held against, in the gauge's unit or as `reads` says. */
  value: number;
}

interface Read {
  value: number;
  warmth: number | null;
}

interface Known {
  details: Readonly<Record<string, string | number>>;
  /** Coldest night where it stands, °C; null: nobody has said where that is. */
  coldest: number | null;
}

export const judge = (gauge: Gauge, read: Read, { details, coldest }: Known): Judged => {
  const strength = strengthOf(gauge, read, details);
  const value = strength ? warmestIce(gauge, read, details) : meaningOf(gauge, read);
  const left = (wants: Judged['wants']): Judged => ({ verdict: null, wants, value });
  if ((gauge.reads === 'acid density' || gauge.reads === 'coolant density') && read.warmth === null)
    return left('its temperature');
  if (strength) {
    const verdict = coolantVerdict(gauge, read, details, coldest);
    return verdict ? { verdict, wants: null, value } : left('the coldest night where it stands');
  }
  // Condemned whatever it is held against: what is missing must not spare it.
  if (gauge.ceiling !== undefined && value > gauge.ceiling) return { verdict: 'act', wants: null, value };
  const reference = referenceOf(gauge, details, coldest);
  if (gauge.against && reference === null)
    return left(gauge.against.what === 'detail' ? { detail: gauge.against.key } : 'the coldest night where it stands');
  const bands = bandsOf(gauge, details);
  if (bands === null) return left({ detail: 'by' in gauge.bands ? gauge.bands.by : '' });
  return { verdict: verdictIn(bands, relative(gauge, value, reference)), wants: null, value };
};

/** Of every glycol it can be, each by its own strength, the gravest; null: frost is not judged, and nothing else is wrong. */
const coolantVerdict = (
  gauge: Gauge,
  read: Read,
  details: Known['details'],
  coldest: number | null,
): Verdict | null => {
  const verdicts = glycolsIn(details).map((glycol) => {
    const strength = strengthOf(gauge, read, { ...details, glycol });
    return strength && coolantOutlook({ glycol, strength }, coldest).verdict;
  });
  return (['act', 'watch', null, 'good'] as const).find((verdict) => verdicts.includes(verdict)) ?? null;
};

const verdictIn = ({ good, watch }: Bands, value: number): Verdict =>
  isIn(good, value) ? 'good' : watch && isIn(watch, value) ? 'watch' : 'act';

const isIn = ({ from, to, under }: Zone, value: number): boolean =>
  (from === undefined || value >= from) && (to === undefined || value <= to) && (under === undefined || value < under);

/** The bands that count for this part: those of its answer, or of an unknown one where there are any. */
export const bandsOf = ({ bands }: Gauge, details: Known['details']): Bands | null =>
  'by' in bands ? (bands.of[String(details[bands.by] ?? 'unknown')] ?? null) : bands;

/** What the bands are measured from, or null where it is not told; 0 for bands of the reading itself. */
export const referenceOf = ({ against }: Gauge, details: Known['details'], coldest: number | null): number | null => {
  if (!against) return 0;
  if (against.what === 'coldest night') return coldest;
  const told = details[against.key];
  return typeof told === 'number' ? told : null;
};

const relative = ({ against }: Gauge, value: number, reference: number | null): number => {
  if (!against || reference === null) return value;
  const inPercent = against.what === 'detail' && against.as === 'percent';
  return whole(inPercent ? (value / reference) * 100 : value - reference, 6);
};

/** Without the dust of binary fractions, so that a value on an edge lies on it. */
const whole = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** The value that is judged: the number read, or what it would be at the temperature the bands are of. */
const meaningOf = ({ reads, decimals }: Gauge, { value, warmth }: Read): number => {
  if (warmth === null) return value;
  if (reads === 'acid density') return whole(densityAtReference(value, warmth), decimals);
  // A warm tire reads high; a cold one reads what it holds the car up with.
  if (reads === 'tire pressure' && warmth > TIRE_COLD) return whole(pressureAt(value, warmth, TIRE_COLD), 3);
  return value;
};

/** The temperature of a tire that counts as cold, °C: common practice. */
const TIRE_COLD = 20;

/** The glycols it can be: the one told, or both. */
export const glycolsIn = ({ glycol }: Known['details']): readonly Glycol[] => {
  const told = GLYCOLS.filter((one) => one === glycol);
  return told.length > 0 ? told : GLYCOLS;
};

/** Strength of the coolant by what was read; of an unknown glycol the whole of both. Null for other gauges. */
export const strengthOf = (
  { reads }: Pick<Gauge, 'reads'>,
  { value, warmth }: Read,
  details: Known['details'],
): Span | null => {
  const by = (told: (glycol: Glycol) => Span): Span => {
    return hull(glycolsIn(details).map(told));
  };
  switch (reads) {
    case 'coolant strength':
      return { low: value, high: value };
    case 'coolant sugar scale':
      return by((glycol) => strengthByBrix(glycol, value));
    case 'coolant density':
      return by((glycol) => strengthByDensity(glycol, warmth === null ? value : densityAt20(value, warmth)));
    default:
      return null;
  }
};

/** The warmest point at which such a sample may freeze: its weak end, and of both glycols if none is told. */
const warmestIce = (gauge: Gauge, read: Read, details: Known['details']): number =>
  Math.max(
    ...glycolsIn(details).map((glycol) =>
      freezingPoint(glycol, strengthOf(gauge, read, { ...details, glycol })?.low ?? 0),
    ),
  );
