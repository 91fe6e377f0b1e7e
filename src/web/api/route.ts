import type { OpenAPIHono, z } from '@hono/zod-openapi';
import type { Env } from '../visit.ts';
import { PROBLEM } from './problem.ts';

export type Api = OpenAPIHono<Env>;

/** An answer, a refusal and a request body, as the description of a route wants them. */
export const json = <T extends z.ZodType>(schema: T, description: string) => ({
  content: { 'application/json': { schema } },
  description,
});
export const refusal = (description: string) => ({
  content: { 'application/problem+json': { schema: PROBLEM } },
  description,
});
export const body = <T extends z.ZodType>(schema: T) => ({
  content: { 'application/json': { schema } },
  required: true,
});
