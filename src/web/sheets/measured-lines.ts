/** Lines of the windshield sheet that carry a figure: pressures as read or planned, frost as measured. */
import { kindOf } from '../../acts/parts.ts';
import type { StayHere } from '../../acts/stays.ts';
import type { Span } from '../../ageing/span.ts';
import { inUnit, spanInWords } from '../../ageing/words.ts';
import { convert } from '../../catalogue/units.ts';
import { dayInWords } from '../../dates/words.ts';
import { coolantSample } from '../../findings/coolant-sample.ts';
import { gaugesOf } from '../../findings/measured.ts';
import type { Figure } from '../../plans/figures/figure.ts';
import { figuresOf } from '../../plans/figures.ts';
import type { PlanStep } from '../../plans/plan.ts';
import { extremesOf } from '../../plans/stay.ts';
import { corner } from './step-list.tsx';

export interface Line {
  name: string;
  /** Set in capitals once it is so. */
  so: string;
  /** Smaller, beneath. */
  below?: string;
  /** What stays to be written by hand behind that. */
  blank?: true;
  /** Two of them go side by side. */
  half?: true;
}

const TO_ROAD = 'Storage pressure: let down before driving';

/** What the tires were read to hold on the day of the tick, or else what is planned; a blank where neither is told. */
export const tireLine = (step: PlanStep, here: StayHere): Line => {
  const read = readOn(step, here);
  const told = read.length > 0 ? read : figuresOf(['pressure'], here.view.situation).map(planned);
  const alike = [...Map.groupBy(told, ({ amount }) => amount && spanInWords(amount, 'bar', 1))];
  if (alike.length === 0 || alike.some(([words]) => words === null))
    return { name: 'Tires', so: '', below: `${TO_ROAD}. Set to`, blank: true };
  const name = alike.map(([words, tires]) =>
    alike.length === 1 ? words : `${tires.map(({ at }) => corner(at)).join(' ')} ${words}`,
  );
  const psi = alike.map(([, [first]]) => psiOf(first?.amount as Span)).join(', ');
  return { name: 'Tires', so: name.join(', '), below: `${psi}. ${TO_ROAD}` };
};

interface Told {
  at: string;
  amount: Span | null;
}

const readOn = ({ tick }: PlanStep, { found }: StayHere): Told[] => {
  const told = found.parts
    .filter(({ kind }) => kind === 'tires-road')
    .map(({ position, readings }): Told => {
      const value = readings.findLast(({ gauge, day }) => gauge === 'cold-pressure' && day === tick?.day)?.value;
      return { at: position ?? '', amount: value === undefined ? null : { low: value, high: value } };
    });
  return told.every(({ amount }) => amount !== null) ? told : [];
};

const planned = ({ what, amount }: Figure): Told => ({ at: what.split(', ')[1] ?? '', amount });

const psiOf = ({ low, high }: Span): string =>
  spanInWords({ low: convert(low, 'bar', 'psi'), high: convert(high, 'bar', 'psi') }, 'psi', 0);

const COOLANTS = ['coolant-iat', 'coolant-oat'];

/** The warmest its ice can begin, by the last sample up to the day; nothing where none was taken. */
export const coolantLine = ({ found, view }: StayHere): Line[] => {
  const samples = found.parts
    .filter(({ kind }) => COOLANTS.includes(kind))
    .flatMap((part) =>
      gaugesOf(kindOf(part)).flatMap(({ gauge }) =>
        part.readings
          .filter((reading) => reading.gauge === gauge.key && reading.day <= view.on)
          .flatMap((reading) => {
            const sample = coolantSample(gauge, reading, part.details, null);
            return sample ? [{ day: reading.day, freezes: sample.outlook.freezes.high }] : [];
          }),
      ),
    );
  const last = samples.toSorted((a, b) => a.day.localeCompare(b.day)).at(-1);
  return last
    ? [
        {
          name: 'Coolant freezes at',
          so: inUnit(Math.ceil(last.freezes), '°C', 0),
          below: `measured on ${dayInWords(last.day)}; ${lowInWords(view)}`,
        },
      ]
    : [];
};

/** What it has to bear there. */
const lowInWords = ({ stay }: StayHere['view']): string =>
  stay.place
    ? `nights there fall to ${inUnit(extremesOf(stay, stay.place).low, '°C', 0)}`
    : 'how cold it gets there is not known';
