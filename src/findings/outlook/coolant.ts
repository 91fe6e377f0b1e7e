/** Coolant: where it freezes beside the coldest night of the place, and what strength that is. */
import { freezingSpan, GLYCOLS } from '../../ageing/coolant/freezing.ts';
import { COOLANT_SOURCES } from '../../ageing/coolant/outlook.ts';
import { SAMPLE_SOURCES } from '../../ageing/coolant/sample.ts';
import { coldestNight } from '../../ageing/place.ts';
import { hull } from '../../ageing/span.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { dayInWords } from '../../dates/words.ts';
import { coolantSample } from '../coolant-sample.ts';
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
  const gauge = gaugesOf(known.kind).find((test) => test.gauge.key === reading.gauge)?.gauge;
  const sample = gauge && coolantSample(gauge, reading, known.part.details, coldest);
  if (!sample) return untold(known);
  const { freezes, says } = sample.outlook;
  const margin = coldest === null ? null : Math.floor(coldest - freezes.high);
  const frost =
    coldest === null || margin === null
      ? ''
      : `, ${margin < 0 ? 'above' : `${inUnit(margin, '°C', 0)} or more below`} the coldest night there (${inUnit(coldest, '°C', 0)})`;
  return {
    on: known.on,
    now: `about ${spanInWords(sample.strength, '%', 0)} glycol, first ice at ${spanInWords(freezes, '°C', 0)}${frost} (read on ${dayInWords(reading.day)}).`,
    measured: true,
    days: [],
    says,
    ends: ENDS,
    desk: '/desks/coolant',
    sources: [...new Set([...COOLANT_SOURCES, ...SAMPLE_SOURCES])],
  };
};

/** Half and half is what is usually filled; nothing proves that it was. */
const untold = (known: Known): Outlook | null => {
  if (known.since === null) return null;
  const freezes = hull(GLYCOLS.map((glycol) => freezingSpan(glycol, 50)));
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
