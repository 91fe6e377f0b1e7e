/** Documents about returns to the road and the road check. */
import { z } from '@hono/zod-openapi';
import { EVIDENCE } from '../../../findings/facts.ts';
import { LEAK_CLASSES, LEAK_FLUIDS, LEAK_PLACES } from '../../../revival/leaks.ts';
import { HANDS } from '../../../revival/revival.ts';
import { VERSUS } from '../../../revival/runs.ts';
import { PUT_AWAY, STOOD, WHY_PARKED } from '../../../revival/sleep.ts';
import { STAGE_KEYS } from '../../../revival/stages.ts';
import { Day, km, OpenDay, orNull, Span, said, text } from './base.ts';

const keysOf = <K extends string>(of: Readonly<Record<K, unknown>>) => z.enum(Object.keys(of) as [K, ...K[]]);
const StageKey = z.enum(STAGE_KEYS as [string, ...string[]]);

export const RevivalPath = z.object({ revivalId: z.uuid() });
export const RevivalStepPath = RevivalPath.extend({ step: z.string() });
export const GatePath = RevivalPath.extend({ stage: StageKey });
export const StopPath = RevivalPath.extend({ stop: z.string() });

const Sleep = {
  lastRan: text.optional().describe('As people write dates; empty: unknown'),
  lastRanChoice: text.optional().describe('The meaning picked where the text had several'),
  lastRanBy: z.enum(EVIDENCE).optional(),
  why: keysOf(WHY_PARKED).optional(),
  whyWords: text.optional(),
  whyBy: z.enum(EVIDENCE).optional(),
  stood: z.array(keysOf(STOOD)).optional().describe('All that is true; none: nobody has said'),
  putAway: keysOf(PUT_AWAY).optional(),
  putAwayBy: z.enum(EVIDENCE).optional(),
  ceiling: z.number().positive().optional().describe('What may be spent in all, in the collection’s currency'),
  hands: keysOf(HANDS).optional(),
  note: text.optional(),
};

export const RevivalChange = z.object(Sleep).openapi('RevivalChange');
export const RevivalIn = z
  .object({
    ...Sleep,
    car: z.uuid().optional().describe('A car of the collection; or describe one in `newCar`'),
    newCar: z
      .object({
        name: said,
        built: text.optional(),
        quickStart: said,
        ours: z.boolean().describe('False: only looked at; no letter speaks of it'),
      })
      .optional(),
    km: km.optional().describe('Odometer'),
  })
  .openapi('RevivalIn');

const Told = {
  day: Day.optional(),
  by: text.optional().describe('Who did it; absent: the person of the request'),
  note: text.optional(),
};
const Looks = z.record(z.string(), z.union([z.string(), z.number()])).describe('Answers by look: see /looks');

export const LooksIn = z.object({ ...Told, looks: Looks }).openapi('LooksIn');
export const RevivalTickIn = z
  .object({
    ...Told,
    looks: Looks.optional(),
    cost: z.number().min(0).optional(),
    hours: z.number().min(0).optional(),
    despite: text.optional().describe('Why it was done although something was still to come before it'),
    evidence: z.enum(EVIDENCE).optional(),
    km: km.optional(),
    records: z.boolean().optional().describe('False: write nothing into the records of parts; true by default'),
  })
  .openapi('RevivalTickIn');
export const LeaveOutIn = z.object({ ...Told, reason: said }).openapi('LeaveOutIn');
export const RunIn = z
  .object({
    ...Told,
    ended: z.enum(['as planned', 'stopped']),
    driven: z.number().min(0).max(2000).optional().describe('km'),
    hubs: z.number().min(0).max(500).optional().describe('Hottest hub above the coolest, °C'),
    km: km.optional().describe('Odometer after it'),
    notes: z
      .array(z.object({ sense: z.string(), kind: z.string(), versus: z.enum(VERSUS), words: text.optional() }))
      .max(20)
      .optional(),
    despite: text.optional(),
  })
  .openapi('RunIn');
export const LeaksIn = z
  .object({
    ...Told,
    spots: z
      .array(z.object({ place: keysOf(LEAK_PLACES), fluid: keysOf(LEAK_FLUIDS), how: keysOf(LEAK_CLASSES) }))
      .max(40)
      .describe('Empty: all dry'),
  })
  .openapi('LeaksIn');
