/** Words people typed, for a sheet that names no price: sums beside their currency are struck out, the rest stays. */
export const withoutSums = (words: string, currency: string): string => {
  const money = `(?:\\p{Sc}|\\b(?:${currency}|dollars?|euros?)\\b)`;
  const number = String.raw`\d+(?:[.,’' ]\d+)*`;
  // On both sides: struck out too much is the lesser harm.
  return words.replace(new RegExp(`(?:${number}\\s?)?${money}(?:\\s?${number})?`, 'giu'), '…');
};
