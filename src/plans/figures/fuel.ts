/** How full the tank, how much stabilizer, how long that keeps. */
import { FUELS } from '../../ageing/fuel/fuels.ts';
import { goodUntil } from '../../ageing/fuel/life.ts';
import { ASSUMED } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { daysInWords, inUnit } from '../../ageing/words.ts';
import { addDays } from '../../dates/civil.ts';
import type { Finding } from '../../findings/assess.ts';
import { blendOf } from '../../findings/outlook/fuel.ts';
import type { Situation } from '../situation.ts';
import { sideOf } from '../when.ts';
import { each, exactly, type Figure, find, numberIn } from './figure.ts';

/** What a fill of a tank leaves free, %. */
const FILL: Span = { low: 90, high: 95 };
/** Largest tank that can be told, L. */
const LARGEST_TANK = 400;

export const fill = (situation: Situation): Figure[] => {
  const fuel = find(situation, 'fuel-gasoline', 'fuel-diesel');
  const tank = numberIn(fuel, 'tank');
  return [
    {
      what: 'Fill the tank to',
      amount: tank === null ? FILL : each(FILL, (percent) => (tank * percent) / 100),
      unit: tank === null ? '%' : 'L',
      decimals: 0,
      limits: tank === null ? { low: 0, high: 95 } : { low: 0, high: LARGEST_TANK * 0.95 },
      says: [
        tank === null
          ? 'Tell the size of its tank on the fuel’s page for liters.'
          : `Its tank holds ${inUnit(tank, 'L', 0)}. Fuel grows nearly 3 percent as it warms by 30 °C, so a tenth to a twentieth stays free.`,
        ...keepsUntil(situation, fuel),
      ],
      sources: ['fuel-chemists-quoted', 'memory'],
    },
  ];
};

/** How long the planned fill keeps there. */
const keepsUntil = (situation: Situation, fuel: Finding | undefined): string[] => {
  if (!fuel) return [];
  const { stay } = situation;
  const diesel = fuel.kind.key === 'fuel-diesel';
  const planned = sideOf('tank', situation) === 'ethanol-free' && !diesel ? 'e0' : blendOf(fuel);
  const filled = addDays(stay.parkedOn, -3);
  const { watch, stop } = goodUntil(
    {
      fuel: planned,
      stabilized: true,
      filled: { from: filled, to: filled },
      fullness: FILL.high,
      container: 'vehicle tank',
    },
    stay.place ?? ASSUMED,
  );
  const never = 'on a day nobody knows';
  return [
    `${FUELS[planned].name}${fuel.part.details.blend === undefined ? ' (assumed)' : ''}, ${diesel ? 'fresh' : 'stabilized while fresh'}: ${inTurn(daysInWords(watch, never, stay.parkedOn), daysInWords(stop, never, stay.parkedOn))}. Smell it before every start after that, whatever the date.`,
  ];
};

/** Doses on bottles, mL per 10 L of fuel; from memory. The bottle’s own figure rules. */
const DOSE: Span = { low: 25, high: 35 };
const STRONGEST_DOSE = 200;

export const stabilizer = (situation: Situation): Figure[] => {
  const tank = numberIn(find(situation, 'fuel-gasoline'), 'tank');
  const told = situation.stay.numbers.dose;
  const dose = told === undefined ? DOSE : exactly(told);
  return [
    {
      what: tank === null ? 'Stabilizer for each 10 L' : 'Stabilizer for a full tank',
      amount: tank === null ? dose : each(dose, (per10) => (per10 * tank * FILL.high) / 1000),
      unit: 'mL',
      decimals: 0,
      limits: { low: 0, high: tank === null ? STRONGEST_DOSE : (STRONGEST_DOSE * LARGEST_TANK * FILL.high) / 1000 },
      says: [
        told === undefined
          ? 'Reckoned with 25 to 35 mL per 10 L (about an ounce in 2 to 3 gallons), which is usual; the bottle’s own dose rules. Tell it under “Change the lay-up”.'
          : `By the bottle: ${inUnit(told, 'mL', 0)} per 10 L.`,
        'Into the empty tank first and the fuel on top, so that it mixes.',
      ],
      sources: ['memory', 'do-it-yourself-stabilizer-guide'],
    },
  ];
};

const inTurn = (soon: string, over: string): string =>
  soon === over ? `drain it ${over}` : `use it soon ${soon}, drain it ${over}`;
