/** Battery over winter: from a charge, a drain and a climate to the days that matter. */
import { done, type Fault, type Outcome } from '../../acts/fault.ts';
import { CHARGE_SOURCES, chargeByDensity, chargeByVoltage, densityAtReference } from '../../ageing/battery/charge.ts';
import { BATTERY, CHEMISTRIES, type Chemistry } from '../../ageing/battery/chemistry.ts';
import { DISCHARGE_SOURCES } from '../../ageing/battery/discharge.ts';
import { FREEZING_SOURCES, FROST_MARGIN } from '../../ageing/battery/freezing.ts';
import { CRANKING_POWER } from '../../ageing/battery/life.ts';
import {
  type BatteryFacts,
  CRANKS_ABOVE,
  OUTLOOK_SOURCES,
  projectBattery,
  RECHARGE_AT,
} from '../../ageing/battery/outlook.ts';
import type { Span } from '../../ageing/span.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import { addMonths, type CivilDate, isCivilDate } from '../../dates/civil.ts';
import type { Answers } from '../../findings/facts.ts';
import { DRAIN_UNKNOWN } from '../../findings/outlook/battery-facts.ts';
import { Faults, faultsOf } from '../layout.tsx';
import type { Ctx } from '../visit.ts';
import { type Asked, fault, faultsIn, onlyOneOf, readDesk } from './asked.ts';
import { type BatteryAnswer, BatteryAnswered } from './battery-answer.tsx';
import { showDesk } from './desk.tsx';
import { assumedWords, isNightTold, PLACE_DETAILS, placeIn } from './place.ts';

const BATTERY_DETAILS: readonly Detail[] = [
  {
    key: 'chemistry',
    name: 'Kind of battery',
    choices: Object.fromEntries(CHEMISTRIES.filter((one) => one !== 'unknown').map((one) => [one, BATTERY[one].name])),
  },
  {
    key: 'capacity',
    name: 'Capacity',
    unit: 'Ah',
    range: [5, 250],
    decimals: 0,
    hint: 'Reserve capacity in minutes × 0.6.',
  },
  { key: 'nominal', name: 'Battery of', choices: { '12': '12 volts', '6': '6 volts' } },
];

const CHARGE_DETAILS: readonly Detail[] = [
  { key: 'charge', name: 'Its charge, if known', unit: '%', range: [0, 100], decimals: 0 },
  {
    key: 'volts',
    name: 'Or its rest voltage',
    unit: 'V',
    range: [3, 16],
    decimals: 2,
    hint: 'After 8 hours without charge or load.',
  },
  { key: 'density', name: 'Or the density of its acid', unit: 'SG', range: [1, 1.35], decimals: 3 },
  { key: 'warmth', name: 'Temperature of that acid', unit: '°C', also: ['°F'], range: [-40, 60], decimals: 0 },
];

const STANDING_DETAILS: readonly Detail[] = [
  {
    key: 'connection',
    name: 'While it stands it is',
    choices: { connected: 'connected to the car', disconnected: 'disconnected', maintainer: 'on a maintainer' },
  },
  {
    key: 'drain',
    name: 'Drain of the parked car, if measured',
    unit: 'mA',
    also: ['A'],
    range: [0, 5000],
    decimals: 0,
    hint: 'Up to 5 mA without electronics, 5 to 25 of the 1980s and 1990s, 20 to 50 later; an alarm or tracker adds 10 to 80.',
  },
];

export const DETAILS = [...BATTERY_DETAILS, ...CHARGE_DETAILS, ...STANDING_DETAILS, ...PLACE_DETAILS];

/** A winter, where nobody said how long. */
const MONTHS = 6;

export const readBattery = (asked: Asked, on: CivilDate): Outcome<BatteryAnswer> => {
  const read = readDesk(DETAILS, asked, ['capacity']);
  const days = readDays(asked, on);
  const charge = read.ok ? chargeIn(read.value) : null;
  const place = read.ok ? placeIn(read.value) : null;
  if (!read.ok || !days.ok || !charge?.ok || !place?.ok)
    return { ok: false, faults: faultsIn(read, days, ...(charge ? [charge] : []), ...(place ? [place] : [])) };
  const answers = read.value;
  const { from, until } = days.value;
  const drain = typeof answers.drain === 'number' ? { low: answers.drain, high: answers.drain } : DRAIN_UNKNOWN;
  const facts: BatteryFacts = {
    chemistry: chemistryIn(answers),
    capacity: answers.capacity as number,
    drain: answers.connection === 'disconnected' ? { low: 0, high: 0 } : drain,
    maintained: answers.connection === 'maintainer',
    charge: charge.value,
    from,
  };
  return done({
    facts,
    place: place.value,
    nightTold: isNightTold(answers),
    assumed: assumedWords(answers),
    nominal: nominalIn(answers),
    until,
    outlook: projectBattery(facts, place.value, until),
  });
};

const nominalIn = ({ nominal }: Answers): 6 | 12 => (nominal === '6' ? 6 : 12);

const chemistryIn = ({ chemistry }: Answers): Chemistry => CHEMISTRIES.find((one) => one === chemistry) ?? 'unknown';

