/** Year ahead: what falls due in the collection, month by month and year by year, with money and hours. */

import { ratesOf } from '../../acts/rates.ts';
import { aheadOf } from '../../acts/year-ahead.ts';
import { count, dayInWords, MONTHS } from '../../dates/words.ts';
import type { Rates } from '../../money/cost.ts';
import { hoursInWords, spanInWords } from '../../money/words.ts';
import type { AheadItem, Period, YearAhead } from '../../money/year-ahead.ts';
import { A, page } from '../layout.tsx';
import { Unjudged } from '../standing.tsx';
import type { Ctx } from '../visit.ts';
import { YearBars } from './year-bars.tsx';

export const yearAheadPage = (c: Ctx) => {
  const { collection, on } = c.get('visit');
  const { ahead, unjudged } = aheadOf(c.get('around').store, collection, on);
  return page(c, 'Year ahead', <YearAheadShown ahead={ahead} unjudged={unjudged} rates={ratesOf(collection)} />);
};

const monthOf = ({ from }: Period): string => (MONTHS[Number(from?.slice(5, 7)) - 1] ?? '').slice(0, 3);
const yearsFrom = ({ from }: Period): string => from?.slice(0, 4) ?? '';

const YearAheadShown = ({ ahead, unjudged, rates }: { ahead: YearAhead; unjudged: number; rates: Rates }) => (
  <>
    <h1>Year ahead</h1>
    <p class="lede">
      What falls due by its dates, and what open returns to the road still ask for, in {rates.currency}. From memory of
      common practice, low to high, never a quote; renewals come again by their interval.{' '}
      <A to="/shopping">Shopping list</A> · <A to="/collection/money">Currency and rates</A>
    </p>
    <Unjudged records={unjudged} />
    <section aria-labelledby="owed">
      <h2 id="owed">Owed already, or undated</h2>
      <p>{totalInWords(ahead.owed, rates)} What no date clears counts as owed, until somebody dates it.</p>
      <details>
        <summary>{count(ahead.owed.items.length, 'thing')}</summary>
        <Items items={ahead.owed.items} rates={rates} caption="Owed already, or undated" />
      </details>
    </section>
    <section aria-labelledby="months">
      <h2 id="months">The next twelve months</h2>
      <YearBars
        periods={ahead.months}
        nameOf={monthOf}
        currency={rates.currency}
        says={`Money month by month: ${ahead.months.map((month) => `${monthOf(month)} ${spanInWords(month.cost.workshop, rates.currency)} by a workshop`).join('; ')}`}
      />
      <Sums
        periods={ahead.months}
        rates={rates}
        head="Month"
        nameOf={(month) => `${monthOf(month)} ${yearsFrom(month)}`}
      />
      <Items items={ahead.months.flatMap(({ items }) => items)} rates={rates} caption="What falls due, by its day" />
    </section>
    <section aria-labelledby="years">
      <h2 id="years">Five years</h2>
      <YearBars
        periods={ahead.years}
        nameOf={yearsFrom}
        currency={rates.currency}
        says={`Money year by year: ${ahead.years.map((year) => `from ${yearsFrom(year)} ${spanInWords(year.cost.workshop, rates.currency)} by a workshop`).join('; ')}`}
      />
      <Sums
        periods={ahead.years}
        rates={rates}
        head="Twelve months from"
        nameOf={({ from }) => (from ? dayInWords(from) : '')}
      />
      <p class="hint">The first year holds what is owed already.</p>
    </section>
  </>
);

const totalInWords = ({ cost, items, unpriced }: Period, { currency }: Rates): string =>
  items.length === 0
    ? 'Nothing.'
    : `${count(items.length, 'thing')}: own hands ${spanInWords(cost.own, currency)} and ${hoursInWords(cost.ownHours)}, a workshop ${spanInWords(cost.workshop, currency)}${unpriced > 0 ? `; ${unpriced} without a figure` : ''}.`;

const Sums = ({
  periods,
  rates: { currency },
  head,
  nameOf,
}: {
  periods: readonly Period[];
  rates: Rates;
  head: string;
  nameOf(period: Period): string;
}) => (
  <section class="scroll" tabindex={0} aria-label={`Sums, ${head.toLowerCase()} by ${head.toLowerCase()}`}>
    <table class="money">
      <thead>
        <tr>
          <th scope="col">{head}</th>
          <th scope="col">Things</th>
          <th scope="col">Own hands</th>
          <th scope="col">Own hours</th>
          <th scope="col">Workshop</th>
        </tr>
      </thead>
      <tbody>
        {periods.map((period) => (
          <tr>
            <th scope="row">{nameOf(period)}</th>
            <td>
              {period.items.length}
              {period.unpriced > 0 && ` (${period.unpriced} without a figure)`}
            </td>
            <td>{spanInWords(period.cost.own, currency)}</td>
            <td>{hoursInWords(period.cost.ownHours)}</td>
            <td>{spanInWords(period.cost.workshop, currency)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);

const Items = ({
  items,
  rates: { currency },
  caption,
}: {
  items: readonly AheadItem[];
  rates: Rates;
  caption: string;
}) =>
  items.length === 0 ? null : (
    <section class="scroll" tabindex={0} aria-label={caption}>
      <table class="money">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Car</th>
            <th scope="col">What</th>
            <th scope="col">Own hands</th>
            <th scope="col">Workshop</th>
          </tr>
        </thead>
        <tbody>
          {items.map(({ day, car, title, cost, page: to, undated }) => (
            <tr>
              <td>{day ? dayInWords(day) : undated ? 'undated' : 'owed'}</td>
              <td>{car}</td>
              <td>
                <A to={to}>{title}</A>
              </td>
              <td>{cost ? `${spanInWords(cost.own, currency)}, ${hoursInWords(cost.ownHours)}` : 'no figure'}</td>
              <td>{cost ? spanInWords(cost.workshop, currency) : 'no figure'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
