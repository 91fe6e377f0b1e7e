/** What the forms of a lay-up send; text a person typed is judged later, beside its field. */
import { z } from 'zod';
import type { LayUpGiven } from '../../acts/lay-up.ts';
import { EVIDENCE } from '../../findings/facts.ts';
import { CIRCUMSTANCES, type Circumstance } from '../../plans/stay.ts';
import { line, lines, READINGS_FORM } from '../forms.ts';

const CIRCUMSTANCE = z.enum(Object.keys(CIRCUMSTANCES) as [Circumstance, ...Circumstance[]]);
const many = <T extends z.ZodType>(one: T) =>
  z.preprocess((sent) => (sent === undefined ? [] : [sent].flat()), z.array(one));

export const LAY_UP_FORM = z.object({
  car: line,
  like: line,
  parkedOn: line,
  returnOn: line,
  place: line,
  visitor: line,
  phone: line,
  circumstances: many(CIRCUMSTANCE),
  dose: line,
  engine: line,
  cylinders: line,
  storageFrom: line,
  roadUntil: line,
  noticeFrom: line,
  renewsOn: line,
  rules: lines,
  note: lines,
});
export type LayUpForm = z.infer<typeof LAY_UP_FORM>;

export const givenIn = (form: LayUpForm): LayUpGiven => {
  const { dose, engine, cylinders, storageFrom, roadUntil, noticeFrom, renewsOn, rules, ...rest } = form;
  return {
    ...rest,
    numbers: { dose, engine, cylinders },
    papers: { storageFrom, roadUntil, noticeFrom, renewsOn, rules },
  };
};

/** A tick: its readings and answers come beside it, under the names of their parts. */
export const TICK_FORM = READINGS_FORM.extend({
  cost: line,
  by: line,
  distance: line,
  evidence: z.enum(EVIDENCE).default('own memory'),
  effects: many(z.string().max(80)),
});
export type TickForm = z.infer<typeof TICK_FORM>;

export const SKIP_FORM = z.object({ reason: line });
export const SIDE_FORM = z.object({ topic: line, side: line, back: line });
export const OWN_STEP_FORM = z.object({ plan: z.enum(['lay-up', 'wake-up']), title: line, days: line, note: line });
export const CLOSE_FORM = z.object({ day: line, how: z.enum(['back', 'called off']), distance: line, template: line });
export const ROUND_FORM = READINGS_FORM;
