/** One part: where it stands and why, what is known and how surely, how to test it, and what to do with it. */
import type { Fault } from '../../acts/fault.ts';
import { kindOf } from '../../acts/parts.ts';
import { takesLooks } from '../../catalogue/kind.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Finding } from '../../findings/assess.ts';
import { findingsOf } from '../../findings/car.ts';
import { CLOCK_WORDS, explain } from '../../findings/explain.ts';
import { ANSWERS_SAID } from '../../mail/letter.tsx';
import { answersTo } from '../../store/answers.ts';
import type { CarWithParts, ClaimRow, PartOnRecord } from '../../store/cars.ts';
import { overridesOf } from '../../store/overrides.ts';
import { Cautions } from '../cautions.tsx';
import { partInPath } from '../find-part.ts';
import type { DetailsForm, ReadingsForm } from '../forms.ts';
import { A, FaultSummary, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { Rule } from '../rule.tsx';
import { Sources } from '../sources.tsx';
import { StandingWord } from '../standing.tsx';
import type { Ctx } from '../visit.ts';
import { Details } from './details.tsx';
import { OutlookSection } from './outlook.tsx';
import { nameOf } from './part-name.ts';
import { Readings } from './readings.tsx';
import { Tests } from './tests.tsx';

export const partPage = (c: Ctx) => {
  const here = partInPath(c);
  return here ? showPart(c, here.part, here.found) : notFound(c, 'part');
};

/** What was typed into one of the part’s forms and refused. */
interface Refused {
  faults: readonly Fault[];
  given?: Partial<ReadingsForm>;
  details?: DetailsForm;
}

export const showPart = (c: Ctx, part: PartOnRecord, found: CarWithParts, refused: Refused = { faults: [] }) => {
  const { collection, on } = c.get('visit');
  const overrides = overridesOf(c.get('around').store, collection.id);
  // Its neighbors count: the wiring’s drain is the battery’s.
  const parts = part.closedOn ? [...found.parts, part] : found.parts;
  const finding = findingsOf(found.facts, parts, overrides, on).find((one) => one.part.id === part.id);
  if (!finding) throw new Error(`No kind ${part.kind} in the catalogue`);
  return page(
    c,
    nameOf(part),
    <Part
      part={part}
      successor={found.parts.find((one) => one.replaces === part.id || isSamePlace(one, part))}
      finding={finding}
      carName={found.car.name}
      answer={lastAnswer(c, part.id)}
      refused={refused}
    />,
    refused.faults.length > 0 ? 422 : 200,
  );
};

const isSamePlace = (one: PartOnRecord, other: PartOnRecord): boolean =>
  one.kind === other.kind && one.position === other.position;

interface Shown {
  part: PartOnRecord;
  /** What took its place, or stands there by now. */
  successor: PartOnRecord | undefined;
  finding: Finding;
  carName: string;
  /** What was last answered to a letter about it, in words. */
  answer: string | null;
  refused: Refused;
}

const lastAnswer = (c: Ctx, partId: string): string | null => {
  const { collection, members } = c.get('visit');
  const last = answersTo(c.get('around').store, collection.id, partId).at(-1);
  if (!last) return null;
  const who = members.find(({ id }) => id === last.personId)?.name ?? 'somebody';
  const until = last.until ? ` until ${dayInWords(last.until)}` : '';
  return `${ANSWERS_SAID[last.word]}${until}: answered by ${who} on ${dayInWords(last.answeredOn)}.`;
};

const Part = ({ part, successor, finding, carName, answer, refused }: Shown) => {
  const { kind } = finding;
  const { faults, given = {}, details = null } = refused;
  const words = explain(finding);
  return (
    <>
      <p class="crumb">
        <A to={`/cars/${part.carId}#${kind.system}`}>{carName}</A>
      </p>
      <h1>
        {nameOf(part)} {!part.closedOn && <StandingWord standing={finding.standing} />}
      </h1>
      <FaultSummary
        faults={faults}
        kept="Nothing was saved yet. What you typed in that form stands in it; other forms of this page are as they were."
      />
      {part.closedOn ? (
        <>
          <p class="note">
            Closed on {dayInWords(part.closedOn)}. {part.closedWhy}
            {successor && (
              <>
                {' '}
                <A to={`/parts/${successor.id}`}>What took its place</A>
              </>
            )}
          </p>
          {!successor && (
            <Post to={`/parts/${part.id}/reopen`}>
              <button class="quiet">It is on this car after all</button>
            </Post>
          )}
        </>
      ) : (
        <>
          <p class="lede">{words.age}.</p>
          {answer && <p class="note">{answer}</p>}
          <Rule finding={finding} />
          <p class="todo">
            <strong>Do:</strong> {words.todo}
          </p>
          <Actions part={part} />
          <OutlookSection outlook={words.outlook} on={finding.on} />
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
      <Readings part={part} finding={finding} given={given} faults={faults} />
      <Details part={part} kind={kind} given={details} faults={faults} />
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

const Actions = ({ part }: { part: PartOnRecord }) => (
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

const Claims = ({ part }: { part: PartOnRecord }) => (
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
