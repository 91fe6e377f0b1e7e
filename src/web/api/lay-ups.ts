/** Lay-ups for programs: starting, changing and closing them, their steps, sides and rounds. */
import type { z } from '@hono/zod-openapi';
import { effectsOf } from '../../acts/effects.ts';
import { done, type Fault, type Outcome, refused } from '../../acts/fault.ts';
import {
  addOwnStepAct,
  changeLayUpAct,
  chooseSide,
  closeLayUp,
  NOTHING_SAID,
  startLayUp,
  understand,
} from '../../acts/lay-up.ts';
import { makeRound } from '../../acts/make-round.ts';
import { type StayHere, stayHere } from '../../acts/stays.ts';
import { tellPlan } from '../../acts/tell-plan.ts';
import { skipStep, stepIn, type TickGiven, takeBackTick, tickDone } from '../../acts/tick.ts';
import { dayInWords } from '../../dates/words.ts';
import { LOOKS } from '../../plans/looks.ts';
import type { PlanStep } from '../../plans/plan.ts';
import { TOPICS, type TopicKey } from '../../plans/topics.ts';
import { carWithParts } from '../../store/cars.ts';
import { layUpsOf, removeOwnStep, withdrawRound } from '../../store/lay-ups.ts';
import { stayInPath } from '../lay-ups/in-path.ts';
import { actingIn, type Ctx } from '../visit.ts';
import { seenIn } from './in-path.ts';
import { isClosed, layUpListed, layUpOut, lookOut, topicOut } from './lay-up-document.ts';
import * as route from './lay-up-routes.ts';
import { answersOf, changed, inDocument, placeOf, readingOn, saidOf } from './lay-up-told.ts';
import { faultsProblem, problem } from './problem.ts';
import type { Api } from './route.ts';
import type { ReadingTold, TickIn } from './schemas/lay-ups.ts';

export const layUpRoutes = (app: Api): void => {
  app.openapi(route.list, (c) => {
    const { store, id } = seenIn(c);
    const { on } = c.get('visit');
    const all = layUpsOf(store, id)
      .filter(({ madeOn }) => madeOn <= on)
      .flatMap((row) => stayHere(store, id, row.id, on) ?? []);
    const [past, open] = [true, false].map((closed) =>
      all.filter(({ record }) => isClosed(record.row, on) === closed).map(layUpListed),
    );
    return c.json({ open: open ?? [], past: past ?? [] }, 200);
  });
  // Before the address of one lay-up, which would take their names for its id.
  app.openapi(route.looks, (c) => c.json({ looks: LOOKS.map(lookOut) }, 200));
  app.openapi(route.topics, (c) => c.json({ topics: (Object.keys(TOPICS) as TopicKey[]).map(topicOut) }, 200));

  app.openapi(route.start, (c) => {
    const { store, id } = seenIn(c);
    const visit = c.get('visit');
    const { car, like, ...told } = c.req.valid('json');
    const found = carWithParts(store, id, car);
    if (!found)
      return faultsProblem(c, [{ field: 'car', message: 'There is no such car in this collection.' }]) as never;
    const outcome = startLayUp(store, actingIn(visit), found, changed(NOTHING_SAID, told), like ?? '');
    if (!outcome.ok) return refusedAt(c, outcome.faults) as never;
    const here = stayHere(store, id, outcome.value, visit.on);
    if (!here) return noLayUp(c) as never;
    const writing = { today: visit.on, now: visit.now, href: visit.site.href };
    tellPlan(store, visit.collection, here, writing);
    c.header('Location', addressOf(c, outcome.value));
    return c.json(layUpOut(here), 201);
  });

  app.openapi(route.one, (c) => now(c, 200));

  app.openapi(route.change, (c) =>
    onOpen(c, 200, (here) => {
      const members = c.get('visit').members.map(({ id }) => id);
      const given = changed(saidOf(here, members), c.req.valid('json'));
      return changeLayUpAct(seenIn(c).store, actingIn(c.get('visit')), here, given);
    }),
  );

  app.openapi(route.see, (c) =>
    onOpen(c, 200, (here) => done(understand(seenIn(c).store, actingIn(c.get('visit')), here))),
  );

  app.openapi(route.side, (c) =>
    onOpen(c, 200, (here) => {
      const { topic, side: taken } = c.req.valid('json');
      return chooseSide(seenIn(c).store, actingIn(c.get('visit')), here, topic, taken ?? '');
    }),
  );

  app.openapi(route.tick, (c) => onOpen(c, 201, (here) => ticked(c, here, c.req.valid('json'))));

  app.openapi(route.untick, (c) => {
    const { plan, step } = c.req.valid('param');
    return onOpen(
      c,
      200,
      (here) => {
        const ticked = stepIn(here.view, plan, step);
        return ticked ? takeBackTick(seenIn(c).store, actingIn(c.get('visit')), here, ticked, plan) : done(null);
      },
      ({ view }) => stepIn(view, plan, step)?.tick != null,
    );
  });

  app.openapi(route.addStep, (c) =>
    onOpen(c, 201, (here) => {
      const { days, ...given } = c.req.valid('json');
      return addOwnStepAct(seenIn(c).store, actingIn(c.get('visit')), here, { ...given, days: String(days) });
    }),
  );

  app.openapi(route.removeStep, (c) => {
    const own = ({ record }: StayHere) => record.own.find(({ id }) => id === c.req.valid('param').step);
    return onOpen(
      c,
      200,
      (here) => {
        const { store, id } = seenIn(c);
        const step = own(here);
        if (step) removeOwnStep(store, id, here.record.row.id, step, c.get('visit').on);
        return done(null);
      },
      (here) => own(here) !== undefined,
    );
  });

  app.openapi(route.round, (c) =>
    onOpen(c, 201, (here) => {
      const { on } = c.get('visit');
      const { day = on, answers, readings, note } = c.req.valid('json');
      const strangers = strangersIn(here, readings);
      if (strangers.length > 0) return refused(...strangers);
      const given = { day, note, answers, readings: readings.map(readingOn(day)) };
      return makeRound(seenIn(c).store, actingIn(c.get('visit')), here, given, placeOf);
    }),
  );

  app.openapi(route.takeBackRound, (c) => {
    const { roundId } = c.req.valid('param');
    return onOpen(
      c,
      200,
      (here) => {
        const { store, id } = seenIn(c);
        return done(withdrawRound(store, id, here.record.row.id, roundId, c.get('visit').on));
      },
      ({ record }) => record.rounds.some(({ id }) => id === roundId),
    );
  });

  app.openapi(route.close, (c) =>
    onOpen(c, 200, (here) => {
      const visit = c.get('visit');
      const { day = visit.on, how, odometer, pattern } = c.req.valid('json');
      return closeLayUp(seenIn(c).store, actingIn(visit), here, { day, how, km: odometer ?? null, pattern });
    }),
  );
};

