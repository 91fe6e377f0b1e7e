import { z } from '@hono/zod-openapi';
import { VERDICTS } from '../../../ageing/judge.ts';
import { AIRS, SHELTERS } from '../../../ageing/place.ts';
import type { Detail } from '../../../catalogue/gauge.ts';
import { Day, DaySpan, OnQuery, OpenDay, orNull, Source, Span, text } from './base.ts';

/**
 * The questions of a desk as the fields of a query, as its form sends them. They stay text here: the desk’s own rules
 * judge them, and a field left empty is a question left open. A unit alone is checked, as the desk would pass it over.
 */
export const queryOf = (details: readonly Detail[], more: z.ZodRawShape = {}) =>
  OnQuery.extend({ ...Object.fromEntries(details.flatMap(fieldsOf)), ...more });

const fieldsOf = (detail: Detail): [string, z.ZodType][] => {
  const { key, name, hint } = detail;
  const says = (more: string): string => [name, more, hint].filter(Boolean).join('. ');
  if ('choices' in detail) {
    const { choices } = detail;
    const words = Object.entries(choices).map(([choice, word]) => `${choice} (${word})`);
    return [
      [key, text.optional().openapi({ enum: Object.keys(choices), description: says(`One of ${words.join(', ')}`) })],
    ];
  }
  const { unit, also = [], range } = detail;
  const field = text.optional().describe(says(`A number from ${range.join(' to ')} ${unit}`));
  const units = z.enum([unit, ...also]).optional();
  return [[key, field], ...(also.length > 0 ? [[`${key}-unit`, units] satisfies [string, z.ZodType]] : [])];
};

/** What every answer of a desk ends with. */
const TOLD = { says: z.array(z.string()), sources: z.array(Source) };

export const BrakeFluidOut = z
  .object({
    on: Day,
    grade: z.string().describe('The one told, or the weakest it may be'),
    gradeTold: z.boolean(),
    water: orNull(Span).describe('Percent by weight; null: nothing to tell it from'),
    boiling: z
      .object({ low: z.number(), high: z.number(), atMost: z.boolean().describe('True: it may lie below all of this') })
      .nullable()
      .describe('°C'),
    wetMinimum: z.number().describe('Of the grade, °C'),
    wet: orNull(DaySpan).describe('Down to the wet minimum; an earliest day of null may have passed'),
    limit: orNull(DaySpan).describe('Down to the limit asked for'),
    measured: z.boolean(),
    verdicts: z
      .array(
        z.object({
          gauge: z.string(),
          value: z.number(),
          unit: z.string(),
          verdict: z.enum(VERDICTS),
          says: z.string().describe('The words of its band; good clears neither water nor age'),
        }),
      )
      .describe('What was measured today, by the bands of the gauges; none for silicone'),
    mayMix: z.boolean().nullable().describe('With the grade to top up with; null: not asked'),
    ...TOLD,
  })
  .openapi('BrakeFluidAnswer');

export const CoolantOut = z
  .object({
    glycol: z.string(),
    strength: orNull(Span).describe('Volume percent; null: only mixing was asked about'),
    freezes: orNull(Span).describe('First ice, °C'),
    night: z.number().nullable().describe('Coldest night told, °C'),
    margin: orNull(Span).describe('From first ice up to the coldest night, °C'),
    verdict: z.enum(VERDICTS).nullable().describe('Null: not judged'),
    exchange: z.number().nullable().describe('Liters to drain, and to add; null: not asked'),
    mixing: z.string().nullable(),
    ...TOLD,
  })
  .openapi('CoolantAnswer');

const PlaceTold = z.object({
  told: z.boolean().describe('Whether the coldest night was told: frost is judged by no assumed one'),
  assumed: z.string().nullable().describe('What was left open and is assumed'),
  shelter: z.enum(SHELTERS),
  air: z.enum(AIRS),
  coldestNight: z.number().describe('°C, where it stands'),
});

export const BatteryOut = z
  .object({
    from: Day,
    until: Day,
    charge: Span.describe('Percent, on the first day'),
    points: z.array(z.object({ day: Day, low: z.number(), high: z.number() })).describe('Charge, percent'),
    recharge: DaySpan,
    noCrank: DaySpan.describe('From then on it can’t be counted on to crank'),
    frost: z.enum(['judged', 'not judged', 'does not freeze']).describe('Not judged without a coldest night'),
    freezes: orNull(DaySpan).describe('Could freeze there; null: not judged, or it does not freeze'),
    place: PlaceTold,
    ...TOLD,
  })
  .openapi('BatteryAnswer');

export const FuelOut = z
  .object({
    on: Day,
    fuel: z.string(),
    watch: DaySpan.describe('Use it soon'),
    stop: DaySpan.describe('Drain it before starting'),
    water: z
      .object({
        held: z.number().nullable().describe('Volume percent it holds in the coldest night; null: it never parts'),
        perYear: orNull(Span).describe('Grams a year from the air; null: the tank is not told'),
        days: orNull(Span).describe('Until air alone parts it; null: never, or it holds none'),
      })
      .nullable()
      .describe('Null: it takes up next to none'),
    parted: z
      .object({
        now: z.boolean().describe('At the mean of this month there'),
        coldestNight: z.boolean().nullable().describe('Null: no coldest night was told'),
      })
      .nullable()
      .describe('Whether the water measured parts it; null: none was measured, or it holds none, or it never parts'),
    place: PlaceTold,
    ...TOLD,
  })
  .openapi('FuelAnswer');

export const RubberOut = z
  .object({
    on: Day,
    rubber: z.string(),
    group: z.string().describe('Of shelf lives'),
    made: z.object({ from: OpenDay, to: OpenDay }),
    inspect: DaySpan.describe('A look before it is used'),
    end: DaySpan.describe('End of its shelf life, kept as it should be and after a look that found nothing'),
    pace: z.number().nullable().describe('Times as fast as in a dry room of 15 °C; null: its storage is not judged'),
    ...TOLD,
  })
  .openapi('RubberAnswer');
