/** The gates: what each still lacks, whether it can be passed, and by whom and how it was. */
import type { Finding } from '../findings/assess.ts';
import { nameOf } from '../plans/lists.ts';
import { type Entry, type Pass, those } from './journal.ts';
import { lookOf } from './looks.ts';
import { leaksAgainst, type Picture } from './picture.ts';
import { STAGE_KEYS, STAGES, type Stage, type StageKey } from './stages.ts';
import { isFor, type PlannedStep } from './step-state.ts';
import type { Stop } from './stops.ts';

/** What keeps a gate shut; its key is what a passing in writing names. */
interface Lack {
  key: string;
  words: string;
}

/**
 * `shut`: something lacks. `ready`: nothing does, and nobody has passed it. `passed`: on its evidence. `in writing`:
 * somebody went on despite what lacks, with a name and a reason; that clears no car for the road.
 */
export type GateState = 'shut' | 'ready' | 'passed' | 'in writing';

export interface Gate {
  stage: StageKey;
  safety: boolean;
  state: GateState;
  lacks: readonly Lack[];
  /** What lacks and was taken on in writing, at this gate or below it. */
  written: readonly Lack[];
  /** The last word on it; it may not hold any more. */
  pass: Entry<Pass> | null;
}

/** A gate rests on its own stage and on every one below it. */
export const gatesOf = (
  steps: readonly PlannedStep[],
  findings: readonly Finding[],
  picture: Picture,
  entries: readonly Entry[],
  stops: readonly Stop[],
  traits: ReadonlySet<string>,
): Gate[] => {
  const passes = new Map(those(entries, 'pass').map((pass) => [pass.stage, pass]));
  const against = leaksAgainst(entries);
  const taken = new Set<string>();
  const gates: Gate[] = [];
  // What stops it shuts the gates still to come: those passed before it came up stay passed.
  const waiting: Lack[] = stops
    .filter(({ decided }) => !decided)
    .map(({ key, words }) => ({ key: `stop:${key}`, words }));
  const below: Lack[] = [];
  for (const key of STAGE_KEYS) {
    below.push(...lacksOf(key, steps, picture, traits));
    if (key === 'tires') below.push(...undatedTires(findings));
    if (key === 'leaks') below.push(...against.map((words) => ({ key: `leak:${words}`, words })));
    const shut = gates.filter(({ state }) => state === 'shut' || state === 'ready');
    const pass = passes.get(key) ?? null;
    const despite = new Set(pass?.despite ?? []);
    const needsNow = (): Lack[] => [
      ...below,
      ...shut.map(({ stage }) => ({ key: `gate:${stage}`, words: gateLacks(stage) })),
    ];
    const holdsOver = (lacks: readonly Lack[]): boolean =>
      pass !== null && lacks.every((lack) => taken.has(lack.key) || despite.has(lack.key));
    const isLast = key === STAGE_KEYS.at(-1);
    if (isLast || !holdsOver(needsNow()) || waiting.some((stop) => despite.has(stop.key)))
      below.push(...waiting.splice(0));
    const needs = needsNow();
    const open = needs.filter((lack) => !taken.has(lack.key));
    const holds = holdsOver(needs);
    if (holds) for (const lack of open) taken.add(lack.key);
    const written = needs.filter((lack) => taken.has(lack.key));
    gates.push({
      stage: key,
      safety: (STAGES[key] as Stage).safety === true,
      state: stateOf(holds, open.length > 0, written.length > 0),
      lacks: holds ? [] : open,
      written,
      pass,
    });
  }
  return gates;
};

/** A new tire counts from its code and not from the day it was fitted: without one nobody can say how old it is. */
const undatedTires = (findings: readonly Finding[]): Lack[] =>
  findings
    .filter(({ kind, news }) => kind.key === 'tires-road' && ['unproven', 'past'].includes(news.calendar.standing))
    .map((finding) => ({
      key: `tire:${finding.part.position}`,
      words: `${nameOf(finding)}: ${finding.news.calendar.standing === 'past' ? 'too old by its date' : 'no date; read its code, and record it at the tire'}.`,
    }));

const stateOf = (holds: boolean, lacking: boolean, written: boolean): GateState => {
  if (!holds) return lacking ? 'shut' : 'ready';
  return written ? 'in writing' : 'passed';
};

const gateLacks = (stage: StageKey): string => `The gate of ${STAGES[stage].name} below it is not passed.`;

const lacksOf = (
  stage: StageKey,
  steps: readonly PlannedStep[],
  picture: Picture,
  traits: ReadonlySet<string>,
): Lack[] => [
  ...steps
    .filter((step) => step.stage === stage && step.safety === true && step.state !== 'done')
    .map(({ key, way, state }) => ({
      key: `step:${key}`,
      words: `${way.title}: ${state === 'left out' ? 'left out' : state === 'again' ? 'to be done again' : 'not done'}.`,
    })),
  ...(STAGES[stage] as Stage).opens
    .filter(({ look }) => isFor(lookOf(look), traits))
    .flatMap(({ look, is }) => {
      const answer = picture.answers.get(look)?.answer;
      if (answer !== undefined && is.includes(answer)) return [];
      const { name, answers } = lookOf(look);
      return [
        {
          key: `look:${look}`,
          words: `${name}: ${answer === undefined ? 'not answered yet' : answers[answer]?.words.toLowerCase()}.`,
        },
      ];
    }),
];
