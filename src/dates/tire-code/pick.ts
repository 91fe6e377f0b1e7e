import type { TireCodeReason, TireForm } from './answer.ts';
import { yearOfFourDigits } from './digits.ts';
import { readLookalikes } from './lookalikes.ts';
import type { TireCodeText } from './text.ts';

/** Which digits of the number to read as its date, and in what layout. */
export interface Reading {
  form: TireForm;
  dateCode: string;
}
export type Picked =
  | { ok: true; readings: [Reading, ...Reading[]] }
  | { ok: false; reason: TireCodeReason; suggest?: string };

const LONGEST = 13;
const RETREAD = 7;
/** Seven symbols with a four-digit date came with the three-symbol plant code, 13 April 2015. 80 FR 19553. */
const SHORT_RETREADS_SINCE = 2015;

const formOf = (digits: 3 | 4, count: number): TireForm | null => {
  // Old layout: 2 + 2 + up to 4, then the date; three digits make 7 to 11 symbols, four make 8 to 12.
  if (digits === 3) return count >= 7 && count <= 11 ? 'legacy-3' : null;
  if (count === RETREAD) return 'retread-7';
  if (count === LONGEST) return 'new-13';
  return count >= 8 && count < LONGEST ? 'legacy-4' : null;
};

/** Trailing groups that are digits only and make exactly three or four together: "2318", "23 18", "23 9". */
const ownGroups = (groups: string[]): string | null => {
  let digits = '';
  for (const group of groups.toReversed()) {
    if (!/^[0-9]+$/.test(group)) return null;
    digits = group + digits;
    if (digits.length >= 3) return digits.length <= 4 ? digits : null;
  }
  return null;
};

/** Number typed without spaces before its date: the last four, then the last three. */
const runTogether = (last: string, count: number, retread: boolean): Reading[] => {
  const readings: Reading[] = [];
  const four = /[0-9]{4}$/.exec(last)?.[0];
  const three = /[0-9]{3}$/.exec(last)?.[0];
  const [formOfFour, formOfThree] = [formOf(4, count), formOf(3, count)];
  if (four && formOfFour) readings.push({ form: formOfFour, dateCode: four });
  if (three && formOfThree) readings.push({ form: formOfThree, dateCode: three });
  // Before 2015 seven symbols were the shortest old number (2 + 2 + 3), so then the last three come first.
  const tooEarly = four !== undefined && yearOfFourDigits(four) < SHORT_RETREADS_SINCE;
  return count === RETREAD && tooEarly && !retread ? readings.toReversed() : readings;
};

const refused = (reason: TireCodeReason, suggest?: string): Picked => ({
  ok: false,
  reason,
  ...(suggest ? { suggest } : {}),
});

/** Finds the date in a split number by the layouts of 49 CFR 574.5; `decodes` tells whether digits are a past week. */
export const pickDate = (text: TireCodeText, decodes: (code: string) => boolean): Picked => {
  const { groups, symbols, retread } = text;
  const last = groups.at(-1);
  if (last === undefined) return refused('empty');
  const count = symbols.length;
  if (/^[0-9]+$/.test(symbols) && count < RETREAD) {
    if (count === 4) return { ok: true, readings: [{ form: 'date-only', dateCode: symbols }] };
    if (count === 3) return { ok: true, readings: [{ form: 'date-only-3', dateCode: symbols }] };
    return refused('bad-length');
  }
  const own = ownGroups(groups);
  const tail = own ?? /[0-9]{4}$/.exec(last)?.[0];
  // Three digits at the end of a long number are a date that lost a symbol: nothing to suggest.
  const whole = tail !== undefined && (tail.length === 4 || count < RETREAD);
  const suggest = whole && decodes(tail) ? tail : undefined;
  if (count > LONGEST) return refused('bad-length', suggest);
  if (own) {
    const form = formOf(own.length === 4 ? 4 : 3, count);
    return form ? { ok: true, readings: [{ form, dateCode: own }] } : refused('bad-length', suggest);
  }
  const lookalike = readLookalikes(text, decodes);
  if (lookalike) return refused('bad-date-symbol', lookalike.suggest);
  // Plant code and maker's code grouped as on the tire, nothing after: the side that leaves the date out.
  if (groups.length === 2 && groups[0]?.length === 3 && last.length === 6) return refused('no-date');
  const [first, ...others] = runTogether(last, count, retread);
  if (first) return { ok: true, readings: [first, ...others] };
  return tail ? refused('bad-length', suggest) : refused('no-date');
};
