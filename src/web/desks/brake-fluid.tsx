/** Brake fluid: water and boiling point by grade, age and measurement, and what that means on the road. */
import { done, type Outcome } from '../../acts/fault.ts';
import { BOILING_SOURCES, boilingAt, ROAD_HEAT, VAPOR_LOCK, WET_WATER } from '../../ageing/brake-fluid/boiling.ts';
import { MIXING_SOURCES, mayMix } from '../../ageing/brake-fluid/mixing.ts';
import {
  BRAKE_FLUID_SOURCES,
  type BrakeFluidFacts,
  type BrakeFluidOutlook,
  brakeFluidOutlook,
  SILICONE_SOURCES,
} from '../../ageing/brake-fluid/outlook.ts';
import { monthsTo, waterAfter, waterPace } from '../../ageing/brake-fluid/water.ts';
import { daysInWords, inUnit, spanInWords } from '../../ageing/words.ts';
import { BRAKE_FLUID_GRADES, type BrakeFluidGrade } from '../../catalogue/brake-fluid-grades.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { readTypedDate } from '../../dates/typed-date.ts';
import type { DateOrder } from '../../dates/typed-point.ts';
import { rangeInWords } from '../../dates/words.ts';
import { boilingInWords, waterInWords } from '../../findings/brake-fluid-words.ts';
import type { Answers } from '../../findings/facts.ts';
import { gradeNamed } from '../../findings/outlook/brake-fluid.ts';
import { Chart } from '../chart.tsx';
import { Faults, faultsOf } from '../layout.tsx';
import { Sources } from '../sources.tsx';
import type { Ctx } from '../visit.ts';
import { type Asked, readDesk, showDesk } from './desk.tsx';

const keyOf = (name: string): string => name.toLowerCase().replace(/[ .]/g, '-');

const GRADES = Object.fromEntries(
  BRAKE_FLUID_GRADES.map(({ name, dryMinC, wetMinC }) => [keyOf(name), `${name}: ${dryMinC} dry, ${wetMinC} °C wet`]),
);

const FLUID_DETAILS: readonly Detail[] = [
  {
    key: 'grade',
    name: 'Grade',
    choices: GRADES,
    hint: 'On the bottle or the receipt. Left open, the weakest is reckoned with: DOT 3.',
  },
  { key: 'hoses', name: 'Flexible hoses', choices: { rubber: 'Rubber', braided: 'PTFE under steel braid' } },
  { key: 'air', name: 'Where it stands', choices: { dry: 'Dry', damp: 'Damp, coastal or humid' } },
];

const MEASURED_DETAILS: readonly Detail[] = [
  { key: 'water', name: 'Water by a meter or strip', unit: '%', range: [0, 20], decimals: 1 },
  { key: 'boiling', name: 'Boiling point by a tester', unit: '°C', also: ['°F'], range: [60, 350], decimals: 0 },
  { key: 'copper', name: 'Copper by a strip', unit: 'ppm', range: [0, 2000], decimals: 0 },
  { key: 'limit', name: 'Lowest boiling point you accept', unit: '°C', also: ['°F'], range: [140, 300], decimals: 0 },
];

const MIX_DETAILS: readonly Detail[] = [{ key: 'added', name: 'Topping up with', choices: GRADES }];

export const DETAILS = [...FLUID_DETAILS, ...MEASURED_DETAILS, ...MIX_DETAILS];

/** Copper from which the corrosion inhibitors count as used up, ppm: table of a US repair-trade association. */
export const SPENT_COPPER = 200;

export interface BrakeFluidAnswer {
  facts: BrakeFluidFacts;
  told: boolean;
  copper: number | null;
  added: BrakeFluidGrade | null;
  on: CivilDate;
  outlook: BrakeFluidOutlook;
}

export const readBrakeFluid = (asked: Asked, on: CivilDate, order: DateOrder): Outcome<BrakeFluidAnswer> => {
  const read = readDesk(DETAILS, asked, []);
  const filled = readFilled(asked.filled ?? '', on, order);
  if (!read.ok || !filled.ok) return { ok: false, faults: [read, filled].flatMap((one) => (one.ok ? [] : one.faults)) };
  const answers = read.value;
  const facts = { ...factsIn(answers, on), filled: filled.value };
  const { added, copper, grade } = answers;
  return done({
    facts,
    told: grade !== undefined,
    copper: typeof copper === 'number' ? copper : null,
    added: typeof added === 'string' ? gradeOf(added) : null,
    on,
    outlook: brakeFluidOutlook(facts, on),
  });
};

const gradeOf = (key: unknown): BrakeFluidGrade =>
  BRAKE_FLUID_GRADES.find(({ name }) => keyOf(name) === key) ?? gradeNamed('DOT 3');

const factsIn = ({ grade, hoses, air, water, boiling, limit }: Answers, day: CivilDate) => ({
  grade: gradeOf(grade),
  pace: waterPace({ damp: air === 'damp', hoses: hoses === 'braided' || hoses === 'rubber' ? hoses : 'unknown' }),
  measured: {
    ...(typeof water === 'number' ? { water: { value: water, day } } : {}),
    ...(typeof boiling === 'number' ? { boiling: { value: boiling, day } } : {}),
  },
  ownLimit: typeof limit === 'number' ? limit : null,
});

/** When it was filled, as people write dates; nothing typed: not known. */
const readFilled = (typed: string, today: CivilDate, order: DateOrder): Outcome<BrakeFluidFacts['filled']> => {
  if (typed.trim() === '') return done(null);
  const read = readTypedDate(typed, { today, order });
  if (read.ok) return done(read.said === 'date' ? read.date : null);
  return { ok: false, faults: [{ field: 'filled', message: read.message }] };
};

