/** A tire that stands: its air, the spot it stands on, and what the warmth of the place does to its rubber. */

import { coldestNight, monthsOf } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { FLAT_SPOT_SOURCES, flatSpotRisk } from '../../ageing/tires/flat-spots.ts';
import { HEAT_SOURCES, heatAge } from '../../ageing/tires/heat.ts';
import {
  dueForAir,
  firstLow,
  LAY_UP,
  LEAST_DAYS,
  layUpPressure,
  leakRate,
  lossOver,
  PRESSURE_SOURCES,
  type PressureReading,
  pressureAt,
  pressureOver,
} from '../../ageing/tires/pressure.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { convert } from '../../catalogue/units.ts';
import { addDays, addMonths, type CivilDate, daysBetween } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Reading } from '../facts.ts';
import { sinceLast } from '../since.ts';
import {
  ASKS_AFTER,
  choiceIn,
  type Known,
  lastOf,
  type Model,
  numberIn,
  type Outlook,
  PLACE_ASSUMED,
  placeOf,
} from './outlook.ts';

/** “2.0 to 2.2 bar (29 to 32 psi)”. */
const inBoth = (bar: Span): string =>
  `${spanInWords(bar, 'bar', 2)} (${spanInWords({ low: convert(bar.low, 'bar', 'psi'), high: convert(bar.high, 'bar', 'psi') }, 'psi', 0)})`;

const AHEAD = 12;
const GAUGE = 'cold-pressure';

/** Temperature at which placard pressures are usually set, °C. */
const SET_AT = 20;

/** Loss that is more than rubber lets through, psi a month: common practice. */
const LEAK = 3;

const ENDS =
  'None of this clears a tire: by the calendar limits first, then by a look inside and out. Cracks, bulges, hardness and flat spots are judged by a tire shop.';

export const tire: Model = {
  surest: ['cold-pressure', 'hardness', 'tread'],
  tell(known) {
    const read = readOf(known);
    const age = ageHere(known);
    if (!read && !age) return null;
    return {
      on: known.on,
      now: `${[read ? airWords(known, read) : null, age].filter(Boolean).join('; ')}.`,
      measured: read !== undefined,
      days: airDays(known, read),
      says: [
        'Heat ages rubber faster, cold slower; the calendar limits rule all the same: ozone, damp and load don’t follow that curve.',
        ...leakWords(known),
        ...spotWords(known),
        ...layUpWords(known),
        ...(known.car.place ? [] : [PLACE_ASSUMED]),
      ],
      ends: ENDS,
      desk: null,
      sources: [...new Set([...PRESSURE_SOURCES, ...HEAT_SOURCES, ...FLAT_SPOT_SOURCES, ...LAY_UP.sources])],
    };
  },
  asks: {
    what: 'read its cold pressure, pump it up, and find the leak if it sinks again',
    since(known) {
      const leak = leakIn(known)?.since;
      const placard = numberIn(known, 'placard');
      const read = readOf(known);
      const low = placard && read ? firstLow(read, known.on, placeOf(known), placard) : null;
      const days = low && read ? [[low, addDays(read.day, ASKS_AFTER)].sort()[1] as CivilDate] : [];
      return [...(leak ? [leak] : []), ...days].sort();
    },
  },
};

/** The last reading, with what was measured to leak since it was last pumped up. */
const readOf = (known: Known): PressureReading | undefined => {
  const reading = lastOf(known, GAUGE);
  const leak = leakIn(known);
  return reading && { ...pressureOf(reading), ...(leak ? { loses: leak.rate } : {}) };
};

const airBy = (known: Known, read: PressureReading): Span =>
  pressureOver(read, known.on, placeOf(known)).at(-1)?.pressure as Span;

const airWords = (known: Known, read: PressureReading): string => {
  const now = airBy(known, read);
  const placard = numberIn(known, 'placard');
  return `about ${inBoth(now)} by now at the temperature there${placard ? `, placard ${inBoth({ low: placard, high: placard })}` : ''} (read on ${dayInWords(read.day)})${leakIn(known)?.since ? '; it leaks' : ''}`;
};

const airDays = (known: Known, read: PressureReading | undefined): Outlook['days'] => {
  const placard = numberIn(known, 'placard');
  if (!placard || !read) return [];
  const when = dueForAir(read, addMonths(known.on, AHEAD), placeOf(known), placard);
  return [{ what: 'A tenth below the placard: read it, pump it up', when, never: `not within ${AHEAD} months` }];
};

