/** What is asked of glycol brake and clutch fluid, and its boiling points by grade. */
import { BRAKE_FLUID_GRADES } from '../brake-fluid-grades.ts';
import type { Bands, Detail, Gauge } from '../gauge.ts';

export const FLUID_GRADE = {
  key: 'grade',
  name: 'Grade',
  hint: 'On the bottle or the receipt; the cap names what belongs in it, which need not be what is in it.',
  choices: {
    'dot-3': 'DOT 3',
    'dot-4': 'DOT 4',
    'dot-4-low-viscosity': 'DOT 4 low-viscosity (ISO class 6)',
    'dot-5-1': 'DOT 5.1',
  },
} as const satisfies Detail;

export const FLUID_HOSES = {
  key: 'hoses',
  name: 'Flexible hoses',
  choices: { rubber: 'Rubber', ptfe: 'PTFE under steel braid' },
  stays: true,
} as const satisfies Detail;

export const OWN_LIMIT = {
  key: 'limit',
  name: 'Lowest boiling point you accept',
  hint: 'Mountain roads and track days ask for more than the wet minimum of the grade.',
  unit: '°C',
  also: ['°F'],
  range: [140, 300],
  decimals: 0,
  stays: true,
} as const satisfies Detail;

/** The margin above the wet minimum is a choice: no standard sets one for fluid in use. */
const MARGIN = 20;

const bandsOf = (grade: string): Bands => {
  const wet = BRAKE_FLUID_GRADES.find(({ name }) => name === grade)?.wetMinC;
  if (wet === undefined) throw new Error(`No grade ${grade}`);
  return { good: { from: wet + MARGIN }, watch: { from: wet } };
};

export const BOILING_POINT = {
  key: 'boiling-point',
  unit: '°C',
  also: ['°F'],
  decimals: 0,
  range: [60, 350],
  usual: [100, 300],
  bands: {
    by: FLUID_GRADE.key,
    of: {
      'dot-3': bandsOf('DOT 3'),
      'dot-4': bandsOf('DOT 4'),
      'dot-4-low-viscosity': bandsOf('ISO class 6'),
      'dot-5-1': bandsOf('DOT 5.1'),
      unknown: bandsOf('DOT 3'),
    } satisfies Record<keyof typeof FLUID_GRADE.choices | 'unknown', Bands>,
  },
  sampled: true,
  minutes: 15,
} as const satisfies Gauge;
