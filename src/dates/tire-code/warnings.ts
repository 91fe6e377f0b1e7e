import type { CivilDate } from '../civil.ts';
import type { TireWeek } from '../tire-week.ts';
import { symbolsNotPermitted } from './lookalikes.ts';
import type { Reading } from './pick.ts';
import type { TireCodeText } from './text.ts';

/** Four digits became mandatory. 64 FR 36807. */
const FOUR_DIGITS_SINCE: CivilDate = '2000-07-02';
/** The 13-symbol layout came; plants with old codes could keep the old layout for ten years. 80 FR 19553. */
const NEW_LAYOUT_SINCE: CivilDate = '2015-04-13';
const OLD_LAYOUT_UNTIL: CivilDate = '2025-04-13';

/**
 * Codes for what is odd about a number that still has a date: layout and date that do not go together, and symbols
 * outside the set of 49 CFR 574.5. A week counts as outside a layout’s years only when all of it is.
 */
export const tireCodeWarnings = ({ form, dateCode }: Reading, text: TireCodeText, weeks: TireWeek[]): string[] => {
  const warnings: string[] = [];
  const everyWeek = (test: (span: TireWeek) => boolean): boolean => weeks.every(test);
  if (form === 'retread-7' || text.retread) warnings.push('retread-date-only');
  if (dateCode.length === 4 && everyWeek(({ from }) => from < FOUR_DIGITS_SINCE)) warnings.push('early-four-digit');
  if (form === 'legacy-4' && everyWeek(({ from }) => from > OLD_LAYOUT_UNTIL))
    warnings.push('legacy-length-after-2025-04-13');
  if (form === 'new-13' && everyWeek(({ to }) => to < NEW_LAYOUT_SINCE)) warnings.push('13-symbols-before-2015-04-13');
  const beforeDate = text.symbols.slice(0, text.symbols.length - dateCode.length);
  return [...warnings, ...symbolsNotPermitted(beforeDate).map((symbol) => `symbol-not-permitted:${symbol}`)];
};
