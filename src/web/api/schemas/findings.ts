import { z } from '@hono/zod-openapi';
import { CLOCKS } from '../../../catalogue/clock.ts';
import { SEVERITIES } from '../../../catalogue/kind.ts';
import { CAUSES } from '../../../findings/assess.ts';
import { STANDINGS } from '../../../findings/standing.ts';
import { Day, OpenDay, orNull, Source } from './base.ts';

const Turn = z
  .object({ worst: OpenDay, best: OpenDay })
  .nullable()
  .describe('Day it begins if the part is as old as it can be (worst), or as young (best)');

const OutlookOut = z
  .object({
    now: z.string().describe('The estimate with both its ends'),
    measured: z.boolean().describe('True where a reading stands behind it'),
    days: z
      .array(z.object({ what: z.string(), earliest: OpenDay, latest: OpenDay }))
      .describe('When its condition is expected to change; both null: not within the time looked at'),
    says: z.array(z.string()),
    ends: z.string().describe('Where the estimate ends, and whose word counts from there'),
    sources: z.array(Source),
  })
  .openapi('Outlook');

export const FindingOut = z
  .object({
    partId: z.uuid(),
    kind: z.string(),
    name: z.string(),
    position: z.string().nullable(),
    system: z.string(),
    severity: z.enum(SEVERITIES),
    standing: z.enum(STANDINGS),
    by: z.enum(CAUSES).describe('What brought the standing; an estimate only ever asks for a look'),
    began: OpenDay.describe('First day of this standing, as far as the facts tell'),
    clock: z.enum(CLOCKS),
    since: z.object({ from: OpenDay, to: OpenDay }).nullable(),
    ageMonths: z.object({ youngest: z.number().int(), oldest: z.number().int().nullable() }).nullable(),
    label: OpenDay.describe('Last valid day stated on the part'),
    look: Turn,
    due: Turn,
    past: Turn.describe('First day past common practice; the day before is the last day of the limit, and still due'),
    ruledBy: z.enum(['label', 'handbook', 'own', 'practice']),
    interval: z.object({
      lookFrom: z.number().int().nullable(),
      replaceBy: z.number().int().nullable(),
      replaceByKm: z.number().int().nullable(),
    }),
    age: z.string(),
    reasons: z.array(z.object({ text: z.string(), sources: z.array(Source) })),
    doubts: z.array(z.string()),
    todo: z.string(),
    readings: z.array(z.string()).describe('The last reading of each gauge, judged, in words'),
    outlook: orNull(OutlookOut).describe('Estimated condition, where a model tells any; it clears nothing'),
    surer: z.string().nullable().describe('The measurement that would make it surer'),
    cautions: z.array(z.string()),
  })
  .openapi('Finding');

export const FindingsOut = z
  .object({
    carId: z.uuid(),
    on: Day,
    findings: z.array(FindingOut),
    tires: z.array(z.string()).describe('The tires as a set, in words'),
  })
  .openapi('Findings');
