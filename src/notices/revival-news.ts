/** What a return to the road has to tell on a day: dated tasks, the next morning’s look, a stop that waits. */
import { addDays, type CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import { those } from '../revival/journal.ts';
import { LEAK_PLACES } from '../revival/leaks.ts';
import { type RevivalPlan, stepsIn } from '../revival/plan.ts';
import { isSettled } from '../revival/step-state.ts';
import { SOAK_DAYS } from '../revival/stops.ts';
import type { StayNews } from './stay-news.ts';

/** Days before the last day of a task that it is told. */
const AHEAD = 7;

/** Everything that has begun by the day of the plan and still stands. */
export const newsOfRevival = (plan: RevivalPlan): StayNews[] => [
  ...stops(plan),
  ...soaked(plan),
  ...tasks(plan),
  ...mornings(plan),
];

const of = (news: Omit<StayNews, 'forVisitor'>): StayNews => ({ ...news, forVisitor: false });

/** By their last day: the distance may come first, and only the driver knows. */
const tasks = (plan: RevivalPlan): StayNews[] =>
  stepsIn(plan).flatMap((step) => {
    const { key, way, due, cautions } = step;
    const last = due?.day;
    const began = last && addDays(last, -AHEAD);
    if (isSettled(step) || !began || began > plan.on) return [];
    const distance = due.km ? `After ${due.km[0]} to ${due.km[1]} km` : '';
    const at = due.odometer ? `, at ${due.odometer[0]} to ${due.odometer[1]} km on its odometer` : '';
    return [
      of({
        matter: `task:${key}`,
        began,
        sort: 'task',
        title: way.title,
        lines: [way.why, ...(distance ? [`${distance}${at}.`] : []), `By ${dayInWords(last)} at the latest.`],
        cautions,
        page: `steps/${key}`,
      }),
    ];
  });

/** The morning after a hot survey, while nobody has looked. */
const mornings = (plan: RevivalPlan): StayNews[] =>
  stepsIn(plan).flatMap((step) => {
    if (step.survey?.moment !== 'morning' || isSettled(step)) return [];
    const { cycle } = step.survey;
    const hot = those(plan.entries, 'survey').findLast((one) => one.cycle === cycle && one.moment === 'hot');
    const began = hot && addDays(hot.day, 1);
    if (!began || began > plan.on) return [];
    return [
      of({
        matter: `morning:${cycle}`,
        began,
        sort: 'task',
        title: step.way.title,
        lines: [
          'Look at the cardboard before it is moved or started.',
          ...(hot.spots.length > 0
            ? [`Hot it was wet at: ${hot.spots.map(({ place }) => LEAK_PLACES[place]).join('; ')}.`]
            : []),
        ],
        cautions: step.cautions,
        page: `steps/${step.key}`,
      }),
    ];
  });

const stops = (plan: RevivalPlan): StayNews[] =>
  plan.stops
    .filter(({ decided }) => !decided)
    .map(({ key, words }) =>
      of({
        matter: `stop:${key}`,
        began: lastDay(plan),
        sort: 'warning',
        title: `Stopped: ${words}`,
        lines: ['No gate opens before somebody decides, with a name and a reason.'],
        cautions: [],
        page: '',
      }),
    );

/** A stop has come up by the last thing that was said. */
const lastDay = ({ entries, revival }: RevivalPlan): CivilDate => entries.at(-1)?.day ?? revival.begunOn;

/** The last day a stuck engine is soaked before it becomes a question. */
const soaked = ({ entries, picture, on }: RevivalPlan): StayNews[] => {
  const turns = those(entries, 'seen').filter(({ look }) => look === 'turns');
  if (picture.answers.get('turns')?.answer !== 'stuck') return [];
  const free = turns.findLastIndex(({ answer }) => answer !== 'stuck');
  const first = turns[free + 1];
  const began = first && addDays(first.day, SOAK_DAYS - 1);
  if (!began || began > on || on >= addDays(first.day, SOAK_DAYS)) return [];
  return [
    of({
      matter: `soak:${first.id}`,
      began,
      sort: 'task',
      title: 'Tomorrow it has soaked for ten days: try it by hand once more',
      lines: ['Backward first, gently. If it stays stuck, somebody has to decide.'],
      cautions: ['hydraulic-lock'],
      page: 'steps/soak',
    }),
  ];
};
