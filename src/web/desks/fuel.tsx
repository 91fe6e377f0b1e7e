/** Fuel life: how long it stays good where it is, and when water parts it. */
import { done, type Outcome } from '../../acts/fault.ts';
import { FUELS, type FuelKey } from '../../ageing/fuel/fuels.ts';
import { type FuelFacts, lifeAt } from '../../ageing/fuel/life.ts';
import { type FuelOutlook, fuelOutlook } from '../../ageing/fuel/outlook.ts';
import { shedOnCooling, WATER_SOURCES } from '../../ageing/fuel/water.ts';
import { coldestNight, type Place } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { daysInWords, inUnit, spanInWords } from '../../ageing/words.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import { readTypedDate } from '../../dates/typed-date.ts';
import type { DateOrder } from '../../dates/typed-point.ts';
import { dayInWords, rangeInWords } from '../../dates/words.ts';
import type { Answers } from '../../findings/facts.ts';
import { waterInWords } from '../../findings/outlook/fuel.ts';
import { Chart } from '../chart.tsx';
import { Faults, faultsOf } from '../layout.tsx';
import type { Ctx } from '../visit.ts';
import { type Asked, PLACE_DETAILS, placeIn, readDesk, showDesk } from './desk.tsx';

const FUEL_DETAILS: readonly Detail[] = [
  {
    key: 'blend',
    name: 'Fuel',
    choices: Object.fromEntries(Object.entries(FUELS).map(([key, { name }]) => [key, name])),
  },
  { key: 'stabilized', name: 'Stabilizer', choices: { yes: 'Put into the fresh fuel', no: 'None, or put in later' } },
];

const TANK_DETAILS: readonly Detail[] = [
  { key: 'container', name: 'It is in', choices: { tank: 'the tank of a car', can: 'a closed can' } },
  { key: 'tank', name: 'That holds', unit: 'L', also: ['US gal'], range: [2, 400], decimals: 0 },
  { key: 'fullness', name: 'Filled to', unit: '%', range: [1, 100], decimals: 0 },
];

export const DETAILS = [...FUEL_DETAILS, ...TANK_DETAILS, ...PLACE_DETAILS];

/** Neither the best nor the worst, where nobody said how full, %. */
const HALF_FULL = 50;

export interface FuelAnswer {
  facts: FuelFacts & { tank: number | null };
  place: Place;
  placed: boolean;
  on: CivilDate;
  outlook: FuelOutlook;
}

export const readFuel = (asked: Asked, on: CivilDate, order: DateOrder): Outcome<FuelAnswer> => {
  const read = readDesk(DETAILS, asked, ['blend']);
  const bought = readBought(asked.bought ?? '', on, order);
  if (!read.ok || !bought.ok) return { ok: false, faults: [read, bought].flatMap((one) => (one.ok ? [] : one.faults)) };
  const answers = read.value;
  const facts = { ...factsIn(answers), filled: bought.value };
  const place = placeIn(answers);
  return done({ facts, place, placed: answers.low !== undefined, on, outlook: fuelOutlook(facts, place, on) });
};

const factsIn = ({ blend, stabilized, container, tank, fullness }: Answers) => ({
  fuel: blend as FuelKey,
  stabilized: stabilized === 'yes',
  fullness: typeof fullness === 'number' ? fullness : HALF_FULL,
  container: container === 'can' ? ('closed can' as const) : ('vehicle tank' as const),
  tank: typeof tank === 'number' ? tank : null,
});

/** When it was bought, as people write dates; left open it was today. */
const readBought = (typed: string, today: CivilDate, order: DateOrder): Outcome<DateRange> => {
  if (typed.trim() === '') return done({ from: today, to: today });
  const read = readTypedDate(typed, { today, order });
  if (read.ok && read.said === 'date') return done(read.date);
  const message = read.ok ? 'A day, a month or a year is meant here.' : read.message;
  return { ok: false, faults: [{ field: 'bought', message }] };
};

