/** Battery over winter: from a charge, a drain and a climate to the days that matter. */
import { done, type Fault, type Outcome } from '../../acts/fault.ts';
import {
  CHARGE_SOURCES,
  chargeByDensity,
  chargeByVoltage,
  densityAtReference,
  densityByCharge,
  voltageByCharge,
  voltageByDensity,
} from '../../ageing/battery/charge.ts';
import { CHARGING } from '../../ageing/battery/charging.ts';
import { BATTERY, CHEMISTRIES, type Chemistry } from '../../ageing/battery/chemistry.ts';
import { DISCHARGE_SOURCES, measuredLoss } from '../../ageing/battery/discharge.ts';
import {
  FLAT_FREEZES,
  FREEZING_SOURCES,
  FROST_MARGIN,
  freezingByCharge,
  frostLimit,
} from '../../ageing/battery/freezing.ts';
import { CRANKING_POWER, crankingPower } from '../../ageing/battery/life.ts';
import {
  type BatteryFacts,
  type BatteryOutlook,
  CRANKS_ABOVE,
  OUTLOOK_SOURCES,
  projectBattery,
  RECHARGE_AT,
} from '../../ageing/battery/outlook.ts';
import { coldestNight, type Place } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { daysInWords, inUnit, spanInWords } from '../../ageing/words.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import { addMonths, type CivilDate, isCivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Answers } from '../../findings/facts.ts';
import { Chart } from '../chart.tsx';
import { Faults, faultsOf } from '../layout.tsx';
import type { Ctx } from '../visit.ts';
import { type Asked, PLACE_DETAILS, placeIn, readDesk, showDesk } from './desk.tsx';

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

/** Nobody measured it, or nobody said: what connected cars draw, mA. */
const DRAIN: Span = { low: 0, high: 50 };
const MONTHS = 6;

export interface BatteryAnswer {
  facts: BatteryFacts;
  nominal: 6 | 12;
  place: Place;
  until: CivilDate;
  outlook: BatteryOutlook;
}

export const readBattery = (asked: Asked, on: CivilDate): Outcome<BatteryAnswer> => {
  const read = readDesk(DETAILS, asked, ['capacity']);
  const days = readDays(asked, on);
  const charge = read.ok ? chargeIn(read.value) : null;
  const faults: Fault[] = [read, days, ...(charge ? [charge] : [])].flatMap((one) => (one.ok ? [] : one.faults));
  if (!read.ok || !days.ok || !charge?.ok) return { ok: false, faults };
  const answers = read.value;
  const { from, until } = days.value;
  const drain = typeof answers.drain === 'number' ? { low: answers.drain, high: answers.drain } : DRAIN;
  const facts: BatteryFacts = {
    chemistry: chemistryIn(answers),
    capacity: answers.capacity as number,
    drain: answers.connection === 'disconnected' ? { low: 0, high: 0 } : drain,
    maintained: answers.connection === 'maintainer',
    charge: charge.value,
    from,
  };
  const place = placeIn(answers);
  const nominal = nominalIn(answers);
  return done({ facts, place, nominal, until, outlook: projectBattery(facts, place, until) });
};

const nominalIn = ({ nominal }: Answers): 6 | 12 => (nominal === '6' ? 6 : 12);

const chemistryIn = ({ chemistry }: Answers): Chemistry => CHEMISTRIES.find((one) => one === chemistry) ?? 'unknown';

