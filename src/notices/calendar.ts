/** Days for a calendar: limits of parts, steps and rounds of stays, dated tasks of returns. Never a word that all is well. */
import { addMonths, type CivilDate } from '../dates/civil.ts';
import type { Finding } from '../findings/assess.ts';
import { isOpen, type Plan, type PlanStep } from '../plans/plan.ts';
import { roundsOf } from '../plans/rounds.ts';
import type { StayView } from '../plans/standing.ts';
import { type RevivalPlan, stepsIn } from '../revival/plan.ts';
import { isSettled } from '../revival/step-state.ts';

export const SCOPES = ['limits', 'steps', 'rounds'] as const;
export type Scope = (typeof SCOPES)[number];

export interface CalendarEvent {
  /** What it is about: it stays when the day moves. */
  key: string;
  scope: Scope;
  day: CivilDate;
  title: string;
  lines: readonly string[];
  /** Path of its page. */
  page: string;
}

/** A limit is shown up to so many months ahead, and so long after it has passed. */
const AHEAD = 60;
const BEHIND = 12;

const CAUTION = 'Its page has the cautions of the work; the vehicle’s handbook rules.';
const NO_PROOF = 'A day by the calendar, as old as the part can be; no proof of condition before it.';

/** Days on which parts begin to be due and to be past, by the oldest they can be, and the look before; no looks while it stands. */
export const limitsOf = (
  car: { name: string; stands: boolean },
  findings: readonly Finding[],
  on: CivilDate,
): CalendarEvent[] =>
  findings.flatMap(({ part, kind, look, due, past }) => {
    const name = part.position ? `${kind.name}, ${part.position}` : kind.name;
    const event = (word: 'look' | 'due' | 'past', day: CivilDate | null | undefined, says: string): CalendarEvent[] =>
      day == null || day > addMonths(on, AHEAD) || day < addMonths(on, -BEHIND)
        ? []
        : [
            {
              key: `${word}.${part.id}`,
              scope: 'limits',
              day,
              title: `${car.name}: ${name} ${says}`,
              lines: [NO_PROOF, CAUTION],
              page: `/parts/${part.id}`,
            },
          ];
    return [
      ...(car.stands ? [] : event('look', look?.worst, 'wants a look')),
      ...event('due', due?.worst, 'is due'),
      ...event('past', past?.worst, 'is past'),
    ];
  });

/** Parking and return, open steps of both plans, rounds due and to come. */
export const stayEvents = (
  car: string,
  { stay, on, state, layUp, wakeUp, rounds: made }: StayView,
): CalendarEvent[] => {
  // Before it is parked nobody is asked for a round; a calendar shows them all the same.
  const rounds = state === 'standing' ? made : roundsOf(stay, [], on);
  const page = `/lay-ups/${stay.id}`;
  const whole = (key: string, day: CivilDate, title: string, lines: readonly string[] = []): CalendarEvent => ({
    key: `${key}.${stay.id}`,
    scope: 'steps',
    day,
    title: `${car}: ${title}`,
    lines,
    page,
  });
  const steps = (word: 'step' | 'wake', { steps: all }: Plan, path: string): CalendarEvent[] =>
    all.filter(isOpen).map((step) => ({
      key: `${word}.${stay.id}.${step.key}`,
      scope: 'steps' as const,
      day: step.day,
      title: `${car}: ${titleOf(step)}`,
      lines: step.cautions.length > 0 ? [CAUTION] : [],
      page: `${page}/${path}/${step.key}`,
    }));
  return [
    whole('parking', stay.parkedOn, 'is put away'),
    ...(stay.returnOn ? [whole('return', stay.returnOn, 'comes back')] : []),
    ...steps('step', layUp, 'steps'),
    ...(stay.returnOn ? steps('wake', wakeUp, 'wake-up') : []),
    ...rounds
      .filter(({ state }) => state === 'due' || state === 'ahead')
      .map(({ month, due }) => ({
        key: `round.${stay.id}.${month}`,
        scope: 'rounds' as const,
        day: due,
        title: `${car}: the monthly round`,
        lines: ['Ten minutes at the car: voltmeter, tire gauge, lamp.', CAUTION],
        page: `${page}/round`,
      })),
  ];
};

/** What somebody wrote as a step of their own is theirs: a calendar shows that there is one. */
const titleOf = ({ phase, title }: PlanStep): string => (phase === 'own' ? 'a step of your own' : title);

/** Open tasks with a last day: the distance may come first, and only the driver knows. */
export const revivalEvents = (car: string, plan: RevivalPlan): CalendarEvent[] =>
  stepsIn(plan).flatMap((step) =>
    step.due?.day && !isSettled(step)
      ? [
          {
            key: `task.${plan.revival.id}.${step.key}`,
            scope: 'steps' as const,
            day: step.due.day,
            title: `${car}: ${step.way.title}, at the latest`,
            lines: [
              ...(step.due.km ? [`After ${step.due.km[0]} to ${step.due.km[1]} km, if that comes first.`] : []),
              CAUTION,
            ],
            page: `/revivals/${plan.revival.id}/steps/${step.key}`,
          },
        ]
      : [],
  );
