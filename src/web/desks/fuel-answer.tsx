/** What the fuel desk answers: the days it keeps, what water does to it, and its life along the temperature. */
import { FUELS, type FuelKey } from '../../ageing/fuel/fuels.ts';
import { type FuelFacts, lifeAt } from '../../ageing/fuel/life.ts';
import type { FuelOutlook } from '../../ageing/fuel/outlook.ts';
import { separates, shedOnCooling, tolerance } from '../../ageing/fuel/water.ts';
import { coldestNight, monthOn, monthsOf, type Place } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { daysInWords, inUnit, spanInWords } from '../../ageing/words.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { dayInWords, rangeInWords } from '../../dates/words.ts';
import { waterInWords } from '../../findings/outlook/fuel.ts';
import { Chart } from '../chart.tsx';

export interface FuelAnswer {
  facts: FuelFacts & { tank: number | null };
  place: Place;
  /** Whether the coldest night was told: what it does to water is judged by no other. */
  nightTold: boolean;
  /** What of the place was left open and is assumed. */
  assumed: string | null;
  /** Measured, vol %. */
  measured: number | null;
  on: CivilDate;
  outlook: FuelOutlook;
}

export const FuelAnswered = (answer: FuelAnswer) => {
  const { facts, place, nightTold, assumed, on, outlook } = answer;
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
      <p>{CALENDAR_RULES}</p>
      <LifeChart facts={facts} />
      <ul>
        {[...waterWords(answer), ...says].map((text) => (
          <li>{text}</li>
        ))}
        {nightTold && water?.held !== undefined && water.held !== null && ethanol !== 0 && (
          <li>
            On the coldest night, {inUnit(night, '°C', 0)}, it holds about {inUnit(water.held, '%', 2)} of water
            {facts.tank !== null &&
              `, ${inUnit((facts.tank * facts.fullness * water.held) / 10, 'mL', 0)} in this tank`}
            .{shed > 0 && ` Saturated at 20 °C, it would shed ${inUnit(shed, '%', 2)} as a lower layer by then.`}
          </li>
        )}
        {water?.perYear && <li>The air brings {waterInWords(water.perYear)} a year.</li>}
        {water?.days && water.days.low < SOON && (
          <li>Air alone would part it after {monthsInWords(water.days.low)}.</li>
        )}
        {assumed && <li>{assumed}</li>}
        <li>Seen on {dayInWords(on)}.</li>
      </ul>
      <p class="note">{CAUTIONS['fuel-vapor']}</p>
    </>
  );
};

export const CALENDAR_RULES = 'Where the calendar of the trade ends sooner, it rules.';

/** Whether the water measured parts it, now and in the coldest night; null: not judged, or it never parts. */
export const partedBy = ({ facts, place, nightTold, measured, on }: FuelAnswer) => {
  const { ethanol } = FUELS[facts.fuel];
  if (measured === null || ethanol === null || ethanol === 0 || tolerance(ethanol, 0) === null) return null;
  return {
    now: separates(measured, ethanol, monthOn(monthsOf(place), on).mean),
    coldestNight: nightTold ? separates(measured, ethanol, coldestNight(place)) : null,
  };
};

/** What the water measured does to it. */
export const waterWords = (answer: FuelAnswer): string[] => {
  const { facts, place, measured, on } = answer;
  const { ethanol } = FUELS[facts.fuel];
  if (measured === null) return [];
  const told = `Water of ${inUnit(measured, '%', 2)} was measured`;
  if (ethanol === null) return [`${told}: diesel holds next to none. Drain it at the lowest point.`];
  if (ethanol === 0)
    return [
      measured > 0 ? `${told}: without ethanol it holds none, so that lies at the bottom. Drain it.` : `${told}.`,
    ];
  const parted = partedBy(answer);
  if (parted === null) return [`${told}: this blend carries its water and does not part.`];
  const { mean } = monthOn(monthsOf(place), on);
  const night = coldestNight(place);
  return [
    `${told}: at ${inUnit(mean, '°C', 0)}, the mean of this month there, it ${parted.now ? 'has parted: drain all of it' : 'is held'}.`,
    parted.coldestNight === null
      ? 'Whether it parts in the coldest night is not judged: say how cold the nights get.'
      : `In the coldest night, ${inUnit(night, '°C', 0)}, ${parted.coldestNight ? 'it parts into two layers: drain it before the frost' : 'it would still be held'}.`,
  ];
};

/** Within two years a number is worth saying, and no finer than months; beyond, the advice above says enough. */
const SOON = 730;
const monthsInWords = (days: number): string => `${Math.max(1, Math.floor(days / 30.4))} months at the earliest`;

const TEMPERATURES = Array.from({ length: 41 }, (_, degree) => degree);

/** °C of the published lives: colder is not counted on to lengthen them. */
const COUNTED_FROM = 20;

const countedLife = (fuel: FuelKey, stabilized: boolean, temperature: number): Span =>
  lifeAt(fuel, stabilized, Math.max(temperature, COUNTED_FROM));

/** Life along the temperature: from the first doubt to the last use. */
const LifeChart = ({ facts: { fuel, stabilized } }: Pick<FuelAnswer, 'facts'>) => {
  const points = TEMPERATURES.map((degree) => ({ x: degree, ...countedLife(fuel, stabilized, degree) }));
  const most = Math.max(...points.map(({ high }) => high));
  return (
    <Chart
      says={`Months it keeps by temperature: ${[10, 20, 30].map((degree) => `${spanInWords(countedLife(fuel, stabilized, degree), 'months', 0)} at ${degree} °C`).join(', ')}`}
      foot={{ from: 0, to: 40, unit: '°C, steady' }}
      side={{ from: 0, to: Math.min(Math.ceil(most), 36), unit: 'months' }}
      bands={[{ name: 'from first doubt to last use', points }]}
    />
  );
};
