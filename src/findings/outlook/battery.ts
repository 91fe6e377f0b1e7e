/** The battery: its charge from the last reading on, with what drains it and how cold it stands. */
import { chargeByVoltage } from '../../ageing/battery/charge.ts';
import { BATTERY, type Chemistry } from '../../ageing/battery/chemistry.ts';
import { observedDrain, selfDischargeRate } from '../../ageing/battery/discharge.ts';
import { FLAT_FREEZES, FREEZING_SOURCES, freezingByCharge } from '../../ageing/battery/freezing.ts';
import { LIFE_SOURCES, lifeInHeat } from '../../ageing/battery/life.ts';
import {
  type BatteryFacts,
  chargeOn,
  LOOK_EVERY,
  milestones,
  OUTLOOK_SOURCES,
  RECHARGE_AT,
} from '../../ageing/battery/outlook.ts';
import { monthOn, monthsOf } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { effectiveTemperature } from '../../ageing/temperature.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { addDays, addMonths } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { chemistryOf, drainOf, factsOf, type Start, startOf } from './battery-facts.ts';
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

/** How far ahead the dates are looked for, in months. */
const AHEAD = 18;

/** Charge that a working maintainer keeps up, at the least, %; common practice. */
const KEPT_UP = 85;

const NO_DRAIN: Span = { low: 0, high: 0 };

export const battery: Model = {
  surest: ['rest-voltage', 'density'],
  tell(known) {
    const start = startOf(known);
    return start ? told(known, start) : untold(known);
  },
  asks: {
    what: 'charge it, or put it on a maintainer that fits it; let it rest and read its voltage',
    since(known) {
      const start = startOf(known);
      if (!start) return [];
      const facts = factsOf(known, start);
      if (facts.maintained) return [];
      // Where nobody said how it stands and nobody measured a drain, self-discharge alone is no guess.
      const drains = choiceIn(known, 'connection') || drainOf(known) !== undefined;
      const told = drains ? facts : { ...facts, drain: NO_DRAIN };
      const place = placeOf(known);
      if (chargeOn(told, place, known.on).low > RECHARGE_AT) return [];
      const { recharge, noCrank, freezes } = milestones(told, place, known.on);
      const guessed = facts.drain.high > 0 && drainOf(known) === undefined;
      const round = addDays(start.reading.day, ASKS_AFTER);
      return [recharge.earliest, noCrank.earliest, known.car.place ? (freezes?.earliest ?? null) : null]
        .filter((day) => day !== null)
        .map((day) => (guessed && day < round ? round : day))
        .sort();
    },
  },
};

const told = (known: Known, start: Start): Outlook => {
  const { on, car } = known;
  const facts = factsOf(known, start);
  const place = placeOf(known);
  const charge = chargeOn(facts, place, on);
  const ahead = milestones(facts, place, addMonths(on, AHEAD));
  const never = `not within ${AHEAD} months`;
  const frost = charge.low <= 0 ? flatFreezes(facts.chemistry) : freezingByCharge(facts.chemistry, charge.low);
  return {
    on: known.on,
    now: `${spanInWords(charge, '%', 0)} charged by now (read on ${dayInWords(start.reading.day)}).`,
    measured: true,
    days: facts.maintained
      ? []
      : [
          { what: 'Falls to three quarters: recharge', when: ahead.recharge, never },
          { what: 'No longer cranks', when: ahead.noCrank, never },
          ...(ahead.freezes && car.place ? [{ what: 'Could freeze there', when: ahead.freezes, never }] : []),
        ],
    says: [
      facts.maintained
        ? charge.high < KEPT_UP
          ? 'On a maintainer it should read full: the maintainer, its plug or the battery has failed. Look at its lamp first.'
          : 'On a maintainer it holds its charge as long as the mains and the plug do: look at its lamp on every round.'
        : `${drainWords(known, facts)} Read it again every ${LOOK_EVERY} days.`,
      ...(frost === null ? [] : [`At the low end of that charge its acid freezes near ${inUnit(frost, '°C', 0)}.`]),
      ...observedWords(known, facts),
      ...heatWords(known),
      ...(car.place ? [] : [PLACE_ASSUMED]),
    ],
    ends: ENDS,
    desk: deskOf(known, facts, charge),
    sources: [
      ...new Set([...BATTERY[facts.chemistry].sources, ...OUTLOOK_SOURCES, ...FREEZING_SOURCES, ...LIFE_SOURCES]),
    ],
  };
};

/** Left flat, the acid goes on thinning. */
const flatFreezes = (chemistry: Chemistry): number | null => (BATTERY[chemistry].acid ? FLAT_FREEZES : null);

const ENDS =
  'Charge is not strength: an old battery can read full and fail under load. A load test by a workshop settles that. Never charge, jump or move a battery that may be frozen, is cracked or smells of sulfur.';

