/** May it move today: go, local only, or no. The reasons against first, then what was not checked, then what is due. */
import type { SourceKey } from '../catalogue/sources.ts';
import { addDays, type CivilDate } from '../dates/civil.ts';
import { limitOn } from '../dates/limit.ts';
import type { Finding } from '../findings/assess.ts';
import { explain } from '../findings/explain.ts';
import type { CarFacts, Claim } from '../findings/facts.ts';
import { nameOf } from './lists.ts';
import { ASIDE, againstByRecord, BRAKE_FLUIDS, TIRES } from './road-check.ts';
import { WALK_KEYS, type Walkround, walkLook } from './walkround.ts';

const ROAD_ANSWERS = ['no', 'local only', 'go'] as const;
export type RoadAnswer = (typeof ROAD_ANSWERS)[number];

/** What a local drive is; from memory. */
export const LOCAL = 'daylight, dry, under 50 km/h (30 mph), under 10 km (6 miles), a phone, somebody who knows';

export interface RoadFacts {
  on: CivilDate;
  car: CarFacts;
  findings: readonly Finding[];
  /** Its last stay or sleep, ended or not: since when, and what the odometer read then. */
  sleep: { since: CivilDate; months: number; km: number | null } | null;
  /** The walk round of this very day. */
  walk: Walkround | null;
  /** Gates of safety of a return under way that are not passed on their evidence. */
  gates: readonly { name: string; inWriting: boolean }[];
  /** A return is under way whose road tests are still to come. */
  testing: boolean;
  /** What rounds found that speaks against it, in words. */
  found: readonly string[];
}

/** One reason; `answer` is the most it leaves. */
export interface RoadReason {
  answer: 'no' | 'local only';
  words: string;
  partId: string | null;
  sources: readonly SourceKey[];
}

export interface RoadToday {
  answer: RoadAnswer;
  against: readonly RoadReason[];
  unchecked: readonly RoadReason[];
  due: readonly Finding[];
  /** What the answer rests on; shown with every answer but no. */
  rests: readonly string[];
}

/** Missing data never clears: what is undated counts as the oldest it can be, what nobody looked at today as not in order. */
export const roadToday = (facts: RoadFacts): RoadToday => {
  const { findings, walk, gates, found } = facts;
  const seen = seenToday(walk);
  const judged = findings
    .filter(({ kind }) => !ASIDE.includes(kind.key))
    .map((one) => ({ one, reason: judge(one, seen, facts) }));
  const reasons = judged.flatMap(({ reason }) => (reason ? [reason] : []));
  const against = [
    ...gates.map(({ name, inWriting }) => gateReason(name, inWriting)),
    ...(facts.testing ? [TESTING] : []),
    ...walkAgainst(walk),
    ...found.map((words): RoadReason => ({ answer: 'no', words, partId: null, sources: PRACTICE })),
    ...reasons.filter(({ open }) => !open),
    ...firstDrive(facts),
    ...freshWork(facts),
  ].toSorted((a, b) => RANK.indexOf(a.answer) - RANK.indexOf(b.answer));
  const unchecked = [...walkUnchecked(walk), ...reasons.filter(({ open }) => open)].toSorted(
    (a, b) => RANK.indexOf(a.answer) - RANK.indexOf(b.answer),
  );
  const all = [...against, ...unchecked];
  return {
    answer: all.some(({ answer }) => answer === 'no') ? 'no' : all.length > 0 ? 'local only' : 'go',
    against,
    unchecked,
    due: judged
      .filter(({ one, reason }) => !reason && ['due', 'look', 'past'].includes(one.standing))
      .map(({ one }) => one),
    rests: restsOn(facts),
  };
};

const RANK = ROAD_ANSWERS as readonly string[];
const PRACTICE: readonly SourceKey[] = ['common-practice', 'memory'];

const gateReason = (name: string, inWriting: boolean): RoadReason => ({
  answer: 'no',
  words: inWriting
    ? `Gate of ${name}: passed in writing only, not on its evidence.`
    : `Gate of ${name}: not passed on its return to the road.`,
  partId: null,
  sources: PRACTICE,
});

const TESTING: RoadReason = {
  answer: 'local only',
  words: 'Its road tests are not done: only the one at hand, at its speed.',
  partId: null,
  sources: PRACTICE,
};

/** Kinds somebody looked at today and found well. */
const seenToday = (walk: Walkround | null): ReadonlySet<string> =>
  new Set(
    WALK_KEYS.filter((key) => walk && walkLook(key).answers[walk.answers[key] ?? '']?.verdict === 'good').flatMap(
      (key) => walkLook(key).sees,
    ),
  );

const walkAgainst = (walk: Walkround | null): RoadReason[] =>
  WALK_KEYS.flatMap((key) => {
    const { name, answers, sources } = walkLook(key);
    const answer = answers[walk?.answers[key] ?? ''];
    if (answer?.verdict !== 'act') return [];
    return [{ answer: 'no', words: `${name}: ${answer.words.toLowerCase()}.`, partId: null, sources }];
  });

const walkUnchecked = (walk: Walkround | null): RoadReason[] =>
  WALK_KEYS.filter((key) => !walk || !Object.hasOwn(walkLook(key).answers, walk.answers[key] ?? '')).map((key) => {
    const { name, critical, sources } = walkLook(key);
    return { answer: critical ? 'no' : 'local only', words: `${name}: not looked at today.`, partId: null, sources };
  });

