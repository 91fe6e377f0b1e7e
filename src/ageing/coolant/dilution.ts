/** Making a fill stronger without emptying it. */

/**
 * Liters to drain, and as many of concentrate to add, for a system of so many liters; strengths in vol % of glycol. Null
 * where that cannot be done: weaker than it is, or as strong as the concentrate. By the balance of the mixture, well mixed.
 */
export const strengthen = (liters: number, from: number, to: number, concentrate: number): number | null => {
  const possible = liters > 0 && from >= 0 && from <= to && to < concentrate && concentrate <= 100;
  return possible ? (liters * (to - from)) / (concentrate - from) : null;
};