const noLayUp = (c: Ctx) => problem(c, { status: 404, title: 'There is no such lay-up in this collection' });

/** Where a lay-up is, in the collection that the request named. */
const addressOf = (c: Ctx, id: string): string => {
  const named = c.req.query('collection');
  return `${c.get('visit').site.base}/api/v1/lay-ups/${id}${named ? `?collection=${encodeURIComponent(named)}` : ''}`;
};

const now = (c: Ctx, status: 200 | 201): never => {
  const here = stayInPath(c);
  return (here ? c.json(layUpOut(here), status) : noLayUp(c)) as never;
};

/** Does something to a lay-up that is not closed, and to what of it the path names; answers it as it is then. */
const onOpen = (
  c: Ctx,
  status: 200 | 201,
  work: (here: StayHere) => Outcome<unknown>,
  has: (here: StayHere) => boolean = () => true,
): never => {
  const here = stayInPath(c);
  if (!here) return noLayUp(c) as never;
  if (!has(here)) return problem(c, { status: 404, title: 'There is no such thing of this lay-up' }) as never;
  const { row } = here.record;
  if (row.closedOn && isClosed(row, c.get('visit').on))
    return problem(c, {
      status: 422,
      title: `This lay-up was closed on ${dayInWords(row.closedOn)}; its record stays`,
    }) as never;
  const outcome = work(here);
  return outcome.ok ? now(c, status) : (refusedAt(c, outcome.faults) as never);
};

const ticked = (c: Ctx, here: StayHere, given: z.infer<typeof TickIn>): Outcome<unknown> => {
  const { store } = seenIn(c);
  const visit = c.get('visit');
  const { plan, step: key, state, note } = given;
  const step = stepIn(here.view, plan, key);
  if (!step) return refused({ field: 'step', message: `There is no step “${key}” in this plan.` });
  // Sent twice, it would renew twice.
  if (step.tick)
    return refused({
      field: 'step',
      message: `It was ticked on ${dayInWords(step.tick.day)}: take that back first.`,
    });
  if (state === 'skipped') return skipStep(store, actingIn(visit), here, step, plan, note);
  const all = effectsOf(step.records, here.found.parts).map((effect) => effect.key);
  const { day = visit.on, cost, evidence = 'own memory', effects = all, answers = {}, readings = [], odometer } = given;
  const faults = [...unwantedIn(step, here, effects, Object.keys(answers)), ...strangersIn(here, readings)];
  if (faults.length > 0) return refused(...faults);
  const tick: TickGiven = {
    day,
    note,
    by: given.by,
    cost: String(cost ?? ''),
    evidence,
    km: odometer ?? null,
    effects,
    answers: answersOf(step, here, answers),
    readings: readings.map(readingOn(day)),
  };
  return tickDone(store, actingIn(visit), here, step, plan, tick, placeOf);
};

/** Effects the step has not got, and answers about what is not renewed: neither is passed over in silence. */
const unwantedIn = (
  step: PlanStep,
  { found }: StayHere,
  effects: readonly string[],
  answered: readonly string[],
): Fault[] => {
  const all = effectsOf(step.records, found.parts);
  return [
    ...effects.flatMap((key, index) =>
      all.some((effect) => effect.key === key)
        ? []
        : [{ field: `effects/${index}`, message: `This step has no effect “${key}”.` }],
    ),
    ...answered
      .filter((part) => !effects.includes(`renews:${part}`))
      .map((part) => ({ field: `answers/${part}`, message: 'That part is not renewed by this tick.' })),
  ];
};

const strangersIn = ({ found }: StayHere, readings: readonly ReadingTold[]): Fault[] =>
  readings.flatMap(({ part }, index) =>
    found.parts.some(({ id }) => id === part)
      ? []
      : [{ field: `readings/${index}/part`, message: 'There is no such part on this car.' }],
  );

/** The acts name the fields of the forms: each has its place in the document. */
const refusedAt = (c: Ctx, faults: readonly Fault[]) => {
  const placed = faults.map((fault) => ({ ...fault, field: inDocument(fault.field) }));
  return faultsProblem(
    c,
    // What was asked once for all readings is wrong once.
    placed.filter(({ field }, index) => placed.findIndex((other) => other.field === field) === index),
  );
};
