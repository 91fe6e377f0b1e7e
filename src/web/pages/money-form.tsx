/** The collection’s currency, and what parts and a workshop’s hour cost in it. */
import type { Fault } from '../../acts/fault.ts';
import { type RatesGiven, setRates } from '../../acts/rates.ts';
import { CURRENCIES } from '../../money/currencies.ts';
import { MONEY_FORM, readForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page } from '../layout.tsx';
import { at, type Ctx } from '../visit.ts';

export const moneyPage = (c: Ctx) => {
  const { currency, perDollar, laborLow, laborHigh } = c.get('visit').collection;
  return show(
    c,
    { currency, perDollar: String(perDollar), laborLow: String(laborLow), laborHigh: String(laborHigh) },
    [],
  );
};

export const saveMoney = async (c: Ctx) => {
  const visit = c.get('visit');
  const given = await readForm(c, MONEY_FORM);
  const outcome = setRates(c.get('around').store, visit.collection.id, given);
  if (!outcome.ok) return show(c, given, outcome.faults);
  return c.redirect(at(visit, '/year-ahead'), 303);
};

const show = (c: Ctx, given: RatesGiven, faults: readonly Fault[]) =>
  page(c, 'Money', <MoneyForm given={given} faults={faults} />, faults.length > 0 ? 422 : 200);

const FIELDS = {
  currency: 'Currency, three letters',
  perDollar: 'Parts worth one US dollar cost in it',
  laborLow: 'A workshop’s hour, at the least',
  laborHigh: 'A workshop’s hour, at the most',
} as const;

const MoneyForm = ({ given, faults }: { given: RatesGiven; faults: readonly Fault[] }) => (
  <>
    <p class="crumb">
      <A to="/collection">Collection</A>
    </p>
    <h1>Money</h1>
    <p class="lede">
      The tables of hours and parts are from memory of common practice, in US dollars. Say what they mean where you are;
      what was told as spent stays as it was typed. Left empty, a figure is the usual one for{' '}
      {Object.keys(CURRENCIES).join(', ')}.
    </p>
    <FaultSummary faults={faults} />
    <Post to="/collection/money" class="stacked">
      {(Object.keys(FIELDS) as (keyof typeof FIELDS)[]).map((field) => (
        <>
          <label>
            {FIELDS[field]}
            <input
              name={field}
              value={given[field]}
              autocomplete="off"
              inputmode={field === 'currency' ? 'text' : 'decimal'}
              {...faultsOf(faults, field)}
            />
          </label>
          <Faults faults={faults} field={field} />
        </>
      ))}
      <button>Save</button>
    </Post>
  </>
);
