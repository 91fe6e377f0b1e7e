/** What programs tell of lay-ups, as the acts take it, and faults back at their place in the document. */
import type { AnswerGiven } from '../../acts/details.ts';
import type { LayUpGiven } from '../../acts/lay-up.ts';
import type { ReadingGiven } from '../../acts/record-reading.ts';
import type { StayHere } from '../../acts/stays.ts';
import type { PlanStep } from '../../plans/plan.ts';
import type { LayUpTold, ReadingTold } from './schemas/lay-ups.ts';

/** What was said so far, as typed; a place or a person that is gone is not said any more. */
export const saidOf = ({ record: { row }, place }: StayHere, members: readonly string[]): LayUpGiven => {
  const { parkedOn, returnOn, visitorId, phone, circumstances, numbers, papers, note } = row;
  return {
    parkedOn,
    returnOn: returnOn ?? '',
    place: place?.id ?? '',
    visitor: visitorId && members.includes(visitorId) ? visitorId : '',
    phone,
    circumstances,
    numbers: {
      dose: String(numbers.dose ?? ''),
      engine: String(numbers.engine ?? ''),
      cylinders: String(numbers.cylinders ?? ''),
    },
    papers: {
      storageFrom: papers.storageFrom ?? '',
      roadUntil: papers.roadUntil ?? '',
      noticeFrom: papers.noticeFrom ?? '',
      renewsOn: papers.renewsOn ?? '',
      rules: papers.rules,
    },
    note,
  };
};

/** Only what is named changes. */
export const changed = (before: LayUpGiven, told: LayUpTold): LayUpGiven => {
  const { numbers, papers, circumstances = before.circumstances, ...rest } = told;
  return {
    ...before,
    ...typed(rest),
    circumstances,
    numbers: { ...before.numbers, ...typed(numbers ?? {}) },
    papers: { ...before.papers, ...typed(papers ?? {}) },
  };
};

/** As the acts take it: as typed, empty where it is forgotten. */
const typed = <Key extends string>(
  told: Readonly<Partial<Record<Key, string | number | null | undefined>>>,
): Partial<Record<Key, string>> =>
  Object.fromEntries(
    Object.entries<string | number | null | undefined>(told).flatMap(([key, value]) =>
      value === undefined ? [] : [[key, String(value ?? '')]],
    ),
  ) as Partial<Record<Key, string>>;

/** What becomes true by the step itself, as its form fills it in, and over it what was told. */
export const answersOf = (
  { records }: PlanStep,
  { found }: StayHere,
  told: Readonly<Record<string, Readonly<Record<string, string | number>>>>,
): Record<string, Record<string, AnswerGiven>> =>
  Object.fromEntries(
    found.parts
      .filter(({ kind }) => records.renews?.includes(kind))
      .map(({ id, kind }) => {
        const own = (records.answers ?? []).filter(({ kinds }) => kinds.includes(kind));
        const answers = { ...Object.fromEntries(own.map(({ key, value }) => [key, value])), ...told[id] };
        return [
          id,
          Object.fromEntries(
            Object.entries(answers).map(([key, answer]) => [key, { typed: String(answer), unit: '' }]),
          ),
        ];
      }),
  );

/** A reading that knows its place in the document, which it keeps where the act hands it on. */
interface Placed extends ReadingGiven {
  index: number;
}
export const placeOf = (reading: ReadingGiven): string => `readings/${(reading as Placed).index}/`;

export const readingOn =
  (day: string) =>
  ({ part, value, unit, warmth = '', ...rest }: ReadingTold, index: number): Placed => ({
    ...rest,
    partId: part,
    typed: String(value),
    unit: unit ?? '',
    day,
    warmth: String(warmth),
    index,
  });

const ID = '[\\da-f-]{36}';
const PLACES: readonly (readonly [form: RegExp, document: string])[] = [
  [/^(storageFrom|roadUntil|noticeFrom|renewsOn)$/, 'papers/$1'],
  [/^(dose|engine|cylinders)$/, 'numbers/$1'],
  [/^look\.(.+)$/, 'answers/$1'],
  [/^looks$/, 'answers'],
  [/^(readings\/\d+)\/typed$/, '$1/value'],
  [/^readings\/\d+\/day$/, 'day'],
  [/^(?:dates\/0\/)?distance$/, 'odometer'],
  [/^(?:dates\/0\/)?typed$/, 'day'],
  [/^reason$/, 'note'],
  [new RegExp(`^(${ID})\\.(.+)$`), 'answers/$1/$2'],
];
export const inDocument = (field: string): string =>
  PLACES.reduce((place, [form, document]) => place.replace(form, document), field);
