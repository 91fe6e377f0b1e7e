import type { Boiling } from '../ageing/brake-fluid/boiling.ts';
import { inUnit, spanInWords } from '../ageing/words.ts';

/** “147 to 172 °C”; beyond the published curve the low end is only the most it can be. */
export const boilingInWords = (boiling: Boiling): string =>
  boiling.atMost
    ? `${inUnit(boiling.low, '°C', 0)} or less, at best ${inUnit(boiling.high, '°C', 0)}`
    : spanInWords(boiling, '°C', 0);
