/** The road check as a guest sees it: one car, no menu, until the link ends. */
import type { Fault } from '../../acts/fault.ts';
import { linkBehind } from '../../acts/guest-links.ts';
import { type RoadCheckHere, roadCheckHere, walkRound } from '../../acts/road-check.ts';
import { instantInWords, todayIn } from '../../clock.ts';
import type { CivilDate } from '../../dates/civil.ts';
import { dayInWords } from '../../dates/words.ts';
import type { GuestLinkRow } from '../../store/guest-links.ts';
import { findCollection } from '../../store/people.ts';
import { barePage, linkEnded } from '../bare.tsx';
import { readForm } from '../forms.ts';
import { FaultSummary } from '../layout.tsx';
import type { Ctx } from '../visit.ts';
import { AnswerShown } from './answer.tsx';
import { WALK_FORM, type WalkForm, walkIn } from './forms.ts';
import { WalkCautions, WalkFields } from './walk-fields.tsx';

interface Guest {
  link: GuestLinkRow;
  here: RoadCheckHere;
  today: CivilDate;
  path: string;
  /** When the link ends, in words. */
  ends: string;
}

/** Unknown, ended and past links are told apart for nobody. */
const guestIn = (c: Ctx): Guest | undefined => {
  const { store, now, site } = c.get('around');
  const secret = c.req.param('secret') ?? '';
  const link = linkBehind(store, secret, now().toISOString());
  const collection = link && findCollection(store, link.collectionId);
  if (!link || !collection) return undefined;
  const today = todayIn(collection.timeZone, now());
  const here = roadCheckHere(store, collection, link.carId, today);
  const ends = instantInWords(link.endsAt, collection.timeZone);
  return here && { link, here, today, ends, path: `${site.base}/look/${secret}` };
};

export const guestPage = (c: Ctx) => {
  const guest = guestIn(c);
  return guest ? show(c, guest, {}, []) : gone(c);
};

export const guestWalk = async (c: Ctx) => {
  const guest = guestIn(c);
  if (!guest) return gone(c);
  const form = await readForm(c, WALK_FORM);
  const { collectionId, carId } = guest.link;
  const acting = { collectionId, personId: '', order: 'ask' as const, today: guest.today };
  const outcome = walkRound(c.get('around').store, acting, carId, walkIn(form));
  if (!outcome.ok) return show(c, guest, form, outcome.faults);
  return c.redirect(guest.path, 303);
};

const gone = (c: Ctx) => linkEnded(c, 'Ask whoever sent it for another.');

const show = (c: Ctx, { here, link, today, path, ends }: Guest, given: Partial<WalkForm>, faults: readonly Fault[]) =>
  barePage(
    c,
    `Road check of ${here.found.car.name}`,
    <>
      <h1>Road check of {here.found.car.name}</h1>
      <p class="lede">
        For {link.guest}, {dayInWords(today)}. What nobody looked at today is not in order: look, then read the answer
        again. This page ends on {ends}.
      </p>
      <FaultSummary faults={faults} />
      <AnswerShown here={here} part={(_, words) => words} />
      <section aria-labelledby="walk">
        <h2 id="walk">Walk round of today</h2>
        {here.walk && <p>Made by {here.walk.by}. Made anew, the last one counts.</p>}
        <WalkCautions />
        <form method="post" action={path} class="stacked">
          <WalkFields given={given} faults={faults} by={link.guest} />
          <button class="big">Keep it, and show the answer</button>
        </form>
      </section>
    </>,
    faults.length > 0 ? 422 : 200,
  );
