/** What the months ask of any car that stands, and stays nobody closed or began. Practice of the trade. */
import { addDays, addMonths, type CivilDate, monthsBetween } from '../../dates/civil.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { endOf, OVERDUE, overdueFrom, type Stay } from '../stay.ts';
import { isTicked, type Warning, type Watched } from './warning.ts';

const SHARED = { cautions: [], sources: ['common-practice'] } as const;

const MONTHS = [
  {
    months: 9,
    title: 'It has stood nine months',
    todo: 'Settle now whether it comes back or stays: fuel, brake fluid, cover and papers are renewed for another year, or the wake-up is booked.',
  },
  {
    months: 12,
    title: 'It has stood a year',
    todo: 'Treat it as a sleeper from now on: weight off the tires, bores oiled, fuel drained or without ethanol, brake fluid when it falls due, a dated plan to wake it.',
  },
] as const;

export const ofMonths = ({ stay, on, ticks }: Watched): Warning[] => [
  ...MONTHS.flatMap(({ months, title, todo }) => {
    const begins = addMonths(stay.parkedOn, months);
    return stay.returnOn !== null && endOf(stay) <= begins && on < overdueFrom(stay.returnOn)
      ? []
      : [{ ...SHARED, key: `stood-${months}`, begins, title, todo }];
  }),
  ...overdue(stay, on),
  ...unparked(stay, ticks),
];

/** Said again every month: until somebody answers, nobody knows whether the car is on the road. */
const overdue = ({ returnOn }: Stay, on: CivilDate): Warning[] => {
  const first = returnOn && overdueFrom(returnOn);
  if (!first || first > on) return [];
  return [
    {
      ...SHARED,
      key: 'overdue',
      begins: addMonths(first, monthsBetween(first, on)),
      title: `It was to come back on ${dayInWords(returnOn)}, and nobody has closed the lay-up`,
      todo: `Close it, or say a later day. Its ordinary letters have begun again: ${count(OVERDUE, 'day')} after that day nobody can say that it still stands.`,
    },
  ];
};

const unparked = ({ parkedOn, madeOn }: Stay, ticks: Watched['ticks']): Warning[] =>
  madeOn > parkedOn || isTicked(ticks, 'park')
    ? []
    : [
        {
          ...SHARED,
          key: 'unparked',
          begins: addDays(parkedOn, OVERDUE),
          title: `Nobody has ticked that it was parked on ${dayInWords(parkedOn)}`,
          todo: 'Is it? Tick the step, move the parking day, or call the lay-up off: its letters are silent meanwhile.',
        },
      ];
