/** The day's letter to one person as data: by car, safety first, each line with its reason, its age and what to do. */
import { daysInWords } from '../ageing/words.ts';
import { CAUTIONS, DEFERS } from '../catalogue/cautions.ts';
import { count, dayInWords } from '../dates/words.ts';
import { byNeed } from '../findings/car.ts';
import { explain } from '../findings/explain.ts';
import type { Outlook } from '../findings/outlook/outlook.ts';
import type { Owed, Stage } from './owed.ts';
import type { StayNews } from './stay-news.ts';
import { type YearPart, yearInWords } from './yearly.ts';

export interface DigestLine {
  partId: string;
  stage: Stage;
  /** Everything that is new about it: all of it counts as said. */
  news: readonly Stage[];
  safety: boolean;
  /** It was said before and nobody has answered: on which day, in words. */
  again: string | null;
  title: string;
  age: string;
  why: string[];
  doubts: string[];
  todo: string;
}

/** A line about the lay-up of a car. */
export interface StayLine {
  layUpId: string;
  news: StayNews;
}

/** A line about its return to the road. */
export interface RevivalLine {
  revivalId: string;
  news: StayNews;
}

export interface DigestCar {
  carId: string;
  name: string;
  /** Its lay-up first: what is to be done at the car today. */
  stay: (StayLine | RevivalLine)[];
  lines: DigestLine[];
  /** "2 past, 1 due, 3 to look at". */
  summary: string;
  /** Usual cautions of the work these lines ask for, each once. */
  cautions: string[];
  /** Parts whose dates can't clear them: named as a task, never left out as if they were in order. */
  unproven: number;
  /** Parts nothing could be reckoned for, by a fault of the record or of ours. */
  unjudged: number;
}

export interface Digest {
  subject: string;
  cars: DigestCar[];
  /** Once a year: the whole collection. */
  year: YearPart | null;
}

export interface OwedCar {
  carId: string;
  name: string;
  owed: readonly Owed[];
  stay: readonly (StayLine | RevivalLine)[];
  unproven: number;
  unjudged: number;
}

/** The letter for what is owed, or null where nothing is: no news, no letter. */
export const digestOf = (owedCars: readonly OwedCar[], year: YearPart | null = null): Digest | null => {
  const cars = owedCars.filter(({ owed, stay }) => owed.length + stay.length > 0).map(carSection);
  if (cars.length === 0 && year === null) return null;
  cars.sort(byGravity);
  return {
    subject: [...(year ? [yearInWords(year)] : []), ...(cars.length > 0 ? [subjectOf(cars)] : [])].join('; '),
    cars,
    year,
  };
};

/** Sorts cars: most safety items past first, then what can’t wait of a lay-up, then most safety items, items past, items. */
const byGravity = (a: DigestCar, b: DigestCar): number => {
  const [one, other] = [gravity(a), gravity(b)];
  return other.map((weight, index) => weight - (one[index] ?? 0)).find((gap) => gap !== 0) ?? 0;
};

const gravity = ({ lines, stay }: DigestCar): number[] => {
  const safety = lines.filter((line) => line.safety);
  const past = ({ news }: DigestLine): boolean => news.includes('past') || news.includes('act');
  const urgent = stay.filter(({ news }) => news.sort === 'warning' || news.sort === 'found').length;
  return [safety.filter(past).length, urgent, safety.length, lines.filter(past).length, lines.length];
};

const carSection = ({ carId, name, owed, stay, unproven, unjudged }: OwedCar): DigestCar => {
  const byGrade = [...owed].sort((a, b) => Number(isSafety(b)) - Number(isSafety(a)) || byNeed(a, b));
  const told = byGrade.map((finding) => ({ finding, words: explain(finding) }));
  const lines = told.map(({ finding, words }) => ({
    partId: finding.part.id,
    stage: headOf(finding),
    news: finding.told,
    safety: isSafety(finding),
    again: finding.lastSaid && dayInWords(finding.lastSaid),
    title: finding.part.position ? `${finding.kind.name}, ${finding.part.position}` : finding.kind.name,
    age: words.age,
    why: [...words.reasons.map(({ text }) => text), ...(tellsEstimate(finding) ? estimateInWords(words.outlook) : [])],
    doubts: words.doubts,
    todo: words.todo,
  }));
  const asked = stay.flatMap(({ news }) => news.cautions.map((key) => CAUTIONS[key]));
  const cautions = [
    ...new Set([...asked, ...told.flatMap(({ words }) => words.cautions), ...(asked.length > 0 ? [DEFERS] : [])]),
  ];
  const sorted = stay.toSorted((a, b) => SORTS.indexOf(a.news.sort) - SORTS.indexOf(b.news.sort));
  return { carId, name, stay: sorted, lines, summary: summaryOf(sorted, lines), cautions, unproven, unjudged };
};

