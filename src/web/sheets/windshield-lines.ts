/** What the sheet in the windshield can claim: by the steps that make it true, and those that undo it again. */
import type { StayHere } from '../../acts/stays.ts';
import { dayInWords } from '../../dates/words.ts';
import { isDone, isOpen, type PlanStep } from '../../plans/plan.ts';
import { coolantLine, type Line, tireLine } from './measured-lines.ts';

interface Rule {
  step: string;
  line(step: PlanStep, here: StayHere): Line;
  /** Wake-up steps after which it is no longer so. */
  undoneBy: readonly string[];
  /** Of those with the same only the last that was done is so. */
  group?: 'battery' | 'fuel';
}

const always = (line: Line) => (): Line => line;
const dated =
  (name: string, so: string) =>
  ({ tick }: PlanStep): Line => ({ name, so, ...(tick ? { below: `On ${dayInWords(tick.day)}` } : {}) });

const BATTERY = {
  'battery-maintainer': 'on a maintainer',
  'battery-off': 'disconnected',
  'battery-lithium-off': 'disconnected',
  'battery-out': 'out of the car',
  'battery-left': 'connected',
} as const;

const RULES: readonly Rule[] = [
  {
    step: 'pipes-blocked',
    line: always({ name: 'Tailpipe and intake', so: 'blocked' }),
    undoneBy: ['unblock'],
  },
  {
    step: 'chocks',
    line: always({ name: 'Parking brake', so: 'off', below: 'Wheel chocked, both sides:', blank: true }),
    undoneBy: ['brakes-free'],
  },
  {
    step: 'cylinder-oil',
    line: always({ name: 'Bores', so: 'oiled', below: 'Plugs out, turn it by hand first' }),
    undoneBy: ['expel-oil'],
  },
  ...Object.entries(BATTERY).map(
    ([step, so]): Rule => ({
      step,
      line: always({ name: 'Battery', so }),
      undoneBy: ['battery'],
      group: 'battery',
    }),
  ),
  {
    step: 'fuel-fill',
    line: dated('Fuel', 'treated'),
    undoneBy: ['fuel-drain', 'tank-refill'],
    group: 'fuel',
  },
  {
    step: 'diesel-fill',
    line: dated('Winter diesel', 'filled'),
    undoneBy: ['fuel-drain', 'tank-refill'],
    group: 'fuel',
  },
  {
    step: 'drain-tank',
    line: dated('Tank and fuel lines', 'drained'),
    undoneBy: ['fuel-drain', 'tank-refill'],
    group: 'fuel',
  },
  { step: 'pressure', line: tireLine, undoneBy: ['tires'] },
  { step: 'in-gear', line: always({ name: 'Left', so: 'in gear', half: true }), undoneBy: ['clutch', 'brakes-free'] },
  { step: 'belts-slack', line: always({ name: 'Belts', so: 'slack', half: true }), undoneBy: ['belts-tight'] },
  { step: 'gas-valve', line: always({ name: 'Gas valve', so: 'closed', half: true }), undoneBy: ['valve-open'] },
  { step: 'soft-top', line: always({ name: 'Soft top', so: 'up', half: true }), undoneBy: [] },
];

interface Ruled {
  rule: Rule;
  step: PlanStep;
  undone: boolean;
}

export interface Lines {
  /** Ticked and not undone since, or measured. */
  facts: Line[];
  /** Numbers somebody read: no state, and no box. */
  measured: Line[];
  /** In the plan and not ticked. */
  open: Line[];
  skipped: string[];
  undone: string[];
}

export const linesOf = (here: StayHere): Lines => {
  const { layUp, wakeUp } = here.view;
  const woken = new Set(wakeUp.steps.filter(isDone).map(({ key }) => key));
  const ruled = RULES.flatMap((rule): Ruled[] => {
    const step = layUp.steps.find(({ key }) => key === rule.step);
    return step ? [{ rule, step, undone: rule.undoneBy.some((key) => woken.has(key)) }] : [];
  });
  const done = ruled.filter(({ step, undone }) => isDone(step) && !undone);
  const facts = done.filter((one) => !done.some((other) => isOver(one, other)));
  const line = ({ rule, step }: Ruled): Line => rule.line(step, here);
  const names = (some: readonly Ruled[]): string[] =>
    some.map(line).map(({ name, so }) => `${name} ${so}`.trim().toLowerCase());
  return {
    facts: facts.map(line),
    measured: coolantLine(here),
    open: ruled.filter(({ step, undone }) => isOpen(step) && !undone).map(line),
    skipped: names(ruled.filter(({ step, undone }) => step.tick?.state === 'skipped' && !undone)),
    undone: names(ruled.filter(({ step, undone }) => isDone(step) && undone)),
  };
};

/** Whether the same thing was left in another way after this one. */
const isOver = (one: Ruled, other: Ruled): boolean => {
  if (other === one || one.rule.group === undefined || other.rule.group !== one.rule.group) return false;
  const [was, is] = [one.step.tick?.day ?? '', other.step.tick?.day ?? ''];
  return is > was || (is === was && other.step.applies && !one.step.applies);
};
