/** Stopping all letters to one person: by a page that asks, or by the one click of RFC 8058, which asks nothing. */
import { isSigned } from '../../acts/signed-links.ts';
import { todayIn } from '../../clock.ts';
import { changeMember, findCollection, membersOf } from '../../store/people.ts';
import { barePage } from '../bare.tsx';
import type { Ctx } from '../visit.ts';

const whoIn = (c: Ctx) => {
  const { store } = c.get('around');
  const { collectionId = '', personId = '', signature = '' } = c.req.param() as Record<string, string>;
  if (!isSigned(store, 'stop', [collectionId, personId], signature)) return undefined;
  const collection = findCollection(store, collectionId);
  const member = collection && membersOf(store, collectionId).find(({ id }) => id === personId);
  return collection && member && { collection, member };
};

export const stopPage = (c: Ctx) => {
  const who = whoIn(c);
  if (!who) return noSuch(c);
  const { collection, member } = who;
  return barePage(
    c,
    'Stop the letters',
    member.stoppedOn !== null ? (
      <Stopped collection={collection.name} wishes={wishesOf(c, member.id)} />
    ) : (
      <>
        <h1>Stop the letters</h1>
        <p>
          {member.name}, you get letters of “{collection.name}”. After this no more come to you: no warnings, no plans,
          no rounds. Fewer letters, or a quiet season, can be <a href={wishesOf(c, member.id)}>chosen instead</a>.
        </p>
        <form method="post" action={c.req.path}>
          <button>Stop all letters to me</button>
        </form>
      </>
    ),
  );
};

export const stopLetters = (c: Ctx) => {
  const who = whoIn(c);
  if (!who) return noSuch(c);
  const { store, now } = c.get('around');
  const { collection, member } = who;
  if (member.stoppedOn === null)
    changeMember(store, collection.id, member.id, {
      letters: false,
      stoppedOn: todayIn(collection.timeZone, now()),
    });
  return barePage(c, 'Letters stopped', <Stopped collection={collection.name} wishes={wishesOf(c, member.id)} />);
};

/** The page on which letters are chosen, and started again. */
const wishesOf = (c: Ctx, personId: string): string => `${c.get('around').site.base}/members/${personId}/letters`;

const Stopped = ({ collection, wishes }: { collection: string; wishes: string }) => (
  <>
    <h1>No more letters</h1>
    <p>
      Letters of “{collection}” to you are stopped. What ages goes on ageing: the pages still tell. Whoever looks after
      the collection sees that you stopped them. They can be <a href={wishes}>started again</a>.
    </p>
  </>
);

const noSuch = (c: Ctx) =>
  barePage(
    c,
    'No such link',
    <>
      <h1>This link was never ours, or the person is gone</h1>
      <p>Nothing was changed.</p>
    </>,
    404,
  );