const WAYS_TO_TELL = CHARGE_DETAILS.filter(({ key }) => key !== 'warmth');

/** Under so many volts it may be one of 6 or a dead one of 12: a full one of 6 must not read as flat. */
const UNSURE_BELOW = 8;

/** The charge told, or told by what was measured. */
const chargeIn = (answers: Answers): Outcome<Span> => {
  const { charge, volts, density, warmth, nominal } = answers;
  const several = onlyOneOf(WAYS_TO_TELL, answers);
  if (several.length > 0) return { ok: false, faults: several };
  if (typeof charge === 'number') return done({ low: charge, high: charge });
  if (typeof density === 'number') {
    if (typeof warmth !== 'number') return fault('warmth', 'The density counts only with the temperature of the acid.');
    const corrected = densityAtReference(density, warmth);
    return done({ low: chargeByDensity(corrected, '1.280'), high: chargeByDensity(corrected, '1.265') });
  }
  if (typeof volts !== 'number')
    return fault('charge', 'Give its charge, its rest voltage or the density of its acid.');
  if (nominal === undefined && volts < UNSURE_BELOW)
    return fault(
      'nominal',
      'So few volts are a 6-volt battery, or one of 12 volts that is flat or dead: choose which.',
    );
  const told = chargeByVoltage(chemistryIn(answers), volts, nominalIn(answers));
  if (told?.surface)
    return fault(
      'volts',
      'More than a rested one shows: let it stand for 8 hours off the charger, then read it again.',
    );
  return told
    ? done(told.span)
    : fault('volts', 'A lithium battery’s voltage does not tell its charge: give the charge its own meter shows.');
};

const readDays = (asked: Asked, on: CivilDate): Outcome<{ from: CivilDate; until: CivilDate }> => {
  const from = asked.from || on;
  if (!isCivilDate(from)) return fault('from', `“${from}” is no day.`);
  const until = asked.until || addMonths(from, MONTHS);
  if (!isCivilDate(until)) return fault('until', `“${until}” is no day.`);
  if (until <= from || until > addMonths(from, 120))
    return fault('until', 'The end comes after the beginning, and within ten years.');
  return done({ from, until });
};

export const batteryDesk = (c: Ctx) => {
  const { on } = c.get('visit');
  const asked: Asked = c.req.query();
  const started = DETAILS.some(({ key }) => asked[key] !== undefined);
  const answer = started ? readBattery(asked, on) : null;
  const faults = answer && !answer.ok ? answer.faults : [];
  return showDesk(c, {
    title: 'Battery over winter',
    lede: 'What is left in a battery while the car stands, and the days by which something must be done.',
    path: '/desks/battery',
    groups: [
      { legend: 'The battery', details: BATTERY_DETAILS },
      { legend: 'How full it is', details: CHARGE_DETAILS },
      { legend: 'How it stands', details: STANDING_DETAILS },
      { legend: 'Where it stands', details: PLACE_DETAILS },
    ],
    asked,
    more: <Days asked={asked} on={on} faults={faults} />,
    moreTold: [
      ['from', asked.from || on],
      ['until', asked.until || addMonths(asked.from && isCivilDate(asked.from) ? asked.from : on, MONTHS)],
    ],
    faults,
    answer: answer?.ok ? <BatteryAnswered {...answer.value} /> : null,
    formula: [
      'Self-discharge takes a share of what is left every day, twice as fast for every 10 °C warmer; the car’s drain takes the same amount every day: 24 hours of it in percent of the capacity. Month by month with the temperature of the place; the upper edge of the band with the mildest figures, the lower with the gravest. Charge and drain are taken as typed; on a car’s own page what was measured gets its doubt, so its band is wider.',
      `Recharge at ${RECHARGE_AT} percent, which is a density of 1.225; below ${CRANKS_ABOVE} percent it can’t be counted on to crank.`,
      `Density tells where the acid freezes; a night counts as dangerous from ${FROST_MARGIN} °C above that. The freezing column of most printed charts is 10 to 13 °C too hopeful below full charge and is not used.`,
      'Rest voltage is read without a temperature correction: the one printed with many tables is that of density. Meter and rest make it ±5 percent, on 6 volts ±10.',
    ],
    ends: 'Charge is not strength: an old battery can read full and fail under load. A load test, and anything about a frozen, cracked, swollen or smelling battery, is for a workshop.',
    sources: [
      ...CHARGE_SOURCES,
      ...DISCHARGE_SOURCES,
      ...FREEZING_SOURCES,
      ...OUTLOOK_SOURCES,
      ...CRANKING_POWER.sources,
    ],
  });
};

const Days = ({ asked, on, faults }: { asked: Asked; on: CivilDate; faults: readonly Fault[] }) => (
  <fieldset class="group">
    <legend>How long</legend>
    <label>
      From
      <input type="date" name="from" value={asked.from ?? on} {...faultsOf(faults, 'from')} />
    </label>
    <Faults faults={faults} field="from" />
    <label>
      Until
      <input type="date" name="until" value={asked.until ?? addMonths(on, MONTHS)} {...faultsOf(faults, 'until')} />
    </label>
    <Faults faults={faults} field="until" />
  </fieldset>
);
