/** What the brake-fluid desk answers: what was measured first, then what is estimated, and its drawing. */
import { ROAD_HEAT, VAPOR_LOCK } from '../../ageing/brake-fluid/boiling.ts';
import { mayMix } from '../../ageing/brake-fluid/mixing.ts';
import { type BrakeFluidFacts, type BrakeFluidOutlook, SILICONE_SOURCES } from '../../ageing/brake-fluid/outlook.ts';
import { monthsTo, waterAfter } from '../../ageing/brake-fluid/water.ts';
import { daysInWords, inUnit, spanInWords } from '../../ageing/words.ts';
import type { BrakeFluidGrade } from '../../catalogue/brake-fluid-grades.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { rangeInWords } from '../../dates/words.ts';
import { boilingInWords, waterInWords } from '../../findings/brake-fluid-words.ts';
import { Sources } from '../sources.tsx';
import { WetChart } from './brake-fluid-chart.tsx';
import { disagreement, type JudgedNow, judgedLine } from './brake-fluid-judged.ts';

export interface BrakeFluidAnswer {
  facts: BrakeFluidFacts;
  told: boolean;
  /** What was measured today, judged; none for silicone, of which the instruments say nothing. */
  judged: readonly JudgedNow[];
  added: BrakeFluidGrade | null;
  on: CivilDate;
  outlook: BrakeFluidOutlook;
}

export const BrakeFluidAnswered = (answer: BrakeFluidAnswer) => {
  const { facts, judged, on, outlook } = answer;
  const { grade, pace } = facts;
  const glycol = grade.base === 'glycol';
  const disagree = disagreement(judged);
  return (
    <>
      {judged.map((one) => (
        <p class="answer">
          <strong>{judgedLine(one)}</strong>
        </p>
      ))}
      {disagree && <p>{disagree}</p>}
      <Estimate {...answer} />
      {glycol && <WetChart facts={facts} on={on} />}
      <ul>
        {outlook.says.map((text) => (
          <li>{text}</li>
        ))}
        {glycol && (
          <li>
            Filled dry, it would hold 3 percent after {spanInWords(monthsTo(3, pace), 'months', 0)}, and{' '}
            {spanInWords(waterAfter(24, pace), '%', 1)} after two years.
          </li>
        )}
        <Mixing {...answer} />
        {glycol && (
          <li>
            In tests on the road the fluid reached {spanInWords(ROAD_HEAT.normal, '°C', 0)} in ordinary driving,{' '}
            {ROAD_HEAT.bindingBrake} °C with a binding brake and {spanInWords(ROAD_HEAT.ladenDescent, '°C', 0)} on a
            laden descent. Vapor locked in fluids of the 1970s at{' '}
            {VAPOR_LOCK.rows.map(([percent, at]) => `${at} °C with ${percent} %`).join(', ')}.
          </li>
        )}
      </ul>
      {!glycol && <Sources keys={SILICONE_SOURCES} />}
      <p class="note">
        {CAUTIONS['brake-fluid']} {CAUTIONS['brake-work']}
      </p>
    </>
  );
};

const Estimate = ({ facts, told, on, outlook }: BrakeFluidAnswer) => {
  const { grade, filled, ownLimit } = facts;
  const { water, boiling, wet, limit, measured } = outlook;
  const unknown = 'on an unknown day';
  return (
    <>
      <p class="answer">
        <strong>
          {grade.name}
          {told ? '' : ', as the weakest grade it may be'}
          {filled ? `, filled ${rangeInWords(filled)}` : ''}
          {water && boiling ? `: ${waterInWords(water)}, boiling at ${boilingInWords(boiling)}.` : '.'}
        </strong>{' '}
        {measured ? 'From what was measured.' : water ? 'Estimated.' : ''}
      </p>
      {wet && (
        <dl class="days">
          <dt>Down to its wet minimum, {inUnit(grade.wetMinC, '°C', 0)}</dt>
          <dd>{daysInWords(wet, unknown, on)}</dd>
          {limit && ownLimit !== null && (
            <>
              <dt>Down to your limit, {inUnit(ownLimit, '°C', 0)}</dt>
              <dd>{daysInWords(limit, unknown, on)}</dd>
            </>
          )}
        </dl>
      )}
    </>
  );
};

const Mixing = ({ facts: { grade }, added }: BrakeFluidAnswer) =>
  added ? (
    <li>
      {mayMix(grade.name, added.name)
        ? `${grade.name} and ${added.name} may be topped up with each other; the mixture counts as the lower grade.`
        : `${grade.name} and ${added.name} must never be mixed: drain, flush and renew the rubber first.`}
    </li>
  ) : (
    <></>
  );
