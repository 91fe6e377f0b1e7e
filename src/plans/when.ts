/** Judges conditions against a situation, and tells those that hold in words. */
import { goodUntil } from '../ageing/fuel/life.ts';
import { ASSUMED, humidityOf } from '../ageing/place.ts';
import { FACETS, IMPLIED } from '../catalogue/traits.ts';
import { limitOn } from '../dates/limit.ts';
import { lengthInWords } from '../dates/words.ts';
import type { Finding } from '../findings/assess.ts';
import { factsOf } from '../findings/outlook/fuel.ts';
import { holdsCharge } from './battery-charge.ts';
import type { PartTest, PlaceTest, When } from './conditions.ts';
import type { Situation } from './situation.ts';
import { CIRCUMSTANCES, endOf, extremesOf, type Stay, standsFor } from './stay.ts';
import { TOPICS, type TopicKey } from './topics.ts';

/** °C: from here on antifreeze for an ordinary winter is no longer taken for granted; from memory. */
const HARD_FREEZE = -20;
const HEAT = 35;
/** Relative humidity from which a place counts as damp, %; common practice. */
const DAMP = 75;

/** A place nobody told may freeze and is not heated: only what it cannot be known to be is left out. */
const PLACE_TESTS: Readonly<Record<PlaceTest, { holds(stay: Stay): boolean; words: string }>> = {
  frost: {
    holds: (stay) => stay.place === null || extremesOf(stay, stay.place).low <= 0,
    words: 'it can freeze there',
  },
  'hard freeze': {
    holds: (stay) => stay.place !== null && extremesOf(stay, stay.place).low <= HARD_FREEZE,
    words: 'nights there fall below −20 °C',
  },
  damp: {
    holds: ({ place }) => place !== null && (place.shelter === 'damp' || humidityOf(place) >= DAMP),
    words: 'it is damp there',
  },
  coast: { holds: ({ place }) => place?.air === 'coast', words: 'the air there is salty' },
  heat: {
    holds: (stay) => stay.place !== null && (stay.place.air === 'desert' || extremesOf(stay, stay.place).high >= HEAT),
    words: 'it gets hot there',
  },
  outdoors: {
    holds: ({ place }) => place?.shelter === 'open' || place?.shelter === 'covered',
    words: 'it stands outdoors',
  },
  open: { holds: ({ place }) => place?.shelter === 'open', words: 'nothing is over it' },
  'not heated': { holds: ({ place }) => place?.shelter !== 'heated', words: 'the place is not heated' },
};

const NOBODY_SAID = 'nobody has said where it stands';

/** The reasons that bring it in, each once, in words; null where none of the lists holds. No lists: always, and no reasons. */
export const becauseOf = (lists: readonly When[], situation: Situation): string[] | null => {
  if (lists.length === 0) return [];
  const bring = lists.filter((when) => holds(when, situation));
  if (bring.length === 0) return null;
  const months = Math.max(...bring.map((when) => when.months?.from ?? 0));
  return [
    ...new Set([
      ...bring.flatMap((when) => inWords(when, situation)),
      ...(months > 0 ? [`it stands ${lengthInWords(months)} or longer`] : []),
    ]),
  ];
};

const holds = (when: When, situation: Situation): boolean => {
  const { stay, traits } = situation;
  const { months, circumstances, side, part } = when;
  return (
    (when.traits ?? []).every((trait) => traits.has(trait)) &&
    !(when.without ?? []).some((trait) => traits.has(trait)) &&
    (months?.from === undefined || standsFor(stay, months.from)) &&
    (months?.under === undefined || !standsFor(stay, months.under)) &&
    (when.indoors === undefined || !PLACE_TESTS.outdoors.holds(stay)) &&
    (when.place === undefined || when.place.some((test) => PLACE_TESTS[test].holds(stay))) &&
    (circumstances === undefined || circumstances.some((one) => stay.circumstances.includes(one))) &&
    !(when.spared ?? []).some((one) => stay.circumstances.includes(one)) &&
    (side === undefined || side.is.includes(sideOf(side.topic as TopicKey, situation))) &&
    (when.battery === undefined || holdsCharge(situation, when.battery === 'holds as it is')) &&
    (part === undefined || partsAsked(part, situation).length > 0) &&
    (when.undone === undefined || when.undone.some((step) => situation.undone.has(step))) &&
    (when.done === undefined || when.done.some((step) => situation.done.has(step))) &&
    !(when.lacking ?? []).some((step) => situation.done.has(step)) &&
    (when.untold === undefined || when.untold.some((step) => situation.untold.has(step))) &&
    (when.found === undefined || situation.found.length > 0)
  );
};

