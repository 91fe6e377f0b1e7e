/** Water and boiling points in words no finer than the models bear: halves of a percent, steps of 5 °C, outward. */
import { type Boiling, WET_WATER } from '../ageing/brake-fluid/boiling.ts';
import type { Span } from '../ageing/span.ts';
import { inUnit, spanInWords } from '../ageing/words.ts';

const down = (value: number, step: number): number => Math.floor(value / step + 1e-9) * step;
const up = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step;

/** “2 to 4.5 % water”; past the published curve only “more than 3.7 %”. */
export const waterInWords = ({ low, high }: Span): string => {
  if (low > WET_WATER) return `more than ${WET_WATER} % water`;
  const [from, to] = [down(low, 0.5), up(high, 0.5)];
  return `${from === to ? '' : `${from} to `}${to} % water`;
};

/** “145 to 175 °C”; beyond the published curve the low end is only the most it can be. */
export const boilingInWords = (boiling: Boiling): string => {
  const span = { low: down(boiling.low, 5), high: up(boiling.high, 5) };
  if (!boiling.atMost) return spanInWords(span, '°C', 0);
  return span.low === span.high
    ? `${inUnit(span.low, '°C', 0)} or less`
    : `${inUnit(span.low, '°C', 0)} or less, at best ${inUnit(span.high, '°C', 0)}`;
};
