/** Lines about this car that a step carries: what falls due, what to buy, what the papers say. */
import { dayInWords } from '../dates/words.ts';
import type { Finding } from '../findings/assess.ts';
import { papersInWords } from './papers.ts';
import type { Situation } from './situation.ts';

const ASKED = ['due', 'past', 'unproven'];
const asked = ({ news }: Finding): boolean => ASKED.includes(news.calendar.standing);

export const nameOf = ({ kind, part }: Finding): string =>
  part.position ? `${kind.name}, ${part.position}` : kind.name;

const TIRES = ['tires-road', 'tire-spare', 'tire-compact-spare', 'inner-tubes', 'valve-stems'];
const isTire = ({ kind }: Finding): boolean => TIRES.includes(kind.key);

/** Dated parts whose day comes while it stands. */
const fallsDue = ({ atParking, atReturn }: Situation): Finding[] => {
  const before = new Set(atParking.filter(asked).map(({ part }) => part.id));
  return atReturn.filter((finding) => asked(finding) && !before.has(finding.part.id));
};

/** Tires that can’t be driven on in spring by their age. */
const tiresInSpring = ({ atReturn }: Situation): Finding[] =>
  atReturn.filter((finding) => isTire(finding) && ['past', 'unproven'].includes(finding.news.calendar.standing));

const dueLine = (finding: Finding): string => {
  const { due, past, news } = finding;
  const day = (news.calendar.standing === 'past' ? past?.worst : due?.worst) ?? null;
  return `${nameOf(finding)}: ${news.calendar.standing}${day && day <= finding.on ? ` from ${dayInWords(day)}` : ''}`;
};

/** Each with its day; those that no date clears together, which may be most of a car. */
const dueLines = (findings: readonly Finding[], behind = ''): string[] => {
  const [unproven, dated] = [true, false].map((is) =>
    findings.filter(({ news }) => (news.calendar.standing === 'unproven') === is),
  ) as [Finding[], Finding[]];
  return [
    ...dated.map((finding) => `${dueLine(finding)}${behind}`),
    ...(unproven.length > 0 ? [`Unproven, no date clears them: ${unproven.map(nameOf).join(' · ')}${behind}`] : []),
  ];
};

const LISTS = {
  'falls due': (situation: Situation): string[] => dueLines(fallsDue(situation).filter((finding) => !isTire(finding))),
  'tires in spring': (situation: Situation): string[] =>
    dueLines(tiresInSpring(situation), ': order in spring, not now'),
  'tires now': (situation: Situation): string[] => dueLines(tiresInSpring(situation)),
  'safety due': ({ atParking }: Situation): string[] =>
    dueLines(
      atParking.filter(
        (finding) =>
          asked(finding) &&
          (finding.kind.severity === 'safety' || finding.kind.key === 'timing-belt') &&
          !isTire(finding),
      ),
    ),
  'due on return': ({ atReturn }: Situation): string[] =>
    dueLines(atReturn.filter((finding) => asked(finding) && !isTire(finding))),
  /** Filled in by the plan, which knows its own steps. */
  supplies: (): string[] => [],
  found: ({ found }: Situation): string[] => [...found],
  papers: ({ stay }: Situation): string[] => papersInWords(stay),
} as const satisfies Readonly<Record<string, (situation: Situation) => string[]>>;
export type ListKey = keyof typeof LISTS;

export const listsOf = (keys: readonly ListKey[], situation: Situation): string[] =>
  keys.flatMap((key) => LISTS[key](situation));