/** The side the owner chose, or the one that is usual here. */
export const sideOf = (topic: TopicKey, situation: Situation): string => {
  const { sides } = TOPICS[topic];
  const chosen = situation.stay.choices[topic];
  return chosen !== undefined && Object.hasOwn(sides, chosen) ? chosen : usualSide(topic, situation);
};

export const usualSide = (topic: TopicKey, situation: Situation): string =>
  situation.planned[topic] ??
  ((TOPICS[topic].defaults as readonly { side: string; when: readonly When[] }[]).find(
    ({ when }) => becauseOf(when, situation) !== null,
  )?.side as string);

const ASKED = ['due', 'past', 'unproven'];

/** The parts of these kinds that are asked for, or too old, or undated. */
const partsAsked = (test: PartTest, { stay, atParking, atReturn, renewed }: Situation): readonly Finding[] => {
  const among = (findings: readonly Finding[]) =>
    findings.filter(({ kind }) => test.kinds.includes(kind.key) && !renewed.has(kind.key));
  if ('months' in test) {
    const { months } = test;
    return among(atParking).filter(
      ({ since }) => since === null || since.from === null || limitOn(since.from, months) <= stay.parkedOn,
    );
  }
  if ('over' in test) return among(atReturn).filter((fuel) => isOver(fuel, stay));
  return among(test.asks === 'at parking' ? atParking : atReturn).filter(({ news }) =>
    ASKED.includes(news.calendar.standing),
  );
};

/** All but the least of months, which is told once for all lists. */
/** Months after which fuel nobody can date counts as over; before that a sample tells. From memory. */
const UNDATED_FUEL = 6;

const isOver = (fuel: Finding, stay: Stay): boolean => {
  const facts = factsOf(fuel);
  const stop = facts && goodUntil(facts, stay.place ?? ASSUMED).stop.earliest;
  return stop === null ? standsFor(stay, UNDATED_FUEL) : stop <= endOf(stay);
};

const inWords = (when: When, situation: Situation): string[] => {
  const { stay } = situation;
  const places = (when.place ?? []).filter((test) => PLACE_TESTS[test].holds(stay));
  const said = (when.circumstances ?? []).filter((one) => stay.circumstances.includes(one));
  return [
    ...(when.traits ?? []).map(traitInWords),
    ...(when.months?.under === undefined ? [] : [`it stands less than ${lengthInWords(when.months.under)}`]),
    ...places.slice(0, 1).map((test) => (stay.place === null ? NOBODY_SAID : PLACE_TESTS[test].words)),
    ...said.map((one) => lower(CIRCUMSTANCES[one])),
    ...(when.side
      ? [
          `${stay.choices[when.side.topic] === undefined ? 'usual here' : 'your choice'}: ${sideInWords(when.side.topic as TopicKey, situation)}`,
        ]
      : []),
    ...(when.part ? [partInWords(when.part, situation)] : []),
    ...(when.undone ? ['what was meant for before it stood is not ticked'] : []),
    ...(when.done ? ['it was done before it stood'] : []),
    ...(when.untold ? ['nobody has ticked either way whether it was done'] : []),
    ...(when.found ? ['a round found it'] : []),
  ];
};

const sideInWords = (topic: TopicKey, situation: Situation): string =>
  lower((TOPICS[topic].sides as Record<string, { name: string }>)[sideOf(topic, situation)]?.name ?? '');

const partInWords = (test: PartTest, situation: Situation): string => {
  const [first] = partsAsked(test, situation);
  const name = lower(first?.kind.name ?? '');
  if (first?.since == null || first.since.from === null) return `the date of its ${name} is not known`;
  if ('over' in test) return `by its life its ${name} is over by the day it comes back`;
  if ('months' in test) return `its ${name} is ${lengthInWords(test.months)} old or more by the parking day`;
  return test.asks === 'at parking'
    ? `its ${name} is due or past by the parking day`
    : `its ${name} is due or past by the day it comes back`;
};

const TRAIT_NAMES: ReadonlyMap<string, string> = new Map([
  ...FACETS.flatMap(({ name, traits }) =>
    Object.entries(traits).map(([key, words]) => [key, `${lower(name)}: ${lower(short(words))}`] as const),
  ),
  ...Object.keys(IMPLIED).map((key) => [key, key.replaceAll('-', ' ')] as const),
]);
const traitInWords = (trait: string): string => TRAIT_NAMES.get(trait) ?? trait;

/** A choice without what explains it: “Glycol: DOT 3, 4 or 5.1 (or not known)” is glycol. */
function short(words: string): string {
  return words.replace(/ ?[(:].*$/, '');
}

function lower(text: string): string {
  return /^[A-Z]([a-z]|$| )/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
