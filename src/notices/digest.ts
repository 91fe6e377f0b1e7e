/** The day's letter to one person as data: by car, safety first, each line with its reason, its age and what to do. */
import { count } from '../dates/words.ts';
import { byNeed } from '../findings/car.ts';
import { explain } from '../findings/explain.ts';
import type { Owed, Stage } from './owed.ts';

export interface DigestLine {
  partId: string;
  stage: Stage;
  safety: boolean;
  title: string;
  age: string;
  why: string[];
  doubts: string[];
  todo: string;
}

export interface DigestCar {
  carId: string;
  name: string;
  lines: DigestLine[];
  /** Usual cautions of the work these lines ask for, each once. */
  cautions: string[];
  /** Parts whose dates can't clear them: named as a task, never left out as if they were in order. */
  unproven: number;
}

export interface Digest {
  subject: string;
  cars: DigestCar[];
}

export interface OwedCar {
  carId: string;
  name: string;
  owed: readonly Owed[];
  unproven: number;
}

/** The letter for what is owed, or null where nothing is: no news, no letter. */
export const digestOf = (owedCars: readonly OwedCar[]): Digest | null => {
  const cars = owedCars.filter(({ owed }) => owed.length > 0).map(carSection);
  if (cars.length === 0) return null;
  cars.sort((a, b) => gravity(b) - gravity(a));
  return { subject: subjectOf(cars), cars };
};

const gravity = (car: DigestCar): number =>
  car.lines.reduce((sum, line) => sum + (line.safety ? 100 : 1) * (line.stage === 'past' ? 10 : 1), 0);

const carSection = ({ carId, name, owed, unproven }: OwedCar): DigestCar => {
  const sorted = [...owed].sort((a, b) => Number(isSafety(b)) - Number(isSafety(a)) || byNeed(a, b));
  const told = sorted.map((finding) => ({ finding, words: explain(finding) }));
  return {
    carId,
    name,
    lines: told.map(({ finding, words }) => ({
      partId: finding.part.id,
      stage: finding.standing,
      safety: isSafety(finding),
      title: finding.part.position ? `${finding.kind.name}, ${finding.part.position}` : finding.kind.name,
      age: words.age,
      why: words.reasons.map(({ text }) => text),
      doubts: words.doubts,
      todo: words.todo,
    })),
    cautions: [...new Set(told.flatMap(({ words }) => words.cautions))],
    unproven,
  };
};

const isSafety = (finding: Owed): boolean => finding.kind.severity === 'safety';

/** "2 past, 1 due, 3 to look at: Marlow Six and 2 more cars". */
const subjectOf = (cars: readonly DigestCar[]): string => {
  const lines = cars.flatMap((car) => car.lines);
  const of = (stage: Stage): number => lines.filter((line) => line.stage === stage).length;
  const what = [
    [of('past'), 'past'],
    [of('due'), 'due'],
    [of('look'), 'to look at'],
  ] as const;
  const told = what.filter(([n]) => n > 0).map(([n, word]) => `${n} ${word}`);
  const [first, ...others] = cars;
  return `${told.join(', ')}: ${first?.name}${others.length > 0 ? ` and ${count(others.length, 'more car')}` : ''}`;
};
