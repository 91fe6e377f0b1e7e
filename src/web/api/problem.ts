/** Errors as RFC 9457 problem details, with a pointer to each field. */
import type { Context } from 'hono';
import { z } from 'zod';
import type { Fault } from '../../acts/fault.ts';

export const PROBLEM = z
  .object({
    type: z.string().describe('about:blank: the status says what kind of problem it is'),
    title: z.string(),
    status: z.number().int(),
    detail: z.string().optional(),
    code: z.string().optional().describe('A short code for programs'),
    errors: z
      .array(
        z.object({
          pointer: z.string().describe('JSON Pointer (as URI fragment) to the field'),
          detail: z.string(),
          choices: z
            .array(z.object({ value: z.string(), label: z.string() }))
            .optional()
            .describe('Meanings to choose from: send one as `choice`; where it is `sure`, send `sure` as true'),
        }),
      )
      .optional(),
  })
  .loose();

export type Problem = Omit<z.infer<typeof PROBLEM>, 'type'>;

export const problem = (c: Context, about: Problem): Response =>
  c.body(JSON.stringify({ type: 'about:blank', ...about }), about.status as 400, {
    'Content-Type': 'application/problem+json',
  });

/** Faults of an act, each pointing to its field. */
export const faultsProblem = (c: Context, faults: readonly Fault[], title = 'Nothing was saved'): Response =>
  problem(c, {
    status: 422,
    title,
    detail: faults.map(({ message }) => message).join(' '),
    errors: faults.map(({ field, message, choices }) => ({
      pointer: `#/${field}`,
      detail: message,
      ...(choices ? { choices } : {}),
    })),
  });

/** What zod found wrong with a request, each issue pointing to its place. */
export const issuesProblem = (c: Context, error: z.core.$ZodError): Response =>
  problem(c, {
    status: 422,
    title: 'The request does not have the form asked for',
    detail: error.issues.map((issue) => `${issue.path.join('/') || 'body'}: ${issue.message}`).join('; '),
    errors: error.issues.map((issue) => ({
      pointer: ['#', ...issue.path.map(token)].join('/'),
      detail: issue.message,
    })),
  });

/** A member's name within a pointer (RFC 6901, as a URI fragment): a sender may have named it anything. */
const token = (name: PropertyKey): string =>
  encodeURIComponent(String(name).replaceAll('~', '~0').replaceAll('/', '~1'));
