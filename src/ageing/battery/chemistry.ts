/** Starter batteries by what is in them: how fast they lose charge, what their rest voltage tells, what can freeze. */
import type { SourceKey } from '../../catalogue/sources.ts';
import type { Span } from '../span.ts';
import type { Row } from '../table.ts';

export const CHEMISTRIES = ['antimony', 'low-antimony', 'calcium', 'efb', 'agm', 'gel', 'lithium', 'unknown'] as const;
export type Chemistry = (typeof CHEMISTRIES)[number];

interface Battery {
  name: string;
  /** Percent of the present charge lost in a month of 30.4 days at 25 °C; twice that for every 10 °C warmer. */
  selfDischarge: { low: number; typical: number; high: number };
  /** Rest voltage of a 12 V battery near 25 °C to charge in percent; null: voltage does not tell the charge. */
  rest: readonly Row[] | null;
  /** The most a full one still shows once settled, V: above it the reading is of a charger or drive just before. */
  settled: number | null;
  /** Its electrolyte can freeze. */
  acid: boolean;
  /** Drawn by electronics inside the case, mA: no meter in the lead sees it. */
  electronics: Span;
  sources: readonly SourceKey[];
}

const FLOODED: readonly Row[] = [
  [11.89, 0],
  [12.06, 25],
  [12.24, 50],
  [12.45, 75],
  [12.65, 100],
];

/** Calcium grids and a denser fill: the flooded column and 0.05 V. */
const EFB: readonly Row[] = [
  [11.94, 0],
  [12.11, 25],
  [12.29, 50],
  [12.5, 75],
  [12.7, 100],
];

const AGM: readonly Row[] = [
  [11.8, 0],
  [12.0, 25],
  [12.3, 50],
  [12.6, 75],
  [12.8, 100],
];

const GEL: readonly Row[] = [
  [11.8, 0],
  [12.0, 25],
  [12.35, 50],
  [12.65, 75],
  [12.85, 100],
];

const NO_ELECTRONICS: Span = { low: 0, high: 0 };
const flooded = { rest: FLOODED, settled: 12.85, acid: true, electronics: NO_ELECTRONICS };

export const BATTERY: Readonly<Record<Chemistry, Battery>> = {
  antimony: {
    ...flooded,
    name: 'Flooded, antimony grids (vintage, dry-charged, heavy-duty)',
    selfDischarge: { low: 8, typical: 15, high: 25 },
    sources: ['army-battery-manual', 'army-battery-tables', 'battery-charge-table', 'memory'],
  },
  'low-antimony': {
    ...flooded,
    name: 'Flooded, low-antimony or hybrid grids',
    selfDischarge: { low: 4, typical: 6, high: 8 },
    sources: ['battery-charge-table', 'memory'],
  },
  calcium: {
    ...flooded,
    name: 'Flooded, calcium grids (maintenance-free)',
    selfDischarge: { low: 2, typical: 3, high: 5 },
    sources: ['battery-charge-table', 'memory'],
  },
  efb: {
    ...flooded,
    name: 'Enhanced flooded (EFB)',
    selfDischarge: { low: 2, typical: 3, high: 5 },
    rest: EFB,
    settled: 12.9,
    sources: ['memory'],
  },
  agm: {
    name: 'AGM',
    selfDischarge: { low: 1, typical: 2.5, high: 3 },
    rest: AGM,
    settled: 13,
    acid: true,
    electronics: NO_ELECTRONICS,
    sources: ['stationary-agm-manual', 'powersports-battery-charts', 'memory'],
  },
  gel: {
    name: 'Gel',
    selfDischarge: { low: 1, typical: 2, high: 3 },
    rest: GEL,
    settled: 12.85,
    acid: true,
    electronics: NO_ELECTRONICS,
    sources: ['memory'],
  },
  lithium: {
    name: 'Lithium iron phosphate',
    selfDischarge: { low: 1, typical: 2, high: 3 },
    rest: null,
    settled: null,
    acid: false,
    electronics: { low: 1, high: 10 },
    sources: ['lithium-battery-manual', 'memory'],
  },
  // What is not known loses charge as fast as any, and reads as the flooded ones do.
  unknown: {
    ...flooded,
    name: 'Not known',
    selfDischarge: { low: 8, typical: 15, high: 25 },
    sources: ['army-battery-manual', 'battery-charge-table', 'memory'],
  },
};
