/** Turns what a person read or knows about a part into a claim: code, mark or date, checked against the part's other dates. */
import type { Clock } from '../catalogue/clock.ts';
import type { Kind, Mark } from '../catalogue/kind.ts';
import { addMonths, type CivilDate } from '../dates/civil.ts';
import { type DateRange, edtfOf } from '../dates/partial-date.ts';
import { readTypedDate, type TypedDate } from '../dates/typed-date.ts';
import { dayInWords, rangeInWords } from '../dates/words.ts';
import { CLOCK_WORDS } from '../findings/explain.ts';
import type { CarFacts, Claim, Evidence } from '../findings/facts.ts';
import { BEFORE, sinceOf } from '../findings/since.ts';
import type { NewClaim } from '../store/cars.ts';
import type { Acting } from './add-car.ts';
import { FIRST_CARS } from './build-date.ts';
import { done, type Outcome, refused } from './fault.ts';
import { odometerFault } from './odometer.ts';
import { type MarkRead, readMark } from './read-mark.ts';

export interface ClaimGiven {
  clock: Clock;
  /** A code, a mark or a date, as it was typed. */
  typed: string;
  /** The meaning picked where the text had several: EDTF. */
  choice?: string | undefined;
  evidence: Evidence;
  km: number | null;
  note: string;
  /** The small triangle after a three-digit tire code. */
  ninetiesMark?: 'seen' | 'not seen' | undefined;
}

export interface ClaimRead {
  claim: NewClaim;
  understood: string;
}

/** How much older than the car its tires may be; anything older is another car's. From memory. */
export const TIRE_BEFORE_CAR_MONTHS = 12;

/** Longest a part is made before its car; a plain slip beyond, from memory. */
const MADE_BEFORE_CAR_MONTHS = 120;

export const readClaim = (
  given: ClaimGiven,
  part: { kind: Kind; claims: readonly Claim[] },
  car: CarFacts,
  acting: Acting,
): Outcome<ClaimRead> => {
  const read = meaningOf(given, part, car, acting);
  if (!read.ok) return read;
  const { said, from, to, edtf, understood } = read.value;
  if (said === 'original' && given.clock === 'printed')
    return refused({
      field: 'typed',
      message: 'A label states its own last valid day: type what it says, or “unknown”.',
    });
  if (said === 'original' && car.built.from === null && car.built.to === null)
    return refused({
      field: 'typed',
      message: '“Original” means the car’s build date, and that is not known. Give the car its build date first.',
    });
  const clash = said === 'date' ? clashOf(given.clock, { from, to }, part, car) : null;
  if (clash) return refused({ field: 'typed', message: clash });
  const meter = given.km === null ? null : odometerFault(given.km, { from, to }, car);
  if (meter) return refused(meter);
  const { clock, typed, evidence, km, note } = given;
  return done({
    claim: {
      clock,
      said,
      typed: typed.trim(),
      edtf,
      from,
      to,
      evidence,
      km,
      note,
      recordedOn: acting.today,
      recordedBy: acting.personId,
    },
    understood,
  });
};

/** Evidence that shows the mark itself. */
const OFF_THE_PART: readonly Evidence[] = ['read on the part', 'dated photo'];

interface Meaning extends DateRange {
  said: Claim['said'];
  edtf: string | null;
  understood: string;
}

const meaningOf = (
  given: ClaimGiven,
  part: { kind: Kind; claims: readonly Claim[] },
  car: CarFacts,
  acting: Acting,
): Outcome<Meaning> => {
  const { clock, typed, choice, evidence } = given;
  const mayBeAhead = clock === 'printed';
  const notBefore = mayBeAhead ? FIRST_CARS : earliest(clock, car);
  const date = readTypedDate(choice || typed, { ...acting, mayBeAhead, notBefore });
  const understood = date.ok || date.reason !== 'not understood';
  const plain = understood && isNoMark(typed, part.kind.mark, evidence);
  const marked = part.kind.mark && !choice && !plain && (clock === 'made' || clock === 'printed');
  const mark = marked ? readMark(typed, part.kind.mark as Mark, clock, acting.today, knownOf(part, car, given)) : null;
  if (mark?.ok) return meaningOfMark(typed, mark, date, acting.today);
  if (date.ok) return meaningOfDate(date);
  if (date.reason === 'ambiguous') return refused({ field: 'typed', message: date.message, choices: date.choices });
  // Without a digit it was meant for no mark.
  return refused({ field: 'typed', message: (/\d/.test(typed) && mark?.message) || date.message });
};

/**
 * True for text that is a date wherever it can be one. A tire's code is bare digits then, though "June 2015" and
 * "2009/2013" would fit the old layout of its number, too; a receipt can quote it. No other mark is quoted like that:
 * what does not come off the part is a date.
 */
