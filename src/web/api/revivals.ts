/** Returns to the road for programs, the road check of each car, and the year ahead. */
import { createRoute, z } from '@hono/zod-openapi';
import {
  beginRevival,
  changeRevivalAct,
  endRevival,
  reopenRevival,
  type SleepGiven,
  takeOn,
} from '../../acts/begin-revival.ts';
import { effectsOf } from '../../acts/effects.ts';
import type { Outcome } from '../../acts/fault.ts';
import { type RevivalHere, revivalHere } from '../../acts/revivals.ts';
import { roadCheckHere, walkRound } from '../../acts/road-check.ts';
import {
  answerLooks,
  decideStop,
  leaveOut,
  passGate,
  recordRun,
  recordSurvey,
  type SaidGiven,
  takeBackStep,
  tickRevivalStep,
} from '../../acts/work-revival.ts';
import { aheadOf } from '../../acts/year-ahead.ts';
import { type RevivalStep, stepIn } from '../../revival/plan.ts';
import type { RunNote } from '../../revival/runs.ts';
import { SENSES, type Sense } from '../../revival/runs.ts';
import type { StageKey } from '../../revival/stages.ts';
import { STOPS, type StopKey } from '../../revival/stops.ts';
import { revivalsOf } from '../../store/revivals.ts';
import { actingIn, type Ctx } from '../visit.ts';
import { noCar } from './in-path.ts';
import { faultsProblem, problem } from './problem.ts';
import { lookCatalogue, revivalOut, roadCheckOut, verdictOut, yearAheadOut } from './revival-document.ts';
import { type Api, body, json, refusal } from './route.ts';
import { CarPath, OnQuery } from './schemas/base.ts';
import {
  DecideIn,
  EndIn,
  GatePath,
  LeaksIn,
  LeaveOutIn,
  LookCatalogue,
  LooksIn,
  PassIn,
  RevivalChange,
  RevivalIn,
  RevivalOut,
  RevivalPath,
  RevivalStepPath,
  RevivalTickIn,
  RoadCheckOut,
  RunIn,
  StopPath,
  VerdictOut,
  WalkIn,
  YearAheadOut,
} from './schemas/revivals.ts';

const REFUSALS = { 404: refusal('There is no such thing here'), 422: refusal('What was wrong') };
const asked = { query: OnQuery, params: RevivalPath };

const hereIn = (c: Ctx): RevivalHere | undefined => {
  const { collection, on } = c.get('visit');
  return revivalHere(c.get('around').store, collection, c.req.param('revivalId') ?? '', on);
};
const noRevival = (c: Ctx) => problem(c, { status: 404, title: 'There is no such return in this collection' });
const noStep = (c: Ctx) => problem(c, { status: 404, title: 'Its plan has no such step' });

/** What is not told of its sleep is not known. */
const sleepOf = ({ ceiling, ...told }: z.infer<typeof RevivalChange>, before?: RevivalHere): SleepGiven => {
  const row = before?.record.row;
  const known: SleepGiven = {
    lastRan: row?.lastRanTyped ?? '',
    lastRanBy: row?.lastRanBy ?? 'own memory',
    why: row?.why ?? 'unknown',
    whyWords: row?.whyWords ?? '',
    whyBy: row?.whyBy ?? 'own memory',
    stood: row?.stood ?? [],
    putAway: row?.putAway ?? 'unknown',
    putAwayBy: row?.putAwayBy ?? 'own memory',
    ceiling: row?.ceiling ? String(row.ceiling) : '',
    hands: row?.hands ?? 'both',
    note: row?.note ?? '',
  };
  const given = Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined));
  return { ...known, ...given, ...(ceiling === undefined ? {} : { ceiling: String(ceiling) }) };
};

const saidIn = (
  c: Ctx,
  { day, by, note }: { day?: string | undefined; by?: string | undefined; note?: string | undefined },
): SaidGiven => ({
  day: day ?? c.get('visit').on,
  by: by ?? '',
  note: note ?? '',
});
const typed = (looks: Readonly<Record<string, string | number>> = {}): Record<string, string> =>
  Object.fromEntries(Object.entries(looks).map(([key, answer]) => [key, String(answer)]));

