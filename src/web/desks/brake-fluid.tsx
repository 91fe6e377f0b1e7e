/** Brake fluid: water and boiling point by grade, age and measurement, and what that means on the road. */
import { done, type Outcome } from '../../acts/fault.ts';
import { BOILING_SOURCES, WET_WATER } from '../../ageing/brake-fluid/boiling.ts';
import { MIXING_SOURCES } from '../../ageing/brake-fluid/mixing.ts';
import { BRAKE_FLUID_SOURCES, brakeFluidOutlook } from '../../ageing/brake-fluid/outlook.ts';
import { waterPace } from '../../ageing/brake-fluid/water.ts';
import { BRAKE_FLUID_GRADES, type BrakeFluidGrade } from '../../catalogue/brake-fluid-grades.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { DateOrder } from '../../dates/typed-point.ts';
import type { Answers } from '../../findings/facts.ts';
import { gradeNamed } from '../../findings/outlook/brake-fluid.ts';
import type { Ctx } from '../visit.ts';
import { type Asked, faultsIn, readDesk } from './asked.ts';
import { type BrakeFluidAnswer, BrakeFluidAnswered } from './brake-fluid-answer.tsx';
import { BANDS_IN_WORDS, GAUGES, judgedNow } from './brake-fluid-judged.ts';
import { showDesk } from './desk.tsx';
import { readWhen, WhenField } from './when.tsx';

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

export const readBrakeFluid = (asked: Asked, on: CivilDate, order: DateOrder): Outcome<BrakeFluidAnswer> => {
  const read = readDesk(DETAILS, asked, []);
  const filled = readWhen('filled', asked, { today: on, order, open: done(null), unknown: done(null) });
  if (!read.ok || !filled.ok) return { ok: false, faults: faultsIn(read, filled) };
  const answers = read.value;
  const facts = { ...factsIn(answers, on), filled: filled.value };
  const { added, grade } = answers;
  return done({
    facts,
    told: grade !== undefined,
    judged: judgedNow(grade === undefined ? null : facts.grade, answers),
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
    more: <WhenField name="filled" label="Filled" asked={asked} faults={faults} placeholder="June 2024, about 2020" />,
    moreTold: [['filled', asked.filled ?? '']],
    faults,
    answer: answer?.ok ? <BrakeFluidAnswered {...answer.value} /> : null,
    formula: [
      'Water: 1 to 2 percent by weight a year of service, half as much again in damp storage, capped at 8; hoses of PTFE lower the slow end. A survey of 1,000 cars found no firm relation of age and water, so there is a band and no curve, and what is measured takes its place.',
      `Boiling point: between the least dry and wet figures of the grade, along the points published for typical DOT 3 fluid (205, 187, 160 and 145 °C at 0, 1, 2 and 3 percent), which end at ${WET_WATER} percent. Beyond them no figure is given, only “at most”.`,
      `Measured, as on the page of a car. ${BANDS_IN_WORDS}`,
    ],
    ends: 'No estimate can clear brake fluid, and no fluid clears brakes. Work on brakes is checked by someone who is licensed to; the handbook names the grade.',
    sources: [
      ...BRAKE_FLUID_SOURCES,
      ...BOILING_SOURCES,
      ...MIXING_SOURCES,
      ...GAUGES.flatMap(({ sources }) => sources),
    ],
  });
};
