/** Units a reading can be typed in. Each is its own, or so many of another: other = (this − zero) × scale. */
export const UNITS = {
  '°C': {},
  '°F': { of: '°C', scale: 5 / 9, zero: 32 },
  // A difference of temperatures has no zero to shift.
  '°C apart': {},
  '°F apart': { of: '°C apart', scale: 5 / 9 },
  bar: {},
  psi: { of: 'bar', scale: 0.06894757293168 },
  kPa: { of: 'bar', scale: 0.01 },
  inHg: { of: 'bar', scale: 0.03386389 },
  'bar/month': {},
  'psi/month': { of: 'bar/month', scale: 0.06894757293168 },
  V: {},
  mA: {},
  A: { of: 'mA', scale: 1000 },
  Ah: {},
  Ω: {},
  kΩ: {},
  mm: {},
  in: { of: 'mm', scale: 25.4 },
  '/32 in': { of: 'mm', scale: 25.4 / 32 },
  m: {},
  ft: { of: 'm', scale: 0.3048 },
  L: {},
  'US gal': { of: 'L', scale: 3.785411784 },
  'L/min': {},
  'US gal/min': { of: 'L/min', scale: 3.785411784 },
  Nm: {},
  'lb ft': { of: 'Nm', scale: 1.3558179483314 },
  '%': {},
  ppm: {},
  pH: {},
  SG: {},
  Brix: {},
  'Shore A': {},
  mL: {},
  s: {},
  '°': {},
  'drops a night': {},
  swings: {},
  cracks: {},
} as const satisfies Readonly<Record<string, Scale>>;
export type Unit = keyof typeof UNITS;

interface Scale {
  of?: string;
  scale?: number;
  zero?: number;
}

const rootOf = (unit: Unit): { root: string; scale: number; zero: number } => {
  const { of: root = unit, scale = 1, zero = 0 }: Scale = UNITS[unit];
  return { root, scale, zero };
};

/** A value in another unit of the same quantity, to twelve figures: 320 °F are 160 °C and not a hair under. */
export const convert = (value: number, from: Unit, to: Unit): number => {
  if (from === to) return value;
  const [a, b] = [rootOf(from), rootOf(to)];
  if (a.root !== b.root) throw new Error(`No way from ${from} to ${to}`);
  return Number((((value - a.zero) * a.scale) / b.scale + b.zero).toPrecision(12));
};
