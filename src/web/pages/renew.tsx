/** Renewing a part closes its record and opens the next; looking at it, taking back a slip, taking it off the list. */

import { type Fault, refused } from '../../acts/fault.ts';
import { beginsOn, datePart, kindOf, renewPart } from '../../acts/parts.ts';
import type { ClaimGiven } from '../../acts/read-claim.ts';
import { takesLooks } from '../../catalogue/kind.ts';
import { CLOCK_WORDS } from '../../findings/explain.ts';
import { EVIDENCE } from '../../findings/facts.ts';
import { type PartOnRecord, reopenPart, retirePart, withdrawClaim } from '../../store/cars.ts';
import { Cautions } from '../cautions.tsx';
import { partInPath } from '../find-part.ts';
import { RENEW_FORM, RETIRE_FORM, type RenewForm, readForm } from '../forms.ts';
import { A, choiceOf, DistanceField, FaultSummary, Faults, faultsOf, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { refuseClosed } from './closed-part.tsx';
import { claimGiven } from './date-part.tsx';
import { nameOf } from './part-name.ts';

export const renewPage = (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  const { on } = c.get('visit');
  const { clock } = kindOf(here.part);
  const given: RenewForm = {
    clock,
    typed: '',
    typedChoice: '',
    typedAsked: '',
    quick: '',
    evidence: 'own memory',
    distance: '',
    note: '',
    ninetiesMark: '',
    instead: '',
    round: '',
    why: '',
    fitted: on,
    fittedChoice: '',
    fittedAsked: '',
  };
  return show(c, here.part, given, []);
};

export const renew = async (c: Ctx) => {
  if (!partInPath(c)) return notFound(c, 'part');
  const form = await readForm(c, RENEW_FORM);
  // Found again after the form has come in: it may have been renewed meanwhile.
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  const { part, found } = here;
  const { claim, faults } = claimGiven(form);
  const { store } = c.get('around');
  const acting = actingIn(c.get('visit'));
  const renewal = { why: form.why || 'Renewed.', note: form.note, claims: claimsOf(part, form, claim) };
  const outcome =
    faults.length > 0 ? { ok: false as const, faults } : renewPart(store, acting, { part, car: found.facts }, renewal);
  if (!outcome.ok) return show(c, part, form, outcome.faults.map(nearField));
  return c.redirect(at(c.get('visit'), `/parts/${outcome.value}`), 303);
};

/** The day it was fitted or filled, and, where the kind counts from another clock, what is read on the new part. */
const claimsOf = (part: PartOnRecord, form: RenewForm, read: ClaimGiven): ClaimGiven[] => {
  const { clock } = kindOf(part);
  const fitted: ClaimGiven = {
    clock: beginsOn(kindOf(part)),
    typed: form.fitted,
    choice: choiceOf(form.fitted, form.fittedAsked, form.fittedChoice),
    evidence: form.evidence,
    km: read.km,
    note: '',
  };
  return form.typed === ''
    ? [fitted]
    : [
        fitted,
        {
          ...read,
          note: '',
          clock,
          evidence: clock === 'made' || clock === 'printed' ? 'read on the part' : form.evidence,
        },
      ];
};

/** Faults of a list of dates, told at the fields of this form. */
const nearField = (fault: Fault): Fault => ({
  ...fault,
  field: fault.field === 'dates/0/typed' ? 'fitted' : fault.field === 'dates/1/typed' ? 'typed' : fault.field,
});

const show = (c: Ctx, part: PartOnRecord, given: RenewForm, faults: readonly Fault[]) =>
  page(
    c,
    `Renewed: ${nameOf(part)}`,
    <Renew part={part} given={given} faults={faults} />,
    faults.length > 0 ? 422 : 200,
  );

const Renew = ({ part, given, faults }: { part: PartOnRecord; given: RenewForm; faults: readonly Fault[] }) => {
  const kind = kindOf(part);
  const readsOn = kind.clock === 'made' || kind.clock === 'printed';
  return (
    <>
      <h1>Renewed: {nameOf(part)}</h1>
      <p class="hint">The record so far is closed and kept in the history; a new one begins.</p>
      <FaultSummary faults={faults} />
      <Faults faults={faults} field="part" />
      <Post to={`/parts/${part.id}/renew`} class="stacked">
        <label>
          {kind.clock === 'filled'
            ? 'Filled'
            : kind.clock === 'serviced' || kind.clock === 'used'
              ? CLOCK_WORDS[kind.clock]
              : 'Fitted'}
          <input
            name="fitted"
            value={given.fitted}
            autocomplete="off"
            data-reads="date"
            {...faultsOf(faults, 'fitted')}
          />
        </label>
        <Faults
          faults={faults}
          field="fitted"
          picked={given.fittedChoice}
          asked={given.fittedAsked}
          text={given.fitted}
        />
        {readsOn && (
          <>
            <label>
              {kind.clock === 'printed' ? 'Last valid day on its label' : 'Code or date read on the new part'}
              <input
                name="typed"
                value={given.typed}
                autocomplete="off"
                data-reads={kind.mark === 'tire code' ? kind.mark : undefined}
                {...faultsOf(faults, 'typed')}
              />
            </label>
            <p class="hint">A new part may be years old: read it. {kind.findDate}</p>
            <Faults
              faults={faults}
              field="typed"
              picked={given.typedChoice}
              asked={given.typedAsked}
              text={given.typed}
            />
          </>
        )}
        <input type="hidden" name="clock" value={kind.clock} />
        <fieldset class="targets">
          <legend>How do you know the day?</legend>
          {EVIDENCE.filter((evidence) => evidence !== 'read on the part').map((evidence) => (
            <label>
              <input type="radio" name="evidence" value={evidence} checked={evidence === given.evidence} />{' '}
              <span>{evidence}</span>
            </label>
          ))}
        </fieldset>
        <DistanceField label="Odometer then" value={given.distance} faults={faults} />
        <label>
          Why, or by whom
          <input name="why" value={given.why} />
        </label>
        <label>
          Note on the new part
          <input name="note" value={given.note} />
        </label>
        <button>Close the old record, open the new one</button>
      </Post>
      <Cautions keys={kind.cautions} />
      <p>
        <A to={`/parts/${part.id}`}>Back without saving</A>
      </p>
    </>
  );
};

export const looked = (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  const visit = c.get('visit');
  const claim = {
    clock: 'serviced' as const,
    typed: visit.on,
    evidence: 'own memory' as const,
    km: null,
    note: 'Looked at.',
  };
  const outcome = takesLooks(kindOf(here.part))
    ? datePart(c.get('around').store, actingIn(visit), { part: here.part, car: here.found.facts }, claim)
    : refused({
        field: 'part',
        message: 'Its clock is the last service, and a look is none: record the service as renewed.',
      });
  if (!outcome.ok)
    return page(
      c,
      'Not recorded',
      <>
        <h1>Not recorded</h1>
        <p class="fault">{outcome.faults[0]?.message}</p>
        <p>
          <A to={`/parts/${here.part.id}`}>Back to the part</A>
        </p>
      </>,
      422,
    );
  return c.redirect(at(visit, `/parts/${here.part.id}`), 303);
};

export const withdraw = (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  if (here.part.closedOn) return refuseClosed(c, here.part);
  const visit = c.get('visit');
  withdrawClaim(c.get('around').store, visit.collection.id, here.part.id, c.req.param('claimId') ?? '', visit.on);
  return c.redirect(at(visit, `/parts/${here.part.id}`), 303);
};

/** Takes back that a part is not on its car. Where something else stands in its place, its page says so by leading there. */
export const unretire = (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  reopenPart(c.get('around').store, here.part);
  return c.redirect(at(c.get('visit'), `/parts/${here.part.id}`), 303);
};

export const retire = async (c: Ctx) => {
  const here = partInPath(c);
  if (!here) return notFound(c, 'part');
  const visit = c.get('visit');
  const { why } = await readForm(c, RETIRE_FORM);
  retirePart(c.get('around').store, visit.collection.id, here.part.id, visit.on, why || 'Not fitted to this car.');
  return c.redirect(at(visit, `/cars/${here.part.carId}`), 303);
};
