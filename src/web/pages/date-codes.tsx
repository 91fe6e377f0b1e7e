/** Date codes: a desk that needs no car. Five sidewalls at once, and the other marks parts carry. */
import { z } from 'zod';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { MarkAnswer } from '../../dates/marks/answer.ts';
import { readBatteryCode } from '../../dates/marks/battery-code.ts';
import { readExtinguisherStamp } from '../../dates/marks/extinguisher-stamp.ts';
import { readHarnessLabel } from '../../dates/marks/harness-label.ts';
import { readHoseLabel } from '../../dates/marks/hose-label.ts';
import { readMonthClock } from '../../dates/marks/month-clock.ts';
import { readPeriodPrint } from '../../dates/marks/period-print.ts';
import { readPrintedExpiry } from '../../dates/marks/printed-expiry.ts';
import { explainTireCode } from '../../dates/tire-code/explain.ts';
import type { KnownAboutTire } from '../../dates/tire-code/narrow.ts';
import { readTireCode } from '../../dates/tire-code/read.ts';
import { readTypedDate, type TypedDate } from '../../dates/typed-date.ts';
import { ageInWords, ageOf, dayInWords, rangeInWords } from '../../dates/words.ts';
import { page, useVisit } from '../layout.tsx';
import type { Ctx } from '../visit.ts';

const PLACES = { fl: 'Front left', fr: 'Front right', rl: 'Rear left', rr: 'Rear right', sp: 'Spare' } as const;
type Place = keyof typeof PLACES;

const MARKS: Readonly<
  Record<string, { name: string; hint: string; read(typed: string, today: CivilDate): MarkAnswer }>
> = {
  hose: { name: 'Brake hose label', hint: '3/15/09 or 03/2011, month first', read: readHoseLabel },
  battery: { name: 'Battery letter and digit', hint: 'C7, or a sticker 3/17', read: readBatteryCode },
  clock: {
    name: 'Molded month clock',
    hint: '6/09: month the arrow points to, year in the center',
    read: readMonthClock,
  },
  print: { name: 'Quarter or week print on hose or belt', hint: '3Q09, 24/07, KW 24/2007', read: readPeriodPrint },
  'harness-international': {
    name: 'Harness, international label',
    hint: 'not valid after 2028, or the year made',
    read: (typed, today) => readHarnessLabel(typed, today, 'international'),
  },
  'harness-us': {
    name: 'Harness, US label',
    hint: 'punched month and year: 3/24',
    read: (typed, today) => readHarnessLabel(typed, today, 'us'),
  },
  expiry: { name: 'Printed expiry', hint: '2027-06, 06/2027, 2028', read: readPrintedExpiry },
  'extinguisher-disposable': {
    name: 'Extinguisher, disposable',
    hint: 'year or month and year stamped in the base',
    read: (typed, today) => readExtinguisherStamp(typed, today, 'disposable'),
  },
  'extinguisher-rechargeable': {
    name: 'Extinguisher, rechargeable',
    hint: 'year or month and year on the shell',
    read: (typed, today) => readExtinguisherStamp(typed, today, 'rechargeable'),
  },
};

const line = z.string().trim().max(200).default('').catch('');
const ASKED = z.object({
  fl: line,
  fr: line,
  rl: line,
  rr: line,
  sp: line,
  built: line,
  fitted: line,
  triangle: z.enum(['', 'seen', 'not seen']).default('').catch(''),
  mark: line,
  typed: line,
});
type Asked = z.infer<typeof ASKED>;

export const dateCodes = (c: Ctx) => page(c, 'Date codes', <DateCodes asked={ASKED.parse(c.req.query())} />);

