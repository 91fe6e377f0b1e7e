/** The first look at a sleeper, in the order one walks around it: papers, fluids, rodents, floor, five tires. */
import type { Fault } from '../../acts/fault.ts';
import { kindOf } from '../../acts/parts.ts';
import { isOver, type RevivalHere } from '../../acts/revivals.ts';
import { codedParts, type DateGiven, saidDoneParts, surveySleeper } from '../../acts/survey-sleeper.ts';
import { allTraits } from '../../catalogue/traits.ts';
import { explain } from '../../findings/explain.ts';
import { EVIDENCE, type Evidence } from '../../findings/facts.ts';
import { SURVEY } from '../../revival/looks/survey.ts';
import { lookOf } from '../../revival/looks.ts';
import { isFor } from '../../revival/step-state.ts';
import type { PartOnRecord } from '../../store/cars.ts';
import { Cautions } from '../cautions.tsx';
import { readForm } from '../forms.ts';
import { A, choiceOf, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { nameOf } from '../pages/part-name.ts';
import { actingIn, at, type Ctx } from '../visit.ts';
import { looksIn, SURVEY_FORM, type SurveyForm } from './forms.ts';
import { pathOf, revivalInPath } from './in-path.ts';
import { LookField } from './look-field.tsx';

export const surveyPage = (c: Ctx) => {
  const here = revivalInPath(c);
  if (!here) return notFound(c, 'return');
  if (isOver(here.record, c.get('visit').on)) return c.redirect(at(c.get('visit'), pathOf(here)), 303);
  return show(c, here, {}, []);
};

export const recordSurveyPage = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = revivalInPath(c);
  if (!here) return notFound(c, 'return');
  const form = await readForm(c, SURVEY_FORM);
  const { day, note } = form;
  const outcome = surveySleeper(c.get('around').store, actingIn(visit), here, {
    day: day || visit.on,
    by: form.by === visit.person.name ? '' : form.by,
    note,
    looks: looksIn(form),
    dates: datesIn(form),
  });
  if (!outcome.ok) return show(c, here, form, outcome.faults);
  return c.redirect(at(visit, pathOf(here, '/verdict')), 303);
};

const datesIn = (form: SurveyForm): DateGiven[] =>
  Object.entries(form).flatMap(([name, typed]) => {
    if (!name.startsWith('date.') || name.endsWith('Choice') || name.endsWith('Asked') || typed === '') return [];
    const partId = name.slice('date.'.length);
    const evidence = EVIDENCE.find((one) => one === form[`evidence.${partId}`]) ?? 'read on the part';
    const choice = choiceOf(typed, form[`${name}Asked`] ?? '', form[`${name}Choice`] ?? '');
    return [{ partId, typed, choice, evidence }];
  });

const show = (c: Ctx, here: RevivalHere, given: Partial<SurveyForm>, faults: readonly Fault[]) =>
  page(
    c,
    `First look at ${here.found.car.name}`,
    <Survey here={here} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );

interface Shown {
  here: RevivalHere;
  given: Partial<SurveyForm>;
  faults: readonly Fault[];
}

const Survey = ({ here, given, faults }: Shown) => {
  const { on, person } = useVisit();
  const { found, plan } = here;
  const traits = allTraits(found.car.traits);
  const looks = (Object.keys(SURVEY) as (keyof typeof SURVEY)[]).filter((key) => isFor(lookOf(key), traits));
  const said = saidDoneParts(found.parts);
  return (
    <>
      <p class="crumb">
        <A to={pathOf(here)}>Return of {found.car.name}</A>
      </p>
      <h1>First look at {found.car.name}</h1>
      <p class="lede">
        Answer what you can see; the rest stays “not looked yet” and counts as unknown, never as in order. Photograph
        before you touch. <A to={pathOf(here, '/sheets/survey')}>The same on paper</A>
      </p>
      <FaultSummary faults={faults} />
      <Faults faults={faults} field="looks" />
      <Cautions keys={['fuel-vapor', 'droppings', 'rolling', 'lifting']} />
      <Post to={pathOf(here, '/survey')} class="stacked">
        <h2>What you see</h2>
        {looks.map((look) => (
          <LookField
            look={look}
            given={given[`look.${look}`] ?? ''}
            faults={faults}
            last={plan.picture.answers.get(look)?.answer}
          />
        ))}
        <h2>Codes on all five tires</h2>
        <p class="hint">
          The last group of the number: 2318, or three digits before 2000. It may stand on the inner side only. “Not
          looked yet” is an answer.
        </p>
        {codedParts(found.parts).map((part) => (
          <DateField part={part} here={here} given={given} faults={faults} evidence="read on the part" />
        ))}
        {said.length > 0 && (
          <details>
            <summary>What is said to have been done since it was parked</summary>
            <p class="hint">With its date and how it is known; a seller’s word does not clear anything.</p>
            {said.map((part) => (
              <DateField part={part} here={here} given={given} faults={faults} evidence="seller’s word" />
            ))}
          </details>
        )}
        <label>
          Day
          <input name="day" type="date" value={given.day || on} max={on} {...faultsOf(faults, 'day')} />
        </label>
        <Faults faults={faults} field="day" />
        <label>
          Who looked
          <input name="by" value={given.by ?? person.name} autocomplete="off" />
        </label>
        <label>
          Note
          <textarea name="note" rows={2}>
            {given.note ?? ''}
          </textarea>
        </label>
        <button class="big">Keep it, and show the verdict</button>
      </Post>
    </>
  );
};

const DateField = ({ part, here, given, faults, evidence }: Shown & { part: PartOnRecord; evidence: Evidence }) => {
  const field = `date.${part.id}`;
  const finding = here.plan.findings.find((one) => one.part.id === part.id);
  const chosen = given[`evidence.${part.id}`] ?? evidence;
  return (
    <fieldset class="date-field">
      <legend>{nameOf(part)}</legend>
      {part.claims.length > 0 && finding && <p class="hint">On record: {explain(finding).age}.</p>}
      <label>
        {kindOf(part).mark === 'tire code' ? 'Code or date' : 'Date'}
        <input name={field} value={given[field] ?? ''} autocomplete="off" {...faultsOf(faults, field)} />
      </label>
      <Faults
        faults={faults}
        field={field}
        picked={given[`${field}Choice`] ?? ''}
        asked={given[`${field}Asked`] ?? ''}
        text={given[field] ?? ''}
      />
      <label>
        How that is known
        <select name={`evidence.${part.id}`}>
          {EVIDENCE.map((one) => (
            <option value={one} selected={one === chosen}>
              {one}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
};
