/** One stay of a car: when it is parked and is to come back, where it stands, and what its owner said about that. */
import { monthOn, monthsOf, type Place } from '../ageing/place.ts';
import { addDays, type CivilDate, firstOfMonth, latest, yearOf } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';

/** What else there is to say about where and how it stands; what nobody ticked is taken as not so. */
export const CIRCUMSTANCES = {
  'rented-bay': 'The bay is rented or shared',
  lift: 'It stands on a lift, or another car below it',
  'bare-floor': 'Earth, gravel or grass is under it',
  'no-mains': 'There is no mains socket',
  unwatched: 'Nobody looks in between',
  mice: 'Mice can get in',
  'wheels-off': 'Its road wheels are stored apart',
} as const;
export type Circumstance = keyof typeof CIRCUMSTANCES;

/** Numbers that only the owner or a label can tell. */
export const NUMBERS = {
  dose: { name: 'Stabilizer by its bottle', unit: 'mL per 10 L', range: [2, 200] },
  engine: { name: 'Engine displacement', unit: 'L', range: [0.2, 12] },
  cylinders: { name: 'Cylinders', unit: '', range: [1, 16] },
} as const;
export type NumberKey = keyof typeof NUMBERS;

/** Days on insurer’s and registry’s paper; the rules of the place are the owner’s to write down. */
export interface Papers {
  /** Storage cover begins; cover for the road ends. */
  storageFrom: CivilDate | null;
  roadUntil: CivilDate | null;
  /** Off-road notice, or whatever the place calls it, takes effect. */
  noticeFrom: CivilDate | null;
  /** The policy runs out or renews. */
  renewsOn: CivilDate | null;
  rules: string;
}

export const NO_PAPERS: Papers = { storageFrom: null, roadUntil: null, noticeFrom: null, renewsOn: null, rules: '' };

export interface Stay {
  id: string;
  carId: string;
  parkedOn: CivilDate;
  /** Null: open. */
  returnOn: CivilDate | null;
  /** The plan was made that day: what should have come before it falls on it. */
  madeOn: CivilDate;
  /** Where it stands from the parking day on; null: nobody has said. */
  place: Place | null;
  traits: readonly string[];
  circumstances: readonly Circumstance[];
  /** Chosen side by topic, where the owner chose. */
  choices: Readonly<Record<string, string>>;
  numbers: Readonly<Partial<Record<NumberKey, number>>>;
  papers: Papers;
}

/** A stay with an open end is planned for as long, in months: enough for every step of a long one but those of years. */
const OPEN_STAY = 12;

/** The last day planned for. */
export const endOf = ({ parkedOn, returnOn }: Stay): CivilDate => returnOn ?? limitOn(parkedOn, OPEN_STAY);

/** The day it ended, or would end on a day it is seen: an overdue or open stay goes on. */
export const endedOn = ({ parkedOn, returnOn }: Stay, on: CivilDate): CivilDate =>
  latest(returnOn ?? parkedOn, parkedOn, on);

/** Days after the day it was to come back, from which nobody can say that it still stands. Judgement. */
export const OVERDUE = 14;
export const overdueFrom = (returnOn: CivilDate): CivilDate => addDays(returnOn, OVERDUE);

/** Whether it stands so many months or longer: by days, never by counted months. */
export const standsFor = (stay: Stay, months: number): boolean => endOf(stay) >= limitOn(stay.parkedOn, months);

/** First days of the months it stands through, at most a year of them. */
const monthsStood = (stay: Stay): CivilDate[] => {
  const first = firstOfMonth(yearOf(stay.parkedOn), Number(stay.parkedOn.slice(5, 7)));
  return Array.from({ length: 12 }, (_, n) => limitOn(first, n)).filter((day) => day <= endOf(stay));
};

/** Coldest night and hottest hour while it stands there, °C. */
export const extremesOf = (stay: Stay, place: Place): { low: number; high: number } => {
  const months = monthsStood(stay).map((day) => monthOn(monthsOf(place), day));
  return { low: Math.min(...months.map(({ low }) => low)), high: Math.max(...months.map(({ high }) => high)) };
};
