/** Which steps are in the plan, by which way, why, and what became of each. */
import { addDays, type CivilDate } from '../dates/civil.ts';
import type { CarFacts } from '../findings/facts.ts';
import { type Entry, type Run, type Survey, type Tick, those } from './journal.ts';
import { RUNS } from './runs.ts';
import { ROWS } from './sleep.ts';
import { ACTS, type Act, ODDS, type Odds, type Step, type Way } from './step.ts';
import { STEPS } from './steps.ts';
import { type Reason, reasonsFor, type Situation } from './when.ts';

/** `again`: it was done, and something brought it back. */
type StepState = 'open' | 'again' | 'done' | 'left out';

export interface PlannedStep extends Omit<Step, 'expects'> {
  way: Way;
  because: readonly string[];
  state: StepState;
  /** The entry that settled it last. */
  settled: Entry<Tick> | Entry<Run> | Entry<Survey> | null;
  /** All that was said of it, for its cost and hours. */
  ticks: readonly Entry<Tick>[];
  expects: readonly { finding: string; odds: Odds }[];
  due: Due | null;
}

/** When a step of after the first drives is due: by its day, or at a distance, whichever comes first. */
interface Due {
  /** Null: nothing has been driven since. */
  day: CivilDate | null;
  /** Km driven since; and on the odometer where it was read. */
  km: readonly [number, number] | null;
  odometer: readonly [number, number] | null;
}

type Indexed<T> = T & { at: number };

export const stepsOf = (
  situation: Situation,
  entries: readonly Entry[],
  odometer: CarFacts['odometer'],
): PlannedStep[] => {
  const numbered = entries.map((entry, at) => ({ ...entry, at }));
  const ticks = Map.groupBy(
    numbered.filter((entry): entry is Indexed<Entry<Tick>> => entry.what === 'tick'),
    ({ step }) => step,
  );
  return STEPS.filter((step) => isFor(step, situation.traits)).flatMap((step): PlannedStep[] => {
    const own = ticks.get(step.key) ?? [];
    const settled = settledBy(step, numbered) ?? own.at(-1) ?? null;
    const trigger = step.falls ? triggerOf(step.falls, numbered) : null;
    const found = step.falls && !trigger ? null : wayOf(step, situation);
    // What was ticked stays in the plan, by the way it was done, whatever is known by now.
    const ticked = step.ways.find(({ act }) => settled?.what === 'tick' && settled.act === act);
    const way = found?.way ?? ticked;
    if (!way) return [];
    const reasons = [...(found?.reasons ?? []), ...(trigger ? [{ words: trigger.words, at: trigger.at }] : [])];
    const state = stateOf(settled, way, reasons);
    const { expects, ...rest } = step;
    return [
      {
        ...rest,
        way: state === 'done' || state === 'left out' ? (ticked ?? way) : way,
        because: reasons.map(({ words }) => words),
        state,
        settled,
        ticks: own,
        expects: expects.flatMap((one) => expectedIn(one, situation)),
        due: step.falls && trigger ? dueOf(step.falls, trigger, numbered, odometer) : null,
      },
    ];
  });
};

export const isFor = ({ traits, without }: Pick<Step, 'traits' | 'without'>, has: ReadonlySet<string>): boolean =>
  (traits ?? []).every((trait) => has.has(trait)) && !(without ?? []).some((trait) => has.has(trait));

/** The most of its ways that something asks for. */
const wayOf = (step: Step, situation: Situation): { way: Way; reasons: Reason[] } | null => {
  for (const way of step.ways.toReversed()) {
    const reasons = reasonsFor(way, step.stage, situation);
    if (reasons) return { way, reasons };
  }
  return null;
};

/** A road test and a survey settle their own step. */
const settledBy = (
  { run, survey }: Step,
  numbered: readonly Indexed<Entry>[],
): Indexed<Entry<Run> | Entry<Survey>> | undefined =>
  numbered.findLast(
    (entry): entry is Indexed<Entry<Run> | Entry<Survey>> =>
      (entry.what === 'run' && entry.run === run) ||
      (entry.what === 'survey' && entry.cycle === survey?.cycle && entry.moment === survey.moment),
  );

const rank = (act: Act): number => ACTS.indexOf(act);

const stateOf = (settled: PlannedStep['settled'], way: Way, reasons: readonly Reason[]): StepState => {
  if (!settled) return 'open';
  if (settled.what === 'survey') return 'done';
  if (settled.what === 'run') return settled.ended === 'as planned' ? 'done' : 'open';
  const at = (settled as Indexed<Entry<Tick>>).at;
  const news = reasons.some((reason) => reason.at > at);
  if (settled.state === 'left out') return news ? 'open' : 'left out';
  return news || rank(settled.act) < rank(way.act) ? 'again' : 'done';
};

interface Trigger {
  at: number;
  day: CivilDate;
  words: string;
}

/** The last thing that set its distance running. */
const triggerOf = ({ after }: NonNullable<Step['falls']>, numbered: readonly Indexed<Entry>[]): Trigger | null => {
  const entry = numbered.findLast(
    (one) =>
      (one.what === 'run' && one.ended === 'as planned' && (after.runs ?? []).includes(one.run)) ||
      (one.what === 'tick' &&
        one.state === 'done' &&
        ((after.steps ?? []).includes(one.step) || (after.wheels === true && WHEELS.has(one.step)))),
  );
  if (!entry) return null;
  const words =
    entry.what === 'run'
      ? `road test ${RUNS[entry.run].name} was driven`
      : after.wheels
        ? 'wheels were off, or their nuts touched'
        : 'the work it follows is done';
  return { at: entry.at, day: entry.day, words };
};

const WHEELS: ReadonlySet<string> = new Set(STEPS.filter(({ wheels }) => wheels).map(({ key }) => key));

const dueOf = (
  { km, days }: NonNullable<Step['falls']>,
  trigger: Trigger,
  numbered: readonly Indexed<Entry>[],
  odometer: CarFacts['odometer'],
): Due => {
  const drives = those(numbered, 'run').filter(({ run }) => run !== 'a');
  const first = drives.find((drive) => (drive as unknown as Indexed<Entry>).at >= trigger.at);
  const read = odometer.findLast(({ day }) => day <= trigger.day)?.km;
  return {
    day: first ? addDays(first.day, days) : null,
    km,
    odometer: km && read !== undefined ? [read + km[0], read + km[1]] : null,
  };
};

const expectedIn = (
  { finding, odds, worse }: Step['expects'][number],
  { row, sleep }: Situation,
): { finding: string; odds: Odds }[] => {
  const from = ROWS.findLast((years) => years <= row.years && odds[years] !== undefined);
  if (from === undefined) return [];
  const base = ODDS.indexOf(odds[from] as Odds);
  const stood = (worse ?? []).some((one) => sleep.stood.includes(one));
  return [{ finding, odds: ODDS[Math.min(base + (stood ? 1 : 0), ODDS.length - 1)] as Odds }];
};

export const isSettled = ({ state }: PlannedStep): boolean => state === 'done' || state === 'left out';
