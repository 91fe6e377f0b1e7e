import { z } from '@hono/zod-openapi';
import { VERDICTS } from '../../../ageing/verdict.ts';
import { EVIDENCE } from '../../../findings/facts.ts';
import { LOOKS } from '../../../plans/looks.ts';
import { CIRCUMSTANCES, type Circumstance, NUMBERS, type NumberKey } from '../../../plans/stay.ts';
import { PHASES, WAKE_UP_PHASES } from '../../../plans/step.ts';
import { TOPICS, type TopicKey } from '../../../plans/topics.ts';
import { Day, km, OpenDay, orNull, Source, Span, said, Typed, text } from './base.ts';
import { ReadingIn } from './parts.ts';

const keysOf = <Key extends string>(of: Readonly<Record<Key, unknown>>) => Object.keys(of) as [Key, ...Key[]];
const forgotten = 'null forgets it';
const long = z.string().trim().max(4000, 'at most 4000 characters');

const PLANS = ['lay-up', 'wake-up'] as const;
const PlanOf = z.enum(PLANS).describe('Before it stands, or the way back');
const StepKey = z
  .string()
  .regex(/^[a-z\d-]{1,40}$/, 'is no key of a step')
  .openapi({ example: 'park' });
const LookKey = z.string().refine((key) => LOOKS.some((look) => look.key === key), 'is no key of a look');
const Topic = z.enum(keysOf<TopicKey>(TOPICS));
const CIRCUMSTANCE = z.enum(keysOf<Circumstance>(CIRCUMSTANCES));

export const LayUpPath = z.object({ layUpId: z.uuid() });
export const TickPath = LayUpPath.extend({ plan: z.enum(PLANS), step: StepKey });
export const OwnStepPath = LayUpPath.extend({ step: z.uuid() });
export const RoundPath = LayUpPath.extend({ roundId: z.uuid() });

const inNumber = (key: NumberKey) => {
  const { name, unit, range } = NUMBERS[key];
  return Typed.nullable()
    .optional()
    .describe(`${name}, ${range[0]} to ${range[1]} ${unit}`.trim().concat(`; ${forgotten}`));
};
const paperDay = (what: string) => OpenDay.optional().describe(`${what}; ${forgotten}`);

/** What there is to say of a stay; what is left out stays as it is, or is not said. */
const TOLD = {
  parkedOn: Day.describe('Day it is parked, or was'),
  returnOn: OpenDay.optional().describe('Day it comes back; null: open'),
  place: z.uuid().nullable().optional().describe('Where it stands; null: nobody has said'),
  visitor: z.uuid().nullable().optional().describe('Who looks in; null: whoever gets the letters'),
  phone: text.optional().describe('For the sheet behind the windshield'),
  circumstances: z
    .array(CIRCUMSTANCE)
    .optional()
    .describe(
      `All that are true of this stay: ${Object.entries(CIRCUMSTANCES)
        .map(([key, words]) => `${key} (${words})`)
        .join(', ')}`,
    ),
  numbers: z
    .object({ dose: inNumber('dose'), engine: inNumber('engine'), cylinders: inNumber('cylinders') })
    .optional()
    .describe('For amounts'),
  papers: z
    .object({
      storageFrom: paperDay('Cover while it stands begins'),
      roadUntil: paperDay('Cover for the road ends'),
      noticeFrom: paperDay('Off-road notice takes effect'),
      renewsOn: paperDay('The policy renews or runs out'),
      rules: long.optional().describe('Rules of the place: nothing of them is guessed'),
    })
    .optional(),
  note: long.optional(),
};

export const LayUpIn = z
  .object({
    car: z.uuid(),
    ...TOLD,
    like: z
      .uuid()
      .nullable()
      .optional()
      .describe('An earlier lay-up, whose own steps, steps left out and sides are taken along'),
  })
  .openapi('NewLayUp');

export const LayUpChange = z.object({ ...TOLD, parkedOn: TOLD.parkedOn.optional() }).openapi('LayUpChange');
export type LayUpTold = z.infer<typeof LayUpChange>;

/** Read on this very visit: the day is that of the tick or the round. */
const ReadingThere = z
  .object({ part: z.uuid(), ...ReadingIn.shape })
  .omit({ day: true })
  .openapi('ReadingOnVisit');
export type ReadingTold = z.infer<typeof ReadingThere>;

const DONE_ONLY = ['day', 'cost', 'evidence', 'effects', 'answers', 'readings', 'odometer'] as const;