const isNoMark = (typed: string, mark: Mark | undefined, evidence: Evidence): boolean =>
  mark === 'tire code' ? /\D/.test(typed.trim()) : /[a-z]{3}/i.test(typed) || !OFF_THE_PART.includes(evidence);

const meaningOfDate = (date: TypedDate & { ok: true }): Outcome<Meaning> =>
  date.said === 'date'
    ? done({ said: 'date', ...date.date, understood: date.understood })
    : done({ said: date.said, edtf: null, from: null, to: null, understood: date.said });

/** A mark with one reading, unless the same text is a date of another day too: "2015" is a year, and week 20 of 2015. */
const meaningOfMark = (
  typed: string,
  mark: MarkRead & { ok: true },
  date: TypedDate,
  today: CivilDate,
): Outcome<Meaning> => {
  const choices = new Map(mark.candidates.map((candidate) => [edtfOf(candidate), rangeInWords(candidate)]));
  const [oldest, newest] = [mark.candidates[0], mark.candidates.at(-1)];
  if (!oldest || !newest) return refused({ field: 'typed', message: `“${typed}” leaves no date open.` });
  if (choices.size > 1)
    choices.set(edtfOf({ from: oldest.from, to: newest.to }), 'Not known: keep all of them, and count from the oldest');
  if (date.ok && date.said === 'date' && !(date.date.from === oldest.from && date.date.to === oldest.to))
    choices.set(date.date.edtf, rangeInWords(date.date));
  if (!date.ok && date.reason === 'ambiguous')
    for (const { value, label } of date.choices) if (!choices.has(value)) choices.set(value, label);
  if (choices.size > 1)
    return refused({
      field: 'typed',
      message: [`“${typed.trim()}” can mean more than one date. Which is it?`, ...mark.next].join(' '),
      choices: [...choices].map(([value, label]) => ({ value, label })),
    });
  const to = oldest.from <= today && oldest.to > today ? today : oldest.to;
  return done({ said: 'date', edtf: edtfOf(oldest), from: oldest.from, to, understood: rangeInWords(oldest) });
};

/** What narrows a code: no part is much older than its car, nor made after it was fitted. */
const knownOf = (
  { kind, claims }: { kind: Kind; claims: readonly Claim[] },
  car: CarFacts,
  { ninetiesMark }: ClaimGiven,
): { notBefore?: CivilDate; fittedBy?: CivilDate; ninetiesMark?: 'seen' | 'not seen' } => {
  const fitted = sinceOf(
    claims.filter(({ clock }) => clock === 'fitted'),
    'fitted',
    car.built,
    kind.severity === 'safety',
  );
  return {
    // Its tires may be a year older than the car; anything older is another car's.
    ...(car.built.from ? { notBefore: addMonths(car.built.from, -TIRE_BEFORE_CAR_MONTHS) } : {}),
    ...(fitted?.to ? { fittedBy: fitted.to } : {}),
    ...(ninetiesMark ? { ninetiesMark } : {}),
  };
};

const earliest = (clock: Clock, { built }: CarFacts): { day: CivilDate; why: string } => {
  if (built.from === null) return FIRST_CARS;
  if (clock === 'made')
    return { day: addMonths(built.from, -MADE_BEFORE_CAR_MONTHS), why: 'that is ten years before the car was built' };
  return { day: built.from, why: 'the car was not built before' };
};

/** Why a date can't stand beside the part's other dates: nothing is fitted before it is made, or filled before that. */
const clashOf = (
  clock: Clock,
  range: DateRange,
  { kind, claims }: { kind: Kind; claims: readonly Claim[] },
  car: CarFacts,
): string | null => {
  if (clock === 'printed') return null;
  const cautious = kind.severity === 'safety';
  const other = (of: Clock): DateRange | null =>
    sinceOf(
      claims.filter((claim) => claim.clock === of),
      of,
      car.built,
      cautious,
    );
  for (const earlier of BEFORE[clock]) {
    const start = other(earlier)?.from;
    if (start && range.to && range.to < start)
      return `That would be before it was ${CLOCK_WORDS[earlier].toLowerCase()}: ${CLOCK_WORDS[earlier].toLowerCase()} not before ${dayInWords(start)}. One of the two dates is wrong, or this is another part: then record it as renewed.`;
  }
  for (const [later, earlierOnes] of Object.entries(BEFORE) as [Clock, readonly Clock[]][]) {
    const end = earlierOnes.includes(clock) ? other(later)?.to : null;
    if (end && range.from && range.from > end)
      return `That would be after it was ${CLOCK_WORDS[later].toLowerCase()}: ${CLOCK_WORDS[later].toLowerCase()} not after ${dayInWords(end)}. One of the two dates is wrong, or this is another part: then record it as renewed.`;
  }
  return null;
};
