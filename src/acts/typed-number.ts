/** Numbers as people type them: “12,45 V”, “−24”, “32 psi”. */
import { inUnit } from '../ageing/words.ts';
import { convert, UNITS, type Unit } from '../catalogue/units.ts';

export type TypedNumber = { ok: true; value: number; unit: Unit } | { ok: false; message: string };

const NUMBER = /^([+\-−–]?)\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*(.*)$/;

/** “1,200”: a thousand to some and one point two to others. */
const THOUSANDS = /^[+\-−–]?\s*\d{1,3},\d{3}(?!\d)/;

/**
 * A number in one of the units offered; `picked` is the unit chosen beside the field, which one written with it overrides.
 * A comma before three digits is asked back, unless so many decimals are usual.
 */
export const readNumber = (typed: string, picked: Unit, offered: readonly Unit[], decimals: number): TypedNumber => {
  if (decimals < 3 && THOUSANDS.test(typed.trim()))
    return { ok: false, message: `“${typed}” can mean two numbers. Write it without the comma, or with a point.` };
  const found = NUMBER.exec(typed.trim());
  if (!found) return { ok: false, message: `“${typed}” is no number. Write it as ${example(picked)}.` };
  const [, sign, digits = '', behind = ''] = found;
  const unit = behind === '' ? picked : offered.find((one) => plain(one) === plain(behind));
  if (!unit) return { ok: false, message: `“${behind}” is not a unit for this: use ${offered.join(' or ')}.` };
  return { ok: true, value: Number(digits.replace(',', '.')) * (sign && sign !== '+' ? -1 : 1), unit };
};

/** A number without any unit, 0 or above, or null where it is none or can mean two. */
export const readPlainNumber = (typed: string): number | null =>
  /^\d+(?:[.,]\d{1,2}|\.\d{3})?$/.test(typed.trim()) ? Number(typed.trim().replace(',', '.')) : null;

const plain = (unit: string): string =>
  unit
    .toLowerCase()
    .replace(/[°\s.]/g, '')
    .replace(/^\/32$/, '/32in');
const example = (unit: Unit): string => `12.4 ${unit}`;

export const isUnit = (text: string): text is Unit => Object.hasOwn(UNITS, text);

/** A limit of a gauge in the unit a person types in, without idle zeros. */
export const limitIn = (value: number, from: Unit, to: Unit, decimals: number): string =>
  asTyped(Number(convert(value, from, to).toFixed(from === to ? decimals : Math.min(decimals, 1))), to);

/** A number as it was typed, with its unit. */
export const asTyped = (value: number, unit: Unit): string =>
  inUnit(value, unit, (String(value).split('.')[1] ?? '').length);