/** The return as it is after what was done to it. */
const answer = (c: Ctx, outcome: Outcome<unknown>): Response => {
  if (!outcome.ok) return faultsProblem(c, outcome.faults);
  const here = hereIn(c);
  return here ? c.json(revivalOut(here), 200) : noRevival(c);
};

/** A change to one return, answered with the return as it is then. */
const change = <P extends string>(path: P, summary: string, schema: z.ZodType, params: z.ZodObject = RevivalPath) =>
  createRoute({
    method: 'post',
    path: `/revivals/{revivalId}/${path}` as const,
    summary,
    request: { query: OnQuery, params, body: body(schema) },
    responses: { 200: json(RevivalOut, 'The return as it is now'), ...REFUSALS },
  });

export const revivalRoutes = (app: Api): void => {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/looks',
      summary: 'What is looked at on a sleeper, with the answers to choose from',
      responses: { 200: json(LookCatalogue, 'Every look') },
    }),
    (c) => c.json(lookCatalogue(), 200),
  );
  app.openapi(
    createRoute({
      method: 'get',
      path: '/revivals',
      summary: 'The returns to the road of the collection, the last begun first',
      request: { query: OnQuery },
      responses: { 200: json(z.object({ revivals: z.array(RevivalOut) }), 'Open ones and those that are over') },
    }),
    (c) => {
      const { collection, on } = c.get('visit');
      const { store } = c.get('around');
      const rows = revivalsOf(store, collection.id).filter(({ begunOn }) => begunOn <= on);
      return c.json(
        { revivals: rows.flatMap(({ id }) => revivalHere(store, collection, id, on) ?? []).map(revivalOut) },
        200,
      );
    },
  );
  app.openapi(
    createRoute({
      method: 'post',
      path: '/revivals',
      summary: 'Stand before a sleeper: the intake',
      request: { query: OnQuery, body: body(RevivalIn) },
      responses: { 201: json(RevivalOut, 'The return with its plan'), 422: refusal('What was wrong') },
    }),
    (c) => {
      const { car, newCar, km, ...sleep } = c.req.valid('json');
      const visit = c.get('visit');
      const { store } = c.get('around');
      if (!car && !newCar)
        return faultsProblem(c, [{ field: 'car', message: 'Name a car, or describe one in newCar.' }]) as never;
      const outcome = beginRevival(store, actingIn(visit), {
        ...sleepOf(sleep),
        km: km ?? null,
        car: newCar
          ? { name: newCar.name, built: newCar.built ?? '', start: newCar.quickStart, ours: newCar.ours }
          : { carId: car ?? '' },
      });
      if (!outcome.ok) return faultsProblem(c, outcome.faults) as never;
      const here = revivalHere(store, visit.collection, outcome.value, visit.on);
      return here ? c.json(revivalOut(here), 201) : (noRevival(c) as never);
    },
  );
  app.openapi(
    createRoute({
      method: 'get',
      path: '/revivals/{revivalId}',
      summary: 'One return: its stages with steps and gates, its stops and its money',
      request: asked,
      responses: { 200: json(RevivalOut, 'The return'), 404: REFUSALS[404] },
    }),
    (c) => {
      const here = hereIn(c);
      return here ? c.json(revivalOut(here), 200) : (noRevival(c) as never);
    },
  );
  app.openapi(
    createRoute({
      method: 'get',
      path: '/revivals/{revivalId}/verdict',
      summary: 'What must be renewed, what is likely, what nobody knows, and the range of cost',
      request: asked,
      responses: { 200: json(VerdictOut, 'The verdict'), 404: REFUSALS[404] },
    }),
    (c) => {
      const here = hereIn(c);
      return here ? c.json(verdictOut(here), 200) : (noRevival(c) as never);
    },
  );
  app.openapi(change('sleep', 'Change how it slept; what is not named stays', RevivalChange), (c) => {
    const here = hereIn(c);
    if (!here) return noRevival(c) as never;
    const told = RevivalChange.parse(c.req.valid('json'));
    return answer(
      c,
      changeRevivalAct(c.get('around').store, actingIn(c.get('visit')), here, sleepOf(told, here)),
    ) as never;
  });
  app.openapi(change('looks', 'Answer looks', LooksIn), (c) => {
    const here = hereIn(c);
    if (!here) return noRevival(c) as never;
    const told = LooksIn.parse(c.req.valid('json'));
    return answer(
      c,
      answerLooks(c.get('around').store, actingIn(c.get('visit')), here, typed(told.looks), saidIn(c, told)),
    ) as never;
  });
  app.openapi(
    change('steps/{step}/done', 'Tick a step off, with what it answers and writes', RevivalTickIn, RevivalStepPath),
    (c) =>
      onStep(c, (here, step) => {
        const told = RevivalTickIn.parse(c.req.valid('json'));
        return tickRevivalStep(
          c.get('around').store,
          actingIn(c.get('visit')),
          here,
          step,
          {
            ...saidIn(c, told),
            looks: typed(told.looks),
            cost: told.cost === undefined ? '' : String(told.cost),
            hours: told.hours === undefined ? '' : String(told.hours),
            despite: told.despite ?? '',
            evidence: told.evidence ?? 'own memory',
            km: told.km ?? null,
            effects: told.records === false ? [] : effectsOf(step.way, here.found.parts).map(({ key }) => key),
            answers: {},
            readings: [],
          },
          () => '',
        );
      }),
  );
  app.openapi(change('steps/{step}/leave-out', 'Leave a step out, and say why', LeaveOutIn, RevivalStepPath), (c) =>
    onStep(c, (here, step) => {
      const told = LeaveOutIn.parse(c.req.valid('json'));
      return leaveOut(c.get('around').store, actingIn(c.get('visit')), here, step, {
        ...saidIn(c, told),
        note: told.reason,
      });
    }),
  );
  app.openapi(
    change('steps/{step}/take-back', 'Take back the last word on a step', z.object({}), RevivalStepPath),
    (c) => onStep(c, (here, step) => takeBackStep(c.get('around').store, actingIn(c.get('visit')), here, step)),
  );
  app.openapi(change('steps/{step}/run', 'Write a road test down', RunIn, RevivalStepPath), (c) =>
    onStep(c, (here, step) => {
      const told = RunIn.parse(c.req.valid('json'));
      if (!step.run) return { ok: false, faults: [{ field: 'step', message: 'That step is no road test.' }] };
      const notes = (told.notes ?? []).map(({ words, ...note }) => ({ ...note, words: words ?? '' }));
      const strange = notes.findIndex(({ sense, kind }) => !isNote(sense, kind));
      if (strange >= 0)
        return { ok: false, faults: [{ field: `notes/${strange}`, message: 'There is no such note.' }] };
      return recordRun(
        c.get('around').store,
        actingIn(c.get('visit')),
        here,
        step,
        {
          what: 'run',
          run: step.run,
          ended: told.ended,
          km: told.driven ?? null,
          hubs: told.hubs ?? null,
          notes: notes as RunNote[],
        },
        { ...saidIn(c, told), odometer: told.km ?? null, despite: told.despite ?? '' },
      );
    }),
  );
  app.openapi(change('steps/{step}/leaks', 'Write one survey of the leak map down', LeaksIn, RevivalStepPath), (c) =>
    onStep(c, (here, step) => {
      const told = LeaksIn.parse(c.req.valid('json'));
      if (!step.survey) return { ok: false, faults: [{ field: 'step', message: 'That step is no survey.' }] };
      return recordSurvey(
        c.get('around').store,
        actingIn(c.get('visit')),
        here,
        { what: 'survey', ...step.survey, spots: told.spots },
        saidIn(c, told),
      );
    }),
  );
  app.openapi(change('gates/{stage}/pass', 'Pass a gate: on its evidence, or in writing', PassIn, GatePath), (c) => {
    const here = hereIn(c);
    if (!here) return noRevival(c) as never;
    const told = PassIn.parse(c.req.valid('json'));
    return answer(
      c,
      passGate(c.get('around').store, actingIn(c.get('visit')), here, (c.req.param('stage') ?? '') as StageKey, {
        ...saidIn(c, told),
        inWriting: told.inWriting ?? false,
      }),
    ) as never;
  });
  app.openapi(change('stops/{stop}/decide', 'Decide a stop, with a name and a reason', DecideIn, StopPath), (c) => {
    const here = hereIn(c);
    const stop = c.req.param('stop') ?? '';
    if (!here || !Object.hasOwn(STOPS, stop)) return noRevival(c) as never;
    const told = DecideIn.parse(c.req.valid('json'));
    return answer(
      c,
      decideStop(c.get('around').store, actingIn(c.get('visit')), here, stop as StopKey, {
        ...saidIn(c, told),
        ceiling: told.ceiling === undefined ? '' : String(told.ceiling),
      }),
    ) as never;
  });
  app.openapi(change('take-on', 'A car that was only looked at joins the collection', z.object({})), (c) => {
    const here = hereIn(c);
    if (!here) return noRevival(c) as never;
    return answer(c, takeOn(c.get('around').store, actingIn(c.get('visit')), here)) as never;
  });
  app.openapi(change('end', 'End it: on the road, given up, or not bought', EndIn), (c) => {
    const here = hereIn(c);
    if (!here) return noRevival(c) as never;
    const told = EndIn.parse(c.req.valid('json'));
    return answer(
      c,
      endRevival(c.get('around').store, actingIn(c.get('visit')), here, told.how, told.despite ?? ''),
    ) as never;
  });
  app.openapi(change('reopen', 'Take an ending back that was a slip', z.object({})), (c) => {
    const here = hereIn(c);
    if (!here) return noRevival(c) as never;
    return answer(c, reopenRevival(c.get('around').store, actingIn(c.get('visit')), here)) as never;
  });
  roadCheckRoutes(app);
};

