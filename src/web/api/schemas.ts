/** The documents the API takes and gives. The pages' own rules judge them; the shapes are checked here. */
import { z } from '@hono/zod-openapi';
import { CLOCKS } from '../../catalogue/clock.ts';
import { SEVERITIES } from '../../catalogue/kind.ts';
import { QUICK_STARTS } from '../../catalogue/quick-starts.ts';
import { STATED_TRAITS } from '../../catalogue/traits.ts';
import { EVIDENCE } from '../../findings/facts.ts';
import { STANDINGS } from '../../findings/standing.ts';

const Day = z.iso.date().openapi({ example: '2026-11-25' });
const OpenDay = Day.nullable();
const text = z.string().trim().max(200, 'at most 200 characters');
const said = text.min(1, 'must not be empty');
const km = z.number().int().min(0).max(5_000_000);

export const OnQuery = z.object({
  on: Day.optional().describe('Answer as on another day; today in the collection’s zone by default'),
});
export const CarPath = z.object({ carId: z.uuid() });
export const PartPath = z.object({ partId: z.uuid() });

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

export const CarIn = z
  .object({
    name: said,
    built: text
      .min(1)
      .describe('Build date as people write it; “unknown” is an answer')
      .openapi({ example: 'June 1967' }),
    builtChoice: text.optional(),
    quickStart: z
      .enum(QUICK_STARTS.map(({ key }) => key) as [string, ...string[]])
      .optional()
      .describe('Traits to start from'),
    traits: z
      .array(z.enum(STATED_TRAITS))
      .optional()
      .describe('All traits of the car; takes the place of a quick start'),
    note: z.string().max(4000).default(''),
    km: km.nullable().default(null),
  })
  .refine(({ quickStart, traits }) => quickStart !== undefined || traits !== undefined, {
    path: ['traits'],
    message: 'Give a quickStart, or all traits',
  })
  .openapi('NewCar');

export const CarOut = z
  .object({
    id: z.uuid(),
    name: z.string(),
    built: z.object({ typed: z.string(), edtf: z.string().nullable(), from: OpenDay, to: OpenDay }),
    traits: z.array(z.string()),
    note: z.string(),
    odometer: z.array(z.object({ day: Day, km })).describe('Oldest first'),
  })
  .openapi('Car');

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
  .object({ note: text.optional(), dates: z.array(ClaimIn).default([]) })
  .openapi('PartChange');

export const RenewalIn = z
  .object({ why: text.default('Renewed.'), note: text.default(''), dates: z.array(ClaimIn).default([]) })
  .openapi('Replacement');

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
  })
  .openapi('Part');

const Turn = z
  .object({ worst: OpenDay, best: OpenDay })
  .nullable()
  .describe('Day it begins if the part is as old as it can be (worst), or as young (best)');

export const FindingOut = z
  .object({
    partId: z.uuid(),
    kind: z.string(),
    name: z.string(),
    position: z.string().nullable(),
    system: z.string(),
    severity: z.enum(SEVERITIES),
    standing: z.enum(STANDINGS),
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
    reasons: z.array(
      z.object({ text: z.string(), sources: z.array(z.object({ title: z.string(), grade: z.string() })) }),
    ),
    doubts: z.array(z.string()),
    todo: z.string(),
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
    sources: z.array(z.object({ title: z.string(), grade: z.string() })),
    findDate: z.string(),
    ignored: z.string(),
  })
  .openapi('Kind');

const Week = z.object({ week: z.number().int(), year: z.number().int(), from: Day, to: Day });

export const TireCodeQuery = z.object({
  code: z.string().max(200).describe('The whole number or its end, as read').openapi({ example: 'DOT 4AX C2DE 2318' }),
  on: Day.optional(),
  ninetiesMark: z.enum(['seen', 'not seen']).optional(),
  notBefore: Day.optional().describe('The car’s build date, where no older tire can be on it'),
  fittedBy: Day.optional(),
});

export const TireCodeOut = z
  .object({
    candidates: z.array(Week).describe('Oldest first'),
    warnings: z.array(z.string()),
    dateCode: z.string(),
    form: z.string(),
    dropped: z.array(z.object({ candidate: Week, why: z.string() })),
    working: z.array(z.string()),
    doubts: z.array(z.string()),
    next: z.array(z.string()),
  })
  .openapi('TireCode');