const DateCodes = ({ asked }: { asked: Asked }) => {
  const { on, site, person, today } = useVisit();
  const rules = { today: on, order: person.dateOrder };
  const built = asked.built ? readTypedDate(asked.built, rules) : null;
  const fitted = asked.fitted ? readTypedDate(asked.fitted, rules) : null;
  const known: KnownAboutTire = {
    ninetiesMark: asked.triangle || undefined,
    notBefore: (rangeFrom(built)?.from ?? undefined) as CivilDate | undefined,
    fittedBy: (rangeFrom(fitted)?.to ?? undefined) as CivilDate | undefined,
  };
  const read = (Object.keys(PLACES) as Place[]).filter((place) => asked[place] !== '');
  return (
    <>
      <h1>Date codes</h1>
      <p class="lede">Read the sidewalls of up to five tires. Nothing is stored; print the page and take it along.</p>
      <form method="get" action={`${site.base}/date-codes`} class="stacked codes">
        {on !== today && <input type="hidden" name="on" value={on} />}
        <div class="places">
          {(Object.entries(PLACES) as [Place, string][]).map(([place, name]) => (
            <label>
              {name}
              <input
                name={place}
                value={asked[place]}
                placeholder="DOT … 2318"
                autocomplete="off"
                autocapitalize="characters"
              />
            </label>
          ))}
        </div>
        <p class="hint">
          The whole number or only its end, with or without DOT. No date at the end? Look at the inner sidewall: the
          full number must stand on one side only.
        </p>
        <details open={asked.built !== '' || asked.fitted !== '' || asked.triangle !== ''}>
          <summary>Three digits only? These narrow the decade</summary>
          <label>
            The car was built (and no tire on it can be older)
            <input name="built" value={asked.built} autocomplete="off" />
          </label>
          <DateDoubt read={built} />
          <label>
            The tires were on the car by
            <input name="fitted" value={asked.fitted} autocomplete="off" />
          </label>
          <DateDoubt read={fitted} />
          <fieldset class="targets">
            <legend>A small triangle after the digits?</legend>
            {(
              [
                ['', 'not looked'],
                ['seen', 'yes'],
                ['not seen', 'no'],
              ] as const
            ).map(([value, name]) => (
              <label>
                <input type="radio" name="triangle" value={value} checked={asked.triangle === value} />{' '}
                <span>{name}</span>
              </label>
            ))}
          </fieldset>
        </details>
        <button>Read the codes</button>
      </form>
      {read.length > 0 && (
        <section aria-labelledby="answers">
          <h2 id="answers">Read on {dayInWords(on)}</h2>
          {read.map((place) => (
            <TireAnswer place={PLACES[place]} typed={asked[place]} known={known} />
          ))}
          <p class="note">
            Practice of the trade: a yearly look from five years, six as the line of caution, ten from manufacture as
            the ceiling, spare included. A young date never proves a sound tire. {CAUTIONS['tire-fitting']}
          </p>
        </section>
      )}
      <OtherMarks asked={asked} />
    </>
  );
};

const rangeFrom = (read: TypedDate | null) => (read?.ok && read.said === 'date' ? read.date : null);

const DateDoubt = ({ read }: { read: TypedDate | null }) =>
  read === null || (read.ok && read.said === 'date') ? null : (
    <p class="fault" role="alert">
      {read.ok ? 'That is no date, so it narrows nothing.' : read.message}
    </p>
  );

const TireAnswer = ({ place, typed, known }: { place: string; typed: string; known: KnownAboutTire }) => {
  const { on } = useVisit();
  const answer = readTireCode(typed, on, known);
  const words = explainTireCode(answer, on);
  const age = answer.ok
    ? ageInWords(ageOf({ from: answer.candidates[0]?.from ?? null, to: answer.candidates.at(-1)?.to ?? null }, on))
    : null;
  return (
    <article class={`code ${answer.ok ? '' : 'fault'}`}>
      <h3>
        {place}: <code>{typed}</code>
      </h3>
      <p class="answer">
        <strong>{words.title}</strong>
        {age && <> · {age}</>}
      </p>
      <ul>
        {words.working.map((step) => (
          <li>{step}</li>
        ))}
      </ul>
      {words.doubts.map((doubt) => (
        <p class="doubt">Doubt: {doubt}</p>
      ))}
      {words.next.map((step) => (
        <p>{step}</p>
      ))}
    </article>
  );
};

const OtherMarks = ({ asked }: { asked: Asked }) => {
  const { on, site, today } = useVisit();
  const mark = MARKS[asked.mark];
  const answer = mark && asked.typed ? mark.read(asked.typed, on) : null;
  return (
    <section aria-labelledby="marks">
      <h2 id="marks">Other dates on parts</h2>
      <form method="get" action={`${site.base}/date-codes#marks`} class="stacked">
        {on !== today && <input type="hidden" name="on" value={on} />}
        <label>
          What carries it
          <select name="mark">
            {Object.entries(MARKS).map(([key, { name, hint }]) => (
              <option value={key} selected={key === asked.mark}>
                {name}: {hint}
              </option>
            ))}
          </select>
        </label>
        <label>
          What it says
          <input name="typed" value={asked.typed} autocomplete="off" />
        </label>
        <button>Read the mark</button>
      </form>
      {answer && <MarkShown answer={answer} typed={asked.typed} />}
    </section>
  );
};

const MarkShown = ({ answer, typed }: { answer: MarkAnswer; typed: string }) => {
  const { on } = useVisit();
  if (!answer.ok)
    return (
      <p class="fault" role="alert">
        <code>{typed}</code>: {answer.message}
      </p>
    );
  return (
    <article class="code">
      <h3>
        <code>{typed}</code>
      </h3>
      <ul>
        {answer.candidates.map((candidate) => (
          <li>
            <strong>
              {candidate.validThrough ? `Valid through ${dayInWords(candidate.validThrough)}` : rangeInWords(candidate)}
            </strong>
            {!candidate.validThrough && <>: {ageInWords(ageOf(candidate, on))}</>}
            {candidate.validThrough && candidate.validThrough < on && ' – that day is past'}
            {candidate.note && <> ({candidate.note})</>}
          </li>
        ))}
        {answer.working.map((step) => (
          <li>{step}</li>
        ))}
      </ul>
      {answer.doubts.map((doubt) => (
        <p class="doubt">Doubt: {doubt}</p>
      ))}
    </article>
  );
};
