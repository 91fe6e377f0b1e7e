/** What was measured of brake fluid today, judged by the same bands as on the page of a car. */
import { judge, VERDICTS, type Verdict } from '../../ageing/judge.ts';
import { inUnit } from '../../ageing/words.ts';
import type { BrakeFluidGrade } from '../../catalogue/brake-fluid-grades.ts';
import type { FLUID_GRADE } from '../../catalogue/details/brake-fluid.ts';
import { KINDS } from '../../catalogue/kinds.ts';
import type { Answers } from '../../findings/facts.ts';
import { type Gauged, gaugesOf } from '../../findings/measured.ts';
import { bandWords, capital } from '../../findings/reading-words.ts';

const KIND = KINDS.get('brake-fluid-glycol');
if (!KIND) throw new Error('The catalogue has no brake fluid');

/** The gauges of glycol fluid. */
export const GAUGES: readonly Gauged[] = gaugesOf(KIND);

/** The questions of the desk that answer them. */
const ASKED_AS: Readonly<Record<string, string>> = { 'boiling-point': 'boiling', water: 'water', copper: 'copper' };

/** The grades a car’s page asks for, by those of the desk: the nearest with the same dry and wet points. */
const GRADE_ON_CARS: Readonly<Record<string, keyof typeof FLUID_GRADE.choices>> = {
  'DOT 3': 'dot-3',
  'DOT 4': 'dot-4',
  'DOT 5.1': 'dot-5-1',
  'ISO class 3': 'dot-3',
  'ISO class 4': 'dot-4',
  'ISO class 5-1': 'dot-5-1',
  'ISO class 6': 'dot-4-low-viscosity',
  'ISO class 7': 'dot-5-1',
};

export interface JudgedNow {
  test: Gauged;
  /** In the unit of the gauge. */
  value: number;
  verdict: Verdict;
}

/** Each that was measured; a grade nobody told is judged as the weakest. Nothing of silicone. */
export const judgedNow = (grade: BrakeFluidGrade | null, answers: Answers): JudgedNow[] => {
  if (grade?.base === 'silicone') return [];
  const details = grade ? { grade: GRADE_ON_CARS[grade.name] ?? 'unknown' } : {};
  return GAUGES.flatMap((test) => {
    const value = answers[ASKED_AS[test.gauge.key] ?? ''];
    if (typeof value !== 'number') return [];
    const { verdict } = judge(test.gauge, { value, warmth: null }, { details, coldest: null });
    return verdict === null ? [] : [{ test, value, verdict }];
  });
};

/** “Boiling point 150 °C: act. Below the wet minimum: …” */
export const judgedLine = ({ test, value, verdict }: JudgedNow): string =>
  `${test.name} ${inUnit(value, test.gauge.unit, test.gauge.decimals)}: ${verdict}. ${capital(bandWords({ test, verdict }))}.`;

/** Said where instruments disagree; null where they don’t. */
export const disagreement = (judged: readonly JudgedNow[]): string | null => {
  const gravest = [...VERDICTS].reverse().find((one) => judged.some(({ verdict }) => verdict === one));
  if (!gravest || judged.every(({ verdict }) => verdict === gravest)) return null;
  const said = judged.map(({ test, verdict }) => `${test.name.toLowerCase()} says ${verdict}`).join(', ');
  return `What was measured disagrees: ${said}. The gravest counts: ${gravest}.`;
};

/** The bands as text, for how it is reckoned. */
export const BANDS_IN_WORDS = GAUGES.map(
  ({ name, good, watch, act }) => `${name}: good ${good}; ${watch ? `watch ${watch}; ` : ''}act ${act}.`,
).join(' ');
