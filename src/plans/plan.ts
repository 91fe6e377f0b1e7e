/** A plan: the steps that apply, each with its day, its reasons, its figures and what became of it. */
import type { CautionKey } from '../catalogue/cautions.ts';
import type { SourceKey } from '../catalogue/sources.ts';
import { addDays, type CivilDate, latest } from '../dates/civil.ts';
import { type Figure, figureInWords } from './figures/figure.ts';
import { figuresOf } from './figures.ts';
import { listsOf } from './lists.ts';
import type { Situation } from './situation.ts';
import type { LayUpPhase, Records, Step, WakeUpPhase } from './step.ts';
import { TOPICS, type TopicKey } from './topics.ts';
import { becauseOf, sideOf } from './when.ts';

export type PlanName = 'lay-up' | 'wake-up';

/** What a person said of a step. */
export interface Tick {
  plan: PlanName;
  step: string;
  state: 'done' | 'skipped';
  day: CivilDate;
  /** Name of who did it. */
  by: string;
  note: string;
  /** In the collection’s currency; null: not told. */
  cost: number | null;
}

/** A step the owner added. */
export interface OwnStep {
  plan: PlanName;
  id: string;
  title: string;
  days: number;
  note: string;
}

export interface PlanStep {
  key: string;
  phase: LayUpPhase | WakeUpPhase | 'own';
  title: string;
  day: CivilDate;
  why: string;
  /** The conditions that brought it in; none: every car gets it, or it was ticked and no longer applies. */
  because: readonly string[];
  /** False where it was ticked, and by today’s facts would not be in the plan. */
  applies: boolean;
  minutes: number | null;
  needs: readonly string[];
  topic: TopicKey | null;
  side: string | null;
  figures: readonly Figure[];
  lines: readonly string[];
  records: Records;
  cautions: readonly CautionKey[];
  sources: readonly SourceKey[];
  tick: Tick | null;
}

export interface Plan {
  name: PlanName;
  steps: readonly PlanStep[];
  /** Everything the open steps need, each once. */
  supplies: readonly string[];
}

/** What a plan counts back from, and the first day anything can fall on. */
export interface Days {
  anchor: CivilDate;
  first: CivilDate;
}

export interface Told {
  ticks: readonly Tick[];
  own: readonly OwnStep[];
}

/** Steps of one plan that apply, in the order of their days and of the work. */
export const planOf = (
  name: PlanName,
  rows: readonly Step[],
  situation: Situation,
  { anchor, first }: Days,
  told: Told,
): Plan => {
  const ticks = new Map(told.ticks.filter(({ plan }) => plan === name).map((tick) => [tick.step, tick]));
  const dayOf = (days: number): CivilDate => notBefore(addDays(anchor, -days), first, anchor);
  const steps = rows.flatMap((row): PlanStep[] => {
    const because = becauseOf(row.when, situation);
    const tick = ticks.get(row.key) ?? null;
    const moot = row.moot?.some((key) => ticks.get(key)?.state === 'done') ?? false;
    if ((because === null || moot) && tick === null) return [];
    const topic = row.topic ?? null;
    return [
      {
        ...row,
        day: dayOf(row.days),
        because: because ?? [],
        applies: because !== null,
        needs: row.needs ?? [],
        topic,
        side: topic && sideOf(topic, situation),
        figures: figuresOf(row.figures ?? [], situation),
        lines: listsOf(row.lists ?? [], situation),
        records: row.records ?? {},
        tick,
      },
    ];
  });
  const own = told.own
    .filter(({ plan }) => plan === name)
    .map(
      ({ id, title, days, note }): PlanStep => ({
        ...OWN,
        key: id,
        title,
        why: note,
        day: dayOf(days),
        tick: ticks.get(id) ?? null,
      }),
    );
  const supplies = suppliesOf(steps);
  const ordering = rows.filter(({ lists }) => lists?.includes('supplies')).map(({ key }) => key);
  const all = [...steps, ...own].map((step) =>
    ordering.includes(step.key) ? { ...step, lines: [...step.lines, ...supplies] } : step,
  );
  return { name, supplies, steps: all.toSorted((a, b) => a.day.localeCompare(b.day)) };
};

const OWN: Omit<PlanStep, 'key' | 'title' | 'why' | 'day' | 'tick'> = {
  phase: 'own',
  because: [],
  applies: true,
  minutes: null,
  needs: [],
  topic: null,
  side: null,
  figures: [],
  lines: [],
  records: {},
  cautions: [],
  sources: [],
};

/** A plan made late begins on its first day; one made after the fact keeps its days. */
const notBefore = (day: CivilDate, first: CivilDate, anchor: CivilDate): CivilDate =>
  first <= anchor ? latest(day, first) : day;

/** Whose amount a figure of the same step tells, by how that figure begins. */
const AMOUNT_OF: Readonly<Record<string, string>> = {
  'fuel stabilizer, in date': 'Stabilizer',
  desiccant: 'Desiccant',
  'winter washer fluid': 'Washer fluid',
};

/** What the open steps need, each once, with its amount where a figure tells it. */
const suppliesOf = (steps: readonly PlanStep[]): string[] => {
  const supplies = new Map<string, string>();
  for (const { needs, figures } of steps.filter(({ tick }) => tick === null))
    for (const need of needs) {
      const of = AMOUNT_OF[need];
      const figure = figures.find(({ what, amount }) => of !== undefined && amount !== null && what.startsWith(of));
      if (figure || !supplies.has(need)) supplies.set(need, figure ? `${need} (${amountIn(figure)})` : need);
    }
  return [...supplies.values()];
};

/** Where it is for each of several, that is said. */
const amountIn = (figure: Figure): string => {
  const words = figureInWords(figure);
  return figure.what.includes('each')
    ? `${words.charAt(0).toLowerCase()}${words.slice(1)}`
    : words.slice(figure.what.length + 2);
};

export const isOpen = ({ tick }: PlanStep): boolean => tick === null;
export const isDone = ({ tick }: PlanStep): boolean => tick?.state === 'done';

/** “Full and treated”, with what its friends say. */
export const sideOfStep = ({ topic, side }: PlanStep): { name: string; says: string } | null =>
  topic && side ? ((TOPICS[topic].sides as Record<string, { name: string; says: string }>)[side] ?? null) : null;

export const figureLines = ({ figures }: PlanStep): string[] => figures.map(figureInWords);
