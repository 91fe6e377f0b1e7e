/** What the documents of the API are made of. The pages' own rules judge them; the shapes are checked here. */
import { z } from '@hono/zod-openapi';

export const Day = z.iso.date().openapi({ example: '2026-11-25' });
export const OpenDay = Day.nullable();
export const text = z.string().trim().max(200, 'at most 200 characters');
export const said = text.min(1, 'must not be empty');
export const km = z.number().int().min(0).max(5_000_000);

/** A number, or the text of one as people type it, with its unit or without. */
export const Typed = z.union([z.number(), said]);
export const Warmth = z.enum(['°C', '°F']);

export const Span = z.object({ low: z.number(), high: z.number() }).openapi('Span');
export const DaySpan = z
  .object({ earliest: OpenDay, latest: OpenDay })
  .openapi('DaySpan', { description: 'When it is expected; null: not within the time looked at' });
export const Source = z.object({ title: z.string(), grade: z.string() }).openapi('Source');

/** A named document, or null: `nullable` would put the null into the name’s own description, for all who use it. */
export const orNull = <T extends z.ZodType>(schema: T) => z.union([schema, z.null()]);

export const OnQuery = z.object({
  on: Day.optional().describe('Answer as on another day; today in the collection’s zone by default'),
});
export const CarPath = z.object({ carId: z.uuid() });
export const PartPath = z.object({ partId: z.uuid() });
export const ReadingPath = z.object({ partId: z.uuid(), readingId: z.uuid() });
export const PlacePath = z.object({ placeId: z.uuid() });