/** Which of several news heads a line, gravest first. */
const HEADS: readonly Stage[] = ['past', 'due', 'act', 'estimate', 'watch', 'look'];

/** A reading that condemns a safety part comes before all that its age is due for. */
const headOf = (finding: Owed): Stage => {
  const heads: readonly Stage[] = isSafety(finding) ? ['past', 'act', ...HEADS] : HEADS;
  return heads.find((stage) => finding.told.includes(stage)) ?? finding.told[0];
};

/** An estimate is worth its lines where it, or a reading behind it, is the news. */
const tellsEstimate = ({ told, measured }: Owed): boolean =>
  measured.length > 0 || told.some((stage) => stage === 'estimate' || stage === 'act' || stage === 'watch');

/** The estimate as the part’s page has it: how it stands, and the days it is expected to change. */
const estimateInWords = (outlook: Outlook | null): string[] =>
  outlook === null
    ? []
    : [
        `Estimated${outlook.measured ? ' from its reading' : ''}: ${outlook.now}`,
        ...outlook.days.map(({ what, when, never }) => `${what}: ${daysInWords(when, never, outlook.on)}.`),
      ];

const isSafety = (finding: Owed): boolean => finding.kind.severity === 'safety';

/** Rounds and warnings before steps. */
const SORTS: readonly StayNews['sort'][] = ['warning', 'found', 'task', 'round', 'return', 'step', 'wake'];

/** “1 round, 3 steps of its lay-up; 2 past”. */
const summaryOf = (stay: DigestCar['stay'], lines: readonly DigestLine[]): string =>
  [staysInWords(stay), stagesInWords(lines)].filter((text) => text !== '').join('; ');

const staysInWords = (stay: DigestCar['stay']): string =>
  (
    [
      ['warning', 'warning', 'warnings'],
      ['found', 'thing found', 'things found'],
      ['task', 'dated task', 'dated tasks'],
      ['round', 'round', 'rounds'],
      ['return', 'return', 'returns'],
      ['step', 'lay-up step', 'lay-up steps'],
      ['wake', 'wake-up step', 'wake-up steps'],
    ] as const
  )
    .map(([sort, one, many]) => ({ n: stay.filter(({ news }) => news.sort === sort).length, one, many }))
    .filter(({ n }) => n > 0)
    .map(({ n, one, many }) => `${n} ${n === 1 ? one : many}`)
    .join(', ');

/** "2 past, 1 due, 3 to look at", what readings ask for, and what was said before and is not answered. */
const stagesInWords = (lines: readonly DigestLine[]): string => {
  const fresh = lines.filter(({ again }) => again === null);
  const again = lines.length - fresh.length;
  return [
    ...STAGE_WORDS.map(([stage, words]) => [fresh.filter((line) => line.stage === stage).length, words] as const),
    [again, 'told again'] as const,
  ]
    .filter(([n]) => n > 0)
    .map(([n, words]) => `${n} ${words}`)
    .join(', ');
};

const STAGE_WORDS = [
  ['past', 'past'],
  ['due', 'due'],
  ['look', 'to look at'],
  ['act', 'to act on by reading'],
  ['watch', 'to watch by reading'],
  ['estimate', 'to measure by estimate'],
] as const;

/** "2 past, 1 due, 3 to look at: Marlow Six and 2 more cars". */
const subjectOf = (cars: readonly DigestCar[]): string => {
  const [first, ...others] = cars;
  const whose = `${first?.name}${others.length > 0 ? ` and ${count(others.length, 'more car')}` : ''}`;
  return `${summaryOf(
    cars.flatMap((car) => car.stay),
    cars.flatMap((car) => car.lines),
  )}: ${whose}`;
};