/** Months of age from which tires are local, and are out; brake fluid out. Tire ages as the sources have them, the rest from memory. */
const LIMITS = { tireLocal: 72, tireOut: 120, fluidOut: 36, longSleep: 24 } as const;

type Judged = RoadReason & { open: boolean };

const judge = (finding: Finding, seen: ReadonlySet<string>, { on, sleep }: RoadFacts): Judged | null => {
  const { kind, standing, gravest, since } = finding;
  const safety = kind.severity === 'safety';
  const long = (sleep?.months ?? 0) > LIMITS.longSleep;
  const reason = (answer: RoadReason['answer'], words: string, open = false): Judged => ({
    answer,
    words: `${nameOf(finding)}: ${words}`,
    partId: finding.part.id,
    sources: kind.interval.sources,
    open,
  });
  const age = explain(finding).age;
  const oldest = (months: number): boolean => since?.from != null && limitOn(since.from, months) <= on;
  if (gravest?.verdict === 'act' && safety) return reason('no', 'its last reading asks for action.');
  if (TIRES.includes(kind.key)) {
    if (standing === 'unproven')
      return reason('no', `no date clears it, so it counts as the oldest it can be. ${age}.`);
    if (standing === 'past' || (kind.key === 'tires-road' && oldest(LIMITS.tireOut)))
      return reason('no', `too old. ${age}.`);
    return kind.key === 'tires-road' && oldest(LIMITS.tireLocal)
      ? reason('local only', `over six years. ${age}.`)
      : null;
  }
  if (BRAKE_FLUIDS.includes(kind.key)) {
    if (standing === 'unproven')
      return long
        ? reason('no', 'undated after a sleep of more than two years.')
        : reason('local only', 'nobody can date it: it counts as due.');
    if (oldest(LIMITS.fluidOut) && kind.key === 'brake-fluid-glycol')
      return reason('no', `three years old or more. ${age}.`);
    return standing === 'past' ? reason('local only', `past common practice. ${age}.`) : null;
  }
  if (kind.key === 'wipers' && standing === 'past') return reason('local only', `dry roads only. ${age}.`);
  if (againstByRecord(finding, long)) return reason('no', `past common practice. ${age}.`);
  if (kind.key === 'timing-belt' && standing === 'unproven')
    return reason('no', 'nobody can date it: it counts as due, and it breaks the engine.');
  if (!COUNTED.has(kind.key) && !safety) return null;
  if (standing !== 'unproven') return null;
  return seen.has(kind.key)
    ? reason('local only', 'undated, looked at today.')
    : reason('no', 'undated, and not looked at today.', true);
};

/** Hoses that are not counted as safety in the catalogue and burn or strand all the same. */
const COUNTED: ReadonlySet<string> = new Set(['fuel-hose-low', 'fuel-hose-high', 'tank-hoses', 'brake-hoses']);

/** Km and days within which work on brakes, wheels or steering is fresh; without an odometer the days count. From memory. */
const FRESH = { km: 50, days: 60 } as const;
const FRESH_SYSTEMS = ['brakes', 'steering', 'tires'];

const freshWork = ({ findings, car, on }: RoadFacts): RoadReason[] => {
  const now = car.odometer.findLast(({ day }) => day <= on)?.km ?? null;
  const isFresh = ({ clock, km, from }: Claim): boolean => {
    if (
      !['fitted', 'filled', 'serviced'].includes(clock) ||
      from === null ||
      from > on ||
      from < addDays(on, -FRESH.days)
    )
      return false;
    // Driven past fifty since, by its own figures: settled.
    const known = km ?? car.odometer.findLast(({ day }) => day <= from)?.km ?? null;
    return known === null || now === null || now - known < FRESH.km;
  };
  const fresh = findings.filter(
    ({ kind, part }) => FRESH_SYSTEMS.includes(kind.system) && kind.severity === 'safety' && part.claims.some(isFresh),
  );
  if (fresh.length === 0) return [];
  const names = [...new Set(fresh.map(({ kind }) => kind.name))];
  return [
    {
      answer: 'local only',
      words: `First ${FRESH.km} km after work on ${names.join(', ')}.`,
      partId: null,
      sources: PRACTICE,
    },
  ];
};

/** Not driven since it stood: nothing on its odometer says that it was. */
const firstDrive = ({ sleep, car, on }: RoadFacts): RoadReason[] => {
  if (!sleep) return [];
  const driven = car.odometer.some(
    ({ day, km }) => day > sleep.since && day <= on && sleep.km !== null && km - sleep.km >= LEAST_DRIVEN,
  );
  return driven
    ? []
    : [
        {
          answer: 'local only',
          words: 'First drive since it stood, as far as its odometer tells.',
          partId: null,
          sources: PRACTICE,
        },
      ];
};

/** Km that prove a drive, and not only a move across the yard. Judgement. */
const LEAST_DRIVEN = 5;

const restsOn = ({ findings, walk }: RoadFacts): string[] => {
  const weak = findings.filter(
    ({ kind, since }) =>
      kind.severity === 'safety' &&
      since?.evidence &&
      ['own memory', 'seller’s word', 'assumed'].includes(since.evidence),
  );
  return [
    ...(walk ? [`The walk round of today, by ${walk.by}.`] : []),
    ...(weak.length > 0
      ? [
          `Dates that rest on memory, a seller’s word or an assumption: ${[...new Set(weak.map(({ kind }) => kind.name))].join(', ')}.`,
        ]
      : []),
    'Dates and looks are no proof of condition; inside hoses, cylinders and tires nobody has looked.',
    'Its handbook, the law of the place and a licensed workshop come first.',
  ];
};
