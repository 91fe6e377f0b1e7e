/** One letter: its state, every try with what the other side said, its text. */
import { copiesThere, findLetter, type LetterRow, retryLetter, seeLetter } from '../../store/letters.ts';
import { A, Instant, Post, page } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { at, type Ctx } from '../visit.ts';
import { DOORS_SAID, KINDS_SAID, stateInWords } from './words.ts';

const found = (c: Ctx) =>
  findLetter(c.get('around').store, c.get('visit').collection.id, c.req.param('letterId') ?? '');

export const letterPage = (c: Ctx) => {
  const here = found(c);
  if (!here) return notFound(c, 'letter');
  const { letter, attempts } = here;
  const copies = copiesThere(c.get('around').store, letter);
  return page(
    c,
    letter.subject,
    <>
      <p class="crumb">
        <A to="/letters">Letters</A>
      </p>
      <h1>{letter.subject}</h1>
      <p>
        {letter.day}, {KINDS_SAID[letter.kind]} by {DOORS_SAID[letter.door]} to {letter.recipient}:{' '}
        {stateInWords(letter)}. <A to={`/letters/${letter.id}/html`}>As it looks in a mail program</A>
      </p>
      <Held letter={letter} />
      {attempts.length === 0 && <p class="hint">Not tried yet.</p>}
      <ul>
        {attempts.map(({ at: when, ok, answer }) => (
          <li>
            <Instant at={when} />, {ok ? 'taken' : 'not taken'}: {answer}
          </li>
        ))}
      </ul>
      {letter.state === 'waiting' && (
        <p>
          Next try from <Instant at={letter.nextTryAt} /> on.
        </p>
      )}
      <p class="hint">Message-ID {letter.messageId}: a message with the same one is the same letter.</p>
      {copies.length > 0 && (
        <>
          <h2>Copies by other doors</h2>
          <ul>
            {copies.map((copy) => (
              <li>
                <A to={`/letters/${copy.id}`}>{DOORS_SAID[copy.door]}</A> to {copy.recipient}: {stateInWords(copy)}
              </li>
            ))}
          </ul>
        </>
      )}
      <pre class="letter">{letter.text}</pre>
    </>,
  );
};

/** What can be done with a letter that was given up. */
const Held = ({ letter }: { letter: LetterRow }) =>
  letter.state === 'failed' ? (
    <div class="row">
      <Post to={`/letters/${letter.id}/retry`}>
        <button>Try again from the start</button>
      </Post>
      {letter.seenAt === null && (
        <Post to={`/letters/${letter.id}/seen`}>
          <button class="quiet">Seen: take the line off every page</button>
        </Post>
      )}
      {letter.kind !== 'test' && letter.copyOf === null && (
        <p class="hint">What it said counts as not told. {comesAgain(letter)}</p>
      )}
    </div>
  ) : null;

const comesAgain = ({ why, seenAt }: LetterRow): string =>
  why === 'refused' && seenAt === null
    ? 'It comes again in a new letter once this is seen, or the address is changed.'
    : 'What of it is still owed comes in the next letter.';

export const seenLetter = (c: Ctx) => {
  const here = found(c);
  if (!here) return notFound(c, 'letter');
  const visit = c.get('visit');
  seeLetter(c.get('around').store, visit.collection.id, here.letter.id, visit.now);
  return c.redirect(at(visit, `/letters/${here.letter.id}`), 303);
};

export const tryLetterAgain = async (c: Ctx) => {
  const here = found(c);
  if (!here) return notFound(c, 'letter');
  const visit = c.get('visit');
  const { store, deliver } = c.get('around');
  retryLetter(store, visit.collection.id, here.letter.id, visit.now);
  await deliver();
  return c.redirect(at(visit, `/letters/${here.letter.id}`), 303);
};

/** The HTML part alone; its inline styles are its own, so it gets a policy of its own. */
export const letterHtmlPage = (c: Ctx) => {
  const here = found(c);
  if (!here) return notFound(c, 'letter');
  return c.html(here.letter.html);
};
