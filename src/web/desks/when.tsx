/** A day of a desk, as people write dates. */
import { done, type Fault, type Outcome, refused } from '../../acts/fault.ts';
import type { CivilDate } from '../../dates/civil.ts';
import type { DateRange } from '../../dates/partial-date.ts';
import { readTypedDate } from '../../dates/typed-date.ts';
import type { DateOrder } from '../../dates/typed-point.ts';
import { choiceOf, Faults, faultsOf } from '../layout.tsx';
import { type Asked, fault } from './asked.ts';

interface Rules<Open> {
  today: CivilDate;
  order: DateOrder;
  /** What a field left empty stands for. */
  open: Outcome<Open>;
  /** What “unknown” stands for, where the desk can do without. */
  unknown?: Outcome<Open>;
}

/** Reads the day in a field; one that can be two is asked back, and the one picked is taken. */
export const readWhen = <Open,>(
  field: string,
  asked: Asked,
  { today, order, open, unknown = fault(field, 'A day, a month or a year is meant here.') }: Rules<Open>,
): Outcome<DateRange | Open> => {
  const typed = asked[field] ?? '';
  if (typed.trim() === '') return open;
  const read = readTypedDate(typed, { today, order });
  if (read.ok) return read.said === 'date' ? done(read.date) : unknown;
  if (read.reason !== 'ambiguous') return fault(field, read.message);
  const picked = choiceOf(typed, asked[`${field}Asked`] ?? '', asked[`${field}Choice`] ?? '');
  const choice = read.choices.find(({ value }) => value === picked);
  const chosen = choice && readTypedDate(choice.value, { today, order });
  return chosen?.ok && chosen.said === 'date'
    ? done(chosen.date)
    : refused({ field, message: read.message, choices: read.choices });
};

export const WhenField = ({
  name,
  label,
  asked,
  faults,
  placeholder,
}: {
  name: string;
  label: string;
  asked: Asked;
  faults: readonly Fault[];
  placeholder?: string;
}) => (
  <>
    <label>
      {label}
      <input
        name={name}
        value={asked[name] ?? ''}
        placeholder={placeholder}
        autocomplete="off"
        {...faultsOf(faults, name)}
      />
    </label>
    <Faults
      faults={faults}
      field={name}
      text={asked[name] ?? ''}
      asked={asked[`${name}Asked`] ?? ''}
      picked={asked[`${name}Choice`]}
    />
  </>
);
