/** What the battery desk answers: the charge at the end, the days that matter, and the drawing of it. */
import { densityByCharge, voltageByCharge, voltageByDensity } from '../../ageing/battery/charge.ts';
import { CHARGING } from '../../ageing/battery/charging.ts';
import { BATTERY, type Chemistry } from '../../ageing/battery/chemistry.ts';
import { measuredLoss } from '../../ageing/battery/discharge.ts';
import { FLAT_FREEZES, freezingByCharge, frostLimit } from '../../ageing/battery/freezing.ts';
import { crankingPower } from '../../ageing/battery/life.ts';
import { type BatteryFacts, type BatteryOutlook, CRANKS_ABOVE, RECHARGE_AT } from '../../ageing/battery/outlook.ts';
import { coldestNight, type Place } from '../../ageing/place.ts';
import type { Span } from '../../ageing/span.ts';
import { daysInWords, inUnit, spanInWords } from '../../ageing/words.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { Chart } from '../chart.tsx';

export interface BatteryAnswer {
  facts: BatteryFacts;
  nominal: 6 | 12;
  place: Place;
  /** Whether the coldest night was told: frost is judged by no other. */
  nightTold: boolean;
  /** What of the place was left open and is assumed. */
  assumed: string | null;
  until: CivilDate;
  outlook: BatteryOutlook;
}

export const BatteryAnswered = (answer: BatteryAnswer) => {
  const { facts, place, nominal, until, outlook, nightTold, assumed } = answer;
  const { chemistry, maintained, charge, drain, from } = facts;
  const never = `not before ${dayInWords(until)}`;
  const end = outlook.points.at(-1)?.charge ?? charge;
  const night = coldestNight(place);
  const frost = nightTold ? frostLimit(chemistry, night) : null;
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
            {!nightTold
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
        {facts.charge.high <= FLAT && (
          <li>
            That low it may be a dead cell, or a battery that was left flat: charge it where it can’t hurt anybody, and
            have it tested before you count on it.
          </li>
        )}
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
        {frostWords(answer).map((text) => (
          <li>{text}</li>
        ))}
        {nightTold && (
          <li>
            In the coldest night there, {inUnit(night, '°C', 0)}, even a full one has about{' '}
            {inUnit(crankingPower(night), '%', 0)} of its power to crank.
          </li>
        )}
        <li>{chargerWords(chemistry, nominal)}</li>
        {assumed && (
          <li>
            {assumed} {nightTold ? '' : 'Frost is not judged.'}
          </li>
        )}
      </ul>
      <p class="note">{CAUTIONS['battery-gas']}</p>
    </>
  );
};

/** Charge at its start, %, that says more of the battery than of its charge. */
const FLAT = 15;

export const drainWords = ({ low, high }: Span, maintained: boolean): string => {
  if (maintained) return 'Look at the maintainer’s lamp on every round; an unregulated trickle charger overcharges.';
  if (high === 0) return 'Disconnected: only its own discharge counts.';
  return low === high
    ? `A drain of ${inUnit(high, 'mA', 0)} empties it; self-discharge comes on top.`
    : `Nobody measured the drain: from ${spanInWords({ low, high }, 'mA', 0)} is reckoned. Measure it, and the band narrows.`;
};

/** Where the acid freezes at the end of the time; of a battery held at a low charge, what the coldest night makes of it. */
export const frostWords = ({ facts, place, outlook, nightTold }: BatteryAnswer): string[] => {
  const { chemistry, maintained, charge } = facts;
  const { low } = outlook.points.at(-1)?.charge ?? charge;
  const point = low <= 0 && BATTERY[chemistry].acid ? FLAT_FREEZES : freezingByCharge(chemistry, low);
  if (point === null) return [];
  const night = coldestNight(place);
  const limit = frostLimit(chemistry, night);
  const freezes = `${low <= 0 ? 'Flat for some time,' : `At ${inUnit(low, '%', 0)}`} its acid freezes near ${inUnit(point, '°C', 0)}`;
  return maintained && nightTold && limit !== null && low <= limit
    ? [
        `${freezes}, and the coldest night there has ${inUnit(night, '°C', 0)}: bring it up before the frost. A frozen battery is never charged, on no maintainer either.`,
      ]
    : [`${freezes}.`];
};

export const chargerWords = (chemistry: Chemistry, nominal: 6 | 12): string => {
  const { absorb, float, notBelow } = CHARGING[chemistry];
  const volts = ({ low, high }: Span): string =>
    spanInWords({ low: (low * nominal) / 12, high: (high * nominal) / 12 }, 'V', 1);
  const cold = notBelow === null ? '' : ` Not to be charged below ${inUnit(notBelow, '°C', 0)}.`;
  return `Charger for ${nominal} volts at 25 °C: up to ${volts(absorb)}, ${float ? `then held at ${volts(float)}` : 'and never held on float'}; the handbook of battery and charger rules.${cold}`;
};
