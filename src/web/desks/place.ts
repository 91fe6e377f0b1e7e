/** Where it stands, as the questions of a desk: the climate from a few numbers, and what was assumed of it. */
import { done, type Outcome } from '../../acts/fault.ts';
import { AIRS, ASSUMED, type Place, SHELTERS } from '../../ageing/place.ts';
import { inUnit } from '../../ageing/words.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { Answers } from '../../findings/facts.ts';
import { AIR_WORDS, SHELTER_WORDS } from '../place-words.ts';
import { fault } from './asked.ts';

const DEGREES = { unit: '°C', also: ['°F'], decimals: 0 } as const;

export const PLACE_DETAILS: readonly Detail[] = [
  { key: 'shelter', name: 'Over the car', choices: SHELTER_WORDS },
  { key: 'heatedTo', name: 'Heated to, if it is heated', ...DEGREES, range: [0, 30] },
  { key: 'low', name: 'Coldest night of the winter, outdoors', ...DEGREES, range: [-60, 40] },
  { key: 'high', name: 'Hottest day of the summer, outdoors', ...DEGREES, range: [-20, 60] },
  { key: 'winter', name: 'Winter is around', choices: { january: 'January', july: 'July' } },
  { key: 'air', name: 'The air there', choices: AIR_WORDS },
  {
    key: 'humidity',
    name: 'Humidity where it stands',
    unit: '%',
    range: [5, 100],
    decimals: 0,
    hint: 'Left open: as usual for such air and shelter.',
  },
];

/** The place told, what is left open taken from the assumed one. */
export const placeIn = (answers: Answers): Outcome<Place> => {
  const { low, high, air, shelter, winter, heatedTo, humidity } = answers;
  const place: Place = {
    ...ASSUMED,
    winterLow: typeof low === 'number' ? low : ASSUMED.winterLow,
    summerHigh: typeof high === 'number' ? high : ASSUMED.summerHigh,
    air: AIRS.find((one) => one === air) ?? ASSUMED.air,
    shelter: SHELTERS.find((one) => one === shelter) ?? ASSUMED.shelter,
    hemisphere: winter === undefined ? ASSUMED.hemisphere : winter === 'july' ? 'south' : 'north',
    heatedTo: shelter === 'heated' && typeof heatedTo === 'number' ? heatedTo : null,
    humidity: typeof humidity === 'number' ? humidity : null,
  };
  return place.summerHigh > place.winterLow ? done(place) : fault('high', notWarmer(answers));
};

const notWarmer = ({ low, high }: Answers): string => {
  if (high === undefined)
    return `Give the hottest day, too: the one assumed, ${inUnit(ASSUMED.summerHigh, '°C', 0)}, is not warmer than the coldest night.`;
  return low === undefined
    ? `Give the coldest night, too: the one assumed, ${inUnit(ASSUMED.winterLow, '°C', 0)}, is not colder than this day.`
    : 'The hottest day must be warmer than the coldest night.';
};

/** Frost is judged by a night that was told, and never by an assumed one. */
export const isNightTold = ({ low }: Answers): boolean => low !== undefined;

export const isPlaceTold = (answers: Answers): boolean => PLACE_DETAILS.some(({ key }) => answers[key] !== undefined);

const IN_WORDS: readonly { key: string; says: string }[] = [
  { key: 'shelter', says: SHELTER_WORDS[ASSUMED.shelter].toLowerCase() },
  { key: 'low', says: `coldest night ${inUnit(ASSUMED.winterLow, '°C', 0)}` },
  { key: 'high', says: `hottest day ${inUnit(ASSUMED.summerHigh, '°C', 0)}` },
  { key: 'winter', says: 'winter around January' },
  { key: 'air', says: `air ${AIR_WORDS[ASSUMED.air].toLowerCase()}` },
];

/** What was left open and is assumed, by name; null where all of it was told. */
export const assumedWords = (answers: Answers): string | null => {
  const open = IN_WORDS.filter(({ key }) => answers[key] === undefined).map(({ says }) => says);
  if (answers.shelter === 'heated' && answers.heatedTo === undefined)
    open.push('heating that keeps some 12 °C on the mean, and no frost away');
  return open.length === 0 ? null : `Not told and assumed: ${open.join('; ')}.`;
};
