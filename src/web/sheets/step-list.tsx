/** The steps of a plan as on paper: by day, each with a box to tick and room to write. */

import { kindOf } from '../../acts/parts.ts';
import { type CivilDate, daysBetween } from '../../dates/civil.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { gaugesOf } from '../../findings/measured.ts';
import { figureInWords } from '../../plans/figures/figure.ts';
import { papersInWords } from '../../plans/papers.ts';
import { type Plan, type PlanStep, sideOfStep } from '../../plans/plan.ts';
import type { Stay } from '../../plans/stay.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { dayWithName, withoutEnd } from '../lay-ups/step-words.ts';
import { Blank, Box } from './sheet.tsx';

interface Listed {
  plan: Plan;
  stay: Stay;
  /** What its days count back from, and the words for it. */
  anchor: CivilDate;
  anchorName: string;
  parts: readonly PartOnRecord[];
  /** A word set before some titles. */
  mark?: (step: PlanStep) => string | null;
}

export const StepList = ({ plan, stay, anchor, anchorName, parts, mark = () => null }: Listed) => {
  const papers = new Set(papersInWords(stay));
  const numbers = new Map(plan.steps.map((step, index) => [step, index + 1]));
  return (
    <>
      {[...Map.groupBy(plan.steps, ({ day }) => day)].map(([day, steps]) => (
        <section class="day">
          <h2>
            {dayWithName(day)} <span class="off">{awayInWords(day, anchor, anchorName)}</span>
          </h2>
          <ol class="steps">
            {steps.map((step) => (
              <Step
                stay={stay}
                step={step}
                number={numbers.get(step) ?? 0}
                parts={parts}
                papers={papers}
                mark={mark(step)}
              />
            ))}
          </ol>
        </section>
      ))}
    </>
  );
};

const awayInWords = (day: CivilDate, anchor: CivilDate, name: string): string => {
  const away = daysBetween(day, anchor);
  if (away === 0) return name;
  return away > 0 ? `${count(away, 'day')} before` : `${count(-away, 'day')} after`;
};

interface Shown {
  step: PlanStep;
  stay: Stay;
  number: number;
  parts: readonly PartOnRecord[];
  papers: ReadonlySet<string>;
  mark: string | null;
}

const Step = ({ step, number, parts, papers, mark, stay }: Shown) => {
  const { title, tick, minutes, lines, needs, phase, why, figures } = step;
  const buys = step.key === 'order-supplies';
  const own = lines.filter((line) => !papers.has(line));
  const side = sideOfStep(step);
  const many = own.length > FEW_LINES;
  return (
    <li class={`step ${tick?.state ?? 'open'}`}>
      <Box state={tick?.state ?? 'open'} />
      <div class="what">
        <p class="title">
          <span class="number">{number}</span> {mark && <span class="mark">{mark}</span>} <b>{title}</b>
        </p>
        {phase === 'own' && why && <p>{why}</p>}
        {(side || figures.length > 0) && (
          <p>
            {side && step.topic && (
              <span class="fact">
                {stay.choices[step.topic] === undefined ? 'Usual here' : 'Your choice'}: {side.name}
              </span>
            )}
            {figures.map((figure) => (
              <span class="fact">
                {figure.amount === null ? (
                  <>
                    {figure.what}: <Blank /> {figure.unit}
                  </>
                ) : (
                  figureInWords(figure)
                )}
              </span>
            ))}
          </p>
        )}
        {tick === null && !buys && needs.length > 0 && <p class="needs">Needs: {needs.join(', ')}</p>}
        {own.length > 0 && !many && <Lines lines={own} buys={buys} />}
        {own.length < lines.length && <p class="needs">Days and rules: see Papers.</p>}
        {tick === null && <ToRead step={step} parts={parts} />}
      </div>
      <span class="minutes">{minutes ? `${minutes} min` : ''}</span>
      {tick ? (
        <p class="said">
          <b>
            {tick.state === 'done' ? 'Done' : 'Left out'} {dayInWords(tick.day)}
          </b>
          , {tick.by}
          {tick.note && `. ${withoutEnd(tick.note)}`}
          {tick.cost !== null && `. Cost ${tick.cost.toFixed(2)}`}
        </p>
      ) : (
        <p class="hand">
          <span>Day, who</span>
          <span>Notes, cost</span>
        </p>
      )}
      {many && <Lines lines={own} buys={buys} />}
    </li>
  );
};

/** More lines than so many go below the step, over its whole width. */
const FEW_LINES = 4;

/** Characters of a line that a column holds; what is longer takes the whole width. */
const COLUMN = 110;

const Lines = ({ lines, buys }: { lines: readonly string[]; buys: boolean }) => {
  const short = lines.filter(({ length }) => length <= COLUMN);
  return (
    <div class="lists">
      {short.length > 0 && (
        <ul class={`${buys ? 'buy' : 'lines'}${short.length > FEW_LINES ? ' many' : ''}`}>
          {short.map((line) => (
            <li>
              {buys && <Box />} {line}
            </li>
          ))}
        </ul>
      )}
      {lines
        .filter(({ length }) => length > COLUMN)
        .map((line) => (
          <p>{line}</p>
        ))}
    </div>
  );
};

/** “front left” as FL. */
export const corner = (position: string): string =>
  position
    .split(' ')
    .map((word) => word.charAt(0).toUpperCase())
    .join('');

/** What the step asks to be read, as lines to write on. */
const ToRead = ({ step, parts }: { step: PlanStep; parts: readonly PartOnRecord[] }) => {
  const asked = (step.records.reads ?? []).flatMap(([kind, key]) => {
    const read = parts.filter((part) => part.kind === kind);
    const test = read[0] && gaugesOf(kindOf(read[0])).find(({ gauge }) => gauge.key === key);
    return test ? [{ test, read }] : [];
  });
  if (asked.length === 0 && !step.records.odometer) return null;
  return (
    <p class="read">
      {step.records.odometer && (
        <span class="fact">
          Odometer <Blank />
        </span>
      )}
      {asked.map(({ test, read }) => (
        <span class="fact">
          {test.name}
          {read.map(({ position }) => (
            <>
              {' '}
              {position && corner(position)} <Blank size="tiny" />
            </>
          ))}{' '}
          {test.gauge.unit}
        </span>
      ))}
    </p>
  );
};
