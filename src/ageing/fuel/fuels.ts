/** Fuels and how long they keep in a cool, dark, nearly full, tightly closed tank at 20 °C. */
import type { SourceKey } from '../../catalogue/sources.ts';

export type FuelKey =
  | 'e0'
  | 'e5'
  | 'e10'
  | 'e15'
  | 'e85'
  | 'premium-e0'
  | 'aviation'
  | 'premix'
  | 'diesel'
  | 'b7'
  | 'b20'
  | 'b100';

/** Months: from `watch` use it soon, from `stop` do not start on it. One figure known sets both. */
export interface Life {
  watch: number;
  stop: number;
}

interface Fuel {
  name: string;
  /** Vol % of ethanol, the most the grade may hold; null: no gasoline. */
  ethanol: number | null;
  /** Vol % of biodiesel. */
  bio: number;
  plain: Life;
  /** Stabilized while fresh; null: no figures, it keeps as if plain. */
  stabilized: Life | null;
  diesel: boolean;
  sources: readonly SourceKey[];
}

const GASOLINE = { bio: 0, diesel: false } as const;
const DIESEL = { ethanol: null, diesel: true } as const;
const E10_LIFE = { plain: { watch: 3, stop: 6 }, stabilized: { watch: 12, stop: 12 } } as const;
const E85_LIFE = { plain: { watch: 2, stop: 3 }, stabilized: { watch: 6, stop: 6 } } as const;

/** Texts differ by a factor of six, from one month to six for E10: `watch` is their middle, `stop` their end. */
export const FUELS: Readonly<Record<FuelKey, Fuel>> = {
  e0: {
    name: 'Gasoline without ethanol (E0)',
    ...GASOLINE,
    ethanol: 0,
    plain: { watch: 6, stop: 12 },
    stabilized: { watch: 12, stop: 24 },
    sources: ['uk-fuel-life', 'engineering-explainer-3', 'environment-explainer', 'memory'],
  },
  // No figures of their own for E5 and E15: each takes those of its shorter-lived neighbor.
  e5: {
    name: 'Gasoline with up to 5 % ethanol (E5)',
    ...GASOLINE,
    ethanol: 5,
    ...E10_LIFE,
    sources: ['uk-fuel-life', 'common-practice'],
  },
  e10: {
    name: 'Gasoline with up to 10 % ethanol (E10)',
    ...GASOLINE,
    ethanol: 10,
    ...E10_LIFE,
    sources: ['engineering-explainer-3', 'environment-explainer', 'motoring-organization-advice', 'common-practice'],
  },
  e15: {
    name: 'Gasoline with up to 15 % ethanol (E15)',
    ...GASOLINE,
    ethanol: 15,
    ...E85_LIFE,
    sources: ['common-practice'],
  },
  e85: { name: 'Ethanol fuel (E85)', ...GASOLINE, ethanol: 85, ...E85_LIFE, sources: ['memory'] },
  'premium-e0': {
    name: 'Premium gasoline without ethanol',
    ...GASOLINE,
    ethanol: 0,
    plain: { watch: 6, stop: 9 },
    stabilized: { watch: 18, stop: 24 },
    sources: ['memory'],
  },
  aviation: {
    name: 'Leaded aviation gasoline',
    ...GASOLINE,
    ethanol: 0,
    plain: { watch: 12, stop: 12 },
    stabilized: null,
    sources: ['memory'],
  },
  premix: {
    name: 'Two-stroke premix',
    ...GASOLINE,
    // Mixed from pump gasoline of whatever kind.
    ethanol: 10,
    plain: { watch: 2, stop: 3 },
    stabilized: { watch: 12, stop: 12 },
    sources: ['memory'],
  },
  diesel: {
    name: 'Diesel without bio content (B0)',
    ...DIESEL,
    bio: 0,
    plain: { watch: 6, stop: 12 },
    stabilized: { watch: 18, stop: 24 },
    sources: ['uk-fuel-life', 'marque-forum-post', 'memory'],
  },
  b7: {
    name: 'Diesel with up to 7 % bio content (B7)',
    ...DIESEL,
    bio: 7,
    plain: { watch: 6, stop: 12 },
    stabilized: { watch: 12, stop: 12 },
    sources: ['memory'],
  },
  b20: {
    name: 'Diesel with up to 20 % bio content (B20)',
    ...DIESEL,
    bio: 20,
    plain: { watch: 3, stop: 6 },
    stabilized: { watch: 6, stop: 8 },
    sources: ['memory'],
  },
  b100: {
    name: 'Pure biodiesel (B100)',
    ...DIESEL,
    bio: 100,
    plain: { watch: 6, stop: 8 },
    stabilized: null,
    sources: ['biodiesel-storage'],
  },
};
