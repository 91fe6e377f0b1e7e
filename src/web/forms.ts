/** What forms send, read by zod at the door. Text that a person typed is judged later, beside its field. */
import { z } from 'zod';
import type { Fault } from '../acts/fault.ts';
import { CLOCKS } from '../catalogue/clock.ts';
import { STATED_TRAITS } from '../catalogue/traits.ts';
import { DATE_ORDERS } from '../dates/typed-point.ts';
import { EVIDENCE } from '../findings/facts.ts';
import { ANSWER_WORDS } from '../notices/answers.ts';
import { LEFT_HOW } from '../store/schema.ts';
import type { Ctx } from './visit.ts';

/** Thrown for a form no page of ours can have sent. */
export class BadForm extends Error {}

export const readForm = async <T extends z.ZodType>(c: Ctx, schema: T): Promise<z.infer<T>> => {
  const read = schema.safeParse(withUnit(await c.req.parseBody({ all: true })));
  if (read.success) return read.data;
  throw new BadForm(read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`).join('; '));
};

/** The unit ticked beside a distance joins its number, unless one is written behind it already. */
const withUnit = ({ unit, ...body }: Record<string, unknown>): Record<string, unknown> => {
  const { distance } = body;
  const bare = typeof distance === 'string' && /\d\s*$/.test(distance);
  return bare && (unit === 'km' || unit === 'mi') ? { ...body, distance: `${distance.trim()} ${unit}` } : body;
};

const KM_PER_MILE = 1.609344;
const NUMBER = /^(\d{1,3}(?:[ ,.']?\d{3})*|\d+)$/;
const DISTANCE = /^(\d{1,3}(?:[ ,.']?\d{3})*|\d+)\s*(km|mi|miles?)$/i;

/** "87 400 km", "54,300 mi": a distance in whole km. Null where it is none, or bears no unit: that is never guessed. */
export const readDistance = (text: string): number | null => {
  const found = DISTANCE.exec(text.trim());
  if (!found) return null;
  const number = Number((found[1] ?? '').replace(/\D/g, ''));
  const km = found[2]?.toLowerCase().startsWith('m') ? number * KM_PER_MILE : number;
  return km <= 5_000_000 ? Math.round(km) : null;
};

export const notADistance = (text: string): Fault => ({
  field: 'distance',
  message: NUMBER.test(text)
    ? `Is “${text}” in km or in miles? Choose the unit beside it.`
    : `“${text}” is no distance. Write 87 400 km or 54,300 mi.`,
});

/** Text from one line of a form; longer than anyone types is refused. What breaks a line or moves a cursor is a blank. */
export const line = z
  .string()
  .max(200)
  .transform((typed) => typed.replace(/\p{Cc}+/gu, ' ').trim())
  .default('');
export const lines = z.string().trim().max(4000).default('');
const ticked = z.literal('on').optional().transform(Boolean);
/** Boxes of one name: none, one, or several are ticked. */
const many = z.preprocess(
  (given) => (given === undefined ? [] : [given].flat()),
  z.array(z.string().max(100)).max(500),
);

/** Radio groups of traits come as one-<facet>; they join the ticked ones. */
const withRadios = (body: unknown): unknown => {
  const entries = Object.entries(body as Record<string, unknown>);
  const chosen = entries.filter(([name]) => name.startsWith('one-')).map(([, trait]) => trait);
  const ticked = entries.filter(([name]) => name === 'traits').flatMap(([, traits]) => traits);
  return { ...(body as object), traits: [...ticked, ...chosen] };
};

export const CAR_FORM = z.preprocess(
  withRadios,
  z.object({
    name: line,
    built: line,
    builtChoice: line,
    builtAsked: line,
    start: line,
    distance: line,
    note: lines,
    traits: z.array(z.enum(STATED_TRAITS)),
  }),
);
export type CarForm = z.infer<typeof CAR_FORM>;

export const CLAIM_FORM = z.object({
  clock: z.enum(CLOCKS),
  typed: line,
  typedChoice: line,
  typedAsked: line,
  /** A button that answers in the place of the text field. */
  quick: line,
  evidence: z.enum(EVIDENCE),
  distance: line,
  note: line,
  ninetiesMark: z.enum(['', 'seen', 'not seen']).default(''),
  instead: line,
  round: line,
});
export type ClaimForm = z.infer<typeof CLAIM_FORM>;

export const RENEW_FORM = CLAIM_FORM.extend({ why: line, fitted: line, fittedChoice: line, fittedAsked: line });
export type RenewForm = z.infer<typeof RENEW_FORM>;

export const PART_FORM = z.object({ kind: line, position: line, note: line });
export const RETIRE_FORM = z.object({ why: line });
export const ODOMETER_FORM = z.object({ distance: line, day: line });

export const OVERRIDE_FORM = z.object({
  scope: line,
  authority: z.enum(['handbook', 'own']).default('own'),
  lookFrom: line,
  replaceBy: line,
  distance: line,
  note: lines,
  end: line,
});
export type OverrideForm = z.infer<typeof OVERRIDE_FORM>;

export const COLLECTION_FORM = z.object({ name: line, timeZone: line });
export const MONEY_FORM = z.object({ currency: line, perDollar: line, laborLow: line, laborHigh: line });
export const MEMBER_FORM = z.object({ name: line, email: line, dateOrder: z.enum(DATE_ORDERS), letters: ticked });
/** Which letters a person wants. Ticked are the cars and severities that are wanted. */
export const WISHES_FORM = z.object({
  letters: ticked,
  hour: line,
  listed: many,
  cars: many,
  severities: many,
  repeatDays: line,
  quietFromDay: line,
  quietFromMonth: line,
  quietToDay: line,
  quietToMonth: line,
  yearlyMonth: line,
  pushUrl: z.string().trim().max(2000).default(''),
  webhookUrl: z.string().trim().max(2000).default(''),
});
export type WishesForm = z.infer<typeof WISHES_FORM>;

export const FEED_FORM = z.object({ scopes: many, keep: line });

export const ANSWER_FORM = z.object({
  word: z.enum(ANSWER_WORDS),
  day: line,
  how: z.enum(['renewed', 'looked']).default('renewed'),
});
export type AnswerForm = z.infer<typeof ANSWER_FORM>;

export const LEFT_FORM = z.object({ how: z.enum(LEFT_HOW), day: line });

export const ACTING_FORM = z.object({ collection: line, person: line });

/** Readings come as <part>.<gauge>.<what>: any number of them in one form, each with its own unit and temperature. */
export const READINGS_FORM = z
  .object({ day: line, instrument: line, note: lines, back: line, warmth: line, warmthUnit: line })
  .catchall(z.string().trim().max(200));
export type ReadingsForm = z.infer<typeof READINGS_FORM>;

/** Details come as answer.<key> and unit.<key>. */
export const DETAILS_FORM = z.object({}).catchall(z.string().trim().max(200));
export type DetailsForm = z.infer<typeof DETAILS_FORM>;

export const PLACE_FORM = z.object({
  name: line,
  winterLow: line,
  summerHigh: line,
  air: line,
  shelter: line,
  humidity: line,
  heatedTo: line,
  hemisphere: line,
  month: z.array(z.string().trim().max(20)).length(12).default(Array(12).fill('')),
  degrees: line,
  note: lines,
});
export type PlaceForm = z.infer<typeof PLACE_FORM>;
export const PUT_FORM = z.object({ place: line });
