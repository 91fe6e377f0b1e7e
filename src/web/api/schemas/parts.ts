import { z } from '@hono/zod-openapi';
import { VERDICTS } from '../../../ageing/judge.ts';
import { CLOCKS } from '../../../catalogue/clock.ts';
import { UNITS, type Unit } from '../../../catalogue/units.ts';
import { EVIDENCE } from '../../../findings/facts.ts';
import { Day, km, OpenDay, said, Typed, text, Warmth } from './base.ts';

const ClaimIn = z
  .object({
    clock: z.enum(CLOCKS),
    typed: text
      .min(1)
      .describe('A date as people write it, EDTF, or the code as it stands on the part')
      .openapi({ example: 'about 2015' }),
    choice: text.optional().describe('The meaning picked after an answer with choices'),
    evidence: z.enum(EVIDENCE).default('own memory'),
    km: km.nullable().default(null).describe('Odometer at that moment'),
    note: text.default(''),
    ninetiesMark: z.enum(['seen', 'not seen']).optional().describe('The small triangle after a three-digit tire code'),
  })
  .openapi('Claim');

export const PartIn = z
  .object({
    kind: text.openapi({ example: 'brake-hoses' }),
    position: text
      .nullable()
      .default(null)
      .transform((position) => position || null),
    note: text.default(''),
    dates: z.array(ClaimIn).default([]),
  })
  .openapi('NewPart');

export const PartChange = z
  .object({
    note: text.optional(),
    dates: z.array(ClaimIn).default([]),
    details: z
      .record(z.string().regex(/^[a-z\d-]{1,40}$/, 'is no key of a detail'), z.union([z.number(), text]).nullable())
      .optional()
      .describe('Answers to what its kind asks (see /kinds): a choice, or a number in its unit; null forgets one')
      .openapi({ example: { grade: 'dot-4', limit: '500 °F' } }),
  })
  .openapi('PartChange');

export const RenewalIn = z
  .object({ why: text.default('Renewed.'), note: text.default(''), dates: z.array(ClaimIn).default([]) })
  .openapi('Replacement');

export const ReadingIn = z
  .object({
    gauge: said.describe('Key of one of its kind’s gauges (see /kinds)').openapi({ example: 'rest-voltage' }),
    value: Typed.openapi({ example: 12.45 }),
    unit: z
      .enum(Object.keys(UNITS) as [Unit, ...Unit[]])
      .optional()
      .describe('The gauge’s own by default; one written behind the value overrides it'),
    day: Day.optional().describe('Day it was read; the day of the request by default'),
    warmth: Typed.optional().describe('Temperature of what was read, where its gauge asks for one'),
    warmthUnit: Warmth.default('°C'),
    instrument: text.default(''),
    note: z.string().trim().max(4000).default(''),
    sure: z.boolean().default(false).describe('True where a value that is seldom seen was asked back and is right'),
  })
  .openapi('NewReading');

export const WithdrawalIn = z.object({}).openapi('Withdrawal');

const ReadingOut = z
  .object({
    id: z.uuid(),
    gauge: z.string(),
    day: Day,
    value: z.number(),
    unit: z.string().describe('Of the value: the gauge’s own'),
    typed: z.string(),
    typedUnit: z.string(),
    warmth: z.number().nullable().describe('°C'),
    instrument: z.string(),
    note: z.string(),
    recordedOn: Day,
    verdict: z.enum(VERDICTS).nullable().describe('Null: not judged, for want of what `wants` says'),
    wants: z.string().nullable(),
  })
  .openapi('Reading');

export const PartOut = z
  .object({
    id: z.uuid(),
    carId: z.uuid(),
    kind: z.string(),
    position: z.string().nullable(),
    note: z.string(),
    openedOn: Day,
    closedOn: OpenDay,
    closedWhy: z.string().nullable(),
    replaces: z.uuid().nullable(),
    dates: z.array(
      z.object({
        id: z.uuid(),
        clock: z.enum(CLOCKS),
        said: z.enum(['date', 'original', 'unknown', 'not looked']),
        typed: z.string(),
        edtf: z.string().nullable(),
        from: OpenDay,
        to: OpenDay,
        evidence: z.enum(EVIDENCE),
        km: km.nullable(),
        note: z.string(),
        recordedOn: Day,
      }),
    ),
    details: z
      .record(z.string(), z.union([z.string(), z.number()]))
      .describe('Answers to what its kind asks; numbers in the unit of the detail'),
    readings: z.array(ReadingOut).describe('Oldest first'),
  })
  .openapi('Part');
