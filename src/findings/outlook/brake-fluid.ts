/** Brake and clutch fluid: the water it may hold, and where it would boil. */
import {
  BRAKE_FLUID_SOURCES,
  type BrakeFluidOutlook,
  brakeFluidOutlook,
  SILICONE_SOURCES,
} from '../../ageing/brake-fluid/outlook.ts';
import { type FluidHoses, waterPace } from '../../ageing/brake-fluid/water.ts';
import { humidityOf, type Place } from '../../ageing/place.ts';
import { inUnit } from '../../ageing/words.ts';
import { BRAKE_FLUID_GRADES, type BrakeFluidGrade } from '../../catalogue/brake-fluid-grades.ts';
import { boilingInWords, waterInWords } from '../brake-fluid-words.ts';
import { choiceIn, type Known, lastOf, type Model, numberIn, type Outlook } from './outlook.ts';

/** The grade by the answer about it; of an unknown one the weakest is taken, whose floor is the lowest. */
const GRADE_BY_ANSWER: Readonly<Record<string, string>> = {
  'dot-3': 'DOT 3',
  'dot-4': 'DOT 4',
  'dot-4-low-viscosity': 'ISO class 6',
  'dot-5-1': 'DOT 5.1',
};

export const gradeNamed = (name: string): BrakeFluidGrade =>
  BRAKE_FLUID_GRADES.find((grade) => grade.name === name) ?? (BRAKE_FLUID_GRADES[0] as BrakeFluidGrade);

/** Relative humidity from which a place counts as damp, %; common practice. */
const DAMP = 75;
const isDamp = (place: Place): boolean => place.shelter === 'damp' || humidityOf(place) >= DAMP;

const ENDS =
  'No estimate can clear brake fluid. A boiling tester on fluid from a bleeder tells; a soft or sinking pedal, or any doubt, is for a workshop before the car is driven.';

export const brakeFluid: Model = {
  surest: ['boiling-point', 'water'],
  tell(known) {
    const told = GRADE_BY_ANSWER[choiceIn(known, 'grade') ?? ''];
    const grade = gradeOf(known);
    const limit = numberIn(known, 'limit') ?? null;
    const outlook = outlookOf(known);
    if (!outlook.water || !outlook.boiling || !outlook.wet) return null;
    const never = 'on an unknown day';
    return {
      on: known.on,
      now: `${waterInWords(outlook.water)}; as ${grade.name}${told ? '' : ' (grade not told, the weakest assumed)'} it would boil at ${boilingInWords(outlook.boiling)}.`,
      measured: outlook.measured,
      days: [
        { what: `Down to its wet minimum, ${inUnit(grade.wetMinC, '°C', 0)}`, when: outlook.wet, never },
        ...(limit !== null && outlook.limit
          ? [{ what: `Down to your limit, ${inUnit(limit, '°C', 0)}`, when: outlook.limit, never }]
          : []),
      ],
      says: [...outlook.says],
      ends: ENDS,
      desk: '/desks/brake-fluid',
      sources: BRAKE_FLUID_SOURCES,
    };
  },
  holdsUntil(known) {
    // Of a fluid nobody named, the floor it is judged by may lie below its own.
    if (!choiceIn(known, 'grade')) return null;
    const { measured, wet } = outlookOf(known);
    return measured ? (wet?.earliest ?? null) : null;
  },
};

const gradeOf = (known: Known): BrakeFluidGrade =>
  gradeNamed(GRADE_BY_ANSWER[choiceIn(known, 'grade') ?? ''] ?? 'DOT 3');

const outlookOf = (known: Known): BrakeFluidOutlook => {
  const [water, boiling] = [lastOf(known, 'water'), lastOf(known, 'boiling-point')];
  const { place } = known.car;
  return brakeFluidOutlook(
    {
      grade: gradeOf(known),
      filled: known.since,
      pace: waterPace({ damp: place !== null && isDamp(place), hoses: hosesOf(known) }),
      measured: { ...(water ? { water } : {}), ...(boiling ? { boiling } : {}) },
      ownLimit: numberIn(known, 'limit') ?? null,
    },
    known.on,
  );
};

const hosesOf = (known: Known): FluidHoses => {
  const told = choiceIn(known, 'hoses');
  return told === 'ptfe' ? 'braided' : told === 'rubber' ? 'rubber' : 'unknown';
};

export const siliconeFluid: Model = {
  surest: [],
  tell(known): Outlook {
    const { on, since } = known;
    const grade = gradeNamed('DOT 5 silicone');
    const pace = waterPace({ damp: false, hoses: 'unknown' });
    const { says } = brakeFluidOutlook({ grade, filled: since, pace, measured: {}, ownLimit: null }, on);
    return {
      on: known.on,
      now: 'silicone fluid takes up no water; what gets in lies at the lowest points.',
      measured: false,
      days: [],
      says: [...says],
      ends: ENDS,
      desk: '/desks/brake-fluid?grade=dot-5-silicone',
      sources: SILICONE_SOURCES,
    };
  },
};
