/** One part: where it stands and why, what is known and how surely, how to test it, and what to do with it. */
import { kindOf } from '../../acts/parts.ts';
import { takesLooks } from '../../catalogue/kind.ts';
import { dayInWords } from '../../dates/words.ts';
import { assess, type Finding } from '../../findings/assess.ts';
import { CLOCK_WORDS, explain } from '../../findings/explain.ts';
import { rulingOf } from '../../findings/ruling.ts';
import type { ClaimRow, PartWithClaims } from '../../store/cars.ts';
import { overridesOf } from '../../store/overrides.ts';
import { Cautions } from '../cautions.tsx';
import { partInPath } from '../find-part.ts';
import { A, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { Rule } from '../rule.tsx';
import { Sources } from '../sources.tsx';
import { StandingWord } from '../standing.tsx';
import type { Ctx } from '../visit.ts';
import { nameOf } from './part-name.ts';
import { Tests } from './tests.tsx';

export const partPage = (c: Ctx) => {
  const at = partInPath(c);
  if (!at) return notFound(c, 'part');
  const { part, found } = at;
  const { collection, on } = c.get('visit');
  const kind = kindOf(part);
  const ruling = rulingOf(kind, overridesOf(c.get('around').store, collection.id), found.car.id);
  const finding = assess(part, kind, found.facts, ruling, on);
  return page(c, nameOf(part), <Part part={part} finding={finding} carName={found.car.name} />);
};

const Part = ({ part, finding, carName }: { part: PartWithClaims; finding: Finding; carName: string }) => {
  const { kind } = finding;
  const words = explain(finding);
  return (
    <>
      <p class="crumb">
        <A to={`/cars/${part.carId}#${kind.system}`}>{carName}</A>
      </p>
      <h1>
        {nameOf(part)} {!part.closedOn && <StandingWord standing={finding.standing} />}
      </h1>
      {part.closedOn ? (
        <p class="note">
          Closed on {dayInWords(part.closedOn)}. {part.closedWhy}
        </p>
      ) : (
        <>
          <p class="lede">{words.age}.</p>
          <Rule finding={finding} />
          <p class="todo">
            <strong>Do:</strong> {words.todo}
          </p>
          <Actions part={part} />
          <h2>Why</h2>
          {words.reasons.map(({ text, sources }) => (
            <>
              <p>{text}</p>
              <Sources keys={sources} />
            </>
          ))}
          {words.doubts.map((doubt) => (
            <p class="doubt">Doubt: {doubt}</p>
          ))}
          <p>
            <A to={`/practice/${kind.key}?car=${part.carId}`}>Set another interval for this car</A>
          </p>
        </>
      )}
      {part.note && <p class="note">{part.note}</p>}
      <Claims part={part} />
      <h2>If ignored</h2>
      <p>{kind.ignored}</p>
      <h2>How to test it</h2>
      <Tests kind={kind} />
      <Cautions keys={kind.cautions} />
      {!part.closedOn && (
        <details>
          <summary>This car has none</summary>
          <Post to={`/parts/${part.id}/retire`} class="row">
            <label>
              Why <input name="why" placeholder="Not fitted to this car" />
            </label>
            <button>Take it off the list</button>
          </Post>
        </details>
      )}
    </>
  );
};

const Actions = ({ part }: { part: PartWithClaims }) => (
  <div class="actions">
    <A to={`/parts/${part.id}/date`} class="button">
      Date it
    </A>
    <A to={`/parts/${part.id}/renew`} class="button">
      Renewed
    </A>
    {takesLooks(kindOf(part)) && (
      <Post to={`/parts/${part.id}/looked`}>
        <button>Looked at it today</button>
      </Post>
    )}
  </div>
);

const Claims = ({ part }: { part: PartWithClaims }) => (
  <section aria-labelledby="known">
    <h2 id="known">What is known</h2>
    {part.claims.length === 0 && <p>Nothing yet.</p>}
    <ul class="claims">
      {part.claims.map((claim) => (
        <li>
          <strong>{CLOCK_WORDS[claim.clock]}</strong>: {claimInWords(claim)}{' '}
          <span class="evidence">{claim.evidence}</span>
          {claim.km !== null && ` at ${claim.km.toLocaleString('en-US')} km`}
          {claim.note && `. ${claim.note}`} <small>recorded {claim.recordedOn}</small>{' '}
          {!part.closedOn && (
            <Post to={`/parts/${part.id}/claims/${claim.id}/withdraw`} class="inline">
              <button class="link">Take back: it was a slip</button>
            </Post>
          )}
        </li>
      ))}
    </ul>
    {part.replaces && (
      <p>
        <A to={`/parts/${part.replaces}`}>The part before this one</A>
      </p>
    )}
  </section>
);

const claimInWords = ({ said, typed, edtf }: ClaimRow): string => {
  if (said !== 'date') return said === 'not looked' ? 'not looked yet' : said;
  return edtf === typed || edtf === null ? typed : `“${typed}”, understood as ${edtf}`;
};
