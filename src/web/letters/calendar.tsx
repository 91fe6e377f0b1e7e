/** A person’s calendar of the collection: a secret address for calendar programs, shown once and changed at will. */
import { SCOPES, type Scope } from '../../notices/calendar.ts';
import type { FeedRow } from '../../store/feeds.ts';
import type { Member } from '../../store/people.ts';
import { Instant, Post } from '../layout.tsx';

const SCOPE_WORDS: Readonly<Record<Scope, string>> = {
  limits: 'days on which parts begin to be due or past',
  steps: 'steps of lay-ups and returns, parking and return days',
  rounds: 'monthly rounds',
};

export const CalendarPart = ({
  member,
  feed,
  address,
}: {
  member: Member;
  feed: FeedRow | undefined;
  /** The address just made; it is shown this once. */
  address: string | null;
}) => (
  <section aria-labelledby="calendar">
    <h2 id="calendar">Calendar</h2>
    <p>
      Calendar programs can read the days of this collection by an address of {member.name}’s own. Whoever has it can
      read them, too, and nothing else.
    </p>
    {address && (
      <p class="understood" role="status">
        Give this to the calendar program now; it is not shown again: <code class="long">{address}</code>
      </p>
    )}
    <Post to={`/members/${member.id}/calendar#calendar`} class="stacked">
      <Scopes feed={feed} />
      {feed && (
        <button name="keep" value="yes">
          Save what stands in it
        </button>
      )}
      <button class={feed ? 'quiet' : undefined}>
        {feed ? 'Make another address; the old one ends' : 'Make the address'}
      </button>
    </Post>
    {feed && (
      <div class="row">
        <p>
          Open since <Instant at={feed.madeAt} />.
        </p>
        <Post to={`/members/${member.id}/calendar/end`}>
          <button class="quiet">End the calendar</button>
        </Post>
      </div>
    )}
  </section>
);

const Scopes = ({ feed }: { feed: FeedRow | undefined }) => (
  <fieldset class="targets">
    <legend>What stands in it</legend>
    {SCOPES.map((scope) => (
      <label>
        <input type="checkbox" name="scopes" value={scope} checked={feed?.scopes.includes(scope) ?? true} />{' '}
        <span>{SCOPE_WORDS[scope]}</span>
      </label>
    ))}
  </fieldset>
);
