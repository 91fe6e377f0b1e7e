/** Judges the conditions of a step against what is known of the car, and tells those that hold. */
import type { CivilDate } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';
import { lengthInWords } from '../dates/words.ts';
import type { Finding } from '../findings/assess.ts';
import type { When } from './conditions.ts';
import { LEAK_PLACES } from './leaks.ts';
import { lookOf } from './looks.ts';
import type { Picture } from './picture.ts';
import { PUT_AWAY, ROWS, type Row, type Sleep, STOOD, WHY_PARKED, type Years } from './sleep.ts';
import type { StageKey } from './stages.ts';
import type { Way } from './step.ts';

export interface Situation {
  on: CivilDate;
  traits: ReadonlySet<string>;
  sleep: Sleep;
  row: Row;
  findings: readonly Finding[];
  picture: Picture;
  /** What was made or filled since that day was so after the car went to sleep. */
  awakeFrom: CivilDate;
}

/** One condition that holds, and the place in the journal of what brought it; -1: it was so from the beginning. */
export interface Reason {
  words: string;
  at: number;
}

/** Brakes and wiring of a car that stood wet count as asleep for twenty years. */
const WET_STAGES: ReadonlySet<StageKey> = new Set(['brakes', 'spark', 'wiring']);

/** What brings a way in, each once; null where none of its lists holds. No lists: always, and no reason. */
export const reasonsFor = (way: Way, stage: StageKey, situation: Situation): Reason[] | null => {
  if (way.when.length === 0) return [];
  // Age and sleep ask for nothing more of what was renewed since; only what was seen does.
  const fresh = way.renews !== undefined && areFresh(way.renews, situation);
  const lists = way.when.filter(
    (when) => (!fresh || when.seen !== undefined || when.leak !== undefined) && holds(when, stage, situation),
  );
  if (lists.length === 0) return null;
  const reasons = lists.flatMap((when) => inWords(when, stage, situation));
  return reasons.filter(({ words }, index) => reasons.findIndex((one) => one.words === words) === index);
};

const yearsIn = (stage: StageKey, { row }: Situation): Years => (row.wet && WET_STAGES.has(stage) ? 20 : row.years);

const holds = (when: When, stage: StageKey, situation: Situation): boolean => {
  const { traits, sleep, picture } = situation;
  const years = yearsIn(stage, situation);
  const { asleep, stood, putAway, why, part, seen, unseen, leak } = when;
  return (
    (when.traits ?? []).every((trait) => traits.has(trait)) &&
    !(when.without ?? []).some((trait) => traits.has(trait)) &&
    (asleep?.from === undefined || years >= asleep.from) &&
    (asleep?.under === undefined || years < asleep.under) &&
    (stood === undefined || stood.some((one) => sleep.stood.includes(one))) &&
    (putAway === undefined || putAway.includes(sleep.putAway)) &&
    (why === undefined || why.includes(sleep.why)) &&
    (part === undefined || partsAsked(part, situation).length > 0) &&
    (seen === undefined || seen.is.includes(picture.answers.get(seen.look)?.answer ?? '')) &&
    (unseen === undefined || !picture.answers.has(unseen)) &&
    (leak === undefined || leak.some((place) => picture.leaking.has(place)))
  );
};

const ASKED = ['due', 'past', 'unproven'];

const partsAsked = (part: NonNullable<When['part']>, { findings, on }: Situation): readonly Finding[] =>
  findings.filter(
    ({ kind, since, news }) =>
      part.kinds.includes(kind.key) &&
      ('months' in part
        ? since === null || since.from === null || limitOn(since.from, part.months) <= on
        : ASKED.includes(news.calendar.standing)),
  );

const WEAK = ['seller’s word', 'assumed'];

/** Every such part on the car was made or fitted after it went to sleep, is in date, and that is more than hearsay. */
const areFresh = (kinds: readonly string[], { findings, awakeFrom }: Situation): boolean => {
  const parts = findings.filter(({ kind }) => kinds.includes(kind.key));
  return (
    parts.length > 0 &&
    parts.every(
      ({ since, standing, ruling }) =>
        since !== null &&
        since.from !== null &&
        since.from >= awakeFrom &&
        since.evidence !== null &&
        !WEAK.includes(since.evidence) &&
        (standing === 'in date' || (standing === 'look' && ruling.replaceBy !== null)),
    )
  );
};

const ALWAYS = -1;

const inWords = (when: When, stage: StageKey, situation: Situation): Reason[] => {
  const { sleep, picture } = situation;
  const { asleep, stood, putAway, why, part, seen, unseen, leak } = when;
  const always = (words: readonly string[]): Reason[] => words.map((one) => ({ words: one, at: ALWAYS }));
  const answer = seen && picture.answers.get(seen.look);
  return [
    ...always(asleep ? [asleepInWords(yearsIn(stage, situation))] : []),
    ...always((stood ?? []).filter((one) => sleep.stood.includes(one)).map((one) => `it stood: ${lower(STOOD[one])}`)),
    ...always(putAway ? [`how it was put away: ${lower(PUT_AWAY[sleep.putAway])}`] : []),
    ...always(why ? [`why it was parked: ${lower(WHY_PARKED[sleep.why])}`] : []),
    ...always(part ? [partInWords(part, situation)] : []),
    ...always(unseen ? [`nobody has looked yet: ${lower(lookOf(unseen).name)}`] : []),
    ...(seen && answer
      ? [
          {
            words: `${lower(lookOf(seen.look).name)}: ${lower(lookOf(seen.look).answers[answer.answer]?.words ?? '')}`,
            at: answer.at,
          },
        ]
      : []),
    ...(leak ?? []).flatMap((place) => {
      const spot = picture.leaking.get(place);
      return spot ? [{ words: `it leaks: ${lower(LEAK_PLACES[place])}`, at: spot.at }] : [];
    }),
  ];
};

/** “It counts as asleep for five to ten years.” */
export const asleepInWords = (years: Years): string => {
  const next = ROWS[ROWS.indexOf(years) + 1];
  if (years === 0) return 'it counts as asleep for less than half a year';
  if (years === 0.5) return 'it counts as asleep for half a year to two';
  return next ? `it counts as asleep for ${years} to ${next} years` : 'it counts as asleep for twenty years or more';
};

const partInWords = (part: NonNullable<When['part']>, situation: Situation): string => {
  const [first] = partsAsked(part, situation);
  const name = lower(first?.kind.name ?? '');
  if (first?.since == null || first.since.from === null) return `no date is known of its ${name}`;
  return 'months' in part
    ? `its ${name} can be ${lengthInWords(part.months)} old or older`
    : `its ${name} is due or past by its age`;
};

const lower = (text: string): string =>
  /^[A-Z]([a-z]|$| )/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
