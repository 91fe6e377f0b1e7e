/** The question of one look, with its answers to tap, or a number. */
import type { Fault } from '../../acts/fault.ts';
import { type LookKey, lookOf } from '../../revival/looks.ts';
import { Faults, faultsOf } from '../layout.tsx';

interface Shown {
  look: LookKey;
  given: string;
  faults: readonly Fault[];
  /** What was answered last; it stands until another answer comes. */
  last?: string | undefined;
}

export const LookField = ({ look, given, faults, last }: Shown) => {
  const { name, how, answers, number } = lookOf(look);
  return (
    <fieldset class="choices look-field">
      <legend>{name}</legend>
      <p class="hint">
        {how}
        {last && ` Last answer: ${answers[last]?.words.toLowerCase()}.`}
      </p>
      {number && (
        <label>
          Measured, {number.unit}
          <input
            name={`look.${look}`}
            inputmode="decimal"
            autocomplete="off"
            value={Object.hasOwn(answers, given) ? '' : given}
            {...faultsOf(faults, look)}
          />
        </label>
      )}
      {!number &&
        Object.entries(answers).map(([key, { words }]) => (
          <label>
            <input type="radio" name={`look.${look}`} value={key} checked={key === given} /> {words}
          </label>
        ))}
      {!number && (
        <label>
          <input type="radio" name={`look.${look}`} value="" checked={given === ''} /> Not looked yet
        </label>
      )}
      <Faults faults={faults} field={look} />
    </fieldset>
  );
};
