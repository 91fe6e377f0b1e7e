import { z } from '@hono/zod-openapi';
import { AIRS, SHELTERS } from '../../../ageing/place.ts';
import { said, Typed, Warmth } from './base.ts';

const HEMISPHERES = ['north', 'south'] as const;

export const PlaceIn = z
  .object({
    name: said.openapi({ example: 'barn' }),
    winterLow: Typed.describe('Coldest night of an ordinary winter, outdoors').openapi({ example: -12 }),
    summerHigh: Typed.describe('Hottest day of an ordinary summer, outdoors').openapi({ example: 33 }),
    air: z.enum(AIRS),
    shelter: z.enum(SHELTERS).describe('What is over the cars'),
    humidity: Typed.nullable().default(null).describe('Mean relative humidity there, %; null: as usual there'),
    heatedTo: Typed.nullable().default(null).describe('What the heating keeps; only for a heated place'),
    hemisphere: z.enum(HEMISPHERES).default('north'),
    months: z
      .array(Typed.nullable())
      .length(12)
      .default(Array<null>(12).fill(null))
      .describe('Mean temperatures known better, January first; null: as told by the rest'),
    unit: Warmth.default('°C').describe('Of all temperatures above that bear none'),
    note: z.string().trim().max(4000).default(''),
  })
  .openapi('NewPlace');

export const PlaceOut = z
  .object({
    id: z.uuid(),
    name: z.string(),
    winterLow: z.number().describe('°C'),
    summerHigh: z.number().describe('°C'),
    air: z.enum(AIRS),
    shelter: z.enum(SHELTERS),
    humidity: z.number().nullable(),
    heatedTo: z.number().nullable().describe('°C'),
    hemisphere: z.enum(HEMISPHERES),
    months: z.array(z.number().nullable()).describe('Mean temperatures told, °C, January first'),
    note: z.string(),
    cars: z.array(z.uuid()).describe('Cars that stand there'),
    year: z
      .array(z.object({ mean: z.number(), low: z.number(), high: z.number() }))
      .describe('The twelve months reckoned with, °C where the car stands: mean, coldest night, hottest hour'),
  })
  .openapi('Place');

export const StandIn = z
  .object({ place: z.uuid().nullable().describe('Null: nobody has said') })
  .openapi('WhereItStands');
