/** Stays to test with: a usual car, young in all its parts unless told otherwise, put away somewhere for so long. */
import type { Place } from '../../src/ageing/place.ts';
import { KINDS, partsFor } from '../../src/catalogue/kinds.ts';
import { QUICK_STARTS } from '../../src/catalogue/quick-starts.ts';
import { addDays, addMonths, type CivilDate } from '../../src/dates/civil.ts';
import type { CarFacts, Claim, PartFacts } from '../../src/findings/facts.ts';
import { layUpPlan } from '../../src/plans/lay-up.ts';
import type { OwnStep, Plan, PlanStep, Tick } from '../../src/plans/plan.ts';
import type { RoundMade } from '../../src/plans/rounds.ts';
import type { Situation } from '../../src/plans/situation.ts';
import { type StayFacts, situationOf } from '../../src/plans/standing.ts';
import { type Circumstance, NO_PAPERS, type NumberKey, type Papers } from '../../src/plans/stay.ts';
import { wakeUpDays, wakeUpPlan } from '../../src/plans/wake-up.ts';
import { CAR_ID, carOf, dated, kindOf, said } from './parts.ts';

export type StartKey = (typeof QUICK_STARTS)[number]['key'];

/** What is known of the parts of one kind. */
export type PartGiven = Partial<Pick<PartFacts, 'claims' | 'readings' | 'details'>>;

export interface StayGiven {
  start?: StartKey;
  /** Traits in place of, or beside, those of the quick start. */
  with?: readonly string[];
  without?: readonly string[];
  place?: Place | null;
  parkedOn?: CivilDate;
  /** Months it stands, and days on top; null: open. */
  months?: number | null;
  days?: number;
  /** Days before the parking day on which the plan was made. */
  ahead?: number;
  circumstances?: readonly Circumstance[];
  choices?: Readonly<Record<string, string>>;
  numbers?: Readonly<Partial<Record<NumberKey, number>>>;
  papers?: Partial<Papers>;
  parts?: Readonly<Record<string, PartGiven>>;
  car?: Partial<CarFacts>;
  ticks?: readonly Tick[];
  own?: readonly OwnStep[];
  rounds?: readonly RoundMade[];
}

export const PARKED: CivilDate = '2026-11-01';

export const placeOf = (more: Partial<Place> = {}): Place => ({
  winterLow: -12,
  summerHigh: 31,
  air: 'inland',
  shelter: 'unheated',
  humidity: null,
  heatedTo: null,
  hemisphere: 'north',
  months: Array<null>(12).fill(null),
  ...more,
});

export const GARAGE = placeOf();
export const HEATED = placeOf({ shelter: 'heated', heatedTo: 15 });

/** A month old by whatever clock the kind goes by; a printed end is years ahead. */
const young = (kind: string, parkedOn: CivilDate): Claim => {
  const { clock } = kindOf(kind);
  return clock === 'printed' ? dated('printed', addMonths(parkedOn, 72)) : dated(clock, addMonths(parkedOn, -1));
};

/** Claims of a kind that make it so many months old on the parking day. */
export const aged = (kind: string, months: number, parkedOn: CivilDate = PARKED): PartGiven => ({
  claims: [dated(kindOf(kind).clock, addMonths(parkedOn, -months))],
});

export const undated = (kind: string): PartGiven => ({ claims: [said(kindOf(kind).clock, 'unknown')] });

const traitsWith = ({ start = 'roadster-disc-drum-overdrive', with: more = [], without = [] }: StayGiven): string[] => [
  ...(QUICK_STARTS.find(({ key }) => key === start)?.traits ?? []).filter((trait) => !without.includes(trait)),
  ...more,
];

export const stayOf = (given: StayGiven = {}): StayFacts => {
  const { parkedOn = PARKED, months = 5, days = 0, place = GARAGE, parts = {} } = given;
  const traits = traitsWith(given);
  for (const kind of Object.keys(parts)) if (!KINDS.has(kind)) throw new Error(`no kind ${kind}`);
  return {
    stay: {
      id: 'stay',
      carId: CAR_ID,
      parkedOn,
      returnOn: months === null ? null : addDays(addMonths(parkedOn, months), days),
      madeOn: addDays(parkedOn, -(given.ahead ?? 60)),
      place,
      traits,
      circumstances: given.circumstances ?? [],
      choices: given.choices ?? {},
      numbers: given.numbers ?? {},
      papers: { ...NO_PAPERS, ...given.papers },
    },
    car: carOf(given.car),
    parts: partsFor(traits).map(({ kind, position }, n) => ({
      id: `part-${n}`,
      kind,
      position,
      claims: [young(kind, parkedOn)],
      readings: [],
      details: {},
      ...parts[kind],
    })),
    overrides: [],
    ticks: given.ticks ?? [],
    own: given.own ?? [],
    rounds: given.rounds ?? [],
  };
};

export const situationWith = (given: StayGiven = {}): Situation => situationOf(stayOf(given));

export const layUpWith = (given: StayGiven = {}): Plan => {
  const { ticks, own } = stayOf(given);
  return layUpPlan(situationWith(given), { ticks, own });
};

/** What became of a lay-up: its steps by what was ticked, and what rounds found. */
export interface Became {
  done?: readonly string[];
  undone?: readonly string[];
  untold?: readonly string[];
  found?: readonly string[];
}

/** The plan to wake it, by what of the lay-up was done, what was not, and what nobody told. */
export const wakeUpWith = (
  given: StayGiven,
  { done = [], undone = [], untold = [], found = [] }: Became = {},
): Plan => {
  const situation = {
    ...situationWith(given),
    done: new Set(done),
    undone: new Set(undone),
    untold: new Set(untold),
    found,
  };
  return wakeUpPlan(situation, wakeUpDays(situation.stay, situation.stay.parkedOn));
};

export const keysOf = ({ steps }: Plan): string[] => steps.map(({ key }) => key);

export const stepIn = (plan: Plan, key: string): PlanStep => {
  const found = plan.steps.find((step) => step.key === key);
  if (!found) throw new Error(`no step ${key} in the ${plan.name}`);
  return found;
};

export const tick = (plan: Tick['plan'], step: string, day: CivilDate, more: Partial<Tick> = {}): Tick => ({
  plan,
  step,
  state: 'done',
  day,
  by: 'Ada',
  note: '',
  cost: null,
  ...more,
});

export const roundMade = (day: CivilDate, answers: Readonly<Record<string, string>> = {}): RoundMade => ({
  id: `round-${day}`,
  day,
  by: 'Ada',
  answers,
  note: '',
});
