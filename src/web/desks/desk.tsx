/** Desks: reckoning without a car and without an account. Questions, an answer with its range, a drawing, its reasons. */
import type { Child } from 'hono/jsx';
import type { Fault } from '../../acts/fault.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import { AnswerField, shownAnswer } from '../answer-field.tsx';
import { A, FaultSummary, page, useVisit } from '../layout.tsx';
import { Sources } from '../sources.tsx';
import type { Ctx } from '../visit.ts';
import { type Asked, askedInWords } from './asked.ts';

const DESKS = [
  ['/date-codes', 'Date codes', 'Week and year from a tire’s sidewall, and the other marks parts carry.'],
  ['/desks/brake-fluid', 'Brake fluid', 'Water and boiling point by grade, age and measurement.'],
  ['/desks/coolant', 'Coolant mix', 'Where a mix freezes, and how to strengthen it.'],
  ['/desks/battery', 'Battery over winter', 'When a parked battery wants charging, stops cranking, or could freeze.'],
  ['/desks/fuel', 'Fuel life', 'How long what is in the tank stays good, and when water parts it.'],
  ['/desks/rubber', 'Rubber on the shelf', 'How long a part that was never fitted may lie.'],
] as const;

export const desksPage = (c: Ctx) =>
  page(
    c,
    'Desks',
    <>
      <h1>Desks</h1>
      <p class="lede">Reckon with what you know. Nothing is stored; print the page and take it along.</p>
      <ul class="claims">
        {DESKS.map(([path, name, what]) => (
          <li>
            <A to={path}>{name}</A>: {what}
          </li>
        ))}
      </ul>
    </>,
  );

export const DeskNav = () => {
  const { path } = useVisit();
  return (
    <nav class="systems" aria-label="Desks">
      {DESKS.map(([to, name]) =>
        to === path ? (
          <a aria-current="page" href="#main">
            {name}
          </a>
        ) : (
          <A to={to}>{name}</A>
        ),
      )}
    </nav>
  );
};

interface DeskShown {
  title: string;
  lede: string;
  path: string;
  groups: readonly { legend: string; details: readonly Detail[] }[];
  asked: Asked;
  /** Fields beyond the details, such as days. */
  more?: Child;
  /** What those were answered with, by their names: printed with the rest. */
  moreTold?: readonly (readonly [name: string, typed: string])[];
  faults: readonly Fault[];
  /** The answer; null until the questions are answered. */
  answer: Child;
  formula: readonly string[];
  ends: string;
  sources: readonly SourceKey[];
}

export const showDesk = (c: Ctx, desk: DeskShown) =>
  page(c, desk.title, <Desk {...desk} />, desk.faults.length > 0 ? 422 : 200);

const Desk = (desk: DeskShown) => {
  const { title, lede, path, groups, asked, more, moreTold = [], faults, answer, formula, ends, sources } = desk;
  const { site, on, today } = useVisit();
  return (
    <>
      <DeskNav />
      <h1>{title}</h1>
      <p class="lede">{lede}</p>
      <FaultSummary faults={faults} kept="Nothing you typed is lost." />
      <form method="get" action={`${site.base}${path}#answers`} class="stacked desk">
        {on !== today && <input type="hidden" name="on" value={on} />}
        {groups.map(({ legend, details }) => (
          <fieldset class="group">
            <legend>{legend}</legend>
            {details.map((detail) => (
              <AnswerField
                detail={detail}
                name={detail.key}
                unitName={`${detail.key}-unit`}
                value={asked[detail.key] ?? shownAnswer(detail, undefined)}
                unit={asked[`${detail.key}-unit`]}
                faults={faults}
              />
            ))}
          </fieldset>
        ))}
        {more}
        <button>Reckon</button>
      </form>
      {answer && (
        <section aria-labelledby="answers">
          <h2 id="answers">Answer</h2>
          <p class="print-only">
            Reckoned with:{' '}
            {[
              ...askedInWords(
                groups.flatMap((group) => group.details),
                asked,
              ),
              ...moreTold.filter(([, typed]) => typed.trim() !== '').map(([name, typed]) => `${name}: ${typed}`),
            ].join('; ')}
          </p>
          {answer}
        </section>
      )}
      <section aria-labelledby="how">
        <h2 id="how">How it is reckoned</h2>
        {formula.map((text) => (
          <p>{text}</p>
        ))}
        <p class="note">{ends}</p>
        <Sources keys={[...new Set(sources)]} />
      </section>
    </>
  );
};
