/** Desks: reckoning without a car and without an account. Questions, an answer with its range, a drawing, its reasons. */
import type { Child } from 'hono/jsx';
import { type AnswerGiven, readAnswers } from '../../acts/details.ts';
import { done, type Fault, type Outcome } from '../../acts/fault.ts';
import { AIRS, ASSUMED, type Place, SHELTERS } from '../../ageing/place.ts';
import type { Detail } from '../../catalogue/gauge.ts';
import type { SourceKey } from '../../catalogue/sources.ts';
import type { Answers } from '../../findings/facts.ts';
import { AnswerField, shownAnswer } from '../answer-field.tsx';
import { A, FaultSummary, page, useVisit } from '../layout.tsx';
import { AIR_WORDS, SHELTER_WORDS } from '../place-words.ts';
import { Sources } from '../sources.tsx';
import type { Ctx } from '../visit.ts';

export const DESKS = [
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

/** What a desk was asked, as typed: it stands in the fields again, whatever came of it. */
export type Asked = Readonly<Record<string, string>>;

/** The unit beside a number comes as <key>-unit. */
const given = (details: readonly Detail[], asked: Asked): Record<string, AnswerGiven> =>
  Object.fromEntries(details.map(({ key }) => [key, { typed: asked[key] ?? '', unit: asked[`${key}-unit`] ?? '' }]));

/** Reads a desk’s questions; those named in `needed` can’t be left open. */
export const readDesk = (details: readonly Detail[], asked: Asked, needed: readonly string[]): Outcome<Answers> => {
  const read = readAnswers(details, given(details, asked));
  const open: Fault[] = details
    .filter(({ key }) => needed.includes(key) && (asked[key] ?? '').trim() === '')
    .map(({ key, name }) => ({ field: key, message: `${name}: this one is needed.` }));
  if (!read.ok) return { ok: false, faults: [...open, ...read.faults] };
  return open.length > 0 ? { ok: false, faults: open } : done(read.value);
};

/** The climate as four questions. */
export const PLACE_DETAILS: readonly Detail[] = [
  { key: 'shelter', name: 'Over the car', choices: SHELTER_WORDS },
  {
    key: 'low',
    name: 'Coldest night of the winter, outdoors',
    unit: '°C',
    also: ['°F'],
    range: [-60, 40],
    decimals: 0,
  },
  { key: 'high', name: 'Hottest day of the summer, outdoors', unit: '°C', also: ['°F'], range: [-20, 60], decimals: 0 },
  { key: 'air', name: 'The air there', choices: AIR_WORDS },
];

/** The place told, what is left open taken from the assumed one. */
export const placeIn = ({ low, high, air, shelter }: Answers): Place => {
  const winterLow = typeof low === 'number' ? low : ASSUMED.winterLow;
  return {
    ...ASSUMED,
    winterLow,
    // A hottest day that is not warmer than the coldest night was left open, or is a slip the fields show.
    summerHigh: Math.max(typeof high === 'number' ? high : ASSUMED.summerHigh, winterLow + 5),
    air: AIRS.find((one) => one === air) ?? ASSUMED.air,
    shelter: SHELTERS.find((one) => one === shelter) ?? ASSUMED.shelter,
  };
};

/** What was asked, for the printed page, which has no fields. */
const askedInWords = (details: readonly Detail[], asked: Asked): string =>
  details
    .filter(({ key }) => (asked[key] ?? '') !== '')
    .map((detail) => {
      const typed = asked[detail.key] ?? '';
      const words =
        'choices' in detail
          ? (detail.choices[typed] ?? typed)
          : `${typed} ${asked[`${detail.key}-unit`] ?? detail.unit}`;
      return `${detail.name.toLowerCase()}: ${words}`;
    })
    .join('; ');

interface DeskShown {
  title: string;
  lede: string;
  path: string;
  groups: readonly { legend: string; details: readonly Detail[] }[];
  asked: Asked;
  /** Fields beyond the details, such as days. */
  more?: Child;
  faults: readonly Fault[];
  /** The answer; null until the questions are answered. */
  answer: Child;
  formula: readonly string[];
  ends: string;
  sources: readonly SourceKey[];
}

export const showDesk = (c: Ctx, desk: DeskShown) =>
  page(c, desk.title, <Desk {...desk} />, desk.faults.length > 0 ? 422 : 200);

const Desk = ({ title, lede, path, groups, asked, more, faults, answer, formula, ends, sources }: DeskShown) => {
  const { site, on, today } = useVisit();
  return (
    <>
      <DeskNav />
      <h1>{title}</h1>
      <p class="lede">{lede}</p>
      <FaultSummary faults={faults} />
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
            {askedInWords(
              groups.flatMap((group) => group.details),
              asked,
            )}
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
