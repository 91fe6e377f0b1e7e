/** The letter that brings a plan, to everybody who gets the collection’s letters and has not had it. */
import { addDays } from '../dates/civil.ts';
import { planHtml, planText } from '../mail/plan-letter.tsx';
import { planLetterOf } from '../notices/plan-letter.ts';
import { newsOf } from '../notices/stay-news.ts';
import type { StayView } from '../plans/standing.ts';
import { newId } from '../store/ids.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { queueLetters, type Written } from '../store/outbox.ts';
import { type Collection, membersOf } from '../store/people.ts';
import { type ToldOfStay, toldOfStaysTo } from '../store/told.ts';
import { type Addressed, addressOf, copiesOf, frameFor, letterRow, type Writing } from './letter-row.ts';
import type { StayHere } from './stays.ts';

export const PLAN = 'plan';

/** Days after the parking day that a plan is worth a letter: later the rounds and the way back tell. */
const WORTH = 14;

export const isWorthTelling = ({ stay, on }: StayView): boolean => on <= addDays(stay.parkedOn, WORTH);

/** Whether this person still has to be sent the plan. */
export const wantsPlan = (told: readonly ToldOfStay[], view: StayView): boolean =>
  isWorthTelling(view) && !told.some((one) => one.layUpId === view.stay.id && one.matter === PLAN);

/** One plan for one person; whatever the plan says of its steps today counts as told with it. */
export const planFor = (
  store: Store,
  view: StayView,
  names: { car: string; place: string | null },
  to: Addressed,
  writing: Writing,
  id = newId(),
): Written => {
  const plan = planLetterOf(view, names.car, names.place);
  const frame = frameFor(store, to, writing, id);
  const steps = newsOf(view).filter(({ sort }) => sort === 'step');
  const said = { subject: plan.subject, text: planText(plan, frame), html: planHtml(plan, frame) };
  const letter = letterRow(PLAN, to, writing, said, id);
  return {
    letter,
    copies: copiesOf(store, letter, to.member, writing),
    said: [],
    told: [PLAN, ...steps.map(({ matter }) => matter)].map((matter) => ({
      layUpId: view.stay.id,
      matter,
      saidOn: writing.today,
    })),
    toldBack: [],
  };
};

/** Writes the plan of a stay that was just made; answers to how many. */
export const tellPlan = (
  store: Store,
  collection: Collection,
  { view, found, place }: StayHere,
  writing: Writing,
): number =>
  inTransaction(store, (tx) => {
    const names = { car: found.car.name, place: place?.name ?? null };
    const written = membersOf(tx, collection.id).flatMap((member) => {
      const to = addressOf(collection, member);
      const listening = { collectionId: collection.id, personId: member.id, day: writing.today, besides: null };
      const wants =
        member.letters &&
        member.stoppedOn === null &&
        !member.notCars.includes(found.car.id) &&
        wantsPlan(toldOfStaysTo(tx, listening), view);
      return to && wants ? [planFor(tx, view, names, to, writing)] : [];
    });
    queueLetters(tx, written);
    return written.length;
  });
