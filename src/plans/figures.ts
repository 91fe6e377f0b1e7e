/** Amounts and settings for this car, this place and this stay; each inside its own limits, whatever the facts. */
import { desiccant, humidity } from './figures/air.ts';
import { battery } from './figures/battery.ts';
import { cylinderOil } from './figures/engine.ts';
import type { Figure } from './figures/figure.ts';
import { coolant, washer } from './figures/frost.ts';
import { fill, stabilizer } from './figures/fuel.ts';
import { pressure, pressureInSpring, pressureOff } from './figures/tires.ts';
import type { Situation } from './situation.ts';

export type FigureKey = keyof typeof FIGURES;

export const figuresOf = (keys: readonly FigureKey[], situation: Situation): Figure[] =>
  keys.flatMap((key) => FIGURES[key](situation));

const FIGURES = {
  fill,
  stabilizer,
  pressure,
  'pressure in spring': pressureInSpring,
  'pressure of wheels off': pressureOff,
  coolant,
  washer,
  desiccant,
  humidity,
  'cylinder oil': cylinderOil,
  battery,
} as const satisfies Readonly<Record<string, (situation: Situation) => Figure[]>>;
