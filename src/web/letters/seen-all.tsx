/** All of a letter answered as seen, by a page that asks first. */
import { letterHere, seeAll } from '../../acts/answer-letter.ts';
import { todayIn } from '../../clock.ts';
import { count, dayInWords } from '../../dates/words.ts';
import { barePage, linkEnded } from '../bare.tsx';
import { nameOf } from '../pages/part-name.ts';
import type { Ctx } from '../visit.ts';

const letterIn = (c: Ctx) => {
  const { store, now } = c.get('around');
  const { letterId = '', signature = '' } = c.req.param() as Record<string, string>;
  const at = now();
  const here = letterHere(store, { letterId, signature }, (timeZone) => todayIn(timeZone, at));
  return here && { here, today: todayIn(here.collection.timeZone, at) };
};

export const seenAllPage = (c: Ctx) => {
  const found = letterIn(c);
  if (!found) return noSuch(c);
  const { letter, member, parts } = found.here;
  return barePage(
    c,
    'All of it seen',
    <>
      <h1>All of it seen</h1>
      <p class="lede">
        {member.name}, the letter of {dayInWords(letter.day)} speaks of {count(parts.length, 'part')} still on the list.
        Answered as seen, none of them is told to you again until it gets worse; what waits for parts comes back on its
        day. Their standings stay as they are: nothing is in order by this.
      </p>
      <form method="post" action={c.req.path}>
        <button>I have seen all of it</button>
      </form>
      <ul>
        {parts.map((part) => (
          <li>{nameOf(part)}</li>
        ))}
      </ul>
    </>,
  );
};

export const seenAll = (c: Ctx) => {
  const found = letterIn(c);
  if (!found) return noSuch(c);
  seeAll(c.get('around').store, found.here, found.today);
  return barePage(
    c,
    'Seen',
    <>
      <h1>Noted</h1>
      <p>
        {count(found.here.parts.length, 'part')} of the letter of {dayInWords(found.here.letter.day)} answered as seen
        by {found.here.member.name}. What the cars need stands on their pages as before.
      </p>
    </>,
  );
};

const noSuch = (c: Ctx) => linkEnded(c, 'A letter can be answered for about a year.');
