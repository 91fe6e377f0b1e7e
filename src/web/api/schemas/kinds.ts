import { z } from '@hono/zod-openapi';
import { CLOCKS } from '../../../catalogue/clock.ts';
import { SEVERITIES } from '../../../catalogue/kind.ts';
import { orNull, Source, Span } from './base.ts';

const GaugeOut = z
  .object({
    key: z.string(),
    name: z.string(),
    unit: z.string(),
    also: z.array(z.string()).describe('Other units it may be typed in'),
    range: Span.describe('What can be: beyond it a reading is refused'),
    usual: Span.describe('What is seen: beyond it a reading is asked back'),
    usualBy: z
      .object({ detail: z.string(), of: z.record(z.string(), Span) })
      .nullable()
      .describe('What is seen by the answer to a detail, where that shifts it'),
    warmth: z.string().nullable().describe('Whose temperature is asked for beside it'),
    minutes: z.number(),
    round: z.boolean().describe('Read on the monthly round'),
    how: z.string(),
    good: z.string(),
    watch: z.string().nullable(),
    act: z.string(),
    sources: z.array(Source),
  })
  .openapi('Gauge');

const DetailOut = z
  .object({
    key: z.string(),
    name: z.string(),
    hint: z.string().nullable(),
    stays: z.boolean().describe('The answer outlasts a renewal'),
    choices: z.record(z.string(), z.string()).nullable().describe('Answers to choose from; null: a number'),
    unit: z.string().nullable(),
    also: z.array(z.string()),
    range: orNull(Span),
  })
  .openapi('Detail');

export const KindOut = z
  .object({
    key: z.string(),
    name: z.string(),
    system: z.string(),
    severity: z.enum(SEVERITIES),
    appliesWhen: z.array(z.string()),
    positions: z.array(z.string()),
    clock: z.enum(CLOCKS),
    lookFrom: z.number().int().nullable(),
    lookEvery: z.number().int(),
    replaceBy: z.number().int().nullable(),
    replaceByKm: z.number().int().nullable(),
    sources: z.array(Source),
    findDate: z.string(),
    ignored: z.string(),
    gauges: z.array(GaugeOut).describe('Home tests that answer with a number'),
    details: z.array(DetailOut).describe('What is asked about such a part'),
  })
  .openapi('Kind');
