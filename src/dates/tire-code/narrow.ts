import type { CivilDate } from '../civil.ts';
import type { TireWeek } from '../tire-week.ts';
import { dayInWords } from '../words.ts';
import type { DroppedWeek } from './answer.ts';

/** What is known about the tire beside its number. */
export interface KnownAboutTire {
  /** The small triangle some makers set after the digits in the 1990s. "Not seen" proves nothing. */
  ninetiesMark?: 'seen' | 'not seen' | undefined;
  /** Earliest day it can have been made: the car's build, where no older tire can be on it. */
  notBefore?: CivilDate | undefined;
  /** Latest day it was fitted. */
  fittedBy?: CivilDate | undefined;
}

export const inNineties = ({ year }: TireWeek): boolean => year >= 1990 && year <= 1999;

const whyNot = (span: TireWeek, known: KnownAboutTire): string | null => {
  const name = `Week ${span.week} of ${span.year}`;
  if (known.ninetiesMark === 'seen' && !inNineties(span))
    return `${name} is not in the 1990s, and the small triangle stands for the 1990s.`;
  if (known.notBefore && span.to < known.notBefore)
    return `${name} ended on ${dayInWords(span.to)}, before ${dayInWords(known.notBefore)}, the earliest day it can have been made.`;
  if (known.fittedBy && span.from > known.fittedBy)
    return `${name} began on ${dayInWords(span.from)}, after it was fitted (by ${dayInWords(known.fittedBy)}).`;
  return null;
};

/** The weeks that known facts leave, and those they strike out with the reason; order is kept. */
export const narrowWeeks = (weeks: TireWeek[], known: KnownAboutTire): { kept: TireWeek[]; dropped: DroppedWeek[] } => {
  const kept: TireWeek[] = [];
  const dropped: DroppedWeek[] = [];
  for (const candidate of weeks) {
    const why = whyNot(candidate, known);
    if (why) dropped.push({ candidate, why });
    else kept.push(candidate);
  }
  return { kept, dropped };
};
