/** Dating a part at the car, on a phone, with one hand: big targets, and the answers last used close by. */

import type { Fault } from '../../acts/fault.ts';
import { datePart, kindOf } from '../../acts/parts.ts';
import type { ClaimGiven } from '../../acts/read-claim.ts';
import { CLOCKS, type Clock } from '../../catalogue/clock.ts';
import type { Kind, Mark } from '../../catalogue/kind.ts';
import { KINDS } from '../../catalogue/kinds.ts';
import { count, rangeInWords } from '../../dates/words.ts';
import { byWeight, findingsOf } from '../../findings/car.ts';
import { CLOCK_WORDS } from '../../findings/explain.ts';
import { EVIDENCE } from '../../findings/facts.ts';
import { type ClaimRow, carWithParts, findPart, lastAnswers, type PartOnRecord } from '../../store/cars.ts';
import { Cautions } from '../cautions.tsx';
import { partInPath } from '../find-part.ts';
import { CLAIM_FORM, type ClaimForm, notADistance, readDistance, readForm } from '../forms.ts';
import { A, choiceOf, DistanceField, FaultSummary, Faults, faultsOf, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { isWaiting } from '../waiting.ts';
import { nameOf } from './part-name.ts';

type Answer = ReturnType<typeof lastAnswers>[number];

/** Answers offered again, at most. */
const AGAIN = 4;

export const datePartPage = (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  const kind = kindOf(here.part);
  const answers = lastAnswers(c.get('around').store, c.get('visit').collection.id, here.found.car.id, 12);
  const clock = kind.clock;
  const given: ClaimForm = {
    clock,
    typed: '',
    typedChoice: '',
    typedAsked: '',
    quick: '',
    evidence: kind.mark || clock === 'printed' ? 'read on the part' : 'own memory',
    distance: '',
    note: '',
    ninetiesMark: '',
    instead: '',
    round: c.req.query('round') ?? '',
  };
  return show(c, here.part, kind, answers, given, []);
};

export const recordDate = async (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  const { part, found } = here;
  const { store } = c.get('around');
  const form = await readForm(c, CLAIM_FORM);
  const given = form.quick ? quickly(form) : form;
  const { claim, faults } = claimGiven(given);
  const outcome =
    faults.length > 0
      ? { ok: false as const, faults }
      : datePart(store, actingIn(c.get('visit')), { part, car: found.facts }, claim, given.instead || null);
  if (!outcome.ok) {
    const answers = lastAnswers(store, c.get('visit').collection.id, found.car.id, 12);
    return show(c, part, kindOf(part), answers, given, outcome.faults);
  }
  const next = given.round ? `/cars/${part.carId}/dating?done=${part.id}` : `/parts/${part.id}`;
  return c.redirect(at(c.get('visit'), next), 303);
};

/** The next part that waits for a date, gravest first; `skip` and `done` name the part just left. */
export const datingRound = (c: Ctx) => {
  const { collection, on } = c.get('visit');
  const found = carWithParts(c.get('around').store, collection.id, c.req.param('carId') ?? '');
  if (!found) return notFound(c, 'car');
  const order = findingsOf(found.facts, found.parts, [], on)
    .sort(byWeight)
    .map(({ part }) => part);
  const left = c.req.query('skip') ?? c.req.query('done');
  const from = order.findIndex(({ id }) => id === left) + 1;
  const next = [...order.slice(from), ...order.slice(0, from)].find(
    (part) => isWaiting(part.claims) && part.id !== left,
  );
  const done = c.req.query('done');
  if (!next) return c.redirect(at(c.get('visit'), `/cars/${found.car.id}`), 303);
  return c.redirect(at(c.get('visit'), `/parts/${next.id}/date?round=1${done ? `&done=${done}` : ''}`), 303);
};

const QUICK_WORDS: readonly string[] = ['original', 'unknown', 'not looked yet'];

/** One touch answers in place of the text. Its words come off no part and no paper, whatever stands ticked below. */
const quickly = (form: ClaimForm): ClaimForm => ({
  ...form,
  typed: form.quick,
  typedChoice: '',
  evidence: QUICK_WORDS.includes(form.quick) ? 'assumed' : form.evidence,
});

export const claimGiven = (form: ClaimForm): { claim: ClaimGiven; faults: Fault[] } => {
  const km = form.distance === '' ? null : readDistance(form.distance);
  const faults = form.distance !== '' && km === null ? [notADistance(form.distance)] : [];
  const { clock, typed, typedChoice, typedAsked, evidence, note, ninetiesMark } = form;
  return {
    claim: {
      clock,
      typed,
      choice: choiceOf(typed, typedAsked, typedChoice),
      evidence,
      km,
      note,
      ninetiesMark: ninetiesMark || undefined,
    },
    faults,
  };
};

const show = (
  c: Ctx,
  part: PartOnRecord,
  kind: Kind,
  answers: Answer[],
  given: ClaimForm,
  faults: readonly Fault[],
) => {
  const doneId = c.req.query('done');
  const done = doneId ? lastClaimOf(c, doneId) : null;
  return page(
    c,
    `Date: ${nameOf(part)}`,
    <DatePart part={part} kind={kind} answers={answers} given={given} faults={faults} done={done} />,
    faults.length > 0 ? 422 : 200,
  );
};

const lastClaimOf = (c: Ctx, partId: string): { part: PartOnRecord; claim: ClaimRow } | null => {
  const part = findPart(c.get('around').store, c.get('visit').collection.id, partId);
  const claim = part?.claims.at(-1);
  return part && claim ? { part, claim } : null;
};

interface Shown {
  part: PartOnRecord;
  kind: Kind;
  answers: Answer[];
  given: ClaimForm;
  faults: readonly Fault[];
  done: { part: PartOnRecord; claim: ClaimRow } | null;
}

const MARK_WORDS: Readonly<Record<Mark, string>> = {
  'tire code': 'DOT code from the sidewall, or a date',
  'hose label': 'Month/day/year as printed on the stripe, or a date',
  'battery code': 'Letter and digit (C7), sticker (3/17), or a date',
  'month clock': 'Month and year of the molded clock (6/09), or a date',
  'period print': 'Print on it (3Q09, 24/07), or a date',
  'harness label': 'What the label says (not valid after 2028), or a date',
};

const DatePart = ({ part, kind, answers, given, faults, done }: Shown) => (
  <>
    {done && (
      <p class="understood" role="status">
        Recorded: {nameOf(done.part)},{' '}
        {done.claim.said === 'date' ? `understood as ${rangeInWords(done.claim)}` : done.claim.said}.{' '}
        <A to={`/parts/${done.part.id}`}>Change it</A>
      </p>
    )}
    <h1>{nameOf(part)}</h1>
    <details>
      <summary>Where to find it</summary>
      <p class="hint">{kind.findDate}</p>
      <Cautions keys={kind.cautions} />
    </details>
    <FaultSummary faults={faults} />
    <Post to={`/parts/${part.id}/date`} class="dating">
      <input type="hidden" name="round" value={given.round} />
      <label class="big">
        {kind.mark ? MARK_WORDS[kind.mark] : `${CLOCK_WORDS[kind.clock]}: day, month, year, or words`}
        <input
          name="typed"
          value={given.typed}
          autocomplete="off"
          autocapitalize="off"
          placeholder={kind.mark === 'tire code' ? '2318' : 'June 2015, about 2015, before 1998'}
          data-reads={readsAs(kind)}
          {...faultsOf(faults, 'typed')}
        />
      </label>
      <Faults faults={faults} field="typed" picked={given.typedChoice} asked={given.typedAsked} text={given.typed} />
      {kind.mark === 'tire code' && /\b\d{3}\D*$/.test(given.typed) && <Triangle given={given} />}
      <fieldset class="targets evidence-choice">
        <legend>How do you know?</legend>
        {EVIDENCE.map((evidence) => (
          <label>
            <input type="radio" name="evidence" value={evidence} checked={evidence === given.evidence} />{' '}
            <span>{evidence}</span>
          </label>
        ))}
      </fieldset>
      {/* Record comes before the one-touch answers: Enter presses a form's first button. */}
      <Instead part={part} given={given} />
      <button class="big">Record</button>
      <fieldset class="targets quick">
        <legend>Or answer with one touch</legend>
        {QUICK_WORDS.map((word) => (
          <button name="quick" value={word}>
            {word}
          </button>
        ))}
        {again(answers, kind).map((typed) => (
          <button name="quick" value={typed} class="again">
            {typed}
          </button>
        ))}
      </fieldset>
      <details
        open={
          given.clock !== kind.clock ||
          given.distance !== '' ||
          given.note !== '' ||
          faults.some(({ field }) => field === 'distance')
        }
      >
        <summary>Another of its dates, the odometer, a note</summary>
        <fieldset class="targets">
          <legend>Which date is it?</legend>
          {clocksOf(kind).map((clock) => (
            <label>
              <input type="radio" name="clock" value={clock} checked={clock === given.clock} />{' '}
              <span>{CLOCK_WORDS[clock]}</span>
            </label>
          ))}
        </fieldset>
        <DistanceField label="Odometer then" value={given.distance} faults={faults} />
        <label>
          Note
          <input name="note" value={given.note} />
        </label>
      </details>
    </Post>
    <p class="after">
      {given.round && (
        <>
          <A to={`/cars/${part.carId}/dating?skip=${part.id}`}>Skip to the next part</A> ·{' '}
        </>
      )}
      <A to={`/cars/${part.carId}`}>Back to the car</A>
    </p>
  </>
);

/** What the line under the field can say while one types: codes of other marks are read when they are recorded. */
const readsAs = ({ mark, clock }: Kind): string | undefined =>
  mark === 'tire code' ? mark : mark ? undefined : clock === 'printed' ? 'ahead' : 'date';

/** A second date of the same clock is a second source, unless the first was a slip. */
const Instead = ({ part, given }: { part: PartOnRecord; given: ClaimForm }) =>
  part.claims.length === 0 ? null : (
    <label>
      This part has {count(part.claims.length, 'date')} already
      <select name="instead">
        <option value="">Keep them: this is one more source</option>
        {part.claims.map(({ id, clock, typed }) => (
          <option value={id} selected={id === given.instead}>
            Take back “{CLOCK_WORDS[clock]}: {typed}”: it was a slip
          </option>
        ))}
      </select>
    </label>
  );

const Triangle = ({ given }: { given: ClaimForm }) => (
  <fieldset class="targets">
    <legend>Is there a small triangle after the three digits? It marks the 1990s.</legend>
    {(['seen', 'not seen'] as const).map((answer) => (
      <label>
        <input type="radio" name="ninetiesMark" value={answer} checked={given.ninetiesMark === answer} />{' '}
        <span>{answer}</span>
      </label>
    ))}
  </fieldset>
);

/** The kind's own clock first, then the others it can carry. */
const clocksOf = ({ clock, fallback }: Kind): Clock[] => [
  ...new Set([clock, ...(fallback ? [fallback] : []), ...CLOCKS]),
];

/** What was typed last for this car, as far as it can fit: codes for the same kind, plain dates for the same clock. */
const again = (answers: readonly Answer[], kind: Kind): string[] => {
  const fit = answers.filter(
    ({ claim, kind: other }) =>
      claim.said === 'date' &&
      claim.clock === kind.clock &&
      (other === kind.key || !(kind.mark || KINDS.get(other)?.mark)),
  );
  return [...new Set(fit.map(({ claim }) => claim.typed))].slice(0, AGAIN);
};
