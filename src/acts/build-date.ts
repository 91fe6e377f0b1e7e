import type { CivilDate } from '../dates/civil.ts';
import { readTypedDate } from '../dates/typed-date.ts';
import type { DateOrder } from '../dates/typed-point.ts';
import type { CarRow } from '../store/cars.ts';
import { done, type Outcome, refused } from './fault.ts';

/** No motor car is older; common knowledge. */
export const FIRST_CARS = { day: '1885-01-01' as CivilDate, why: 'there were no motor cars before' };

type Built = Pick<CarRow, 'builtTyped' | 'builtEdtf' | 'builtFrom' | 'builtTo'>;

/** Reads a car's build date; `choice` is the meaning picked where the text had several. "Unknown" is an answer. */
export const readBuildDate = (
  typed: string,
  choice: string | undefined,
  rules: { today: CivilDate; order: DateOrder },
): Outcome<Built> => {
  const read = readTypedDate(choice || typed, { ...rules, notBefore: FIRST_CARS });
  if (!read.ok)
    return refused({
      field: 'built',
      message: read.message,
      ...(read.reason === 'ambiguous' ? { choices: read.choices } : {}),
    });
  if (read.said === 'date') {
    const { edtf, from, to } = read.date;
    return done({ builtTyped: typed, builtEdtf: edtf, builtFrom: from, builtTo: to });
  }
  if (read.said === 'original')
    return refused({ field: 'built', message: 'This is the date “original” refers to. Type the year, or “unknown”.' });
  return done({ builtTyped: typed, builtEdtf: null, builtFrom: null, builtTo: null });
};
