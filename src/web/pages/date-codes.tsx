/** Date codes: a desk that needs no car. Five sidewalls at once, and the other marks parts carry. */
import { z } from 'zod';
import { TIRE_BEFORE_CAR_MONTHS } from '../../acts/read-claim.ts';
import { CAUTIONS } from '../../catalogue/cautions.ts';
import { addMonths, type CivilDate } from '../../dates/civil.ts';
import { explainTireCode } from '../../dates/tire-code/explain.ts';
import type { KnownAboutTire } from '../../dates/tire-code/narrow.ts';
import { readTireCode } from '../../dates/tire-code/read.ts';
import { readTypedDate, type TypedDate } from '../../dates/typed-date.ts';
import { ageInWords, ageOf, dayInWords } from '../../dates/words.ts';
import { DeskNav } from '../desks/desk.tsx';
import { page, useVisit } from '../layout.tsx';
import { Sources } from '../sources.tsx';
import type { Ctx } from '../visit.ts';
import { OtherMarks } from './other-marks.tsx';

const PLACES = { fl: 'Front left', fr: 'Front right', rl: 'Rear left', rr: 'Rear right', sp: 'Spare' } as const;
type Place = keyof typeof PLACES;

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
    notBefore: earliestTire(rangeFrom(built)?.from ?? null),
    fittedBy: (rangeFrom(fitted)?.to ?? undefined) as CivilDate | undefined,
  };
  const read = (Object.keys(PLACES) as Place[]).filter((place) => asked[place] !== '');
  return (
    <>
      <DeskNav />
      <h1>Date codes</h1>
      <p class="lede">Read the sidewalls of up to five tires. Nothing is stored; print the page and take it along.</p>
      <form method="get" action={`${site.base}/date-codes#answers`} class="stacked codes">
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
            The car was built (for tires that came with it or later; a spare or a shelf tire can be older)
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
          <Sources keys={['49-cfr-574-5']} />
          <p class="note">
            Practice of the trade: a yearly look from five years, six as the line of caution, ten from manufacture as
            the ceiling, spare included. A young date never proves a sound tire. {CAUTIONS['tire-fitting']}
          </p>
        </section>
      )}
      <OtherMarks mark={asked.mark} typed={asked.typed} />
    </>
  );
};

/** Tires are made before the car they come on: the same year’s grace as when a part is dated. */
const earliestTire = (built: CivilDate | null): CivilDate | undefined =>
  built ? addMonths(built, -TIRE_BEFORE_CAR_MONTHS) : undefined;

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
