/** Readings in words: what was read, what the bands of its gauge say to it, what is missing to judge it. */
import { inUnit } from '../ageing/words.ts';
import type { Kind } from '../catalogue/kind.ts';
import { convert } from '../catalogue/units.ts';
import { dayInWords } from '../dates/words.ts';
import type { Measured } from './measured.ts';

/** “12.31 V”. */
const valueInWords = ({ test: { gauge }, reading }: Pick<Measured, 'test' | 'reading'>): string => {
  const own = inUnit(reading.value, gauge.unit, gauge.decimals);
  if (reading.unit === gauge.unit) return own;
  const typed = Number(convert(reading.value, gauge.unit, reading.unit).toPrecision(4));
  return `${inUnit(typed, reading.unit, (String(typed).split('.')[1] ?? '').length)} (${own})`;
};

/** “Rest voltage 12.31 V on 24 November 2026: act. Under 12.40: charge it now.” */
export const readingLine = (measured: Measured, kind: Kind): string => {
  const { test, reading, verdict } = measured;
  const read = `${test.name} ${valueInWords(measured)} on ${dayInWords(reading.day)}${meant(measured)}`;
  if (verdict === null) return `${read}: not judged; ${wantsInWords(measured, kind)}.`;
  return `${read}: ${verdict}. ${capital(bandWords(measured))}.`;
};

/** The words of the band a reading fell into. */
export const bandWords = ({ test, verdict }: Pick<Measured, 'test' | 'verdict'>): string =>
  verdict === 'good' ? `good: ${test.good}` : ((verdict === 'watch' ? test.watch : null) ?? test.act);

/** What the reading says of the fluid, where that is what the bands are held against. */
const meant = ({ test: { gauge }, value, wants }: Measured): string => {
  if (wants === 'its temperature') return '';
  switch (gauge.reads) {
    case 'acid density':
      return `, ${value.toFixed(3)} at 27 °C`;
    case 'coolant density':
    case 'coolant sugar scale':
    case 'coolant strength':
      return `, which freezes at ${inUnit(value, '°C', 0)} or below`;
    default:
      return '';
  }
};

export const wantsInWords = ({ wants }: Pick<Measured, 'wants'>, { details = [] }: Kind): string => {
  if (wants === null) return '';
  if (wants === 'its temperature') return 'it needs the temperature of what was read';
  if (wants === 'the coldest night where it stands') return 'say where the car stands, for its coldest night';
  const detail = details.find(({ key }) => key === wants.detail);
  return `tell its “${detail?.name ?? wants.detail}” on its own page`;
};

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
