/** Letters: what was written, where each stands on its way; looking over the collection by hand; a test. */
import { sweepCollection } from '../../acts/sweep.ts';
import { testLetter } from '../../acts/test-letter.ts';
import { dayInWords } from '../../dates/words.ts';
import { type LetterRow, lettersOf } from '../../store/letters.ts';
import { A, Instant, Post, page, useVisit } from '../layout.tsx';
import { at, type Ctx } from '../visit.ts';
import { DOORS_SAID, KINDS_SAID, stateInWords } from './words.ts';

export const letters = (c: Ctx) => {
  const { collection } = c.get('visit');
  const outcomes = (c.req.queries('outcome') ?? []).flatMap((word) => OUTCOMES.get(word) ?? []);
  return page(
    c,
    'Letters',
    <Letters
      list={lettersOf(c.get('around').store, collection.id)}
      outcomes={outcomes}
      hasMailServer={c.get('around').hasMailServer}
    />,
  );
};

/** Looks over the collection now and sends what is owed; the same as the daily sweep. */
export const writeLetters = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store, site, deliver, log } = c.get('around');
  const {
    letters: written,
    withoutAddress,
    refused,
    troubles,
  } = sweepCollection(store, visit.collection, {
    today: visit.on,
    now: visit.now,
    href: site.href,
    dryRun: false,
  });
  if (troubles.length > 0) log.error('sweep had trouble', { trouble: troubles.join('; ') });
  await deliver();
  const nobody = !visit.members.some((member) => member.letters);
  const outcome = [
    nobody && 'nobody',
    written.length > 0 && 'written',
    withoutAddress.length > 0 && 'no-address',
    refused.length > 0 && 'refused',
    troubles.length > 0 && 'trouble',
    !nobody && written.length + withoutAddress.length + refused.length === 0 && 'nothing',
  ].filter(Boolean);
  return c.redirect(at(visit, `/letters?${outcome.map((word) => `outcome=${word}`).join('&')}`), 303);
};

const OUTCOMES: ReadonlyMap<string, string> = new Map([
  ['written', 'Written. How far it has come stands in the list.'],
  ['no-address', 'There is news for someone who has no address.'],
  ['refused', 'There is news for someone whose address was refused: see the letter that was given up.'],
  ['trouble', 'Not every part could be reckoned: the server’s log and the Status page say which.'],
  ['nobody', 'Nobody gets letters, so nothing was looked for.'],
  ['nothing', 'Nothing new since the last letter, so none was written.'],
]);

/** Sends a test to whoever this browser acts for, and shows what the mail server said. */
export const sendTest = async (c: Ctx) => {
  const visit = c.get('visit');
  const { store, site, deliver } = c.get('around');
  const id = testLetter(store, visit.collection, visit.person, { today: visit.today, now: visit.now, href: site.href });
  if (!id) return c.redirect(at(visit, '/letters?outcome=no-address'), 303);
  await deliver();
  return c.redirect(at(visit, `/letters/${id}`), 303);
};

/** Where no mail server is named: a letter that is “sent” lies in a file. */
export const FilesOnly = () => (
  <p class="fault">
    No mail server is named (SMTP_URL): letters by mail are written as files into the folder “mail” of the data, and
    none leaves this machine.
  </p>
);

interface Listed {
  list: LetterRow[];
  outcomes: string[];
  hasMailServer: boolean;
}

const Letters = ({ list, outcomes, hasMailServer }: Listed) => {
  const { members, on, today, person } = useVisit();
  const readers = members.filter((member) => member.letters && member.stoppedOn === null && member.email);
  return (
    <>
      <h1>Letters</h1>
      <p class="lede">
        Every morning the collection is looked over. Whoever gets letters hears once what newly wants a look, is due or
        is past; what can hurt somebody is told again until it is answered. No news, no letter.
      </p>
      {outcomes.length > 0 && (
        <p class="understood" role="status">
          {outcomes.join(' ')}
        </p>
      )}
      {!hasMailServer && <FilesOnly />}
      {members
        .filter(({ stoppedOn }) => stoppedOn !== null)
        .map(({ id, name }) => (
          <p class="fault">
            {name} stopped all letters by the link in one. <A to={`/members/${id}/letters`}>Start them again</A>
          </p>
        ))}
      {readers.length === 0 && members.every(({ stoppedOn }) => stoppedOn === null) && (
        <p class="fault">
          Nobody gets letters by mail: <A to="/collection">give a member an address</A>.
        </p>
      )}
      <Post to="/letters">
        <button>
          Look over the collection {on === today ? 'now' : `as on ${dayInWords(on)}`} and write what is owed
        </button>
      </Post>
      <Post to="/letters/test" class="row">
        {person.stoppedOn === null && <button class="quiet">Send a test to {person.email ?? person.name}</button>}
        <A to={`/members/${person.id}/letters`}>Which letters you get, and when</A>
      </Post>
      <ol class="letters">
        {list.map((letter) => (
          <li class={letter.state === 'failed' && letter.seenAt === null ? 'given-up' : undefined}>
            <h2>
              <A to={`/letters/${letter.id}`}>{letter.subject}</A>
            </h2>
            <p>
              {letter.day}, {KINDS_SAID[letter.kind]} by {DOORS_SAID[letter.door]} to {letter.recipient}:{' '}
              {stateInWords(letter)}
              {letter.tries > 1 && ` after ${letter.tries} tries`}
              {letter.sentAt && (
                <>
                  {' '}
                  on <Instant at={letter.sentAt} />
                </>
              )}
              .
            </p>
          </li>
        ))}
      </ol>
      {list.length === 0 && <p>No letter yet.</p>}
    </>
  );
};
