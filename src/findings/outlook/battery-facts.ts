/** What is known of a battery: its chemistry, the charge it started from, what drains it. */
import { chargeByDensity, chargeByVoltage, densityAtReference, FILLS } from '../../ageing/battery/charge.ts';
import { BATTERY, type Chemistry } from '../../ageing/battery/chemistry.ts';
import type { BatteryFacts } from '../../ageing/battery/outlook.ts';
import type { Span } from '../../ageing/span.ts';
import type { Reading } from '../facts.ts';
import { choiceIn, type Known, numberIn, readingsOf } from './outlook.ts';

/** What a connected car draws where nobody measured it, mA: no electronics at all to the most that passes; from memory. */
export const DRAIN_UNKNOWN: Span = { low: 0, high: 50 };
/** Meters and moments differ: share of a measured drain. */
const DRAIN_DOUBT = 0.2;

/** Usual size of a car’s battery where nobody told it, Ah; from memory. */
const CAPACITY_UNKNOWN = 50;

export interface Start {
  reading: Reading;
  charge: Span;
}

/** Where nobody told which: the one that loses charge fastest; of sealed ones the one that is emptier for its voltage. */
const BY_KIND: Readonly<Record<string, Chemistry>> = {
  'battery-flooded': 'antimony',
  'battery-agm': 'gel',
  'battery-lithium': 'lithium',
};

export const chemistryOf = (known: Known): Chemistry => {
  const told = choiceIn(known, 'chemistry');
  if (told !== undefined && Object.hasOwn(BATTERY, told)) return told as Chemistry;
  return BY_KIND[known.kind.key] ?? 'unknown';
};

/** The charge by the newest reading that tells it: one that is not settled, or lacks its temperature, tells none. */
export const startOf = (known: Known): Start | null => {
  for (const reading of readingsOf(known, 'density', 'rest-voltage')) {
    const charge = reading.gauge === 'density' ? byDensity(known, reading) : byVoltage(known, reading);
    if (charge) return { reading, charge };
  }
  return null;
};

/** What a hydrometer read to 0.005 makes of the charge, percent points either way. */
const HYDROMETER = 3;

/** Acid of either fill may be in it: from the emptier to the fuller, unless it is told. */
const byDensity = (known: Known, { value, warmth }: Reading): Span | null => {
  if (warmth === null) return null;
  const fill = FILLS.find((one) => one === choiceIn(known, 'fill'));
  const charges = (fill ? [fill] : FILLS).map((one) => chargeByDensity(densityAtReference(value, warmth), one));
  return {
    low: Math.max(0, Math.min(...charges) - HYDROMETER),
    high: Math.min(100, Math.max(...charges) + HYDROMETER),
  };
};

/** Fresh off a charger or a drive the voltage says nothing yet. */
const byVoltage = (known: Known, { value }: Reading): Span | null => {
  const charge = chargeByVoltage(chemistryOf(known), value, choiceIn(known, 'volts') === '6' ? 6 : 12);
  return charge && !charge.surface ? charge.span : null;
};

/** Told of the battery itself, or measured at the car’s wiring, mA. */
export const drainOf = (known: Known): number | undefined => numberIn(known, 'drain') ?? known.car.drain;

export const capacityOf = (known: Known): number => numberIn(known, 'capacity') ?? CAPACITY_UNKNOWN;

/** What the car draws from it while it is connected, mA. */
export const connectedDrain = (known: Known): Span => {
  const measured = drainOf(known);
  return measured === undefined
    ? DRAIN_UNKNOWN
    : { low: measured * (1 - DRAIN_DOUBT), high: measured * (1 + DRAIN_DOUBT) };
};

export const factsOf = (known: Known, { reading, charge }: Start): BatteryFacts => {
  const connection = choiceIn(known, 'connection');
  return {
    chemistry: chemistryOf(known),
    capacity: capacityOf(known),
    drain: connection === 'disconnected' ? { low: 0, high: 0 } : connectedDrain(known),
    maintained: connection === 'maintainer',
    charge,
    from: reading.day,
  };
};
