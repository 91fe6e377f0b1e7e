/** Shopping: what open steps need and what falls due soon, with the days to order by. */
import { aheadOf } from '../../acts/year-ahead.ts';
import { dayInWords } from '../../dates/words.ts';
import type { Order } from '../../money/shopping.ts';
import { A, page } from '../layout.tsx';
import { leadInWords } from '../revivals/step-facts.tsx';
import { Unjudged } from '../standing.tsx';
import type { Ctx } from '../visit.ts';

export const shoppingPage = (c: Ctx) => {
  const { collection, on } = c.get('visit');
  const { orders, unjudged } = aheadOf(c.get('around').store, collection, on);
  return page(c, 'Shopping', <Shopping orders={orders} unjudged={unjudged} />);
};

const Shopping = ({ orders, unjudged }: { orders: readonly Order[]; unjudged: number }) => (
  <>
    <h1>Shopping list</h1>
    <p class="lede">
      What the open steps of every plan need, and what falls due within three months. Order by the longest time it may
      take; the day to order by is counted back from the day of the work. <A to="/year-ahead">Year ahead</A>
    </p>
    <Unjudged records={unjudged} />
    {orders.length === 0 ? (
      <p>No open step needs anything, as far as plans and dates tell.</p>
    ) : (
      <section class="scroll" tabindex={0} aria-label="What to order">
        <table class="money">
          <caption class="unseen">What to order, by when</caption>
          <thead>
            <tr>
              <th scope="col">Order by</th>
              <th scope="col">What</th>
              <th scope="col">Car</th>
              <th scope="col">For</th>
              <th scope="col">How long it takes</th>
            </tr>
          </thead>
          <tbody>
            {orders.map(({ orderBy, late, what, car, forWhat, page: to, lead }) => (
              <tr>
                <td>
                  {orderBy === null ? (
                    'as its stage comes'
                  ) : late ? (
                    <strong>now: late since {dayInWords(orderBy)}</strong>
                  ) : (
                    dayInWords(orderBy)
                  )}
                </td>
                <td>{what}</td>
                <td>{car}</td>
                <td>
                  <A to={to}>{forWhat}</A>
                </td>
                <td>{leadInWords(lead)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    )}
  </>
);