/** For information: the calendar rules, whatever the warmth. */
const ageHere = ({ since, on, car }: Known): string | null => {
  if (!since?.from || !car.place) return null;
  const years = daysBetween(since.from, on) / 365.25;
  const { byArrhenius, byRuleOfTen } = heatAge(years, car.place);
  const low = Math.min(byArrhenius.low, byRuleOfTen);
  const high = Math.max(byArrhenius.high, byRuleOfTen);
  const years20 = high < 1.5 ? 'about a year or less' : spanInWords({ low, high }, 'years', 0);
  return `rubber aged there like ${years20} at 20 °C, for information beside the calendar`;
};

interface Leak {
  /** Bar a month, from one day to another. */
  rate: number;
  from: CivilDate;
  to: CivilDate;
  /** The first reading by which it was more than rubber lets through; null: it is not. */
  since: CivilDate | null;
}

/** What it lost since it was last pumped up; null where that can’t be told, or it lost nothing. */
const leakIn = (known: Known): Leak | null => {
  const read = known.part.readings.filter(({ gauge, day }) => gauge === GAUGE && day <= known.on).map(pressureOf);
  const pumped = read.findLastIndex(({ pressure }, index) => index > 0 && pressure > (read[index - 1]?.pressure ?? 0));
  const stretch = read.slice(Math.max(0, pumped));
  const rates = stretch.flatMap((one) => {
    const before = stretch.findLast(({ day }) => daysBetween(day, one.day) >= LEAST_DAYS);
    const rate = before ? leakRate(before, one) : null;
    return before && rate !== null ? [{ rate, from: before.day, to: one.day }] : [];
  });
  const last = rates.at(-1);
  if (!last || last.rate <= 0) return null;
  const isLeak = ({ rate }: { rate: number }): boolean => convert(rate, 'bar/month', 'psi/month') > LEAK;
  const tight = rates.findLastIndex((one) => !isLeak(one));
  return { ...last, since: rates[tight + 1]?.to ?? null };
};

const pressureOf = ({ value, warmth, day }: Reading): PressureReading => ({
  pressure: value,
  temperature: warmth,
  day,
});

const leakWords = (known: Known): string[] => {
  const leak = leakIn(known);
  if (!leak) return [];
  const psi = convert(leak.rate, 'bar/month', 'psi/month');
  return [
    `From ${dayInWords(leak.from)} to ${dayInWords(leak.to)} it lost ${inUnit(leak.rate, 'bar', 2)} (${inUnit(psi, 'psi', 1)}) a month${leak.since ? ': more than rubber lets through, look for a leak' : ''}.`,
  ];
};

const spotWords = (known: Known): string[] => {
  const told = choiceIn(known, 'cap-ply');
  const capPly = told === undefined ? null : told === 'yes';
  const moved = sinceLast(known.part.claims, 'used', known.car.built)?.from;
  if (!moved)
    return [
      `Move the car every ${flatSpotRisk({ days: 0, share: null, coldest: 0, capPly }).moveEvery} days while it stands on its tires.`,
    ];
  const [read, placard] = [readOf(known), numberIn(known, 'placard')];
  const { moveEvery, says } = flatSpotRisk({
    days: daysBetween(moved, known.on),
    // What is in it by now at the least, not what was read then.
    share: read && placard ? airBy(known, read).low / placard : null,
    coldest: coldestNight(placeOf(known)),
    capPly,
  });
  return [`Last moved on ${dayInWords(moved)}; move it every ${moveEvery} days.`, ...says];
};

const layUpWords = (known: Known): string[] => {
  const placard = numberIn(known, 'placard');
  if (!placard) return [];
  const pressure = layUpPressure(placard, numberIn(known, 'sidewall') ?? null);
  const means = monthsOf(placeOf(known)).map(({ mean }) => mean);
  const [winter, summer] = [Math.min(...means), Math.max(...means)].map((mean) => pressureAt(placard, SET_AT, mean));
  return [
    `Set to ${inUnit(placard, 'bar', 1)} at ${SET_AT} °C it shows ${inUnit(winter ?? placard, 'bar', 1)} in the coldest month there and ${inUnit(summer ?? placard, 'bar', 1)} in the warmest, without losing any air; rubber lets ${inBoth(lossOver(6, SET_AT))} through in six months.`,
    `For a lay-up: ${inBoth(pressure)}, cold. ${LAY_UP.says.join(' ')}`,
  ];
};
