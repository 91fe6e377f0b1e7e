/** A return to the road, its verdict, the road check and the year ahead as documents. */
import type { z } from '@hono/zod-openapi';
import type { RevivalHere } from '../../acts/revivals.ts';
import type { RoadCheckHere } from '../../acts/road-check.ts';
import type { Ahead } from '../../acts/year-ahead.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import { allTraits } from '../../catalogue/traits.ts';
import { SUPPLIES } from '../../money/supplies.ts';
import type { Period } from '../../money/year-ahead.ts';
import { nameOf } from '../../plans/lists.ts';
import { LOOKS, type LookKey, lookOf } from '../../revival/looks.ts';
import type { RevivalStep } from '../../revival/plan.ts';
import { verdictOf } from '../../revival/verdict.ts';
import type { LookCatalogue, RevivalOut, RoadCheckOut, VerdictOut, YearAheadOut } from './schemas/revivals.ts';

export const revivalOut = ({ record: { row }, found, plan, rates }: RevivalHere): z.infer<typeof RevivalOut> => ({
  id: row.id,
  car: found.car.id,
  carName: found.car.name,
  ours: found.car.ours,
  begunOn: row.begunOn,
  closedOn: row.closedOn,
  closedHow: row.closedHow,
  asleepFromYears: plan.row.years,
  doubts: [...plan.row.doubts],
  currency: rates.currency,
  spent: plan.money.spent,
  toCome: plan.money.estimate,
  total: plan.money.total,
  stops: plan.stops.map(({ key, words, decided }) => ({ key, words, decidedBy: decided?.by ?? null })),
  stages: plan.stages.map(({ key, stage, gate, steps }) => ({
    key,
    name: stage.name,
    gate: {
      state: gate.state,
      safety: gate.safety,
      asks: stage.gate,
      lacks: [...gate.lacks],
      written: [...gate.written],
    },
    steps: steps.map(stepOut),
  })),
});

const stepOut = (step: RevivalStep) => ({
  key: step.key,
  act: step.way.act,
  title: step.way.title,
  why: step.way.why,
  because: [...step.because],
  state: step.state,
  safety: step.safety === true,
  waits: [...step.waits],
  expects: [...step.expects],
  test: step.test,
  asks: [...(step.asks ?? [])],
  ifItFails: step.fails,
  tools: [...step.tools],
  supplies: (step.way.supplies ?? []).map((key) => SUPPLIES[key].name),
  cautions: step.cautions.map((key) => CAUTIONS[key]),
  cost: {
    own: step.cost.own,
    ownHours: step.cost.ownHours,
    workshop: step.cost.workshop,
    workshopHours: step.cost.hours,
  },
  dueBy: step.due?.day ?? null,
  dueAfterKm: step.due?.km ? ([step.due.km[0], step.due.km[1]] as [number, number]) : null,
});

export const verdictOut = ({ plan, found, rates }: RevivalHere): z.infer<typeof VerdictOut> => {
  const { grave, must, likely, unseen, undated, doubts } = verdictOf(plan, allTraits(found.car.traits));
  return {
    grave: grave.map(({ name, words }) => `${name}: ${words}`),
    must: must.map(({ way }) => way.title),
    likely: likely.map(({ finding, odds }) => ({ finding, odds })),
    notLooked: unseen.map(({ look }) => look),
    undated: undated.map(nameOf),
    doubts: [...doubts],
    own: plan.money.open.own,
    workshop: plan.money.open.workshop,
    currency: rates.currency,
  };
};

export const lookCatalogue = (): z.infer<typeof LookCatalogue> => ({
  looks: (Object.keys(LOOKS) as LookKey[]).map((key) => {
    const { name, how, number, answers } = lookOf(key);
    return {
      key,
      name,
      how,
      unit: number?.unit ?? null,
      answers: Object.entries(answers).map(([answer, { words, verdict }]) => ({ key: answer, words, verdict })),
    };
  }),
});

export const roadCheckOut = ({ check, walk }: RoadCheckHere): z.infer<typeof RoadCheckOut> => {
  const reason = ({ answer, words, partId }: (typeof check.against)[number]) => ({ answer, words, part: partId });
  return {
    answer: check.answer,
    against: check.against.map(reason),
    unchecked: check.unchecked.map(reason),
    due: check.due.map((finding) => ({ part: finding.part.id, name: nameOf(finding), standing: finding.standing })),
    rests: check.answer === 'no' ? [] : [...check.rests],
    walkedBy: walk?.by ?? null,
  };
};

const periodOut = ({ from, cost, items }: Period) => ({
  from,
  own: cost.own,
  workshop: cost.workshop,
  ownHours: cost.ownHours,
  items: items.map(({ car, title, day, cost: one }) => ({
    car,
    title,
    day,
    own: one?.own ?? null,
    workshop: one?.workshop ?? null,
  })),
});

export const yearAheadOut = ({ ahead, unjudged }: Ahead, currency: string): z.infer<typeof YearAheadOut> => ({
  currency,
  owed: periodOut(ahead.owed),
  months: ahead.months.map(periodOut),
  years: ahead.years.map(periodOut),
  unjudged,
});