export const TickIn = z
  .object({
    plan: PlanOf,
    step: StepKey,
    state: z.enum(['done', 'skipped']).describe('Skipped: left out, with the reason as its note'),
    day: Day.optional().describe('Day it was done; the day of the request by default'),
    note: text.default('').describe('What proves it: invoice, batch, who did it; or why it is left out'),
    by: text.default('').describe('Who did it, where that is not who ticks it'),
    cost: Typed.nullable().optional().describe('In the collection’s currency'),
    evidence: z
      .enum(EVIDENCE)
      .exclude(['read on the part'])
      .optional()
      .describe('How that is known; own memory by default'),
    effects: z
      .array(z.string())
      .optional()
      .describe('Keys of those of its effects that go into the car’s records; all by default'),
    answers: z
      .record(z.uuid(), z.record(z.string().regex(/^[a-z\d-]{1,40}$/, 'is no key of a detail'), Typed))
      .optional()
      .describe('About what is renewed: by part, and the detail of its kind (see /kinds)'),
    readings: z.array(ReadingThere).optional(),
    odometer: km.nullable().optional().describe('km, that day'),
  })
  .superRefine(({ state, note, ...rest }, { addIssue }) => {
    if (state === 'done') return;
    if (note === '')
      addIssue({ code: 'custom', path: ['note'], message: 'Say why it is left out: in spring somebody will ask.' });
    for (const name of DONE_ONLY)
      if (rest[name] != null) addIssue({ code: 'custom', path: [name], message: 'only what is done has one' });
  })
  .openapi('NewTick');

export const SideIn = z
  .object({ topic: Topic, side: said.nullable().describe('Null: the usual one again') })
  .openapi('SideTaken');

export const OwnStepIn = z
  .object({
    plan: PlanOf.default('lay-up'),
    title: said,
    days: z.number().int().min(0).max(365).default(0).describe('Days before the car is parked, or comes back'),
    note: text.default(''),
  })
  .openapi('NewStep');

export const RoundIn = z
  .object({
    day: Day.optional().describe('Day it was made; the day of the request by default'),
    answers: z
      .record(LookKey, said)
      .default({})
      .describe('Answers by look (see /lay-ups/looks); what is left out was not looked at')
      .openapi({ example: { smell: 'none', drips: 'spots' } }),
    readings: z.array(ReadingThere).default([]),
    note: long.default(''),
  })
  .openapi('NewRound');

export const ClosingIn = z
  .object({
    how: z.enum(['back', 'called off']).describe('Called off: it was never put away'),
    day: Day.optional().describe('The day of the request by default'),
    odometer: km.nullable().optional().describe('km, that day'),
    pattern: z.boolean().default(true).describe('Whether the next lay-up is offered to begin like this one'),
  })
  .openapi('Closing');

export const Nothing = z.object({}).openapi('EmptyDocument');

const STATES = ['ahead', 'standing', 'back', 'called off'] as const;
const State = z.enum(STATES).describe('Before the parking day, on it and after, or closed by that day');
const Car = z.object({ id: z.uuid(), name: z.string() });

const RoundDue = z.object({
  month: z.number().int().describe('Months since the parking day'),
  due: Day,
  state: z.enum(['done', 'due', 'missed', 'ahead']),
});

export const LayUpListed = z
  .object({
    id: z.uuid(),
    car: Car,
    state: State,
    parkedOn: Day,
    returnOn: OpenDay.describe('Null: open'),
    closedOn: OpenDay,
    nextRound: RoundDue.nullable().describe('Due or ahead; null: it does not stand, or none is left'),
    missed: z.number().int().describe('Rounds nobody made'),
  })
  .openapi('LayUpListed');

const StepOut = z
  .object({
    key: StepKey,
    phase: z.enum([...keysOf(PHASES), ...keysOf(WAKE_UP_PHASES), 'own']),
    day: Day,
    title: z.string(),
    why: z.string(),
    because: z.array(z.string()).describe('What brought it into the plan; none: every car gets it'),
    applies: z.boolean().describe('False: it was ticked, and by what is known today would not be in the plan'),
    minutes: z.number().nullable().describe('Hands on; null: not told'),
    needs: z.array(z.string()),
    figures: z.array(
      z.object({
        what: z.string(),
        amount: orNull(Span).describe('Null: something has to be told first'),
        unit: z.string(),
        text: z.string().describe('In words'),
        says: z.array(z.string()).describe('How it comes about, what was assumed, what is missing'),
        sources: z.array(Source),
      }),
    ),
    lines: z.array(z.string()).describe('About this car: what falls due, what to buy, what the papers say'),
    topic: z
      .object({
        key: Topic,
        name: z.string(),
        side: z.string().nullable().describe('Taken by the owner, or usual here'),
        sides: z.array(z.object({ key: z.string(), name: z.string(), says: z.string() })),
      })
      .nullable()
      .describe('Where the trade disagrees about it'),
    records: z
      .object({
        effects: z.array(z.object({ key: z.string(), does: z.enum(['renews', 'services', 'uses']), part: z.uuid() })),
        reads: z.array(z.object({ part: z.uuid(), gauge: z.string() })).describe('What is read with it'),
        odometer: z.boolean().describe('The odometer is read with it'),
      })
      .describe('What a tick writes into the car’s records'),
    cautions: z.array(z.string()),
    sources: z.array(Source),
    tick: z
      .object({
        state: z.enum(['done', 'skipped']),
        day: Day,
        by: z.string(),
        note: z.string(),
        cost: z.number().nullable(),
      })
      .nullable(),
  })
  .openapi('Step');

