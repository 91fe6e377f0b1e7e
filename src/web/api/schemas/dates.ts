import { z } from '@hono/zod-openapi';
import { Day } from './base.ts';

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
