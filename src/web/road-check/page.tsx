/** Road check: one screen a car, before any drive, with today’s walk round and the links lent to helpers. */
import type { Fault } from '../../acts/fault.ts';
import { type LINK_LIVES, lendRoadCheck } from '../../acts/guest-links.ts';
import { type RoadCheckHere, roadCheckHere, walkRound } from '../../acts/road-check.ts';
import { dayInWords } from '../../dates/words.ts';
import { endGuestLink, type GuestLinkRow, openLinksTo } from '../../store/guest-links.ts';
import { withdrawWalkround } from '../../store/walkrounds.ts';
import { readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Instant, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { AnswerShown } from './answer.tsx';
import { LINK_FORM, WALK_FORM, type WalkForm, walkIn } from './forms.ts';
import { WalkCautions, WalkFields } from './walk-fields.tsx';

const hereIn = (c: Ctx): RoadCheckHere | undefined => {
  const { collection, on } = c.get('visit');
  return roadCheckHere(c.get('around').store, collection, c.req.param('carId') ?? '', on);
};

const pathOf = ({ found }: RoadCheckHere, rest = ''): string => `/cars/${found.car.id}/road-check${rest}`;

interface Given {
  walk: Partial<WalkForm>;
  guest: string;
  /** Address of a link just made: shown this once. */
  lent: string | null;
  faults: readonly Fault[];
}
const NOTHING: Given = { walk: {}, guest: '', lent: null, faults: [] };

export const roadCheckPage = (c: Ctx) => {
  const here = hereIn(c);
  return here ? show(c, here, NOTHING) : notFound(c, 'car');
};

const show = (c: Ctx, here: RoadCheckHere, given: Given) => {
  const { collection, now } = c.get('visit');
  const links = openLinksTo(c.get('around').store, collection.id, here.found.car.id, now);
  return page(
    c,
    `Road check of ${here.found.car.name}`,
    <RoadCheck here={here} given={given} links={links} />,
    given.faults.length > 0 ? 422 : 200,
  );
};

export const recordWalk = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = hereIn(c);
  if (!here) return notFound(c, 'car');
  const walk = await readForm(c, WALK_FORM);
  const outcome = walkRound(c.get('around').store, actingIn(visit), here.found.car.id, walkIn(walk));
  if (!outcome.ok) return show(c, here, { ...NOTHING, walk, faults: outcome.faults });
  return c.redirect(at(visit, pathOf(here)), 303);
};

export const takeBackWalk = (c: Ctx) => {
  const visit = c.get('visit');
  const here = hereIn(c);
  if (!here) return notFound(c, 'car');
  if (here.walk) withdrawWalkround(c.get('around').store, visit.collection.id, here.walk.id, visit.on);
  return c.redirect(at(visit, pathOf(here)), 303);
};

export const lend = async (c: Ctx) => {
  const visit = c.get('visit');
  const here = hereIn(c);
  if (!here) return notFound(c, 'car');
  const { guest, life } = await readForm(c, LINK_FORM);
  const outcome = lendRoadCheck(c.get('around').store, actingIn(visit), here.found.car.id, {
    guest,
    life,
    now: visit.now,
  });
  if (!outcome.ok) return show(c, here, { ...NOTHING, guest, faults: outcome.faults });
  return show(c, here, { ...NOTHING, lent: visit.site.href(`/look/${outcome.value}`) });
};

export const endLink = (c: Ctx) => {
  const visit = c.get('visit');
  const here = hereIn(c);
  if (!here) return notFound(c, 'car');
  endGuestLink(c.get('around').store, visit.collection.id, here.found.car.id, c.req.param('linkId') ?? '', visit.now);
  return c.redirect(at(visit, pathOf(here)), 303);
};

const RoadCheck = ({ here, given, links }: { here: RoadCheckHere; given: Given; links: readonly GuestLinkRow[] }) => {
  const { found, walk } = here;
  const { on, person } = useVisit();
  return (
    <>
      <p class="crumb">
        <A to={`/cars/${found.car.id}`}>{found.car.name}</A>
      </p>
      <h1>Road check of {found.car.name}</h1>
      <p class="lede">
        For {dayInWords(on)}, before any drive. What nobody looked at today is not in order: look, then read the answer
        again. <A to={pathOf(here, '/sheet')}>Print it</A>
      </p>
      {!walk && (
        <p>
          <a href="#walk">Make the walk round of today</a>: ten looks, ten minutes.
        </p>
      )}
      <FaultSummary faults={given.faults} />
      <AnswerShown here={here} part={(id, words) => <A to={`/parts/${id}`}>{words}</A>} />
      <section aria-labelledby="walk">
        <h2 id="walk">Walk round of today</h2>
        {walk ? (
          <>
            <p>Made by {walk.by}. It counts for this day only.</p>
            <Post to={pathOf(here, '/take-back')} class="inline">
              <button class="link">Take it back</button>
            </Post>
          </>
        ) : (
          <p>Ten looks, ten minutes, nobody has made it today.</p>
        )}
        <WalkCautions />
        <details open={!walk || given.faults.length > 0}>
          <summary>{walk ? 'Make it anew' : 'Make it'}</summary>
          <Post to={pathOf(here)} class="stacked">
            <WalkFields given={given.walk} faults={given.faults} by={person.name} />
            <button class="big">Keep it, and show the answer</button>
          </Post>
        </details>
      </section>
      <Lent here={here} given={given} links={links} />
    </>
  );
};

const LIVES: Readonly<Record<keyof typeof LINK_LIVES, string>> = {
  day: 'one day',
  days: 'three days',
  weeks: 'two weeks',
};

/** Somebody at the car without an account: a link that shows this page alone, and ends. */
const Lent = ({ here, given, links }: { here: RoadCheckHere; given: Given; links: readonly GuestLinkRow[] }) => (
  <section aria-labelledby="lend">
    <h2 id="lend">For a helper without an account</h2>
    <p class="hint">
      Who has the link sees this car’s road check and can make the walk round, and nothing else. It ends by itself.
    </p>
    {given.lent && (
      <p class="note">
        Send this address; it is shown this once: <br />
        <a href={given.lent} class="address">
          {given.lent}
        </a>
      </p>
    )}
    <Post to={pathOf(here, '/links')} class="stacked">
      <label>
        Who it is for
        <input name="guest" value={given.guest} autocomplete="off" {...faultsOf(given.faults, 'guest')} />
      </label>
      <Faults faults={given.faults} field="guest" />
      <label>
        How long
        <select name="life">
          {Object.entries(LIVES).map(([life, words]) => (
            <option value={life}>{words}</option>
          ))}
        </select>
      </label>
      <button class="quiet">Make a link</button>
    </Post>
    {links.length > 0 && (
      <ul>
        {links.map(({ id, guest, endsAt }) => (
          <li>
            {guest}, until <Instant at={endsAt} />{' '}
            <Post to={pathOf(here, `/links/${id}/end`)} class="inline">
              <button class="link">
                End it now<span class="unseen">: the link of {guest}</span>
              </button>
            </Post>
          </li>
        ))}
      </ul>
    )}
  </section>
);
