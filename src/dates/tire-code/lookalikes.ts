import type { TireCodeText } from './text.ts';

/** Letters read for a digit. */
const DIGIT_FOR: Record<string, string> = { O: '0', Q: '0', I: '1', L: '1', Z: '2', S: '5', G: '6', B: '8' };
const PERMITTED = 'ABCDEFHJKLMNPRTUVWXY0123456789';

/** Symbols outside the set of 49 CFR 574.5, each once, in the order they stand. */
export const symbolsNotPermitted = (symbols: string): string[] => [
  ...new Set([...symbols].filter((symbol) => !PERMITTED.includes(symbol))),
];

/** Without a date at most eight symbols (old layout) or nine (3 + 6) remain, so from ten on the end is a date. */
const LONGEST_PARTIAL = 9;
const WHOLE = 13;

/**
 * A date group with letters in it, and the digits they look like where those are a past week; null where the end of
 * the number is no such group. B and L also stand in plant and optional codes, so they need a suggestion that decodes.
 */
export const readLookalikes = (
  { groups, symbols, dot }: TireCodeText,
  decodes: (code: string) => boolean,
): { suggest?: string } | null => {
  const last = groups.at(-1) ?? '';
  const count = symbols.length;
  const ownGroup = last.length === 3 || last.length === 4;
  const group = ownGroup ? last : last.slice(-4);
  const mustBeDate = count === WHOLE || (ownGroup && last.length === 4 && groups.length > 1 && count > LONGEST_PARTIAL);
  const digits = [...group].filter((symbol) => /[0-9]/.test(symbol)).length;
  if (digits === 0 || digits === group.length) return null;

  const meant = [...group].map((symbol) => DIGIT_FOR[symbol] ?? symbol).join('');
  const allLookAlike = /^[0-9]+$/.test(meant);
  const suggest = allLookAlike && decodes(meant) ? { suggest: meant } : {};
  if (mustBeDate && digits >= 2) return suggest;
  if (!allLookAlike) return null;
  if (symbolsNotPermitted(group).length > 0) return suggest;
  const plantCode = last.length === 3 && (dot || groups.length > 1);
  return ownGroup && !plantCode && 'suggest' in suggest ? suggest : null;
};
