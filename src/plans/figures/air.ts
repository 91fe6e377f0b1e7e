/** The air in the car and round it. */
import { humidityOf } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { inUnit } from '../../ageing/words.ts';
import type { Situation } from '../situation.ts';
import type { Figure } from './figure.ts';

const DESICCANT: Span = { low: 1, high: 2 };
export const desiccant = (): Figure[] => [
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
export const humidity = ({ stay }: Situation): Figure[] => [
  {
    what: 'Humidity to aim for',
    amount: HUMIDITY,
    unit: '%',
    decimals: 0,
    limits: { low: 35, high: 60 },
    says: [
      stay.place === null
        ? 'Under 60 percent steel hardly rusts; under 35 wood and leather crack.'
        : `By what is told of the place about ${inUnit(humidityOf(stay.place), '%', 0)} on average: ${humidityOf(stay.place) > 60 ? 'it wants drying' : humidityOf(stay.place) < 35 ? 'so dry that wood and leather crack' : 'good, if the hygrometer agrees'}.`,
    ],
    sources: ['dehumidifier-maker-article', 'tm-38-260', 'memory'],
  },
];
