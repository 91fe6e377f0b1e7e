/** The columns of the monthly card, and what a round that was made wrote into them. */
import { kindOf } from '../../acts/parts.ts';
import type { StayHere } from '../../acts/stays.ts';
import { inUnit } from '../../ageing/words.ts';
import { convert } from '../../catalogue/units.ts';
import { gaugesOf } from '../../findings/measured.ts';
import { LOOKS, type Look, looksOn } from '../../plans/looks.ts';
import type { RoundMade } from '../../plans/rounds.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { corner } from './step-list.tsx';

export interface Column {
  name: string;
  /** Smaller, below the name. */
  unit: string;
  /** What was recorded; empty: nothing. */
  of(made: RoundMade): string;
}

const ON_CARD: Readonly<Record<string, string>> = { mice: 'Mice', drips: 'Drips', lamp: 'Lamp', rolled: 'Rolled' };

export const columnsOf = ({ found, view }: StayHere): Column[] => {
  const { situation, stay } = view;
  const asked = looksOn(situation, 1);
  const tires = stay.circumstances.includes('wheels-off')
    ? []
    : found.parts.filter(({ kind }) => kind === 'tires-road');
  return [
    ...found.parts
      .filter(({ kind }) => BATTERY.test(kind))
      .slice(0, 1)
      .map((part): Column => ({ name: 'Volts', unit: 'at rest', of: readBy(part, 'rest-voltage') })),
    ...tires.map(
      (part): Column => ({
        name: part.position ? corner(part.position) : 'Tire',
        unit: 'bar, psi',
        of: readBy(part, 'cold-pressure'),
      }),
    ),
    {
      name: 'Humid',
      unit: '%',
      of: readBy(
        found.parts.find(({ kind }) => kind === 'desiccant'),
        'humidity',
      ),
    },
    ...Object.entries(ON_CARD)
      .filter(([key]) => asked.some((look) => look.key === key))
      .map(([key, name]): Column => ({ name, unit: '', of: ({ answers }) => answerIn(key, answers) })),
  ];
};

export const BATTERY = /^battery-(flooded|agm|lithium)$/;

/** In the unit it was typed in. */
const readBy =
  (part: PartOnRecord | undefined, key: string) =>
  ({ day }: RoundMade): string => {
    const reading = part?.readings.findLast((one) => one.gauge === key && one.day === day);
    const gauge = part && gaugesOf(kindOf(part)).find((test) => test.gauge.key === key)?.gauge;
    if (!reading || !gauge) return '';
    const own = reading.unit === gauge.unit;
    return inUnit(convert(reading.value, gauge.unit, reading.unit), reading.unit, own ? gauge.decimals : 0);
  };

const lookOf = (key: string): Look | undefined => LOOKS.find((look) => look.key === key);

const answerIn = (key: string, answers: RoundMade['answers']): string =>
  lookOf(key)?.answers[answers[key] ?? '']?.name ?? '';

/** What a round found beside the columns: every answer that is not good, and its note. */
export const remarksOf = ({ answers, note }: RoundMade): string =>
  [
    ...Object.entries(answers).flatMap(([key, answer]) => {
      const look = lookOf(key);
      const said = look?.answers[answer];
      return look && said && said.verdict !== 'good' && !(key in ON_CARD) ? [`${look.name}: ${said.name}.`] : [];
    }),
    ...(note ? [note] : []),
  ].join(' ');
