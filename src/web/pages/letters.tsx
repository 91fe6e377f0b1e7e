/** Letters: what was written, where it stands on its way, and what the mail server said. */
import { sweepCollection } from '../../acts/sweep.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { findLetter, type LetterRow, lettersOf } from '../../store/letters.ts';
import { A, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { at, type Ctx } from '../visit.ts';

const STATES: Readonly<Record<LetterRow['state'], string>> = {
  waiting: 'waiting to be sent',
  sending: 'being sent',
  sent: 'sent',
  failed: 'given up',
};

export const letters = (c: Ctx) => {
  const { collection } = c.get('visit');
  const outcomes = (c.req.queries('outcome') ?? []).flatMap((word) => OUTCOMES.get(word) ?? []);
  return page(c, 'Letters', <Letters list={lettersOf(c.get('around').store, collection.id)} outcomes={outcomes} />);
};

/** Looks over the collection now and sends what is owed; the same as the daily sweep. */
export const writeLetters = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store, site, deliver } = c.get('around');
  const { letters: written, withoutAddress } = sweepCollection(store, visit.collection, {
    today: visit.on,
    now: visit.now,
    href: site.href,
    dryRun: false,
  });
  await deliver();
  const nobody = !visit.members.some((member) => member.letters);
  const outcome = [
    nobody && 'nobody',
    written.length > 0 && 'written',
    withoutAddress.length > 0 && 'no-address',
    !nobody && written.length + withoutAddress.length === 0 && 'nothing',
  ].filter(Boolean);
  return c.redirect(at(visit, `/letters?${outcome.map((word) => `outcome=${word}`).join('&')}`), 303);
};

const OUTCOMES: ReadonlyMap<string, string> = new Map([
  ['written', 'Written. How far it has come stands in the list.'],
  ['no-address', 'There is news for someone who has no address.'],
  ['nobody', 'Nobody gets letters, so nothing was looked for.'],
  ['nothing', 'Nothing new since the last letter, so none was written.'],
]);

const Letters = ({ list, outcomes }: { list: LetterRow[]; outcomes: string[] }) => {
  const { members, on, today } = useVisit();
  const readers = members.filter(({ letters, email }) => letters && email);
  return (
    <>
      <h1>Letters</h1>
      <p class="lede">
        Every morning the collection is looked over. Whoever gets letters hears once what newly wants a look, is due or
        is past; no news, no letter.
      </p>
      {outcomes.length > 0 && (
        <p class="understood" role="status">
          {outcomes.join(' ')}
        </p>
      )}
      {readers.length === 0 && (
        <p class="fault">
          Nobody gets letters: <A to="/collection">give a member an address</A>.
        </p>
      )}
      <Post to="/letters">
        <button>
          Look over the collection {on === today ? 'now' : `as on ${dayInWords(on)}`} and write what is owed
        </button>
      </Post>
      <ol class="letters">
        {list.map((letter) => (
          <li>
            <h2>
              <A to={`/letters/${letter.id}`}>{letter.subject}</A>
            </h2>
            <p>
              {letter.day}, to {letter.recipient}: {STATES[letter.state]}
              {letter.tries > 1 && ` after ${count(letter.tries, 'try').replace('trys', 'tries')}`}
              {letter.sentAt && ` at ${letter.sentAt.slice(0, 16).replace('T', ' ')} UTC`}.
            </p>
          </li>
        ))}
      </ol>
      {list.length === 0 && <p>No letter yet.</p>}
    </>
  );
};

export const letterPage = (c: Ctx) => {
  const found = findLetter(c.get('around').store, c.get('visit').collection.id, c.req.param('letterId') ?? '');
  if (!found) return notFound(c, 'letter');
  const { letter, attempts } = found;
  return page(
    c,
    letter.subject,
    <>
      <p class="crumb">
        <A to="/letters">Letters</A>
      </p>
      <h1>{letter.subject}</h1>
      <p>
        {letter.day}, to {letter.recipient}: {STATES[letter.state]}.{' '}
        <A to={`/letters/${letter.id}/html`}>As it looks in a mail program</A>
      </p>
      <ul>
        {attempts.map(({ at: when, ok, answer }) => (
          <li>
            {when.slice(0, 16).replace('T', ' ')} UTC, {ok ? 'taken' : 'not taken'}: {answer}
          </li>
        ))}
      </ul>
      <pre class="letter">{letter.text}</pre>
    </>,
  );
};

/** The HTML part alone; its inline styles are its own, so it gets a policy of its own. */
export const letterHtmlPage = (c: Ctx) => {
  const found = findLetter(c.get('around').store, c.get('visit').collection.id, c.req.param('letterId') ?? '');
  if (!found) return notFound(c, 'letter');
  return c.html(found.letter.html);
};
