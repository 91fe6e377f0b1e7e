/** A reading judged by the bands of its gauge. What is missing leaves it unjudged: it never makes it good. */
import type { Bands, Gauge, Zone } from '../catalogue/gauge.ts';
import { densityAtReference } from './battery/charge.ts';
import { freezingPoint, GLYCOLS } from './coolant/freezing.ts';
import { strengthByBrix, strengthByDensity } from './coolant/sample.ts';

export const VERDICTS = ['good', 'watch', 'act'] as const;
export type Verdict = (typeof VERDICTS)[number];

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
  const value = meaningOf(gauge, read, details);
  const left = (wants: Judged['wants']): Judged => ({ verdict: null, wants, value });
  if (gauge.reads === 'acid density' && read.warmth === null) return left('its temperature');
  // Condemned whatever it is held against: what is missing must not spare it.
  if (gauge.ceiling !== undefined && value > gauge.ceiling) return { verdict: 'act', wants: null, value };
  const reference = referenceOf(gauge, details, coldest);
  if (gauge.against && reference === null)
    return left(gauge.against.what === 'detail' ? { detail: gauge.against.key } : 'the coldest night where it stands');
  const bands = bandsOf(gauge, details);
  if (bands === null) return left({ detail: 'by' in gauge.bands ? gauge.bands.by : '' });
  return { verdict: verdictIn(bands, relative(gauge, value, reference)), wants: null, value };
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

/** The value that is judged: the number read, or what it says about the fluid. */
const meaningOf = (gauge: Gauge, { value, warmth }: Read, details: Known['details']): number => {
  switch (gauge.reads) {
    case 'acid density':
      return warmth === null ? value : whole(densityAtReference(value, warmth), gauge.decimals);
    case 'coolant density':
      return warmest(details, (glycol) => strengthByDensity(glycol, value).low);
    case 'coolant sugar scale':
      return warmest(details, (glycol) => strengthByBrix(glycol, value).low);
    case 'coolant strength':
      return warmest(details, () => value);
    default:
      return value;
  }
};

/** The warmest point at which the sample may freeze: of the weak end of its strength, and of both glycols if none is told. */
const warmest = (details: Known['details'], strength: (glycol: (typeof GLYCOLS)[number]) => number): number =>
  Math.max(
    ...GLYCOLS.filter((glycol) => (details.glycol ?? glycol) === glycol).map((glycol) =>
      freezingPoint(glycol, strength(glycol)),
    ),
  );