const onStep = (c: Ctx, act: (here: RevivalHere, step: RevivalStep) => Outcome<unknown>): never => {
  const here = hereIn(c);
  if (!here) return noRevival(c) as never;
  const step = stepIn(here.plan, c.req.param('step') ?? '');
  return (step ? answer(c, act(here, step)) : noStep(c)) as never;
};

const isNote = (sense: string, kind: string): boolean =>
  Object.hasOwn(SENSES, sense) && (SENSES[sense as Sense].kinds as readonly string[]).includes(kind);

const roadCheckRoutes = (app: Api): void => {
  const checked = (c: Ctx) =>
    roadCheckHere(c.get('around').store, c.get('visit').collection, c.req.param('carId') ?? '', c.get('visit').on);
  app.openapi(
    createRoute({
      method: 'get',
      path: '/cars/{carId}/road-check',
      summary: 'May it be driven that day: go, local only or no, with every reason and everything not checked',
      request: { query: OnQuery, params: CarPath },
      responses: { 200: json(RoadCheckOut, 'The answer'), 404: REFUSALS[404] },
    }),
    (c) => {
      const here = checked(c);
      return here ? c.json(roadCheckOut(here), 200) : (noCar(c) as never);
    },
  );
  app.openapi(
    createRoute({
      method: 'post',
      path: '/cars/{carId}/road-check',
      summary: 'Record the walk round of that day; it counts for that day only',
      request: { query: OnQuery, params: CarPath, body: body(WalkIn) },
      responses: { 200: json(RoadCheckOut, 'The answer after it'), ...REFUSALS },
    }),
    (c) => {
      const here = checked(c);
      if (!here) return noCar(c) as never;
      const { note, ...told } = c.req.valid('json');
      const outcome = walkRound(c.get('around').store, actingIn(c.get('visit')), here.found.car.id, {
        ...told,
        note: note ?? '',
      });
      if (!outcome.ok) return faultsProblem(c, outcome.faults) as never;
      const now = checked(c);
      return now ? c.json(roadCheckOut(now), 200) : (noCar(c) as never);
    },
  );
  app.openapi(
    createRoute({
      method: 'get',
      path: '/year-ahead',
      summary: 'What falls due in the next twelve months and five years, with money and hours',
      request: { query: OnQuery },
      responses: { 200: json(YearAheadOut, 'By month and by year; what is owed already in the first year') },
    }),
    (c) => {
      const { collection, on } = c.get('visit');
      return c.json(yearAheadOut(aheadOf(c.get('around').store, collection, on), collection.currency), 200);
    },
  );
};
