/** What changed in a plan since it was last looked at: facts move, ticks stay. */
import type { CivilDate } from '../dates/civil.ts';
import { dayInWords } from '../dates/words.ts';
import { figureLines, type Plan } from './plan.ts';

/** As much of a plan as is kept to compare. */
export type Outline = readonly { key: string; title: string; day: CivilDate; figures: readonly string[] }[];

export const outlineOf = ({ steps }: Plan): Outline =>
  steps.map((step) => ({ key: step.key, title: step.title, day: step.day, figures: figureLines(step) }));

/** In words, most general first; empty where nothing changed. Steps that moved alike are told as one. */
export const changesBetween = (before: Outline, after: Outline): string[] => {
  const [was, is] = [before, after].map((outline) => new Map(outline.map((step) => [step.key, step])));
  const gone = before.filter(({ key }) => !is?.has(key));
  const come = after.filter(({ key }) => !was?.has(key));
  const stayed = after.flatMap((step) => {
    const old = was?.get(step.key);
    return old ? [{ old, step }] : [];
  });
  const moved = stayed.filter(({ old, step }) => old.day !== step.day);
  const refigured = stayed.filter(({ old, step }) => old.figures.join('\n') !== step.figures.join('\n'));
  const [first, last] = [moved[0], moved.at(-1)];
  return [
    ...(moved.length > 3 && first && last
      ? [
          `${moved.length} steps moved: the first from ${dayInWords(first.old.day)} to ${dayInWords(first.step.day)}, the last from ${dayInWords(last.old.day)} to ${dayInWords(last.step.day)}.`,
        ]
      : moved.map(({ old, step }) => `Moved from ${dayInWords(old.day)} to ${dayInWords(step.day)}: ${step.title}.`)),
    ...come.map(({ title, day }) => `New, on ${dayInWords(day)}: ${title}.`),
    ...gone.map(({ title }) => `No longer needed: ${title}.`),
    ...refigured.flatMap(({ old, step }) =>
      step.figures
        .filter((line) => !old.figures.includes(line))
        .map((line) => `${step.title}: now ${line.charAt(0).toLowerCase()}${line.slice(1)}.`),
    ),
  ];
};
