/** The verdict on one page: the gravest first, and what finds no room told by number. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { allTraits } from '../../../catalogue/traits.ts';
import { hoursInWords, spanInWords } from '../../../money/words.ts';
import { type LookKey, lookOf } from '../../../revival/looks.ts';
import { STAGE_KEYS, STAGES, type Stage } from '../../../revival/stages.ts';
import { verdictOf } from '../../../revival/verdict.ts';
import { Blank, Box } from '../sheet.tsx';
import { Stopped } from './stopped.tsx';

/**
 * Lines that fit the smaller paper under the longest name. What is grave takes its share first, and leaves room for
 * every step of safety there is; what is only likely takes the rest.
 */
const ROOM = { all: 38, grave: 10, likely: 4, undated: 6 } as const;

export const VerdictSheet = ({ here, prices }: { here: RevivalHere; prices: boolean }) => {
  const { plan, rates, found } = here;
  const { grave, must, likely, unseen, undated, doubts } = verdictOf(plan, allTraits(found.car.traits));
  const { money } = plan;
  const rooms = roomsFor(grave.length, must.length);
  const kinds = [...new Set(undated.map(({ kind }) => kind.name))];
  return (
    <>
      <Stopped plan={plan} />
      <h2>Grave, as seen</h2>
      <Lines
        list={byWeight(grave).map(({ name, words }) => `${name}: ${words}`)}
        room={rooms.grave}
        none="Nothing grave in what was answered; what nobody looked at is below."
      />
      <h2>Renewed or taken apart, whatever the odometer says</h2>
      <Lines
        list={must
          .toSorted((a, b) => Number(b.safety === true) - Number(a.safety === true))
          .map(({ way, safety }) => `${way.title}${safety ? ' (safety)' : ''}`)}
        room={rooms.must}
        none="Nothing by its age or its sleep alone, as far as dates tell."
      />
      <h2>Likely, on such a car</h2>
      <Lines
        list={likely.map(({ finding, odds }) => `${finding} (${odds})`)}
        room={rooms.likely}
        none="Nothing is found more often than not after so short a sleep."
      />
      <h2>Not known</h2>
      <p>
        {doubts.join(' ')} {unseen.length > 0 && `Not looked yet: ${unseen.map(({ name }) => bare(name)).join('; ')}. `}
        {kinds.length > 0 && `No date clears: ${shortened(kinds, ROOM.undated)}. `}
        Bores, bearings, insides of hoses and cylinders: nobody sees them before they are apart.
      </p>
      {prices && (
        <>
          <h2>What it may cost</h2>
          <p>
            Own hands {spanInWords(money.open.own, rates.currency)} and {hoursInWords(money.open.ownHours)}; a workshop{' '}
            {spanInWords(money.open.workshop, rates.currency)} and {hoursInWords(money.open.hours)}. Kept for what shows
            itself: {spanInWords({ low: money.reserve.own.low, high: money.reserve.workshop.high }, rates.currency)}.
            From memory of common practice, without body and engine rebuilding; never a quote.
          </p>
        </>
      )}
      <p class="signature">
        <span>
          <Box /> go on
        </span>
        <span>
          <Box /> look again at <Blank />
        </span>
        <span>
          <Box /> leave it
        </span>
        <span>
          Name <Blank /> Day <Blank />
        </span>
      </p>
    </>
  );
};

const roomsFor = (grave: number, must: number): { grave: number; must: number; likely: number } => {
  const first = Math.min(grave, ROOM.grave);
  const second = Math.min(must, ROOM.all - ROOM.likely - first);
  return { grave: first, must: second, likely: ROOM.all - first - second };
};

/** What stops a return by itself, then what a gate of safety rests on, then the rest. */
const byWeight = <T extends { name: string }>(grave: readonly T[]): T[] => {
  const stops: readonly LookKey[] = ['structure', 'title', 'turns'];
  const gates = STAGE_KEYS.map((key): Stage => STAGES[key]).filter(({ safety }) => safety);
  const safety = gates.flatMap(({ opens }) => opens.map(({ look }) => look));
  const names = [stops, safety].map((looks) => looks.map((look) => lookOf(look).name));
  const rank = ({ name }: T): number => {
    const at = names.findIndex((list) => list.includes(name));
    return at < 0 ? names.length : at;
  };
  return grave.toSorted((a, b) => rank(a) - rank(b));
};

/** A name within a sentence. */
const bare = (name: string): string => name.toLowerCase().replace(/\?$/, '');

const shortened = (list: readonly string[], room: number): string =>
  list.length <= room ? list.join('; ') : `${list.slice(0, room).join('; ')} and ${list.length - room} more`;

const Lines = ({ list, room, none }: { list: readonly string[]; room: number; none: string }) =>
  list.length === 0 ? (
    <p>{none}</p>
  ) : (
    <ul class="two">
      {list.slice(0, room).map((line) => (
        <li>{line}</li>
      ))}
      {list.length > room && (
        <li>
          <b>and {list.length - room} more, see the page</b>
        </li>
      )}
    </ul>
  );
