/** Coolant: where it freezes beside the coldest night of the place, and what strength that is. */
import { freezingSpan, GLYCOLS, type Glycol, strengthFor } from '../../ageing/coolant/freezing.ts';
import { COOLANT_SOURCES, coolantOutlook } from '../../ageing/coolant/outlook.ts';
import { SAMPLE_SOURCES } from '../../ageing/coolant/sample.ts';
import { glycolsIn, strengthOf } from '../../ageing/judge.ts';
import { coldestNight } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Reading } from '../facts.ts';
import { gaugesOf } from '../measured.ts';
import { type Known, lastOf, type Model, type Outlook } from './outlook.ts';

const STRENGTH_GAUGES = ['freeze-point', 'density', 'sugar-scale', 'strength'] as const;

const ENDS =
  'Frost protection is not corrosion protection: neither strength nor pH tells what is left of the inhibitors. A laboratory, or a renewal by the calendar, settles that.';

export const coolant: Model = {
  surest: STRENGTH_GAUGES,
  tell(known) {
    const reading = lastOf(known, ...STRENGTH_GAUGES);
    return reading ? told(known, reading) : untold(known);
  },
};

const told = (known: Known, reading: Reading): Outlook | null => {
  const { place } = known.car;
  const coldest = place && coldestNight(place);
  // Each glycol it can be by its own strength: that of one is not the other's.
  const each = glycolsIn(known.part.details).flatMap((glycol) => {
    const strength = strengthBy(known, reading, glycol);
    return strength ? [{ strength, ...coolantOutlook({ glycol, strength }, coldest) }] : [];
  });
  const [first] = each;
  if (!first) return untold(known);
  const strength = hull(each.map((one) => one.strength));
  const freezes = hull(each.map((one) => one.freezes));
  const margin = coldest === null ? null : Math.floor(coldest - freezes.high);
  const frost =
    coldest === null || margin === null
      ? ''
      : `, ${margin < 0 ? 'above' : `${inUnit(margin, '°C', 0)} or more below`} the coldest night there (${inUnit(coldest, '°C', 0)})`;
  return {
    on: known.on,
    now: `about ${spanInWords(strength, '%', 0)} glycol, first ice at ${spanInWords(freezes, '°C', 0)}${frost} (read on ${dayInWords(reading.day)}).`,
    measured: true,
    days: [],
    says: [
      ...new Set(each.flatMap(({ says }) => says)),
      ...(each.length > 1
        ? ['The glycol is not told: both are reckoned with, and the warmer freezing point decides.']
        : []),
    ],
    ends: ENDS,
    desk: '/desks/coolant',
    sources: [...new Set([...COOLANT_SOURCES, ...SAMPLE_SOURCES])],
  };
};

const hull = (spans: readonly Span[]): Span => ({
  low: Math.min(...spans.map(({ low }) => low)),
  high: Math.max(...spans.map(({ high }) => high)),
});

const strengthBy = (known: Known, reading: Reading, glycol: Glycol): Span | null => {
  const gauge = gaugesOf(known.kind).find(({ gauge: { key } }) => key === reading.gauge)?.gauge;
  if (gauge?.key === 'freeze-point') return byFreezing(glycol, reading.value);
  return gauge ? strengthOf(gauge, reading, { ...known.part.details, glycol }) : null;
};

/** A refractometer reads a freezing point to 1 °C (ASTM D3321). */
const byFreezing = (glycol: Glycol, freezing: number): Span => ({
  low: strengthFor(glycol, Math.min(freezing + 1, 0)) ?? 60,
  high: strengthFor(glycol, freezing - 1) ?? 60,
});

/** Half and half is what is usually filled; nothing proves that it was. */
const untold = (known: Known): Outlook | null => {
  if (known.since === null) return null;
  const usual = GLYCOLS.map((glycol) => freezingSpan(glycol, 50));
  const freezes = { low: Math.min(...usual.map(({ low }) => low)), high: Math.max(...usual.map(({ high }) => high)) };
  return {
    on: known.on,
    now: `its strength is not known; half and half would show its first ice at ${spanInWords(freezes, '°C', 0)}.`,
    measured: false,
    days: [],
    says: ['Color tells neither strength nor family. Until it is read, count on no frost protection at all.'],
    ends: ENDS,
    desk: '/desks/coolant',
    sources: COOLANT_SOURCES,
  };
};