export const PassIn = z
  .object({ ...Told, inWriting: z.boolean().optional().describe('Go on despite what lacks: needs `by` and `note`') })
  .openapi('PassIn');
export const DecideIn = z.object({ ...Told, ceiling: z.number().positive().optional() }).openapi('DecideIn');
export const EndIn = z
  .object({ how: z.enum(['on the road', 'given up', 'not bought']), despite: text.optional() })
  .openapi('EndIn');

const Cost = z.object({ own: Span, ownHours: Span, workshop: Span, workshopHours: Span }).openapi('Cost');
const Lack = z.object({ key: z.string(), words: z.string() });
const StepOut = z
  .object({
    key: z.string(),
    act: z.string(),
    title: z.string(),
    why: z.string(),
    because: z.array(z.string()),
    state: z.enum(['open', 'again', 'done', 'left out']),
    safety: z.boolean(),
    waits: z.array(Lack),
    expects: z.array(z.object({ finding: z.string(), odds: z.string() })),
    test: z.string().nullable(),
    asks: z.array(z.string()),
    ifItFails: z.string(),
    tools: z.array(z.string()),
    supplies: z.array(z.string()),
    cautions: z.array(z.string()),
    cost: Cost,
    dueBy: OpenDay,
    dueAfterKm: orNull(z.tuple([z.number(), z.number()])),
  })
  .openapi('RevivalStep');

export const RevivalOut = z
  .object({
    id: z.uuid(),
    car: z.uuid(),
    carName: z.string(),
    ours: z.boolean(),
    begunOn: Day,
    closedOn: OpenDay,
    closedHow: z.string().nullable(),
    asleepFromYears: z.number().describe('First year of the row of the trade’s table the plan is made by'),
    doubts: z.array(z.string()),
    currency: z.string(),
    spent: z.number(),
    toCome: Span,
    total: Span,
    stops: z.array(z.object({ key: z.string(), words: z.string(), decidedBy: z.string().nullable() })),
    stages: z.array(
      z.object({
        key: z.string(),
        name: z.string(),
        gate: z.object({
          state: z.enum(['shut', 'ready', 'passed', 'in writing']),
          safety: z.boolean(),
          asks: z.string(),
          lacks: z.array(Lack),
          written: z.array(Lack),
        }),
        steps: z.array(StepOut),
      }),
    ),
  })
  .openapi('Revival');

export const VerdictOut = z
  .object({
    grave: z.array(z.string()),
    must: z.array(z.string()),
    likely: z.array(z.object({ finding: z.string(), odds: z.string() })),
    notLooked: z.array(z.string()),
    undated: z.array(z.string()),
    doubts: z.array(z.string()),
    own: Span,
    workshop: Span,
    currency: z.string(),
  })
  .openapi('Verdict');

export const LookCatalogue = z.object({
  looks: z.array(
    z.object({
      key: z.string(),
      name: z.string(),
      how: z.string(),
      unit: z.string().nullable().describe('Where a number answers'),
      answers: z.array(z.object({ key: z.string(), words: z.string(), verdict: z.string() })),
    }),
  ),
});

const Reason = z.object({ answer: z.enum(['no', 'local only']), words: z.string(), part: z.string().nullable() });
export const RoadCheckOut = z
  .object({
    answer: z.enum(['no', 'local only', 'go']),
    against: z.array(Reason),
    unchecked: z.array(Reason),
    due: z.array(z.object({ part: z.string(), name: z.string(), standing: z.string() })),
    rests: z.array(z.string()),
    walkedBy: z.string().nullable(),
  })
  .openapi('RoadCheck');
export const WalkIn = z
  .object({ by: said, note: text.optional(), answers: z.record(z.string(), z.enum(['well', 'badly'])) })
  .openapi('WalkIn');

const Period = z.object({
  from: OpenDay,
  own: Span,
  workshop: Span,
  ownHours: Span,
  items: z.array(
    z.object({ car: z.string(), title: z.string(), day: OpenDay, own: orNull(Span), workshop: orNull(Span) }),
  ),
});
export const YearAheadOut = z
  .object({
    currency: z.string(),
    owed: Period,
    months: z.array(Period),
    years: z.array(Period),
    unjudged: z.number().int(),
  })
  .openapi('YearAhead');
