import type { CivilDate } from '../civil.ts';
import type { TireCodeAnswer } from './answer.ts';
import { readDateDigits } from './digits.ts';
import { inNineties, type KnownAboutTire, narrowWeeks } from './narrow.ts';
import { otherMark } from './other-marks.ts';
import { otherReading } from './other-reading.ts';
import { pickDate } from './pick.ts';
import { splitTireCode } from './text.ts';
import { tireCodeWarnings } from './warnings.ts';

/** A full number with every symbol spaced stays well below; more is refused unread. */
const LONGEST_TEXT = 80;

/**
 * The weeks a tire identification number can stand for, or why it stands for none. Takes the whole number or its end,
 * as typed; `known` strikes out candidates. Never a week that begins after `today`. 49 CFR 574.5.
 */
export const readTireCode = (typed: string, today: CivilDate, known: KnownAboutTire = {}): TireCodeAnswer => {
  if (typed.trim() === '') return { ok: false, reason: 'empty' };
  if (typed.trim().length > LONGEST_TEXT) return { ok: false, reason: 'not-a-tin', looksLike: 'too-long' };
  const text = splitTireCode(typed);
  const looksLike = otherMark(typed, text.dot);
  if (looksLike) return { ok: false, reason: 'not-a-tin', looksLike };
  const picked = pickDate(text, (code) => readDateDigits(code, today).ok);
  if (!picked.ok) return picked;

  const tried = picked.readings.map((reading) => ({ reading, read: readDateDigits(reading.dateCode, today) }));
  const used = tried.find(({ read }) => read.ok) ?? tried[0];
  if (!used) return { ok: false, reason: 'no-date' };
  if (!used.read.ok) return used.read;

  const { form, dateCode } = used.reading;
  // The mark stands for a decade, so it says something about three digits only.
  const ninetiesMark = dateCode.length === 4 ? undefined : text.triangle ? 'seen' : known.ninetiesMark;
  const { kept, dropped } = narrowWeeks(used.read.weeks, { ...known, ninetiesMark });
  if (kept.length === 0) return { ok: false, reason: 'no-candidate-left', dateCode, dropped };
  const markWouldNarrow = kept.some(inNineties) && !kept.every(inNineties);
  const other = text.retread ? null : otherReading(used.reading, tried);
  return {
    ok: true,
    form,
    dateCode,
    candidates: kept,
    dropped,
    warnings: tireCodeWarnings(used.reading, text, kept),
    asks: ninetiesMark === undefined && markWouldNarrow,
    ...(other ? { otherReading: other } : {}),
  };
};