const PlanOut = z
  .object({
    steps: z.array(StepOut).describe('In the order of the work'),
    supplies: z.array(z.string()).describe('All that its open steps need'),
  })
  .openapi('Plan');

const Reasons = z.array(
  z.object({ part: z.uuid(), name: z.string(), standing: z.string(), age: z.string().describe('In words') }),
);

export const LayUpOut = z
  .object({
    id: z.uuid(),
    on: Day,
    car: Car,
    state: State,
    parkedOn: Day,
    returnOn: OpenDay.describe('Null: open'),
    plannedUntil: Day.describe('Planned for a year where it is open'),
    place: z.uuid().nullable().describe('Null: nobody has said, and frost is taken for possible'),
    visitor: z.uuid().nullable(),
    phone: z.string(),
    circumstances: z.array(CIRCUMSTANCE),
    numbers: z.object({
      dose: z.number().optional(),
      engine: z.number().optional(),
      cylinders: z.number().optional(),
    }),
    papers: z.object({
      storageFrom: OpenDay,
      roadUntil: OpenDay,
      noticeFrom: OpenDay,
      renewsOn: OpenDay,
      rules: z.string(),
    }),
    choices: z.record(z.string(), z.string()).describe('Sides its owner took, by topic'),
    note: z.string(),
    pattern: z.boolean(),
    madeOn: Day,
    closedOn: OpenDay,
    changes: z.array(z.string()).describe('In the plan since it was last looked at'),
    plan: PlanOut,
    wakeUp: PlanOut.describe('With an open end, as if it came back that day'),
    roadCheck: z
      .object({
        answer: z.enum(['no', 'local only']).describe('Never a plain yes'),
        against: Reasons,
        found: z.array(z.string()).describe('What rounds found that speaks against it'),
        unchecked: Reasons.describe('No date clears them'),
        due: Reasons,
      })
      .nullable()
      .describe('Before the first drive; null before it is parked, and once it is closed'),
    looks: z.array(z.string()).describe('Keys of what is looked at on a round of that day'),
    rounds: z.array(
      RoundDue.extend({
        made: z
          .object({
            id: z.uuid(),
            day: Day,
            by: z.string(),
            answers: z.record(z.string(), z.string()),
            note: z.string(),
          })
          .nullable(),
      }),
    ),
    found: z
      .array(
        z.object({
          look: z.string(),
          name: z.string(),
          answer: z.string(),
          verdict: z.enum(VERDICTS),
          todo: z.string().nullable(),
          day: Day,
          round: z.uuid(),
          cautions: z.array(z.string()),
        }),
      )
      .describe('On rounds, and still so'),
    warnings: z
      .array(
        z.object({
          key: z.string(),
          begins: Day,
          title: z.string(),
          todo: z.string(),
          cautions: z.array(z.string()),
          sources: z.array(Source),
        }),
      )
      .describe('Begun by that day, gravest first'),
    defers: z.string().describe('What comes before every step'),
  })
  .openapi('LayUp');

export const LookOut = z
  .object({
    key: z.string(),
    name: z.string(),
    how: z.string(),
    every: z.number().int().describe('Months: 1 is every round'),
    always: z.boolean().describe('False: by car, place or the sides taken'),
    answers: z.array(
      z.object({ key: z.string(), name: z.string(), verdict: z.enum(VERDICTS), todo: z.string().nullable() }),
    ),
    cautions: z.array(z.string()),
    sources: z.array(Source),
  })
  .openapi('Look');

export const TopicOut = z
  .object({
    key: Topic,
    name: z.string(),
    sides: z.array(z.object({ key: z.string(), name: z.string(), says: z.string() })),
    evidence: z.string(),
    sources: z.array(Source),
  })
  .openapi('Topic');
