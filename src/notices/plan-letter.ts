/** The letter that brings a plan when it is made: every step with its day, its reason and its figures. */
import { CAUTIONS, DEFERS } from '../catalogue/cautions.ts';
import { count, dayInWords } from '../dates/words.ts';
import { figureLines, type PlanStep } from '../plans/plan.ts';
import type { StayView } from '../plans/standing.ts';

export interface PlanLetter {
  subject: string;
  layUpId: string;
  car: string;
  /** From when to when, and where. */
  opening: string;
  days: { day: string; steps: { title: string; why: string; lines: string[] }[] }[];
  cautions: string[];
}

export const planLetterOf = (view: StayView, car: string, place: string | null): PlanLetter => {
  const { stay, layUp } = view;
  const open = layUp.steps.filter(({ tick }) => tick === null);
  const until = stay.returnOn ? `until ${dayInWords(stay.returnOn)}` : 'with an open end, planned for a year';
  return {
    subject: `Lay-up of ${car} from ${dayInWords(stay.parkedOn)}: ${count(open.length, 'step')}`,
    layUpId: stay.id,
    car,
    opening: `Parked on ${dayInWords(stay.parkedOn)}, ${until}; ${place ? `it stands in “${place}”` : 'nobody has said where it stands: frost is taken for possible'}.`,
    days: [...Map.groupBy(open, ({ day }) => day)].map(([day, steps]) => ({
      day: dayInWords(day),
      steps: steps.map(lineOf),
    })),
    cautions: [...new Set([...open.flatMap(({ cautions }) => cautions.map((key) => CAUTIONS[key])), DEFERS])],
  };
};

const lineOf = (step: PlanStep): PlanLetter['days'][0]['steps'][0] => ({
  title: step.title,
  why: step.why,
  lines: [...figureLines(step), ...step.lines],
});
