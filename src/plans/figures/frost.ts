/** What coolant and washer fluid have to bear. */
import { strengthen } from '../../ageing/coolant/dilution.ts';
import { freezingPoint, strengthFor } from '../../ageing/coolant/freezing.ts';
import { glycolsIn } from '../../ageing/judge.ts';
import { coldestNight } from '../../ageing/place.ts';
import { clamp, hull } from '../../ageing/span.ts';
import { interpolate, type Row } from '../../ageing/table.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { addMonths, type CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { coolantSample } from '../../findings/coolant-sample.ts';
import type { Situation } from '../situation.ts';
import { extremesOf } from '../stay.ts';
import { exactly, type Figure, find, numberIn } from './figure.ts';

/** Vol %: half and half against corrosion, and the most that still protects more. */
const STRENGTH = { wanted: 50, most: 60 };
/** Kelvin below the coldest night; from practice. */
const MARGIN = 6;
const COLDEST_ASSUMED = -35;

export const coolant = (situation: Situation): Figure[] => {
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

/** Months that a measured strength is taken for the present one. Judgement. */
const FRESH = 12;

/** What was last measured, and what makes it stronger. */
const strengthNow = (fluid: Finding, wanted: number, coldest: number | null): string[] => {
  const samples = fluid.measured.flatMap(({ test, reading }) => {
    const sample = coolantSample(test.gauge, reading, fluid.part.details, coldest);
    return sample ? [{ ...sample, day: reading.day }] : [];
  });
  if (samples.length === 0) return ['Not measured yet: a refractometer tells in five minutes.'];
  const now = hull(samples.map(({ strength }) => strength));
  const day = samples.map((sample) => sample.day).toSorted()[0] as CivilDate;
  const measured = `Measured on ${dayInWords(day)}: ${spanInWords(now, '%', 0)}`;
  if (now.low >= wanted)
    return [
      addMonths(day, FRESH) < fluid.on
        ? `${measured}, which was enough then: measure it again, a top-up thins it.`
        : `${measured}, which is enough if nothing was topped up since.`,
    ];
  const volume = numberIn(fluid, 'volume');
  const exchanged = volume === null ? null : strengthen(volume, now.low, wanted, 100);
  return [
    `${measured}.`,
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

export const washer = ({ stay }: Situation): Figure[] => {
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
