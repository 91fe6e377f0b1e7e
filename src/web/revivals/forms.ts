/** What the forms of a return send; text a person typed is judged later, beside its field. */
import { z } from 'zod';
import type { SleepGiven } from '../../acts/begin-revival.ts';
import type { LooksGiven } from '../../acts/work-revival.ts';
import { EVIDENCE } from '../../findings/facts.ts';
import {
  LEAK_CLASSES,
  LEAK_FLUIDS,
  LEAK_PLACES,
  type LeakClass,
  type LeakFluid,
  type LeakPlace,
  type Spot,
} from '../../revival/leaks.ts';
import { HANDS, type Hands } from '../../revival/revival.ts';
import { type RunNote, SENSES, type Sense, VERSUS, type Versus } from '../../revival/runs.ts';
import { PUT_AWAY, type PutAway, STOOD, type Stood, WHY_PARKED, type WhyParked } from '../../revival/sleep.ts';
import { line, lines } from '../forms.ts';
import { choiceOf } from '../layout.tsx';

const oneOf = <K extends string>(of: Readonly<Record<K, unknown>>) => z.enum(Object.keys(of) as [K, ...K[]]);
const many = <T extends z.ZodType>(one: T) =>
  z.preprocess((sent) => (sent === undefined ? [] : [sent].flat()), z.array(one));
const evidence = z.enum(EVIDENCE).default('own memory');

const SLEEP = {
  lastRan: line,
  lastRanChoice: line,
  lastRanAsked: line,
  lastRanBy: evidence,
  why: oneOf<WhyParked>(WHY_PARKED).default('unknown'),
  whyWords: line,
  whyBy: evidence,
  stood: many(oneOf<Stood>(STOOD)),
  putAway: oneOf<PutAway>(PUT_AWAY).default('unknown'),
  putAwayBy: evidence,
  ceiling: line,
  hands: oneOf<Hands>(HANDS).default('both'),
  note: lines,
};

export const SLEEP_FORM = z.object(SLEEP);
export const INTAKE_FORM = z.object({
  ...SLEEP,
  /** A car of the collection; empty: one that is described below. */
  car: line,
  name: line,
  built: line,
  builtChoice: line,
  builtAsked: line,
  start: line,
  ours: z.enum(['ours', 'looking']).default('ours'),
  distance: line,
});
export type IntakeForm = z.infer<typeof INTAKE_FORM>;

export const sleepIn = (form: z.infer<typeof SLEEP_FORM>): SleepGiven => ({
  ...form,
  lastRanChoice: choiceOf(form.lastRan, form.lastRanAsked, form.lastRanChoice),
});

/** Looks come as look.<key>, dates of parts as date.<part>, their evidence as evidence.<part>. */
export const SURVEY_FORM = z.object({ day: line, by: line, note: lines }).catchall(z.string().trim().max(200));
export type SurveyForm = z.infer<typeof SURVEY_FORM>;

export const looksIn = (form: Readonly<Record<string, unknown>>): LooksGiven =>
  Object.fromEntries(
    Object.entries(form).flatMap(([name, value]) =>
      name.startsWith('look.') && typeof value === 'string' ? [[name.slice('look.'.length), value]] : [],
    ),
  );

export const GATE_FORM = z.object({ day: line, by: line, note: lines, writing: line });
export const STOP_FORM = z.object({ day: line, by: line, note: lines, ceiling: line });
export const LEAVE_FORM = z.object({ day: line, by: line, reason: line });
export const END_FORM = z.object({ how: z.enum(['on the road', 'given up', 'not bought']), despite: lines });

/** The most lines of a leak map, or notes of a run, that a form takes at once. */
export const ROOM = 8;

/** Spots come as place.<n>, fluid.<n>, how.<n>; a row without a place is none. */
export const spotsIn = (form: Readonly<Record<string, string>>): Spot[] =>
  rows((n) => {
    const place = pick(LEAK_PLACES, form[`place.${n}`]);
    const fluid: LeakFluid = pick(LEAK_FLUIDS, form[`fluid.${n}`]) ?? 'unknown';
    const how: LeakClass = pick(LEAK_CLASSES, form[`how.${n}`]) ?? 'falls';
    return place ? [{ place: place as LeakPlace, fluid, how }] : [];
  });

/** Notes come as note.<n> (sense and kind), versus.<n>, words.<n>. */
export const notesIn = (form: Readonly<Record<string, string>>): RunNote[] =>
  rows((n) => {
    const [sense, kind] = (form[`note.${n}`] ?? '').split(':');
    const known = pick(SENSES, sense);
    if (!known || !(SENSES[known].kinds as readonly string[]).includes(kind ?? '')) return [];
    const versus = VERSUS.find((one) => one === form[`versus.${n}`]) ?? ('new' satisfies Versus);
    return [{ sense: known as Sense, kind: kind ?? '', versus, words: form[`words.${n}`] ?? '' }];
  });

const rows = <T>(read: (n: number) => T[]): T[] => Array.from({ length: ROOM }, (_, n) => read(n)).flat();
const pick = <K extends string>(of: Readonly<Record<K, unknown>>, key: string | undefined): K | undefined =>
  key !== undefined && Object.hasOwn(of, key) ? (key as K) : undefined;

export const RUN_FORM = z
  .object({
    day: line,
    by: line,
    note: lines,
    ended: z.enum(['as planned', 'stopped']).default('as planned'),
    distance: line,
    driven: line,
    hubs: line,
    despite: line,
  })
  .catchall(z.string().trim().max(200));
export const LEAKS_FORM = z.object({ day: line, by: line, note: lines }).catchall(z.string().trim().max(200));
