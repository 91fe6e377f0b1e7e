/** Families of coolant by their inhibitors: how long they last, what a strip may say of them, and what mixing does. */
import type { Bands } from '../../catalogue/gauge.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import type { Glycol } from './freezing.ts';

export type CoolantFamily = 'iat' | 'oat' | 'hoat' | 'p-hoat' | 'si-oat' | 'unknown';

interface Family {
  name: string;
  /** Replace by whichever comes first; the months run on while the car stands. */
  months: number;
  km: number;
  /** One-sided: acid coolant is spent, the rest proves nothing (`PH_LIMITS`). */
  ph: Bands;
  /** Reserve alkalinity, mL of 0.1 N acid to pH 5.5 for 10 mL; null: it starts low and tells nothing of its age. */
  reserve: Bands | null;
  notes: readonly string[];
  sources: readonly SourceKey[];
}

/** What no reading of pH may do, whatever the family. */
export const PH_LIMITS: { says: string; sources: readonly SourceKey[] } = {
  says: 'A pH strip can condemn coolant. It never clears it and never moves its date.',
  sources: ['astm-d1287'],
};

/** Strip sellers’ charts, from memory. */
const ORGANIC_PH: Bands = { good: { from: 7.5, to: 9 }, watch: { from: 7, to: 11 } };
const PARKED = 'The calendar runs while the car stands: inhibitors and air keep reacting at the fill line.';

/** Miles of the sources at 1.6 km. Hybrids have no pH figures of their own and take the organic ones. */
export const COOLANT_FAMILIES: Readonly<Record<CoolantFamily, Family>> = {
  iat: {
    name: 'Inorganic (IAT)',
    months: 24,
    km: 48_000,
    ph: { good: { from: 8.5, to: 11 }, watch: { from: 7.5, to: 11 } },
    reserve: { good: { from: 5 }, watch: { from: 3 } },
    notes: ['For copper, brass and cast iron of older engines.', PARKED],
    sources: ['dtic-ad1112055', 'engineering-explainer', 'trade-student-magazine', 'memory'],
  },
  oat: {
    name: 'Organic acid (OAT)',
    months: 60,
    km: 240_000,
    ph: ORGANIC_PH,
    reserve: null,
    notes: [
      'May attack lead solder and old silicone seals: no top-up for a system made for inorganic coolant.',
      PARKED,
    ],
    sources: ['dtic-ad1112055', 'trade-student-magazine', 'memory'],
  },
  hoat: {
    name: 'Hybrid: organic acid with silicate or nitrite (HOAT)',
    months: 60,
    km: 160_000,
    ph: ORGANIC_PH,
    reserve: null,
    notes: [PARKED],
    sources: ['memory'],
  },
  'p-hoat': {
    name: 'Hybrid: organic acid with phosphate (P-HOAT)',
    months: 60,
    km: 160_000,
    ph: ORGANIC_PH,
    reserve: null,
    notes: ['The first fill may be given up to ten years; a refill is not.', PARKED],
    sources: ['memory'],
  },
  'si-oat': {
    name: 'Hybrid: organic acid with silicate (Si-OAT)',
    months: 60,
    km: 160_000,
    ph: ORGANIC_PH,
    reserve: null,
    notes: [PARKED],
    sources: ['memory'],
  },
  unknown: {
    name: 'Unknown or mixed',
    months: 24,
    km: 48_000,
    // Good only where both of the others would be.
    ph: { good: { from: 8.5, to: 9 }, watch: { from: 7.5, to: 11 } },
    reserve: null,
    notes: [
      'The color is only dye and proves no family: counted as inorganic.',
      'If it is muddy, one year at most.',
      PARKED,
    ],
    sources: ['dtic-ad1112055', 'common-practice', 'memory'],
  },
};

/** What is, or goes, into a system. */
export interface Coolant {
  family: CoolantFamily;
  glycol: Glycol | 'unknown';
}

/** What to know before one is poured onto the other; null only where both are known to be alike. */
export const mixing = (there: Coolant, added: Coolant): string | null => {
  const warnings = [familiesMeet(there.family, added.family), glycolsMeet(there.glycol, added.glycol)];
  return warnings.filter((warning) => warning !== null).join(' ') || null;
};

const familiesMeet = (there: CoolantFamily, added: CoolantFamily): string | null => {
  if (there === 'unknown' || added === 'unknown')
    return 'The family is not known on both sides: count the mixture as inorganic, two years from now, one if it turns muddy.';
  if (there === added) return null;
  const [one, other] = [COOLANT_FAMILIES[there].name, COOLANT_FAMILIES[added].name];
  return `${one} meets ${other}: each dilutes the other’s inhibitors, and some pairs form gel. Count the mixture as inorganic, two years at most, or flush and fill with one of them.`;
};

const glycolsMeet = (there: Glycol | 'unknown', added: Glycol | 'unknown'): string | null => {
  if (there === 'unknown' || added === 'unknown')
    return 'The glycol is not known on both sides: the wrong scale can be out by 10 °C and more.';
  return there === added
    ? null
    : 'Ethylene and propylene glycol mixed read wrong on either scale, refractometer or hydrometer: its freezing point can no longer be told at home.';
};
