import { z } from '@hono/zod-openapi';
import { QUICK_STARTS } from '../../../catalogue/quick-starts.ts';
import { STATED_TRAITS } from '../../../catalogue/traits.ts';
import { Day, km, OpenDay, said, text } from './base.ts';

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
    place: z.uuid().nullable().describe('Where it stands; null: nobody has said'),
  })
  .openapi('Car');
