/** The verdict on one page. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { allTraits } from '../../../catalogue/traits.ts';
import { hoursInWords, spanInWords } from '../../../money/words.ts';
import { verdictOf } from '../../../revival/verdict.ts';

/** Lines of each list that fit the page; the rest is told by number. */
const ROOM = { grave: 8, must: 26, likely: 16 } as const;

export const VerdictSheet = ({ here }: { here: RevivalHere }) => {
  const { plan, rates, found } = here;
  const { grave, must, likely, unseen, undated, doubts } = verdictOf(plan, allTraits(found.car.traits));
  const { money } = plan;
  return (
    <>
      <h2>Grave, as seen</h2>
      <Lines
        list={grave.map(({ name, words }) => `${name}: ${words}`)}
        room={ROOM.grave}
        none="Nothing grave in what was answered; what nobody looked at is below."
      />
      <h2>Renewed or taken apart, whatever the odometer says</h2>
      <Lines list={must.map(({ way }) => way.title)} room={ROOM.must} none="Nothing by age or sleep alone." />
      <h2>Likely, on such a car</h2>
      <Lines
        list={likely.map(({ finding, odds }) => `${finding} (${odds})`)}
        room={ROOM.likely}
        none="Nothing more often than not."
      />
      <h2>Not known</h2>
      <p>
        {doubts.join(' ')}{' '}
        {unseen.length > 0 && `Not looked yet: ${unseen.map(({ name }) => name.toLowerCase()).join(', ')}. `}
        {undated.length > 0 && `Safety parts no date clears: ${undated.length}. `}
        Bores, bearings, insides of hoses and cylinders: nobody sees them before they are apart.
      </p>
      <h2>What it may cost</h2>
      <p>
        Own hands {spanInWords(money.open.own, rates.currency)} and {hoursInWords(money.open.ownHours)}; a workshop{' '}
        {spanInWords(money.open.workshop, rates.currency)} ({hoursInWords(money.open.hours)}). Kept for what shows
        itself: {spanInWords({ low: money.reserve.own.low, high: money.reserve.workshop.high }, rates.currency)}. From
        memory of common practice, without body and engine rebuilding; never a quote.
      </p>
    </>
  );
};

const Lines = ({ list, room, none }: { list: readonly string[]; room: number; none: string }) =>
  list.length === 0 ? (
    <p>{none}</p>
  ) : (
    <ul class="two">
      {list.slice(0, room).map((line) => (
        <li>{line}</li>
      ))}
      {list.length > room && <li>and {list.length - room} more, on its page</li>}
    </ul>
  );
