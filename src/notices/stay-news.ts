/** What a lay-up has to tell on a day: steps come due, rounds, warnings, what a round found, the return. */
import type { CautionKey } from '../catalogue/cautions.ts';
import { addDays, addMonths, type CivilDate, latest } from '../dates/civil.ts';
import { count, dayInWords } from '../dates/words.ts';
import { type Look, looksOn } from '../plans/looks.ts';
import { figureLines, type Plan } from '../plans/plan.ts';
import type { Round } from '../plans/rounds.ts';
import { isWaking, type StayView, WAKE_AHEAD } from '../plans/standing.ts';

export interface StayNews {
  /** What it is about, own within the stay: told to a person once from the day it began. */
  matter: string;
  began: CivilDate;
  sort: 'round' | 'warning' | 'found' | 'step' | 'return' | 'wake' | 'task';
  title: string;
  lines: readonly string[];
  cautions: readonly CautionKey[];
  /** Page below the stay’s own. */
  page: string;
  /** Whether who looks in hears it too; everything else is for who gets the collection’s letters. */
  forVisitor: boolean;
}

/** A matter that was told, and the last day it was. */
export interface ToldMatter {
  matter: string;
  saidOn: CivilDate;
}

/** Everything that has begun by the day of the view and still stands. */
export const newsOf = (view: StayView): StayNews[] => [
  ...rounds(view),
  ...warnings(view),
  ...found(view),
  ...comesBack(view),
  ...steps(view.stay.parkedOn, view, 'step', 'steps', () => view.layUp),
  ...(isJustParked(view) ? stillOpen(view) : []),
  ...(isWaking(view.stay, view.on) ? steps(view.stay.returnOn, view, 'wake', 'wake-up', () => view.wakeUp) : []),
];

/** News this person has not heard since it began. */
export const unheard = (news: readonly StayNews[], told: readonly ToldMatter[]): StayNews[] =>
  news.filter(({ matter, began }) => !told.some((one) => one.matter === matter && one.saidOn >= began));

/** Only the last round that came due: one letter, however long nobody could be written to. */
const rounds = (view: StayView): StayNews[] => {
  const { rounds: all, on } = view;
  const last = all.findLast(({ due }) => due <= on);
  const missed = all.filter(({ state }) => state === 'missed');
  const lost = missed.at(-1);
  return [
    ...(lost ? [missedNews(lost)] : []),
    ...(last?.state === 'due' ? [roundNews(last, missed, looksOn(view.situation, last.month))] : []),
  ];
};

/** Told to the owner when nobody can make it any more. */
const missedNews = ({ month, due }: Round): StayNews => ({
  matter: `missed:${month}`,
  began: due,
  sort: 'warning',
  title: `Nobody has made the round of ${dayInWords(due)}`,
  lines: ['Ask who looks in, or look yourself: what went wrong since then nobody has seen.'],
  cautions: [],
  page: '',
  forVisitor: false,
});

const roundNews = (last: Round, missed: readonly Round[], looks: readonly Look[]): StayNews => ({
  matter: `round:${last.month}`,
  began: last.due,
  sort: 'round',
  title: `The round of ${dayInWords(last.due)}: ten minutes at the car`,
  lines: [
    `Look at: ${looks.map(({ name }) => name.toLowerCase()).join('; ')}. Take a voltmeter, a tire gauge and a lamp.`,
    ...(missed.length > 0 ? [`Missed so far: ${missed.map(({ due }) => dayInWords(due)).join('; ')}.`] : []),
  ],
  cautions: [],
  page: 'round',
  forVisitor: true,
});

const warnings = ({ warnings: all }: StayView): StayNews[] =>
  all.map(({ key, begins, title, todo, cautions, forVisitor = false }) => ({
    matter: `warning:${key}`,
    began: begins,
    sort: 'warning',
    title,
    lines: [todo],
    cautions,
    page: '',
    forVisitor,
  }));

const found = ({ found: all }: StayView): StayNews[] =>
  all.map(({ look, answer, day }) => ({
    matter: `found:${look.key}`,
    began: day,
    sort: 'found',
    title: `Found on ${dayInWords(day)}: ${look.name.toLowerCase()}: ${answer.name.toLowerCase()}`,
    lines: answer.todo ? [answer.todo] : [],
    cautions: look.cautions,
    page: '',
    forVisitor: false,
  }));

const comesBack = ({ stay, on, findings, wakeUp }: StayView): StayNews[] => {
  if (stay.returnOn === null || !isWaking(stay, on)) return [];
  const waits = findings.filter(({ standing }) => standing === 'past' || standing === 'due').length;
  const undated = findings.filter(({ standing, kind }) => standing === 'unproven' && kind.severity === 'safety').length;
  return [
    {
      matter: 'return',
      began: latest(addMonths(stay.returnOn, -WAKE_AHEAD), stay.parkedOn),
      sort: 'return',
      title: `It comes back on ${dayInWords(stay.returnOn)}`,
      lines: [
        `${count(wakeUp.steps.length, 'step')} until then; order and book now what takes time.`,
        ...(waits > 0 ? [`${count(waits, 'part')} past or due by ${waits === 1 ? 'its' : 'their'} dates.`] : []),
        ...(undated > 0 ? [`${count(undated, 'safety part')} that no date clears.`] : []),
      ],
      cautions: [],
      page: 'wake-up',
      forVisitor: false,
    },
  ];
};

/** Days a step is told ahead of its own: a weekend lies between. */
const AHEAD = 3;

/** Open steps whose day is near, and none of a plan long past its day: that one is not even made. */
const steps = (
  anchor: CivilDate | null,
  { on }: StayView,
  word: 'step' | 'wake',
  page: string,
  plan: () => Plan,
): StayNews[] =>
  anchor === null || on > addDays(anchor, LATEST)
    ? []
    : plan()
        .steps.filter((step) => step.tick === null && addDays(step.day, -AHEAD) <= on)
        .map((step) => ({
          matter: `${word}:${step.key}`,
          began: addDays(step.day, -AHEAD),
          sort: word,
          title: `${dayInWords(step.day)}: ${step.title}`,
          lines: [...figureLines(step), ...shortened(step.lines)],
          cautions: step.cautions,
          page: `${page}/${step.key}`,
          forVisitor: false,
        }));

const isJustParked = ({ stay: { parkedOn, madeOn }, on }: StayView): boolean =>
  madeOn <= parkedOn && on >= parkedOn && on <= addDays(parkedOn, LATEST);

/** On the parking day, what should have come before it and is still open: told once more, in one line. */
const stillOpen = ({ stay, layUp }: StayView): StayNews[] => {
  const open = layUp.steps.filter(({ tick, day }) => tick === null && day < stay.parkedOn);
  return open.length === 0
    ? []
    : [
        {
          matter: 'still-open',
          began: stay.parkedOn,
          sort: 'step',
          title: `Still open before it stands: ${count(open.length, 'step')}`,
          lines: shortened(open.map(({ title }) => title)),
          cautions: [],
          page: '',
          forVisitor: false,
        },
      ];
};

/** Days after which an unticked step is no longer news: the wake-up takes it over. */
const LATEST = 14;

/** Enough lines to act on; the page has them all. */
const MOST_LINES = 6;
const shortened = (lines: readonly string[]): string[] =>
  lines.length > MOST_LINES
    ? [...lines.slice(0, MOST_LINES), `and ${lines.length - MOST_LINES} more on its page`]
    : [...lines];