export const brakeFluidDesk = (c: Ctx) => {
  const { on, person } = c.get('visit');
  const asked: Asked = c.req.query();
  const started = asked.filled !== undefined || DETAILS.some(({ key }) => asked[key] !== undefined);
  const answer = started ? readBrakeFluid(asked, on, person.dateOrder) : null;
  const faults = answer && !answer.ok ? answer.faults : [];
  return showDesk(c, {
    title: 'Brake fluid',
    lede: 'How much water it may hold, where it would boil, by which day it is down to the minimum of its grade.',
    path: '/desks/brake-fluid',
    groups: [
      { legend: 'The fluid', details: FLUID_DETAILS },
      { legend: 'What was measured today, if anything', details: MEASURED_DETAILS },
      { legend: 'Mixing', details: MIX_DETAILS },
    ],
    asked,
    more: (
      <>
        <label>
          Filled
          <input
            name="filled"
            value={asked.filled ?? ''}
            placeholder="June 2024, about 2020"
            autocomplete="off"
            {...faultsOf(faults, 'filled')}
          />
        </label>
        <Faults faults={faults} field="filled" text={asked.filled ?? ''} />
      </>
    ),
    faults,
    answer: answer?.ok ? <Answer {...answer.value} /> : null,
    formula: [
      'Water: 1 to 2 percent by weight a year of service, half as much again in damp storage, capped at 8; hoses of PTFE lower the slow end. A survey of 1,000 cars found no firm relation of age and water, so there is a band and no curve, and what is measured takes its place.',
      `Boiling point: between the least dry and wet figures of the grade, along the points published for typical DOT 3 fluid (205, 187, 160 and 145 °C at 0, 1, 2 and 3 percent), which end at ${WET_WATER} percent. Beyond them no figure is given, only “at most”.`,
      `Measured: below the wet minimum of the grade is act, less than 20 °C above it is watch. Water from 2 percent is watch, from 3 act; copper from ${SPENT_COPPER} ppm is act.`,
    ],
    ends: 'No estimate can clear brake fluid, and no fluid clears brakes. Work on brakes is checked by someone who is licensed to; the handbook names the grade.',
    sources: [...BRAKE_FLUID_SOURCES, ...BOILING_SOURCES, ...MIXING_SOURCES, 'repair-association-table'],
  });
};

const Answer = ({ facts, told, copper, added, on, outlook }: BrakeFluidAnswer) => {
  const { grade, filled, pace, ownLimit } = facts;
  const { water, boiling, wet, limit, measured, says } = outlook;
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
      {grade.base === 'glycol' && <WetChart facts={facts} />}
      <ul>
        {says.map((text) => (
          <li>{text}</li>
        ))}
        {grade.base === 'glycol' && (
          <li>
            Filled dry, it would hold 3 percent after {spanInWords(monthsTo(3, pace), 'months', 0)}, and{' '}
            {spanInWords(waterAfter(24, pace), '%', 1)} after two years.
          </li>
        )}
        {copper !== null && (
          <li>
            {copper >= SPENT_COPPER
              ? `Copper of ${copper} ppm: its corrosion inhibitors are used up, change it.`
              : `Copper of ${copper} ppm is below ${SPENT_COPPER}; that clears neither its water nor its age.`}
          </li>
        )}
        {added && (
          <li>
            {mayMix(grade.name, added.name)
              ? `${grade.name} and ${added.name} may be topped up with each other; the mixture counts as the lower grade.`
              : `${grade.name} and ${added.name} must never be mixed: drain, flush and renew the rubber first.`}
          </li>
        )}
        <li>
          In tests on the road the fluid reached {spanInWords(ROAD_HEAT.normal, '°C', 0)} in ordinary driving,{' '}
          {ROAD_HEAT.bindingBrake} °C with a binding brake and {spanInWords(ROAD_HEAT.ladenDescent, '°C', 0)} on a laden
          descent. Vapor locked in fluids of the 1970s at{' '}
          {VAPOR_LOCK.rows.map(([percent, at]) => `${at} °C with ${percent} %`).join(', ')}.
        </li>
      </ul>
      {grade.base === 'silicone' && <Sources keys={SILICONE_SOURCES} />}
      <p class="note">
        {CAUTIONS['brake-fluid']} {CAUTIONS['brake-work']}
      </p>
    </>
  );
};

const MONTHS = Array.from({ length: 61 }, (_, month) => month);

/** Least boiling point of the grade along the months since it was filled dry: slow and fast as a band. */
const WetChart = ({ facts: { grade, pace, ownLimit } }: Pick<BrakeFluidAnswer, 'facts'>) => {
  const points = MONTHS.map((month) => {
    const { low, high } = waterAfter(month, pace);
    return { x: month, low: boilingAt(grade, high) ?? 0, high: boilingAt(grade, low) ?? 0 };
  });
  const at = (month: number) => points[month] ?? { low: 0, high: 0 };
  return (
    <Chart
      says={`Least boiling point of ${grade.name} after filling: ${[12, 24, 36].map((month) => `${spanInWords(at(month), '°C', 0)} after ${month} months`).join(', ')}`}
      foot={{ from: 0, to: 60, unit: 'months since filled dry' }}
      side={{ from: 100, to: 280, unit: '°C' }}
      bands={[{ name: 'from fast to slow', points }]}
      levels={[
        { at: grade.wetMinC, name: `wet minimum ${grade.wetMinC} °C` },
        { at: ROAD_HEAT.bindingBrake, name: 'reached with a binding brake' },
        ...(ownLimit === null ? [] : [{ at: ownLimit, name: 'your limit' }]),
      ]}
    />
  );
};
