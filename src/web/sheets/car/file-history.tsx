/** What is behind a car: distances, parts that were renewed, stays. */
import type { CivilDate } from '../../../dates/civil.ts';
import { dayInWords } from '../../../dates/words.ts';
import { type CarWithParts, closedParts, type PartOnRecord } from '../../../store/cars.ts';
import { type LayUpRow, layUpsOf } from '../../../store/lay-ups.ts';
import type { Store } from '../../../store/open.ts';
import { nameOf } from '../../pages/part-name.ts';
import { datesInWords } from './known-dates.ts';

interface Shown {
  store: Store;
  collectionId: string;
  found: CarWithParts;
  on: CivilDate;
}

export const FileHistory = ({ store, collectionId, found, on }: Shown) => {
  const { car, facts } = found;
  const closed = closedParts(store, collectionId, car.id).filter(({ closedOn }) => closedOn !== null && closedOn <= on);
  const stays = layUpsOf(store, collectionId, car.id).filter(
    ({ parkedOn, closedHow }) => parkedOn <= on && closedHow !== 'called off',
  );
  const read = facts.odometer.filter(({ day }) => day <= on);
  return (
    <section>
      <h2>History</h2>
      <h3>Odometer</h3>
      <p>
        {read.length === 0
          ? 'It was never written down.'
          : `${read.map(({ day, km }) => `${km.toLocaleString('en-US')} km on ${dayInWords(day)}`).join(' · ')}.`}
      </p>
      <h3>Parts and fluids renewed or taken off</h3>
      {closed.length === 0 ? (
        <p>None is on record.</p>
      ) : (
        <ul class="two">
          {closed.map((part) => (
            <li>{closedInWords(part)}</li>
          ))}
        </ul>
      )}
      <h3>Stays in storage</h3>
      {stays.length === 0 ? (
        <p>None is on record.</p>
      ) : (
        <ul class="dense">
          {stays.map((stay) => (
            <li>{stayInWords(stay, on)}</li>
          ))}
        </ul>
      )}
    </section>
  );
};

/** With the dates it had, where any was known. */
const closedInWords = (part: PartOnRecord): string => {
  const dates = datesInWords(part.claims).map((words) => `${words.charAt(0).toLowerCase()}${words.slice(1)}`);
  const why = (part.closedWhy ?? '').replace(/\.$/, '');
  return `${part.closedOn ? dayInWords(part.closedOn) : ''}: ${[nameOf(part), ...dates].join(', ')}. ${why}.`;
};

const stayInWords = ({ parkedOn, closedOn, returnOn }: LayUpRow, on: CivilDate): string => {
  const until =
    closedOn && closedOn <= on
      ? `back ${dayInWords(closedOn)}`
      : returnOn
        ? `to be back ${dayInWords(returnOn)}`
        : 'open end';
  return `Put away ${dayInWords(parkedOn)}, ${until}.`;
};
