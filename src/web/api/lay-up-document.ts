/** A lay-up as the API’s documents: as it is answered, and what a program sends as the acts take it. */
import type { z } from '@hono/zod-openapi';
import { effectsOf } from '../../acts/effects.ts';
import type { StayHere } from '../../acts/stays.ts';
import { CAUTIONS, type CautionKey, DEFERS } from '../../catalogue/cautions.ts';
import { type CivilDate, monthsBetween } from '../../dates/civil.ts';
import type { Finding } from '../../findings/assess.ts';
import { explain } from '../../findings/explain.ts';
import { changesBetween, outlineOf } from '../../plans/changes.ts';
import { figureInWords } from '../../plans/figures/figure.ts';
import { nameOf } from '../../plans/lists.ts';
import { type Look, looksOn } from '../../plans/looks.ts';
import type { Plan, PlanStep } from '../../plans/plan.ts';
import { foundInWords, type Round } from '../../plans/rounds.ts';
import type { StayView } from '../../plans/standing.ts';
import { endOf } from '../../plans/stay.ts';
import { TOPICS, type Topic, type TopicKey } from '../../plans/topics.ts';
import type { Warning } from '../../plans/warnings/warning.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import type { LayUpRow } from '../../store/lay-ups.ts';
import { rounded, sourceOut } from './documents.ts';
import type { LayUpListed, LayUpOut, LookOut, TopicOut } from './schemas/lay-ups.ts';

type Whole = z.infer<typeof LayUpOut>;
type Step = Whole['plan']['steps'][number];

export const isClosed = ({ closedOn }: LayUpRow, on: CivilDate): boolean => closedOn !== null && closedOn <= on;

const about = ({ record: { row }, found, view: { state, on } }: StayHere) => {
  const closed = isClosed(row, on);
  return {
    id: row.id,
    car: { id: row.carId, name: found.car.name },
    state: closed && row.closedHow ? row.closedHow : state,
    parkedOn: row.parkedOn,
    returnOn: row.returnOn,
    closedOn: closed ? row.closedOn : null,
  };
};

export const layUpListed = (here: StayHere): z.infer<typeof LayUpListed> => {
  const { record, view } = here;
  const rounds = isClosed(record.row, view.on) ? [] : view.rounds;
  const next = rounds.find(({ state }) => state === 'due' || state === 'ahead');
  return {
    ...about(here),
    nextRound: next ? roundDue(next) : null,
    missed: rounds.filter(({ state }) => state === 'missed').length,
  };
};

export const layUpOut = (here: StayHere): Whole => {
  const { record, found, place, view } = here;
  const { row } = record;
  const closed = isClosed(row, view.on);
  const { visitorId, phone, circumstances, numbers, papers, choices, note, isTemplate, madeOn, seen } = row;
  return {
    ...about(here),
    on: view.on,
    plannedUntil: endOf(view.stay),
    place: place?.id ?? null,
    visitor: visitorId,
    phone,
    circumstances,
    numbers,
    papers,
    choices,
    note,
    pattern: isTemplate,
    madeOn,
    changes: closed ? [] : changesBetween(seen, outlineOf(view.layUp)),
    plan: planOut(view.layUp, found.parts),
    wakeUp: planOut(view.wakeUp, found.parts),
    roadCheck: closed || view.state === 'ahead' ? null : roadCheckOut(view),
    looks: closed || view.state === 'ahead' ? [] : looksNow(view),
    // Once it is back, nobody is expected any more.
    rounds: roundsUntil(here, closed).map((round) => ({ ...roundDue(round), made: madeOut(round) })),
    found: closed ? [] : view.found.map(foundOut),
    warnings: closed ? [] : view.warnings.map(warningOut),
    defers: DEFERS,
  };
};

const warningOut = ({ key, begins, title, todo, cautions, sources }: Warning): Whole['warnings'][number] => ({
  key,
  begins,
  title,
  todo,
  cautions: inWords(cautions),
  sources: sources.map(sourceOut),
});

const inWords = (keys: readonly CautionKey[]): string[] => keys.map((key) => CAUTIONS[key]);

const planOut = ({ steps, supplies }: Plan, parts: readonly PartOnRecord[]): Whole['plan'] => ({
  steps: steps.map((step) => stepOut(step, parts)),
  supplies: [...supplies],
});

