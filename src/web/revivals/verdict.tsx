/** The verdict on one page: what is grave, what must be renewed, what is likely, what nobody knows, and the money. */
import { takeOn } from '../../acts/begin-revival.ts';
import { isOver, type RevivalHere } from '../../acts/revivals.ts';
import { allTraits } from '../../catalogue/traits.ts';
import { type Verdict, verdictOf } from '../../revival/verdict.ts';
import { A, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { actingIn, at, type Ctx } from '../visit.ts';
import { pathOf, revivalInPath } from './in-path.ts';
import { MoneyTable, sleptInWords } from './words.tsx';

export const verdictPage = (c: Ctx) => {
  const here = revivalInPath(c);
  return here ? page(c, `Verdict on ${here.found.car.name}`, <VerdictShown here={here} />) : notFound(c, 'return');
};

export const takeOnPage = (c: Ctx) => {
  const here = revivalInPath(c);
  if (!here) return notFound(c, 'return');
  takeOn(c.get('around').store, actingIn(c.get('visit')), here);
  return c.redirect(at(c.get('visit'), pathOf(here)), 303);
};

const VerdictShown = ({ here }: { here: RevivalHere }) => {
  const { found, plan, record } = here;
  const { on } = useVisit();
  const verdict = verdictOf(plan, allTraits(found.car.traits));
  const over = isOver(record, on);
  return (
    <>
      <p class="crumb">
        <A to={pathOf(here)}>Return of {found.car.name}</A>
      </p>
      <h1>Verdict on {found.car.name}</h1>
      <p class="lede">{sleptInWords(plan)}</p>
      <p>
        <A to={pathOf(here, '/sheets/verdict')}>Print it</A>
        {!over && (
          <>
            {' · '}
            <A to={pathOf(here, '/survey')}>Look again</A>
          </>
        )}
      </p>
      <VerdictLists verdict={verdict} here={here} />
      <section aria-labelledby="money">
        <h2 id="money">What it may cost</h2>
        <MoneyTable here={here} />
      </section>
      {!over && (
        <p class="call">
          {found.car.ours ? (
            <A to={pathOf(here)} class="button">
              To the plan, stage by stage
            </A>
          ) : (
            <>
              <Post to={pathOf(here, '/take-on')} class="inline">
                <button>It is ours now: to the plan</button>
              </Post>{' '}
              <A to={pathOf(here, '/end')} class="button quiet">
                Let it go
              </A>
            </>
          )}
        </p>
      )}
    </>
  );
};

const VerdictLists = ({ verdict, here }: { verdict: Verdict; here: RevivalHere }) => {
  const { grave, must, likely, unseen, undated, doubts } = verdict;
  return (
    <>
      <section class="verdict" aria-labelledby="grave">
        <h2 id="grave">Grave, as seen</h2>
        {grave.length === 0 ? (
          <p>Nothing grave was seen in what was answered. What nobody looked at is below.</p>
        ) : (
          <ul>
            {grave.map(({ name, words }) => (
              <li>
                <strong>{name}:</strong> {words}
              </li>
            ))}
          </ul>
        )}
      </section>
      <section class="verdict" aria-labelledby="must">
        <h2 id="must">Renewed or taken apart, whatever the odometer says</h2>
        {must.length === 0 ? (
          <p>Nothing by its age or its sleep alone, as far as dates tell.</p>
        ) : (
          <ul>
            {must.map((step) => (
              <li>
                <A to={pathOf(here, `/steps/${step.key}`)}>{step.way.title}</A>{' '}
                <small>({step.because.slice(0, 2).join('; ')})</small>
              </li>
            ))}
          </ul>
        )}
      </section>
      <section class="verdict" aria-labelledby="likely">
        <h2 id="likely">Likely, on such a car</h2>
        {likely.length === 0 ? (
          <p>Nothing is found more often than not after so short a sleep.</p>
        ) : (
          <ul>
            {likely.map(({ finding, odds }) => (
              <li>
                {finding} <small>({odds})</small>
              </li>
            ))}
          </ul>
        )}
      </section>
      <section class="verdict" aria-labelledby="unknown">
        <h2 id="unknown">Not known</h2>
        <ul>
          {doubts.map((doubt) => (
            <li>{doubt}</li>
          ))}
          {unseen.length > 0 && <li>Not looked yet: {unseen.map(({ name }) => name.toLowerCase()).join(', ')}.</li>}
          {undated.length > 0 && (
            <li>No date clears: {[...new Set(undated.map(({ kind }) => kind.name))].join(', ')}.</li>
          )}
          <li>Whatever nobody can see before it is apart: bores, bearings, insides of hoses and cylinders.</li>
        </ul>
      </section>
    </>
  );
};
