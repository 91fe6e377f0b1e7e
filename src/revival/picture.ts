/** What the journal adds up to: the last answer to each look, where it leaks, and how the surveys compare. */
import { type Entry, type Survey, those } from './journal.ts';
import {
  CYCLES,
  LEAK_CLASSES,
  LEAK_PLACES,
  type LeakClass,
  type LeakPlace,
  MOMENTS,
  type Moment,
  type Spot,
} from './leaks.ts';
import type { LookKey } from './looks.ts';
import { stepWith } from './steps.ts';

interface Answer {
  answer: string;
  value: number | null;
  /** Place of its entry in the journal. */
  at: number;
}

export interface Picture {
  answers: ReadonlyMap<LookKey, Answer>;
  /** Where drops form or fall, by the last survey of each moment. */
  leaking: ReadonlyMap<LeakPlace, Spot & { at: number }>;
}

export const pictureOf = (entries: readonly Entry[]): Picture => {
  const answers = new Map<LookKey, Answer>();
  const leaking = new Map<Moment, Map<LeakPlace, Spot & { at: number }>>();
  entries.forEach((entry, at) => {
    if (entry.what === 'seen') answers.set(entry.look, { answer: entry.answer, value: entry.value, at });
    if (entry.what === 'tick' && entry.state === 'done')
      for (const { look, answer } of stepWith(entry.step)?.ways.find(({ act }) => act === entry.act)?.leaves ?? [])
        answers.set(look, { answer, value: null, at });
    if (entry.what === 'survey')
      leaking.set(
        entry.moment,
        new Map(entry.spots.filter(({ how }) => how !== 'seeps').map((spot) => [spot.place, { ...spot, at }])),
      );
  });
  return { answers, leaking: new Map([...leaking.values()].flatMap((places) => [...places])) };
};

/** What the leak map says against going on, each with what to do; empty: nothing. */
export const leaksAgainst = (entries: readonly Entry[]): string[] => {
  const last = lastSurveys(entries);
  const spots = [...last.values()].flatMap(({ spots }) => spots);
  return [
    ...new Set([
      ...spots.filter(({ fluid }) => fluid === 'fuel').map(({ place }) => grave('Fuel', place)),
      ...spots.filter(({ fluid }) => fluid === 'brake').map(({ place }) => grave('Brake or clutch fluid', place)),
      ...spots.filter(({ fluid, how }) => how === 'falls' && !GRAVE.includes(fluid)).map(({ place }) => falls(place)),
      ...grown(last).map((place) => `It grew from the first heat to the second: ${place}.`),
    ]),
  ];
};

const GRAVE = ['fuel', 'brake'];
const grave = (fluid: string, place: LeakPlace): string =>
  `${fluid}, however little: ${LEAK_PLACES[place]}. Put right, and that heat surveyed again.`;
const falls = (place: LeakPlace): string =>
  `Drops fall: ${LEAK_PLACES[place]}. Put right, and that heat surveyed again.`;

const lastSurveys = (entries: readonly Entry[]): Map<string, Survey> =>
  new Map(those(entries, 'survey').map((survey) => [`${survey.cycle} ${survey.moment}`, survey]));

const SEVERITY = Object.keys(LEAK_CLASSES) as LeakClass[];

const grown = (last: ReadonlyMap<string, Survey>): string[] => {
  const [first, second] = CYCLES;
  return (Object.keys(MOMENTS) as Moment[]).flatMap((moment) => {
    const before = last.get(`${first} ${moment}`);
    const after = last.get(`${second} ${moment}`);
    if (!before || !after) return [];
    return after.spots
      .filter(({ place, how }) => {
        const then = before.spots.find((spot) => spot.place === place);
        return SEVERITY.indexOf(how) > (then ? SEVERITY.indexOf(then.how) : -1);
      })
      .map(({ place }) => LEAK_PLACES[place]);
  });
};
