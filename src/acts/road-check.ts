/** The road check of one car: its records, its last stay or sleep, its return under way and today’s walk round. */
import type { CivilDate } from '../dates/civil.ts';
import { addMonths } from '../dates/civil.ts';
import { findingsOf } from '../findings/car.ts';
import { type RoadToday, roadToday } from '../plans/road-answer.ts';
import { foundBy, foundInWords } from '../plans/rounds.ts';
import { WALK_KEYS, WALKROUND } from '../plans/walkround.ts';
import type { StageKey } from '../revival/stages.ts';
import { type CarWithParts, carWithParts } from '../store/cars.ts';
import { findLayUp, layUpsOf } from '../store/lay-ups.ts';
import type { Store } from '../store/open.ts';
import { overridesOf } from '../store/overrides.ts';
import type { Collection } from '../store/people.ts';
import { revivalsOf } from '../store/revivals.ts';
import { recordWalkround, type WalkroundRow, walkroundOn } from '../store/walkrounds.ts';
import type { Acting } from './add-car.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { isOver, revivalHere } from './revivals.ts';

export interface RoadCheckHere {
  found: CarWithParts;
  walk: WalkroundRow | undefined;
  check: RoadToday;
}

export const roadCheckHere = (
  store: Store,
  collection: Collection,
  carId: string,
  on: CivilDate,
): RoadCheckHere | undefined => {
  const found = carWithParts(store, collection.id, carId);
  if (!found) return undefined;
  const walk = walkroundOn(store, collection.id, carId, on);
  const [revival] = revivalsOf(store, collection.id, carId).filter(({ begunOn }) => begunOn <= on);
  const back = revival && revivalHere(store, collection, revival.id, on);
  const shut =
    back && !isOver(back.record, on)
      ? back.plan.stages.filter(({ gate }) => gate.safety && gate.state !== 'passed')
      : [];
  const [stay] = layUpsOf(store, collection.id, carId).filter(
    ({ madeOn, parkedOn, closedHow }) => madeOn <= on && parkedOn <= on && closedHow !== 'called off',
  );
  const rounds =
    stay && (stay.closedOn === null || stay.closedOn > on) ? findLayUp(store, collection.id, stay.id)?.rounds : [];
  const sleep = latestSleep(found, on, [
    ...(stay ? [{ since: stay.parkedOn, until: stay.closedOn ?? on }] : []),
    ...(revival
      ? [{ since: revival.lastRanFrom ?? found.car.builtFrom ?? revival.begunOn, until: revival.closedOn ?? on }]
      : []),
  ]);
  return {
    found,
    walk,
    check: roadToday({
      on,
      car: found.facts,
      findings: findingsOf(found.facts, found.parts, overridesOf(store, collection.id), on),
      sleep,
      walk: walk ? { answers: walk.answers, by: walk.by } : null,
      gates: shut
        .filter(({ key }) => !TESTS.includes(key))
        .map(({ stage, gate }) => ({ name: stage.name, inWriting: gate.state === 'in writing' })),
      testing: shut.some(({ key }) => TESTS.includes(key)),
      found: foundBy(rounds ?? [], on)
        .filter(({ look, answer }) => look.gate && answer.verdict === 'act')
        .map(foundInWords),
    }),
  };
};

/** Their gates are passed by driving. */
const TESTS: readonly StageKey[] = ['yard', 'road'];

/** The one that ended last, with its length and what the odometer read as it began, or at the first reading after. */
const latestSleep = (
  { facts }: CarWithParts,
  on: CivilDate,
  sleeps: readonly { since: CivilDate; until: CivilDate }[],
): { since: CivilDate; months: number; km: number | null } | null => {
  const [last] = sleeps.toSorted((a, b) => b.until.localeCompare(a.until));
  if (!last) return null;
  const until = last.until < on ? last.until : on;
  const before = facts.odometer.findLast(({ day }) => day <= until);
  return { since: last.since, months: monthsBetween(last.since, until), km: before?.km ?? null };
};

/** Whole months, counted by days that have come. */
const monthsBetween = (from: CivilDate, to: CivilDate): number => {
  let months = 0;
  while (addMonths(from, months + 1) <= to) months++;
  return months;
};

export interface WalkGiven {
  answers: Readonly<Record<string, string>>;
  by: string;
  note: string;
}

/** Writes today’s walk round; looks left empty are not looked at. */
export const walkRound = (
  store: Store,
  { collectionId, today }: Acting,
  carId: string,
  given: WalkGiven,
): Outcome<null> => {
  const answers = Object.fromEntries(
    WALK_KEYS.flatMap((key) => {
      const answer = given.answers[key];
      return answer !== undefined && Object.hasOwn(WALKROUND[key].answers, answer) ? [[key, answer]] : [];
    }),
  );
  const faults: Fault[] = [
    ...(given.by === '' ? [{ field: 'by', message: 'Say who looked: the answer rests on that name.' }] : []),
    ...(Object.keys(answers).length === 0 ? [{ field: 'walk', message: 'Nothing was looked at yet.' }] : []),
  ];
  if (faults.length > 0) return refused(...faults);
  recordWalkround(store, {
    collectionId,
    carId,
    day: today,
    answers,
    by: given.by,
    note: given.note,
    recordedOn: today,
  });
  return done(null);
};
