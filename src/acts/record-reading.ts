/** Recording what an instrument showed: checked against what it can show, and asked back where that is seldom seen. */
import type { Gauge, Stretch } from '../catalogue/gauge.ts';
import type { Kind } from '../catalogue/kind.ts';
import { convert, type Unit } from '../catalogue/units.ts';
import { type CivilDate, isCivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import type { Answers, CarFacts, PartFacts } from '../findings/facts.ts';
import { gaugesOf } from '../findings/measured.ts';
import { sinceOf } from '../findings/since.ts';
import type { CarWithParts } from '../store/cars.ts';
import type { Store } from '../store/open.ts';
import { type NewReading, recordReadings } from '../store/readings.ts';
import type { Acting } from './add-car.ts';
import { done, type Fault, type Outcome, refused } from './fault.ts';
import { kindOf } from './parts.ts';
import { asTyped, isUnit, limitIn, readNumber } from './typed-number.ts';

export interface ReadingGiven {
  partId: string;
  gauge: string;
  typed: string;
  /** Unit chosen beside the field; empty: the gauge's own. */
  unit: string;
  day: string;
  /** Temperature of what was read, as typed; empty where none was taken. */
  warmth: string;
  warmthUnit: string;
  instrument: string;
  note: string;
  /** True where a reading seldom seen was confirmed. */
  sure: boolean;
}

/** Records some readings of a car, all or none; faults name their field with `at` before it. */
export const recordReadingsAct = (
  store: Store,
  acting: Acting,
  { facts, parts }: Pick<CarWithParts, 'facts' | 'parts'>,
  given: readonly ReadingGiven[],
  at: (reading: ReadingGiven) => string,
): Outcome<number> => {
  if (given.length === 0)
    return refused({ field: 'readings', message: 'Nothing was typed yet: put a number beside what you read.' });
  const faults: Fault[] = [];
  const read: NewReading[] = [];
  for (const reading of given) {
    const part = parts.find(({ id }) => id === reading.partId);
    const one = part
      ? readReading(reading, part, kindOf(part), facts, acting)
      : refused({ field: 'typed', message: 'That part is not on this car any more.' });
    if (one.ok) read.push(one.value);
    else faults.push(...one.faults.map((fault) => ({ ...fault, field: `${at(reading)}${fault.field}` })));
  }
  if (faults.length > 0) return { ok: false, faults };
  recordReadings(store, acting.collectionId, read);
  return done(read.length);
};

const readReading = (
  given: ReadingGiven,
  part: PartFacts,
  kind: Kind,
  car: CarFacts,
  acting: Acting,
): Outcome<NewReading> => {
  const test = gaugesOf(kind).find(({ gauge }) => gauge.key === given.gauge);
  if (!test) return refused({ field: 'gauge', message: `${kind.name}: there is no gauge “${given.gauge}”.` });
  const { gauge } = test;
  const value = numberIn(given, gauge, part.details);
  const warmth = warmthOf(given, gauge);
  const day = dayFault(given.day, part, kind, car, acting.today);
  const faults = [value, warmth].flatMap((outcome) => (outcome.ok ? [] : outcome.faults));
  if (day) faults.push(day);
  if (!value.ok || !warmth.ok || faults.length > 0) return { ok: false, faults };
  return done({
    partId: part.id,
    gauge: gauge.key,
    day: given.day as CivilDate,
    value: value.value.value,
    typed: given.typed.trim(),
    unit: value.value.unit,
    warmth: warmth.value,
    instrument: given.instrument,
    note: given.note,
    recordedOn: acting.today,
    recordedBy: acting.personId,
  });
};

export const unitsOf = ({ unit, also = [] }: Gauge): readonly Unit[] => [unit, ...also];

/** What is usual for this part: where an answer shifts it, by that answer. */
const usualFor = ({ usual, bands }: Gauge, details: Answers): Stretch => {
  if (!('of' in usual)) return usual;
  const answer = 'by' in bands ? details[bands.by] : undefined;
  return usual.of[String(answer ?? 'unknown')] ?? (usual.of.unknown as Stretch);
};

const numberIn = (
  { typed, unit, sure }: ReadingGiven,
  gauge: Gauge,
  details: Answers,
): Outcome<{ value: number; unit: Unit }> => {
  const units = unitsOf(gauge);
  const picked = units.find((one) => one === (unit || gauge.unit));
  if (!picked)
    return refused({ field: 'typed', message: `“${unit}” is not a unit for this: use ${units.join(' or ')}.` });
  const read = readNumber(typed, picked, units, gauge.decimals);
  if (!read.ok) return refused({ field: 'typed', message: read.message });
  // What the gauge can’t tell is not kept: 12.598 V is 12.60.
  const exact = convert(read.value, read.unit, gauge.unit);
  const value = read.unit === gauge.unit ? Number(exact.toFixed(gauge.decimals)) : exact;
  const shown = asTyped(read.value, read.unit);
  const usual = usualFor(gauge, details);
  const said = ([low, high]: Stretch): string =>
    `${limitIn(low, gauge.unit, read.unit, gauge.decimals)} to ${limitIn(high, gauge.unit, read.unit, gauge.decimals)}`;
  if (value < gauge.range[0] || value > gauge.range[1])
    return refused({
      field: 'typed',
      message: `${shown} can’t be: this reads from ${said(gauge.range)}. Check the number and its unit.`,
    });
  if (!sure && (value < usual[0] || value > usual[1]))
    return refused({
      field: 'typed',
      message: `${shown} is seldom seen: most read from ${said(usual)}. Is it what the instrument showed?`,
      choices: [{ value: 'sure', label: `Yes, ${shown}` }],
    });
  return done({ value, unit: read.unit });
};

/** What a fluid, a tire or the air beside it can have, °C. */
const WARMTH = { low: -50, high: 120 } as const;

const warmthOf = ({ warmth, warmthUnit }: ReadingGiven, gauge: Gauge): Outcome<number | null> => {
  if (warmth.trim() === '' || !gauge.warmth) return done(null);
  const picked = isUnit(warmthUnit) && (warmthUnit === '°F' || warmthUnit === '°C') ? warmthUnit : '°C';
  const read = readNumber(warmth, picked, ['°C', '°F'], 1);
  if (!read.ok) return refused({ field: 'warmth', message: read.message });
  const value = convert(read.value, read.unit, '°C');
  return value >= WARMTH.low && value <= WARMTH.high
    ? done(value)
    : refused({
        field: 'warmth',
        message: `A temperature from ${asTyped(WARMTH.low, '°C')} to ${asTyped(WARMTH.high, '°C')} is meant here.`,
      });
};

/** A reading belongs to the part or the fluid that was there that day. */
const dayFault = (day: string, part: PartFacts, kind: Kind, car: CarFacts, today: CivilDate): Fault | null => {
  if (!isCivilDate(day)) return { field: 'day', message: `“${day}” is no day.` };
  if (day > today) return { field: 'day', message: 'That day lies ahead.' };
  const start = sinceOf(part.claims, kind.clock === 'filled' ? 'filled' : 'fitted', car.built, false)?.from;
  return start && day < start
    ? {
        field: 'day',
        message: `This one is there since ${dayInWords(start)} at the earliest: a reading of before belongs to the one before it.`,
      }
    : null;
};