const drainWords = (known: Known, { drain, capacity }: BatteryFacts): string => {
  const size = numberIn(known, 'capacity')
    ? `${inUnit(capacity, 'Ah', 0)}`
    : `${inUnit(capacity, 'Ah', 0)} assumed, as its capacity is not told`;
  if (drain.high === 0) return `Disconnected, it loses by itself only (${size}).`;
  return drainOf(known) === undefined
    ? `Reckoned with a drain of ${spanInWords(drain, 'mA', 0)}, as nobody measured it (${size}); measure it, or say that it is disconnected.`
    : `Reckoned with a drain of ${inUnit(drainOf(known) ?? 0, 'mA', 0)}, give or take a fifth (${size}).`;
};

/** What drained it between the last two readings of its voltage: a drain that grew is a fault that grew. */
const observedWords = (known: Known, { capacity, chemistry, maintained }: BatteryFacts): string[] => {
  const read = known.part.readings.filter(({ gauge, day }) => gauge === 'rest-voltage' && day <= known.on).slice(-2);
  const [before, after] = read.map(({ value, day }) => {
    const charge = chargeByVoltage(chemistry, value, choiceIn(known, 'volts') === '6' ? 6 : 12);
    return charge && { percent: charge.percent, day };
  });
  if (!before || !after || maintained || after.percent >= before.percent) return [];
  const { mean } = monthOn(monthsOf(placeOf(known)), after.day);
  const drain = observedDrain(
    before,
    after,
    selfDischargeRate(BATTERY[chemistry].selfDischarge.typical, mean),
    capacity,
  );
  return drain === null || drain < 1
    ? []
    : [
        choiceIn(known, 'connection') === 'disconnected'
          ? 'Between the last two readings it lost more than a sound battery does by itself: have it load-tested.'
          : `What it lost between the last two readings is what a drain of about ${inUnit(drain, 'mA', 0)} takes.`,
      ];
};

/** For information: heat takes life, and no cold gives it back. */
const heatWords = ({ car: { place } }: Known): string[] => {
  const warmth = place && effectiveTemperature(monthsOf(place).map(({ mean }) => mean));
  const share = warmth === null ? 1 : lifeInHeat(warmth);
  return share > 0.95 || warmth === null
    ? []
    : [
        `It ages there as at a steady ${inUnit(warmth, '°C', 0)}: stationary batteries last about ${inUnit(share * 100, '%', 0)} of their usual life in that.`,
      ];
};

/** What fits the desk’s questions; it reckons from the low end, and with no drain that nobody measured. */
const deskOf = (known: Known, { chemistry, capacity }: BatteryFacts, charge: Span): string => {
  const { place } = known.car;
  const [drain, connection] = [drainOf(known), choiceIn(known, 'connection')];
  const query = new URLSearchParams({
    ...(chemistry === 'unknown' ? {} : { chemistry }),
    capacity: String(capacity),
    nominal: choiceIn(known, 'volts') ?? '12',
    charge: String(Math.floor(charge.low)),
    ...(drain === undefined ? {} : { drain: String(Math.round(drain)) }),
    ...(connection ? { connection } : {}),
    ...(place
      ? {
          shelter: place.shelter,
          ...(place.heatedTo === null ? {} : { heatedTo: String(place.heatedTo) }),
          low: String(place.winterLow),
          high: String(place.summerHigh),
          winter: place.hemisphere === 'north' ? 'january' : 'july',
          air: place.air,
        }
      : {}),
  });
  return `/desks/battery?${query}`;
};

/** Its voltage hardly moves from full to almost empty: no gauge of ours makes it surer. */
export const lithium: Model = { ...battery, surest: [] };

/** Without a reading there is no charge to tell. */
const untold = (known: Known): Outlook | null => {
  const { claims, readings, details } = known.part;
  if (claims.length === 0 && readings.length === 0 && Object.keys(details).length === 0) return null;
  const lithium = chemistryOf(known) === 'lithium';
  const unsettled = lastOf(known, 'density', 'rest-voltage') !== undefined;
  return {
    on: known.on,
    now: lithium
      ? 'its charge can’t be told from its voltage.'
      : unsettled
        ? 'its charge is not known: what was read is not settled, or lacks its temperature.'
        : 'its charge is not known: nothing was read yet.',
    measured: false,
    days: [],
    says: [
      lithium
        ? 'Lithium keeps nearly the same voltage from full to almost empty: trust its own meter. Store it about half full and never charge it below 0 °C.'
        : 'A connected car can flatten a full battery within weeks; read its rest voltage to start the estimate.',
    ],
    ends: ENDS,
    desk: '/desks/battery',
    sources: BATTERY[chemistryOf(known)].sources,
  };
};
