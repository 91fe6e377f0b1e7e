/** What programs can ask of lay-ups: addresses, what goes in and what comes out. */
import { createRoute, z } from '@hono/zod-openapi';
import { body, json, refusal } from './route.ts';
import { OnQuery } from './schemas/base.ts';
import {
  ClosingIn,
  LayUpChange,
  LayUpIn,
  LayUpListed,
  LayUpOut,
  LayUpPath,
  LookOut,
  Nothing,
  OwnStepIn,
  OwnStepPath,
  RoundIn,
  RoundPath,
  SideIn,
  TickIn,
  TickPath,
  TopicOut,
} from './schemas/lay-ups.ts';

export const list = createRoute({
  method: 'get',
  path: '/lay-ups',
  summary: 'The lay-ups of the collection, open and past',
  request: { query: OnQuery },
  responses: {
    200: json(z.object({ open: z.array(LayUpListed), past: z.array(LayUpListed) }), 'The last parked first'),
  },
});
export const looks = createRoute({
  method: 'get',
  path: '/lay-ups/looks',
  summary: 'What is looked at on a round, with the answers to choose from',
  responses: { 200: json(z.object({ looks: z.array(LookOut) }), 'In the order of the walk round the car') },
});
export const topics = createRoute({
  method: 'get',
  path: '/lay-ups/topics',
  summary: 'Where the trade disagrees: the sides, and what speaks for them',
  responses: { 200: json(z.object({ topics: z.array(TopicOut) }), 'Every topic') },
});
export const start = createRoute({
  method: 'post',
  path: '/lay-ups',
  summary: 'Put a car away: makes its plan and writes the letters that bring it',
  request: { query: OnQuery, body: body(LayUpIn) },
  responses: {
    201: {
      ...json(LayUpOut, 'The lay-up'),
      headers: z.object({ Location: z.string().describe('Where it is') }),
    },
    422: refusal('What was wrong'),
  },
});
export const one = createRoute({
  method: 'get',
  path: '/lay-ups/{layUpId}',
  summary: 'One lay-up: its plan, the way back, rounds, what was found, what warns, what changed',
  request: { params: LayUpPath, query: OnQuery },
  responses: { 200: json(LayUpOut, 'The lay-up'), 404: refusal('No such lay-up') },
});

/** What was changed is answered with the whole lay-up as it is then. */
const changing = <
  Method extends 'post' | 'patch' | 'delete',
  Path extends string,
  Params extends typeof LayUpPath,
  In extends z.ZodType,
  Status extends 200 | 201,
>(
  method: Method,
  path: Path,
  summary: string,
  params: Params,
  document: In,
  status: Status,
) =>
  createRoute({
    method,
    path,
    summary,
    request: { params, query: OnQuery, body: body(document) },
    responses: {
      [status as 200]: json(LayUpOut, 'The lay-up as it is now'),
      404: refusal('Nothing there by that id'),
      422: refusal('What was wrong'),
    },
  });

export const change = changing(
  'patch',
  '/lay-ups/{layUpId}',
  'Change what is known of a stay: only what is named changes, and its plan is made anew',
  LayUpPath,
  LayUpChange,
  200,
);
export const see = changing(
  'post',
  '/lay-ups/{layUpId}/seen',
  'Take the plan as it is now for looked at; send an empty document',
  LayUpPath,
  Nothing,
  200,
);
export const side = changing(
  'post',
  '/lay-ups/{layUpId}/sides',
  'Take a side where the trade disagrees',
  LayUpPath,
  SideIn,
  200,
);
export const tick = changing(
  'post',
  '/lay-ups/{layUpId}/ticks',
  'Tick a step off with all it writes into the car’s records, or leave it out and say why',
  LayUpPath,
  TickIn,
  201,
);
export const untick = changing(
  'delete',
  '/lay-ups/{layUpId}/ticks/{plan}/{step}',
  'Take a tick back; what it wrote into the car’s records stays there. Send an empty document',
  TickPath,
  Nothing,
  200,
);
export const addStep = changing(
  'post',
  '/lay-ups/{layUpId}/steps',
  'Add a step of one’s own to a plan',
  LayUpPath,
  OwnStepIn,
  201,
);
export const removeStep = changing(
  'delete',
  '/lay-ups/{layUpId}/steps/{step}',
  'Take a step of one’s own off the plan; send an empty document',
  OwnStepPath,
  Nothing,
  200,
);
export const round = changing(
  'post',
  '/lay-ups/{layUpId}/rounds',
  'Keep a round: what was seen and what was read, all or nothing',
  LayUpPath,
  RoundIn,
  201,
);
export const takeBackRound = changing(
  'delete',
  '/lay-ups/{layUpId}/rounds/{roundId}',
  'Take a round back that was a slip; what was read stays with the parts. Send an empty document',
  RoundPath,
  Nothing,
  200,
);
export const close = changing(
  'post',
  '/lay-ups/{layUpId}/close',
  'Close a lay-up: the car is back, or was never put away',
  LayUpPath,
  ClosingIn,
  200,
);