/** The charge told, or told by what was measured. */
const chargeIn = (answers: Answers): Outcome<Span> => {
  const { charge, volts, density, warmth } = answers;
  if (typeof charge === 'number') return done({ low: charge, high: charge });
  if (typeof density === 'number') {
    if (typeof warmth !== 'number') return fault('warmth', 'The density counts only with the temperature of the acid.');
    const corrected = densityAtReference(density, warmth);
    return done({ low: chargeByDensity(corrected, '1.280'), high: chargeByDensity(corrected, '1.265') });
  }
  if (typeof volts !== 'number')
    return fault('charge', 'Give its charge, its rest voltage or the density of its acid.');
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

const fault = (field: string, message: string): Outcome<never> => ({ ok: false, faults: [{ field, message }] });

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
    faults,
    answer: answer?.ok ? <Answer {...answer.value} placed={Boolean(asked.low?.trim())} /> : null,
    formula: [
      'Self-discharge takes a share of what is left every day, twice as fast for every 10 °C warmer; the car’s drain takes the same amount every day: 24 hours of it in percent of the capacity. Month by month with the temperature of the place; the upper edge of the band with the mildest figures, the lower with the gravest.',
      `Recharge at ${RECHARGE_AT} percent, which is a density of 1.225; below ${CRANKS_ABOVE} percent it can’t be counted on to crank.`,
      `Density tells where the acid freezes; a night counts as dangerous from ${FROST_MARGIN} °C above that. The freezing column of most printed charts is 10 to 13 °C too hopeful below full charge and is not used.`,
      'Rest voltage is read without a temperature correction: the one printed with many tables is that of density. Meter and rest make it ±5 percent.',
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

const Answer = ({ facts, place, nominal, until, outlook, placed }: BatteryAnswer & { placed: boolean }) => {
  const { chemistry, maintained, charge, drain, from } = facts;
  const never = `not before ${dayInWords(until)}`;
  const end = outlook.points.at(-1)?.charge ?? charge;
  const night = coldestNight(place);
  const frost = placed ? frostLimit(chemistry, night) : null;
  const volts = voltageByCharge(chemistry, RECHARGE_AT, nominal);
  return (
    <>
      <p class="answer">
        <strong>
          {maintained
            ? 'On a maintainer it keeps its charge as long as the mains and the plug do.'
            : `On ${dayInWords(until)}: ${end.high < 1 ? 'flat' : `${spanInWords(end, '%', 0)} charged`}.`}
        </strong>
      </p>
      {!maintained && (
        <dl class="days">
          <dt>Recharge ({RECHARGE_AT} %)</dt>
          <dd>{daysInWords(outlook.recharge, never, from)}</dd>
          <dt>No longer cranks ({CRANKS_ABOVE} %)</dt>
          <dd>{daysInWords(outlook.noCrank, never, from)}</dd>
          <dt>Could freeze there</dt>
          <dd>
            {!placed
              ? 'not judged: say how cold the nights get'
              : outlook.freezes
                ? daysInWords(outlook.freezes, never, from)
                : 'this kind does not freeze in such a place'}
          </dd>
        </dl>
      )}
      <Chart
        says={`Charge from ${dayInWords(from)} to ${dayInWords(until)}: from ${spanInWords(charge, '%', 0)} to ${spanInWords(end, '%', 0)}`}
        foot={{ from, to: until }}
        side={{ from: 0, to: 100, unit: '%' }}
        bands={[
          { name: 'charge', points: outlook.points.map(({ day, charge: { low, high } }) => ({ x: day, low, high })) },
        ]}
        levels={[
          { at: RECHARGE_AT, name: 'recharge' },
          { at: CRANKS_ABOVE, name: 'cranks no more' },
          ...(frost === null ? [] : [{ at: frost, name: `could freeze at ${inUnit(night, '°C', 0)}` }]),
        ]}
      />
      <ul>
        <li>{drainWords(drain, maintained)}</li>
        {volts !== null && (
          <li>
            At {RECHARGE_AT} percent a {nominal}-volt one rests near {inUnit(volts, 'V', 2)}. By the rule of thumb,
            density plus 0.845 for each cell, it is{' '}
            {inUnit(voltageByDensity(densityByCharge(RECHARGE_AT, '1.265'), nominal), 'V', 2)}.
          </li>
        )}
        {chemistry === 'antimony' && (
          <li>
            Full flooded ones of the old kind were measured to lose {inUnit(measuredLoss(10).percentPer30Days, '%', 0)}{' '}
            in 30 days at 10 °C, {inUnit(measuredLoss(26.7).percentPer30Days, '%', 0)} at 27 °C and{' '}
            {inUnit(measuredLoss(37.8).percentPer30Days, '%', 0)} at 38 °C.
          </li>
        )}
        {frostWords(chemistry, end).map((text) => (
          <li>{text}</li>
        ))}
        <li>
          In the coldest night there, {inUnit(night, '°C', 0)}, even a full one has about{' '}
          {inUnit(crankingPower(night), '%', 0)} of its power to crank.
        </li>
        <li>{chargerWords(chemistry, nominal)}</li>
        {!placed && (
          <li>No climate was told: an unheated garage in a temperate place is assumed, and frost is not judged.</li>
        )}
      </ul>
      <p class="note">{CAUTIONS['battery-gas']}</p>
    </>
  );
};

export const drainWords = ({ low, high }: Span, maintained: boolean): string => {
  if (maintained) return 'Look at the maintainer’s lamp on every round; an unregulated trickle charger overcharges.';
  if (high === 0) return 'Disconnected: only its own discharge counts.';
  return low === high
    ? `A drain of ${inUnit(high, 'mA', 0)} empties it; self-discharge comes on top.`
    : `Nobody measured the drain: from ${spanInWords({ low, high }, 'mA', 0)} is reckoned. Measure it, and the band narrows.`;
};

export const frostWords = (chemistry: Chemistry, { low }: Span): string[] => {
  const point = low <= 0 && BATTERY[chemistry].acid ? FLAT_FREEZES : freezingByCharge(chemistry, low);
  return point === null
    ? []
    : [
        `${low <= 0 ? 'Flat for some time,' : `At ${inUnit(low, '%', 0)}`} its acid freezes near ${inUnit(point, '°C', 0)}.`,
      ];
};

export const chargerWords = (chemistry: Chemistry, nominal: 6 | 12): string => {
  const { absorb, float, notBelow } = CHARGING[chemistry];
  const volts = ({ low, high }: Span): string =>
    spanInWords({ low: (low * nominal) / 12, high: (high * nominal) / 12 }, 'V', 1);
  const cold = notBelow === null ? '' : ` Not to be charged below ${inUnit(notBelow, '°C', 0)}.`;
  return `Charger for ${nominal} volts at 25 °C: up to ${volts(absorb)}, ${float ? `then held at ${volts(float)}` : 'and never held on float'}; the handbook of battery and charger rules.${cold}`;
};