export const fuelDesk = (c: Ctx) => {
  const { on, person } = c.get('visit');
  const asked: Asked = c.req.query();
  const started = DETAILS.some(({ key }) => asked[key] !== undefined);
  const answer = started ? readFuel(asked, on, person.dateOrder) : null;
  const faults = answer && !answer.ok ? answer.faults : [];
  return showDesk(c, {
    title: 'Fuel life',
    lede: 'How long the fuel in a tank or can stays good where it is, what water does to it, and what to do when.',
    path: '/desks/fuel',
    groups: [
      { legend: 'The fuel', details: FUEL_DETAILS },
      { legend: 'What it is in', details: TANK_DETAILS },
      { legend: 'Where it stands', details: PLACE_DETAILS },
    ],
    asked,
    more: (
      <>
        <label>
          Bought (empty: today)
          <input name="bought" value={asked.bought ?? ''} autocomplete="off" {...faultsOf(faults, 'bought')} />
        </label>
        <Faults faults={faults} field="bought" text={asked.bought ?? ''} />
      </>
    ),
    faults,
    answer: answer?.ok ? <Answer {...answer.value} /> : null,
    formula: [
      'Each fuel has a life at 20 °C in a cool, dark, nearly full and closed tank; it halves for every 10 °C warmer. Month by month with the temperature of the place, faster outdoors and in a nearly empty tank. Texts differ by a factor of six on some blends: the cautious ends are taken.',
      'Water: every day the air above the fuel swells and shrinks with its temperature and draws in outside air with its humidity. The least is that air alone, the most three times it, for the vapor that pumps along.',
      'Gasoline with 10 percent ethanol holds about half a percent of water at 15 °C and 0.3 at −12 °C; when it cools below what it holds, water and ethanol fall out as a lower layer.',
    ],
    ends: 'Reckoned life is no test. Smell and look at a sample before every start after months; whatever smells sour, is brown or shows two layers is drained, whatever the date says. Draining and cleaning a tank is work for a workshop.',
    sources: [...Object.values(FUELS).flatMap(({ sources }) => sources), ...WATER_SOURCES],
  });
};

const Answer = ({ facts, place, placed, on, outlook }: FuelAnswer) => {
  const { watch, stop, water, says } = outlook;
  const { ethanol, name } = FUELS[facts.fuel];
  const night = coldestNight(place);
  const shed = ethanol === null ? 0 : shedOnCooling(ethanol, 20, night);
  const unknown = 'on an unknown day';
  return (
    <>
      <p class="answer">
        <strong>
          {name}, {facts.stabilized ? 'stabilized while fresh' : 'not stabilized'}, bought {rangeInWords(facts.filled)}.
        </strong>
      </p>
      <dl class="days">
        <dt>Use it soon</dt>
        <dd>{daysInWords(watch, unknown, on)}</dd>
        <dt>Drain it before starting</dt>
        <dd>{daysInWords(stop, unknown, on)}</dd>
      </dl>
      <LifeChart facts={facts} />
      <ul>
        {says.map((text) => (
          <li>{text}</li>
        ))}
        {water?.held !== undefined && water.held !== null && ethanol !== 0 && (
          <li>
            On the coldest night, {inUnit(night, '°C', 0)}, it holds about {inUnit(water.held, '%', 2)} of water
            {facts.tank !== null &&
              `, ${inUnit((facts.tank * facts.fullness * water.held) / 10, 'mL', 0)} in this tank`}
            .{shed > 0 && ` Saturated at 20 °C, it would shed ${inUnit(shed, '%', 2)} as a lower layer by then.`}
          </li>
        )}
        {water?.perYear && <li>The air brings {waterInWords(water.perYear)} a year.</li>}
        {water?.days && <li>Air alone would part it after {timeInWords(water.days)}.</li>}
        {!placed && <li>No climate was told: an unheated garage in a temperate place is assumed.</li>}
        <li>Seen on {dayInWords(on)}.</li>
      </ul>
      <p class="note">{CAUTIONS['fuel-vapor']}</p>
    </>
  );
};

/** Days in no finer words than they bear. */
const timeInWords = ({ low }: Span): string =>
  low < 60
    ? 'weeks'
    : low < 730
      ? `${Math.round(low / 30.4)} months at the earliest`
      : `${Math.floor(low / 365)} years at the earliest`;

const TEMPERATURES = Array.from({ length: 41 }, (_, degree) => degree);

/** Life along the temperature: from the first doubt to the last use. */
const LifeChart = ({ facts: { fuel, stabilized } }: Pick<FuelAnswer, 'facts'>) => {
  const points = TEMPERATURES.map((degree) => ({ x: degree, ...lifeAt(fuel, stabilized, degree) }));
  const most = Math.max(...points.map(({ high }) => high));
  return (
    <Chart
      says={`Months it keeps by temperature: ${[10, 20, 30].map((degree) => `${spanInWords(lifeAt(fuel, stabilized, degree), 'months', 0)} at ${degree} °C`).join(', ')}`}
      foot={{ from: 0, to: 40, unit: '°C, steady' }}
      side={{ from: 0, to: Math.min(Math.ceil(most), 36), unit: 'months' }}
      bands={[{ name: 'from first doubt to last use', points }]}
    />
  );
};
