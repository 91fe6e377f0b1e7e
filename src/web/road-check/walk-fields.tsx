/** The walk round as a form: large targets, one answer each, nothing answered beforehand. */
import type { Fault } from '../../acts/fault.ts';
import type { CautionKey } from '../../catalogue/cautions.ts';
import { CAUTIONS, DEFERS } from '../../catalogue/cautions.ts';
import { WALK_KEYS, walkLook } from '../../plans/walkround.ts';
import { Faults, faultsOf } from '../layout.tsx';
import type { WalkForm } from './forms.ts';

export const WalkFields = ({
  given,
  faults,
  by,
}: {
  given: Partial<WalkForm>;
  faults: readonly Fault[];
  by: string;
}) => (
  <>
    <Faults faults={faults} field="walk" />
    {WALK_KEYS.map((key) => {
      const { name, how, answers, critical } = walkLook(key);
      const chosen = given[`walk.${key}`] ?? '';
      return (
        <fieldset class="targets walk">
          <legend>
            {name}
            {critical && <small> · without it no drive</small>}
          </legend>
          <p class="hint">{how}</p>
          {Object.entries(answers).map(([answer, { words }]) => (
            <label>
              <input type="radio" name={`walk.${key}`} value={answer} checked={chosen === answer} />{' '}
              <span>{words}</span>
            </label>
          ))}
          <label>
            <input type="radio" name={`walk.${key}`} value="" checked={chosen === ''} /> <span>Not looked</span>
          </label>
        </fieldset>
      );
    })}
    <label>
      Who looked
      <input name="by" value={given.by ?? by} autocomplete="off" {...faultsOf(faults, 'by')} />
    </label>
    <Faults faults={faults} field="by" />
    <label>
      Note
      <textarea name="note" rows={2}>
        {given.note ?? ''}
      </textarea>
    </label>
  </>
);

const WALK_CAUTIONS = [...new Set(WALK_KEYS.flatMap((key) => walkLook(key).cautions))] as CautionKey[];

export const WalkCautions = () => (
  <ul class="caution">
    {WALK_CAUTIONS.map((key) => (
      <li>{CAUTIONS[key]}</li>
    ))}
    <li>{DEFERS}</li>
  </ul>
);
