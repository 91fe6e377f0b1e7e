/** Amounts and settings for this car, this place and this stay; each inside its own limits, whatever the facts. */

import { strengthen } from '../ageing/coolant/dilution.ts';
import { freezingPoint, strengthFor } from '../ageing/coolant/freezing.ts';
import { FUELS } from '../ageing/fuel/fuels.ts';
import { goodUntil } from '../ageing/fuel/life.ts';
import { glycolsIn } from '../ageing/judge.ts';
import { ASSUMED, coldestNight, humidityOf } from '../ageing/place.ts';
import { clamp, hull, type Span } from '../ageing/span.ts';
import { interpolate, type Row } from '../ageing/table.ts';
import { LAY_UP, layUpPressure, lossOver } from '../ageing/tires/pressure.ts';
import { daysInWords, inUnit, spanInWords } from '../ageing/words.ts';
import type { SourceKey } from '../catalogue/sources.ts';
import { convert } from '../catalogue/units.ts';
import { addDays, monthsBetween } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { coolantSample } from '../findings/coolant-sample.ts';
import { blendOf } from '../findings/outlook/fuel.ts';
import { chargeByReturn } from './battery-charge.ts';
import type { Situation } from './situation.ts';
import { endOf, extremesOf } from './stay.ts';
import { sideOf } from './when.ts';

export interface Figure {
  what: string;
  /** Null: something has to be told first. */
  amount: Span | null;
  unit: string;
  decimals: number;
  /** Where the amount lies for any car: what is outside would be a fault of ours. */
  limits: Span;
  /** How it comes about, what was assumed, what is missing. */
  says: readonly string[];
  sources: readonly SourceKey[];
}

export type FigureKey = keyof typeof FIGURES;

export const figuresOf = (keys: readonly FigureKey[], situation: Situation): Figure[] =>
  keys.flatMap((key) => FIGURES[key](situation));

/** “Stabilizer: 140 to 180 mL”; pressures in both units. */
export const figureInWords = ({ what, amount, unit, decimals }: Figure): string => {
  if (amount === null) return `${what}: not told yet`;
  const words = spanInWords(amount, unit, decimals).trim();
  const psi = { low: convert(amount.low, 'bar', 'psi'), high: convert(amount.high, 'bar', 'psi') };
  return `${what}: ${words}${unit === 'bar' ? ` (${spanInWords(psi, 'psi', 0)})` : ''}`;
};

const find = ({ atParking }: Situation, ...kinds: readonly string[]): Finding | undefined =>
  atParking.find(({ kind }) => kinds.includes(kind.key));

const numberIn = (finding: Finding | undefined, key: string): number | null => {
  const told = finding?.part.details[key];
  return typeof told === 'number' ? told : null;
};

const exactly = (value: number): Span => ({ low: value, high: value });
const each = (span: Span, change: (value: number) => number): Span => ({
  low: change(span.low),
  high: change(span.high),
});

/** What a fill of a tank leaves free, %. */
const FILL: Span = { low: 90, high: 95 };
/** Largest tank that can be told, L. */
const LARGEST_TANK = 400;

const fill = (situation: Situation): Figure[] => {
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
    `${FUELS[planned].name}${fuel.part.details.blend === undefined ? ' (assumed)' : ''}, ${diesel ? 'fresh' : 'stabilized while fresh'}: use it soon ${daysInWords(watch, never, stay.parkedOn)}, drain it ${daysInWords(stop, never, stay.parkedOn)}. Smell it before every start after that, whatever the date.`,
  ];
};

/** Doses on bottles, mL per 10 L of fuel; from memory. The bottle’s own figure rules. */
const DOSE: Span = { low: 25, high: 35 };
const STRONGEST_DOSE = 200;

