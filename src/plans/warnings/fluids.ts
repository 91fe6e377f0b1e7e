/** Fuel that ages in the tank, and coolant nobody measured before the frost. */
import { goodUntil } from '../../ageing/fuel/life.ts';
import { ASSUMED } from '../../ageing/place.ts';
import { inUnit } from '../../ageing/words.ts';
import { addMonths, type CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import { factsOf } from '../../findings/outlook/fuel.ts';
import { extremesOf } from '../stay.ts';
import { isTicked, type Warning, type Watched } from './warning.ts';

const FUEL = { cautions: ['fuel-vapor'], sources: ['uk-fuel-life', 'common-practice'] } as const;

export const ofFuel = ({ stay, findings, ticks }: Watched): Warning[] => {
  const fuel = findings.find(({ kind }) => kind.key === 'fuel-gasoline' || kind.key === 'fuel-diesel');
  const empty = isTicked(ticks, 'drain-tank') && !isTicked(ticks, 'tank-refill', 'wake-up');
  if (!fuel || empty) return [];
  const facts = factsOf(fuel);
  if (!facts) return [{ ...UNDATED, begins: addMonths(stay.parkedOn, 1) }];
  const { watch, stop } = goodUntil(facts, stay.place ?? ASSUMED);
  const warn = (key: string, begins: CivilDate | null, what: string, todo: string): Warning[] =>
    begins === null ? [] : [{ ...FUEL, key, begins, title: `${what} ${dayInWords(begins)}`, todo }];
  return [
    ...warn(
      'fuel-stop',
      stop.earliest,
      'By its age the fuel has been over since',
      'Plan to drain it before the engine is started. A second dose only where the label allows one; it restores nothing.',
    ),
    ...warn(
      'fuel-watch',
      watch.earliest === stop.earliest ? null : watch.earliest,
      'The fuel has been getting old since',
      'Smell it at the filler on the next round; use it soon after the car comes back, mixed with fresh.',
    ),
  ];
};

const UNDATED = {
  ...FUEL,
  key: 'fuel-undated',
  title: 'Nobody has said when its fuel was bought',
  todo: 'Say so on the fuel’s page; until then it counts as too old to start on. Smell it at the filler.',
} as const;

export const ofCoolant = ({ stay, findings, ticks }: Watched): Warning[] => {
  const coolant = findings.find(({ kind }) => kind.key === 'coolant-iat' || kind.key === 'coolant-oat');
  // Ticked before a change, it says nothing of what was filled after that.
  const measured = ticks.some(
    ({ step, state, day }) => step === 'coolant-strength' && state === 'done' && day >= (coolant?.since?.from ?? day),
  );
  if (!coolant || coolant.measured.length > 0 || measured) return [];
  const low = stay.place ? extremesOf(stay, stay.place).low : null;
  if (low !== null && low > 0) return [];
  return [
    {
      key: 'coolant-unmeasured',
      begins: stay.parkedOn,
      title: `Nobody has measured its coolant, and ${low === null ? 'nobody has said where it stands' : `nights there fall to ${inUnit(low, '°C', 0)}`}`,
      todo: 'Measure it before the frost: water that freezes splits the block. In doubt a workshop measures it in minutes.',
      forVisitor: true,
      cautions: ['hot-coolant'],
      sources: ['ashrae-glycol', 'common-practice'],
    },
  ];
};
