/** Pressure for the stay, what is lost meanwhile, and wheels off the car. */
import type { Span } from '../../ageing/span.ts';
import { LAY_UP, layUpPressure, lossOver } from '../../ageing/tires/pressure.ts';
import { inUnit } from '../../ageing/words.ts';
import { convert } from '../../catalogue/units.ts';
import { monthsBetween } from '../../dates/civil.ts';
import type { Finding } from '../../findings/assess.ts';
import type { Situation } from '../situation.ts';
import { endOf } from '../stay.ts';
import { sideOf } from '../when.ts';
import { each, exactly, type Figure, numberIn } from './figure.ts';

/** Share of the sidewall’s maximum that a lay-up stays under, or at the placard where that is more; from memory. */
const OF_SIDEWALL = 0.9;
const MOST_PRESSURE = 9;

/** Storage pressure of one tire by the side taken, bar; null: its placard is not told, or lies above its sidewall’s maximum. */
export const storagePressure = (placard: number | null, sidewall: number | null, side: string): Span | null => {
  if (placard === null || (sidewall !== null && sidewall < placard)) return null;
  if (side === 'placard' || sidewall === null) return exactly(placard);
  if (side === 'sidewall') return exactly(sidewall);
  const { low, high } = layUpPressure(placard, Math.max(placard, sidewall * OF_SIDEWALL));
  return { low, high };
};

const tires = ({ atParking }: Situation): Finding[] => atParking.filter(({ kind }) => kind.key === 'tires-road');

export const pressure = (situation: Situation): Figure[] => {
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
    ...(amount === null && placard !== null ? { missing: 'placard and sidewall contradict each other' } : {}),
    unit: 'bar',
    decimals: 1,
    limits: { low: 0, high: MOST_PRESSURE },
    says: [
      placard === null
        ? 'Tell the placard pressure on the tire’s page. Until then: as on the placard, and not below it.'
        : sidewall !== null && sidewall < placard
          ? 'The placard is above what the sidewall allows: one of the two is misread, or the tire is the wrong one. Read both again.'
          : sidewall === null
            ? `Placard ${inUnit(placard, 'bar', 1)}. Without the figure on the sidewall it stays there: read it and more may be put in.`
            : `Placard ${inUnit(placard, 'bar', 1)}, sidewall ${inUnit(sidewall, 'bar', 1)} at most.`,
      ...(side === 'raised' && amount !== null ? [LAY_UP.says[2] as string] : []),
    ],
    sources: LAY_UP.sources,
  }));
};

/** Rubber lets so much through until it comes back. */
export const pressureInSpring = ({ stay }: Situation): Figure[] => [
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

export const pressureOff = (): Figure[] => [
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