const stepOut = (step: PlanStep, parts: readonly PartOnRecord[]): Step => {
  const { key, phase, day, title, why, because, applies, minutes, needs, lines, records, cautions, sources } = step;
  return {
    key,
    phase,
    day,
    title,
    why,
    because: [...because],
    applies,
    minutes,
    needs: [...needs],
    figures: step.figures.map(figureOut),
    lines: [...lines],
    topic: step.topic && { ...sidesOf(step.topic), side: step.side },
    records: {
      effects: effectsOf(step.records, parts).map((effect) => ({
        key: effect.key,
        does: effect.sort,
        part: effect.part.id,
      })),
      reads: (records.reads ?? []).flatMap(([kind, gauge]) =>
        parts.filter((part) => part.kind === kind).map((part) => ({ part: part.id, gauge })),
      ),
      odometer: records.odometer ?? false,
    },
    cautions: inWords(cautions),
    sources: sources.map(sourceOut),
    tick: step.tick && tickOut(step.tick),
  };
};

const figureOut = (figure: PlanStep['figures'][number]): Step['figures'][number] => {
  const { what, amount, unit, decimals, says, sources } = figure;
  return {
    what,
    amount: amount && { low: rounded(amount.low, decimals), high: rounded(amount.high, decimals) },
    unit,
    text: figureInWords(figure),
    says: [...says],
    sources: sources.map(sourceOut),
  };
};

const tickOut = ({ state, day, by, note, cost }: NonNullable<PlanStep['tick']>) => ({ state, day, by, note, cost });

const sidesOf = (key: TopicKey) => {
  const { name, sides }: Topic = TOPICS[key];
  return { key, name, sides: Object.entries(sides).map(([side, words]) => ({ key: side, ...words })) };
};

const roundsUntil = ({ record: { row }, view: { rounds } }: StayHere, closed: boolean): readonly Round[] =>
  closed ? rounds.filter(({ due, made }) => made || (row.closedOn !== null && due < row.closedOn)) : rounds;

const roundDue = ({ month, due, state }: Round) => ({ month, due, state });

const madeOut = ({ made }: Round): Whole['rounds'][number]['made'] =>
  made && { id: made.id, day: made.day, by: made.by, answers: { ...made.answers }, note: made.note };

const foundOut = ({ look, answer, day, roundId }: StayView['found'][number]): Whole['found'][number] => ({
  look: look.key,
  name: look.name,
  answer: answer?.name ?? '',
  verdict: answer?.verdict ?? 'watch',
  todo: answer?.todo ?? null,
  day,
  round: roundId,
  cautions: inWords(look.cautions),
});

/** By the round that is due, or as many months as it stands by then. */
const looksNow = ({ rounds, situation, stay, on }: StayView): string[] =>
  looksOn(situation, rounds.find(({ state }) => state === 'due')?.month ?? monthsBetween(stay.parkedOn, on)).map(
    ({ key }) => key,
  );

const roadCheckOut = ({ roadCheck }: StayView): Whole['roadCheck'] => {
  const { answer, against, found, unchecked, due } = roadCheck;
  return {
    answer,
    against: reasons(against),
    found: found.map(foundInWords),
    unchecked: reasons(unchecked),
    due: reasons(due),
  };
};

const reasons = (findings: readonly Finding[]) =>
  findings.map((finding) => ({
    part: finding.part.id,
    name: nameOf(finding),
    standing: finding.standing,
    age: explain(finding).age,
  }));

export const lookOut = ({
  key,
  name,
  how,
  every = 1,
  when,
  answers,
  cautions,
  sources,
}: Look): z.infer<typeof LookOut> => ({
  key,
  name,
  how,
  every,
  always: when.length === 0,
  answers: Object.entries(answers).map(([answer, { name: words, verdict, todo = null }]) => ({
    key: answer,
    name: words,
    verdict,
    todo,
  })),
  cautions: inWords(cautions),
  sources: sources.map(sourceOut),
});

export const topicOut = (key: TopicKey): z.infer<typeof TopicOut> => ({
  ...sidesOf(key),
  evidence: TOPICS[key].evidence,
  sources: TOPICS[key].sources.map(sourceOut),
});
