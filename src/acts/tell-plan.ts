/** The letter that brings a plan, to everybody who gets the collection’s letters and has not had it. */
import { addDays } from '../dates/civil.ts';
import { planHtml, planText } from '../mail/plan-letter.tsx';
import { planLetterOf } from '../notices/plan-letter.ts';
import { newsOf } from '../notices/stay-news.ts';
import type { StayView } from '../plans/standing.ts';
import { type ToldOfStay, toldOfStaysTo, type Written, writeLetters } from '../store/letters.ts';
import { inTransaction, type Store } from '../store/open.ts';
import { type Collection, type Member, membersOf } from '../store/people.ts';
import { frameFor, letterRow, type Writing } from './letter-row.ts';
import type { StayHere } from './stays.ts';

const PLAN = 'plan';

/** Days after the parking day that a plan is worth a letter: later the rounds and the way back tell. */
const WORTH = 14;

/** Whether this person still has to be sent the plan. */
export const wantsPlan = (told: readonly ToldOfStay[], { stay, on }: StayView): boolean =>
  on <= addDays(stay.parkedOn, WORTH) && !told.some((one) => one.layUpId === stay.id && one.matter === PLAN);

/** One plan for one person; whatever the plan says of its steps today counts as told with it. */
export const planFor = (
  view: StayView,
  names: { car: string; place: string | null },
  to: { collection: Collection; member: Member; recipient: string },
  writing: Writing,
): Written => {
  const letter = planLetterOf(view, names.car, names.place);
  const frame = frameFor(to.member, to.collection, writing);
  const steps = newsOf(view).filter(({ sort }) => sort === 'step');
  return {
    letter: letterRow(PLAN, to, writing, {
      subject: letter.subject,
      text: planText(letter, frame),
      html: planHtml(letter, frame),
    }),
    said: [],
    told: [PLAN, ...steps.map(({ matter }) => matter)].map((matter) => ({
      layUpId: view.stay.id,
      matter,
      saidOn: writing.today,
    })),
  };
};

/** Writes the plan of a stay that was just made; answers to how many. */
export const tellPlan = (
  store: Store,
  collection: Collection,
  { view, found, place }: StayHere,
  writing: Writing,
  ahead: boolean,
): number =>
  inTransaction(store, (tx) => {
    const names = { car: found.car.name, place: place?.name ?? null };
    const written = membersOf(tx, collection.id).flatMap((member) => {
      const { email, letters } = member;
      const told = toldOfStaysTo(tx, collection.id, member.id, writing.today);
      return letters && email && wantsPlan(told, view)
        ? [planFor(view, names, { collection, member, recipient: email }, writing)]
        : [];
    });
    writeLetters(tx, { collectionId: collection.id, ahead }, written);
    return written.length;
  });