const stabilizer = (situation: Situation): Figure[] => {
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

/** Share of the sidewall’s maximum that a lay-up stays under, unless the placard itself is higher; from memory. */
const OF_SIDEWALL = 0.9;
const MOST_PRESSURE = 9;

/** Storage pressure of one tire by the side taken, bar; null: its placard is not told. */
export const storagePressure = (placard: number | null, sidewall: number | null, side: string): Span | null => {
  if (placard === null) return null;
  if (side === 'placard' || sidewall === null) return exactly(placard);
  if (side === 'sidewall') return exactly(Math.max(placard, sidewall));
  const { low, high } = layUpPressure(placard, Math.max(placard, sidewall * OF_SIDEWALL));
  return { low, high };
};

const tires = ({ atParking }: Situation): Finding[] => atParking.filter(({ kind }) => kind.key === 'tires-road');

const pressure = (situation: Situation): Figure[] => {
  const side = sideOf('pressure', situation);
  const told = tires(situation).map((tire) => {
    const [placard, sidewall] = [numberIn(tire, 'placard'), numberIn(tire, 'sidewall')];
    return { tire, placard, sidewall, amount: storagePressure(placard, sidewall, side) };
  });
  const [first] = told;
  const alike = told.every(({ amount }) => JSON.stringify(amount) === JSON.stringify(first?.amount));
  return (alike ? told.slice(0, 1) : told).map(({ tire, placard, sidewall, amount }) => ({
    what: alike ? 'Cold pressure, each tire' : `Cold pressure, ${tire.part.position}`,
    amount,
    unit: 'bar',
    decimals: 1,
    limits: { low: 0, high: MOST_PRESSURE },
    says: [
      placard === null
        ? 'Tell the placard pressure on the tire’s page. Until then: as on the placard, and not below it.'
        : sidewall === null
          ? `Placard ${inUnit(placard, 'bar', 1)}. Without the figure on the sidewall it stays there: read it and more may be put in.`
          : `Placard ${inUnit(placard, 'bar', 1)}, sidewall ${inUnit(sidewall, 'bar', 1)} at most.`,
      ...(side === 'raised' && amount !== null ? [LAY_UP.says[2] as string] : []),
    ],
    sources: LAY_UP.sources,
  }));
};

/** Rubber lets so much through until it comes back. */
const pressureInSpring = ({ stay }: Situation): Figure[] => [
  {
    what: 'Lost through the rubber by the day it comes back',
    amount: lossOver(Math.max(monthsBetween(stay.parkedOn, endOf(stay)), 1), 20),
    unit: 'bar',
    decimals: 2,
    limits: { low: 0, high: MOST_PRESSURE },
    says: [
      'At 20 °C; less where it is cold. A cold night also reads about 0.01 bar less for every °C, and gives it back.',
    ],
    sources: ['tire-permeation', 'gas-law'],
  },
];

const OFF_THE_CAR: Span = each({ low: 10, high: 15 }, (psi) => convert(psi, 'psi', 'bar'));

const pressureOff = (): Figure[] => [
  {
    what: 'Mounted wheels off the car',
    amount: OFF_THE_CAR,
    unit: 'bar',
    decimals: 1,
    limits: { low: 0.5, high: 1.2 },
    says: ['15 psi where they are put away warm. Pump them up before the car stands on them.'],
    sources: ['tire-maker-letter'],
  },
];

/** Vol %: half and half against corrosion, and the most that still protects more. */
const STRENGTH = { wanted: 50, most: 60 };
/** Kelvin below the coldest night; from practice. */
const MARGIN = 6;
const COLDEST_ASSUMED = -35;

const coolant = (situation: Situation): Figure[] => {
  const fluid = find(situation, 'coolant-iat', 'coolant-oat');
  if (!fluid) return [];
  const { place } = situation.stay;
  const low = place === null ? COLDEST_ASSUMED + MARGIN : Math.min(extremesOf(situation.stay, place).low, 0);
  const target = low - MARGIN;
  const needed = glycolsIn(fluid.part.details).map((glycol) => strengthFor(glycol, target) ?? STRENGTH.most);
  const strength = clamp(Math.max(...needed), STRENGTH.wanted, STRENGTH.most);
  return [
    {
      what: 'Coolant strength, glycol by volume',
      amount: { low: strength, high: STRENGTH.most },
      unit: '%',
      decimals: 0,
      limits: { low: STRENGTH.wanted, high: STRENGTH.most },
      says: [
        place === null
          ? `Nobody has said where it stands: reckoned to ${inUnit(target, '°C', 0)}.`
          : `Coldest night while it stands ${inUnit(low, '°C', 0)}, less ${MARGIN} K: safe to ${inUnit(target, '°C', 0)}; half and half is kept against corrosion whatever the frost.`,
        ...(needed.some((one) => one >= STRENGTH.most)
          ? [
              `At ${STRENGTH.most} % it freezes at ${inUnit(freezingPoint('ethylene', STRENGTH.most), '°C', 0)} (ethylene glycol); where nights are colder, heat the place or drain the block by the handbook.`,
            ]
          : []),
        ...strengthNow(fluid, strength, place === null ? null : coldestNight(place)),
      ],
      sources: ['ashrae-glycol', 'army-coolant-limits', 'common-practice'],
    },
  ];
};

/** What was last measured, and what makes it stronger. */
const strengthNow = (fluid: Finding, wanted: number, coldest: number | null): string[] => {
  const samples = fluid.measured.flatMap(({ test, reading }) => {
    const sample = coolantSample(test.gauge, reading, fluid.part.details, coldest);
    return sample ? [sample] : [];
  });
  if (samples.length === 0) return ['Not measured yet: a refractometer tells in five minutes.'];
  const now = hull(samples.map(({ strength }) => strength));
  if (now.low >= wanted) return [`Measured: ${spanInWords(now, '%', 0)}, which is enough.`];
  const volume = numberIn(fluid, 'volume');
  const exchanged = volume === null ? null : strengthen(volume, now.low, wanted, 100);
  return [
    `Measured: ${spanInWords(now, '%', 0)}.`,
    exchanged === null
      ? 'Tell how much the system holds, and what to exchange is reckoned.'
      : `Drain ${inUnit(exchanged, 'L', 1)} of it and fill as much concentrate, then run it warm outdoors and measure again.`,
  ];
};

/** °C that washer fluid has to bear; never milder than −20, which is what a lay-up mix is set to. */
const WASHER = { mildest: -20, margin: 5, coldest: -60 };
/** Ethanol in water, vol % by the °C at which it begins to freeze; from memory. */
const ALCOHOL: readonly Row[] = [
  [-60, 80],
  [-37, 60],
  [-32, 50],
  [-23, 40],
  [-15, 30],
  [-9, 20],
  [-4, 10],
  [0, 0],
];

const washer = ({ stay }: Situation): Figure[] => {
  const low = stay.place === null ? WASHER.mildest : extremesOf(stay, stay.place).low - WASHER.margin;
  const target = clamp(low, WASHER.coldest, WASHER.mildest);
  return [
    {
      what: 'Washer fluid that bears',
      amount: exactly(target),
      unit: '°C',
      decimals: 0,
      limits: { low: WASHER.coldest, high: WASHER.mildest },
      says: [
        `Mixed by its label to that, or as it comes. That is about ${inUnit(interpolate(ALCOHOL, target), '%', 0)} of alcohol by volume.`,
        ...(target < -30 ? ['Colder than most mixes bear: empty bottle, pump and hose instead.'] : []),
      ],
      sources: ['memory'],
    },
  ];
};

const DESICCANT: Span = { low: 1, high: 2 };
const desiccant = (): Figure[] => [
  {
    what: 'Desiccant, cabin and trunk together',
    amount: DESICCANT,
    unit: 'kg',
    decimals: 0,
    limits: { low: 0.5, high: 5 },
    says: ['Dry or renew it when the hygrometer passes 55 percent, at the latest after three months.'],
    sources: ['common-practice', 'dehumidifier-maker-article'],
  },
];

const HUMIDITY: Span = { low: 45, high: 50 };
const humidity = ({ stay }: Situation): Figure[] => [
  {
    what: 'Humidity to aim for',
    amount: HUMIDITY,
    unit: '%',
    decimals: 0,
    limits: { low: 35, high: 60 },
    says: [
      stay.place === null
        ? 'Under 60 percent steel hardly rusts; under 35 wood and leather crack.'
        : `By what is told of the place about ${inUnit(humidityOf(stay.place), '%', 0)} on average: ${humidityOf(stay.place) > 60 ? 'it wants drying' : 'good, if the hygrometer agrees'}.`,
    ],
    sources: ['dehumidifier-maker-article', 'tm-38-260', 'memory'],
  },
];

/** mL a bore by displacement of the cylinder, up to so many cm³ (TB 740-97-4, ounces by cubic inches). */
const CUBIC_INCH = 16.387064;
const BORE_OIL = [
  { upTo: 25 * CUBIC_INCH, oil: 15 },
  { upTo: 50 * CUBIC_INCH, oil: 30 },
  { upTo: 75 * CUBIC_INCH, oil: 44 },
  { upTo: Number.POSITIVE_INFINITY, oil: 59 },
] as const;
const ANY_BORE: Span = { low: 15, high: 59 };

/** Oil for one bore of so many cm³, mL. Source: TB 740-97-4 paragraph 29. */
export const boreOil = (displacement: number): number =>
  BORE_OIL.find(({ upTo }) => displacement <= upTo)?.oil ?? ANY_BORE.high;

const cylinderOil = ({ stay: { numbers } }: Situation): Figure[] => {
  const { engine, cylinders } = numbers;
  const bore = engine !== undefined && cylinders !== undefined ? (engine * 1000) / cylinders : null;
  return [
    {
      what: 'Oil for each cylinder',
      amount: bore === null ? ANY_BORE : exactly(boreOil(bore)),
      unit: 'mL',
      decimals: 0,
      limits: ANY_BORE,
      says: [
        bore === null
          ? '15 mL to 410 cm³ a cylinder, 30 to 819, 44 to 1,229, 59 above. Tell displacement and cylinders under “Change the lay-up”.'
          : `${inUnit(engine ?? 0, 'L', 1)} in ${cylinders}: ${inUnit(bore, 'cm³', 0)} each.`,
        'Half of it while turning, half after the last turn; plugs back in with oiled threads.',
      ],
      sources: ['tb-740-97-4'],
    },
  ];
};

const battery = (situation: Situation): Figure[] => {
  const { stay } = situation;
  return (['isolator', 'connected'] as const).flatMap((side) => {
    const told = chargeByReturn(situation, side === 'connected');
    if (!told) return [];
    const freezes = told.freezes?.earliest ?? null;
    return [
      {
        what: side === 'connected' ? 'Charge by then, left connected' : 'Charge by then, disconnected',
        amount: told.charge,
        unit: '%',
        decimals: 0,
        limits: { low: 0, high: 100 },
        says: [
          side === 'connected'
            ? `From full on the parking day, with a drain of ${spanInWords(told.drain, 'mA', 0)}${situation.atParking.some(({ part }) => part.details.drain !== undefined) ? '' : ', where nobody measured it'}.`
            : 'From full on the parking day, by itself only.',
          ...(told.charge.low <= 75 ? ['May fall to three quarters or below: it wants charging meanwhile.'] : []),
          ...(freezes
            ? [`Could freeze there ${daysInWords({ earliest: freezes, latest: null }, '', stay.parkedOn)}.`]
            : []),
        ],
        sources: ['army-recharge-rule', 'standing-drain-bulletin', 'memory'] as const,
      },
    ];
  });
};

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
